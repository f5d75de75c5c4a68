// Package sheets lays the parts of a batch, or a list of rectangles, out on sheets, and
// keeps with each layout what it was made of, for all that prints, draws or saws it.
package sheets

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/list"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/breakdown"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
	"drawerwright/geom/nest"
	"drawerwright/geom/setup"
	"drawerwright/geom/sheet"
)

// Plan is the layouts of all stocks whose sheets have a size.
type Plan struct {
	Title  string
	Units  geom.Unit
	DXF    router.Options
	Listed bool // of a list of rectangles
	Stocks []Stock
	Looks  filing.Looks // what is written to look at
}

// Stock is the pieces of one stock on sheets. Lengths in Rules, Pieces, Sheets and Layout
// are nanometers, the x of a sheet along the grain.
type Stock struct {
	Name      string
	File      string        // what the names of its files begin with
	Stock     joinery.Stock // of a list, its name alone
	Rules     nest.Rules
	Trim      geom.Length // that is asked for; that of the ends may be more, for registration
	MinOffcut [2]geom.Length
	Units     geom.Unit // of the lengths that are usual, and are not written
	Pieces    []nest.Piece
	Parts     [][]Served    // that each piece serves, at least one
	Router    mill.Settings // of a job; without bits
	Sheets    []nest.Sheet
	Measured  []job.MeasuredSheet // its sheets by their numbers less 1, where each was measured
	LotOf     string              // the stock of the job file that it is a lot of; empty for none
	Layout    nest.Layout
	Laid      []Sheet
	// GrainAcross says that in the job file the second number of a sheet is along the grain.
	GrainAcross   bool
	Sawn          bool            // a saw cuts its parts from the sheets, which have no drawings then
	RotatedSheets bool            // its sheets are cut on both faces
	FromOutside   bool            // they are cut on their outside faces alone
	dxf           *router.Options // of its drawings; nil of a list
	Routed        bool            // a router cuts them: no saw does
	Pin           Pin             // on which they are turned over; none where saws cut, or on stops
	Short         [2]float64      // by how much sheets may be shorter and narrower than their size, in mm
	KeepOut       []geom.Rect     // areas that nothing is cut in, as sheets lie at first, in mm
	GapText       bool            // the job says how far apart parts lie
	needs         sheet.Needs
	on            string // what they are turned over on, where they are
	unsound       error  // of the plan of its tabs
	Cuts          []breakdown.Cut
	FirstCuts     string          // how they run, by the word of the job file; empty where that is left to the search
	first         nest.First      // how they run in the layout
	squared       bool            // sheets are cleaned up on two edges before they are cut
	before, named breakdown.Named // by the stocks before it, and by this one too
	FirstMore     More            // than layouts whose first cuts run as they may
	Prefer        string          // of layouts that cost as little, by the word of the job file
	Choices       []Choice        // what each word would take, where they differ
	Times         breakdown.Times
	MaxWeight     float64 // kg that one person puts onto a saw
	Capacity      Capacity
}

// Capacity is what the saw that takes sheets apart can hold: how far its fence opens, how long
// a crosscut is at most, how long a board that lies across the sled, and how far the stop is from the blade.
type Capacity struct{ Rip, Crosscut, MaxOnSled, MaxStop geom.Length }

// More is how many sheets more a layout takes, and what they cost more.
type More struct {
	Sheets int
	Cost   float64
}

// Served is a part that a piece serves, so many times.
type Served struct {
	*batch.Part
	Quantity int
}

// CapacityOf is that of a machine.
func CapacityOf(m setup.Machine) Capacity {
	return Capacity{geom.LengthOf(m.RipCapacity), geom.LengthOf(m.CrosscutCapacity), geom.LengthOf(m.MaxOnSled),
		geom.LengthOf(m.MaxStop)}
}

