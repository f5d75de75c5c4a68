package opening

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-6 {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

func stock(readings ...float64) joinery.Stock {
	return joinery.Stock{Name: "ply", Thickness: joinery.Measure(readings...)}
}

// base is an opening of 562 x 700 x 540 behind overlay fronts, four rows on
// side-mounted slides, sides of 12.2.
func base(change func(*Bank)) Bank {
	slide, _ := BuiltIn(SideMount, geom.Millimeter)
	front := stock(19)
	b := Bank{Opening: Opening{Width: []float64{562}, Height: []float64{700}, Depth: []float64{540}, Fronts: Overlay},
		Slide: slide, Rows: make([]Row, 4), Graduation: Equal, FrontGap: 3, Edge: Edges{16, 16, 16, 16}, Sides: stock(12.2), Front: &front}
	change(&b)
	return b
}

func mustPlan(t *testing.T, b Bank) Plan {
	t.Helper()
	p, problems := Solve(b)
	for _, q := range problems {
		if q.IsError() {
			t.Fatalf("%+v", q)
		}
	}
	return p
}

// TestSideMount: 562 - 2 x 12.7 = 536.6 wide; of 540 - 3 the 500 slide fits. The
// fronts share 700 + 32 - 3 x 3 = 723: 180.75 each, 562 + 32 = 594 wide. The lowest
// begins 16 below the opening; its row in it is 164.75 high, and its box
// 164.75 - 10 - 10.
func TestSideMount(t *testing.T) {
	p := mustPlan(t, base(func(*Bank) {}))
	near(t, "slide", p.SlideLength, 500)
	low, second := p.Rows[3], p.Rows[2]
	near(t, "width", low.Box.Width, 536.6)
	near(t, "front", low.FrontHeight, 180.75)
	near(t, "front's width", low.FrontWidth, 594)
	near(t, "box", low.Box.Height, 144.75)
	near(t, "box stands", low.BoxBottom, 10)
	near(t, "front below the box", low.Front.OverhangBelow, 26)
	near(t, "front left of the box", low.Front.OverhangLeft, 12.7+16)
	near(t, "second front", second.FrontBottom, -16+180.75+3)
	near(t, "second box", second.Box.Height, 160.75)
	// The line is 35 over the box. The slide, 45 high, begins at 10 + 35 - 22.5; the
	// next at 167.75 + 10 + 35 - 22.5, over the first one's end at 67.5.
	near(t, "line", low.Line, 45)
	near(t, "first spacer", p.Spacers[0].Length, 22.5)
	near(t, "second spacer", p.Spacers[1].Length, 190.25-67.5)
	// 37 + 32 k up to 500 - 20: 14 holes a slide.
	if len(p.Holes) != 4*14 || p.Holes[1] != (geom.Point{X: 69, Y: 45}) {
		t.Errorf("%d holes, %v", len(p.Holes), p.Holes[1])
	}
}

// TestWidthAdds: the terms of the width of the boxes are named, and their sum is the width of every box.
func TestWidthAdds(t *testing.T) {
	under, _ := BuiltIn(Undermount, geom.Millimeter)
	for name, c := range map[string]struct {
		change func(*Bank)
		want   []WidthTerm
	}{
		"side mount": {func(*Bank) {}, []WidthTerm{{"opening", 1, 562}, {"slide", -2, 12.7}}},
		"undermount": {func(b *Bank) { b.Slide = under },
			[]WidthTerm{{"opening", 1, 562}, {"inside deduction", -1, 42}, {"sides", 2, 12.2}}},
		"shims, aimed narrower": {func(b *Bank) { b.Common.Shim, b.Aim = 1.5, -0.25 },
			[]WidthTerm{{"opening", 1, 562}, {"shims", -2, 1.5}, {"slide", -2, 12.7}, {"so that most run", -1, 0.25}}},
		"aimed wider": {func(b *Bank) { b.Aim = 0.1 },
			[]WidthTerm{{"opening", 1, 562}, {"slide", -2, 12.7}, {"so that most run", 1, 0.1}}},
	} {
		p := mustPlan(t, base(c.change))
		if !slices.Equal(p.BoxWidth, c.want) {
			t.Errorf("%s: %v", name, p.BoxWidth)
		}
		sum := 0.0
		for _, w := range p.BoxWidth {
			sum += float64(w.Times) * w.Each
		}
		for _, r := range p.Rows {
			near(t, name, r.Box.Width, sum)
		}
	}
}

// TestUndermount: inside 562 - 42 = 520, with sides of 12.2 outside 544.4.
func TestUndermount(t *testing.T) {
	slide, _ := BuiltIn(Undermount, geom.Millimeter)
	p := mustPlan(t, base(func(b *Bank) { b.Slide = slide }))
	near(t, "width", p.Rows[0].Box.Width, 544.4)
	if u := p.Rows[0].Undermount; u == nil || u.BottomRecess != 13 || u.MaxSide != 16 {
		t.Errorf("%+v", u)
	}
	_, problems := Solve(base(func(b *Bank) { b.Slide, b.Sides = slide, stock(15.9, 16.2) }))
	if !slices.ContainsFunc(problems, func(q geom.Diagnosis) bool { return q.IsError() && q.Code == "side-thickness" }) {
		t.Errorf("sides of 16.2 beside a slide for 16: %v", problems)
	}
}

// TestInset: fronts of 19 stand in the opening: 540 - 3 - 19 = 518, still 500; with
// 520 it is 498, so 450. The holes begin 19 further back.
func TestInset(t *testing.T) {
	inset := func(b *Bank) { b.Opening.Fronts, b.Edge = Inset, Edges{2, 2, 2, 2} }
	p := mustPlan(t, base(inset))
	near(t, "slide", p.SlideLength, 500)
	near(t, "front", p.Rows[0].FrontHeight, (700-4-9)/4.0)
	near(t, "front's width", p.Rows[0].FrontWidth, 558)
	near(t, "first hole", p.Holes[0].X, 37+19)
	near(t, "front left of the box", p.Rows[0].Front.OverhangLeft, 10.7)
	p = mustPlan(t, base(func(b *Bank) { inset(b); b.Opening.Depth = []float64{520} }))
	near(t, "shorter slide", p.SlideLength, 450)
}

// TestSmallestCounts: of three widths; what is aimed at comes on top.
func TestSmallestCounts(t *testing.T) {
	p, problems := Solve(base(func(b *Bank) { b.Opening.Width, b.Aim = []float64{563, 561.5, 562}, -0.7 }))
	near(t, "width", p.Rows[0].Box.Width, 561.5-25.4-0.7)
	if len(problems) != 1 || problems[0].Code != "opening-spread" {
		t.Errorf("%+v", problems)
	}
}

// TestDoubtfulOpening: readings that differ by more than 6 mm are not built on.
func TestDoubtfulOpening(t *testing.T) {
	for high, want := range map[float64]bool{567.9: false, 568.1: true} {
		_, problems := Solve(base(func(b *Bank) { b.Opening.Width = []float64{562, high} }))
		if len(problems) != 1 || problems[0].Code != "opening-spread" || problems[0].IsError() != want {
			t.Errorf("%g: %+v", high, problems)
		}
	}
}

// TestOutOfSquare: a parallelogram of 400 x 300 whose upper edge is shifted by 3
// has diagonals of sqrt(403^2 + 300^2) and sqrt(397^2 + 300^2).
func TestOutOfSquare(t *testing.T) {
	o := Opening{Width: []float64{400}, Height: []float64{300}, Depth: []float64{500}, Fronts: Overlay,
		Diagonals: []float64{math.Hypot(403, 300), math.Hypot(397, 300)}}
	near(t, "out of square", o.OutOfSquare(), 3)
	_, problems := Solve(base(func(b *Bank) { b.Opening = o; b.Rows = b.Rows[:1] }))
	if len(problems) != 1 || problems[0].Code != "out-of-square" {
		t.Errorf("%+v", problems)
	}
	o.Diagonals[0] += 10
	_, problems = Solve(base(func(b *Bank) { b.Opening = o; b.Rows = b.Rows[:1] }))
	if problems[0].Code != "diagonals" {
		t.Errorf("%+v", problems)
	}
}

// TestRefused: each with its code.
func TestRefused(t *testing.T) {
	for code, change := range map[geom.Code]func(*Bank){
		"depth":          func(b *Bank) { b.Opening.Depth = []float64{250} },
		"rows":           func(b *Bank) { b.Rows = []Row{{300}, {300}} },
		"row":            func(b *Bank) { b.Rows = make([]Row, 12) },
		"graduation":     func(b *Bank) { b.Graduation, b.Step = Arithmetic, 200 },
		"front-movement": func(b *Bank) { b.Front.Swelling = 0.02 },
		"width":          func(b *Bank) { b.Opening.Width = []float64{60} },
		"slide-high": func(b *Bank) {
			b.Opening.Height, b.Opening.Fronts, b.Rows, b.Front = []float64{62}, NoFront, b.Rows[:1], nil
		},
		"slide-overlap": func(b *Bank) { b.Slide.Height, b.Slide.ScrewLine, b.Rows = 250, 125, make([]Row, 3) },
	} {
		_, problems := Solve(base(change))
		if !slices.ContainsFunc(problems, func(q geom.Diagnosis) bool { return q.Code == code && q.IsError() }) {
			t.Errorf("%s: %+v", code, problems)
		}
	}
	_, problems := Solve(base(func(b *Bank) { b.Opening.Width = []float64{700} }))
	if len(problems) != 1 || problems[0].Code != "racking" || problems[0].IsError() {
		t.Errorf("%+v", problems)
	}
}

// TestLeastBoxIsRound: a row too low for any box is told the least in a round number, 40 mm or 1 1/2 in, and
// holds a box as soon as it leaves that.
func TestLeastBoxIsRound(t *testing.T) {
	for u, c := range map[geom.Unit]struct {
		want string
		mm   float64
	}{geom.Millimeter: {"at least 40 mm is needed", 40}, geom.Inch: {"at least 1.500 in is needed", 38.1}} {
		row := func(leaves float64) []geom.Diagnosis {
			_, found := Solve(base(func(b *Bank) {
				b.Unit, b.Rows, b.Front, b.Opening.Fronts = u, b.Rows[:1], nil, NoFront
				b.Slide.ClearanceAbove, b.Slide.ClearanceBelow, b.Slide.Height, b.Slide.ScrewLine = 10, 10, 20, 10
				b.Opening.Height = []float64{20 + leaves}
			}))
			return slices.DeleteFunc(found, func(d geom.Diagnosis) bool { return d.Code != "row" })
		}
		if found := row(c.mm - 0.1); len(found) != 1 || !strings.Contains(found[0].Fact.In(u), c.want) {
			t.Errorf("%s: %v, want %q", u, found, c.want)
		}
		if found := row(c.mm); len(found) != 0 {
			t.Errorf("%s: %v", u, found)
		}
	}
}

// TestGraduate: against the sums of the two series.
func TestGraduate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height, n := rapid.Float64Range(100, 2000).Draw(t, "height"), rapid.IntRange(1, 12).Draw(t, "rows")
		g := rapid.SampledFrom([]Graduation{Equal, Arithmetic, Geometric}).Draw(t, "kind")
		step, ratio := rapid.Float64Range(0, 40).Draw(t, "step"), rapid.Float64Range(1, 1.6).Draw(t, "ratio")
		rows, ok := Graduate(height, n, g, step, ratio)
		if !ok {
			if g != Arithmetic || height > float64(n)*step*float64(n-1)/2 {
				t.Fatal("refused")
			}
			return
		}
		a, m, sum := rows[0], float64(n), 0.0
		for _, h := range rows {
			sum += h
		}
		want := map[Graduation]float64{Equal: a * m, Arithmetic: a*m + step*m*(m-1)/2, Geometric: a * (math.Pow(ratio, m) - 1) / (ratio - 1)}[g]
		if g == Geometric && ratio < 1+1e-6 {
			want = a * m
		}
		if math.Abs(sum-height) > 1e-9 || math.Abs(want-height) > 1e-6 {
			t.Fatalf("rows %v make %g, the series %g, not %g", rows, sum, want, height)
		}
	})
}

