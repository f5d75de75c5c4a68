package setup_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

func stock(name string, readings ...float64) joinery.Stock {
	return joinery.Stock{Name: name, Thickness: joinery.Measure(readings...)}
}

func drawer(t testing.TB, change func(*joinery.Spec)) joinery.Drawer {
	t.Helper()
	ply := stock("ply", 12)
	s := joinery.Spec{Name: "a", Count: 1, Units: geom.Millimeter, Width: 400, Height: 120, Depth: 500, Sides: ply, Front: ply, Back: ply, Bottom: stock("thin", 6),
		Joint: joinery.DadoRabbet, Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6.35}, GrooveEnds: joinery.GrooveThrough, BottomFit: joinery.BottomGroovedIn, BottomClearance: 2}
	change(&s)
	d, problems, _ := joinery.LayOut(s)
	for _, p := range problems {
		if p.IsError() {
			t.Fatal(p)
		}
	}
	return d
}

func front(thick float64) func(*joinery.Spec) {
	return func(s *joinery.Spec) {
		s.Front = stock("front", thick)
		s.Back = s.Front
		s.FenceDistance = 6
	}
}

func about(t testing.TB, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s is %g, not %g", what, got, want)
	}
}

// A front of 12 with a cutter of 6.35: |2f - 12| <= 0.25 is 5.875 to 6.125, and
// 0.1 <= 6.35 - f <= 0.4 is 5.95 to 6.25; together 5.95 to 6.125. Sides of 12: h from
// 4 to 7.2.
func TestNeed(t *testing.T) {
	n := setup.RequirementOf(drawer(t, func(*joinery.Spec) {}))
	about(t, "the least fence distance", n.Fence.Min, 5.95)
	about(t, "the greatest fence distance", n.Fence.Max, 6.125)
	about(t, "the best fence distance", n.AtFence, 6)
	about(t, "the least height", n.Height.Min, 4)
	about(t, "the greatest height", n.Height.Max, 7.2)
	about(t, "the best height", n.AtHeight, 6)
	if n.Impossible != "" {
		t.Error(n.Impossible)
	}
}

// Forced on f = 6 a front of 12.4 is proud by 2*6 - 12.4 = -0.4; one of 13.05 leaves a
// sliver of 13.05 - 6 - 6.35 = 0.7 after one pass.
func TestCost(t *testing.T) {
	n := setup.RequirementOf(drawer(t, front(12.4)))
	c := n.Cost(6, 6)
	about(t, "the recess", c.Recess[0], -0.4)
	about(t, "the clearance", c.Clearance[0], 0.35)
	about(t, "the sliver", c.Sliver[0], 0.05)
	n = setup.RequirementOf(drawer(t, front(13.05)))
	about(t, "the sliver of the thick front", n.Cost(6, 6).Sliver[0], 0.7)
}

// Fronts of 12 and 12.2 (5.975 to 6.225 with the play's 5.95 to 6.25) share 5.975 to
// 6.125; one of 11.7 (5.725 to 5.975, with the play 5.95 to 5.975) just touches that
// of 12.2 and shares 5.95 to 5.975 with that of 12. All three meet at 5.975.
func TestJudge(t *testing.T) {
	of := func(thick ...float64) (list []setup.Requirement) {
		for _, v := range thick {
			list = append(list, setup.RequirementOf(drawer(t, front(v))))
		}
		return list
	}
	v := setup.GroupSettings(of(12, 12.2))
	if !v.One || len(v.Minimal) != 1 || !slices.Equal(v.Minimal[0].Drawers, []int{0, 1}) {
		t.Errorf("%+v", v)
	}
	about(t, "the fence that both were worked out with", v.Compromise.AtFence, 6)
	own := setup.RequirementOf(drawer(t, func(s *joinery.Spec) { front(12.2)(s); s.FenceDistance = 6.1 }))
	v = setup.GroupSettings(append(of(12), own))
	about(t, "the fence between theirs", v.Compromise.AtFence, 6.05)
	if v = setup.GroupSettings(of(11.7, 12, 12.2)); !v.One {
		t.Errorf("%+v", v)
	}
	// 11.66 ends at 5.955, before 12.2 begins at 5.975, and shares with 12 alone.
	if v = setup.GroupSettings(of(11.66, 12, 12.2)); v.One || len(v.Minimal) != 2 || !v.Optimal {
		t.Errorf("%+v", v)
	}
	// Of 13.5, 6.625 to 6.875, the play leaves nothing.
	if v = setup.GroupSettings(of(12, 13.5)); v.One || !slices.Equal(v.Unserved, []int{1}) || len(v.Minimal) != 1 {
		t.Errorf("%+v", v)
	}
}

