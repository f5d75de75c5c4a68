package prove

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom/proof"
)

// trial is a drawer of which boxes are put together from its panels.
type trial struct {
	*Worker
	out    *record.Proof
	drawer record.Drawer
	panels []panel
	o      Options
	thick  map[string]float64 // mm, of stocks by name: what is tried now
}

// most is the largest number of stocks whose extremes are all combined.
const most = 4

// assemble puts the box together at the mean of the readings, and at all of their
// extremes together.
func (w *Worker) assemble(out *record.Proof, d record.Drawer, panels []panel, o Options) {
	t := trial{Worker: w, out: out, drawer: d, panels: panels, o: o, thick: make(map[string]float64)}
	stocks := t.stocks()
	t.atMean(stocks)
	spread := stocks[:0:0]
	for _, s := range stocks {
		if s.Min < s.Max && len(spread) < most {
			spread = append(spread, s)
		}
	}
	if len(spread) > 0 {
		t.atExtremes(spread)
	}
}

// stocks are the readings of those that the panels are of, as far as the report lists them.
func (t *trial) stocks() (list []record.Readings) {
	for _, p := range t.panels {
		is := func(s record.Readings) bool { return s.Name == p.part.Stock }
		if slices.ContainsFunc(list, is) {
			continue
		}
		i := slices.IndexFunc(t.report.Stocks, is)
		if i < 0 {
			t.out.Faults = append(t.out.Faults,
				record.Fault{Code: "stock", Part: p.part.Name, File: "report.json",
					Message: fmt.Sprintf("the stock %q of %s is not listed", p.part.Stock, p.part.Name)})
			continue
		}
		s := t.report.Stocks[i]
		if mm, asked := t.o.Thickness[s.Name]; asked {
			v := record.Length(mm)
			s.Thickness, s.Min, s.Max = v, v, v
		}
		list = append(list, s)
	}
	return list
}

// box puts one together.
func (t *trial) box() proof.Box { return t.assembler.Assemble(pieces(t.panels, t.thick, t.o)) }

// atMean gives the verdict of the box at the mean of the readings.
func (t *trial) atMean(stocks []record.Readings) {
	for _, s := range stocks {
		t.thick[s.Name] = s.Thickness.MM()
	}
	out, box := t.out, t.box()
	s := summary{Worker: t.Worker, out: out}
	s.take(&box, true)
	out.Verdict = record.Goes
	out.Remarks = t.lost(&box)
	switch {
	case !box.GoesTogether():
		out.Verdict, out.Remarks = record.GoesNot, nil
		t.blameCorners()
	case len(out.Remarks) > 0:
		out.Verdict = record.GoesNot
	case s.outOfLimits(t.drawer):
		out.Verdict = record.GoesBut
	}
	if len(box.Corners) == 0 && len(out.Faults) == 0 {
		out.Faults = append(out.Faults,
			record.Fault{Code: "incomplete", File: "report.json",
				Message: "the drawer has no two sides, box front and back that stand about a box", Hint: rebuild})
	}
	if t.o.Detail {
		for i, p := range box.Pieces {
			out.Assembled = append(out.Assembled,
				record.Piece{Name: p.Name, Part: partOf(t.panels, i), Placement: t.stand(p.Placement)})
		}
	}
}

// atExtremes tries all combinations of the thinnest and the thickest reading of stocks, and
// tells the first that makes no box.
func (t *trial) atExtremes(spread []record.Readings) {
	out := t.out
	for mask := range 1 << len(spread) {
		for i, s := range spread {
			t.thick[s.Name] = s.Min.MM()
			if mask>>i&1 == 1 {
				t.thick[s.Name] = s.Max.MM()
			}
		}
		box := t.box()
		summary{Worker: t.Worker, out: out}.take(&box, false)
		if out.Verdict != record.Goes && out.Verdict != record.GoesBut {
			continue
		}
		if !box.GoesTogether() || len(t.lost(&box)) > 0 {
			out.Verdict = record.GoesSome
			for _, s := range spread {
				out.FailsWith = append(out.FailsWith,
					record.Reading{Stock: s.Name, Thickness: t.found(t.thick[s.Name])})
			}
		}
	}
}

// roundCode is of the one fault that is the bit's and not the file's.
const roundCode = "corner-radius"

// blameCorners looks whether a box that does not go together would, if bits were
// square: then it is the rounds that they leave in corners.
func (t *trial) blameCorners() {
	squared := slices.Clone(t.panels)
	var rounds []record.Fault
	for i := range squared {
		p := &squared[i]
		p.cuts = slices.Clone(p.cuts)
		for j := range p.cuts {
			if c := &p.cuts[j]; c.left > proof.MinLeft {
				c.shape = c.line
				rounds = append(rounds, record.Fault{Code: roundCode, Part: p.part.Name, File: c.file, Line: c.at,
					Message: fmt.Sprintf("the bit leaves %s of wood standing in the corners of this %s on %s: "+
						"the box would go together without it", words.SmallArea(c.left, t.unit), c.operation, c.layer),
					Hint: "a smaller bit, or relief in those corners; or square them by hand"})
			}
		}
	}
	if len(rounds) == 0 {
		return
	}
	if box := t.assembler.Assemble(pieces(squared, t.thick, t.o)); box.GoesTogether() {
		t.out.Faults = append(t.out.Faults, rounds...)
	}
}