// TestAnyBankFits: every box of a bank that is not refused has the clearances that
// its slide asks for at the smallest readings, with the thickest sides, in a damp
// season; rows are apart by the gap; slides stand on their spacers and on the
// cabinet's holes.
func TestAnyBankFits(t *testing.T) {
	planned := 0
	rapid.Check(t, func(t *rapid.T) {
		readings := func(name string, low, high float64) []float64 {
			v := rapid.Float64Range(low, high).Draw(t, name)
			return []float64{v, v + rapid.Float64Range(0, 3).Draw(t, name+" spread")}
		}
		slide, _ := BuiltIn(rapid.SampledFrom(Kinds).Draw(t, "slide"), rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "unit"))
		thick := rapid.Float64Range(9, 19).Draw(t, "sides")
		b := base(func(b *Bank) {
			b.Opening.Width, b.Opening.Height, b.Opening.Depth = readings("width", 200,
				1200), readings("height", 100, 1500), readings("depth", 200, 700)
			b.Opening.Fronts = rapid.SampledFrom([]Fronts{Inset, Overlay, NoFront}).Draw(t, "fronts")
			b.Opening.ClearanceBehind = rapid.Float64Range(0, 50).Draw(t, "behind")
			b.Slide, b.Sides = slide, stock(thick, thick+rapid.Float64Range(0, 0.3).Draw(t, "spread"))
			b.Sides.Solid, b.Sides.Swelling = true, rapid.SampledFrom([]float64{0, 0.012}).Draw(t, "swelling")
			b.Aim = rapid.Float64Range(-0.8, 0.3).Draw(t, "aim")
			b.Rows = make([]Row, rapid.IntRange(1, 8).Draw(t, "rows"))
			for i := range b.Rows {
				b.Rows[i].Front = rapid.SampledFrom([]float64{0, 0, 80, 140}).Draw(t, "row")
			}
			b.Graduation = rapid.SampledFrom([]Graduation{Equal, Arithmetic, Geometric}).Draw(t, "graduation")
			b.Step, b.Ratio = 10, 1.1
			if b.Opening.Fronts == NoFront {
				b.Front, b.FrontGap = nil, 0
			}
			b.LineBoring = rapid.SampledFrom([]float64{0, 32}).Draw(t, "boring")
			b.BoxHeights = rapid.SampledFrom([][]float64{nil, {60, 80, 110, 160, 220}}).Draw(t, "steps")
		})
		p, problems := Solve(b)
		for _, q := range problems {
			if q.IsError() {
				if q.Fact.IsEmpty() || q.Ask.IsEmpty() {
					t.Fatal("refused without a reason or a way out")
				}
				return
			}
		}
		planned++
		width, height, depth := b.Opening.Width[0], b.Opening.Height[0], b.Opening.Depth[0]
		for i, r := range p.Rows {
			low, high := math.Max(0, r.FrontBottom), math.Min(height, r.FrontBottom+r.FrontHeight)
			if r.BoxBottom < low+slide.ClearanceBelow-1e-6 || r.BoxBottom+r.Box.Height*(1+b.Sides.Swelling) > high-slide.ClearanceAbove+1e-6 {
				t.Fatalf("row %d: the box from %g, %g high, is too near to %g or %g", i, r.BoxBottom,
					r.Box.Height, low, high)
			}
			inFront := 0.0
			if b.Opening.Fronts == Inset {
				inFront = b.Front.Thickness.Max
			}
			if r.Box.Depth+slide.ClearanceBehind+b.Opening.ClearanceBehind+inFront > depth+2*settle {
				t.Fatalf("a depth of %g in %g", r.Box.Depth, depth)
			}
			inside := r.Box.Width - 2*b.Sides.Thickness.Mean
			if slide.InsideDeduction == 0 && math.Abs(r.Box.Width-(width-2*slide.Clearance+b.Aim)) > 1e-6 ||
				slide.InsideDeduction > 0 && math.Abs(inside-(width-slide.InsideDeduction+b.Aim)) > 1e-6 {
				t.Fatalf("a width of %g in %g", r.Box.Width, width)
			}
			if i > 0 {
				if gap := p.Rows[i-1].FrontBottom - r.FrontBottom - r.FrontHeight; math.Abs(gap-b.FrontGap) > 1e-6 {
					t.Fatalf("a gap of %g", gap)
				}
			}
			if b.LineBoring > 0 && math.Abs(math.Remainder(r.Line, b.LineBoring)) > 1e-6 {
				t.Fatalf("a line at %g", r.Line)
			}
		}
		bottom, top := p.Rows[len(p.Rows)-1].FrontBottom, p.Rows[0].FrontBottom+p.Rows[0].FrontHeight
		edge := map[Fronts]float64{Inset: -16, Overlay: 16}[b.Opening.Fronts]
		if math.Abs(bottom+edge) > 1e-6 || math.Abs(top-edge-height) > 1e-6 {
			t.Fatalf("fronts from %g to %g", bottom, top)
		}
		// The spacers and the slides between them reach the topmost line.
		at := map[int]float64{}
		for _, s := range p.Spacers {
			for _, row := range s.Rows {
				at[row] = s.Length
			}
		}
		stack := 0.0
		for i := len(p.Rows) - 1; i >= 0 && slide.Height > 0; i-- {
			if p.Rows[i].Line-slide.Height/2-stack > 0.01 && math.Abs(stack+at[i]-(p.Rows[i].Line-slide.Height/2)) > 0.1 {
				t.Fatalf("row %d stands at %g on %g + %g", i, p.Rows[i].Line, stack, at[i])
			}
			stack = p.Rows[i].Line + slide.Height/2
		}
	})
	if planned == 0 {
		t.Error("every bank was refused")
	}
}

