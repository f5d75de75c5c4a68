// Package prove reads the drawings of a build back from where they were written,
// cuts every panel virtually with round bits, turns the panels over, puts the
// boxes together and reports the result. It shares nothing with what wrote the
// files: what it knows of a cut is what an operator would, the line, its layer and
// the legend.
package prove

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/proof"
)

// Options try values other than those of the job, in millimetres.
type Options struct {
	Thickness map[string]float64 // of stocks by name, instead of the readings
	// FlipAlong and FlipAcross are how far the cuts on the outside face of turned
	// parts are off, along the length and across it.
	FlipAlong, FlipAcross float64
	Depth                 float64 // by which every pocket is cut too deep
	Detail                bool    // fill in Cuts and Assembled
}

// Read gives a file of the folder by its slash-separated name.
type Read func(name string) ([]byte, error)

// Prover proves the drawers of one report.
type Prover struct {
	report  record.Report
	unit    geom.Unit
	parts   map[string]int            // indices by name
	legend  map[string][]record.Layer // by file
	fits    map[string][]record.Fit   // by drawer
	known   map[string]bool           // drawings that the report names
	bits    map[string]record.Layer   // the first line of each layer's name
	names   names
	checks  []check
	onSheet map[string]bool // parts that lie on sheets
	kept    sync.Map        // their panels, by name, once their drawers are proven
	// recorded is what the report says, worked out once.
	recorded  recorded
	recording sync.Once
}

// ErrReport is wrapped by errors about a report that cannot be one.
var ErrReport = errors.New("report.json")

// New takes a report as it was written.
func New(r record.Report) (*Prover, error) {
	p := &Prover{report: r, parts: make(map[string]int), legend: make(map[string][]record.Layer),
		known: make(map[string]bool), bits: make(map[string]record.Layer), fits: make(map[string][]record.Fit),
		onSheet: make(map[string]bool)}
	if r.Tool != "drawerwright" || r.Format != record.Format {
		return nil, fmt.Errorf("%w: format %d of %q, where format %d of drawerwright is read: build the folder again",
			ErrReport, r.Format, r.Tool, record.Format)
	}
	var err error
	if p.unit, err = geom.ParseUnit(r.Units); err != nil {
		return nil, fmt.Errorf("%w: units %q", ErrReport, r.Units)
	}
	if p.names, err = patternNames(r.DXF.Layers); err != nil {
		return nil, fmt.Errorf("%w: layers %q: %w", ErrReport, r.DXF.Layers, err)
	}
	for i, part := range r.Parts {
		p.parts[part.Name] = i
	}
	p.lists(r.Layers)
	for _, f := range r.Fit {
		p.fits[f.Drawer] = append(p.fits[f.Drawer], f)
	}
	for _, k := range r.Sheets {
		for _, laid := range k.Sheets {
			p.lists(laid.Layers)
			for _, name := range laid.Files {
				p.known[name] = true
			}
			for _, q := range laid.Placements {
				p.onSheet[q.Part] = true
			}
		}
	}
	if err := p.check(); err != nil {
		return nil, err
	}
	p.others()
	p.lasts()
	return p, nil
}

// upright reports whether the directions of a placement are two different axes.
func upright(s record.Placement) bool {
	axes := func(v [3]float64) (n int) {
		for _, c := range v {
			switch c {
			case 0:
			case 1, -1:
				n++
			default:
				return 0
			}
		}
		return n
	}
	dot := 0.0
	for i := range 3 {
		dot += float64(s.X[i] * s.Y[i])
	}
	return axes(s.X) == 1 && axes(s.Y) == 1 && dot == 0
}

// Drawers is how many drawers the report has.
func (p *Prover) Drawers() int { return len(p.report.Drawers) }

// Unit is that of the report's lengths.
func (p *Prover) Unit() geom.Unit { return p.unit }

// Knows reports whether the report names a drawing.
func (p *Prover) Knows(file string) bool { return p.known[file] }

// layerKey is a layer's name as the format compares it.
func layerKey(name string) string { return strings.ToUpper(name) }

// lists takes lines of the legend.
func (p *Prover) lists(layers []record.Layer) {
	for _, l := range layers {
		if _, known := p.bits[layerKey(l.Layer)]; !known {
			p.bits[layerKey(l.Layer)] = l
		}
		p.legend[l.File] = append(p.legend[l.File], l)
		p.known[l.File] = true
		if l.BitFile != "" {
			p.known[l.BitFile] = true
		}
	}
}

// Stocks are the names of the stocks that were measured.
func (p *Prover) Stocks() []string {
	var list []string
	for _, s := range p.report.Stocks {
		list = append(list, s.Name)
	}
	return list
}

