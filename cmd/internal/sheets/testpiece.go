package sheets

import (
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/nest"
	"drawerwright/geom/sheet"
)

// TestPiece is the board of a test cut, as wide as the widest side, which has its grain along it.
type TestPiece struct {
	Stock         string
	Length, Width float64 // the least, in mm
	Offcut        string  // the name of one that gives it; empty where none does
}

// TestPieces are those of machines with a fence, by the kind of their cutter. Stocks without sheets have none.
func (p *Plan) TestPieces(drawers []batch.Drawer) map[joinery.CutterKind]TestPiece {
	out := make(map[joinery.CutterKind]TestPiece)
	for _, d := range drawers {
		i := slices.IndexFunc(d.Parts, func(part batch.Part) bool { return part.Role == joinery.Side })
		if kind := d.Spec.Cutter.Kind; kind.Fenced() && i >= 0 {
			side, t := d.Parts[i], out[kind]
			if t.Stock != "" && t.Stock != side.Stock.Name {
				continue
			}
			out[kind] = TestPiece{Stock: side.Stock.Name, Length: sheet.GuidedEdge, Width: max(t.Width, side.Panel.Width())}
		}
	}
	for kind, t := range out {
		i := slices.IndexFunc(p.Stocks, func(s Stock) bool { return s.Name == t.Stock })
		if i < 0 {
			delete(out, kind)
			continue
		}
		t.Offcut = p.givenBy(&p.Stocks[i], t)
		out[kind] = t
	}
	return out
}

// from reports whether an offcut has room for a test piece, which lies along its length where it has a grain.
func (t TestPiece) from(o nest.Offcut, grained bool) bool {
	long, high := geom.Length(o.Length).MM(), geom.Length(o.Width).MM()
	fits := func(long, high float64) bool { return long >= t.Length && high >= t.Width }
	return fits(long, high) || !grained && fits(high, long)
}

// givenBy is the name of the first offcut with room for a test piece; empty where there is none.
func (p *Plan) givenBy(s *Stock, t TestPiece) string {
	for _, one := range s.Laid {
		if k := slices.IndexFunc(one.Offcuts, func(o nest.Offcut) bool { return t.from(o, s.Grained()) }); k >= 0 {
			return p.OffcutName(s.Name, one, 0, k)
		}
	}
	return ""
}