func BenchmarkBankOf12(b *testing.B) {
	bank := base(func(b *Bank) { b.Rows = make([]Row, 12); b.Opening.Height = []float64{2000} })
	for b.Loop() {
		Solve(bank)
	}
}

func BenchmarkThousandOpenings(b *testing.B) {
	for b.Loop() {
		for i := range 1000 {
			Solve(base(func(b *Bank) { b.Opening.Width = []float64{400 + float64(i)*0.3} }))
		}
	}
}

// What readings of an opening differ by is said with what ends the saying: the smallest alone.
// A depth that differs takes nothing from the box, and is no warning.
func TestReadingsThatDiffer(t *testing.T) {
	for what, c := range map[string]struct {
		change func(o *Opening)
		level  geom.Level
	}{
		"width":  {func(o *Opening) { o.Width = []float64{564, 560} }, geom.LevelWarning},
		"height": {func(o *Opening) { o.Height = []float64{702, 698} }, geom.LevelWarning},
		"depth":  {func(o *Opening) { o.Depth = []float64{545, 540} }, geom.LevelNote},
	} {
		b := base(func(b *Bank) { c.change(&b.Opening) })
		_, found := Solve(b)
		if len(found) != 1 || found[0].Level != c.level ||
			!strings.Contains(found[0].Ask.In(geom.Millimeter), "write "+what+": ") {
			t.Errorf("%s: %v", what, found)
		}
	}
}

// Rows that do not fill their room are told where that room comes from.
func TestRowsAreToldTheirRoom(t *testing.T) {
	for fronts, want := range map[Fronts]string{Inset: "less 4 mm for the gaps", Overlay: "and 4 mm of overlay",
		NoFront: "the opening's 702 mm"} {
		b := base(func(b *Bank) {
			b.Opening.Height, b.Opening.Fronts = []float64{702}, fronts
			b.Edge = Edges{Top: 2, Bottom: 2}
			b.Rows = []Row{{Front: 200}, {Front: 200}}
		})
		_, found := Solve(b)
		if len(found) != 1 || !strings.Contains(found[0].Fact.In(geom.Millimeter), want) {
			t.Errorf("%s: %v, want %q", fronts, found, want)
		}
	}
}
