// Package prove reads the drawings of a build back from where they were written,
// cuts every panel virtually with round bits, turns the panels over, puts the
// boxes together and reports the result. It shares nothing with what wrote the
// files: what it knows of a cut is what an operator would, the line, its layer and
// the legend.
package prove

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/milled"
	"drawerwright/geom/proof"
)

// Options try values other than those of the job, in millimeters.
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
	// Open, where it is set, is Read for what is too large to be held, read as it is wanted.
	Open func(name string) (io.ReadCloser, error)

	report record.Kept
	unit   geom.Unit
	parts  map[string]int            // indices by name
	sheets map[string][]record.Layer // of the drawings of sheets, by file
	known  map[string]bool           // drawings that the report names beside those of parts
	bits   map[string]record.Layer   // the first line of each layer's name
	names  names
	checks []check
	own    [][]int        // checks of what shows a drawer alone
	code   []segment      // of the job, as drawings have it
	drawer map[string]int // of a part, by its name
	// recorded is what the report says, worked out once.
	recorded  recorded
	recording sync.Once
}

// ErrReport is wrapped by errors about a report that cannot be one.
var ErrReport = errors.New("report.json")

// New takes a report as it was written.
func New(r record.Kept) (*Prover, error) {
	p := &Prover{report: r, parts: make(map[string]int), sheets: make(map[string][]record.Layer),
		known: make(map[string]bool), bits: make(map[string]record.Layer),
		drawer: make(map[string]int), own: make([][]int, len(r.Drawers)), code: codeSegments(r)}
	if r.Tool != "drawerwright" || r.Format != record.Format {
		return nil, fmt.Errorf("%w: format %d of %q, where format %d of drawerwright is read: build the job into a new folder",
			ErrReport, r.Format, r.Tool, record.Format)
	}
	var err error
	if p.unit, err = geom.ParseUnit(r.Units); err != nil {
		return nil, fmt.Errorf("%w: units %q", ErrReport, r.Units)
	}
	if p.names, err = patternNames(r.DXF.Layers); err != nil {
		return nil, fmt.Errorf("%w: layers %q: %w", ErrReport, r.DXF.Layers, err)
	}
	for i, part := range r.Parts.All() {
		p.parts[part.Name] = i
	}
	for i := range r.Drawers {
		for _, name := range r.Drawers[i].Parts {
			p.drawer[name] = i
		}
	}
	p.lists()
	for _, k := range r.Sheets {
		for _, laid := range k.Sheets {
			groupBy(p.sheets, laid.Layers, func(l record.Layer) string { return l.File })
			for _, name := range laid.Files {
				p.known[name] = true
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

// opened opens a file.
func (p *Prover) opened(name string, read Read) (io.ReadCloser, error) {
	if p.Open != nil {
		return p.Open(name)
	}
	data, err := read(name)
	return io.NopCloser(bytes.NewReader(data)), err
}

// Drawers is how many drawers the report has.
func (p *Prover) Drawers() int { return len(p.report.Drawers) }

// Unit is that of the report's lengths.
func (p *Prover) Unit() geom.Unit { return p.unit }

// Knows reports whether the report names a drawing.
func (p *Prover) Knows(file string) bool { return p.known[file] || p.report.Lists(file) }

// legend are the lines of a drawing.
func (p *Prover) legend(file string) []record.Layer {
	return append(p.report.LayersOf(file), p.sheets[file]...)
}

// layerKey is a layer's name as the format compares it.
func layerKey(name string) string { return strings.ToUpper(name) }

// lists takes the lines of the legend.
func (p *Prover) lists() {
	for l := range p.report.Legend() {
		if _, known := p.bits[layerKey(l.Layer)]; !known {
			p.bits[layerKey(l.Layer)] = l
		}
		if !p.report.Lists(l.File) {
			p.known[l.File] = true
		}
		if l.BitFile != "" {
			p.known[l.BitFile] = true
		}
	}
}

// groupBy adds what a list has of each name to what is known of it. What stands together there, as a report
// has it, is not copied.
func groupBy[T any](by map[string][]T, list []T, name func(T) string) {
	for from := 0; from < len(list); {
		of, to := name(list[from]), from+1
		for to < len(list) && name(list[to]) == of {
			to++
		}
		if known := by[of]; known == nil {
			by[of] = list[from:to:to]
		} else {
			by[of] = append(known, list[from:to]...)
		}
		from = to
	}
}

// drawerOf is the drawer of a part; one without a name where the report has none.
func (p *Prover) drawerOf(part string) *record.Drawer {
	if i, known := p.drawer[part]; known {
		return &p.report.Drawers[i]
	}
	return new(record.Drawer)
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
	at        string                  // the drawer that it is at
	ahead     map[string]*panelReader // parts of it that were read before it is proven
	boards    map[string]milled.Board // of it, as bits leave them, where its solids show that
	fits      []record.Fit            // of the drawer that was asked for last
}

// Worker makes one; each goroutine needs its own.
func (p *Prover) Worker() *Worker { return &Worker{Prover: p} }

// Drawer proves one drawer of the report.
func (w *Worker) Drawer(i int, read Read, o Options) record.Proof {
	d := w.report.Drawers[i]
	out := record.Proof{Drawer: d.Name, Faults: []record.Fault{}, Corners: []record.Corner{},
		Overlaps: []record.Overlap{}}
	var panels []panel
	for _, name := range d.Parts {
		part := w.report.Parts.At(w.parts[name])
		c := w.reader(part, read, o.Detail)
		if d.Lip != nil && part.Role == string(joinery.Front) {
			c.out.lip = *d.Lip
		}
		panels = append(panels, c.out)
		if d.Preview == record.PreviewMilled && c.out.whole {
			_, _ = w.keep(c) // what cannot be cut is a fault by now
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

func (p *Prover) stand(s geom.Placement) record.Placement {
	o := s.Origin
	return record.Placement{Origin: [3]record.Length{p.found(o.X), p.found(o.Y), p.found(o.Z)},
		X: direction(s.X), Y: direction(s.Y)}
}

// direction has no negative zero.
func direction(v geom.Vec3) [3]float64 { return [3]float64{v.X + 0, v.Y + 0, v.Z + 0} }

// roles are the words of the report for what a piece is.
var roles = map[string]proof.Role{
	string(joinery.Side): proof.Side, string(joinery.Front): proof.Front, string(joinery.Back): proof.Back,
	string(joinery.Bottom): proof.Bottom, string(joinery.DividerRole): proof.Divider,
	string(joinery.InsertRole):      proof.Strip,
	string(joinery.DrawerFrontRole): proof.DrawerFront, string(joinery.CleatRole): proof.Cleat,
}

// pieces are the boards of a box at given thicknesses of their stocks.
func pieces(panels []panel, thick map[string]float64, o Options) []proof.Piece {
	var list []proof.Piece
	numbers := make(map[proof.Role]int)
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
			name := strings.ReplaceAll(p.part.Role, "-", " ")
			switch role {
			case proof.Side:
				name = "right " + name
				if s.Normal().X > 0 {
					name = "left " + p.part.Role
				}
			case proof.Cleat:
				name = cleatOf(s.Normal())
			case proof.Divider, proof.Strip:
				numbers[role]++
				name = fmt.Sprintf("%s %d", name, numbers[role])
			}
			one := proof.Piece{Name: name, Board: board, Placement: s, Role: role}
			one.Lips.X = [2]float64{p.lip.Left.MM(), p.lip.Right.MM()}
			one.Lips.Z = [2]float64{p.lip.Bottom.MM(), p.lip.Top.MM()}
			list = append(list, one)
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
		return "cleat of the box front"
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
