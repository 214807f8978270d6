package placement

import (
	"fmt"

	"galewright/plan"
	"galewright/plan/hardware"
)

// The checks of a strap's length.
var (
	strapTooShort = newCheck("strap-too-short", plan.Error, "a strap too short for its laps and gap",
		"The strap must cover both laps and what lies between the members. A lap is the one the item asks for, and at least the steel its nails take.",
		func(x *placer, c *Check) {
			for _, p := range x.p.Pieces {
				if p.Item.Kind.Strap {
					x.tooShort(c, p)
				}
			}
		})

	strapPastMember = newCheck("strap-past-member", plan.Error, "a strap longer than the member it laps",
		"The end of the strap lies past the end of the member, so its last nails find no wood.", func(x *placer, c *Check) {
			for _, p := range x.p.Pieces {
				if p.Item.Kind.Strap {
					x.pastMember(c, p)
				}
			}
		})

	facesNotFlush = newCheck("faces-not-flush", plan.Error, "a strap over faces that are not flush",
		"A strap that a rule sends down to the girder must lie on stud, rim and girder alike.", nil)

	strapOverStep = newCheck("strap-over-step", plan.Warning, "a strap bent over a step at a pile",
		"The girder's face and the pile's are not flush: the strap bends from one to the other, and gives as far as it straightens before it holds. Seat the girder in a notch of the pile, so that their faces are flush.", func(x *placer, c *Check) {
			for _, p := range x.p.Pieces {
				if p.Joint.Kind == plan.GirderPile && p.Item.Kind.Strap && len(p.plates()) > 1 {
					x.about(c, p, p.Tag, fmt.Sprintf("bends over a step of %s between girder and pile", x.units().Length(p.Gap-p.Joint.Gap)),
						`give the girder seat = "notch" and put the straps on its outside face`)
				}
			}
		})

	cutPastRoll = newCheck("cut-past-roll", plan.Error, "a strap longer than the roll it is cut from",
		"What lies between the members and both laps take more steel in one piece than a roll has.", func(x *placer, c *Check) {
			for _, p := range x.p.Pieces {
				if p.Item.Kind.Strap && p.Item.Coil > 0 && p.Cut > p.Item.Coil+touch {
					x.about(c, p, p.Tag, fmt.Sprintf("%s of strap are needed here, a roll has %s", x.units().Length(p.Cut), x.units().Length(p.Item.Coil)),
						"take a longer roll, or a shorter lap")
				}
			}
		})
)

func (x *placer) pastMember(c *Check, p *Piece) {
	ties := p.ties()
	for _, t := range ties {
		over := t.Lap - t.Room
		if over <= play {
			continue
		}
		if ties[0].Lap == ties[1].Lap {
			over *= 2
		}
		x.about(c, p, p.Tag, fmt.Sprintf("laps %s on a %s that gives %s there", x.units().Length(t.Lap), t.Member.Role, x.units().Length(t.Room)),
			fmt.Sprintf("take a strap at least %s shorter, or leave it out with except", x.units().Length(over)))
	}
}

// needs returns the least lap on each of the two members: what the nails of
// that end take, and the lap the item asks for unless the member is shorter.
func needs(p *Piece) (need [2]float64) {
	it, ends := p.Item, p.ends()
	for i, t := range p.ties() {
		if ends[i].Count > 0 {
			need[i] = hardware.Spread(ends[i].Fasteners, it.Width)
		}
		need[i] = max(need[i], min(it.Lap, t.Room))
	}
	if len(p.plates()) == 1 && p.Joint.Kind.Lies() == plan.LiesToPlate {
		need[1] = 0 // the upper end lies on the plates' edges
	}
	return need
}

// ends returns the ends of a piece on its two members, the one held first.
func (p *Piece) ends() (ends [2]hardware.End) {
	t := p.ties()
	ends[0], ends[1] = p.Item.EndsOn(t[0].Member, t[1].Member)
	return ends
}

// missing returns the steel that the lap on each of the two members lacks.
func missing(p *Piece) (lack [2]float64) {
	if p.Item.Kind.Strap {
		need, laps := needs(p), p.Laps()
		lack = [2]float64{max(need[0]-laps[0], 0), max(need[1]-laps[1], 0)}
	}
	return lack
}

// tooShort tells how much is missing for both laps.
func (x *placer) tooShort(c *Check, p *Piece) {
	need, lack := needs(p), missing(p)
	if low := p.ties()[1]; low.Lap >= low.Room-touch && lack[1] > touch && !standing(low.Member) {
		x.about(c, p, p.Tag, fmt.Sprintf("the %s gives %s to nail to, the nails of that end take %s", low.Member.Role, x.units().Length(low.Room), x.units().Length(need[1])),
			"take an item with fewer or closer nails at that end, or a deeper member")
		return
	}
	short := lack[0] + lack[1]
	if short <= 2*touch {
		return
	}
	if laps := p.Laps(); laps[0] == laps[1] {
		short = 2 * max(lack[0], lack[1])
	}
	have := p.Length()
	x.about(c, p, p.Tag, fmt.Sprintf("the strap is %s long; laps of %s and %s and the %s between need %s: short by %s", x.units().Length(have),
		x.units().Length(need[0]), x.units().Length(need[1]), x.units().Length(p.Gap), x.units().Length(have+short), x.units().Length(short)),
		fmt.Sprintf("take a strap of at least %s", x.units().Length(have+short)))
}
