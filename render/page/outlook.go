package page

import "slices"

// Foreseen is a sheet as it will be in the set.
type Foreseen struct {
	Number, Name, Base, Scale string // as Page has them
	Series                    int    // first digit of its number
	Keys                      []string
}

// Outlook is the sheets of a set as they will be, in order.
type Outlook []Foreseen

// Of returns the numbers of the sheets that carry the key.
func (o Outlook) Of(key string) (ns []string) {
	for _, s := range o {
		if slices.Contains(s.Keys, key) {
			ns = append(ns, s.Number)
		}
	}
	return ns
}
