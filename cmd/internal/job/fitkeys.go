package job

import (
	"fmt"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/stock"
)

// noSource is why a figure is what it is that no standard gives.
const noSource = "common practice, no source"

// limitLength is one of the limits of a finished box.
type limitLength struct {
	name string
	of   func(*joinery.Limits) *float64
	max  float64
	doc  string
}

var limitLengths = []limitLength{
	{"min-tongue-clearance", func(l *joinery.Limits) *float64 { return &l.TongueClearance.Min }, maxClearance, "The least clearance of a tongue in its dado: with less, glue is scraped off"},
	{"max-tongue-clearance", func(l *joinery.Limits) *float64 { return &l.TongueClearance.Max }, maxClearance, "The most clearance of a tongue in its dado: with more, a corner can rack while the glue sets"},
	{"min-groove-clearance", func(l *joinery.Limits) *float64 { return &l.GrooveClearance.Min }, maxClearance, "The least clearance of the bottom in its groove"},
	{"max-groove-clearance", func(l *joinery.Limits) *float64 { return &l.GrooveClearance.Max }, maxClearance, "The most clearance of the bottom in its groove: with more, it rattles"},
	{"min-bottom-clearance", func(l *joinery.Limits) *float64 { return &l.BottomClearance.Min }, maxBottomClearance, "How much smaller than its grooves the bottom is at least, each way"},
	{"max-bottom-clearance", func(l *joinery.Limits) *float64 { return &l.BottomClearance.Max }, maxBottomClearance, "How much smaller than its grooves it is at most"},
	{"flush", func(l *joinery.Limits) *float64 { return &l.Flush }, maxClearance, "How far the box front may stand before or behind the ends of the sides and be called flush"},
	{"shoulder-gap", func(l *joinery.Limits) *float64 { return &l.ShoulderGap }, maxClearance, "How far the shoulder of a corner may stay open"},
	{"end-clearance", func(l *joinery.Limits) *float64 { return &l.EndClearance }, maxClearance, "How much clearance a tongue's end may have before the floor of its dado, the glue space included"},
	{"width", func(l *joinery.Limits) *float64 { return &l.Width }, maxClearance, "By how much the width of a box may be off"},
	{"depth", func(l *joinery.Limits) *float64 { return &l.Depth }, maxClearance, "By how much the depth of a box may be off"},
	{"height", func(l *joinery.Limits) *float64 { return &l.Height }, maxClearance, "By how much the height of a box may be off"},
	{"diagonal", func(l *joinery.Limits) *float64 { return &l.Diagonal }, maxBottomClearance, "By how much a diagonal may be off, and how far the two may be from each other"},
}

var limitKeys = func() (keys []key) {
	for _, l := range limitLengths {
		usual, inInches := joinery.UsualLimits(geom.Millimeter), joinery.UsualLimits(geom.Inch)
		usually := mm(*l.of(&usual))
		keys = append(keys, key{name: l.name, form: formLength, min: 0, max: l.max, doc: l.doc,
			fallback: usually, inInch: inch(*l.of(&inInches)), example: usually, why: noSource})
	}
	return keys
}()

// limits reads the limits of the file. A least one over its most is reported, and nothing is judged
// by the two.
func (r *reader) limits(s *section) joinery.Limits {
	l := joinery.UsualLimits(r.units)
	for _, k := range limitLengths {
		if v := s.values[k.name]; len(v.lengths) > 0 {
			*k.of(&l) = v.mm(0)
		}
	}
	usual := joinery.UsualLimits(r.units)
	for _, pair := range []struct {
		name         string
		limit, usual *geom.Interval
	}{
		{"tongue-clearance", &l.TongueClearance, &usual.TongueClearance},
		{"groove-clearance", &l.GrooveClearance, &usual.GrooveClearance},
		{"bottom-clearance", &l.BottomClearance, &usual.BottomClearance},
	} {
		if pair.limit.Min > pair.limit.Max {
			at := either(s.values["max-"+pair.name], s.values["min-"+pair.name]).at
			r.fail(CodeOutOfRange, at, "write the smaller of the two as the minimum",
				"min-%s is %s, more than max-%s, %s", pair.name,
				geom.LengthOf(pair.limit.Min).Text(r.units), pair.name, geom.LengthOf(pair.limit.Max).Text(r.units))
			*pair.limit = *pair.usual
		}
	}
	return l
}

// accuracyLength is one of the errors of a shop.
type accuracyLength struct {
	name string
	of   func(*fit.Accuracy) *float64
	doc  string
}

var accuracyLengths = []accuracyLength{
	{"cutter", func(a *fit.Accuracy) *float64 { return &a.Cutter }, "How well the width of the slot is known, from one mounting of the cutter to the next"},
	{"cut", func(a *fit.Accuracy) *float64 { return &a.Cut }, "By how much one cut differs from the next at one setting"},
	{"fence", func(a *fit.Accuracy) *float64 { return &a.Fence }, "How well a fence is set; of a router, how well a board is placed"},
	{"height", func(a *fit.Accuracy) *float64 { return &a.Height }, "How well the height of a cutter is set; of a router, its zero"},
	{"length", func(a *fit.Accuracy) *float64 { return &a.Length }, "How well parts are cut to length and width"},
}

var accuracyKeys = func() (keys []key) {
	keys = append(keys, keepKeys...)
	for _, a := range accuracyLengths {
		var each []string
		for _, k := range joinery.Kinds {
			usual := fit.AccuracyOf(k)
			each = append(each, fmt.Sprintf("%s: %s", k, mm(*a.of(&usual))))
		}
		usual := strings.Join(each, ", ")
		saw := fit.AccuracyOf(joinery.Saw)
		keys = append(keys, key{name: a.name, form: formLength, min: 0, max: maxClearance, doc: a.doc, without: usual,
			example: mm(*a.of(&saw)), why: "what a test cut that is measured with a caliper gives; " + noSource})
	}
	return keys
}()

// accuracy is what a file says of the shop's errors, over what is usual for a machine.
func accuracy(s *section, kind joinery.CutterKind) fit.Accuracy {
	a := fit.AccuracyOf(kind)
	for _, k := range accuracyLengths {
		if v := s.values[k.name]; len(v.lengths) > 0 {
			*k.of(&a) = v.mm(0)
		}
	}
	return a
}

// spread is between which thicknesses the boards of a stock are: by its readings, by the
// standard that the file names or, for a single reading, by one that is assumed.
func (r *reader) spread(s *section, board joinery.Stock) fit.Spread {
	got := fit.Measured(board.Thickness)
	if s.lot != nil {
		return got
	}
	if word := s.values["tolerance"].text; word != "" {
		got.Assumed = word
	} else if by, minus, plus, ok := stock.Assumed(board, len(s.values["thickness"].lengths), r.units); ok {
		return fit.Spread{Minus: minus, Plus: plus, Assumed: toleranceWord(by)}
	}
	return got
}
