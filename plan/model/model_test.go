package model_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"galewright/plan/loadpath"
	"galewright/plan/model"
	"galewright/plan/pipeline"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Without a wind basis there are bodies and ties, nothing is lifted, and the
// model says why.
func TestAModelWithoutWind(t *testing.T) {
	src, err := os.ReadFile("../../examples/shed.toml")
	require.NoError(t, err)
	text, _, ok := strings.Cut(string(src), "[site]")
	require.True(t, ok, "the site comes last")
	r, ds := pipeline.Run("shed.toml", []byte(text), nil)
	require.False(t, ds.Errors(), "%v", ds)
	m := decoded(t, r)
	assert.Contains(t, m["missing"], "no wind speed")
	assert.Empty(t, m["lifted"])
	assert.Empty(t, m["gaps"])
	assert.NotEmpty(t, m["ties"])
	assert.NotEmpty(t, m["pieces"])
}

// The shed's first eave clip by hand: the catalog gives 4 nails to the rafter
// and 7 to the plate, each 8d x 1 1/2.
func TestAClipOfTheShedByHand(t *testing.T) {
	m := decoded(t, run(t, "shed"))
	var clip object
	each(m, "pieces", func(p object) {
		if p["mark"] == "eave-clip" && clip == nil {
			clip = p
		}
	})
	require.NotNil(t, clip)
	count := map[any]int{}
	each(clip, "fasteners", func(f object) {
		count[clip["ends"].([]any)[int(f["end"].(float64))].(object)["part"]]++
		assert.InDelta(t, 1.5, point(f["head_in"]).length(point(f["tip_in"])), 1e-3)
		n := point(clip["plates"].([]any)[int(f["plate"].(float64))].(object)["normal"])
		head, tip := point(f["head_in"]), point(f["tip_in"])
		along := 0.0
		for i := range n {
			along += n[i] * (tip[i] - head[i])
		}
		assert.InDelta(t, -1.5, along, 1e-3, "square through its plate, into the wood")
	})
	assert.Equal(t, map[any]int{"to rafter": 4, "to plate": 7}, count)
	assert.Len(t, clip["plates"], 2)
}

// Every solid is closed and its faces look outward: by the divergence theorem
// their volumes add up to a positive one, for a stud its section times its
// length.
func TestSolidsOfMembers(t *testing.T) {
	m := decoded(t, run(t, "shed"))
	studs := 0
	each(m, "members", func(x object) {
		v := 0.0
		each(x, "solids", func(s object) { v += volume(s) })
		assert.Positive(t, v, x["id"])
		if x["role"] == "stud" && x["wall"] == "S" {
			section := x["section"].(object)
			want := section["breadth_in"].(float64) * section["depth_in"].(float64) * x["length_in"].(float64)
			assert.InDelta(t, want, v, 0.01*want, x["id"])
			studs++
		}
	})
	assert.Greater(t, studs, 4)
}

// volume adds up the pyramids from the origin to each face.
func volume(s object) (v float64) {
	corners := s["vertices_in"].([]any)
	for _, f := range s["faces"].([]any) {
		loop := f.([]any)
		a := point(corners[int(loop[0].(float64))])
		for i := 1; i+1 < len(loop); i++ {
			b, c := point(corners[int(loop[i].(float64))]), point(corners[int(loop[i+1].(float64))])
			v += a[0]*(b[1]*c[2]-b[2]*c[1]) + a[1]*(b[2]*c[0]-b[0]*c[2]) + a[2]*(b[0]*c[1]-b[1]*c[0])
		}
	}
	return v / 6
}

func TestSameModelTwiceSameBytes(t *testing.T) {
	var out [2]bytes.Buffer
	for i := range out {
		r := run(t, "dunlin")
		loads, _ := loadpath.Run(r.Placement)
		require.NoError(t, model.New(r.Schedule, loads).JSON(&out[i]))
	}
	assert.True(t, bytes.Equal(out[0].Bytes(), out[1].Bytes()))
	assert.NotContains(t, out[0].String(), "-0,")
}
