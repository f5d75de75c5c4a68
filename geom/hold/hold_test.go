package hold

import (
	"context"
	"slices"
	"testing"

	"drawerwright/geom/nest"

	"pgregory.net/rapid"
)

const mm = 1_000_000

// laid is random parts as they are nested on sheets by random gaps and bits.
func laid(t *rapid.T) (sheets []Sheet) {
	bit := rapid.Int64Range(3, 12).Draw(t, "bit") * mm
	slot := bit + mm/20
	gap := bit + 3*mm + rapid.SampledFrom([]int64{0, 0, 1, 2, 5, 9, 30}).Draw(t, "gap")*mm
	trim := slot + 3*mm
	size := nest.Sheet{Name: "s", Length: rapid.Int64Range(600, 1525).Draw(t, "length") * mm, Width: rapid.Int64Range(400, 900).Draw(t, "width") * mm,
		Trim: nest.Trim{Left: trim, Right: trim, Bottom: trim, Top: trim}}
	var pieces []nest.Piece
	for range rapid.IntRange(1, 6).Draw(t, "sizes") {
		pieces = append(pieces, nest.Piece{Name: "p", Length: rapid.Int64Range(120, 560).Draw(t, "long") * mm, Width: rapid.Int64Range(70, 300).Draw(t, "wide") * mm,
			Count: rapid.IntRange(1, 6).Draw(t, "count"), MayRotate: rapid.Bool().Draw(t, "turn")})
	}
	way := rapid.SampledFrom([]nest.Method{nest.Free, nest.Guillotine}).Draw(t, "way")
	l, err := nest.Lay(context.Background(), pieces, []nest.Sheet{size}, nest.Rules{Method: way, Kerf: gap}, nest.Options{Effort: 1})
	if err != nil {
		t.Fatal(err)
	}
	mating := make([]int, len(pieces)) // which of its sides bear on others: none, the ends or the long ones
	for i := range mating {
		mating[i] = rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "mating")
	}
	for _, one := range l.Sheets {
		s := Sheet{Size: Box{0, 0, size.Length, size.Width}, Tab: 6 * mm, Spacing: rapid.Int64Range(100, 250).Draw(t, "spacing") * mm, Web: 3*mm - 20}
		for _, p := range one.Placements {
			x, y := p.Size(pieces)
			q := Part{Box: Box{p.X, p.Y, p.X + x, p.Y + y}, Kind: Tabs, Slot: slot}
			for side := range 4 {
				along := (side + map[bool]int{true: 1}[p.Rotated]) % 2 // 0 along the part
				if m := mating[p.Piece]; m == 1 && along == 1 || m == 2 && along == 0 {
					continue
				}
				from, to := q.Box.X0, q.Box.X1
				if side == Right || side == Left {
					from, to = q.Box.Y0, q.Box.Y1
				}
				q.Free[side] = []Stretch{{Min: from + 2*slot, Max: to - 2*slot}}
			}
			s.Parts = append(s.Parts, q)
		}
		sheets = append(sheets, s)
	}
	return sheets
}

func outlines(p Plan) (list [][]Point) {
	for _, s := range p.Slots {
		list = append(list, s.Outline)
	}
	return list
}

// TestAnyLayoutIsHeld: however parts lie, the slots of a plan leave all that the checker
// asks for; parts that are short are named.
func TestAnyLayoutIsHeld(t *testing.T) {
	held, short := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		for _, s := range laid(t) {
			p := PlaceTabs(s)
			if len(p.Unheld) > 0 {
				short++
				if len(p.Slots) > 0 {
					t.Fatal("slots of a sheet that is not held")
				}
				continue
			}
			held++
			if err := Check(s, outlines(p)); err != nil {
				t.Fatalf("%v\n%+v\n%+v", err, s, p)
			}
			for i := range s.Parts {
				if p.Count[i] < s.MinTabs(i) {
					t.Fatalf("part %d has %d bridges of %d", i, p.Count[i], s.MinTabs(i))
				}
			}
		}
	})
	t.Logf("%d sheets held, %d not", held, short)
	if held < 4*short {
		t.Errorf("of %d sheets %d are not held", held+short, short)
	}
}

// two parts of 200 x 100 beside each other, with bit, gap and rim as given.
func two(bit, gap int64) Sheet {
	slot := bit*mm + mm/20
	part := func(x0 int64) Part {
		p := Part{Box: Box{x0, 20 * mm, x0 + 200*mm, 120 * mm}, Kind: Tabs, Slot: slot}
		p.Free[Right] = []Stretch{{Min: p.Box.Y0 + 2*slot, Max: p.Box.Y1 - 2*slot}}
		p.Free[Left] = p.Free[Right]
		p.Free[Top] = []Stretch{{Min: x0 + 2*slot, Max: x0 + 200*mm - 2*slot}}
		return p
	}
	return Sheet{Size: Box{0, 0, 440*mm + gap*mm, 140 * mm}, Parts: []Part{part(20 * mm), part(220*mm + gap*mm)}, Tab: 6 * mm, Spacing: 100 * mm, Web: 3*mm - 20}
}