// Worker proves one drawer at a time.
type Worker struct {
	*Prover
	assembler proof.Assembler
}

// Worker makes one; each goroutine needs its own.
func (p *Prover) Worker() *Worker { return &Worker{Prover: p} }

// Cuttable reports whether a verdict lets a shop cut from the files.
func Cuttable(verdict string) bool {
	return verdict == record.Goes || verdict == record.GoesBut || verdict == record.GoesSome
}

func (p *Prover) mm(v float64) float64 { return float64(v * p.unit.MM()) }

// Drawer proves one drawer of the report.
func (w *Worker) Drawer(i int, read Read, o Options) record.Proof {
	d := w.report.Drawers[i]
	out := record.Proof{Drawer: d.Name, Faults: []record.Fault{}, Corners: []record.Corner{},
		Overlaps: []record.Overlap{}}
	var panels []panel
	for _, name := range d.Parts {
		part := w.report.Parts[w.parts[name]]
		c := panelReader{Prover: w.Prover, part: part, saw: !joinery.CutterKind(d.Machine).FollowsDrawing(),
			read: read, detail: o.Detail}
		panels = append(panels, c.panel())
		if w.onSheet[name] {
			w.kept.Store(name, panels[len(panels)-1])
		}
		out.Faults = append(out.Faults, c.faults...)
		out.Cuts = append(out.Cuts, c.cuts...)
	}
	if slices.ContainsFunc(out.Faults, func(f record.Fault) bool { return slices.Contains(senseless, f.Code) }) {
		out.Verdict = record.FilesFail // what came of it would say nothing
		return out
	}
	w.assemble(&out, d, panels, o)
	if slices.ContainsFunc(out.Faults, func(f record.Fault) bool { return f.Code != roundCode }) {
		out.Verdict = record.FilesFail
	}
	return out
}

// senseless are the faults with which there is no box to put together.
var senseless = []string{"missing-file", "unreadable", "no-outline", "scale", "units", "too-many"}

// most is the largest number of stocks whose extremes are all combined.
const most = 4

// assemble puts the box together at the mean of the readings, and at all of their
// extremes together.
func (w *Worker) assemble(out *record.Proof, d record.Drawer, panels []panel, o Options) {
	var stocks []record.Readings
	for _, p := range panels {
		if slices.ContainsFunc(stocks, func(s record.Readings) bool { return s.Name == p.part.Stock }) {
			continue
		}
		i := slices.IndexFunc(w.report.Stocks, func(s record.Readings) bool { return s.Name == p.part.Stock })
		if i < 0 {
			out.Faults = append(out.Faults,
				record.Fault{Code: "stock", Part: p.part.Name, File: "report.json",
					Message: fmt.Sprintf("the stock %q of %s is not listed", p.part.Stock, p.part.Name)})
			continue
		}
		s := w.report.Stocks[i]
		if mm, asked := o.Thickness[s.Name]; asked {
			v := mm / w.unit.MM()
			s.Thickness, s.Min, s.Max = v, v, v
		}
		stocks = append(stocks, s)
	}
	thick := make(map[string]float64, len(stocks))
	for _, s := range stocks {
		thick[s.Name] = w.mm(s.Thickness)
	}
	box := w.assembler.Assemble(pieces(panels, thick, o))
	s := summary{Prover: w.Prover, out: out}
	s.take(&box, true)
	out.Verdict = record.Goes
	out.Remarks = w.lost(d, &box, panels, thick, o)
	switch {
	case !box.GoesTogether():
		out.Verdict, out.Remarks = record.GoesNot, nil
		w.blameCorners(out, panels, thick, o)
	case len(out.Remarks) > 0:
		out.Verdict = record.GoesNot
	case s.outOfLimits(d):
		out.Verdict = record.GoesBut
	}
	if len(box.Corners) == 0 && len(out.Faults) == 0 {
		out.Faults = append(out.Faults,
			record.Fault{Code: "incomplete", File: "report.json",
				Message: "the drawer has no two sides, front and back that stand about a box", Hint: "build the folder again"})
	}
	if o.Detail {
		for i, p := range box.Pieces {
			out.Assembled = append(out.Assembled,
				record.Piece{Name: p.Name, Part: partOf(panels, i), Placement: w.stand(p.Placement)})
		}
	}
	spread := stocks[:0:0]
	for _, s := range stocks {
		if s.Min < s.Max && len(spread) < most {
			spread = append(spread, s)
		}
	}
	if len(spread) == 0 {
		return
	}
	for mask := range 1 << len(spread) {
		for i, s := range spread {
			thick[s.Name] = w.mm(s.Min)
			if mask>>i&1 == 1 {
				thick[s.Name] = w.mm(s.Max)
			}
		}
		box := w.assembler.Assemble(pieces(panels, thick, o))
		s.take(&box, false)
		if out.Verdict != record.Goes && out.Verdict != record.GoesBut {
			continue
		}
		if !box.GoesTogether() || len(w.lost(d, &box, panels, thick, o)) > 0 {
			out.Verdict = record.GoesSome
			for _, s := range spread {
				out.FailsWith = append(out.FailsWith, record.Reading{Stock: s.Name, Thickness: w.number(thick[s.Name])})
			}
		}
	}
}

