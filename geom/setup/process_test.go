package setup_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// removed is wood taken from one face of a board, or right through it.
type removed struct {
	area    geom.Loop
	face    geom.Face
	depth   float64
	through bool
}

// bench is a board while its steps are made, and how far the test trusts two lengths
// to be one: steps that a shop cannot tell apart, 0.01 mm, are made as one.
type bench struct {
	board setup.Board
	cuts  []removed
}

const near = 0.021

// edge is how far a rectangle is from an edge of the blank.
func (b *bench) edge(r geom.Rect, which int) float64 {
	length, width := b.board.Panel.Length(), b.board.Panel.Width()
	return [4]float64{r.Min.X, length - r.Max.X, r.Min.Y, width - r.Max.Y}[which]
}

// whole reports whether nothing has been cut out of an edge.
func (b *bench) whole(which int) bool {
	for _, c := range b.cuts {
		if c.through && b.edge(c.area.Bounds(), which) < near {
			return false
		}
	}
	return true
}

func edges(e setup.Edges) (list []int) {
	for i, on := range [4]bool{e.Left, e.Right, e.Lower, e.Upper} {
		if on {
			list = append(list, i)
		}
	}
	return list
}

// strip is the blank from one distance to another off an edge, between two places along it.
func (b *bench) strip(which int, from, to, begin, end float64) geom.Loop {
	length, width := b.board.Panel.Length(), b.board.Panel.Width()
	switch which {
	case 0:
		return geom.Rectangle(from, begin, to, width-end)
	case 1:
		return geom.Rectangle(length-to, begin, length-from, width-end)
	case 2:
		return geom.Rectangle(begin, from, length-end, to)
	}
	return geom.Rectangle(begin, width-to, length-end, width-from)
}

// do makes a step as its setting says, not as the pocket is drawn, and says what is
// wrong with how the board lies or stands.
func (b *bench) do(s setup.Step) (wrong string) {
	p, t := b.board.Panel, b.board.Panel.Thickness
	cover := func() (float64, string) { // how far the passes reach
		at := s.Fence
		for i, pass := range s.Passes {
			if i == 0 && math.Abs(pass-s.Fence) > near || pass > at+near {
				return 0, fmt.Sprintf("passes %v of %g leave wood between them", s.Passes, s.Cutter)
			}
			at = pass + s.Cutter
		}
		return at, ""
	}
	other := geom.Outside
	if s.Face == geom.Outside {
		other = geom.Inside
	}
	var made []removed
	switch s.Holding {
	case setup.Across, setup.Along, setup.Plowed:
		if s.Holding == setup.Plowed {
			s.Cutter = b.iron(s)
		}
		to, wrong := cover()
		if wrong != "" {
			return wrong
		}
		for _, e := range edges(s.Edges) {
			made = append(made, removed{b.strip(e, s.Fence, to, s.Stops[0], s.Stops[1]), s.Face, s.Height, false})
		}
	case setup.Knifed, setup.Chopped:
		for _, e := range edges(s.Edges) {
			made = append(made, removed{b.strip(e, s.Fence, s.Fence+s.Width, s.Stops[0], s.Stops[1]), s.Face, s.Height, false})
		}
	case setup.AtEnd, setup.AtEdge:
		if to, wrong := cover(); wrong != "" || to < s.Width-near {
			return "the passes do not reach the shoulder" + wrong
		}
		for _, e := range edges(s.Edges) {
			made = append(made, removed{b.strip(e, 0, s.Width, 0, 0), s.Face, s.Height, false})
		}
	case setup.OnEnd:
		if to, wrong := cover(); wrong != "" || to < b.board.Thickness.Max-near {
			return "the passes do not reach the other face of the thickest board" + wrong
		}
		for _, e := range edges(s.Edges) {
			made = append(made, removed{b.strip(e, 0, s.Height, 0, 0), other, t - s.Fence, false})
		}
	case setup.Shoulder:
		for _, e := range edges(s.Edges) {
			made = append(made, removed{b.strip(e, 0, s.Height, 0, 0), other, t - s.Fence, false})
		}
	case setup.Fingers, setup.HandSawn, setup.Sawn:
		for _, i := range s.EdgeCuts {
			area := p.EdgeCuts[i].Area
			if r := area.Bounds(); s.Holding != setup.Sawn && math.Abs(r.Width()-s.Height) > near {
				return "fingers of another length"
			}
			made = append(made, removed{area, geom.Inside, t, true})
		}
		for _, i := range s.Pockets { // flanks of pins, of which more is left the nearer to the pin's middle
			made = append(made, removed{p.Pockets[i].Outline, geom.Outside, p.Pockets[i].Depth, false})
		}
	case setup.Bored, setup.Opened, setup.Mortised:
		for i, place := range s.Places {
			x := (place.Min.X + place.Max.X) / 2
			if s.Face == geom.Outside {
				x = p.Length() - x
			}
			area := geom.Circle(geom.Point{X: x, Y: (place.Min.Y + place.Max.Y) / 2}, s.Width/2)
			if s.Holding != setup.Bored {
				area = p.Pockets[s.Pockets[i]].Outline
			}
			made = append(made, removed{area, s.Face, s.Height, s.Through})
		}
	default:
		return fmt.Sprintf("work %q", s.Holding)
	}
	switch s.Holding {
	case setup.Sawn, setup.Bored, setup.Opened, setup.Mortised:
	default:
		if len(made) == 0 {
			return "no edge guides it"
		}
		for _, e := range edges(s.Edges) {
			if !b.whole(e) {
				return fmt.Sprintf("edge %d has been cut away", e)
			}
		}
	}
	b.cuts = append(b.cuts, made...)
	return ""
}

