package breakdown

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/nest"

	"pgregory.net/rapid"
)

// TestCuts: done one after the other on real boards, the cuts give every piece of the
// layout in its size, each from a board that is then in hand, and lose a kerf each.
func TestCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var pieces []nest.Piece
		for i := range rapid.IntRange(1, 8).Draw(t, "kinds") {
			pieces = append(pieces, nest.Piece{Name: fmt.Sprint("p", i), Length: rapid.Int64Range(20, 600).Draw(t, "length"), Width: rapid.Int64Range(20, 600).Draw(t, "width"),
				Count: rapid.IntRange(1, 4).Draw(t, "count"), MayRotate: rapid.Bool().Draw(t, "turn")})
		}
		if rapid.Bool().Draw(t, "sets") {
			for i := range pieces[:len(pieces)/2] {
				pieces[i].Set, pieces[i].Count = 1+i/2, 1
			}
		}
		trim := func(name string) int64 { return rapid.Int64Range(0, 20).Draw(t, name) }
		sheet := nest.Sheet{Name: "s", Length: rapid.Int64Range(650, 1500).Draw(t, "long"), Width: rapid.Int64Range(650, 1500).Draw(t, "wide"),
			Trim: nest.Trim{Left: trim("left"), Right: trim("right"), Bottom: trim("bottom"), Top: trim("top")}}
		rules := nest.Rules{Kerf: rapid.Int64Range(0, 4).Draw(t, "kerf"), Stages: rapid.SampledFrom([]int{0, 3, 4}).Draw(t, "stages")}
		roomy := rapid.Bool().Draw(t, "roomy") // then there is wood beside every layout
		if roomy {
			sheet.Trim.Right, sheet.Trim.Top = sheet.Trim.Right+300, sheet.Trim.Top+300
			sheet.Length, sheet.Width = sheet.Length+300, sheet.Width+300
		}
		l, err := nest.Lay(context.Background(), pieces, []nest.Sheet{sheet}, rules, nest.Options{Effort: 2})
		if err != nil {
			t.Fatal(err)
		}
		if roomy {
			sheet.Trim.Right, sheet.Trim.Top = sheet.Trim.Right-300, sheet.Trim.Top-300
		}
		var sheets []Sheet
		inHand := make(map[string]Workpiece)
		for n, s := range l.Sheets {
			b, ok := nest.Cuts(s, pieces, sheet, rules)
			if !ok {
				t.Fatal("a sheet does not come apart")
			}
			name := fmt.Sprint(n + 1)
			sheets = append(sheets, Sheet{Name: name, Count: 1, Size: sheet, Board: b,
				Names: func(placed []int) (string, string) { return pieces[s.Placements[placed[0]].Piece].Name, "" }})
			inHand["sheet "+name] = Workpiece{Name: "sheet " + name, Short: name, Length: sheet.Length, Width: sheet.Width}
		}
		r := Rules{Kerf: rules.Kerf, Allowance: rapid.Int64Range(0, 5).Draw(t, "allowance"), Weight: 1e-5,
			MaxWeight: float64(rapid.IntRange(0, 20).Draw(t, "heaviest")), MinGuided: 300, RipCapacity: 1300,
			CrosscutCapacity: 600, SledCapacity: int64(rapid.IntRange(500, 3000).Draw(t, "on sled")),
			MaxStop: int64(rapid.IntRange(200, 1500).Draw(t, "stop")),
			Squared: rapid.Bool().Draw(t, "squared")}
		cuts, laid := Cuts(sheets, r)
		for _, more := range []int64{0, 1, -min(1, r.Kerf)} {
			if err := Check(sheets, cuts, laid, r, more); err != nil {
				t.Fatalf("a blade that takes %d more: %v\n%+v", more, err, cuts)
			}
		}
		for n, c := range cuts {
			if inHand[c.Workpiece.Name] != (Workpiece{Name: c.Workpiece.Name, Short: c.Workpiece.Short,
				Length: c.Workpiece.Length, Width: c.Workpiece.Width}) {
				t.Fatalf("cut %d is of %+v, in hand is %+v\n%+v", n, c.Workpiece, inHand[c.Workpiece.Name], cuts)
			}
			delete(inHand, c.Workpiece.Name)
			if roomy && r.Allowance > 0 && c.Remainder.Piece && !c.Trim {
				t.Fatalf("cut %d leaves a finished part: %+v", n, c)
			}
			if c.Rough {
				again := slices.IndexFunc(cuts[n+1:], func(d Cut) bool { return d.Workpiece.Name == c.Yields.Name })
				guided := again >= 0 && cuts[n+1+again].Kind == HandHeld && !cuts[n+1+again].Trim
				if c.Kind != HandHeld || again < 0 || c.Stage > 0 && guided {
					t.Fatalf("cut %d is rough, and no machine brings what it gives to its size: %+v", n, c)
				}
			}
			long := func(h Workpiece, across bool) int64 {
				if across {
					return h.Width
				}
				return h.Length
			}
			// Along one side the parts add up to the board, along the other each is as it.
			fits := func(across bool) bool {
				rest := long(c.Workpiece, across)
				for _, h := range []Workpiece{c.Yields, c.Remainder} {
					if h.Name != "" {
						if long(h, !across) != long(c.Workpiece, !across) {
							return false
						}
						rest -= long(h, across)
					}
				}
				switch {
				case c.Trim && c.Kind == FenceCut:
					return rest >= 0 && long(c.Remainder,
						across) == c.Setting && (c.Yields.Name == "" || rest == r.Kerf)
				case c.Trim:
					off := long(c.Workpiece, across) - long(c.Remainder, across)
					return rest >= 0 && rest <= max(r.Kerf, c.Setting) && off == c.Setting
				}
				return rest >= 0 && rest <= r.Kerf && long(c.Yields, across) == c.Setting
			}
			if !fits(false) && !fits(true) {
				t.Fatalf("cut %d: %+v", n, c)
			}
			for _, h := range []Workpiece{c.Yields, c.Remainder} {
				if h.Name == "" || h.Name == "trim" {
					continue
				}
				if h.Offcut {
					h.Name += fmt.Sprint(" offcut ", n) // a board can leave one on each side
				}
				if _, twice := inHand[h.Name]; twice {
					t.Fatalf("%s twice", h.Name)
				}
				inHand[h.Name] = h
			}
			length := other(c)
			along := c.Workpiece.Length + c.Workpiece.Width - length // of the board, across the cut
			stops := c.Trim || c.Setting <= r.MaxStop
			sled := length <= r.CrosscutCapacity && along <= r.SledCapacity && stops
			if c.Kind == FenceCut && length < along && sled {
				t.Fatalf("cut %d runs with its short edge along the fence: %+v", n, c)
			}
			most := max(c.Workpiece.Length, c.Workpiece.Width)
			turns := length < c.Setting || length < r.MinGuided || 3*length < 2*most && length != most
			if c.Kind == FenceCut && (turns || c.Setting > r.RipCapacity) ||
				c.Kind == SledCut && !sled {
				t.Fatalf("cut %d is no %s: %+v", n, c.Kind, c)
			}
		}
		var got, want []string
		for _, h := range inHand {
			switch {
			case h.Piece:
				board, name, _ := strings.Cut(h.Name, " ")
				if !slices.ContainsFunc(laid, func(of Laid) bool { return slices.Contains(of.Called, board) }) {
					t.Fatalf("%s is not what a piece is called: %v", board, laid)
				}
				got = append(got, fmt.Sprint(name, " ", h.Length, " ", h.Width))
			case !h.Offcut && !strings.Contains(h.Name, "trim"):
				if len(cuts) > 0 {
					t.Fatalf("%+v is in hand at the end", h)
				}
			}
		}
		for _, s := range l.Sheets {
			for _, p := range s.Placements {
				x, y := p.Size(pieces)
				want = append(want, fmt.Sprint(pieces[p.Piece].Name, " ", x, " ", y))
			}
		}
		for i := range l.Sheets {
			l.Sheets[i].Placements = slices.Clone(l.Sheets[i].Placements)
			for n, at := range laid[i].Places {
				p := &l.Sheets[i].Placements[n]
				p.X, p.Y = at[0], at[1]
			}
			x, y := sheet.Length-sheet.Trim.Right, sheet.Width-sheet.Trim.Top
			for _, o := range laid[i].Offcuts {
				if o.X+o.Length > x || o.Y+o.Width > y {
					t.Fatalf("an offcut is beyond the sheet: %+v", o)
				}
				for _, p := range l.Sheets[i].Placements {
					a, b := p.Size(pieces)
					if p.X < o.X+o.Length && o.X < p.X+a && p.Y < o.Y+o.Width && o.Y < p.Y+b {
						t.Fatalf("an offcut has a piece in it: %+v, %+v", o, p)
					}
				}
			}
		}
		rules.Stages = 0 // an allowance may take a stage of its own
		apart := slices.Clone(pieces)
		for i := range apart {
			apart[i].Set = 0 // or lie between the pieces of a set
		}
		if err := nest.Check(l, apart, []nest.Sheet{sheet}, rules); err != nil {
			t.Fatalf("pieces do not lie where cuts leave them: %v", err)
		}
		slices.Sort(got)
		slices.Sort(want)
		if len(cuts) > 0 && !slices.Equal(got, want) {
			t.Fatalf("%v\nwanted %v", got, want)
		}
	})
}

