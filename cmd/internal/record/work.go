package record

import (
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/gauge"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
	"drawerwright/geom/setup"
	"drawerwright/geom/testcut"
)

// Work is what the machines of a shop do for a job: all that setup sheets tell, as geom found it,
// in millimeters. It is no part of report.json; package present makes the sheet of it.
type Work struct {
	Job      string
	Unit     geom.Unit // that the sheet is printed in
	Verdicts []Judged
	Spacers  []float64 // the shop's
	Machines []MachineWork
}

// MachineWork is that of one cutter.
type MachineWork struct {
	Cutter  joinery.Cutter
	Pass    float64 // the greatest depth of one pass of a router table; 0 for any
	Drawers []CutDrawer
	Boards  []setup.Board       // all parts that are cut here
	Needs   []setup.Requirement // of the drawers, in their order
	// Grouping is how few settings would do, Settings how many the job takes as it stands.
	Grouping setup.Grouping
	Settings int
	Plan     setup.WorkPlan // none of a router, which follows its drawings
	Refused  []Refused      // why some of its cuts are no setting
	Files    []RoutedFile   // of a router
	Bits     []float64      // of a router, the diameters of those that cut something, the narrowest first, in mm
	// Limits are the caliper limits of the drawers whose corners are cut at a setting of the plan,
	// nil where there are none; OtherLimits those of all other drawers.
	Limits      []*CaliperLimits
	OtherLimits []CaliperLimits
	FingerRows  []Setup // those with a row of fingers that is not as high as the others
}

// CutDrawer is a drawer with what its setup sheet tells of it.
type CutDrawer struct {
	Name    string
	Setup   joinery.Setup
	Tongued []joinery.Role // its parts with tongues
	Parts   []string
	Bored   []Bored
	// Off reports whether a measure that settings move is out of its limits.
	Off bool
}

// Bored are the holes in the ends of equal parts, which no drawing shows.
type Bored struct {
	joinery.Bore
	Parts []Pieces
}

// RoutedFile is a drawing that a router cuts, or what a bit cuts of it until it is changed.
type RoutedFile struct {
	Part  string
	Count int
	Face  geom.Face
	File  string
	Turn  bool      // the part is turned over before
	Goes  bool      // it stays as the file before left it
	Bit   *mill.Bit // to put in before; nil where the drawing is one file
}

// CaliperLimits are those of the readings of drawers that are cut at one setting.
type CaliperLimits struct {
	gauge.Limits
	Drawers []string
	// Longer is by how much a front is longer than the room between the sides.
	Longer float64
	// Corrections say for kinds of readings which setting puts one of them right.
	Corrections map[fit.ReadingKind]testcut.Correction
	// OneReading are the stocks that were read once, though their boards differ by a standard.
	OneReading []joinery.Stock
}

// WorkOf is the work of a batch.
func WorkOf(b batch.Batch) Work { return workOf(b, true) }

// Ungauged is the work of a batch without its caliper limits, for pictures: finding those takes longer than all else.
func Ungauged(b batch.Batch) Work { return workOf(b, false) }

func workOf(b batch.Batch, gauged bool) Work {
	w := Work{Job: b.Title, Unit: b.Units, Verdicts: VerdictsOf(b), Spacers: b.Spacers}
	for _, drawers := range setup.Together(b.Drawers, func(d batch.Drawer) joinery.Cutter { return d.Setup.Cutter }) {
		w.Machines = append(w.Machines, machineWork(b, drawers, gauged))
	}
	return w
}

func machineWork(b batch.Batch, drawers []batch.Drawer, gauged bool) MachineWork {
	cutter := drawers[0].Setup.Cutter
	m := MachineWork{Cutter: cutter, Pass: b.Machines.Of(cutter.Kind).PassDepth}
	for _, d := range drawers {
		m.Drawers = append(m.Drawers, cutDrawer(d))
		m.Needs = append(m.Needs, setup.RequirementOf(d.Drawer))
	}
	m.Grouping = setup.GroupSettings(m.Needs)
	for _, s := range Setups(batch.Batch{Units: b.Units, Drawers: drawers}) {
		if s.FingerRow > 0 {
			m.FingerRows = append(m.FingerRows, s)
		}
	}
	if cutter.Kind.FollowsDrawing() {
		groups := batch.BySetting(drawers)
		m.Settings, m.Files, m.Bits = len(groups), routedFiles(b, drawers), BitsThatCut(drawers)
		if gauged {
			m.OtherLimits = limitsOf(groups)
		}
		return m
	}
	m.Boards = batch.Boards(drawers)
	m.Plan = setup.Plan(cutter, b.Machines, m.Boards)
	m.Refused = refusedOf(drawers, b.Units)
	m.Settings, m.Limits = len(m.Plan.Settings), make([]*CaliperLimits, len(m.Plan.Settings))
	if gauged {
		m.gauge(drawers)
	}
	return m
}

