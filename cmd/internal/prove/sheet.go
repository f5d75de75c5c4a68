package prove

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/geom"
	"drawerwright/geom/sweep"
)

// laidSheet is a sheet of the report, by its place in it.
type laidSheet struct{ stock, sheet int }

// sheetCut is what one line of a sheet's drawing takes away, seen with the inside faces
// up, from the sheet's lower left corner.
type sheetCut struct {
	drawnCut
	region rings
	order  int // of cutting, over both faces
}

// sheetReader reads the drawings of one sheet.
type sheetReader struct {
	panelReader
	worker *Worker // which reads the parts' own drawings
	stock  record.SheetStock
	laid   record.LaidSheet
	least  float64 // mm: the thinnest board
	faces  []geom.Face
	files  map[geom.Face]string
	cuts   []sheetCut
	marks  map[geom.Face][]markAt
	tabs   []tabMark
	parts  []placedPart
}

// markAt is a corner mark and where in the file it is.
type markAt struct {
	box  geom.Rect
	line int
}

// placedPart is a part as it lies on the sheet.
type placedPart struct {
	record.SheetPlacement
	panel
	outline rings // in panel coordinates
	touched []int // cuts that reach it
}

// sheetCheck proves one sheet: that its drawings make the parts that lie on it as the
// parts' own drawings do, and nothing else.
func (w *Worker) sheetCheck(at laidSheet, read Read) record.Checked {
	k := w.report.Sheets[at.stock]
	r := sheetReader{worker: w, stock: k, laid: k.Sheets[at.sheet], files: make(map[geom.Face]string), marks: make(map[geom.Face][]markAt)}
	size := k.Sizes[r.laid.Size]
	name := fmt.Sprintf("%s %d", k.Stock, r.laid.Number)
	out := record.Checked{Kind: record.CheckedSheet, Name: name, Faults: []record.Fault{},
		Sheet: &record.OnSheet{Parts: len(r.laid.Placements)}}
	r.panelReader = panelReader{Prover: w.Prover, read: read, part: record.Part{Name: name, Stock: k.Stock, Length: size.Length, Width: size.Width}, register: make(map[geom.Face][]hole), many: maxOnSheet}
	for _, s := range w.report.Stocks {
		if s.Name == k.Stock {
			r.part.Thickness, r.least = s.Thickness, s.Min.MM()
		}
	}
	r.out.thickness = r.part.Thickness.MM()
	r.length, r.width = size.Length.MM(), size.Width.MM()
	r.saw = true
	for _, l := range r.laid.Layers {
		r.saw = r.saw && l.Diameter == 0
	}
	if r.sheet() {
		r.judge(out.Sheet)
	}
	out.Faults = append(out.Faults, r.faults...)
	return out
}

// maxOnSheet is how many lines and corners a sheet's drawings may have: those of a
// hundred parts.
const maxOnSheet = 100 * maxCorners

// sheet reads the drawings and works out what their bits reach. It reports whether there
// is something to judge.
func (r *sheetReader) sheet() bool {
	for _, face := range []geom.Face{geom.Outside, geom.Inside} { // in the order of cutting
		for _, name := range r.laid.Files {
			if strings.HasSuffix(name, "."+face.String()+".dxf") {
				r.faces, r.files[face] = append(r.faces, face), name
			}
		}
	}
	r.part.Files = record.Files{Inside: r.files[geom.Inside], Outside: r.files[geom.Outside]}
	whole := len(r.faces) > 0
	for _, face := range r.faces {
		name := r.files[face]
		data, err := r.read(name)
		if err != nil {
			r.fault("missing-file", r.place(name, 0), rebuild,
				"the drawing of the %s faces cannot be read: %v", face, err)
			whole = false
			continue
		}
		drawing, err := dxfread.Parse(data)
		if err != nil {
			line, why := broken(err)
			r.fault("unreadable", r.place(name, line), "export it again", noDXF, why)
			whole = false
			continue
		}
		s := r.panelReader.sheetOf(name, face, drawing)
		found := len(r.faults)
		s.units()
		s.scaled()
		if !r.edges(&s) {
			whole = false
			continue
		}
		if len(r.faults) == found {
			s.labeled()
		}
		r.marked(&s)
		r.tabs = append(r.tabs, s.tabMarks()...)
		first := len(r.drawn)
		if s.layers(); r.lines > r.most() {
			return false
		}
		r.inOrder(&s, first)
	}
	if !whole {
		return false
	}
	islands := r.islands()
	for i := range r.drawn {
		if slices.ContainsFunc(islands, func(list []int) bool { return slices.Contains(list, i) }) {
			continue
		}
		if c, ok := r.takes(r.drawn[i], islands[i]); ok {
			c.order = i
			r.cuts = append(r.cuts, c)
		}
	}
	return true
}

