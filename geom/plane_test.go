package geom

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func anyPoint(t *rapid.T, name string) Point {
	n := func(axis string) float64 { return rapid.Float64Range(-500, 500).Draw(t, name+axis) }
	return Point{n(" x"), n(" y")}
}

func close2(t *rapid.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Fatalf("%s is %.12g, want %.12g", what, got, want)
	}
}

// TestPoints: turning keeps lengths, angles add up, and the products are those of
// lengths and angles.
func TestPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := anyPoint(t, "p"), anyPoint(t, "q")
		if p.Norm() < 1 || q.Norm() < 1 {
			return
		}
		a := rapid.Float64Range(-3, 3).Draw(t, "angle")
		close2(t, "length of a turned vector", p.Rotate(a).Norm(), p.Norm(), 1e-9)
		close2(t, "turn", p.Turn(p.Rotate(a)), a, 1e-9)
		close2(t, "angle", Point{X: 1}.Rotate(a).Angle(), a, 1e-9)
		close2(t, "quarter to the left", p.Turn(p.Left()), math.Pi/2, 1e-9)
		close2(t, "quarter to the right", p.Turn(p.Right()), -math.Pi/2, 1e-9)
		close2(t, "dot", p.Dot(q), p.Norm()*q.Norm()*math.Cos(p.Turn(q)), 1e-6)
		close2(t, "cross", p.Cross(q), p.Norm()*q.Norm()*math.Sin(p.Turn(q)), 1e-6)
		close2(t, "unit", p.Unit().Scale(p.Norm()).To(p), 0, 1e-9)
		close2(t, "way there and back", p.Add(q).Sub(q).To(p), 0, 1e-9)
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		at := p.Lerp(q, share)
		close2(t, "way to a place between", p.To(at), share*p.To(q), 1e-9)
		close2(t, "way on", at.To(q), (1-share)*p.To(q), 1e-9)
		close2(t, "along", at.To(p.Along(q.Sub(p), share)), 0, 1e-9)
		close2(t, "middle", p.Middle(q).To(p.Lerp(q, 0.5)), 0, 1e-9)
	})
}

// TestLines: where lines meet lies on both, a foot is square to its line, and nothing
// between two places is nearer than the nearest.
func TestLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, p, e := anyPoint(t, "a"), anyPoint(t, "b"), anyPoint(t, "p"), anyPoint(t, "e")
		d := b.Sub(a)
		if d.Norm() < 1 || e.Norm() < 1 {
			return
		}
		if s, u, ok := Meeting(a, d, p, e); ok && math.Abs(d.Unit().Cross(e.Unit())) > 1e-3 {
			close2(t, "lines meet apart", a.Along(d, s).To(p.Along(e, u)), 0, 1e-6)
		}
		if _, _, ok := Meeting(a, d, p, d); ok {
			t.Fatal("parallel lines meet")
		}
		foot := a.Lerp(b, Foot(p, a, b))
		close2(t, "foot", p.Sub(foot).Dot(d.Unit()), 0, 1e-6)
		along, left := Beside(p, a, b)
		close2(t, "along", along, Foot(p, a, b)*d.Norm(), 1e-6)
		close2(t, "place beside", a.Along(d.Unit(), along).Along(d.Unit().Left(), left).To(p), 0, 1e-6)
		close2(t, "the nearest place lies between", a.To(Nearest(p, a, b))+Nearest(p, a, b).To(b), a.To(b), 1e-9)
		near := p.To(Nearest(p, a, b))
		for k := range 21 {
			if other := p.To(a.Lerp(b, float64(k)/20)); other < near-1e-9 {
				t.Fatalf("%g away between the ends, the nearest is %g", other, near)
			}
		}
		if Nearest(p, a, a) != a {
			t.Fatal("the nearest place of one place is another")
		}
	})
}

