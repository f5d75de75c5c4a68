package setup_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

func boards(d joinery.Drawer) (list []setup.Board) {
	for _, p := range d.Parts {
		list = append(list, setup.Board{Name: string(p.Role) + p.Label, Role: p.Role, Count: len(p.Placements), Turned: p.Label == "right", Panel: p.Panel, Thickness: p.Stock.Thickness, Joint: d.Spec.Joint, EndWidth: d.EndWidth(p.Role)})
	}
	return list
}

// The saw's sheet for dado and rabbet: one height and one fence for dados, rabbets on
// end and grooves, those across the grain first, with all parts.
func TestSheet(t *testing.T) {
	d := drawer(t, func(s *joinery.Spec) { s.Height = 160 })
	sheet := setup.Plan(d.Spec.Cutter, nil, boards(d))
	if s := sheet.Settings; len(s) != 1 || s[0].Height != 6 || s[0].Fence != 6 || s[0].Cutter != 6.35 {
		t.Fatalf("%+v", s)
	}
	var works []setup.Holding
	for _, c := range sheet.Settings[0].Cuts {
		works = append(works, c.Holding)
	}
	if !slices.Equal(works, []setup.Holding{setup.Across, setup.OnEnd, setup.Along}) {
		t.Errorf("in the order %v", works)
	}
	dados, rabbets, grooves := sheet.Settings[0].Cuts[0], sheet.Settings[0].Cuts[1], sheet.Settings[0].Cuts[2]
	if !dados.Edges.Left || !dados.Edges.Right || len(dados.Boards) != 1 || dados.Boards[0].Count != 2 || dados.Face != geom.Inside {
		t.Errorf("dados %+v", dados)
	}
	if len(grooves.Boards) != 3 || !grooves.Edges.Lower || grooves.Edges.Upper {
		t.Errorf("grooves %+v", grooves)
	}
	if len(rabbets.Boards) != 2 || rabbets.Face != geom.Inside || rabbets.Width != 6 || len(rabbets.Passes) != 1 {
		t.Errorf("rabbets %+v", rabbets)
	}
	// A front of 13.05: its rabbet is 7.05 deep and takes two passes of 6.35, the last at
	// 6 + 7.05 - 6.35 = 6.7.
	d = drawer(t, front(13.05))
	passes := setup.Plan(d.Spec.Cutter, nil, boards(d)).Settings[0].Cuts[1].Passes
	if len(passes) != 2 {
		t.Fatalf("%v", passes)
	}
	about(t, "the last pass", passes[1], 6.7)
}

// Of sides whose back is housed 15 before their ends, seen on the inside face, the left one has its rear end at the
// right and the right one at the left: both are at the fence with that end for the back's dado, and with the other for the
// box front's.
func TestEndsOfSides(t *testing.T) {
	d := drawer(t, func(s *joinery.Spec) { s.BackJoint, s.BackSetback = joinery.Housed, 15 })
	found := 0
	for _, s := range setup.Plan(d.Spec.Cutter, nil, boards(d)).Settings {
		for _, c := range s.Cuts {
			if c.Kind != geom.Dado {
				continue
			}
			want := setup.FrontEnd
			if s.Fence > 14 {
				want = setup.RearEnd
			}
			found++
			if c.End != want || len(c.Boards) != 2 {
				t.Errorf("fence %g: the %s of %+v", s.Fence, c.End, c.Boards)
			}
		}
	}
	if found != 2 {
		t.Errorf("%d dados", found)
	}
	// A box front is at the fence with either end: no name.
	d = drawer(t, func(*joinery.Spec) {})
	for _, c := range setup.Plan(d.Spec.Cutter, nil, boards(d)).Settings[0].Cuts {
		if c.End != "" {
			t.Errorf("%s: %s", c.Name(), c.End)
		}
	}
}

// With glue room the dados are 6.2 deep and all else 6: the deeper height first, then
// the other, and never back.
func TestDeeperFirst(t *testing.T) {
	d := drawer(t, func(s *joinery.Spec) { s.GlueSpace = 0.2 })
	s := setup.Plan(d.Spec.Cutter, nil, boards(d))
	if len(s.Settings) != 2 || s.Changes() != 1 {
		t.Fatalf("%+v", s.Settings)
	}
	about(t, "the first height", s.Settings[0].Height, 6.2)
	about(t, "the second height", s.Settings[1].Height, 6)
}