// Sheet is one way in which Count sheets are cut. The first one of them is Number.
type Sheet struct {
	nest.LaidSheet
	Number, Count int
	Offcuts       []nest.Offcut
	// Serves tells for each placed piece, and of these for each sheet that is cut alike, which
	// of the parts that the piece serves it is: its place in Parts.
	Serves [][]int
	Called []string // what saws call each placed piece: the board that it is
	Held   []Tie    // how each placed part is held, where a router cuts them
	Slots  []router.Slot
	Marks  []geom.Loop // of tabs, where a program makes them itself
}

// Of lays out the parts of a batch, with the offcuts of a shelf first. A context that
// ends gives the best layouts so far. The error is a [*Problem].
func Of(ctx context.Context, b batch.Batch, shelf []list.Offcut, o Search) (Plan, error) {
	plan := Plan{Title: b.Title, Units: b.Units, DXF: b.DXF}
	groups := batch.Merged(b)
	var before breakdown.Named // strips and pieces of other stocks have other names
	for len(groups) > 0 {
		stock := groups[0].Parts[0].Stock
		n := slices.IndexFunc(groups, func(g batch.Group) bool { return g.Parts[0].Stock.Name != stock.Name })
		if n < 0 {
			n = len(groups)
		}
		if stock.Length > 0 {
			s, p := order{b, stock, groups[:n], shelf, plan.file(stock.Name)}.laidOut(ctx, o, before)
			if p != nil {
				return plan, p
			}
			s.dxf, before = &plan.DXF, before.Most(s.named)
			for i := range s.Laid {
				if s.Sawn {
					break
				}
				drawn, err := s.Drawings(plan.DXF, s.Laid[i])
				if err != nil {
					return plan, s.problem("layers", "sheet", geom.Sentencef("%v", err), batch.LayersHint(err))
				}
				if err := s.leaves(s.Laid[i], drawn); err != nil {
					return plan, s.fault("sheet-cut", "keep-out", err)
				}
			}
			plan.Stocks = append(plan.Stocks, s)
		}
		groups = groups[n:]
	}
	return plan, nil
}

// order is the parts of one stock of a batch, in groups of equal ones, with the offcuts of a
// shelf; file is what the names of its files begin with.
type order struct {
	b      batch.Batch
	stock  joinery.Stock
	groups []batch.Group
	shelf  []list.Offcut
	file   string
}

// laidOut is the layout of one stock. Where parts need more room between them for their
// tabs, and the job does not say how far apart they lie, it is laid out once more with it.
func (r order) laidOut(ctx context.Context, o Search, before breakdown.Named) (Stock, *Problem) {
	wide := false
	for {
		s, p := r.asked(wide)
		if p == nil {
			s.File, s.before = r.file, before
			s.begin(r.b.Sheets.FirstCuts)
			p = s.layOut(ctx, o)
		}
		if p != nil {
			return s, p
		}
		loose := s.plan(r.b)
		near := s.Rules.Kerf < int64(geom.LengthOf(s.needs.Apart()))
		if len(loose) > 0 && !wide && !s.GapText && s.needs.Tabs && near {
			wide = true
			continue
		}
		if len(loose) > 0 {
			return s, s.loose(r.b, loose)
		}
		if s.unsound != nil {
			return s, s.fault("sheets", "sheet", s.unsound)
		}
		return s, nil
	}
}

// file is what the names of a stock's files begin with, different for each.
func (p Plan) file(stock string) string {
	name := job.FileName(stock)
	for n := 2; slices.ContainsFunc(p.Stocks, func(s Stock) bool { return s.File == name }); n++ {
		name = fmt.Sprintf("%s_%d", job.FileName(stock), n)
	}
	return name
}

