package stroke

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// covered is every character that must have a glyph of its own.
const covered = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 .,:;-_/()'\"+×=#%&°"

// TestCovered: the table has these glyphs and no others, all different, none
// like the box that stands for a missing one.
func TestCovered(t *testing.T) {
	seen := map[string]rune{unknown.strokes: 'é'}
	for _, r := range covered {
		g, ok := glyphs[r]
		if !ok {
			t.Errorf("%q has no glyph", r)
		}
		if same, ok := seen[g.strokes]; ok {
			t.Errorf("%q looks like %q", r, same)
		}
		seen[g.strokes] = r
	}
	if n := len([]rune(covered)); n != len(glyphs) {
		t.Errorf("%d glyphs, want %d", len(glyphs), n)
	}
}

// TestInBox: at a height of the grid's units every point is a whole number
// inside its glyph's box; capitals and figures fill the box to all four sides.
func TestInBox(t *testing.T) {
	for r, g := range glyphs {
		strokes := Text(string(r), capUnits)
		if (len(strokes) == 0) != (r == ' ') {
			t.Errorf("%q has %d strokes", r, len(strokes))
		}
		low, high := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
		for _, line := range strokes {
			if len(line) < 2 {
				t.Errorf("%q has a stroke of %d points", r, len(line))
			}
			for _, p := range line {
				if p.X != math.Round(p.X) || p.Y != math.Round(p.Y) {
					t.Errorf("%q: %v is off the grid", r, p)
				}
				low = Point{min(low.X, p.X), min(low.Y, p.Y)}
				high = Point{max(high.X, p.X), max(high.Y, p.Y)}
			}
		}
		if r == ' ' {
			continue
		}
		if low.X < 0 || low.Y < 0 || high.X > float64(g.width) || high.Y > capUnits {
			t.Errorf("%q reaches from %v to %v, beyond its box", r, low, high)
		}
		letter := r >= 'A' && r <= 'Z' || r >= '0' && r <= '9'
		if letter && (low != Point{} || high != Point{float64(g.width), capUnits}) {
			t.Errorf("%q reaches from %v to %v, short of its box", r, low, high)
		}
	}
}

type segment struct{ a, b Point }

func segments(strokes [][]Point) (list []segment) {
	for _, line := range strokes {
		for i := 1; i < len(line); i++ {
			list = append(list, segment{line[i-1], line[i]})
		}
	}
	return list
}

// overlap reports whether two segments of grid points share more than a point:
// all four ends are on one line, and their spans along it share a length.
func overlap(s, o segment) bool {
	dx, dy := s.b.X-s.a.X, s.b.Y-s.a.Y
	along := func(p Point) float64 { return (p.X-s.a.X)*dx + (p.Y-s.a.Y)*dy }
	for _, p := range []Point{o.a, o.b} {
		if dx*(p.Y-s.a.Y)-dy*(p.X-s.a.X) != 0 {
			return false
		}
	}
	from, to := min(along(o.a), along(o.b)), max(along(o.a), along(o.b))
	return max(from, 0) < min(to, along(s.b))
}

// TestNothingTwice: no glyph has a segment without length, or cuts any part of
// a line twice, or has two points in a row where one would do.
func TestNothingTwice(t *testing.T) {
	check := func(g glyph) (wrong string) {
		var lines [][]Point
		for part := range strings.SplitSeq(g.strokes, "|") {
			var line []Point
			for at := range strings.FieldsSeq(part) {
				x, y := place(at)
				line = append(line, Point{float64(x), float64(y)})
			}
			for i := 2; i < len(line); i++ {
				a, b, c := line[i-2], line[i-1], line[i]
				if (b.X-a.X)*(c.Y-b.Y) == (b.Y-a.Y)*(c.X-b.X) {
					return fmt.Sprintf("%v is no corner", b)
				}
			}
			lines = append(lines, line)
		}
		list := segments(lines)
		for i, s := range list {
			if s.a == s.b {
				return fmt.Sprintf("no length at %v", s.a)
			}
			for _, o := range list[:i] {
				if overlap(s, o) {
					return fmt.Sprintf("%v and %v overlap", s, o)
				}
			}
		}
		return ""
	}
	for r, g := range glyphs {
		if wrong := check(g); wrong != "" {
			t.Errorf("%q: %s", r, wrong)
		}
	}
	for _, bad := range []string{"00 00", "00 04|02 06", "00 04|04 00", "00 22|44 11", "00 04 02", "00 02 04"} {
		if check(glyph{8, bad}) == "" {
			t.Errorf("nothing wrong is found in %q", bad)
		}
	}
}

// TestLookAlikes: what is mistaken for each other in poor light differs in width
// or in the number of strokes, and in more than a tenth of the points.
func TestLookAlikes(t *testing.T) {
	for _, pair := range []string{"0O", "1I", "5S", "8B", "2Z", "0D", "6G"} {
		a, b := glyphs[rune(pair[0])], glyphs[rune(pair[1])]
		if a.width == b.width && strings.Count(a.strokes, "|") == strings.Count(b.strokes, "|") {
			t.Errorf("%s differ in neither width nor strokes", pair)
		}
		points, same := strings.Fields(strings.ReplaceAll(a.strokes, "|", " ")), 0
		for _, p := range points {
			if slices.Contains(strings.Fields(strings.ReplaceAll(b.strokes, "|", " ")), p) {
				same++
			}
		}
		if 10*same > 9*len(points) {
			t.Errorf("%s share %d of %d points", pair, same, len(points))
		}
	}
}

