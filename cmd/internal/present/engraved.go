package present

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// numbered prints which number is on which parts, and which have none.
func numbered(out *Printed, r record.Kept, u geom.Unit) {
	var order []string
	parts := make(map[string][]string)
	for _, p := range r.Parts.All() {
		if p.Engraved == nil {
			continue
		}
		e := p.Engraved
		high, deep := caliper(e.Height, u), caliper(e.Depth, u)
		line := fmt.Sprintf("  %s  on the %s face, %s high, %s deep: ", e.Number, e.Face, high, deep)
		if e.Reason != "" {
			line = fmt.Sprintf("  %s  left out, %s: ", e.Number, e.Reason)
		}
		if parts[line] == nil {
			order = append(order, line)
		}
		parts[line] = append(parts[line], p.Name)
	}
	if len(order) == 0 {
		return
	}
	fmt.Fprintln(out, "engraved numbers: parts that are cut alike have one, where it does not show in the box")
	for _, line := range order {
		fmt.Fprintln(out, line+strings.Join(parts[line], ", "))
	}
	fmt.Fprintln(out)
}
