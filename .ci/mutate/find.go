package main

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"path/filepath"
	"strconv"
	"strings"
)

// mutant is one change: the source from one offset to another becomes text.
type mutant struct {
	file      string // absolute
	line, col int
	from, to  int // offsets, bytes
	text      string
	what      string // the change in words
	within    [2]int // lines of the function that it is in; 0 for none
}

func (m mutant) String() string {
	return fmt.Sprintf("%s:%d:%d: %s", filepath.Base(m.file), m.line, m.col, m.what)
}

// finder walks one file.
type finder struct {
	p    *target
	file string
	src  []byte
	out  []mutant
	fn   *ast.FuncDecl // that the walk is in
}

// mutants lists every change to the package in the order of its source.
func (p *target) mutants() (out []mutant) {
	for _, f := range p.files {
		name := p.fset.Position(f.FileStart).Filename
		w := &finder{p: p, file: name, src: p.src[name]}
		ast.Inspect(f, w.visit)
		out = append(out, w.out...)
	}
	return out
}

// change adds the mutant that puts text in the place of a range.
func (w *finder) change(from, to token.Pos, text, what string) {
	a, b := w.p.fset.Position(from), w.p.fset.Position(to)
	m := mutant{w.file, a.Line, a.Column, a.Offset, b.Offset, text, what, [2]int{}}
	if f := w.fn; f != nil && from < f.End() {
		m.within = [2]int{w.p.fset.Position(f.Pos()).Line, w.p.fset.Position(f.End()).Line}
	}
	w.out = append(w.out, m)
}

// text returns the source of a node.
func (w *finder) text(n ast.Node) string {
	return string(w.src[w.p.fset.Position(n.Pos()).Offset:w.p.fset.Position(n.End()).Offset])
}

// brief returns the source of a node in one short line.
func (w *finder) brief(n ast.Node) string {
	s := strings.Join(strings.Fields(w.text(n)), " ")
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}

// visit adds the changes at one node; it does not look into imports or types.
func (w *finder) visit(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.ImportSpec, *ast.StructType, *ast.ArrayType, *ast.FuncType:
		return false
	case *ast.FuncDecl:
		w.fn = n
	case *ast.BinaryExpr:
		w.binary(n)
	case *ast.UnaryExpr:
		if n.Op == token.SUB || n.Op == token.NOT {
			w.change(n.OpPos, n.X.Pos(), "", fmt.Sprintf("%s loses its %s", w.brief(n), n.Op))
		}
	case *ast.BasicLit:
		w.number(n)
	case *ast.Ident:
		w.boolean(n)
	case *ast.CallExpr:
		if w.room(n) || w.infinite(n) {
			return false
		}
		w.call(n)
	case *ast.IfStmt:
		w.change(n.Cond.Pos(), n.Cond.End(), "!("+w.text(n.Cond)+")", fmt.Sprintf("condition %s negated", w.brief(n.Cond)))
	case *ast.BlockStmt:
		w.drop(n.List)
	case *ast.CaseClause:
		w.drop(n.Body)
	}
	return true
}

var swaps = map[token.Token]token.Token{
	token.LSS: token.GTR, token.GTR: token.LSS, token.LEQ: token.GEQ, token.GEQ: token.LEQ,
	token.EQL: token.NEQ, token.NEQ: token.EQL, token.LAND: token.LOR, token.LOR: token.LAND,
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.MUL,
}

var bounds = map[token.Token]token.Token{token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR}

// binary swaps an operator. A bound is moved to take in or leave out its own
// value only where values can meet it: between whole numbers, and against a
// number written out; two measured lengths that meet to the last bit are no
// case of their own.
func (w *finder) binary(n *ast.BinaryExpr) {
	if t, ok := w.p.info.TypeOf(n.X).Underlying().(*types.Basic); ok && t.Info()&types.IsString != 0 && n.Op == token.ADD {
		return
	}
	if rounding(n) && (n.Op == token.ADD || n.Op == token.SUB) {
		return
	}
	swap := func(to token.Token) {
		end := n.OpPos + token.Pos(len(n.Op.String()))
		w.change(n.OpPos, end, to.String(), fmt.Sprintf("%s: %s to %s", w.brief(n), n.Op, to))
	}
	if to, ok := swaps[n.Op]; ok {
		swap(to)
	}
	if to, ok := bounds[n.Op]; ok && !rounding(n) && (w.whole(n.X) || literal(n.X) || literal(n.Y)) {
		swap(to)
	}
}

