package drawing

import (
	"bytes"
	"encoding/xml"
	"image"
	"image/draw"
	"image/png"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %g, should be %g", what, got, want)
	}
}

// TestSpread: the closed form of two places, and what holds for any.
func TestSpread(t *testing.T) {
	// 10 and 10.5, 2 apart: 9.25 and 11.25 move both by 0.75.
	got := Spread([]float64{10, 10.5, 30}, 2, 0, 100)
	for i, want := range []float64{9.25, 11.25, 30} {
		near(t, "a place", got[i], want, 1e-12)
	}
	// No room at all: evenly from end to end.
	got = Spread([]float64{1, 1, 1}, 10, 0, 4)
	for i, want := range []float64{0, 2, 4} {
		near(t, "a place without room", got[i], want, 1e-12)
	}
	rapid.Check(t, func(t *rapid.T) {
		places := rapid.SliceOfN(rapid.Float64Range(0, 100), 1, 20).Draw(t, "places")
		slices.Sort(places)
		step := rapid.Float64Range(0.1, 5).Draw(t, "step")
		got := Spread(places, step, -5, 105)
		cost := func(list []float64) (sum float64) {
			for i, v := range list {
				sum += (v - places[i]) * (v - places[i])
			}
			return sum
		}
		for i, v := range got {
			if v < -5-1e-9 || v > 105+1e-9 || i > 0 && v-got[i-1] < step-1e-9 {
				t.Fatalf("%v from %v, %g apart", got, places, step)
			}
			// Moving one of them alone, where it may, makes nothing better.
			for _, by := range []float64{-1e-3, 1e-3} {
				other := slices.Clone(got)
				other[i] += by
				if (i == 0 || other[i]-other[i-1] >= step) && (i == len(got)-1 || other[i+1]-other[i] >= step) && other[i] >= -5 && other[i] <= 105 && cost(other) < cost(got)-1e-9 {
					t.Fatalf("%v from %v: place %d is better moved by %g", got, places, i, by)
				}
			}
		}
	})
}

// TestOrdinates: numbers stand beside each other, whatever their places.
func TestOrdinates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var d Drawing
		var marks []Mark
		side := Side(rapid.IntRange(0, 3).Draw(t, "side"))
		end := geom.Point{X: 100, Y: 0}
		if side.flat() {
			end = geom.Point{X: 0, Y: 100}
		}
		e := Edge{Side: side, To: end, Scale: 0.2, Before: 6, After: 6}
		places := rapid.SliceOfNDistinct(rapid.IntRange(0, 5000), 1, e.Room(2.5), rapid.ID[int]).Draw(t, "marks")
		for _, x := range slices.Sorted(slices.Values(places)) {
			marks = append(marks, Mark{float64(x) / 10, strconv.FormatFloat(float64(x)/10, 'f', 1, 64)})
		}
		d.Ordinates(e, marks, 2.5)
		var boxes []geom.Rect
		for _, words := range d.Texts {
			boxes = append(boxes, words.Box())
		}
		for i, a := range boxes {
			for _, b := range boxes[:i] {
				if a.Min.X+0.01 < b.Max.X && b.Min.X+0.01 < a.Max.X && a.Min.Y+0.01 < b.Max.Y && b.Min.Y+0.01 < a.Max.Y {
					t.Fatalf("%v and %v", a, b)
				}
			}
			far := max(math.Abs(a.Min.X), math.Abs(a.Max.X))
			if !side.flat() {
				far = max(math.Abs(a.Min.Y), math.Abs(a.Max.Y))
			}
			if far > Reach(marks, 2.5)+0.01 {
				t.Fatalf("%v is out of reach, %g", a, Reach(marks, 2.5))
			}
		}
	})
}

// TestCurves: cubics keep to their arc: points of them are a radius from its center.
func TestCurves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bulge := rapid.Float64Range(0.05, 1).Draw(t, "bulge")
		if rapid.Bool().Draw(t, "clockwise") {
			bulge = -bulge
		}
		a, b := geom.Point{X: 10, Y: 20}, geom.Point{X: 110, Y: 20}
		// The sagitta is bulge times half the chord: r = (50^2 + s^2) / 2s, to the right of
		// the chord for an arc that runs counter-clockwise.
		s := 50 * bulge
		r := (2500 + s*s) / (2 * s)
		center := geom.Point{X: 60, Y: 20 - s + r}
		from := a
		for _, c := range curves(a, b, bulge) {
			for _, u := range []float64{0, 0.2, 0.5, 0.8, 1} {
				if off := math.Abs(c.at(from, u).To(center) - math.Abs(r)); off > 2e-6*math.Abs(r)+1e-9 {
					t.Fatalf("%g off a radius of %g", off, r)
				}
			}
			from = c.to
		}
		if from != b {
			t.Fatalf("ends at %v", from)
		}
	})
}