// islands are the lines within others of their layer, by these: there the bit goes round.
func (r *sheetReader) islands() [][]int {
	list := make([][]int, len(r.drawn))
	for i, c := range r.drawn {
		if c.loop == nil || c.operation == "profile" || c.operation == "register" || c.operation == "drill" {
			continue
		}
		least, of := math.Inf(1), -1
		for k, o := range r.drawn {
			if k == i || o.layer != c.layer || math.Abs(o.depth-c.depth) > tick || o.face != c.face || o.loop == nil ||
				!holds(o.loop.Bounds(), c.loop.Bounds()) {
				continue
			}
			if area := o.loop.Area(); area < least && ringsOf(o.loop).inside(c.loop[0].Point) {
				least, of = area, k
			}
		}
		if of >= 0 {
			list[of] = append(list[of], i)
		}
	}
	return list
}

// holds reports whether a box lies within another, clear of its edges.
func holds(outer, inner geom.Rect) bool {
	return inner.Min.X > outer.Min.X+tick && inner.Min.Y > outer.Min.Y+tick && inner.Max.X < outer.Max.X-tick &&
		inner.Max.Y < outer.Max.Y-tick
}

// edges finds the sheet's outline.
func (r *sheetReader) edges(s *sheet) bool {
	var found geom.Loop
	line := 0
	for _, e := range s.on("SHEET") {
		if e.Closed && len(e.Vertices) > 2 && s.chords(e) <= maxCorners {
			found, line = s.loop(e), e.Line
		}
	}
	if found == nil {
		s.fault("no-outline", s.place(s.name, 0), rebuild, "the drawing has no outline of the sheet on SHEET")
		return false
	}
	b := found.Bounds()
	s.at, s.size = b.Min, geom.Point{X: b.Width(), Y: b.Height()}
	if math.Abs(s.size.X-r.length) > sameSize || math.Abs(s.size.Y-r.width) > sameSize {
		s.fault("size", s.place(s.name, line), rebuild, "the sheet is drawn %s x %s; %s is %s x %s", s.text(s.size.X),
			s.text(s.size.Y), r.part.Name, s.text(r.length), s.text(r.width))
	}
	if math.Abs(s.at.X) > tick || math.Abs(s.at.Y) > tick {
		s.fault("origin", s.place(s.name, line), "export it again without moving it",
			"the sheet's lower left corner is at %s, %s, not at 0, 0", s.text(s.at.X), s.text(s.at.Y))
	}
	return true
}

// marked notes the marks of the parts' first corners, and the pins, and compares the areas
// to keep out of, which lie alike on all faces.
func (r *sheetReader) marked(s *sheet) {
	var kept []record.Box
	for _, e := range s.on("BLANK") {
		switch {
		case e.Type == "CIRCLE":
			center, radius, _ := s.panelLoop(s.loop(e)).AsCircle()
			r.register[s.face] = append(r.register[s.face], hole{center, radius, e.Line})
		case e.Closed && len(e.Vertices) == 3:
			r.marks[s.face] = append(r.marks[s.face], markAt{s.panelLoop(s.loop(e)).Bounds(), e.Line})
		case e.Closed && len(e.Vertices) == 4:
			kept = append(kept, r.areaDrawn(s, e))
		}
	}
	for _, k := range r.stock.KeepOut {
		if !slices.ContainsFunc(kept, func(o record.Box) bool { return r.alike(k, o) }) {
			s.fault("keep-out-lost", s.place(s.name, 0), rebuild,
				"the area to keep out of that begins at %s, %s is not on BLANK", s.text(k.X.MM()), s.text(k.Y.MM()))
		}
	}
}

