package framing

import (
	"fmt"
	"math"

	"galewright/plan/geom"
	"galewright/plan/roofplan"
)

// leastFront is the least height of a dormer's front wall from what it stands on to the
// top of its plates, in: bottom plate, two top plates and something between.
const leastFront = 12.0

// dormerFits tells of a dormer that cannot be framed where it stands.
func (f *roofFrame) dormerFits(d *dormer) bool {
	return f.dormerInFace(d) && f.dormerHigh(d) && f.dormerBack(d) && f.dormerApart(d)
}

// dormerInFace finds the runs of the trimmers: from the eave to the ridge.
func (f *roofFrame) dormerInFace(d *dormer) bool {
	room := d.trimmer.Width() / 2
	for i, k := range [2]float64{-1, 1} {
		p := d.Frame.At(d.outer(k)-k*room, d.SetBack+leastFront, 0).Flat()
		_, face, ok := f.roof.Height(p)
		if ok && face.Has(d.rb.body, d.side) {
			d.face, d.runs[i] = face, f.wholeRun(d, face, p)
		}
		if d.runs[i] == nil {
			f.dormerFault(d.Dormer.Dormer, "dormer-off-face", fmt.Sprintf("the trimmer under the %s wall of dormer %s does not run from the eave to the ridge: a hip, a valley or the end of the roof is in its way", d.cheekName(k), d.Name),
				"move its center, or make it narrower, so that both side walls stand over common rafters")
			return false
		}
	}
	return true
}

// wholeRun returns the run at a plan point of a face that goes from the eave over the wall
// to a ridge, else nil.
func (f *roofFrame) wholeRun(d *dormer, face *roofplan.Face, p geom.Vec2) *roofplan.Run {
	station := p.Along(1 - face.Uphill().MainAxis())
	for _, run := range f.roof.RunsAt(face, station) {
		_, body, side := run.Bearing()
		if f.atGable(d, run) {
			return nil
		}
		if body == d.rb.body && side == d.side && run.LowEnd.Kind == roofplan.Eave && run.HighEnd.Kind == roofplan.Ridge {
			return run
		}
	}
	return nil
}

// atGable tells whether a trimmer would stand in the place of the rafter over a gable wall.
func (f *roofFrame) atGable(d *dormer, run *roofplan.Run) bool {
	for _, o := range f.runs {
		if o.Flush && o.Face == run.Face && math.Abs(o.Station-run.Station) < (d.trimmer.Width()+d.rb.Rafters.Width())/2 {
			return true
		}
	}
	return false
}

// dormerHigh tells of a front wall with no height.
func (f *roofFrame) dormerHigh(d *dormer) bool {
	if room := d.top - d.mainAt(d.SetBack); room < leastFront {
		f.dormerFault(d.Dormer.Dormer, "dormer-too-low", fmt.Sprintf("the plates of dormer %s lie %s over the main roof at its front wall, which needs %s", d.Name, f.inches(room), f.inches(leastFront)),
			fmt.Sprintf("raise plate_height by %s, or let it stand nearer the eave", f.inches(leastFront-room)))
		return false
	}
	return f.dormerLower(d)
}

// dormerLower tells of a lower header without room over the plates and ceiling joists.
func (f *roofFrame) dormerLower(d *dormer) bool {
	if d.SetBack == 0 {
		return true
	}
	foot, need := d.mainAt(d.SetBack)-d.header.Depth, d.eave
	if d.rb.CeilingTies {
		need += d.rb.tieLumber().Depth
	}
	if foot < need {
		f.dormerFault(d.Dormer.Dormer, "dormer-near-eave", fmt.Sprintf("the header under the front wall of dormer %s, %s deep, reaches %s into the plates or ceiling joists below", d.Name, f.inches(d.header.Depth), f.inches(need-foot)),
			fmt.Sprintf("write set_back = \"0'\", or at least %s", f.inches(d.SetBack+(need-foot)/d.slope())))
		return false
	}
	return true
}

// dormerBack tells of a dormer that reaches over the main ridge.
func (f *roofFrame) dormerBack(d *dormer) bool {
	ridge := d.Frame.In.Dot(d.runs[0].High.Sub(d.Frame.Origin))
	clear := d.rb.RidgeMember.Width()/2 + minJack
	over := max(d.Upper+d.header.Width(), d.back()) + clear - ridge
	if over <= 0 {
		return true
	}
	f.dormerFault(d.Dormer.Dormer, "dormer-over-ridge", fmt.Sprintf("dormer %s ends %s past where the main ridge leaves it room", d.Name, f.inches(over)),
		d.lessHigh(f.inches(over*d.turn())))
	return false
}

// turn is by how much lower a dormer ends for each inch that its plates are lowered.
func (d *dormer) turn() float64 {
	if d.shed() {
		return d.slope() - d.own()
	}
	return d.slope()
}

// lessHigh says how a dormer is kept below the ridge.
func (d *dormer) lessHigh(by string) string {
	if d.shed() {
		return fmt.Sprintf("lower plate_height by %s, or take a flatter pitch", by)
	}
	return fmt.Sprintf("lower plate_height by %s, or make it narrower or flatter", by)
}

// dormerApart tells of dormers that stand in each other's way.
func (f *roofFrame) dormerApart(d *dormer) bool {
	for _, o := range f.dormers {
		if o.rb == d.rb && o.side == d.side && d.From-d.aside() < o.To+o.aside() && o.From-o.aside() < d.To+d.aside() {
			f.dormerFault(d.Dormer.Dormer, "dormers-meet", fmt.Sprintf("dormers %s and %s stand in each other's way", o.Name, d.Name), "move one of them along the eave, or make it narrower")
			return false
		}
	}
	return true
}