// other is the length of a cut: the side that its parts have in common with the board.
func other(c Cut) int64 {
	h := c.Yields
	if c.Trim {
		h = c.Remainder
	}
	if h.Length == c.Workpiece.Length && (h.Width == c.Setting || c.Trim && h.Width < c.Workpiece.Width) {
		return c.Workpiece.Length
	}
	return c.Workpiece.Width
}

// usual is a saw of a small shop, in mm.
var usual = Rules{Kerf: 3, MinGuided: 300, RipCapacity: 1300, CrosscutCapacity: 600, SledCapacity: 1600, MaxStop: 900}

// TestHeavy: a sheet that is too heavy is first cut in two with a saw that is taken to
// it, and no board after that is heavier than allowed.
func TestHeavy(t *testing.T) {
	pieces := []nest.Piece{{Name: "side", Length: 500, Width: 140, Count: 30}}
	sheet := nest.Sheet{Length: 2440, Width: 1220, Trim: nest.Trim{Left: 5, Right: 5, Bottom: 5, Top: 5}}
	rules := nest.Rules{Kerf: 3}
	l, err := nest.Lay(context.Background(), pieces, []nest.Sheet{sheet}, rules, nest.Options{Effort: 5})
	if err != nil {
		t.Fatal(err)
	}
	b, _ := nest.Cuts(l.Sheets[0], pieces, sheet, rules)
	whole := []Sheet{{Name: "1", Count: 1, Size: sheet, Board: b, Names: func([]int) (string, string) { return "side", "" }}}
	weight := 25e-6 / 2 // kg a square mm: 37.2 kg a sheet
	r := usual
	r.Weight, r.MaxWeight = weight, 23
	cuts, _ := Cuts(whole, r)
	if cuts[0].Kind != HandHeld || cuts[1].Stage == 0 {
		t.Fatalf("first cuts %+v %+v", cuts[0], cuts[1])
	}
	for _, c := range cuts[1:] {
		if c.NeedsHelper {
			t.Errorf("%+v is too heavy", c)
		}
	}
	r.MaxWeight = 40
	if c, _ := Cuts(whole, r); !c[0].Trim {
		t.Errorf("a light sheet begins with %s", c[0].Kind)
	}
}

