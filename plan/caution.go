package plan

import "fmt"

// Caution stands on every output: sheets and poster pages, lists, checks,
// CSV and JSON. It has this one wording.
const Caution = "Placed and computed from the plan as given; not a substitute for the engineer's sealed drawings and calculations. " +
	"The engineer of record, local code, the manufacturer's current data and licensed practice govern."

// Head opens every JSON output: the schema it follows, and the caution.
type Head struct {
	Schema  string `json:"schema"` // "galewright/count/1": output and version; `galewright schema count` prints it
	Caution string `json:"caution"`
}

// HeadOf returns the head of an output. The version goes up by one when a key
// is renamed, taken away or means something else; a new key leaves it.
func HeadOf(output string, version int) Head {
	return Head{fmt.Sprintf("galewright/%s/%d", output, version), Caution}
}
