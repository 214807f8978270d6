package read_test

import (
	"go/ast"
	"go/types"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"galewright/plan"
	"galewright/plan/plantest"
)

// reads notes Type.Field of every field of package plan that the code reads.
// What stands left of an assignment or of a colon in a literal is written,
// not read.
func reads(x *plantest.Typed, used map[string]bool) {
	written := map[ast.Expr]bool{}
	for _, f := range x.Files {
		ast.Inspect(f, func(n ast.Node) bool {
			if a, ok := n.(*ast.AssignStmt); ok {
				for _, e := range a.Lhs {
					written[e] = true
				}
			}
			return true
		})
	}
	for e, s := range x.Info.Selections {
		if owner := ownerOf(s); owner != "" && !written[e] {
			used[owner+"."+s.Obj().Name()] = true
		}
	}
}

// ownerOf returns the name of the struct of package plan that a selected
// field stands in, through whatever embeds it; "" for any other.
func ownerOf(s *types.Selection) string {
	if s.Kind() != types.FieldVal {
		return ""
	}
	t := s.Recv()
	owner := ""
	for _, i := range s.Index() {
		if p, ok := t.Underlying().(*types.Pointer); ok {
			t = p.Elem()
		}
		owner = plantest.Named(t)
		t = t.Underlying().(*types.Struct).Field(i).Type()
	}
	return owner
}

// idle are fields that no stage reads, each with its reason.
var idle = map[string]string{"Where.Given": "places of keys, for the reader's own faults"}

// A key that is read into a field which nobody looks at would be documented,
// accepted and ignored: each field of the model has a reader outside of the
// packages that fill and describe it.
func TestEveryFieldOfTheModelHasAUser(t *testing.T) {
	used := map[string]bool{}
	program := plantest.Load(t)
	for _, p := range program.Packages {
		switch strings.TrimPrefix(p.ImportPath, "galewright/plan/") {
		case "read", "schema", "faults", "plantest":
			continue
		}
		reads(program.Typed(t, p), used)
	}
	fields := all(reflect.TypeFor[plan.Plan](), map[reflect.Type]bool{})
	require.Contains(t, fields, "Where.LinesUp")
	unread := slices.DeleteFunc(slices.Clone(fields), func(f string) bool { return used[f] || idle[f] != "" || strings.HasSuffix(f, ".Pos") })
	require.Empty(t, unread, "fields that nobody reads")
	for f := range idle {
		require.Contains(t, fields, f)
		require.False(t, used[f], "%s has a reader", f)
	}
}