// asked is what is to be laid out of one stock, and by which rules: wide with room for waste
// between all parts.
func (r order) asked(wide bool) (Stock, *Problem) {
	b, stock, groups := r.b, r.stock, r.groups
	of := b.Sheets.Of[stock.Name]
	s := Stock{Name: stock.Name, Stock: stock, Short: of.Short, Measured: of.Measured, LotOf: of.LotOf, KeepOut: of.KeepOut, GrainAcross: of.GrainAcross, MaxWeight: b.Sheets.MaxWeight, Prefer: b.Sheets.Prefer, Times: b.Sheets.Times, Capacity: CapacityOf(b.Machines.Of(joinery.Saw)), Router: b.Router,
		MinOffcut: [2]geom.Length{geom.LengthOf(b.Sheets.MinOffcut[0]), geom.LengthOf(b.Sheets.MinOffcut[1])},
		Units:     b.Units, Rules: nest.Rules{Method: nest.Guillotine, Stages: b.Sheets.Stages}}
	if !slices.ContainsFunc(groups, func(g batch.Group) bool { return g.Setup.Cutter.Kind != joinery.Hand }) {
		s.Capacity = Capacity{} // there is no saw with a fence
	}
	out, in, bits := false, false, false
	for _, g := range groups {
		s.Sawn = s.Sawn || !g.Setup.Cutter.Kind.FollowsDrawing()
		for _, p := range g.Parts {
			bits = bits || len(p.Bits) > 0
			faces := p.Work().Faces
			out = out || slices.Contains(faces, geom.Outside)
			in = in || slices.Contains(faces, geom.Inside)
		}
	}
	s.RotatedSheets, s.FromOutside, s.Routed = out && in, out && !in, bits && !s.Sawn
	if b.Sheets.Method == job.MethodFree || b.Sheets.Method == "" && !s.Sawn && b.Sheets.Stages == 0 {
		s.Rules.Method = nest.Free
	}
	if p := s.room(b, groups); p != nil {
		return s, p
	}
	if wide {
		s.Rules.Kerf = int64(geom.LengthOf(s.needs.Apart()).RoundUp(b.Units))
	}
	s.pieces(b, stock, of.Match, groups)
	trim, p := s.trims(b, groups)
	if p != nil {
		return s, p
	}
	for _, k := range r.shelf {
		if k.Stock == stock.Name && of.LotOf == "" { // an offcut has no readings
			s.Sheets = append(s.Sheets, asSheet(k))
		}
	}
	for _, z := range of.Sizes {
		s.Sheets = append(s.Sheets, nest.Sheet{Name: cmp.Or(z.Name, stock.Name), Price: z.Price, Count: z.Count,
			Batch: z.Batch, Length: int64(geom.LengthOf(z.Length)), Width: int64(geom.LengthOf(z.Width))})
	}
	for i := range s.Sheets {
		z := &s.Sheets[i]
		if z.Trim = trim; z.Offcut && !s.Routed { // what the shelf lists is clean
			z.Trim = nest.Trim{}
		}
		z.Trim = s.clear(*z)
		if length, width := geom.Length(z.Length).MM(), geom.Length(z.Width).MM(); !z.Offcut {
			if _, ok := s.pins(length, width); !ok {
				return s, s.noPins()
			}
		}
	}
	s.Sheets = slices.DeleteFunc(s.Sheets, func(z nest.Sheet) bool { // trims leave nothing of them
		return z.Length <= z.Trim.Left+z.Trim.Right || z.Width <= z.Trim.Bottom+z.Trim.Top
	})
	return s, nil
}

// trims are what is cut off the edges of a new sheet.
func (s *Stock) trims(b batch.Batch, groups []batch.Group) (nest.Trim, *Problem) {
	ends, top, p := s.ends(b, groups)
	return nest.Trim{Left: int64(ends), Right: int64(ends), Bottom: int64(s.Trim), Top: int64(top)}, p
}

// noPins is the problem of a sheet on which pins find no place.
func (s *Stock) noPins() *Problem {
	return s.problem("sheet-pins", "keep-out", geom.Sentencef("the areas to keep out of leave no place for the "+
		"registration holes near the ends of a sheet, or in the middle of its upper edge"),
		"move the clamps, or write `flip-on: stops` in the section sheets")
}

