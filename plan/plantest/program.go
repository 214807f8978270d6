package plantest

import (
	"encoding/json"
	"errors"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Package is one package of the program as go list tells of it.
type Package struct {
	ImportPath, Dir, Export string
	GoFiles                 []string // without tests
}

// Program is all packages of the program, with the compiled exports of
// whatever they import.
type Program struct {
	Packages []Package
	exports  map[string]string
}

// Load lists the packages of the program.
func Load(t testing.TB) *Program {
	cmd := exec.Command("go", "list", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles", "galewright/...")
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	require.NoError(t, err)
	p := &Program{exports: map[string]string{}}
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var one Package
		err := d.Decode(&one)
		if errors.Is(err, io.EOF) {
			return p
		}
		require.NoError(t, err)
		p.exports[one.ImportPath] = one.Export
		if strings.HasPrefix(one.ImportPath, "galewright/") {
			p.Packages = append(p.Packages, one)
		}
	}
}

// Typed is a parsed package with the types of its expressions.
type Typed struct {
	Package
	Fset  *token.FileSet
	Files []*ast.File
	Info  *types.Info
}

// Typed parses a package and finds the types of its expressions.
func (p *Program) Typed(t testing.TB, one Package) *Typed {
	x := &Typed{Package: one, Fset: token.NewFileSet(), Info: &types.Info{
		Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{},
		Uses: map[*ast.Ident]types.Object{}, Selections: map[*ast.SelectorExpr]*types.Selection{},
	}}
	for _, name := range one.GoFiles {
		f, err := parser.ParseFile(x.Fset, filepath.Join(one.Dir, name), nil, 0)
		require.NoError(t, err)
		x.Files = append(x.Files, f)
	}
	open := func(path string) (io.ReadCloser, error) { return os.Open(p.exports[path]) }
	conf := types.Config{Importer: importer.ForCompiler(x.Fset, "gc", open)}
	_, err := conf.Check(one.ImportPath, x.Fset, x.Files, x.Info)
	require.NoError(t, err)
	return x
}

// Named returns the name of a type that package plan declares, "" for any
// other type.
func Named(t types.Type) string {
	n, ok := t.(*types.Named)
	if !ok || n.Obj().Pkg() == nil || n.Obj().Pkg().Path() != "galewright/plan" {
		return ""
	}
	return n.Obj().Name()
}
