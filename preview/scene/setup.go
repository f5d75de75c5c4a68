package scene

import (
	"crypto/sha256"
	"fmt"
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
	"drawerwright/geom/solid"
)

// Setting is one of a machine with a fence, with its words as they are printed, and how the parts of a
// scene are fed at it. Its places are those of the machine, as [setup.Step.Lies] has them.
type Setting struct {
	Name, Heading   string
	Figures         []SetFigure
	Notes, Cautions []string
	Cutter, Height  float64
	Cuts            []SetCut
}

// SetFigure is a number that is set, or what takes its place.
type SetFigure struct{ Name, Value string }

// SetCut is a cut of a setting.
type SetCut struct {
	Number          int // on the card of its machine
	Text, Parts     string
	Notes, Cautions []string
	Feeds           []Feed
}

// Feed is parts that are alike on their way past the cutter, with one edge at the fence, for one pass.
type Feed struct {
	Parts         []int // of the scene
	Edges         setup.Edges
	Edge          string // the same in words
	Face          geom.Face
	Pass, Passes  int
	Fence         float64        // the place of its face, or where the lower edge stands in a jig
	Before, After int            // the part's solids among the scene's
	From          geom.Placement // where it begins
	By            float64        // how far it is fed along Y
	Rows          []float64      // of fingers, how far to the right it is for each notch
	Lead          float64        // how far before its leading end the cut begins, where that is stopped
	Machine       []MachineSolid
}

// MachineSolid is what stands about the cutter; Fed where it goes along with the part.
type MachineSolid struct {
	Mesh int
	Role joinery.Role
	Fed  bool
}

// Roles of what is no part.
const (
	TableRole  joinery.Role = "table"
	FenceRole  joinery.Role = "fence"
	CutterRole joinery.Role = "cutter"
)

// Sizes of what is drawn of a machine, in mm: enough to see how a part lies. A saw's cutter is that of a stack of a
// usual size.
const (
	tableLeft, tableRight, tableDeep = 320.0, 150.0, 260.0
	tableThick                       = 18.0
	fenceThick, fenceLow, fenceTall  = 30.0, 45.0, 120.0
	stackRadius                      = 100.0
	clearOfCutter                    = 12.0 // where a part begins and ends
)

// Workbench makes how the parts of a scene are cut, step after step of a plan: what earlier ones made is in
// the solids of later ones.
type Workbench struct {
	scene *Scene
	parts map[string]int
	known map[[sha256.Size]byte]int
	done  map[int]setup.Turn // by part, all that is made of it
}

// NewWorkbench is one for the parts of a scene, whose solids it adds to.
func NewWorkbench(s *Scene) *Workbench {
	w := &Workbench{scene: s, parts: make(map[string]int), known: make(map[[sha256.Size]byte]int),
		done: make(map[int]setup.Turn)}
	for i, p := range s.Parts {
		w.parts[p.Name] = i
	}
	return w
}

// Cut is how all parts of the scene that a cut of a setting is made on are fed: for each pass every edge of each.
func (w *Workbench) Cut(s setup.Setting, c setup.Cut, k joinery.CutterKind) (list []Feed, err error) {
	faces := c.Faces()
	// A tall fence stays on for all cuts of its setting.
	tall := slices.ContainsFunc(s.Cuts, func(o setup.Cut) bool { return o.Holding == setup.OnEnd })
	for pass, face := range faces {
		var runs [][]Feed // of each board
		for _, b := range c.Boards {
			part, known := w.parts[b.Name]
			if !known {
				continue
			}
			at := bench{Workbench: w, cut: c, kind: k, tall: tall, part: part, turns: b.Turns}
			run := make([]Feed, len(b.Turns))
			for i, turn := range b.Turns {
				run[i] = Feed{Parts: []int{part}, Edges: turn.Edges, Face: c.Face, Pass: pass + 1, Passes: len(faces),
					Fence: face}
				if run[i].Before, err = at.wood(pass, i); err == nil {
					run[i].After, err = at.wood(pass, i+1)
				}
				if err == nil {
					err = at.feed(&run[i], turn)
				}
				if err != nil {
					return nil, err
				}
			}
			runs = together(runs, run)
		}
		list = append(list, slices.Concat(runs...)...)
	}
	for _, b := range c.Boards {
		if part, known := w.parts[b.Name]; known {
			all := w.done[part]
			for _, t := range b.Turns {
				all.Pockets, all.EdgeCuts = append(all.Pockets, t.Pockets...), append(all.EdgeCuts, t.EdgeCuts...)
			}
			w.done[part] = all
		}
	}
	return list, nil
}

// together adds the run of a board, or its part to the run of one that is fed and cut alike.
func together(runs [][]Feed, run []Feed) [][]Feed {
	alike := func(a, b Feed) bool { return a.Edges == b.Edges && a.Before == b.Before && a.After == b.After }
	for _, o := range runs {
		if slices.EqualFunc(o, run, alike) {
			for i := range o {
				o[i].Parts = append(o[i].Parts, run[i].Parts...)
			}
			return runs
		}
	}
	return append(runs, run)
}

