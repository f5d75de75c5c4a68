package report

import (
	"bytes"
	"fmt"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
)

// Engraved is the number of a part, that of all parts that are cut alike.
type Engraved struct {
	Number string `json:"number"`
	Face   string `json:"face,omitempty"`
	// X and Y are its lower left corner as it is read, in panel coordinates; on the outside
	// face it runs from there to the left.
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Height float64 `json:"height"`
	Depth  float64 `json:"depth"`
	Why    string  `json:"why,omitempty"` // why it was left out
}

func engraved(p batch.Part, depth float64, n func(float64) float64) *Engraved {
	e := p.Engraved
	switch {
	case e == nil:
		return nil
	case e.Room != "":
		return &Engraved{Number: e.Number, Why: e.Room}
	}
	return &Engraved{e.Number, e.Face.String(), n(e.At.X), n(e.At.Y), n(e.Height), n(depth), ""}
}

// numbered prints which number is on which parts, and which have none.
func numbered(out *bytes.Buffer, r Report, u geom.Unit) {
	var order []string
	parts := make(map[string][]string)
	for _, p := range r.Parts {
		if p.Engraved == nil {
			continue
		}
		e := p.Engraved
		high, deep := caliper(e.Height, u), caliper(e.Depth, u)
		line := fmt.Sprintf("  %s  on the %s face, %s high, %s deep: ", e.Number, e.Face, high, deep)
		if e.Why != "" {
			line = fmt.Sprintf("  %s  left out, %s: ", e.Number, e.Why)
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