// TestBridges: two neighbors share the bridge between them where their bands meet, and
// each has its own where waste is left between.
func TestBridges(t *testing.T) {
	for _, c := range []struct{ gap, shared, bridges int64 }{
		{9, 1, 7},  // 2 on each top edge, 1 at each outer end, 1 between
		{15, 1, 7}, // bands of 6.05 leave 2.9: no waste that holds
		{16, 0, 8}, // 3.9: a bridge from each
	} {
		s := two(6, c.gap)
		p := PlaceTabs(s)
		shared := int64(0)
		for _, b := range p.Bridges {
			if b.To >= 0 {
				shared++
			}
		}
		if err := Check(s, outlines(p)); err != nil || shared != c.shared || int64(len(p.Bridges)) != c.bridges || len(p.Unheld) > 0 {
			t.Errorf("gap %d: %d bridges, %d shared, %v, %v", c.gap, len(p.Bridges), shared, p.Unheld, err)
		}
		// What is cut: the sheet less the parts, the waste and the bridges. For a gap of 9 the
		// bands about both, 12.1 higher than these and as much longer, less 7 bridges.
		if c.gap == 9 {
			area2 := int64(0)
			for _, l := range outlines(p) {
				area2 += area(l)
			}
			const w int64 = 6*mm + mm/20
			want := (409*mm+2*w)*(100*mm+2*w) - 2*200*mm*100*mm - 6*6*mm*w - 9*mm*6*mm
			if area2 != 2*want {
				t.Errorf("slots cover %d, want %d", area2/2, want)
			}
		}
	}
}

// TestShort: parts that cannot have their bridges are named.
func TestShort(t *testing.T) {
	s := two(6, 9)
	s.Parts[0].Free[Top], s.Parts[1].Free[Top] = nil, nil
	for i := range s.Parts { // each has one tab left, where they face each other
		s.Parts[i].Free[[]int{Left, Right}[i]] = nil
	}
	if p := PlaceTabs(s); len(p.Unheld) != 2 || len(p.Slots) != 0 {
		t.Errorf("short %v, %d slots", p.Unheld, len(p.Slots))
	}
	s = two(6, 9)
	s.Spacing = 8 * mm
	if p := PlaceTabs(s); len(p.Unheld) != 2 {
		t.Errorf("short %v", p.Unheld)
	}
}

// TestCheckFindsFaults: the checker finds what would let a part come loose.
func TestCheckFindsFaults(t *testing.T) {
	s := two(6, 9)
	good := outlines(PlaceTabs(s))
	if err := Check(s, good); err != nil {
		t.Fatal(err)
	}
	rectangle := func(x0, y0, x1, y1 int64) []Point { return []Point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }
	moved := func(l []Point, x, y int64) (out []Point) {
		for _, p := range l {
			out = append(out, Point{p.X + x, p.Y + y})
		}
		return out
	}
	backward := slices.Clone(good[0])
	slices.Reverse(backward)
	ring := [][]Point{{{13 * mm, 13 * mm}, {430 * mm, 13 * mm}, {430 * mm, 127 * mm}, {13 * mm, 127 * mm}, {13 * mm, 20 * mm}, {20 * mm, 20 * mm}, {20 * mm, 120 * mm}, {429 * mm, 120 * mm}, {429 * mm, 20 * mm}, {13 * mm, 20 * mm}}}
	for name, slots := range map[string][][]Point{
		"none":                 nil,
		"one is missing":       good[1:],
		"through a bridge":     append(slices.Clone(good), rectangle(100*mm, 119*mm, 120*mm, 127*mm)),
		"a narrow bridge":      {good[0], moved(good[1], 2*mm, 0)},
		"into a part":          append(slices.Clone(good), rectangle(50*mm, 50*mm, 60*mm, 60*mm)),
		"over the edge":        append(slices.Clone(good), rectangle(-1, 130*mm, 10*mm, 138*mm)),
		"backward":             append([][]Point{backward}, good[1:]...),
		"a ring":               ring,
		"slanted":              append(slices.Clone(good), []Point{{5 * mm, 5 * mm}, {9 * mm, 5 * mm}, {5 * mm, 9 * mm}}),
		"drawn twice":          append(slices.Clone(good), good[0]),
		"one touches another":  append(slices.Clone(good), rectangle(good[0][0].X-mm, good[0][0].Y-mm, good[0][0].X, good[0][0].Y)),
		"a part is cut across": append(slices.Clone(good), rectangle(15*mm, 60*mm, 425*mm, 66*mm)),
	} {
		if Check(s, slots) == nil {
			t.Errorf("%s: nothing is found", name)
		}
	}
	s.Parts[1].Kind = OnionSkin
	if Check(s, good) == nil {
		t.Error("slots in a part's skin: nothing is found")
	}
}

// TestLeftHangsTogether: flood fill over a raster, which knows nothing of slots without
// holes, finds every part of any layout from the sheet's corner.
func TestLeftHangsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, s := range laid(t) {
			p := PlaceTabs(s)
			if len(p.Unheld) > 0 {
				continue
			}
			const step = mm
			w, h := int((s.Size.X1)/step), int((s.Size.Y1)/step)
			seen := make([]bool, w*h)
			for _, l := range outlines(p) { // cut, as if seen
				for y := range h {
					at := int64(y)*step + step/2 + 7
					var xs []int64
					for i, a := range l {
						if b := l[(i+1)%len(l)]; a.X == b.X && (a.Y > at) != (b.Y > at) {
							xs = append(xs, a.X)
						}
					}
					slices.Sort(xs)
					for i := 0; i+1 < len(xs); i += 2 {
						for x := int((xs[i] + step/2) / step); int64(x)*step+step/2 < xs[i+1]; x++ {
							seen[y*w+x] = true
						}
					}
				}
			}
			seen[0] = true
			stack := []int{0}
			for len(stack) > 0 {
				c := stack[len(stack)-1]
				stack = stack[:len(stack)-1]
				for _, d := range []int{c - w, c + w, c - 1, c + 1} {
					if d >= 0 && d < w*h && (d/w == c/w || d%w == c%w) && !seen[d] {
						seen[d] = true
						stack = append(stack, d)
					}
				}
			}
			for c, s := range seen {
				if !s {
					t.Fatalf("at %d, %d mm the sheet is loose", c%w, c/w)
				}
			}
		}
	})
}
