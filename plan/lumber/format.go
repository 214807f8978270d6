package lumber

import (
	"fmt"
	"io"
)

// Write writes the list as "table", "csv" or "json".
func (c *Cut) Write(w io.Writer, format string) error {
	switch format {
	case "table":
		return c.Text(w)
	case "csv":
		return c.CSV(w)
	case "json":
		return c.JSON(w)
	}
	return fmt.Errorf("a lumber list is written as table, csv or json, not %q", format)
}