// roundCode is of the one fault that is the bit's and not the file's.
const roundCode = "corner-radius"

// blameCorners looks whether a box that does not go together would, if bits were
// square: then it is the rounds that they leave in corners.
func (w *Worker) blameCorners(out *record.Proof, panels []panel, thick map[string]float64, o Options) {
	squared := slices.Clone(panels)
	var rounds []record.Fault
	for i := range squared {
		p := &squared[i]
		p.cuts = slices.Clone(p.cuts)
		for j := range p.cuts {
			if c := &p.cuts[j]; c.left > proof.MinLeft {
				c.shape = c.line
				rounds = append(rounds, record.Fault{Code: roundCode, Part: p.part.Name, File: c.file, Line: c.at,
					Message: fmt.Sprintf("the bit leaves %s of wood standing in the corners of this %s on %s: the box would go together without it", words.SmallArea(c.left, w.unit), c.operation, c.layer),
					Hint:    "a smaller bit, or relief in those corners; or square them by hand"})
			}
		}
	}
	if len(rounds) == 0 {
		return
	}
	if box := w.assembler.Assemble(pieces(squared, thick, o)); box.GoesTogether() {
		out.Faults = append(out.Faults, rounds...)
	}
}

func (p *Prover) stand(s geom.Placement) record.Placement {
	at := func(v geom.Vec3, k float64) [3]float64 {
		return [3]float64{p.number(v.X / k), p.number(v.Y / k), p.number(v.Z / k)}
	}
	// number converts lengths; directions have none.
	return record.Placement{Origin: at(s.Origin, 1), X: at(s.X, 1/p.unit.MM()), Y: at(s.Y, 1/p.unit.MM())}
}

// roles are the words of the report for what a piece is.
var roles = map[string]proof.Role{
	string(joinery.Side): proof.Side, string(joinery.Front): proof.Front, string(joinery.Back): proof.Back, string(joinery.Bottom): proof.Bottom,
	string(joinery.DividerRole): proof.Divider, string(joinery.DrawerFrontRole): proof.DrawerFront,
	string(joinery.CleatRole): proof.Cleat,
}

// pieces are the boards of a box at given thicknesses of their stocks.
func pieces(panels []panel, thick map[string]float64, o Options) []proof.Piece {
	var list []proof.Piece
	dividers := 0
	for _, p := range panels {
		if !p.whole {
			continue
		}
		t, known := thick[p.part.Stock]
		if !known {
			t = p.thickness
		}
		board := p.board(t, o)
		role, named := roles[p.part.Role]
		if !named {
			role = proof.Other
		}
		for _, s := range p.stands {
			name := p.part.Role
			switch role {
			case proof.Side:
				name = "right " + name
				if s.Normal().X > 0 {
					name = "left " + p.part.Role
				}
			case proof.Cleat:
				name = cleatOf(s.Normal())
			case proof.Divider:
				dividers++
				name = fmt.Sprintf("%s %d", name, dividers)
			case proof.DrawerFront:
				name = "drawer front"
			}
			list = append(list, proof.Piece{Name: name, Board: board, Placement: s, Role: role})
		}
	}
	return list
}

// cleatOf names a cleat by the wall that it is fixed to, out of which its inside face
// looks.
func cleatOf(n geom.Vec3) string {
	switch {
	case n.X > 0.5:
		return "cleat of the left side"
	case n.X < -0.5:
		return "cleat of the right side"
	case n.Y > 0.5:
		return "cleat of the front"
	}
	return "cleat of the back"
}

func partOf(panels []panel, piece int) string {
	for _, p := range panels {
		if !p.whole {
			continue
		}
		if piece < len(p.stands) {
			return p.part.Name
		}
		piece -= len(p.stands)
	}
	return ""
}

// text prints a length in the report's unit.
func (p *Prover) text(mm float64) string { return geom.LengthOf(mm).Text(p.unit) }

// same compares words as the format does, without regard to capitals.
func same(a, b string) bool { return strings.EqualFold(a, b) }
