package present

import (
	"strings"
	"testing"

	"drawerwright/geom"
)

// TestBottomsHaveFrontEdges: holes in a bottom are measured from its front edge, as on its drawing, those in walls from
// the lower one.
func TestBottomsHaveFrontEdges(t *testing.T) {
	for bottom, edge := range map[bool]string{true: "the front edge", false: "the lower edge"} {
		c := CutStep{Work: "bored", Places: []Spot{{X: 10, Y: 20}}, bottom: bottom}
		if said := c.at(geom.Millimeter); !strings.Contains(said, edge) {
			t.Error(said)
		}
	}
}
