package setup

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/geom/joinery"
)

// Piece is a board of a cut and how many pieces of it are cut so.
type Piece struct {
	Name  string
	Role  joinery.Role
	Count int
	Turns []Turn // those of its own
}

// Cut is a step with all boards that it is made on.
type Cut struct {
	Step
	End    End
	Boards []Piece
}

// Setting is a cutter at a height and a fence at a distance, with all that is cut so,
// in order; by hand, a gauge and a depth stop.
type Setting struct {
	Cutter, Height, Fence float64
	Cuts                  []Cut
}

// WorkPlan is the work of some boards at one machine.
type WorkPlan struct {
	Settings []Setting // in order
	Separate []Cut     // what is sawn, bored and opened afterward, in order
	Refused  []Cut     // what this machine cannot do
}

// Changes is how often the cutter's height is changed from the first setting on.
func (s WorkPlan) Changes() int {
	n := 0
	for i := 1; i < len(s.Settings); i++ {
		if !same2(s.Settings[i].Height, s.Settings[i-1].Height) {
			n++
		}
	}
	return n
}

// Plan lists the settings for boards in the order of work. On every board cuts across
// the grain come before those along it and fingers last; within that, cutter and height
// are changed as seldom as can be, the deeper height first.
func Plan(cutter joinery.Cutter, machines Machines, boards []Board) WorkPlan {
	var out WorkPlan
	var items []Cut
	put := func(list *[]Cut, s Step, b Board) {
		piece := Piece{b.Name, b.Role, b.Count, s.Turns}
		for i := range *list {
			o := &(*list)[i]
			if o.alike(s) && same2(o.Height, s.Height) && same2(o.Fence, s.Fence) && samePlaces(o.Step, s) &&
				o.Edges.counted() == s.Edges.counted() && o.End == b.end(s.Edges) && sameBeyond(o.Refused, s.Refused) {
				o.Boards = append(o.Boards, piece)
				return
			}
		}
		*list = append(*list, Cut{s, b.end(s.Edges), []Piece{piece}})
	}
	for _, b := range boards {
		for _, s := range Process(b, cutter, machines) {
			switch {
			case s.Refused != nil:
				put(&out.Refused, s, b)
			case s.stage() == 3:
				put(&out.Separate, s, b)
			default:
				put(&items, s, b)
			}
		}
	}
	slices.SortStableFunc(out.Separate, func(a, b Cut) int {
		byWork := cmp.Compare(rank(a.Step), rank(b.Step))
		if a.Holding != Bored || b.Holding != Bored {
			return byWork
		}
		on := func(v float64) float64 { return math.Round(v / grid) }
		// A bit and a stop are set once.
		return cmp.Or(byWork, cmp.Compare(on(b.Width), on(a.Width)), cmp.Compare(on(b.Height), on(a.Height)))
	})
	out.Settings = arrange(items)
	return out
}

func samePlaces(a, b Step) bool {
	if len(a.Places) != len(b.Places) {
		return false
	}
	for i, p := range a.Places {
		q := b.Places[i]
		if !same2(p.Min.X, q.Min.X) || !same2(p.Min.Y, q.Min.Y) || !same2(p.Max.X, q.Max.X) || !same2(p.Max.Y, q.Max.Y) {
			return false
		}
	}
	return true
}

func sameBeyond(a, b *Exceeded) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Limit == b.Limit && same2(a.Measured, b.Measured)
}

// arranging puts cuts in order. A cut waits for those of an earlier stage that are made
// on one of its boards.
type arranging struct {
	cuts  []Cut
	waits [][]int // for these cuts
}

func arrange(cuts []Cut) (list []Setting) {
	a := arranging{cuts: cuts, waits: make([][]int, len(cuts))}
	for i, c := range cuts {
		for j, o := range cuts {
			if o.stage() < c.stage() && slices.ContainsFunc(o.Boards, func(p Piece) bool {
				return slices.ContainsFunc(c.Boards, func(q Piece) bool { return p.Name == q.Name })
			}) {
				a.waits[i] = append(a.waits[i], j)
			}
		}
	}
	done, left := make([]bool, len(cuts)), len(cuts)
	cutter := 0.0
	for left > 0 {
		best, found := -1, visit{}
		for i := range cuts {
			if done[i] {
				continue
			}
			v := a.visit(i, done)
			v.sameCutter = cutter == 0 || same2(cutter, cuts[i].Cutter)
			if len(v.made) > 0 && (best < 0 || v.before(found)) {
				best, found = i, v
			}
		}
		for _, i := range found.made {
			done[i] = true
			left--
		}
		cutter = cuts[best].Cutter
		list = append(list, found.settings...)
	}
	return list
}

// visit is all that can be cut without another cutter or height.
type visit struct {
	height     float64
	made       []int
	complete   bool // nothing is left at this height for later
	sameCutter bool
	settings   []Setting
}

// before reports which of two visits comes first: that with the cutter which is in the
// machine, that after which its height is not needed again, the deeper one.
func (v visit) before(o visit) bool {
	switch {
	case v.sameCutter != o.sameCutter:
		return v.sameCutter
	case v.complete != o.complete:
		return v.complete
	case !same2(v.height, o.height):
		return v.height > o.height
	}
	return false
}

// visit makes all cuts that can be made at the height of the cut i, one fence distance
// after the other: first those after which the distance is not needed again, and of
// these the ones without cuts along the grain.
func (a *arranging) visit(i int, done []bool) visit {
	v := visit{height: a.cuts[i].Height}
	made := slices.Clone(done)
	here := func(j int) bool {
		return !made[j] && same2(a.cuts[j].Height, a.cuts[i].Height) && same2(a.cuts[j].Cutter, a.cuts[i].Cutter)
	}
	for {
		best, bestStage := []int(nil), 0
		bestWhole := false
		for j := range a.cuts {
			if !here(j) {
				continue
			}
			can, latest, whole := a.atFence(j, made, here)
			if len(can) > 0 && (best == nil || whole && !bestWhole || whole == bestWhole && latest < bestStage) {
				best, bestStage, bestWhole = can, latest, whole
			}
		}
		if best == nil {
			break
		}
		s := Setting{Cutter: a.cuts[i].Cutter, Height: a.cuts[i].Height, Fence: a.cuts[best[0]].Fence}
		for _, j := range best {
			made[j] = true
			v.made = append(v.made, j)
			s.Cuts = append(s.Cuts, a.cuts[j])
		}
		v.settings = append(v.settings, s)
	}
	v.complete = true
	for j := range a.cuts {
		v.complete = v.complete && !here(j)
	}
	return v
}

// atFence lists what can be cut at the fence distance of the cut i, in order; latest is
// the latest stage of it, and whole whether nothing at this distance has to wait.
func (a *arranging) atFence(i int, made []bool, here func(int) bool) (can []int, latest int, whole bool) {
	var all []int
	for j := range a.cuts {
		if here(j) && same2(a.cuts[j].Fence, a.cuts[i].Fence) && (a.cuts[j].Holding == Fingers) == (a.cuts[i].Holding == Fingers) { // a jig takes the fence's place
			all = append(all, j)
		}
	}
	slices.SortStableFunc(all, func(x, y int) int { return cmp.Compare(rank(a.cuts[x].Step), rank(a.cuts[y].Step)) })
	now := slices.Clone(made)
	for _, j := range all {
		if !slices.ContainsFunc(a.waits[j], func(w int) bool { return !now[w] }) {
			can, now[j] = append(can, j), true
			latest = max(latest, a.cuts[j].stage())
		}
	}
	return can, latest, len(can) == len(all)
}