// asSheet is an offcut of a shelf as a sheet that there is once.
func asSheet(k list.Offcut) nest.Sheet {
	return nest.Sheet{Name: k.Name, Length: k.Length, Width: k.Width, Count: 1, Offcut: true, Batch: k.Batch}
}

// begin keeps how first cuts of a saw run: along the longer side of the stock's own size, or across it.
func (s *Stock) begin(first string) {
	if first == "" || s.Routed || s.Rules.Method == nest.Free || len(s.Sheets) == 0 {
		return
	}
	s.FirstCuts = first
	z := s.Sheets[min(s.own(), len(s.Sheets)-1)]
	s.Rules.First = nest.FirstAlongX
	if (first == job.FirstRip) != (z.Length >= z.Width) {
		s.Rules.First = nest.FirstAlongY
	}
}

// pieces takes the pieces of a stock's groups, with the parts that each serves.
func (s *Stock) pieces(b batch.Batch, stock joinery.Stock, match string, groups []batch.Group) {
	wanted, seen := make([][]sheet.Wanted, len(groups)), places(b)
	for i, g := range groups {
		for _, p := range g.Parts {
			at := seen[p.Drawer]
			wanted[i] = append(wanted[i], sheet.Wanted{Role: p.Role, Count: p.Quantity, Spares: p.Spares, Opening: at.bank,
				Row: at.row})
		}
	}
	for _, p := range sheet.Pieces(wanted, matchings[match]) {
		var parts []Served
		for _, of := range p.Parts {
			parts = append(parts, Served{groups[of.Group].Parts[of.Place], of.Count})
		}
		q := parts[0]
		s.Pieces = append(s.Pieces, nest.Piece{Name: q.Name, Count: p.Count(), Match: p.Match, Set: p.Set,
			Length: int64(geom.LengthOf(q.Panel.Length())), Width: int64(geom.LengthOf(q.Panel.Width())),
			MayRotate: stock.Grain == joinery.GrainNone})
		s.Parts = append(s.Parts, parts)
	}
}

// matchings are the words of the job file for how fronts match.
var matchings = map[string]sheet.Matching{job.MatchBatch: sheet.OneBatch, job.MatchSequence: sheet.InSequence}

// place is a drawer's cabinet, 0 for none, and its row from above.
type place struct{ bank, row int }

func places(b batch.Batch) map[string]place {
	at := make(map[string]place)
	for n, bank := range b.Banks {
		for row, d := range bank.Drawers {
			if d < len(b.Drawers) {
				at[b.Drawers[d].Spec.Name] = place{n + 1, row}
			}
		}
	}
	return at
}

// Cutting is how a list is cut from its sheets: Trim off every edge, the least offcut that
// is kept, and what the saw can hold.
type Cutting struct {
	nest.Rules
	Trim      geom.Length
	MinOffcut [2]geom.Length
	FirstCuts string // by the word of a job file; empty for any
	Capacity  Capacity
	Units     geom.Unit
}

// Listed lays a list out by itself.
func Listed(ctx context.Context, name string, l list.List, c Cutting, o nest.Options) (Plan, error) {
	s := Stock{Name: name, File: job.FileName(name), Stock: joinery.Stock{Name: name}, Rules: c.Rules,
		Trim: c.Trim, MinOffcut: c.MinOffcut, Capacity: c.Capacity, Times: breakdown.UsualTimes,
		MaxWeight: sheet.UsualMaxWeight,
		Units:     c.Units,
		Pieces:    l.Pieces, Sheets: slices.Clone(l.Sheets)}
	trim := int64(c.Trim)
	for i := range s.Sheets {
		if !s.Sheets[i].Offcut { // whose size is clean
			s.Sheets[i].Trim = nest.Trim{Left: trim, Right: trim, Bottom: trim, Top: trim}
		}
	}
	for _, p := range l.Pieces {
		panel := geom.Panel{Outline: geom.Rectangle(0, 0, geom.Length(p.Length).MM(), geom.Length(p.Width).MM())}
		part := &batch.Part{Part: &joinery.Part{Stock: s.Stock, Panel: panel}, Name: p.Name}
		s.Parts = append(s.Parts, []Served{{part, p.Count}})
	}
	s.begin(c.FirstCuts)
	plan := Plan{Units: c.Units, DXF: router.Options{Unit: c.Units}, Listed: true}
	laid, err := nest.Lay(ctx, s.Pieces, s.Sheets, s.Rules, o)
	if err == nil {
		if err = s.choose(ctx, Search{Options: o}, laid); err == nil {
			s.compare(ctx, Search{Options: o})
		}
	}
	plan.Stocks = []Stock{s}
	return plan, err
}

