package label

import (
	"slices"

	"galewright/render/sheet"
)

// put claims a place.
func (b *Board) put(j *job, r sheet.Rect, leader []sheet.Pt, choice int) {
	b.journal = append(b.journal, step{j, state{}})
	b.set(j, state{Place{Rect: r, OK: true, Leader: leader}, choice})
}

// lift frees the place of a label.
func (b *Board) lift(j *job) {
	b.journal = append(b.journal, step{j, j.state})
	b.unset(j)
}

func (b *Board) set(j *job, s state) {
	j.state = s
	j.taken, j.barred = b.taken.add(s.at.Rect), b.barred.add(s.at.Rect)
	b.owner[j.taken], b.bars[j.barred] = j, j
	for i := 1; i < len(s.at.Leader); i++ {
		id := b.line(s.at.Leader[i-1], s.at.Leader[i])
		j.lines = append(j.lines, id)
		b.leader[id] = j
	}
}

func (b *Board) unset(j *job) {
	b.taken.Remove(j.taken)
	b.barred.Remove(j.barred)
	for _, id := range j.lines {
		b.linesG.Remove(id)
	}
	j.state, j.lines = state{choice: -1}, nil
}

// back takes back every step after the first n.
func (b *Board) back(n int) {
	for len(b.journal) > n {
		last := b.journal[len(b.journal)-1]
		b.journal = b.journal[:len(b.journal)-1]
		if last.was.at.OK {
			b.set(last.j, last.was)
		} else {
			b.unset(last.j)
		}
	}
}

// spot is a place a label could have: near, or at the end of a leader.
type spot struct {
	r      sheet.Rect
	leader []sheet.Pt
	choice int
}

// spots returns the near places of j and, with leaders, a coarse ring of
// places not far off.
func (j *job) spots(leaders bool) (out []spot) {
	for i := range j.Near {
		out = append(out, spot{j.near(i), nil, i})
	}
	if !leaders {
		return out
	}
	for _, a := range j.Anchors {
		for _, d := range [...]sheet.MM{2, 5, 9, 14, 20} {
			for _, u := range ring[:28] {
				r := centered(sheet.Pt{X: a.X + u.X*(d+j.W/2), Y: a.Y + u.Y*(d+j.H/2)}, j.W, j.H)
				out = append(out, spot{r, []sheet.Pt{a, edge(r, a)}, -1})
			}
		}
	}
	return out
}

// clear tries to give j a place by moving the labels, most of them at the
// most, that stand in its way; again finds each a new place.
func (b *Board) clear(j *job, most int, leaders bool, again func(*job) bool) bool {
	for _, s := range j.spots(leaders) {
		if b.tries >= mostTries {
			return false
		}
		others, ok := b.occupants(s, most)
		if !ok {
			continue
		}
		mark := len(b.journal)
		for _, o := range others {
			b.lift(o)
		}
		if b.fits(j, s.r) {
			b.put(j, s.r, s.leader, s.choice)
			if all(others, again) {
				return true
			}
		}
		b.back(mark)
	}
	return false
}

func all(js []*job, f func(*job) bool) bool {
	for _, j := range js {
		if !f(j) {
			return false
		}
	}
	return true
}

// occupants returns the labels that keep a spot taken, by themselves, by
// their leaders or by standing in its leader's way; ok is false when something
// else does too, or too many do.
func (b *Board) occupants(s spot, most int) (out []*job, ok bool) {
	ok = true
	note := func(j *job) bool {
		if ok = j != nil; ok && !slices.Contains(out, j) {
			out = append(out, j)
		}
		ok = ok && len(out) <= most
		return ok
	}
	b.taken.over(s.r.Inset(-Gap), func(id int) bool { return note(b.owner[id]) })
	if ok {
		b.linesG.over(s.r, func(id int) bool {
			return !Crosses(b.lines[id][0], b.lines[id][1], s.r) || note(b.leader[id])
		})
	}
	if ok && s.leader != nil {
		p, q := s.leader[0], s.leader[1]
		b.barred.crossed(p, q, func(id int) bool { return note(b.bars[id]) })
	}
	return out, ok && len(out) > 0
}