func sample() Drawing {
	d := Drawing{Width: 120, Height: 110}
	d.Loops(Pen{Width: 0.2, Ink: 1}, 0, geom.Rectangle(10, 5, 110, 105))
	d.Loops(Pen{}, 1, geom.Circle(geom.Point{X: 60, Y: 55}, 20), geom.Circle(geom.Point{X: 60, Y: 55}, 10))
	d.Line(Hidden, geom.Point{X: 10, Y: 55}, geom.Point{X: 35, Y: 55})
	d.Write(Text{String: "a < b & \"c\"", At: geom.Point{X: 60, Y: 95}, Size: 4, Align: Middle})
	return d
}

// TestSVG: the file is XML, in millimeters, and a square of 100 measures 100.
func TestSVG(t *testing.T) {
	var out bytes.Buffer
	if err := sample().WriteSVG(&out, "<a title>"); err != nil {
		t.Fatal(err)
	}
	text := out.String()
	dec := xml.NewDecoder(&out)
	for {
		if _, err := dec.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
	if !strings.Contains(text, `width="120mm" height="110mm" viewBox="0 0 120 110"`) {
		t.Error("not in millimeters: ", text[:120])
	}
	path := regexp.MustCompile(`d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)`).FindStringSubmatch(text)
	from, _ := strconv.ParseFloat(path[1], 64)
	to, _ := strconv.ParseFloat(path[3], 64)
	near(t, "the square's side", to-from, 100, 0)
}

// TestPNG: a ring of radii 20 and 10 covers pi (20^2 - 10^2) = 942.48 mm2, the frame's
// lines and the words beside it; inside the ring it is white.
func TestPNG(t *testing.T) {
	d := sample()
	d.Shapes, d.Texts = d.Shapes[1:2], nil
	img := render(t, d, 254) // 10 dots to the mm
	dark := 0.0
	for _, v := range img.Pix {
		dark += float64(255-v) / 255
	}
	// A chord cuts off less than two thirds of its height times its length.
	near(t, "ink in mm2", dark/100, math.Pi*300, 2.0/3*chord*2*math.Pi*30)
	if img.GrayAt(600, 550).Y != 255 || img.GrayAt(600+150, 550).Y != 0 {
		t.Error("the ring is filled where it should not be")
	}
	// Of a dashed line of 25 mm, 2 down and 1 up: 9 dashes, the last 1 mm: 17 mm, 0.25
	// wide, with half a round end at each of the 18 ends beyond it.
	d = sample()
	d.Shapes, d.Texts = d.Shapes[2:3], nil
	dark = 0
	for _, v := range render(t, d, 1270).Pix {
		dark += float64(255-v) / 255
	}
	near(t, "dashes in mm2", dark/2500, 17*0.25+18*math.Pi/8*0.25*0.25, 0.15)
}

func render(t *testing.T, d Drawing, dots float64) *image.Gray {
	t.Helper()
	var out bytes.Buffer
	if err := d.WritePNG(&out, dots); err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(&out)
	if err != nil {
		t.Fatal(err)
	}
	gray := image.NewGray(img.Bounds())
	draw.Draw(gray, gray.Bounds(), img, image.Point{}, draw.Src)
	return gray
}

// TestPNGRefused: a picture of no or of too many dots is no picture.
func TestPNGRefused(t *testing.T) {
	for _, d := range []Drawing{{}, {Width: 1e6, Height: 1e6}, {Width: math.NaN(), Height: 1}} {
		if err := d.WritePNG(io.Discard, 300); err == nil {
			t.Errorf("%v was drawn", d)
		}
	}
}

// TestPDF: the same pages give the same bytes.
func TestPDF(t *testing.T) {
	write := func() string {
		var out bytes.Buffer
		pages := []Page{{Drawing: sample(), Bookmarks: []Bookmark{{"one", 0}, {"within", 1}}}, {Drawing: sample()}}
		if err := WritePDF(&out, Info{Title: "Title – with a dash"}, slices.Values(pages)); err != nil {
			t.Fatal(err)
		}
		return out.String()
	}
	first := write()
	for range 5 {
		if write() != first {
			t.Fatal("other bytes")
		}
	}
}

// TestClip: what lies in no window is lost, what lies across is cut: the lengths of
// lines in the windows of a grid add up.
func TestClip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var d Drawing
		coordinate := rapid.Float64Range(0, 100)
		total := 0.0
		for range 5 {
			a, b := geom.Point{X: coordinate.Draw(t, "x"), Y: coordinate.Draw(t, "y")}, geom.Point{X: coordinate.Draw(t, "x"), Y: coordinate.Draw(t, "y")}
			d.Line(Thin, a, b)
			total += a.To(b)
		}
		sum := 0.0
		for x := 0.0; x < 100; x += 25 {
			for y := 0.0; y < 100; y += 50 {
				for _, s := range d.Clip(geom.Rect{Min: geom.Point{X: x, Y: y}, Max: geom.Point{X: x + 25, Y: y + 50}}).Shapes {
					for _, p := range s.Paths {
						for i := range len(p) - 1 {
							sum += p[i].To(p[i+1].Point)
						}
						for _, v := range p {
							if v.X < -1e-9 || v.X > 25+1e-9 || v.Y < -1e-9 || v.Y > 50+1e-9 {
								t.Fatalf("%v is outside", v)
							}
						}
					}
				}
			}
		}
		if math.Abs(sum-total) > 1e-6 {
			t.Fatalf("%g of %g", sum, total)
		}
	})
}

