package plan_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/framing"
	"galewright/plan/hardware"
)

func TestEveryJointRowIsWhole(t *testing.T) {
	require.NotEmpty(t, plan.Joints)
	words := map[string]plan.JointKind{}
	for _, r := range plan.Joints {
		require.Empty(t, r.Lacks(), r.Kind)
		require.Same(t, r, r.Kind.Row())
		require.Equal(t, r.Lies, r.Kind.Lies())
		for _, s := range []string{string(r.Kind), r.Code, r.One, r.Many} {
			require.True(t, words[s] == "" || words[s] == r.Kind, "%s of %s is that of %s", s, r.Kind, words[s])
			words[s] = r.Kind
		}
		for i, p := range r.Places {
			require.Contains(t, plan.JointHosts, p.Host, r.Kind)
			require.Contains(t, plan.JointSheets, p.Home, r.Kind)
			require.Equal(t, i == 0 && p.Host == plan.WallHost, p.Home == plan.ElevationSheet, "%s: elevations are of walls", r.Kind)
		}
		require.True(t, r.Shown == "" || slices.Contains(plan.JointSheets, r.Shown), r.Kind)
		require.Contains(t, plan.JointLies, r.Lies, r.Kind)
	}
}

// An item of hardware can be asked for at every kind of joint.
func TestSomeHardwareBelongsAtEveryJoint(t *testing.T) {
	for _, j := range plan.JointKinds() {
		require.True(t, slices.ContainsFunc(hardware.Kinds, func(k *hardware.Kind) bool { return slices.Contains(k.On, j) }), j)
	}
}

func TestRowsThatLackSomethingSaySo(t *testing.T) {
	whole := *plan.StudTop.Row()
	for lack, slip := range map[string]func(*plan.JointRow){
		"kind, two letters and a clause":             func(r *plan.JointRow) { r.Code = "STT" },
		"its words, one and several":                 func(r *plan.JointRow) { r.Many = "" },
		"a host with its home sheet":                 func(r *plan.JointRow) { r.Places = nil },
		"how hardware lies there":                    func(r *plan.JointRow) { r.Lies = "" },
		"either a load check or the reason for none": func(r *plan.JointRow) { r.Check = "" },
	} {
		r := whole
		slip(&r)
		require.Equal(t, lack, r.Lacks())
	}
	both := whole
	both.Unchecked = "not checked yet"
	require.NotEmpty(t, both.Lacks())
}

func TestAnUnknownKindOfJointHasNothing(t *testing.T) {
	sky := plan.JointKind("roof-sky")
	require.Nil(t, sky.Row())
	require.Empty(t, sky.Code())
	require.Empty(t, sky.Lies())
	require.Empty(t, sky.Shown())
	require.Empty(t, sky.Place(true))
	require.Empty(t, plan.StudTop.Place(false), "a stud has a wall")
	require.Equal(t, plan.PorchHost, plan.RafterPlate.Place(false).Host)
	require.Equal(t, "roof main", (&framing.Joint{Kind: plan.RafterRidge, Host: "main"}).HostName())
	require.Equal(t, "wall 1S", (&framing.Joint{Kind: plan.RafterPlate, Host: "1S", Wall: &plan.Wall{}}).HostName())
	require.Equal(t, "porch P", (&framing.Joint{Kind: plan.RafterPlate, Host: "P"}).HostName())
	require.Equal(t, "girder G1", (&framing.Joint{Kind: plan.GirderPile, Host: "G1"}).HostName())
}