// iron is as wide as plowed passes must be to reach the other wall.
func (b *bench) iron(s setup.Step) float64 { return s.Fence + s.Width - s.Passes[len(s.Passes)-1] }

// beyond says which limit of a machine a step breaks, in words of the test's own.
func beyond(m setup.Machine, s setup.Step, p geom.Panel) string {
	standing, base := p.Length(), p.Width()
	if s.Edges.Lower || s.Edges.Upper {
		standing, base = base, standing
	}
	switch {
	case slices.Contains([]setup.Holding{setup.Sawn, setup.Bored, setup.Opened, setup.Mortised}, s.Holding): // of another machine
		return ""
	case s.Height > m.MaxHeight+near:
		return "too high"
	case s.Cutter > m.MaxWidth+near:
		return "too wide"
	case len(s.Passes) > 0 && slices.Max(s.Passes) > m.RipCapacity+near:
		return "the fence does not open as far"
	}
	switch s.Holding {
	case setup.Across, setup.AtEnd:
		if base > m.CrosscutCapacity+near || standing > m.MaxOnSled+near {
			return "too large for the sled"
		}
		if standing < m.MinAlongFence-near && !s.Clamped {
			return "short and not clamped"
		}
	case setup.Along, setup.AtEdge:
		if base < m.MinAlongFence-near {
			return "too short to be pushed"
		}
		if standing < m.MinWidthAlongFence-near {
			return "too narrow to be pushed"
		}
	case setup.OnEnd, setup.Fingers:
		if standing < m.MinOnEnd-near || standing > m.MaxOnEnd+near {
			return "not to be stood on end"
		}
		if s.Holding == setup.OnEnd && base < m.MinWidthOnEnd-near {
			return "too narrow to be stood on end"
		}
	}
	return ""
}

// contains reports whether a point is in a loop, and how near it is to its line.
func contains(l []geom.Point, p geom.Point) (in bool, gap float64) {
	gap = math.Inf(1)
	for i, a := range l {
		c := l[(i+1)%len(l)]
		if (a.Y > p.Y) != (c.Y > p.Y) && p.X < a.X+(c.X-a.X)*(p.Y-a.Y)/(c.Y-a.Y) {
			in = !in
		}
		d := math.Max(a.To(c), 1e-12)
		t := math.Max(0, math.Min(1, ((p.X-a.X)*(c.X-a.X)+(p.Y-a.Y)*(c.Y-a.Y))/(d*d)))
		gap = math.Min(gap, p.To(geom.Point{X: a.X + t*(c.X-a.X), Y: a.Y + t*(c.Y-a.Y)}))
	}
	return in, gap
}

