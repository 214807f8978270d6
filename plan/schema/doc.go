// Package schema holds the JSON Schemas: of each JSON output, by its name, as
// files of draft 2020-12 (outputs/*.json; tests in golden and cmd hold every
// output to its own), and of a plan. For the plan it writes the schema by
// which a TOML editor completes and checks a plan while it is typed: the
// reader's own list of keys flows in, one deterministic JSON document flows
// out; the copy beside the examples is compared with it by a test. It stays
// within what draft 7 readers know.
package schema
