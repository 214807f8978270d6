package pos

import (
	"fmt"
	"strings"
)

// Pos is a place in a source file; both numbers start at 1, and columns
// count bytes.
type Pos struct{ Line, Col int }

// Index maps a key path such as "wall[1].opening[0].at" to its place. Paths
// are kept with a leading dot, so that an empty key is no special case.
type Index struct {
	at   map[string]Pos
	keys []string // dotted keys without indexes, in document order
}

// Keys returns the dotted keys without indexes, in document order.
func (x *Index) Keys() []string { return x.keys }

// Pos returns the place of path, or of its nearest ancestor that has one.
func (x *Index) Pos(path string) (Pos, bool) {
	for path = "." + path; path != ""; {
		if p, ok := x.at[path]; ok {
			return p, true
		}
		path = path[:max(strings.LastIndexAny(path, ".["), 0)]
	}
	return Pos{}, false
}

// NewIndex scans src, which must already have been accepted by the decoder.
func NewIndex(src string) (x *Index, err error) {
	src = strings.TrimPrefix(src, "\ufeff")
	s := &scanner{src: src, x: &Index{at: map[string]Pos{}}, tables: map[string]int{}}
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("position index: %v at byte %d", r, s.i)
		}
	}()
	s.document()
	return s.x, nil
}