// left is the wood at a point between two heights over the outside face; clear is false
// too near a line to say.
func left(t float64, cuts []removed, flat [][]geom.Point, p geom.Point) (low, high float64, clear bool) {
	high = t
	for i, c := range cuts {
		in, gap := contains(flat[i], p)
		switch {
		case gap < 2*near:
			return 0, 0, false
		case !in:
		case c.through || c.depth >= t-near:
			return 0, 0, true
		case c.face == geom.Inside:
			high = math.Min(high, t-c.depth)
		default:
			low = math.Max(low, c.depth)
		}
	}
	if high <= low {
		return 0, 0, true
	}
	return low, high, true
}

func flattened(cuts []removed) (list [][]geom.Point) {
	for _, c := range cuts {
		list = append(list, c.area.Flatten(near/4))
	}
	return list
}

// compare holds the board as cut against the finished panel at random points between
// all places where anything begins or ends.
func (b *bench) compare(r *rand.Rand) string {
	p := b.board.Panel
	var finished []removed
	for _, k := range p.Pockets {
		finished = append(finished, removed{k.Outline, k.Face, k.Depth, k.Through(p.Thickness)})
	}
	outline := p.Outline.Flatten(near / 4)
	xs, ys := []float64{0, p.Length()}, []float64{0, p.Width()}
	for _, list := range [][]removed{b.cuts, finished, {{area: p.Outline}}} {
		for _, c := range list {
			for _, v := range c.area {
				xs, ys = append(xs, v.X), append(ys, v.Y)
			}
		}
	}
	slices.Sort(xs)
	slices.Sort(ys)
	between := func(list []float64) float64 {
		i := r.IntN(len(list) - 1)
		return (list[i] + list[i+1]) / 2
	}
	made, want := flattened(b.cuts), flattened(finished)
	for range 24 {
		at := geom.Point{X: between(xs), Y: between(ys)}
		in, gap := contains(outline, at)
		if at.X < near || at.Y < near || at.X > p.Length()-near || at.Y > p.Width()-near || gap < 2*near {
			continue
		}
		lowMade, highMade, clear := left(p.Thickness, b.cuts, made, at)
		lowWant, highWant, sure := left(p.Thickness, finished, want, at)
		if !in {
			lowWant, highWant = 0, 0
		}
		if clear && sure && (math.Abs(lowMade-lowWant) > near || math.Abs(highMade-highWant) > near) {
			return fmt.Sprintf("at %.3f, %.3f wood from %.3f to %.3f is left, not from %.3f to %.3f",
				at.X, at.Y, lowMade, highMade, lowWant, highWant)
		}
	}
	return ""
}

// TestAnyProcess: of random boxes of every corner, bottom, slide and machine no setup is
// beyond the machine's limits; none has the board in a place that the process has not
// left whole; every pocket and every cut of the edges is made by one step; and a blank
// that is cut by the steps, as their settings say, is the finished panel. In the plan for
// all boards each of them has its cuts across the grain before those along it.
func TestAnyProcess(t *testing.T) {
	jobs, parts := uint64(geomtest.Cases(2000, 10_000)), uint64(4)
	var all tried
	t.Run("jobs", func(t *testing.T) {
		for part := range parts {
			t.Run(fmt.Sprint(part), func(t *testing.T) {
				t.Parallel()
				mine := tried{works: make(map[setup.Holding]int)}
				for seed := part; seed < jobs; seed += parts {
					mine.job(t, seed)
				}
				all.add(&mine)
			})
		}
	})
	t.Logf("%d of %d jobs can be built; %d steps are no setup; %v", all.built, jobs, all.refused, all.works)
	if all.built < int(jobs/5) || all.refused == 0 {
		t.Error("that tries too little")
	}
	for _, w := range []setup.Holding{
		setup.Across, setup.AtEnd, setup.OnEnd, setup.Along, setup.AtEdge, setup.Fingers, setup.Knifed, setup.Shoulder,
		setup.Plowed, setup.Chopped, setup.HandSawn, setup.Sawn, setup.Bored, setup.Opened, setup.Mortised,
	} {
		if all.works[w] == 0 {
			t.Errorf("no step is %q", w)
		}
	}
}

