package packet

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// SheetsPDF is a document that has only the sheets of a plan.
//
// The pieces of a list have labels in it; those of a job are in its packet.
func SheetsPDF(ctx context.Context, p sheets.Plan, size paper.Size) ([]byte, error) {
	title := cmp.Or(p.Title, "Sheets")
	if p.Title != "" {
		title += ": sheets"
	}
	var out bytes.Buffer
	var failed error
	pages := func(yield func(drawing.Page) bool) {
		book := &paper.Book{Size: size, Title: title, Out: func(p drawing.Page) { yield(p) }, // the writer takes all
			Block: paper.Block{Code: p.DXF.Code, Units: "lengths in " + unitWords[p.Units]}}
		sheetPages(ctx, book, p, record.SheetsOf(p).Stocks)
		labels := listLabels(p)
		if len(labels) == 0 {
			book.Close()
			return
		}
		failed = book.Labels(labels, paper.Grid{Columns: listColumns, Rows: listRows})
	}
	err := drawing.WritePDF(&out, drawing.Info{Title: title, Subject: "parts laid out on sheets, and the cuts that " +
		"take these apart"}, pages)
	return out.Bytes(), cmp.Or(ctx.Err(), failed, err)
}

// listColumns and listRows are the grid of labels of a list, the default of a job;
// maxListLabels is how many labels there are at most.
const listColumns, listRows, maxListLabels = 3, 7, 10_000

func listLabels(p sheets.Plan) (list []paper.Label) {
	if !p.Listed {
		return nil
	}
	for i := range p.Stocks {
		s := &p.Stocks[i]
		from := s.PieceSheets()
		for i, q := range s.Pieces {
			for n := range q.Count {
				l := paper.Label{Part: q.Name, Piece: n + 1, Of: q.Count, Facts: fmt.Sprintf("%s x %s "+
					"%s", geom.Length(q.Length).Taped(p.Units), geom.Length(q.Width).Taped(p.Units), p.Units)}
				if n < len(from[i]) {
					l.Facts += fmt.Sprintf(", sheet %d", from[i][n])
				}
				if list = append(list, l); len(list) > maxListLabels {
					return nil
				}
			}
		}
	}
	return append(list, offcutLabels(p)...)
}

// sheets prints each sheet that is cut in another way, and the cuts.
func (m maker) sheets(ctx context.Context) { sheetPages(ctx, m.Book, m.plan, m.report.Sheets) }

// maxSheetPages are the sheets of a stock that are printed; beyond that a table alone.
const maxSheetPages = 200

// sheetPages ends early with its context.
func sheetPages(ctx context.Context, book *paper.Book, p sheets.Plan, stocks []record.SheetStock) {
	if len(stocks) == 0 {
		return
	}
	b := sheetBook{book, p.Units, make(map[string]bool)}
	for n, k := range stocks {
		s := &p.Stocks[n]
		begin := b.stock(k)
		if n == 0 {
			stock := begin
			begin = func() {
				book.Chapter("Sheets")
				stock()
			}
		}
		if len(s.Laid) == 0 {
			begin()
		}
		rules, ruled := b.rules(k), false
		for i := range s.Laid {
			if ctx.Err() != nil {
				return
			}
			if i == maxSheetPages {
				book.Text(fmt.Sprintf("%d more ways in which sheets are cut are not printed: they are in the folder "+
					"sheets.", len(s.Laid)-i))
				break
			}
			if i == 0 {
				book.Together(begin)
			}
			b.sheet(laidSheet{p, s, k, i}, func() {
				if i == 0 && len(k.Cuts) > 0 && b.Fits(rules) {
					rules()
					ruled = true
				}
			})
		}
		if ruled {
			rules = func() { b.Heading(2, "Cuts of "+k.Stock+", in order") }
		}
		b.cuts(k, rules)
	}
}

// sheetBook prints sheets. What is the same for several of them is told once.
type sheetBook struct {
	*paper.Book
	unit geom.Unit
	told map[string]bool
}

