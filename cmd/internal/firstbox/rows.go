// Package firstbox is the record of a first box: what is read on its test piece, its parts and the box itself, between
// what limits. One list of rows decides the form on paper, the table to fill in, and the form of the page;
// [Form.Judge] says of what was read whether it is right, and what to move first.
package firstbox

import (
	"math"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom/fit"
	"drawerwright/geom/gauge"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// Form is what is read on the first box of a drawer, in the order of reading.
type Form struct {
	Rows   []Row
	at     int // index of the drawer
	drawer batch.Drawer
	model  testcut.Model
}

// Row is one reading.
type Row struct {
	present.Check
	// kind is the reading of a test cut that it is; empty where it is none.
	kind testcut.Kind
	// left is set where wood left under a cut is read, and the test cut takes how deep the cut is.
	left bool
	// by is the setting that moves it by itself; none where that is not certain.
	by  testcut.Correction
	box joinery.CheckCode // that it is of, of the box; empty of a cut or part
	// follows is the size of the box that shows whether this one of a part is right; empty where none does.
	follows joinery.CheckCode
	near    float64 // by how much a reading can be off and still be of this row, in mm
}

// Of is the form of a drawer of a batch.
func Of(b batch.Batch, at int) Form {
	d, set := b.Drawers[at], b.LimitsFor(at)
	f := Form{at: at, drawer: d, model: testcut.New(d.Drawer, d.Shop.Boards, d.Shop.Accuracy, d.Shop.Slide, set)}
	own := record.CaliperLimits{Corrections: testcut.Corrections([]joinery.Drawer{d.Drawer})}
	own.Rows = rowsOf(d, set)
	kinds := make(map[testcut.Kind]bool)
	work := record.MachineWork{Cutter: d.Setup.Cutter, Bits: record.BitsThatCut([]batch.Drawer{d})}
	for i, c := range present.ChecksOf(work, own, b.Units) {
		if other := twin(own.Rows, i); other != i {
			c.What += map[bool]string{true: ", box front", false: ", back"}[i < other]
		}
		r := Row{Check: c, near: testcut.MaxOff}
		switch {
		case c.OfParts && own.Rows[i].Kind == fit.WallHeight:
			r.IfMore, r.IfLess, r.follows = ripNarrower, ripWider, fit.OutsideHeight
		case c.OfParts && own.Rows[i].Kind == fit.SideLength:
			r.IfMore, r.IfLess, r.follows = "cut shorter", "cut longer", joinery.CheckOutsideDepth
		case c.OfParts:
			r.IfMore, r.IfLess = "cut shorter", "cut longer"
		case c.IfMore != "":
			r.by = own.Corrections[own.Rows[i].Kind]
		}
		if k, left, takes := f.model.Reads(own.Rows[i].Kind); takes && !kinds[k] && !own.Rows[i].Relative {
			r.kind, r.left, kinds[k] = k, left, true
		}
		f.Rows = append(f.Rows, r)
	}
	slices.SortStableFunc(f.Rows, func(a, b Row) int { return place(a) - place(b) })
	f.box(b)
	return f
}

// twin is the other row of the kind of a row, where box front and back have one each; else the row itself.
func twin(rows []gauge.Row, at int) int {
	for i, r := range rows {
		if i != at && r.Kind == rows[at].Kind {
			return i
		}
	}
	return at
}

// place puts what is read on the parts after what is read on the test piece.
func place(r Row) int {
	if r.OfParts {
		return 1
	}
	return 0
}

// First are the drawers of the first box of each setting, by their indices.
func First(b batch.Batch) (list []int) {
	seen := make(map[joinery.Setup]bool)
	for i, d := range b.Drawers {
		if key := batch.SettingKey(d); !seen[key] {
			seen[key] = true
			list = append(list, i)
		}
	}
	return list
}

// Drawer is the name of the drawer that a form is for.
func (f Form) Drawer() string { return f.drawer.Spec.Name }

// Part is what is read on one thing.
type Part struct {
	On     string
	OfBox  bool
	Checks []present.Check
}

// Parts are the rows as they are printed, by what they are read on.
func (f Form) Parts() (list []Part) {
	for _, r := range f.Rows {
		on := "on the test piece"
		switch {
		case r.box != "":
			on = "on the box"
		case r.OfParts:
			on = "on the parts"
		}
		if n := len(list); n == 0 || list[n-1].On != on {
			list = append(list, Part{On: on, OfBox: r.box != ""})
		}
		list[len(list)-1].Checks = append(list[len(list)-1].Checks, r.Check)
	}
	return list
}

// rowsOf are the rows of a setup sheet that a drawer looks up, each once: of one kind the nearest to what is read on
// it, and of sizes that drawers have each by itself those of its own.
func rowsOf(d batch.Drawer, set gauge.Limits) (rows []gauge.Row) {
	looked := make(map[int]bool)
	for _, r := range fit.Readings(d.Drawer, d.Shop.Accuracy) {
		off := func(row gauge.Row) float64 { return math.Abs(row.Target - r.Target) }
		at := -1
		for i, row := range set.Rows {
			if row.Kind == r.Kind && (at < 0 || off(row) < off(set.Rows[at])) {
				at = i
			}
		}
		if at < 0 || looked[at] { // nothing hangs on it, or box front and back are alike
			continue
		}
		looked[at] = true
		row := set.Rows[at]
		if row.Relative && !math.IsNaN(r.Target) {
			row.Target, row.Min, row.Max, row.Relative = r.Target, r.Target+row.Min, r.Target+row.Max, false
		}
		rows = append(rows, row)
	}
	return rows
}
