package nest

import (
	"fmt"
	"slices"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// TestApart: the boards of a sheet tile it, a kerf or less apart, every piece is one of
// them and no offcut touches a piece.
func TestApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces, sheets, r := fewPieces(t)
		r.Method = Guillotine
		l := lay(t, pieces, sheets, r, 2)
		for n, s := range l.Sheets {
			sheet := sheets[s.Sheet]
			b, ok := Cuts(s, pieces, sheet, r)
			if !ok {
				t.Fatalf("sheet %d does not come apart", n)
			}
			seen := make(map[int]int)
			stages := tiles(t, b, s, pieces, r.Kerf, true, seen)
			if len(seen) != len(s.Placements) {
				t.Fatalf("%d boards are pieces of %d", len(seen), len(s.Placements))
			}
			asWide := slices.ContainsFunc(s.Placements, func(p Placement) bool { // as the sheet
				x, y := p.Size(pieces)
				left := map[First]int64{FirstAlongX: sheet.Width - 1 - y, FirstAlongY: sheet.Length - 2 - x}
				return left[r.First] <= r.Kerf
			})
			axis := map[First]geom.Axis{FirstAny: b.Axis, FirstAlongX: geom.AlongY, FirstAlongY: geom.AlongX}[r.First]
			if b.Axis != axis && !asWide && len(s.Placements) > 1 {
				t.Fatalf("first cuts are along %d, asked is %d: %+v", b.Axis, r.First, s)
			}
			if r.Stages > 0 && stages > r.Stages+1 { // the last one trims single pieces
				t.Fatalf("%d stages of %d", stages, r.Stages)
			}
			for _, o := range Offcuts(s, pieces, sheet, r, [2]int64{5, 2}) {
				if max(o.Length, o.Width) < 5 || min(o.Length, o.Width) < 2 || o.X < sheet.Trim.Left || o.X+o.Length > sheet.Length-sheet.Trim.Right {
					t.Fatalf("offcut %+v", o)
				}
				apartFrom(t, o, s, pieces, r.Kerf)
			}
		}
	})
}

// fewPieces draws some pieces and a sheet for them.
func fewPieces(t *rapid.T) ([]Piece, []Sheet, Rules) {
	var pieces []Piece
	for i := range rapid.IntRange(1, 8).Draw(t, "kinds") {
		pieces = append(pieces, Piece{Name: fmt.Sprint("p", i), Length: rapid.Int64Range(1, 60).Draw(t, "length"), Width: rapid.Int64Range(1, 60).Draw(t, "width"),
			Count: rapid.IntRange(1, 5).Draw(t, "count"), MayRotate: rapid.Bool().Draw(t, "turn")})
	}
	sheets := []Sheet{{Name: "s", Length: rapid.Int64Range(60, 150).Draw(t, "long"), Width: rapid.Int64Range(60, 150).Draw(t, "wide"), Trim: Trim{2, 0, 1, 0}}}
	return pieces, sheets, Rules{Method: rapid.SampledFrom([]Method{Guillotine, Free}).Draw(t, "way"),
		Kerf:   rapid.Int64Range(0, 4).Draw(t, "kerf"),
		Stages: rapid.SampledFrom([]int{0, 2, 3}).Draw(t, "stages"),
		First:  rapid.SampledFrom([]First{FirstAny, FirstAlongX, FirstAlongY}).Draw(t, "first")}
}

// tiles checks a board's sections and gives its stages.
func tiles(t *rapid.T, b CutTree, l LaidSheet, pieces []Piece, kerf int64, root bool, seen map[int]int) int {
	if b.Piece >= 0 {
		p := l.Placements[b.Piece]
		x, y := p.Size(pieces)
		if (CutTree{X: p.X, Y: p.Y, Length: x, Width: y, Piece: b.Piece}).From(geom.AlongX) != b.X || b.Y != p.Y || b.Length != x || b.Width != y {
			t.Fatalf("board %+v is no %+v", b, p)
		}
		seen[b.Piece]++
	}
	if len(b.Sections) == 0 {
		return 0
	}
	wideFirst := root || b.Size(b.Axis) <= b.Size(1-b.Axis) // along the fence, else the short ones on a sled
	at, stages, last := b.From(b.Axis), 0, int64(0)
	for i, s := range b.Sections {
		gap := s.From(b.Axis) - at
		if i > 0 && gap != kerf || i == 0 && gap != 0 || s.Size(1-b.Axis) != b.Size(1-b.Axis) || s.From(1-b.Axis) != b.From(1-b.Axis) {
			t.Fatalf("section %d of %+v", i, b)
		}
		if s.Waste() && i < len(b.Sections)-1 {
			t.Fatalf("waste between the sections of %+v", b)
		}
		if !s.Waste() {
			if i > 0 && s.Size(b.Axis) != last && s.Size(b.Axis) > last == wideFirst {
				t.Fatalf("sections out of order in %+v", b)
			}
			last = s.Size(b.Axis)
		}
		at = s.From(b.Axis) + s.Size(b.Axis)
		stages = max(stages, tiles(t, s, l, pieces, kerf, false, seen))
	}
	if rest := b.From(b.Axis) + b.Size(b.Axis) - at; rest < 0 || rest > kerf {
		t.Fatalf("%d are left of %+v", rest, b)
	}
	return stages + 1
}

func apartFrom(t *rapid.T, o Offcut, l LaidSheet, pieces []Piece, kerf int64) {
	boxes := []box{{o.X, o.Y, o.X + o.Length, o.Y + o.Width}}
	for _, p := range l.Placements {
		x, y := p.Size(pieces)
		if _, _, near := tooNear(append(boxes, box{p.X, p.Y, p.X + x, p.Y + y}), kerf); near {
			t.Fatalf("offcut %+v touches %+v", o, p)
		}
	}
}

// TestFreeOffcuts: what is said to be left of a free layout is.
func TestFreeOffcuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces, sheets, r := fewPieces(t)
		r.Method, r.Stages = Free, 0
		l := lay(t, pieces, sheets, r, 2)
		for _, s := range l.Sheets {
			for _, o := range Offcuts(s, pieces, sheets[s.Sheet], r, [2]int64{5, 2}) {
				apartFrom(t, o, s, pieces, r.Kerf)
			}
		}
	})
}

// TestGathered: of a sheet that is filled in part, one end is left whole, as wide as it
// can be where the pieces fill the other one without a gap.
func TestGathered(t *testing.T) {
	for _, way := range []Method{Guillotine, Free} {
		pieces := []Piece{{Name: "a", Length: 300, Width: 400, Count: 5}, {Name: "b", Length: 300, Width: 200, Count: 2}}
		sheets := []Sheet{{Name: "s", Length: 2000, Width: 1200}}
		r := Rules{Method: way}
		l := lay(t, pieces, sheets, r, 5)
		if len(l.Sheets) != 1 {
			t.Fatalf("%s: %d sheets", way, len(l.Sheets))
		}
		o := Offcuts(l.Sheets[0], pieces, sheets[0], r, [2]int64{1, 1})
		if len(o) == 0 || o[0].Length != 1400 || o[0].Width != 1200 {
			t.Errorf("%s: offcuts %v", way, o)
		}
	}
}