// TestGrouped: on equal sheets every setting of a stage is made once.
func TestGrouped(t *testing.T) {
	pieces := []nest.Piece{{Name: "side", Length: 500, Width: 140, Count: 40}, {Name: "front", Length: 400, Width: 140, Count: 20}, {Name: "low", Length: 500, Width: 90, Count: 12}}
	sheet := nest.Sheet{Length: 1525, Width: 1525}
	rules := nest.Rules{Kerf: 3, Stages: 2}
	l, err := nest.Lay(context.Background(), pieces, []nest.Sheet{sheet}, rules, nest.Options{Effort: 20})
	if err != nil {
		t.Fatal(err)
	}
	var sheets []Sheet
	for n, s := range l.Sheets {
		b, _ := nest.Cuts(s, pieces, sheet, rules)
		sheets = append(sheets, Sheet{Name: fmt.Sprint(n + 1), Count: 1, Size: sheet, Board: b,
			Names: func([]int) (string, string) { return "", "" }})
	}
	settings := make(map[string]bool)
	cuts, _ := Cuts(sheets, usual)
	for _, c := range cuts {
		settings[fmt.Sprint(c.Stage, c.Trim, c.Kind, c.Setting)] = true
	}
	if n := Moves(cuts); n > len(settings) || len(sheets) < 2 {
		t.Errorf("%d moves for %d settings on %d sheets", n, len(settings), len(sheets))
	}
}

