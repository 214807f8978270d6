// Package schema writes the JSON Schema by which a TOML editor completes and
// checks a plan while it is typed. The reader's own list of keys flows in,
// one deterministic JSON document flows out; the copy beside the examples is
// compared with it by a test. It stays within what draft 7 readers know.
package schema
