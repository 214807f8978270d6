// Command galewright turns a TOML plan of a house into hardware location
// sheets, a count, and the checks that go with them.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}
