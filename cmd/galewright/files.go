package main

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"maps"
	"slices"

	"galewright/cmd/galewright/folder"
	"galewright/plan"
)

// begin starts a set of sheets in dir, of the plan with these sources on paper.
func begin(dir string, src sources, paper string) (*folder.Set, error) {
	set, err := folder.Begin(dir, src.state(paper))
	if errors.Is(err, folder.ErrPlace) {
		return nil, usagef("draw: --out: %s", err)
	}
	return set, err
}

// commit puts the set in its place and tells which sheets there are older.
func commit(set *folder.Set, dir string, whole bool, s streams) error {
	stale, err := set.Commit(plan.Caution, whole)
	if err != nil || len(stale) == 0 {
		return err
	}
	_, err = fmt.Fprintf(s.err, "galewright: %s still holds %s of another state of the plan, or for other paper (%s to %s): draw the whole set before you post it\n",
		dir, plural(len(stale), "file"), stale[0], stale[len(stale)-1])
	return err
}

// state names what the sheets are drawn from: a digest of all texts read and of the
// paper. It does not name folders: a moved plan is the same plan.
func (src sources) state(paper string) string {
	texts := slices.Sorted(maps.Values(src))
	h := sha256.New()
	for _, text := range append(slices.Compact(texts), paper) {
		fmt.Fprintf(h, "%d %s", len(text), text)
	}
	return fmt.Sprintf("%x", h.Sum(nil)[:6])
}