func (s *Stock) layOut(ctx context.Context, o Search) *Problem {
	if len(s.Sheets) == 0 {
		return s.problem(codeNoSheet, "sheet",
			geom.Sentencef("trims, registration holes and areas to keep out of leave nothing of its sheets"),
			"write a smaller `trim:` in the section sheets, smaller areas, or larger sheets")
	}
	l, err := o.lay(ctx, s.Pieces, s.Sheets, s.Rules)
	if err != nil {
		fact := geom.Sentencef("%v", err)
		if d := (geom.Diagnosis{}); errors.As(err, &d) {
			fact = d.Fact
		}
		return s.problem("sheets", "sheet", fact,
			"change the rules in the section sheets, or the sizes of the stock's sheets")
	}
	if len(s.KeepOut) > 0 && l.Count > 1 { // parts could lie beside them too, for all that the search knows
		l.LowerBound, l.MinSheets = 0, 0
	}
	if err := s.choose(ctx, o, l); err != nil {
		return s.fault("sheets", "sheet", err)
	}
	s.compare(ctx, o)
	return nil
}

// compare says what first cuts that are asked for cost. Without a layout to compare with they are said to cost nothing.
func (s *Stock) compare(ctx context.Context, o Search) {
	if s.FirstCuts == "" {
		return
	}
	if any, err := s.begunAnyhow(ctx, o); err == nil && any.Missing() == s.Remaining() {
		s.FirstMore = More{max(0, s.Layout.Count-any.Count), max(0, s.Layout.Cost-any.Cost)}
	}
}

// begunAnyhow is a layout whose first cuts run as they may.
func (s *Stock) begunAnyhow(ctx context.Context, o Search) (nest.Layout, error) {
	r := s.Rules
	r.First = nest.FirstAny
	return o.lay(ctx, s.Pieces, s.Sheets, r)
}

// begun is the rules with how the first cuts of the layout run.
func (s *Stock) begun() nest.Rules {
	r := s.Rules
	r.First = s.first
	return r
}

// take keeps a layout with what follows from it.
func (s *Stock) take(l nest.Layout) error {
	if err := nest.Check(l, s.Pieces, s.Sheets, s.Rules); err != nil {
		return fmt.Errorf("the layout is wrong, which is a fault of drawerwright: %w", err)
	}
	s.Layout = l
	at := make(map[string]int)
	for i, one := range l.Sheets {
		key := fmt.Sprint(one)
		if len(s.Measured) > 0 { // the shop knows each by its number
			key = fmt.Sprint(i)
		}
		if n, known := at[key]; known {
			s.Laid[n].Count++
			continue
		}
		at[key] = len(s.Laid)
		size := s.Sheets[one.Sheet]
		s.Laid = append(s.Laid, Sheet{LaidSheet: one, Count: 1,
			Offcuts: nest.Offcuts(one, s.Pieces, size, s.begun(), s.kept())})
	}
	number := 1 // those that are cut alike have numbers in a row
	for i := range s.Laid {
		s.Laid[i].Number = number
		number += s.Laid[i].Count
	}
	s.serve()
	if s.Rules.Method == nest.Guillotine {
		if cuts := s.cuts(); !s.Routed { // a router's sheet goes to no saw
			s.Cuts = cuts
		}
	}
	return nil
}
