package batch

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/opening"
	"drawerwright/geom/supplies"
)

// Buy is one thing that a job takes beside board.
type Buy struct {
	Kind     string // slide, packing, shim, strips of wooden runners, hardware, offcut, banding, glue
	Name     string
	Quantity float64
	Unit     string // pieces, pairs, m or ft, g or oz
	Cost     float64
}

// ToBuy lists slides, what goes behind them, hardware, edge banding and glue, in order of first use.
func ToBuy(b Batch) []Buy {
	var list []Buy
	for _, s := range supplies.For(b.supplied()) {
		one := bought(s, b.Units)
		i := slices.IndexFunc(list, func(x Buy) bool { return x.Kind == one.Kind && x.Name == one.Name })
		switch {
		case one.Quantity == 0:
		case i >= 0:
			list[i].Quantity += one.Quantity
			list[i].Cost += one.Cost
		default:
			list = append(list, one)
		}
	}
	for i, one := range list {
		if one.Quantity == 1 {
			list[i].Unit = strings.TrimSuffix(one.Unit, "s") // 1 piece, 1 pair
		}
	}
	return list
}

// supplied are the drawers with what they take beside board.
func (b Batch) supplied() (list []supplies.Drawer) {
	for _, d := range b.Drawers {
		one := supplies.Drawer{Drawer: d.Drawer, Slide: d.Strength.Slide, SlideLength: d.Strength.SlideLength,
			Packing: d.Strength.Packing, Shim: d.Strength.Shim,
			Strips: d.Strength.Strips, GluedUp: b.gluedUp(d)}
		for _, p := range d.Parts {
			one.Banded = append(one.Banded, supplies.Banded{Stock: p.Stock.Name, Edge: p.Banding, Thickness: p.BandingThickness,
				Price: p.BandingPrice, Pieces: p.Quantity})
		}
		list = append(list, one)
	}
	return list
}

// slideName is a slide's name with its length, unless the name ends in that: a job may name its slides by their lengths.
func slideName(name string, long geom.Length, u geom.Unit) string {
	sold := words.Sold(long.MM(), u)
	number := strings.TrimSuffix(strings.TrimSuffix(sold, " mm"), " in")
	for _, said := range []string{sold, number} {
		if name == said || strings.HasSuffix(name, " "+said) || strings.HasSuffix(name, "-"+said) {
			return strings.TrimSuffix(name, said) + sold
		}
	}
	return name + " " + sold
}

// bought is a supply by the name and in the unit in which it is sold.
func bought(s supplies.Supply, u geom.Unit) Buy {
	out := Buy{Kind: string(s.Kind), Quantity: s.Quantity, Unit: "pieces", Cost: s.Cost}
	switch s.Kind {
	case supplies.Slides:
		if s.Slide.Pair() {
			out.Unit = "pairs"
		}
		out.Name = slideName(s.Slide.Name, geom.LengthOf(s.SlideLength), u)
		if s.Slide.Load > 0 {
			out.Name += ", for " + words.Rating(s.Slide.Load, u)
		}
	case supplies.Packing, supplies.Shim:
		out.Name = fmt.Sprintf("%s thick, %s x %s %s, behind %s", words.Length(s.Thickness, u),
			words.Tape(s.SlideLength, u),
			words.Tape(s.Slide.Height, u), u, s.Slide.Name)
	case supplies.Kind(opening.Runner), supplies.Kind(opening.WearStrip), supplies.Kind(opening.Kicker),
		supplies.Kind(opening.Guide), supplies.Kind(opening.FrontRail), supplies.Kind(opening.BackRail):
		out.Name = fmt.Sprintf("%s x %s x %s %s, of straight wood", words.Tape(s.Strip.Length, u),
			words.Tape(s.Strip.Width, u), words.Tape(s.Strip.High, u), u)
	case supplies.Kind(opening.DustPanel):
		out.Name = fmt.Sprintf("%s x %s x %s %s, of sheet", words.Tape(s.Strip.Length, u),
			words.Tape(s.Strip.Width, u), words.Tape(s.Strip.High, u), u)
	case supplies.Banding:
		out.Name = geom.LengthOf(s.Banded.Thickness).Text(u) + ", for " + s.Banded.Stock
		out.Quantity, out.Unit = words.Run(s.Quantity, u)
	case supplies.Glue:
		area, of := words.Area(s.Area, u)
		out.Name = fmt.Sprintf("for %.2f %s of joints", area, of)
		out.Quantity, out.Unit = words.Little(s.Quantity, u)
	default:
		out.Name = s.Item.Name
	}
	return out
}
