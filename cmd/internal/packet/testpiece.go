package packet

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/present"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/nest"
	"drawerwright/geom/sheet"
)

// testPieceFrom names an offcut that gives the test piece of a machine, which is as wide as the widest side and has its
// grain along it; or says that none does. Empty without sheets.
func (m maker) testPieceFrom(c present.Machine) string {
	if !joinery.CutterKind(c.Machine).Fenced() {
		return ""
	}
	wide, stock := 0.0, ""
	for _, d := range m.batch.Drawers {
		side := partOf(d, joinery.Side)
		if side == nil || !slices.Contains(c.Drawers, d.Spec.Name) || stock != "" && side.Stock.Name != stock {
			continue
		}
		stock, wide = side.Stock.Name, max(wide, side.Panel.Width())
	}
	for i := range m.plan.Stocks {
		s := &m.plan.Stocks[i]
		if s.Name != stock {
			continue
		}
		for _, one := range s.Laid {
			for k, o := range one.Offcuts {
				if gives(o, wide, s.Grained()) {
					return " The offcut " + m.plan.OffcutName(s.Name, one, 0, k) + " gives it."
				}
			}
		}
		return fmt.Sprintf(" No offcut of %s gives it: have a piece more.", s.Name)
	}
	return ""
}

// gives reports whether an offcut has room for a test piece of a width in mm, which lies along its length where it
// has a grain.
func gives(o nest.Offcut, wide float64, grained bool) bool {
	long, high := geom.Length(o.Length).MM(), geom.Length(o.Width).MM()
	fits := func(long, high float64) bool { return long >= sheet.GuidedEdge && high >= wide }
	return fits(long, high) || !grained && fits(high, long)
}