// TestArcs: all of an arc is as far from its center, runs as it sweeps, lies in its box
// and reaches each side of it; its area is that of many chords.
func TestArcs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sweep := rapid.Float64Range(0.05, 5.5).Draw(t, "sweep")
		if rapid.Bool().Draw(t, "clockwise") {
			sweep = -sweep
		}
		s := Arc{anyPoint(t, "a"), anyPoint(t, "b"), BulgeOf(sweep)}
		if s.A.To(s.B) < 1 {
			return
		}
		c, r := s.Center(), s.Radius()
		close2(t, "sweep", s.Sweep(), sweep, 1e-9)
		close2(t, "sweep of the half", 4*math.Atan(s.Part(0.5)), sweep/2, 1e-9)
		const n = 4000
		box, ring, length := s.Bounds(), Ring{}, 0.0
		reached := Around(s.A)
		for i := range n + 1 {
			p := s.At(float64(i) / n)
			close2(t, "radius", c.To(p), r, 1e-6*r)
			if !box.Grow(1e-6 * r).Contains(Around(p)) {
				t.Fatalf("%v is beyond the box %v", p, box)
			}
			reached = reached.Include(p)
			if i > 0 {
				length += p.To(ring[i-1])
				close2(t, "turn about the center", ring[i-1].Sub(c).Turn(p.Sub(c)), sweep/n, 1e-5)
			}
			ring = append(ring, p)
		}
		close2(t, "end", ring[n].To(s.B), 0, 1e-6*r)
		if !reached.Grow(1e-5 * r).Contains(box) {
			t.Fatalf("the box %v is larger than the arc, %v", box, reached)
		}
		close2(t, "length", s.Length(), length, 1e-5*r)
		close2(t, "area", s.SegmentArea(), ring.Area(), 1e-5*r*r)
		if sweep > 0 {
			close2(t, "bulge about the center", ArcAbout(c, s.A, s.B).Bulge, s.Bulge, 1e-6*(1+s.Bulge*s.Bulge))
		}
	})
}

// TestFlatArcs: an arc that is all but its chord has the chord's length and no area.
func TestFlatArcs(t *testing.T) {
	for _, bulge := range []float64{1e-12, -1e-153, 1e-310} {
		l := Loop{{Point: Point{}, Bulge: bulge}, {Point: Point{10, 0}, Bulge: 0}, {Point: Point{0, 10}, Bulge: 0}}
		within(t, "area", l.Area(), 50, 1e-9)
		within(t, "length", l.SideLength(0), 10, 1e-9)
	}
}

// TestCornerArea: of a square's corners a disc leaves a square less a circle, both as wide
// as the disc.
func TestCornerArea(t *testing.T) {
	within(t, "four corners", 4*CornerArea(3, math.Pi/2), 36-9*math.Pi, 1e-9)
	within(t, "no corner", CornerArea(3, 0), 0, 0)
}

// TestIntervals: a number is in what is made of intervals where it is in these, or not.
func TestIntervals(t *testing.T) {
	whole := func(t *rapid.T, name string) int64 { return rapid.Int64Range(-20, 20).Draw(t, name) }
	drawn := func(t *rapid.T, name string) IntervalOf[int64] {
		from := whole(t, name+" from")
		return IntervalOf[int64]{from, from + rapid.Int64Range(1, 9).Draw(t, name+" long")}
	}
	rapid.Check(t, func(t *rapid.T) {
		s, out := drawn(t, "s"), drawn(t, "out")
		list := []IntervalOf[int64]{s, {s.Max + 3, s.Max + 5}}
		rest := Subtract(list, out)
		for doubled := int64(-121); doubled < 121; doubled += 2 { // halves, which are on no end
			at := func(i IntervalOf[int64]) bool { return IntervalOf[int64]{2 * i.Min, 2 * i.Max}.Contains(doubled) }
			if want, got := at(s) && at(out), at(s.Intersect(out)); got != want {
				t.Fatalf("%v/2 in both %v and %v: %v", doubled, s, out, got)
			}
			want, got := (at(s) || at(list[1])) && !at(out), false
			for _, r := range rest {
				got = got || at(r)
			}
			if got != want {
				t.Fatalf("%v/2 in %v without %v, %v: %v", doubled, list, out, rest, got)
			}
		}
		for _, r := range rest {
			if r.Len() <= 0 {
				t.Fatalf("nothing is left in %v", r)
			}
		}
		v := whole(t, "v")
		c := s.Clamp(v)
		for w := s.Min; w <= s.Max; w++ {
			if !s.Contains(c) || max(v-w, w-v) < max(v-c, c-v) {
				t.Fatalf("of %v %d is nearer to %d than %d", s, w, v, c)
			}
		}
		if g := s.Grow(2).Shift(5); g.Len() != s.Len()+4 || g.Min != s.Min+3 {
			t.Fatalf("%v grown by 2 and moved up by 5 is %v", s, g)
		}
	})
}