// TestNearlyWhole: a piece that is all of a heavy board but less than a kerf is cut to size.
func TestNearlyWhole(t *testing.T) {
	pieces := []nest.Piece{{Name: "p", Length: 400, Width: 565, Count: 1}}
	sheet := nest.Sheet{Length: 400, Width: 566}
	rules := nest.Rules{Kerf: 2}
	l, err := nest.Lay(context.Background(), pieces, []nest.Sheet{sheet}, rules, nest.Options{Effort: 1})
	if err != nil {
		t.Fatal(err)
	}
	b, _ := nest.Cuts(l.Sheets[0], pieces, sheet, rules)
	cuts, _ := Cuts([]Sheet{{Name: "1", Count: 1, Size: sheet, Board: b,
		Names: func([]int) (string, string) { return "p", "" }}}, Rules{Kerf: 2, Weight: 1, MaxWeight: 1})
	if len(cuts) != 1 || !cuts[0].Yields.Piece || cuts[0].Yields.Width != 565 {
		t.Errorf("%+v", cuts)
	}
}

// TestShortEdge: pieces that are cut off a board across its long side are cut on the sled, all at one stop, also when
// what is in hand has become shorter than it is wide.
func TestShortEdge(t *testing.T) {
	pieces := []nest.Piece{{Name: "bottom", Length: 284, Width: 486, Count: 4}}
	sheet := nest.Sheet{Length: 1215, Width: 486}
	rules := nest.Rules{Kerf: 3}
	l, err := nest.Lay(context.Background(), pieces, []nest.Sheet{sheet}, rules, nest.Options{Effort: 1})
	if err != nil {
		t.Fatal(err)
	}
	b, _ := nest.Cuts(l.Sheets[0], pieces, sheet, rules)
	cuts, _ := Cuts([]Sheet{{Name: "1", Count: 1, Size: sheet, Board: b, Names: func([]int) (string, string) { return "bottom", "" }}},
		Rules{Kerf: 3, MinGuided: 300, RipCapacity: 800, CrosscutCapacity: 600, SledCapacity: 1300, MaxStop: 900})
	for i, c := range cuts {
		if c.Kind != SledCut || c.Setting != 284 || c.SettingChanged != (i == 0) {
			t.Errorf("cut %d: %+v", i+1, c)
		}
	}
	if len(cuts) != 4 {
		t.Errorf("%d cuts", len(cuts))
	}
}