// once are those of some texts that were not told before.
func (b sheetBook) once(list []string) (fresh []string) {
	for _, s := range list {
		if !b.told[s] {
			b.told[s] = true
			fresh = append(fresh, s)
		}
	}
	return fresh
}

func (b sheetBook) notes(list []string) {
	for _, s := range list {
		b.Note(s)
	}
}

// stock says how the sheets of one are laid out, when it is called.
func (b sheetBook) stock(k record.SheetStock) func() {
	notes := b.once(present.SheetNotes(k, b.unit))
	return func() {
		b.Heading(1, k.Stock)
		b.Text(withoutCost(present.SheetsSummary(k, b.unit)) + ".")
		b.Text(upper(present.SheetsHow(k, b.unit)) + ". " + present.SheetSizes)
		b.notes(notes)
		for _, left := range k.Unplaced {
			b.Item(0, "!", fmt.Sprintf("no sheet holds %d x %s: %s", left.Count, left.Part, left.Reason))
		}
	}
}

// laidSheet is one of a stock, by its place.
type laidSheet struct {
	plan  sheets.Plan
	stock *sheets.Stock
	of    record.SheetStock
	at    int
}

// withoutCost is a summary without what has no currency: the bench does not need it.
func withoutCost(summary string) string {
	said, _, _ := strings.Cut(summary, "; cost ")
	return said
}

// Parts of the page that a sheet's picture takes: of its width where the sheet is long or not, and of its height at
// most.
const (
	longWide, squareWide = 0.52, 0.45
	longSheet            = 1.5 // sheets this much longer than wide are long
	sheetHigh            = 0.36
)

// sheetLess are the parts of that to which a picture shrinks where it then goes on the rest of a page.
var sheetLess = []float64{1, 0.85, 0.75, 0.65}

// sheetRoom is the room of the picture of a sheet of a size, which may be less than usual.
func (b sheetBook) sheetRoom(size nest.Sheet, less float64) geom.Point {
	wide := squareWide
	if float64(size.Length) > longSheet*float64(size.Width) {
		wide = longWide
	}
	return geom.Point{X: less * wide * b.Width(), Y: less * sheetHigh * b.Size.Height}
}

// sheetPicture is one of a sheet with the rows of its legend.
type sheetPicture struct {
	drawing.Drawing
	rows []pieceRow
}

// pictures are those of a sheet as large as usual, and smaller where no more keys then stand beside their pieces.
func (b sheetBook) pictures(l laidSheet) (list []sheetPicture) {
	one := l.stock.Laid[l.at]
	usual := 0
	for i, less := range sheetLess {
		picture, rows, aside := SheetPicture(l.plan, l.stock, one, b.sheetRoom(l.stock.Sheets[one.Sheet], less))
		if i == 0 {
			usual = aside
		}
		if aside <= usual {
			list = append(list, sheetPicture{picture, rows})
		}
	}
	return list
}

// sheet prints a sheet with its legend, and its run card where a router cuts it; where that begins a page, meanwhile
// fills the one before.
func (b sheetBook) sheet(l laidSheet, meanwhile func()) {
	one := l.stock.Laid[l.at]
	words := fmt.Sprintf("%s, sheet %d%s", l.of.Stock, one.Number, present.MeasuredNumbers(l.of, l.of.Sheets[l.at]))
	if one.Count > 1 {
		words += fmt.Sprintf(", cut %d times", one.Count)
	}
	card := b.runCard(l)
	pictures := b.pictures(l)
	draw := func(one sheetPicture, before func()) func() {
		legend := l.legend(one.rows, b.unit.String())
		return func() {
			b.Heading(2, words)
			b.beside(one.Drawing, legend, before)
		}
	}
	nothing := func() {}
	var whole, picture func()
	for _, p := range pictures {
		if one := draw(p, card.before); whole == nil && b.Fits(one) {
			whole = one
		}
		if one := draw(p, nothing); picture == nil && b.Fits(one) {
			picture = one
		}
	}
	switch {
	case whole != nil:
		whole()
	case picture != nil: // what comes before the cuts goes on on the next page
		picture()
		card.before()
	default:
		meanwhile()
		b.Together(draw(pictures[0], card.before))
	}
	card.steps()
}