// TestWrap: lines are no longer than asked, and give the words back as they were.
func TestWrap(t *testing.T) {
	for _, width := range []float64{0, -5, 0.1} { // room for nothing
		if got := Wrap(Regular, 3, width, "ab c"); len(got) != 3 {
			t.Errorf("%q in %g mm", got, width)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOf(rapid.StringMatching(`[a-zA-Z0-9.,-]{1,20}`)).Draw(t, "words"), " ")
		width := rapid.Float64Range(8, 80).Draw(t, "width")
		lines := Wrap(Regular, 3, width, text)
		for _, l := range lines {
			if Width(Regular, 3, l) > width {
				t.Fatalf("%q is longer than %g", l, width)
			}
		}
		if got := strings.ReplaceAll(strings.Join(lines, " "), Broken+" ", ""); got != text {
			t.Fatalf("%q of %q", got, text)
		}
		if short := Fit(Regular, 3, width, text); Width(Regular, 3, short) > width {
			t.Fatalf("%q is longer than %g", short, width)
		}
	})
}

// TestSVGGroups: shapes of a group are in its element, and one in groups has no ground.
func TestSVGGroups(t *testing.T) {
	d := sample()
	for i, g := range []string{"SCORE", "CUT & <OUT>", "CUT & <OUT>"} {
		d.Shapes[i].Group = g
	}
	var out bytes.Buffer
	if err := d.WriteSVG(&out, "groups"); err != nil {
		t.Fatal(err)
	}
	var read struct {
		Ground []struct{} `xml:"rect"`
		Loose  []struct{} `xml:"path"`
		Groups []struct {
			ID    string     `xml:"id,attr"`
			Paths []struct{} `xml:"path"`
		} `xml:"g"`
	}
	if err := xml.Unmarshal(out.Bytes(), &read); err != nil {
		t.Fatal(err)
	}
	if g := read.Groups; len(read.Ground)+len(read.Loose) > 0 || len(g) != 2 || g[0].ID != "SCORE" || len(g[0].Paths) != 1 || g[1].ID != "CUT & <OUT>" || len(g[1].Paths) != 2 {
		t.Errorf("%+v", read)
	}
}

// TestLettersThatAreMissing: Latin, Greek and Cyrillic letters are there, others are named.
func TestLettersThatAreMissing(t *testing.T) {
	for text, want := range map[string]rune{"Schublade groß 12 ½": 0, "Ящик, συρτάρι": 0, "box 引き": '引', "درج": 'د', "": 0} {
		if got, missing := Missing(text); got != want || missing != (want != 0) {
			t.Errorf("%q: %q, %v", text, got, missing)
		}
	}
}

// TestFitMiddle: what is cut short is no longer than asked, and keeps both its ends.
func TestFitMiddle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[a-zW]{1,40}-front`).Draw(t, "name")
		width := rapid.Float64Range(12, 60).Draw(t, "width")
		got := FitMiddle(Bold, 3, width, s)
		switch {
		case Width(Bold, 3, got) > width:
			t.Fatalf("%q is wider than %g", got, width)
		case got != s && (got[0] != s[0] || !strings.HasSuffix(got, "t")):
			t.Fatalf("%q of %q", got, s)
		}
	})
}