// TestRects: what boxes have in common is in both, and is there where they overlap.
func TestRects(t *testing.T) {
	drawn := func(t *rapid.T, name string) Rect {
		n := func(axis string) float64 { return float64(rapid.IntRange(-8, 8).Draw(t, name+axis)) }
		at := Point{n(" x"), n(" y")}
		return Around(at, at.Add(Point{1 + math.Abs(n(" w")), 1 + math.Abs(n(" h"))}))
	}
	rapid.Check(t, func(t *rapid.T) {
		r, s := drawn(t, "r"), drawn(t, "s")
		both, about := r.Intersect(s), r.Union(s)
		if !about.Contains(r) || !about.Contains(s) {
			t.Fatalf("%v is about %v and %v", about, r, s)
		}
		if over := both.Width() > 0 && both.Height() > 0; over != r.Overlaps(s) || over && !(r.Contains(both) && s.Contains(both)) {
			t.Fatalf("%v and %v: overlap %v, in common %v", r, s, r.Overlaps(s), both)
		}
		if r.Contains(s) != (both == s) {
			t.Fatalf("%v contains %v: %v", r, s, r.Contains(s))
		}
		if apart := r.Gap(s) > 0; apart != r.Apart(s) || r.Overlaps(s) && r.Gap(s) >= 0 {
			t.Fatalf("%v and %v: apart %v, gap %g", r, s, r.Apart(s), r.Gap(s))
		}
		if g := r.Gap(s); g > 0 && (r.Grow(g/3).Grow(g/3).Overlaps(s) || !r.Grow(1.5*g).Overlaps(s)) {
			t.Fatalf("%v and %v are not %g apart", r, s, g)
		}
		by := anyPoint(t, "by")
		close2(t, "center, moved", r.Translate(by).Center().To(r.Center().Add(by)), 0, 1e-9)
		if r.TurnOver(30).TurnOver(30) != r || r.TurnOver(30) != r.Loop().TurnOver(30).Bounds() {
			t.Fatalf("%v turned over is %v", r, r.TurnOver(30))
		}
		if r.Corners().Bounds() != r || r.Loop().Area() != r.Width()*r.Height() {
			t.Fatalf("%v has the corners %v", r, r.Corners())
		}
		if a, ok := r.Loop().Reverse().AsRect(0); !ok || a != r {
			t.Fatalf("%v is drawn as %v", r, a)
		}
	})
}

// anyRing is a ring, as often as not one that crosses itself.
func anyRing(t *rapid.T) Ring {
	ring := make(Ring, rapid.IntRange(3, 9).Draw(t, "corners"))
	for i := range ring {
		ring[i] = anyPoint(t, "corner")
	}
	return ring
}

// TestRings: a ring goes round what lies between its crossings, and round what angles
// add up to odd turns about; clipping along a line parts its area, and to a box leaves
// nothing beyond.
func TestRings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, p := anyRing(t), anyPoint(t, "p")
		if r.Distance(p) < 1e-6 {
			return
		}
		turns := 0.0
		for i, a := range r {
			turns += a.Sub(p).Turn(r[(i+1)%len(r)].Sub(p))
		}
		if odd := int(math.Abs(math.Round(turns/2/math.Pi)))%2 == 1; odd != r.Contains(p) {
			t.Fatalf("the ring turns by %g about %v, and contains it: %v", turns, p, r.Contains(p))
		}
		for _, axis := range []Axis{AlongX, AlongY} {
			along, across := axis.Of(p)
			if axis.At(along, across) != p {
				t.Fatal("a point's coordinates are another's")
			}
			in, crosses := false, r.Crossings(nil, axis, across)
			for _, c := range crosses {
				if c < along {
					in = !in
				}
			}
			if len(crosses)%2 != 0 || in != r.Contains(p) {
				t.Fatalf("crossings %v, %g is in: %v", crosses, along, in)
			}
		}
		d := anyPoint(t, "across")
		if d == (Point{}) {
			d.X = 1 // no direction has both sides everywhere
		}
		side := func(q Point) float64 { return d.Dot(q.Sub(p)) }
		back := func(q Point) float64 { return -side(q) }
		close2(t, "area of both sides", r.clip(side).Area()+r.clip(back).Area(), r.Area(), 1e-6*(1+math.Abs(r.Area())))
		box := Around(p, anyPoint(t, "q"))
		if in := r.ClipTo(box); len(in) > 0 && !box.Grow(1e-9).Contains(in.Bounds()) {
			t.Fatalf("%v is left in %v", in.Bounds(), box)
		}
		if !box.Contains(r.Bounds()) && r.Bounds().Contains(box) {
			close2(t, "a box cut out of all about it", math.Abs(r.Bounds().Grow(1).Corners().ClipTo(box).Area()), box.Width()*box.Height(), 1e-6*(1+box.Width()*box.Height()))
		}
		close2(t, "distance of a corner", r.Distance(r[0]), 0, 1e-9)
		close2(t, "area as a loop", Polygon(r...).Area(), r.Area(), 1e-6*(1+math.Abs(r.Area())))
	})
}