// beside prints the legend of a picture and what comes before its cuts beside it; or what takes less of the page, the
// second below both, or all of it below, the legend in columns.
func (b sheetBook) beside(picture drawing.Drawing, legend present.Table, before func()) {
	keys := func() { table(b.Book, legend) }
	ways := []func(){
		func() { b.Beside(picture, func() { keys(); before() }) },
		func() { b.Beside(picture, keys); before() },
		func() {
			b.Figure(picture, "")
			b.Columns(b.Across(2, columns(legend), legend.Texts()), keys)
			before()
		},
	}
	b.Shortest(ways...)()
}

// legend says which pieces are which on the picture, and how a router holds each.
func (l laidSheet) legend(rows []pieceRow, unit string) present.Table {
	t := present.NewTable(present.Words("on the picture"), present.Numbers(present.NumberColumn),
		present.In("size", unit), present.Words("part"))
	held := l.held()
	for n, h := range held {
		rows[n].held = h
	}
	if len(held) > 0 {
		t.Columns = append(t.Columns, present.Words("held by"))
	}
	rows = merged(rows)
	for _, r := range rows {
		t.Add([]string{r.keys, r.number, r.size, r.parts.String(), r.held}[:len(t.Columns)]...)
	}
	without := func(column int, no func(pieceRow) bool) {
		if !slices.ContainsFunc(rows, func(r pieceRow) bool { return !no(r) }) {
			t = t.Without(column)
		}
	}
	without(1, func(r pieceRow) bool { return r.number == "" })
	without(0, func(r pieceRow) bool { return r.keys == r.number })
	return t
}

// held is how a router holds the pieces of each row of the legend; nothing where it is the same for all.
func (l laidSheet) held() (list []string) {
	if !l.of.Routed {
		return nil
	}
	one := l.stock.Laid[l.at]
	for _, piece := range piecesOf(one) {
		var held []record.SheetPlacement
		for i, q := range one.Placements {
			if q.Piece == piece {
				held = append(held, l.of.Sheets[l.at].Placements[i])
			}
		}
		list = append(list, present.HeldBy(held))
	}
	if len(slices.Compact(slices.Clone(list))) == 1 {
		return nil
	}
	return list
}

// rules says how saws take the sheets of a stock apart, but for what was told of another one, when it is called.
func (b sheetBook) rules(k record.SheetStock) func() {
	if len(k.Cuts) == 0 {
		return func() {}
	}
	notes := present.CutNotes(k, b.unit)
	fresh := append(notes[:1:1], b.once(notes[1:])...)
	if len(fresh) < len(notes) {
		fresh = append(fresh, "What is said of cuts above holds here too.")
	}
	return func() {
		b.Heading(2, "Cuts of "+k.Stock)
		b.Columns(2, func() { b.notes(fresh) })
	}
}

// cuts prints the cuts of a stock by what is set for them, after what they begin with.
func (b sheetBook) cuts(k record.SheetStock, begin func()) {
	if len(k.Cuts) == 0 {
		return
	}
	const firstCuts = 25.0 // mm of the table that stand below its rules
	if !b.Fits(func() { begin(); b.Keep(firstCuts) }) {
		b.Page()
	}
	begin()
	cuts := k.Cuts[:min(len(k.Cuts), maxCuts)]
	var groups []paper.Group
	var heads []paper.Column
	var rows [][]string
	for _, g := range present.CutGroups(cuts, b.unit) {
		heads, rows = columns(g.Table), append(rows, g.Texts()...)
		groups = append(groups, paper.Group{Head: g.Set, Rows: g.Texts()})
	}
	b.Columns(b.Across(mostAcross, heads, rows), func() { b.Groups(heads, groups) })
	if rest := len(k.Cuts) - len(cuts); rest > 0 {
		b.Text(fmt.Sprintf("%d more cuts are in %s.", rest, filing.Cuts))
	}
}

// mostAcross are the columns of a table of cuts at most.
const mostAcross = 2