// areaDrawn is an area drawn to keep out of, which the report has to have.
func (r *sheetReader) areaDrawn(s *sheet, e dxfread.Entity) record.Box {
	b := s.loop(e).Bounds()
	box := record.BoxOf(b)
	if !slices.ContainsFunc(r.stock.KeepOut, func(k record.Box) bool { return r.alike(k, box) }) {
		s.fault("keep-out-moved", s.place(s.name, e.Line), rebuild,
			"an area to keep out of is drawn at %s, %s; the report has none there", s.text(b.Min.X), s.text(b.Min.Y))
	}
	return box
}

// alike reports whether two areas are the same, as near as drawings tell them.
func (r *sheetReader) alike(a, b record.Box) bool {
	for _, off := range []record.Length{a.X - b.X, a.Y - b.Y, a.Length - b.Length, a.Width - b.Width} {
		if math.Abs(off.MM()) > tick {
			return false
		}
	}
	return true
}

// inOrder compares the order of the layers in the drawing with that of the legend, by
// which they are cut.
func (r *sheetReader) inOrder(s *sheet, first int) {
	last := -1
	for _, c := range r.drawn[first:] {
		i := c.row
		if i < 0 {
			continue
		}
		if i < last {
			r.fault("order", r.place(c.file, c.at), rebuild,
				"a line on %s comes after those of %s; by the legend it is cut before them", c.layer,
				s.rows[last].Layer)
			return
		}
		last = i
	}
}

// takes is what the bit of a line takes away, but for the islands within it.
func (r *sheetReader) takes(c drawnCut, islands []int) (sheetCut, bool) {
	out := sheetCut{drawnCut: c}
	radius := c.bit / 2
	if c.through {
		out.depth = r.out.thickness + 1
	}
	var loops []geom.Loop
	var err error
	switch {
	case c.operation == "profile":
		var left geom.Loop
		if left, err = sweep.Outside(c.loop, radius); err == nil && radius > 0 {
			if loops, err = sweep.Outset(c.loop, c.bit); err == nil {
				loops = append(loops, left)
			}
		}
	case c.operation == "register":
		loops = []geom.Loop{c.loop}
	case c.path != nil:
		loops, err = sweep.Line(c.path, radius)
	default:
		if _, hole, ok := c.loop.AsCircle(); ok && radius > hole && radius < hole+tick {
			radius = hole
		}
		loops, err = sweep.Pocket(c.loop, radius)
		if err == nil && len(loops) == 0 {
			b := c.loop.Bounds()
			r.fault("bit-too-big", r.place(c.file, c.at),
				"take a smaller bit, or build the folder with the bit that is there",
				"a bit of %s does not get into the %s on %s, %s wide",
				r.text(c.bit), c.operation, c.layer, r.text(math.Min(b.Width(), b.Height())))
			return out, false
		}
	}
	switch {
	case errors.Is(err, sweep.ErrRing):
		r.fault("crossing", r.place(c.file, c.at), rebuild,
			"a line on %s crosses itself or has no area", c.layer)
		return out, false
	case err != nil:
		r.fault("uncut", r.place(c.file, c.at), rebuild, "a line on %s cannot be cut: %v", c.layer, err)
		return out, false
	}
	for _, i := range islands {
		left := r.drawn[i].loop
		if radius > 0 { // what the bit does not get into stays with the island
			if wider, err := sweep.Outside(left, radius); err == nil {
				left = wider
			}
		}
		loops = append(loops, left)
	}
	out.region = ringsOf(loops...)
	return out, len(out.region.list) > 0
}