// bench is a part with the turns of one cut.
type bench struct {
	*Workbench
	cut   setup.Cut
	kind  joinery.CutterKind
	tall  bool // the fence
	part  int
	turns []setup.Turn
}

func (b bench) panel() geom.Panel { return b.scene.Parts[b.part].Panel }

// wood is the solid of the part when so many turns have had so many passes and one more, the others so many.
func (b bench) wood(passes, more int) (int, error) {
	p := b.panel()
	out := geom.Panel{Outline: geom.Rectangle(0, 0, p.Length(), p.Width()), Thickness: p.Thickness}
	add := func(t setup.Turn) {
		for _, i := range t.Pockets {
			k := p.Pockets[i]
			out.Pockets = append(out.Pockets, geom.Pocket{Kind: k.Kind, Face: k.Face, Depth: k.Depth, Outline: k.OnBlank()})
		}
		for _, i := range t.EdgeCuts {
			cutout := geom.Pocket{Kind: geom.Cutout, Depth: p.Thickness, Outline: p.EdgeCuts[i].Area}
			out.Pockets = append(out.Pockets, cutout)
		}
	}
	add(b.done[b.part])
	all := len(b.cut.Faces())
	var waste []solid.Mesh
	whole := true // nothing of the cut is left to be done
	for i, t := range b.turns {
		had := passes
		if i < more {
			had++
		}
		before := len(out.Pockets)
		whole = whole && had == all
		if had > 0 {
			add(t)
		}
		switch {
		case had == 0 || had == all:
		case b.cut.Holding == setup.OnEnd: // a strip stands outside of the slot, unless only thicker boards have it
			if from := b.cut.Passes[had-1] + b.cut.Cutter; from < p.Thickness {
				m, err := b.strip(t.Edges, from, out.Pockets[:before])
				if err != nil {
					return 0, err
				}
				waste = append(waste, m)
			}
		default: // the pocket is as wide as the cutter has come
			for j := before; j < len(out.Pockets); j++ {
				to := b.within(t.Edges, b.cut.Passes[had-1]+b.cut.Cutter)
				out.Pockets[j].Outline = out.Pockets[j].Outline.Bounds().Intersect(to).Loop()
			}
		}
	}
	if whole && len(out.Pockets) == len(p.Pockets)+len(p.EdgeCuts) {
		return b.scene.Parts[b.part].Mesh, nil // it is done
	}
	m, err := solid.Build(out, solid.Options{})
	if err != nil {
		return 0, fmt.Errorf("%s, as it is cut: %w", b.scene.Parts[b.part].Name, err)
	}
	return b.add(solid.Join(append([]solid.Mesh{m}, waste...)...)), nil
}

// within is the blank as far as a distance from an edge.
func (b bench) within(e setup.Edges, mm float64) geom.Rect {
	length, width := b.panel().Length(), b.panel().Width()
	out := geom.Rect{Max: geom.Point{X: length, Y: width}}
	switch {
	case e.Left:
		out.Max.X = mm
	case e.Right:
		out.Min.X = length - mm
	case e.Lower:
		out.Max.Y = mm
	default:
		out.Min.Y = width - mm
	}
	return out
}

// strip is what stands at an edge beyond a distance from the face at the fence, as high as the cutter, but for pockets
// that have been cut before.
func (b bench) strip(e setup.Edges, from float64, had []geom.Pocket) (solid.Mesh, error) {
	p, edge := b.panel(), b.within(e, b.cut.Height)
	out := geom.Panel{Outline: edge.Loop(), Thickness: p.Thickness - from}
	for _, k := range had {
		if k.Face == b.cut.Face {
			k.Depth -= from
		}
		at := k.Outline.Bounds().Intersect(edge)
		if k.Depth > 0 && at.Width() > 0 && at.Height() > 0 {
			k.Outline = at.Loop()
			out.Pockets = append(out.Pockets, k)
		}
	}
	m, err := solid.Build(out, solid.Options{})
	at := geom.Placement{X: geom.Vec3{X: 1}, Y: geom.Vec3{Y: 1}}
	if b.cut.Face == geom.Outside {
		at.Origin.Z = from
	}
	return m.Place(at, geom.FineGrid(max(p.Length(), p.Width()))), err
}

// add gives a solid its place among the scene's.
func (w *Workbench) add(m solid.Mesh) int {
	packed := solid.Pack(m)
	key := fingerprint(packed)
	at, known := w.known[key]
	if !known {
		at = len(w.scene.Meshes)
		w.known[key] = at
		w.scene.Meshes = append(w.scene.Meshes, packed)
	}
	return at
}

