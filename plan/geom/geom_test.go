package geom

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func cube(x, y, z, side float64) Solid {
	return Box(Vec3{x, y, z}, Vec3{side, 0, 0}, Vec3{0, side, 0}, Vec3{0, 0, side})
}

func TestFrameStationsGrowLeftToRightFromOutside(t *testing.T) {
	// A south wall is seen from the south: its outside is −y, its inside +y.
	f := NewFrame(Vec2{10, 20}, Vec2{110, 20})
	require.Equal(t, Vec3{40, 25.5, 7}, f.At(30, 5.5, 7))
	s, d := f.Local(Vec2{40, 25.5})
	require.InDelta(t, 30, s, Eps)
	require.InDelta(t, 5.5, d, Eps)
}

func TestVolume(t *testing.T) {
	require.InDelta(t, 8, cube(3, 4, 5, 2).Volume(), Eps)
	tri := []Vec3{{0, 0, 0}, {4, 0, 0}, {0, 3, 0}}
	require.InDelta(t, 60, Prism(tri, Vec3{0, 0, 10}).Volume(), Eps)
	require.InDelta(t, 60, Prism([]Vec3{tri[2], tri[1], tri[0]}, Vec3{0, 0, 10}).Volume(), Eps, "the turning sense does not matter")
}

func TestClip(t *testing.T) {
	c := cube(0, 0, 0, 2)
	for _, x := range []struct {
		name string
		p    Plane
		want float64
	}{
		{"half", PlaneAt(Vec3{1, 0, 0}, Vec3{1, 0, 0}), 4},
		{"all of it", PlaneAt(Vec3{5, 0, 0}, Vec3{1, 0, 0}), 8},
		{"nothing", PlaneAt(Vec3{-1, 0, 0}, Vec3{1, 0, 0}), 0},
		{"along a face keeps all", PlaneAt(Vec3{2, 0, 0}, Vec3{1, 0, 0}), 8},
		{"along a face keeps nothing", PlaneAt(Vec3{0, 0, 0}, Vec3{1, 0, 0}), 0},
		{"diagonal through two edges", PlaneAt(Vec3{0, 0, 0}, Vec3{1, -1, 0}), 4},
		{"corner off: 8 − 1/6", PlaneAt(Vec3{2, 2, 1}, Vec3{1, 1, 1}), 8 - 1.0/6},
	} {
		t.Run(x.name, func(t *testing.T) { require.InDelta(t, x.want, c.Clip(x.p).Volume(), 1e-5) })
	}
}

func TestOverlap(t *testing.T) {
	a := cube(0, 0, 0, 2)
	turned := Box(Vec3{2.2, 0, 0}, Vec3{1, 1, 0}, Vec3{-1, 1, 0}, Vec3{0, 0, 2})
	for _, x := range []struct {
		name string
		b    Solid
		want bool
	}{
		{"same", a, true},
		{"inside", cube(0.5, 0.5, 0.5, 1), true},
		{"face to face", cube(2, 0, 0, 2), false},
		{"a thousandth deep", cube(1.999, 0, 0, 2), false},
		{"a tenth deep", cube(1.9, 0, 0, 2), true},
		{"boxes overlap, solids do not", Box(Vec3{3, 0, 0}, Vec3{2, 2, 0}, Vec3{-2, 2, 0}, Vec3{0, 0, 2}).Clip(PlaneAt(Vec3{2.5, 2, 0}, Vec3{-1, -1, 0})), false},
		{"turned, into the face", turned, true},
		{"far", cube(9, 9, 9, 1), false},
		{"empty", Solid{}, false},
	} {
		t.Run(x.name, func(t *testing.T) {
			require.Equal(t, x.want, Overlap(a, x.b, 0.01))
			require.Equal(t, x.want, Overlap(x.b, a, 0.01))
		})
	}
}

// TestClipPartsAddUp: the two parts that a plane cuts a box into have the
// box's volume together, and do not overlap.
func TestClipPartsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := rapid.Float64Range(-10, 10)
		c := cube(0, 0, 0, rapid.Float64Range(1, 10).Draw(t, "side"))
		n := Vec3{num.Draw(t, "nx"), num.Draw(t, "ny"), num.Draw(t, "nz")}
		if n.Len() < 0.1 {
			t.Skip("no direction")
		}
		at := Vec3{num.Draw(t, "x"), num.Draw(t, "y"), num.Draw(t, "z")}
		p := PlaneAt(at, n)
		a, b := c.Clip(p), c.Clip(Plane{p.N.Mul(-1), -p.C})
		require.InDelta(t, c.Volume(), a.Volume()+b.Volume(), 1e-4)
		require.False(t, Overlap(a, b, 0.01))
	})
}

// TestOverlapIsTheSameAnywhere: moving and turning both solids alike changes
// nothing.
func TestOverlapIsTheSameAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := rapid.Float64Range(-3, 3)
		at := Vec3{num.Draw(t, "x"), num.Draw(t, "y"), num.Draw(t, "z")}
		turn := rapid.Float64Range(0, math.Pi).Draw(t, "turn")
		by := Vec3{num.Draw(t, "bx") * 100, num.Draw(t, "by") * 100, num.Draw(t, "bz") * 100}
		u, v := Vec3{math.Cos(turn), math.Sin(turn), 0}, Vec3{-math.Sin(turn), math.Cos(turn), 0}
		move := func(p Vec3) Vec3 { return u.Mul(p.X).Add(v.Mul(p.Y)).Add(Vec3{0, 0, p.Z}).Add(by) }
		a, b := cube(0, 0, 0, 2), cube(at.X, at.Y, at.Z, 2)
		moved := func(o Vec3) Solid { return Box(move(o), u.Mul(2), v.Mul(2), Vec3{0, 0, 2}) }
		d := min(2-math.Abs(at.X), 2-math.Abs(at.Y), 2-math.Abs(at.Z))
		if math.Abs(d-0.01) < 1e-3 {
			t.Skip("on the tolerance")
		}
		require.Equal(t, d > 0.01, Overlap(a, b, 0.01))
		require.Equal(t, d > 0.01, Overlap(moved(Vec3{}), moved(at), 0.01))
	})
}