// The fewest settings serve every drawer, none of them could be left out, and on a
// line (one height for all) they are as few as the sweep from the left gives, which is
// known to be least for intervals.
func TestFewest(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(1, 9).Draw(rt, "drawers")
		var needs []setup.Requirement
		for range n {
			a := rapid.IntRange(0, 30).Draw(rt, "from")
			b := a + rapid.IntRange(0, 8).Draw(rt, "wide")
			needs = append(needs, setup.Requirement{Fence: geom.Interval{Min: float64(a), Max: float64(b)}, Height: geom.Interval{Min: 1, Max: 2}, AtFence: float64(a+b) / 2, AtHeight: 1.5})
		}
		v := setup.GroupSettings(needs)
		var served []int
		for _, g := range v.Minimal {
			for _, i := range g.Drawers {
				served = append(served, i)
				if f := needs[i].Fence; g.AtFence < f.Min-1e-6 || g.AtFence > f.Max+1e-6 {
					rt.Fatalf("drawer %d is not served by %g", i, g.AtFence)
				}
			}
		}
		slices.Sort(served)
		if len(served) != n || len(slices.Compact(served)) != n {
			rt.Fatalf("served are %v of %d", served, n)
		}
		ends := slices.Clone(needs)
		slices.SortFunc(ends, func(a, b setup.Requirement) int { return int(a.Fence.Max - b.Fence.Max) })
		least, last := 0, math.Inf(-1)
		for _, e := range ends {
			if e.Fence.Min > last {
				least, last = least+1, e.Fence.Max
			}
		}
		if len(v.Minimal) != least || v.One != (least == 1) {
			rt.Fatalf("%d settings, %d would do", len(v.Minimal), least)
		}
	})
}

// Every stack is of pieces that the shop has, and none of a handful of pieces that is
// nearer was missed: all subsets of five are tried by hand.
func TestStacks(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		pieces := rapid.SliceOfN(rapid.SampledFrom([]float64{0.1, 0.2, 0.5, 1, 1, 2, 3, 6}), 1, 5).Draw(rt, "pieces")
		wished := rapid.Float64Range(0.5, 10).Draw(rt, "wished")
		best := math.Inf(1)
		for set := 1; set < 1<<len(pieces); set++ {
			sum := 0.0
			for i, p := range pieces {
				if set>>i&1 == 1 {
					sum += p
				}
			}
			best = min(best, math.Abs(sum-wished))
		}
		s, ok := setup.Nearest(pieces, wished)
		// Heights that differ from the wished one by the same hundredth are alike.
		if !ok || math.Abs(s.Height-wished) > best+0.01 {
			rt.Fatalf("%+v is nearest to %g; %g away is possible", s, wished, best)
		}
		left := slices.Clone(pieces)
		for _, p := range s.Pieces {
			i := slices.Index(left, p)
			if i < 0 {
				rt.Fatalf("%v are not of %v", s.Pieces, pieces)
			}
			left = slices.Delete(left, i, i+1)
		}
	})
	// A 6 mm spacer for fence and height: common practice, no source.
	g := setup.GroupSettings([]setup.Requirement{setup.RequirementOf(drawer(t, front(11.98)))}).Minimal[0]
	if s, ok := g.One([]float64{3, 6, 12.7}); !ok || s.Height != 6 {
		t.Errorf("%+v", s)
	}
}