// feed finds where the part begins and how far it goes, and what stands about it.
func (b bench) feed(f *Feed, turn setup.Turn) error {
	p, c := b.panel(), b.cut
	jig := c.Holding == setup.Fingers
	if jig {
		for _, i := range turn.EdgeCuts {
			r := p.EdgeCuts[i].Area.Bounds()
			f.Rows = append(f.Rows, setup.NotchStands(geom.Interval{Min: r.Min.Y, Max: r.Max.Y}, c.Cutter)...)
		}
		slices.Sort(f.Rows)
		f.Fence = f.Rows[0]
		for i := range f.Rows {
			f.Rows[i] -= f.Fence
		}
	}
	f.From = c.Lies(p, turn.Edges, f.Fence)
	_, high := setup.Extent(p, f.From)
	half := overTable(c.Step, b.kind)
	run := half + clearOfCutter
	begin, end := -high.Y-run, run // its nearer side
	if trail := c.Stops; trail != [2]float64{} {
		if f.From.X.Y > 0 { // its right end leads
			trail[0], trail[1] = trail[1], trail[0]
		}
		if f.Lead = trail[0]; f.Lead > 0 {
			begin = half - (high.Y - f.Lead)
		}
		if trail[1] > 0 {
			end = -half - trail[1]
		}
	}
	f.From.Origin.Y += begin
	f.By = end - begin
	return b.machine(f, jig)
}

// overTable is how far from its middle the cutter reaches along Y, over the table.
func overTable(s setup.Step, k joinery.CutterKind) float64 {
	if k == joinery.RouterTable {
		return s.Cutter / 2
	}
	r := max(stackRadius, s.Height)
	return math.Sqrt(float64(r*r) - float64((r-s.Height)*(r-s.Height)))
}

// machine puts table, cutter and fence, or the board of a jig, about a feed.
func (b bench) machine(f *Feed, jig bool) error {
	c := b.cut
	put := func(role joinery.Role, fed bool, p geom.Panel, at geom.Placement) error {
		m, err := solid.Build(p, solid.Options{})
		if err != nil {
			return err
		}
		f.Machine = append(f.Machine, MachineSolid{b.add(m.Place(at, geom.FineGrid(4*tableLeft))), role, fed})
		return nil
	}
	box := func(role joinery.Role, fed bool, low, high geom.Vec3) error {
		block := geom.Panel{Outline: geom.Rectangle(low.X, low.Y, high.X, high.Y), Thickness: high.Z - low.Z}
		return put(role, fed, block, geom.Placement{Origin: geom.Vec3{Z: low.Z}, X: geom.Vec3{X: 1}, Y: geom.Back})
	}
	right := max(tableRight, f.Fence+fenceThick)
	corner := geom.Vec3{X: -tableLeft, Y: -tableDeep, Z: -tableThick}
	if err := box(TableRole, false, corner, geom.Vec3{X: right, Y: tableDeep}); err != nil {
		return err
	}
	outline, at := cutterOf(c.Step, b.kind)
	if err := put(CutterRole, false, outline, at); err != nil {
		return err
	}
	if jig {
		low, high := setup.Extent(b.panel(), f.From)
		far := geom.Vec3{X: high.X + slices.Max(f.Rows) + fenceThick, Y: high.Y + fenceThick, Z: fenceTall}
		return box(FenceRole, true, geom.Vec3{X: low.X, Y: high.Y, Z: c.Height}, far)
	}
	tall := fenceLow
	if b.tall {
		tall = fenceTall
	}
	back := geom.Vec3{X: f.Fence + fenceThick, Y: tableDeep, Z: tall}
	return box(FenceRole, false, geom.Vec3{X: f.Fence, Y: -tableDeep}, back)
}

// cutterOf is what stands of a cutter over the table: a part of a disc, or a bit.
func cutterOf(s setup.Step, k joinery.CutterKind) (geom.Panel, geom.Placement) {
	const chords = 40
	var ring []geom.Point
	if k == joinery.RouterTable {
		for i := range chords {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / chords)
			ring = append(ring, geom.Point{X: s.Cutter / 2 * (cos - 1), Y: s.Cutter / 2 * sin})
		}
		return geom.Panel{Outline: geom.Polygon(ring...), Thickness: s.Height},
			geom.Placement{X: geom.Vec3{X: 1}, Y: geom.Back}
	}
	r, half := max(stackRadius, s.Height), overTable(s, k)
	from := math.Asin(half / r)
	for i := range chords + 1 {
		sin, cos := math.Sincos(from * (1 - 2*float64(i)/chords))
		ring = append(ring, geom.Point{X: r * sin, Y: max(0, r*cos-(r-s.Height))})
	}
	return geom.Panel{Outline: geom.Polygon(ring...), Thickness: s.Cutter},
		geom.Placement{Origin: geom.Vec3{X: -s.Cutter}, X: geom.Back, Y: geom.Up}
}