// rounding tells whether one side is a tolerance, which nothing meets to the
// last bit.
func rounding(n *ast.BinaryExpr) bool { return tolerance(n.X) || tolerance(n.Y) }

// tolerance tells whether an expression is a fraction so small that it only
// takes up rounding.
func tolerance(e ast.Expr) bool {
	l, ok := e.(*ast.BasicLit)
	if !ok || l.Kind != token.FLOAT {
		return false
	}
	f, err := strconv.ParseFloat(l.Value, 64)
	return err == nil && f != 0 && f < 1e-3
}

// room tells whether a call makes something of a given room: how much there is
// changes nothing.
func (w *finder) room(n *ast.CallExpr) bool {
	if w.text(n.Fun) != "make" || len(n.Args) < 2 {
		return false
	}
	_, isMap := w.p.info.TypeOf(n.Args[0]).Underlying().(*types.Map)
	return isMap || len(n.Args) == 3
}

// infinite turns the sign of an infinity around: of the number that it is called
// with only the sign counts.
func (w *finder) infinite(n *ast.CallExpr) bool {
	if w.text(n.Fun) != "math.Inf" {
		return false
	}
	to := "math.Inf(-1)"
	if w.text(n) == to {
		to = "math.Inf(1)"
	}
	w.change(n.Pos(), n.End(), to, fmt.Sprintf("%s to %s", w.text(n), to))
	return true
}

// whole tells whether an expression is an integer.
func (w *finder) whole(e ast.Expr) bool {
	t, ok := w.p.info.TypeOf(e).Underlying().(*types.Basic)
	return ok && t.Info()&types.IsInteger != 0
}

// literal tells whether an expression is a number written out, other than 0.
func literal(e ast.Expr) bool {
	l, ok := e.(*ast.BasicLit)
	return ok && l.Value != "0"
}

// number moves a whole number by one, a fraction and what is too large to count
// things, such as a strength in psi, by a quarter of itself.
// It leaves a zero of measures and a tolerance: what lies just beside them is
// no case of its own.
func (w *finder) number(n *ast.BasicLit) {
	if f, err := strconv.ParseFloat(n.Value, 64); err == nil && f < 1e-3 && !w.whole(n) {
		return
	}
	v := constant.MakeFromLiteral(n.Value, n.Kind, 0)
	for _, step := range []int64{1, -1} {
		var to string
		switch n.Kind {
		case token.INT:
			if i, ok := constant.Int64Val(v); ok && i >= measured {
				step *= i / 4
			}
			to = constant.BinaryOp(v, token.ADD, constant.MakeInt64(step)).ExactString()
		case token.FLOAT:
			f, _ := constant.Float64Val(v)
			to = fmt.Sprint(f * (1 + 0.25*float64(step)))
		default:
			return
		}
		w.change(n.Pos(), n.End(), to, fmt.Sprintf("%s to %s", n.Value, to))
	}
}

// measured is from where on a whole number measures something: one more of it is
// less than any output prints.
const measured = 10_000

// boolean turns true and false around.
func (w *finder) boolean(n *ast.Ident) {
	c, ok := w.p.info.Uses[n].(*types.Const)
	if !ok || c.Parent() != types.Universe {
		return
	}
	switch n.Name {
	case "true":
		w.change(n.Pos(), n.End(), "false", "true to false")
	case "false":
		w.change(n.Pos(), n.End(), "true", "false to true")
	}
}

var calls = map[string]string{"min": "max", "max": "min", "math.Min": "math.Max", "math.Max": "math.Min", "math.Floor": "math.Ceil", "math.Ceil": "math.Floor"}

// call swaps min and max, floor and ceiling, and takes away an append.
func (w *finder) call(n *ast.CallExpr) {
	name := w.text(n.Fun)
	if to, ok := calls[name]; ok {
		w.change(n.Fun.Pos(), n.Fun.End(), to, fmt.Sprintf("%s: %s to %s", w.brief(n), name, to))
	}
	if name == "append" && len(n.Args) > 1 {
		w.change(n.Pos(), n.End(), w.text(n.Args[0]), w.brief(n)+" appends nothing")
	}
}

// drop takes away each statement that does something and declares nothing.
func (w *finder) drop(list []ast.Stmt) {
	for _, s := range list {
		switch s := s.(type) {
		case *ast.AssignStmt:
			if s.Tok == token.DEFINE {
				continue
			}
		case *ast.ExprStmt, *ast.IncDecStmt, *ast.BranchStmt, *ast.DeferStmt:
		default:
			continue
		}
		w.change(s.Pos(), s.End(), "", "removed: "+w.brief(s))
	}
}