// A front of 1500 - 24 + 12 = 1488 and one of 90 - 24 + 12 = 78 are not stood on end,
// where 150 to 600 are: they lie flat, the cutter as high as their rabbets are deep,
// 12 - 6. The small one's groove is no setup; a strip, the CNC router or a hand makes it. A front
// of 388 is stood on end, but not where it is 55 wide; its groove is no setup where it is 30 wide.
func TestBeyond(t *testing.T) {
	for _, c := range []struct {
		width, height, depth, measured float64
		limit                          setup.Limit
	}{{1500, 140, 500, 1488, setup.LimitMaxOnEnd}, {90, 40, 90, 78, setup.LimitMinOnEnd},
		{400, 55, 500, 55, setup.LimitMinWidthOnEnd}, {400, 30, 500, 30, setup.LimitMinWidthOnEnd}} {
		d := drawer(t, func(s *joinery.Spec) { s.Width, s.Height, s.Depth = c.width, c.height, c.depth })
		for _, b := range boards(d) {
			for _, s := range setup.Process(b, d.Spec.Cutter, nil) {
				switch {
				case s.Kind == geom.Rabbet:
					if s.Holding != setup.AtEnd || s.Instead == nil || s.Instead.Limit != c.limit || s.Face != geom.Outside || s.Refused != nil {
						t.Errorf("%g: rabbets %+v", c.width, s)
						continue
					}
					about(t, "what is measured", s.Instead.Measured, c.measured)
					about(t, "the height", s.Height, 6)
				case s.Kind == geom.Groove && (c.width == 90 || c.height == 30):
					limit := setup.LimitMinAlongFence
					if c.height == 30 && b.Role != joinery.Bottom {
						limit = setup.LimitMinWidthAlongFence
					}
					if s.Refused == nil || s.Refused.Limit != limit || !slices.Equal(s.Alternatives, []setup.Alternative{setup.ByStrip, setup.ByRouter, setup.ByHand}) {
						t.Errorf("groove %+v", s)
					}
				case s.Refused != nil:
					t.Errorf("%g: %+v", c.width, s)
				}
			}
		}
	}
}

// A back with notches for slides under the box keeps its rabbets at their full length:
// they are cut before the notches, stood on end like the front's.
func TestNotchedBack(t *testing.T) {
	d := drawer(t, func(s *joinery.Spec) {
		s.Height, s.BottomHeight = 160, 13
		s.Undermount = &joinery.Undermount{BottomRecess: 13, NotchWidth: 38, NotchHeight: 13, HookDiameter: 6, HookDepth: 10, HookHeight: 27, HookIn: 7}
	})
	s := setup.Plan(d.Spec.Cutter, nil, boards(d))
	for _, set := range s.Settings {
		if set.Height != 6 {
			t.Errorf("height %g", set.Height)
		}
	}
	if len(s.Settings) != 2 || len(s.Refused) != 0 {
		t.Fatalf("%d settings", len(s.Settings))
	}
	if len(s.Separate) != 2 || s.Separate[0].Holding != setup.Sawn || s.Separate[1].Holding != setup.Bored {
		t.Fatalf("apart %+v", s.Separate)
	}
	notch, hook := s.Separate[0], s.Separate[1]
	// From the end of the back, 12 - 6 = 6 in the sides' dados, and 38 from their inside faces.
	about(t, "the notch's width", notch.Places[0].Width(), 44)
	about(t, "the notch's height", notch.Places[0].Height(), 13)
	about(t, "the hook's bore", hook.Width, 6)
	about(t, "its depth", hook.Height, 10)
	about(t, "its height", (hook.Places[0].Min.Y+hook.Places[0].Max.Y)/2, 27)
	// Seen from outside the left end is the panel's right one: 6 + 7 from either.
	about(t, "its place",
		min((hook.Places[0].Min.X+hook.Places[0].Max.X)/2, (hook.Places[1].Min.X+hook.Places[1].Max.X)/2), 13)
}

