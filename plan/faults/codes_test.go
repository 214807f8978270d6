package faults_test

import (
	"go/ast"
	"go/constant"
	"testing"

	"galewright/plan"
	"galewright/plan/plantest"
)

// codes finds every code in the program: each constant of type plan.Code,
// with one place where it stands. A code that is put together as the program
// runs could not be found, and is refused.
func codes(t *testing.T) map[plan.Code]string {
	found := map[plan.Code]string{}
	program := plantest.Load(t)
	for _, p := range program.Packages {
		x := program.Typed(t, p)
		for e, tv := range x.Info.Types {
			if p.ImportPath == "galewright/plan/faults" || plantest.Named(tv.Type) != "Code" || tv.IsType() {
				continue
			}
			at := x.Fset.Position(e.Pos()).String()
			if tv.Value != nil {
				if c := plan.Code(constant.StringVal(tv.Value)); c != "" && (found[c] == "" || at < found[c]) {
					found[c] = at
				}
				continue
			}
			if call, ok := e.(*ast.CallExpr); ok && x.Info.Types[call.Fun].IsType() {
				t.Errorf("%s: a code is made as the program runs; write it out", at)
			}
		}
	}
	return found
}
