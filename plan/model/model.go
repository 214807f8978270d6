package model

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"text/tabwriter"

	"galewright/plan"
	"galewright/plan/lift"
	"galewright/plan/loadpath"
	"galewright/plan/schedule"
)

// Model is a house as it stands, with all hardware in space.
type Model struct {
	members []jsonMember
	joints  []jsonJoint
	pieces  []jsonPiece
	// missing says why no uplift is known and so nothing is lifted, "" when it
	// is.
	missing string
	ties    []jsonTie
	lifted  []string // members that uplift reaches
	gaps    []string // of them, those where it ends
}

// jsonTie is an edge that takes tension; one to the ground has no b.
type jsonTie struct {
	A  string `json:"a"`
	B  string `json:"b,omitempty"`
	By string `json:"by"`
}

// New reads the model out of a counted house and its load path; where the
// plan gives no wind basis the report says what is missing, and only ties are
// known.
func New(count *schedule.Schedule, loads *loadpath.Report) *Model {
	s := count.Steel
	h := s.Placed.House
	m := &Model{members: membersOf(h), joints: jointsOf(h), pieces: piecesOf(s, count), missing: loads.Missing}
	if l := loads.Lift(); l != nil {
		m.ties, m.lifted = tiesOf(l.Ties), ids(l.Lifted)
		for _, g := range l.Gaps {
			m.gaps = append(m.gaps, g.Member.ID)
		}
		return m
	}
	m.ties = tiesOf(s.Ties())
	return m
}

func tiesOf(ties []lift.Tie) []jsonTie {
	out := make([]jsonTie, len(ties))
	for i, t := range ties {
		out[i] = jsonTie{t.A.ID, idOf(t.B), t.By}
	}
	return out
}

// JSON writes the model: one member, joint, piece or tie a line.
func (m *Model) JSON(w io.Writer) error {
	var b bytes.Buffer
	head := plan.HeadOf("model", 1)
	fmt.Fprintf(&b, "{\n\"schema\": %q,\n\"caution\": %q", head.Schema, head.Caution)
	if m.missing != "" {
		fmt.Fprintf(&b, ",\n\"missing\": %q", m.missing)
	}
	for _, err := range []error{
		rows(&b, "members", m.members), rows(&b, "joints", m.joints), rows(&b, "pieces", m.pieces),
		rows(&b, "ties", m.ties), rows(&b, "lifted", m.lifted), rows(&b, "gaps", m.gaps),
	} {
		if err != nil {
			return err
		}
	}
	b.WriteString("\n}\n")
	_, err := w.Write(b.Bytes())
	return err
}

// rows writes a key with a list, one entry a line.
func rows[T any](b *bytes.Buffer, key string, list []T) error {
	fmt.Fprintf(b, ",\n%q: [", key)
	for i, x := range list {
		if i > 0 {
			b.WriteByte(',')
		}
		var line bytes.Buffer
		e := json.NewEncoder(&line)
		e.SetEscapeHTML(false)
		if err := e.Encode(x); err != nil {
			return fmt.Errorf("writing %s: %w", key, err)
		}
		b.WriteByte('\n')
		b.Write(bytes.TrimSuffix(line.Bytes(), []byte("\n")))
	}
	b.WriteByte(']')
	return nil
}

// Text writes how much of each there is: the model itself is for programs.
func (m *Model) Text(w io.Writer) error {
	fasteners, rods := 0, 0
	for _, p := range m.pieces {
		fasteners += len(p.Fasteners)
		rods += len(p.Rods)
	}
	fmt.Fprintf(w, "%s\n\n", plan.Caution)
	t := tabwriter.NewWriter(w, 0, 4, 2, ' ', 0)
	for _, row := range []struct {
		what string
		n    int
	}{
		{"members", len(m.members)},
		{"joints", len(m.joints)},
		{"pieces", len(m.pieces)},
		{"fasteners in space", fasteners},
		{"rods", rods},
		{"ties of the lift test", len(m.ties)},
		{"members that uplift reaches", len(m.lifted)},
		{"of them, members where it ends above the ground", len(m.gaps)},
	} {
		fmt.Fprintf(t, "%s\t%d\n", row.what, row.n)
	}
	if m.missing != "" {
		fmt.Fprintf(t, "no uplift known\t%s\n", m.missing)
	}
	return t.Flush()
}