// A router table stops a groove between stops, and takes 6.1 with a bit of 6 in three
// passes of half its diameter.
func TestRouterTable(t *testing.T) {
	d := drawer(t, func(s *joinery.Spec) {
		s.Cutter.Kind, s.GrooveEnds = joinery.RouterTable, joinery.GrooveStopped
	})
	stopped := false
	for _, s := range setup.Process(boards(d)[0], d.Spec.Cutter, nil) {
		if s.Holding == setup.Along {
			stopped = s.Stops[0] > 0 && s.Stops[1] > 0
		}
	}
	if !stopped {
		t.Error("the sides' groove has no stops")
	}
	list := setup.HeightPasses(6, 0.5, 6.1)
	if len(list) != 3 {
		t.Fatal(list)
	}
	about(t, "the last", list[2], 6.1)
	about(t, "the first", list[0], 6.1/3)
}

// By hand every pocket is marked and cut, and nothing has a fence.
func TestByHand(t *testing.T) {
	d := drawer(t, func(s *joinery.Spec) { s.Cutter.Kind, s.DadoClearance = joinery.Hand, 0.2 })
	var works []setup.Holding
	for _, set := range setup.Plan(d.Spec.Cutter, nil, boards(d)).Settings {
		about(t, "the gauge", set.Fence, 6)
		about(t, "the depth", set.Height, 6)
		for _, c := range set.Cuts {
			works = append(works, c.Holding)
		}
	}
	if !slices.Equal(works, []setup.Holding{setup.Knifed, setup.Shoulder, setup.Plowed}) {
		t.Error(works)
	}
}

// TestSheetAndForecast: the rabbets of a front and of a flush bottom are cut flat on the
// sheet where the drawer says that they are, and nowhere else, whatever the drawer and the
// limits of its machine; the cutter is then as high as the drawer says.
func TestSheetAndForecast(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	type what struct {
		role joinery.Role
		flat bool
	}
	seen := map[what]int{}
	for range 1200 {
		s, machines := anySpec(r), anyMachines(r)
		s.Joint = joinery.DadoRabbet
		s.OnEnd = machines.Of(s.Cutter.Kind).OnEnd()
		d, problems, _ := joinery.LayOut(s)
		if !s.Cutter.Kind.Fenced() || slices.ContainsFunc(problems, func(p geom.Diagnosis) bool { return p.IsError() }) {
			continue
		}
		for _, b := range boards(d) {
			forecast := d.Setup.FlatTongues
			if b.Role == joinery.Bottom {
				forecast = d.Setup.BottomHeight > 0
			} else if b.Role != joinery.Front {
				continue
			}
			for _, step := range setup.Process(b, s.Cutter, machines) {
				if step.Kind != geom.Rabbet || step.Refused != nil {
					continue
				}
				if flat := step.Holding != setup.OnEnd; flat != forecast {
					t.Fatalf("a %s of %g x %g: flat on the sheet %v, in the forecast %v (%+v)", b.Role,
						b.Panel.Length(), b.Panel.Width(), flat, forecast, step)
				}
				if b.Role == joinery.Bottom && forecast {
					about(t, "the cutter for a flat bottom", step.Height, d.Setup.BottomHeight)
				}
				seen[what{b.Role, forecast}]++
			}
		}
	}
	for _, r := range []joinery.Role{joinery.Front, joinery.Bottom} {
		if seen[what{r, true}] < 10 || seen[what{r, false}] < 10 {
			t.Errorf("too few: %v", seen)
		}
	}
}

// TestBoredByBit: holes of one bit are bored one after the other, on whatever boards they are, the widest first.
func TestBoredByBit(t *testing.T) {
	hole := func(x, radius, depth float64) geom.Pocket {
		return geom.Pocket{Kind: geom.Drill, Face: geom.Inside, Depth: depth, Outline: geom.Circle(geom.Point{X: x, Y: 50}, radius)}
	}
	board := func(name string, holes ...geom.Pocket) setup.Board {
		return setup.Board{Name: name, Role: joinery.Front, Count: 1, Joint: joinery.Butt, Thickness: joinery.Measure(12),
			Panel: geom.Panel{Outline: geom.Rectangle(0, 0, 400, 100), Thickness: 12, Pockets: holes}}
	}
	plan := setup.Plan(joinery.Cutter{Kind: joinery.Saw, Width: 6.3}, nil, []setup.Board{
		board("a", hole(50, 4, 12), hole(200, 10, 12)), board("b", hole(60, 4, 12), hole(210, 10, 12), hole(300, 4, 8))})
	var widths []float64
	for _, c := range plan.Separate {
		widths = append(widths, c.Width)
	}
	if !slices.Equal(widths, []float64{20, 20, 8, 8, 8}) {
		t.Errorf("bored in the order %v", widths)
	}
}
