package fit

import "drawerwright/geom/joinery"

// The sources of a box, by their place in its list. Two sides come from two boards;
// what one setting makes off is off in every part that it cuts.
const (
	leftSide = iota
	rightSide
	front
	back
	bottom
	cutter      // width of every slot
	fence       // distance of dados, tongues and grooves
	height      // of the cutter for rabbets and grooves; of a router too, above 0 cuts deeper
	dadoHeight  // where the dados have a height of their own
	bottomFence // of the rabbets of a bottom on a tongue
	frontDado   // from here on what each cut is off by itself
	frontTongue
	leftDado // how deep
	rightDado
	leftRabbet // how long, of the front
	rightRabbet
	backDado
	backTongue
	grooveDepth
	dividerDado
	sideLength
	frontLength
	bottomLength
	bottomWidth
	ripWidth
	grooveCutter // where the bottom's grooves have a cutter of their own
	grooveFence  // and a fence distance of their own
	grooveMove   // between the first and the last pass over one
	endHeight    // of the cutter for tongues that are cut flat
	endFence     // where their rabbets end
	bottomHeight // of the cutter for those of one that lies flat
	sideGroove   // place of the bottom's groove over the lower edges, in the sides
	endGroove    // and in front and back
	backHeight   // of a back under which the bottom is slid in
	// What a caliper reads of these shows several errors at once: they are sources for
	// [Readings] alone, and off by nothing in a forecast.
	dadoWidth
	backWidth
	backPlace
	grooveWidth
	bottomTongue
	sources
)

// The sources of which a test cut tells.
const (
	SourceLeftSide, SourceRightSide  = leftSide, rightSide
	SourceFront, SourceFrontLength   = front, frontLength
	SourceCutter, SourceGrooveCutter = cutter, grooveCutter
	SourceFence, SourceGrooveFence   = fence, grooveFence
	SourceHeight, SourceDadoHeight   = height, dadoHeight
	SourceEndFence, SourceEndHeight  = endFence, endHeight
)

// SlideFit is what a slide wants of the box that runs on it: how wide it is outside
// or, where InsideCounts, inside, with the least and the most that is right, in mm.
type SlideFit struct {
	Min, Max     float64
	InsideCounts bool
}

// The measures that this package adds to those of the package joinery. All are in mm.
const (
	RecessInner   joinery.CheckCode = "recess-inner"   // of front or back, its tongue against the inner wall of its dado
	ShoulderGap   joinery.CheckCode = "shoulder-gap"   // open at the front's shoulders; below 0 there is room at the tongue's end
	OutsideHeight joinery.CheckCode = "outside-height" // of the box
	Diagonal      joinery.CheckCode = "diagonal"       // over the sides' outside corners
	GrooveStep    joinery.CheckCode = "groove-step"    // of the bottom's groove, from front and back up to the sides
	// from a bottom that is slid in up to the lower edge of the back, whose upper edge is level with the sides
	BackOverBottom joinery.CheckCode = "back-over-bottom"
	SlideClearance joinery.CheckCode = "slide-clearance" // the width that a slide wants, outside or inside
)

// Spread is between which thicknesses the boards of a stock are, in mm either way
// of their mean.
type Spread struct {
	Minus, Plus float64
	Assumed     string // by what standard; empty where it was measured
}

// Boards are the spreads of the stocks of a drawer.
type Boards struct{ Sides, Front, Back, Bottom Spread }

// Measured is the spread of readings.
func Measured(t joinery.Thickness) Spread { return Spread{Minus: t.Mean - t.Min, Plus: t.Max - t.Mean} }

// MeasuredBoards are the spreads that a drawer's readings have.
func MeasuredBoards(s joinery.Spec) Boards {
	return Boards{Measured(s.Sides.Thickness), Measured(s.Front.Thickness), Measured(s.Back.Thickness), Measured(s.Bottom.Thickness)}
}

// Measure is one measure of the finished box with its stack.
type Measure struct {
	joinery.Check // as it is with the cuts as set; Min and Max come from the readings only
	Stack         Stack
}