// maxCuts are the cuts of a stock that are printed.
const maxCuts = 3000

// SheetPicture draws a sheet with a key on each piece, and gives the rows of the legend:
// keys, number in the cut list, size, part; aside is how many keys stand beside their pieces.
func SheetPicture(p sheets.Plan, s *sheets.Stock, one sheets.Sheet, room geom.Point) (picture drawing.Drawing,
	rows []pieceRow, aside int) {
	z := s.Sheets[one.Sheet]
	mm := func(l int64) float64 { return geom.Length(l).MM() }
	text := func(l int64) string { return geom.Length(l).Taped(p.Units) }
	out := paper.SheetPage{Length: mm(z.Length), Width: mm(z.Width), Grain: s.Grained(), Holes: s.Holes(one),
		Foot: present.SheetSeen(s, one),
		Trim: geom.Rect{Min: geom.Point{X: mm(z.Trim.Left), Y: mm(z.Trim.Bottom)}, Max: geom.Point{X: mm(z.Length - z.Trim.Right), Y: mm(z.Width - z.Trim.Top)}}}
	box := func(x, y, length, width int64) geom.Rect {
		return geom.Rect{Min: geom.Point{X: mm(x), Y: mm(y)}, Max: geom.Point{X: mm(x + length), Y: mm(y + width)}}
	}
	// Saws have a name for each piece, else a number says of which part it is.
	number := make(map[int]int)
	keys := make([][]string, len(s.Pieces))
	var order []int
	for i, q := range one.Placements {
		if number[q.Piece] == 0 {
			order = append(order, q.Piece)
			number[q.Piece] = len(order)
		}
		key := fmt.Sprint(number[q.Piece])
		if of := s.Numbers(one, i); of != "" {
			key = of
		}
		if i < len(one.Called) {
			key = one.Called[i]
		}
		keys[q.Piece] = append(keys[q.Piece], key)
		name := words.And(s.Names(one, i))
		if len(one.Called) > 0 {
			name = numbered(s, one, i)
		}
		x, y := q.Size(s.Pieces)
		out.Pieces = append(out.Pieces, paper.PlacedPiece{Box: box(q.X, q.Y, x, y), Key: key,
			Lines: []string{name, text(x) + " x " + text(y)}})
	}
	for _, i := range order {
		piece, called := s.Pieces[i], keys[i]
		if len(one.Called) == 0 { // pieces of one part have one number
			called = slices.Clone(keys[i])
			slices.Sort(called)
			called = slices.Compact(called)
		}
		number, parts := partsOf(s, one, i)
		rows = append(rows, pieceRow{keys: strings.Join(called, ", "), number: number, parts: parts,
			size: text(piece.Length) + " x " + text(piece.Width)})
	}
	for _, o := range one.Offcuts {
		out.Offcuts = append(out.Offcuts, paper.PlacedPiece{Box: box(o.X, o.Y, o.Length, o.Width), Key: "offcut", Lines: []string{offcutSize(o, p.Units)}})
	}
	for _, k := range s.KeptOut(one) {
		piece := paper.PlacedPiece{Box: k, Key: "keep out"}
		if slices.ContainsFunc(out.KeepOut, func(o paper.PlacedPiece) bool { return o.Box.Overlaps(k) }) {
			piece.Key = "" // the words stand on the other
		}
		out.KeepOut = append(out.KeepOut, piece)
	}
	picture, aside = out.Draw(room)
	return picture, rows, aside
}

// numbered names the parts that a placed piece is, after their numbers.
func numbered(s *sheets.Stock, one sheets.Sheet, placement int) string {
	name := words.And(s.Names(one, placement))
	if of := s.Numbers(one, placement); of != "" {
		return of + "  " + name
	}
	return name
}

// piecesOf are the different pieces of a sheet, in the order of the legend.
func piecesOf(one sheets.Sheet) (list []int) {
	for _, q := range one.Placements {
		if !slices.Contains(list, q.Piece) {
			list = append(list, q.Piece)
		}
	}
	return list
}