// tried counts what random jobs have used.
type tried struct {
	sync.Mutex
	built, refused int
	works          map[setup.Holding]int
}

func (c *tried) add(o *tried) {
	c.Lock()
	defer c.Unlock()
	c.built, c.refused = c.built+o.built, c.refused+o.refused
	if c.works == nil {
		c.works = make(map[setup.Holding]int)
	}
	for w, n := range o.works {
		c.works[w] += n
	}
}

// job tries one random job.
func (c *tried) job(t *testing.T, seed uint64) {
	r := rand.New(rand.NewPCG(18, seed))
	s, machines := anySpec(r), anyMachines(r)
	d, problems, _ := joinery.LayOut(s)
	if slices.ContainsFunc(problems, func(p geom.Diagnosis) bool { return p.IsError() }) {
		return
	}
	c.built++
	fail := func(b setup.Board, step setup.Step, wrong string) {
		t.Fatalf("job %d, %s %s, %s: %s\n%+v", seed, s.Joint, s.Cutter.Kind, b.Name, wrong, step)
	}
	all := boards(d)
	steps := make(map[string]int)
	for _, b := range all {
		on := &bench{board: b}
		pockets, cutOut := make([]int, len(b.Panel.Pockets)), make([]int, len(b.Panel.EdgeCuts))
		for _, step := range setup.Process(b, s.Cutter, machines) {
			steps[b.Name]++
			c.works[step.Holding]++
			for _, i := range step.Pockets {
				pockets[i]++
			}
			for _, i := range step.EdgeCuts {
				cutOut[i]++
			}
			if step.Refused != nil {
				c.refused++
				if len(step.Alternatives) == 0 {
					fail(b, step, "nothing is offered instead")
				}
			} else if s.Cutter.Kind.Fenced() {
				if wrong := beyond(machines.Of(s.Cutter.Kind), step, b.Panel); wrong != "" {
					fail(b, step, wrong)
				}
			}
			if wrong := on.do(step); wrong != "" {
				fail(b, step, wrong)
			}
		}
		if slices.ContainsFunc(slices.Concat(pockets, cutOut), func(n int) bool { return n != 1 }) {
			fail(b, setup.Step{}, fmt.Sprintf("pockets are made %v times, edges cut %v times", pockets, cutOut))
		}
		if wrong := on.compare(r); wrong != "" {
			fail(b, setup.Step{}, wrong)
		}
	}
	planned(t, seed, setup.Plan(s.Cutter, machines, all), steps)
}

// planned holds a plan against the boards' own steps.
func planned(t *testing.T, seed uint64, sheet setup.WorkPlan, steps map[string]int) {
	t.Helper()
	alongBegun := make(map[string]bool)
	seen := make(map[string]int)
	note := func(c setup.Cut) {
		for _, b := range c.Boards {
			seen[b.Name]++
		}
	}
	for _, set := range sheet.Settings {
		for _, c := range set.Cuts {
			note(c)
			if math.Abs(c.Height-set.Height) > near || math.Abs(c.Fence-set.Fence) > near || math.Abs(c.Cutter-set.Cutter) > near {
				t.Fatalf("job %d: a cut stands in a setting that is not its own", seed)
			}
			across := c.Edges.Left || c.Edges.Right
			for _, b := range c.Boards {
				if across && c.Holding != setup.Fingers && c.Holding != setup.HandSawn && alongBegun[b.Name] {
					t.Fatalf("job %d: %s is cut across after it was cut along", seed, b.Name)
				}
				alongBegun[b.Name] = alongBegun[b.Name] || !across
			}
		}
	}
	for _, c := range slices.Concat(sheet.Separate, sheet.Refused) {
		note(c)
	}
	for name, n := range steps {
		if seen[name] != n {
			t.Fatalf("job %d: %s has %d steps, %d in the plan", seed, name, n, seen[name])
		}
	}
}