// TestSisters: a strip that is too long for the sled is cut in two along a guide, once, and its lengths are then cut at
// one stop, all of them.
func TestSisters(t *testing.T) {
	pieces := []nest.Piece{{Name: "side", Length: 500, Width: 100, Count: 4}}
	sheet := nest.Sheet{Length: 2400, Width: 100}
	rules := nest.Rules{Kerf: 3}
	l, err := nest.Lay(context.Background(), pieces, []nest.Sheet{sheet}, rules, nest.Options{Effort: 1})
	if err != nil {
		t.Fatal(err)
	}
	b, _ := nest.Cuts(l.Sheets[0], pieces, sheet, rules)
	r := usual
	r.Allowance = 2
	cuts, _ := Cuts([]Sheet{{Name: "1", Count: 1, Size: sheet, Board: b,
		Names: func([]int) (string, string) { return "side", "" }}}, r)
	parts := 0
	for i, c := range cuts {
		if guided := c.Kind == HandHeld; guided != (i == 0) || !guided && c.Setting != 500 {
			t.Errorf("cut %d: %+v", i+1, c)
		}
		if c.Yields.Piece {
			parts++
		}
	}
	if parts != 4 || Moves(cuts) != 1 {
		t.Errorf("%d parts are cut off, at %d settings", parts, Moves(cuts))
	}
}

// TestMarks: strips have letters and say what they are for; pieces are numbered by the board that they come off,
// however deep that lies.
func TestMarks(t *testing.T) {
	side := nest.CutTree{Y: 103, Length: 200, Width: 97, Piece: 2}
	strip := nest.CutTree{Length: 410, Width: 200, Piece: -1, Axis: geom.AlongX, Sections: []nest.CutTree{
		{Length: 200, Width: 200, Piece: -1, Axis: geom.AlongY,
			Sections: []nest.CutTree{{Length: 200, Width: 100, Piece: 1}, side}},
		{X: 203, Length: 200, Width: 200, Piece: 3}}}
	sheet := Sheet{Name: "7", Count: 1, Size: nest.Sheet{Length: 410, Width: 310},
		Board: nest.CutTree{Length: 410, Width: 310, Piece: -1, Axis: geom.AlongY,
			Sections: []nest.CutTree{strip, {Y: 203, Length: 410, Width: 100, Piece: 0}}},
		Names: func(placed []int) (string, string) { return fmt.Sprint(placed), fmt.Sprint("no. ", placed) }}
	cuts, laid := Cuts([]Sheet{sheet}, Rules{
		Kerf: 3, MinGuided: 50, RipCapacity: 400, CrosscutCapacity: 400, SledCapacity: 500, MaxStop: 900,
	})
	if want := []string{"7-1", "7B1", "7B2", "7A1"}; !slices.Equal(laid[0].Called, want) {
		t.Errorf("pieces are called %q, want %q", laid[0].Called, want)
	}
	_, after := Cuts([]Sheet{sheet}, Rules{
		Kerf: 3, MinGuided: 50, RipCapacity: 400, CrosscutCapacity: 400, SledCapacity: 500, MaxStop: 900, Before: laid[0].Named,
	})
	if want := []string{"7-2", "7D1", "7D2", "7C1"}; !slices.Equal(after[0].Called, want) {
		t.Errorf("pieces of the next stock are called %q, want %q", after[0].Called, want)
	}
	var got []string
	for _, c := range cuts {
		got = append(got, c.Workpiece.Name+": "+c.Yields.Short)
	}
	want := []string{"sheet 7: 7A for no. [1 2 3]",
		"strip 7A for [1 2 3]: 7B for no. [1 2]", "strip 7A for [1 2 3]: 7A1 no. [3]", // the fence stands there
		"sheet 7: 7-1 no. [0]", "strip 7B for [1 2]: 7B1 no. [1]"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