// TestWidth: the closed form. At height 12, "I" is 4 long, "II" 4 + 3 + 4.
func TestWidth(t *testing.T) {
	for s, want := range map[string]float64{"": 0, "I": 4, "II": 11, " ": 5, "I I": 4 + 3 + 5 + 3 + 4, "é": 5, "x×": 8 + 3 + 6} {
		if got := Width(s, 12); got != want {
			t.Errorf("%q is %v long, want %v", s, got, want)
		}
	}
	for a := range glyphs {
		for b := range glyphs {
			got, want := Width(string(a)+string(b), 12), Width(string(a), 12)+3+Width(string(b), 12)
			if got != want {
				t.Errorf("%c%c is %v long, want %v", a, b, got, want)
			}
		}
	}
}

// TestText: two texts in one are the first, and the second moved by the first's
// width and the gap; twice the height is twice every coordinate; small letters
// are capitals; nothing reaches beyond width and height.
func TestText(t *testing.T) {
	const a, b, height = "Bench-wide 5/8\" ", "é460 × 140", 3.5
	one, two := Text(a, 2*height), Text(b, 2*height)
	shift := Width(a, 2*height) + 2*height/4
	for _, line := range two {
		for i := range line {
			line[i].X += shift
		}
	}
	both := Text(a+b, height)
	for _, line := range both {
		for i, p := range line {
			if p.X < 0 || p.Y < 0 || p.X > Width(a+b, height) || p.Y > height {
				t.Errorf("%v is outside the text", p)
			}
			line[i] = Point{2 * p.X, 2 * p.Y}
		}
	}
	if want := append(one, two...); !near(both, want) {
		t.Errorf("got %v, want %v", both, want)
	}
	if !reflect.DeepEqual(Text("side x front", 5), Text("SIDE X FRONT", 5)) {
		t.Error("small letters are not capitals")
	}
}

// roundoff is how far two coordinates may differ that are computed in different
// orders: a few last places of a float64 at 100.
const roundoff = 1e-13

func near(a, b [][]Point) bool {
	return slices.EqualFunc(a, b, func(a, b []Point) bool {
		return slices.EqualFunc(a, b, func(p, q Point) bool {
			return math.Abs(p.X-q.X) <= roundoff && math.Abs(p.Y-q.Y) <= roundoff
		})
	})
}

// TestCapHeight: a capital's top is the height itself, to the last bit.
func TestCapHeight(t *testing.T) {
	for _, height := range []float64{0.1, 1. / 3, 2.54, 3.3, 7} {
		top := 0.0
		for _, line := range Text("H", height) {
			for _, p := range line {
				top = max(top, p.Y)
			}
		}
		if top != height {
			t.Errorf("height %v became %v", height, top)
		}
	}
}

// TestMissing: a character without a glyph is a box, whatever it is; nothing is dropped.
func TestMissing(t *testing.T) {
	for _, s := range []string{"é", "ß", "\n", "\x00", "\xff", "漢", "?"} {
		if got := Text(s, 12); !reflect.DeepEqual(got, [][]Point{{{0, 0}, {5, 0}, {5, 8}, {0, 8}, {0, 0}}}) {
			t.Errorf("%q is drawn as %v", s, got)
		}
	}
}

// TestNoHeight: heights that are none.
func TestNoHeight(t *testing.T) {
	for _, height := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got := Text("A", height); got != nil || Width("A", height) != 0 {
			t.Errorf("height %v gives %v, width %v", height, got, Width("A", height))
		}
	}
}

// TestOpen: what is round is two strokes that meet at both ends, and nothing else changes.
func TestOpen(t *testing.T) {
	text := "0123456789"
	lines, wide := Open(text)
	if want := Width(text, 1); wide != want {
		t.Errorf("%v wide, want %v", wide, want)
	}
	round, length := 0, 0.0
	along := func(lines [][]Point) (sum float64) {
		for _, l := range lines {
			for i := range len(l) - 1 {
				sum += math.Hypot(l[i+1].X-l[i].X, l[i+1].Y-l[i].Y)
			}
		}
		return sum
	}
	for _, l := range Text(text, 1) {
		if l[0] == l[len(l)-1] {
			round++
		}
	}
	length = along(Text(text, 1))
	if round == 0 || len(lines) != len(Text(text, 1))+round || math.Abs(along(lines)-length) > 1e-9 {
		t.Errorf("%d lines, %d are round, %v long, want %v", len(lines), round, along(lines), length)
	}
	for _, l := range lines {
		if len(l) < 2 || l[0] == l[len(l)-1] {
			t.Errorf("%v is not open", l)
		}
	}
}
