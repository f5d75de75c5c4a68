package firstbox

import (
	"cmp"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/gauge"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// Size is a size of a box that is read at some places.
type Size struct {
	Code       joinery.CheckCode
	Name       string // that of its measure where empty
	Places     []string
	kind       testcut.Kind
	more, less string // what to move for a reading over its target, and under it
}

// Sizes are those of a box in the order of reading.
var Sizes = []Size{
	{joinery.CheckOutsideWidth, "width", []string{"front", "back"}, testcut.Width, "", ""},
	{joinery.CheckOutsideDepth, "depth", []string{"left", "right"}, "", "sides shorter", "sides longer"},
	{fit.OutsideHeight, "height", []string{"reads"}, "", ripNarrower, ripWider},
	{fit.Diagonal, "diagonal", []string{"one", "other"}, "", "", ""},
}

// What is moved for boards that are too wide, and too narrow.
const ripNarrower, ripWider = "rip narrower", "rip wider"

// inside is read too where a slide goes by it.
var inside = Size{fit.SlideClearance, "inside width", []string{"front", "back"}, "", "", ""}

// apart is how far the diagonals are apart, which follows from both.
const apart = "diagonals apart"

// box adds what is read on the box, put together dry: how its first corner closes, its sizes, and whether it is square.
func (f *Form) box(b batch.Batch) {
	d := f.drawer
	for _, s := range []Size{
		{Code: joinery.CheckTongueClearance, kind: testcut.Clearance},
		{Code: joinery.CheckRecess, kind: testcut.Recess},
	} {
		s.Places = []string{""}
		f.size(s, b.Units)
	}
	for _, s := range Sizes {
		f.size(s, b.Units)
		if s.Code == joinery.CheckOutsideWidth && d.Shop.Slide != nil && d.Shop.Slide.InsideCounts {
			f.size(inside, b.Units)
		}
	}
	square := gauge.Row{Max: d.Spec.Limits.Diagonal}
	f.Rows = append(f.Rows, Row{Check: present.CheckOf(apart, square, b.Units), box: fit.Diagonal, near: f.near(fit.Diagonal)})
}

// size adds the readings of a size.
func (f *Form) size(s Size, u geom.Unit) {
	for _, m := range f.drawer.Outcome.Measures {
		if m.Code != s.Code || m.Part == joinery.Back {
			continue
		}
		row := gauge.Row{Target: m.Nominal, Min: m.LowerLimit, Max: m.UpperLimit}
		for _, p := range s.Places {
			what := cmp.Or(s.Name, m.Name)
			if len(s.Places) > 1 {
				what += " " + p
			}
			c := present.CheckOf(what, row, u)
			c.IfMore, c.IfLess = s.more, s.less
			r := Row{Check: c, box: s.Code, near: f.near(s.Code)}
			if f.model.Takes(s.kind) {
				r.kind = s.kind
			}
			f.Rows = append(f.Rows, r)
		}
		return
	}
}

// near is by how much a reading of the box can be off and still be of it: diagonals are so by more before a box is
// squared.
func (f *Form) near(c joinery.CheckCode) float64 {
	if c == fit.Diagonal {
		return testcut.MaxDiagonalOff(record.StackOf(f.drawer).Diagonal.MM())
	}
	return testcut.MaxOff
}