// gauge finds the caliper limits of drawers that are cut at the settings of the plan.
func (m *MachineWork) gauge(drawers []batch.Drawer) {
	rest := drawers
	for i, s := range m.Plan.Settings {
		served := slices.DeleteFunc(slices.Clone(drawers), func(d batch.Drawer) bool { return !s.Serves(d.Setup) })
		rest = slices.DeleteFunc(slices.Clone(rest), func(d batch.Drawer) bool { return s.Serves(d.Setup) })
		if len(served) > 0 {
			m.Limits[i] = &limitsOf([][]batch.Drawer{served})[0]
		}
	}
	m.OtherLimits = limitsOf(batch.BySetting(rest))
}

// BitsThatCut are the diameters of the bits that the parts of drawers are cut with, the
// narrowest first: a router may have others in its machine.
func BitsThatCut(drawers []batch.Drawer) (list []float64) {
	for _, d := range drawers {
		for _, p := range d.Parts {
			for _, c := range p.Work().Cuts {
				if c.Bit >= 0 {
					list = append(list, p.Bits[c.Bit].Diameter)
				}
			}
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

func cutDrawer(d batch.Drawer) CutDrawer {
	out := CutDrawer{Name: d.Spec.Name, Setup: d.Setup, Tongued: setup.Tongued(d.Spec),
		Off: slices.ContainsFunc(d.Outcome.Measures,
			func(f fit.SimulatedMeasure) bool { return f.OutOfLimits() && f.Code.BySetting() })}
	for _, p := range d.Parts {
		out.Parts = append(out.Parts, p.Name)
	}
	for _, b := range d.Bores {
		one := Bored{Bore: b}
		for _, p := range d.Parts {
			if p.Role == b.Part && p.Label == b.Label {
				one.Parts = append(one.Parts, Pieces{Part: p.Name, Count: p.Quantity})
			}
		}
		out.Bored = append(out.Bored, one)
	}
	return out
}

// routedFiles are the drawings of drawers in the order of cutting.
func routedFiles(b batch.Batch, drawers []batch.Drawer) (list []RoutedFile) {
	for _, d := range drawers {
		for _, p := range d.Parts {
			for i, drawing := range p.Drawings {
				one := RoutedFile{Part: p.Name, Count: p.Quantity, Face: drawing.Face, File: drawing.File, Turn: i > 0}
				runs := b.DXF.Runs(drawing.File, b.Layers(p, drawing), p.Bits)
				if len(runs) == 0 {
					list = append(list, one)
				}
				for k, run := range runs {
					one.File, one.Bit, one.Goes, one.Turn = run.File, &run.Bit, k > 0, i > 0 && k == 0
					list = append(list, one)
				}
			}
		}
	}
	return list
}

// limitsOf are the caliper limits of groups of drawers, each cut at one setting.
func limitsOf(groups [][]batch.Drawer) (list []CaliperLimits) {
	for _, drawers := range groups {
		one := CaliperLimits{Limits: batch.CaliperLimits(drawers), Longer: gauge.LongerThanBetween(drawers[0].Drawer)}
		var cut []joinery.Drawer
		for _, d := range drawers {
			one.Drawers, cut = append(one.Drawers, d.Spec.Name), append(cut, d.Drawer)
			b := d.Shop.Boards
			for i, stock := range []joinery.Stock{d.Spec.Sides, d.Spec.Front, d.Spec.Back, d.Spec.Bottom} {
				spread := [...]fit.Spread{b.Sides, b.Front, b.Back, b.Bottom}[i]
				if t := stock.Thickness; t.Min == t.Max && spread.Assumed != "" {
					one.OneReading = append(one.OneReading, stock)
				}
			}
		}
		one.Corrections = testcut.Corrections(cut)
		list = append(list, one)
	}
	return list
}