// Measures lists what a drawer's joints will do: every check of the package joinery, and
// the shoulder, the second seat of front and back, the bottom's slack, the step of its
// groove, what a loose insert has about it, the back over a bottom that is slid in, the
// height, the diagonals, and what the slide wants where there is one. The drawer must be one
// that can be built.
func Measures(d joinery.Drawer, boards Boards, a Accuracy, slide *SlideFit) []Measure {
	m := &model{d: d, cuts: CutsOf(d), sources: sourcesOf(d, boards, a), slide: slide}
	for _, c := range d.Fit {
		m.known(c)
	}
	m.seats()
	m.shoulder()
	m.clearance()
	m.insert()
	m.step()
	m.over()
	m.size()
	m.runs()
	for i := range m.list { // with those that dividers and an insert added, so that all share them
		m.list[i].Stack.Sources = m.sources
	}
	return m.list
}

// sourcesOf are the sources of a drawer but for its dividers' boards and an insert's strips.
func sourcesOf(d joinery.Drawer, b Boards, a Accuracy) []Source {
	list := make([]Source, sources)
	board := func(i int, of Cause, name string, t Spread) {
		list[i] = Source{Name: name, Minus: t.Minus, Plus: t.Plus, Cause: of}
	}
	board(leftSide, OfSides, "thickness of the left side", b.Sides)
	board(rightSide, OfSides, "thickness of the right side", b.Sides)
	board(front, OfFront, "thickness of the box front", b.Front)
	board(back, OfBack, "thickness of the back", b.Back)
	board(bottom, OfBottom, "thickness of the bottom", b.Bottom)
	set := func(i int, of Cause, name string, limit float64) {
		list[i] = a.source(Source{Name: name, Minus: limit, Plus: limit, Shape: Normal, Cause: of})
	}
	fenceName, heightName := "fence distance", "cutter height"
	if d.Spec.Cutter.Kind.FollowsDrawing() {
		fenceName, heightName = "place of the board", "router's zero"
	}
	set(cutter, OfCutter, "width of the cutter", a.Cutter)
	set(fence, OfFence, fenceName, a.Fence)
	set(height, OfHeight, heightName, a.Height)
	set(dadoHeight, OfHeight, heightName+" of the dados", a.Height)
	set(grooveCutter, OfCutter, "width of the cutter for grooves", a.Cutter)
	set(grooveFence, OfFence, fenceName+" of the grooves", a.Fence)
	set(grooveMove, OfFence, "move of the fence between passes over a groove", a.Fence)
	set(endHeight, OfHeight, heightName+" for the rabbets of box front and back", a.Height)
	set(endFence, OfFence, fenceName+" for the rabbets of box front and back", a.Fence)
	set(bottomHeight, OfHeight, heightName+" for the bottom's rabbets", a.Height)
	set(bottomFence, OfFence, fenceName+" for the bottom's rabbets", a.Fence)
	for i, name := range map[int]string{
		frontDado: "place of the box front's dado", frontTongue: "cut of the box front's tongue", leftDado: "depth of the left dado", rightDado: "depth of the right dado",
		leftRabbet: "length of the left rabbet", rightRabbet: "length of the right rabbet", backDado: "place of the back's dado", backTongue: "cut of the back's tongue",
		grooveDepth: "depth of the groove", sideGroove: "place of the groove in the sides", endGroove: "place of the groove in box front and back", dividerDado: "width of the divider's dado",
	} {
		set(i, OfCut, name, a.Cut)
	}
	set(sideLength, OfLength, "length of the sides", a.Length)
	set(frontLength, OfLength, "length of box front and back", a.Length)
	set(bottomLength, OfLength, "length of the bottom", a.Length)
	set(bottomWidth, OfLength, "width of the bottom", a.Length)
	set(ripWidth, OfLength, "height of sides, box front and back", a.Length)
	set(backHeight, OfLength, "height of the back over the bottom", a.Length)
	return list
}
