package loadpath

import (
	"slices"
	"strings"
)

// Named returns the links that a name stands for: of a joint, segment, zone or
// place by its ID, or all on what carries the name: a line of shear walls ("line
// 1W" or "1W"), a story, a roof, a segment with its ends and its bottom plate.
func (r *Report) Named(name string) []*Link {
	for _, find := range []func(string) []*Link{r.Joint, r.onLine, r.onHost} {
		if out := find(name); out != nil {
			return out
		}
	}
	return nil
}

// onLine returns the links of a line of shear walls and of its segments.
func (r *Report) onLine(name string) (out []*Link) {
	x := r.lineNamed(name)
	if x == nil {
		return nil
	}
	for _, l := range r.Links {
		if slices.Contains(sideChecks, l.Check.ID) && r.LineOf(l) == x {
			out = append(out, l)
		}
	}
	return out
}

// lineNamed returns the line with a name, with "line " before it or not; of one
// that goes through more stories the highest.
func (r *Report) lineNamed(name string) *LineShear {
	for _, x := range r.Lines {
		if x.Name == strings.TrimPrefix(name, "line ") {
			return x
		}
	}
	return nil
}

// onHost returns the links on a wall, roof, girder, porch or story.
func (r *Report) onHost(name string) (out []*Link) {
	for _, l := range r.Links {
		if l.Host == name {
			out = append(out, l)
		}
	}
	return out
}

// sideChecks are the checks whose demand is a shear wall line's force.
var sideChecks = []string{"story-shear", "unit-shear", "overturning", deckShearCheck, anchorCheck, "chord-push", postCheck, "collector", "chord-splice", soleCheck, twistCheck}

// LineOf returns the line whose force a link's demand comes of, nil where it
// comes of none.
func (r *Report) LineOf(l *Link) *LineShear {
	if !slices.Contains(sideChecks, l.Check.ID) && !strings.HasPrefix(l.ID, lowestFloor) {
		return nil
	}
	var found *LineShear
	for _, x := range r.Lines {
		story := strings.HasSuffix(l.Where, "story "+x.Level.Name)
		if l.Host == "line "+x.Name && (story || found == nil) {
			found = x
		}
		if s := x.segmentOf(l); s != nil && (story || found == nil || s.base) {
			found = x
		}
	}
	if found == nil && l.Joint != nil {
		return r.work.lineOf(l.Joint)
	}
	return found
}

// segmentOf returns the segment of the line that a link is of, nil when none is.
func (x *LineShear) segmentOf(l *Link) *SegmentShear {
	for _, s := range x.Segments {
		named := l.ID == s.Name || strings.HasPrefix(l.ID, s.Name+",") || strings.HasPrefix(l.ID, s.Name+" ")
		if named || l.Joint != nil && slices.Contains(s.ends[:], l.Joint) {
			return s
		}
	}
	return nil
}