// anyLoop is a simple loop of lines and arcs, counter-clockwise about a point.
func anyLoop(t *rapid.T) Loop {
	l := make(Loop, rapid.IntRange(3, 8).Draw(t, "corners"))
	for i := range l {
		angle := 2 * math.Pi * (float64(i) + rapid.Float64Range(0, 0.5).Draw(t, "angle")) / float64(len(l))
		l[i] = Vertex{Point: Point{X: rapid.Float64Range(50, 100).Draw(t, "radius")}.Rotate(angle)}
		if rapid.Bool().Draw(t, "arc") {
			// Flatter ones have centers too far off for 1e-9; rounder ones cross at corners of 20 degrees.
			l[i].Bulge = rapid.OneOf(rapid.Float64Range(-0.08, -0.001), rapid.Float64Range(0.001, 0.2)).Draw(t, "bulge")
		}
	}
	return l
}

// TestLoopTurns: corners and arcs of a simple loop turn once in all, whichever way it is
// moved; turned over they turn as before.
func TestLoopTurns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLoop(t)
		turns := func(l Loop) (sum float64) {
			for i, v := range l {
				sum += l.Turn(i)
				if v.Bulge != 0 {
					sum += l.Arc(i).Sweep()
				}
			}
			return sum
		}
		close2(t, "turns", turns(l), 2*math.Pi, 1e-9)
		close2(t, "turns, reversed", turns(l.Reverse()), -2*math.Pi, 1e-9)
		close2(t, "turns, turned over", turns(l.TurnOver(300)), 2*math.Pi, 1e-9)
		by := anyPoint(t, "by")
		close2(t, "area, moved", l.Translate(by).Area(), l.Area(), 1e-6)
		close2(t, "box, moved", l.Translate(by).Bounds().Min.To(l.Bounds().Translate(by).Min), 0, 1e-9)
	})
}

// TestFillet: the arc of a fillet touches both sides of its corner.
func TestFillet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, r := Polygon(anyPoint(t, "a"), anyPoint(t, "b"), anyPoint(t, "c")), rapid.Float64Range(0.5,
			20).Draw(t, "radius")
		if math.Abs(l.Area()) < 100 {
			return
		}
		for i, v := range l {
			from, to, cut := l.Fillet(i, r)
			arc := Arc{from.Point, to.Point, from.Bulge}
			close2(t, "radius", arc.Radius(), r, 1e-6*(r+cut))
			close2(t, "cut off before", from.To(v.Point), cut, 1e-6*(1+cut))
			close2(t, "cut off after", to.To(v.Point), cut, 1e-6*(1+cut))
			for _, side := range [2][2]Point{{l[l.Before(i)].Point, v.Point}, {v.Point, l.Next(i).Point}} {
				_, off := Beside(arc.Center(), side[0], side[1])
				close2(t, "way from the center to a side", math.Abs(off), r, 1e-6*(r+cut))
			}
		}
	})
}

// TestMarksStay: however a loop is turned, the same places have its marks.
func TestMarksStay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLoop(t)
		for i := range l {
			l[i].Marks = Mark(rapid.IntRange(0, int(Mating|Relief)).Draw(t, "marks"))
		}
		const length = 300
		corners := func(l Loop, over bool) (places []Point) {
			for _, i := range l.Marked(Relief) {
				places = append(places, l[i].Point)
			}
			return turned(places, over, length)
		}
		sides := func(l Loop, over bool) (places []Point) {
			for _, i := range l.Marked(Mating) {
				places = append(places, l[i].Middle(l.Next(i).Point))
			}
			return turned(places, over, length)
		}
		for name, m := range map[string]Loop{"reversed": l.Reverse(), "turned over": l.TurnOver(length), "moved": l.Translate(Point{}), "marked again": l.With(Mating)} {
			over := name == "turned over"
			if !slices.Equal(corners(m, over), corners(l, false)) || !slices.Equal(sides(m, over), sides(l, false)) {
				t.Fatalf("%s: %v was %v", name, m, l)
			}
		}
	})
}

// turned puts places back that were turned over, in an order that does not depend on the
// loop's.
func turned(places []Point, over bool, length float64) []Point {
	for i := range places {
		if over {
			places[i].X = length - places[i].X
		}
		places[i] = Point{math.Floor(float64(places[i].X*1e5) + 0.377), math.Floor(float64(places[i].Y*1e5) + 0.377)} // off what is drawn
	}
	slices.SortFunc(places, func(a, b Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	return places
}
