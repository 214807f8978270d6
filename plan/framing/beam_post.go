package framing

import (
	"fmt"
	"math"

	"galewright/plan"
	"galewright/plan/geom"
)

// postStations are the stations of a beam's posts, those at its ends moved in so that
// they stand whole under it.
func (fb *framedBeam) postStations() (out []float64) {
	half := fb.Post.Width() / 2
	for _, s := range fb.Posts {
		out = append(out, min(max(s, fb.body.s0+half), fb.body.s1-half))
	}
	return out
}

// postsOf tells of posts that do not stand under their beam or have no room; false
// where one does not.
func (b *builder) postsOf(fb *framedBeam) bool {
	x := fb.FloorBeam
	for i, s := range x.Posts {
		if s < fb.body.s0-x.Post.Width() || s > fb.body.s1+x.Post.Width() {
			b.beamFault(x, "beam-post-off", fmt.Sprintf("post %d of beam %s, at %s, stands off it: it lies from %s to %s", i+1, x.Name, b.inches(s), b.inches(fb.body.s0), b.inches(fb.body.s1)), "give stations along the beam, from its beginning")
			return false
		}
	}
	if room := fb.foot - x.Level.Floor; len(x.Posts) > 0 && room < 12 {
		b.beamFault(x, "beam-post-no-room", fmt.Sprintf("between the floor of level %s and beam %s there are %s for a post", x.Level.Name, x.Name, b.inches(room)), "take a shallower beam")
		return false
	}
	return true
}

// standPosts adds the posts of a beam, from the level's floor to its underside, with
// their joints above and below.
func (b *builder) standPosts(fb *framedBeam) {
	x, f, mid := fb.FloorBeam, fb.body.f, fb.body.d/2
	w, d, z0 := x.Post.Width(), x.Post.Depth, x.Level.Floor
	for _, s := range fb.postStations() {
		m := b.member(&Member{
			ID: fmt.Sprintf("%s/post@%s", x.Name, at(s)), Role: plan.BeamPost, Section: x.Post, Level: x.Level, Length: fb.foot - z0,
			Z0: z0, Z1: fb.foot, A: f.At(s, mid, z0), B: f.At(s, mid, fb.foot),
			Solid: []geom.Solid{f.Box(s-w/2, s+w/2, mid-d/2, mid+d/2, z0, fb.foot)},
		})
		fb.Supports = append(fb.Supports, BeamSupport{Along: s, At: m.B, On: m, Seat: true})
	}
}

// postJoints ties the posts of a beam to it and to what they stand on.
func (b *builder) postJoints(fb *framedBeam) {
	for _, u := range fb.Supports {
		if u.On.Role != plan.BeamPost {
			continue
		}
		over := []*Member{}
		for _, m := range fb.Pieces {
			if s, _ := fb.body.f.Local(m.A.Flat()); s <= u.Along+geom.Eps && u.Along <= s+m.Length+geom.Eps {
				over = append(over, m)
			}
		}
		over = b.inOrder(over)
		share := shareOf(fb.postStations(), u.Along, fb.body.s0, fb.body.s1)
		b.joint(&Joint{
			Kind: plan.BeamToPost, Host: fb.Name, Level: fb.FloorBeam.Level, Station: u.Along, At: u.On.B,
			Members: append([]*Member{over[0], u.On}, over[1:]...), Below: true, Tributary: share,
		})
		base := &Joint{Kind: plan.BeamPostBase, Host: fb.Name, Level: fb.FloorBeam.Level, Station: u.Along, At: u.On.A, Members: []*Member{u.On}, Tributary: share}
		b.below(base, u.On)
		b.joint(base)
	}
}

// below names what a post stands on through the subfloor: of the joists, rims, blocks
// and beams there that under most of it. Where there is none but the subfloor it tells.
func (b *builder) below(j *Joint, post *Member) {
	l := post.Level
	if l.Joists.Depth == 0 {
		j.Below = true // concrete
		return
	}
	top := l.Floor - l.Subfloor
	foot := post.Solid[0].Moved(geom.Vec3{Z: top - 0.5 - post.Z0})
	lo, hi := foot.Bounds()
	hi.Z = top
	var best *Member
	most := 0.0
	for _, o := range b.index.Within(lo, hi) {
		if len(o.Solid) != 1 || o == post || math.Abs(o.Z1-top) > sixteenth {
			continue
		}
		if v := common(foot, o).Volume(); v > most+geom.Eps {
			best, most = o, v
		}
	}
	if best == nil {
		b.beamWarning(post, "beam-post-on-subfloor", fmt.Sprintf("the post at %s stands on the subfloor alone, between the joists of level %s", b.inches(j.Station), l.Name), "put a [[joist]] or [[blocking]] under it, with what carries that below")
		return
	}
	j.Members, j.Gap, j.Below = append(j.Members, best), l.Subfloor, true
}

// beamWarning warns of a post of a beam.
func (b *builder) beamWarning(post *Member, code plan.Code, what, mend string) {
	for _, fb := range b.beams {
		for _, u := range fb.Supports {
			if u.On == post {
				b.fault(plan.Diagnostic{Severity: plan.Warning, Code: code, Pos: fb.Pos, Where: "beam " + fb.Name, Summary: what, Mend: mend})
			}
		}
	}
}
