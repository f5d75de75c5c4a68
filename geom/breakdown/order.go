package breakdown

import (
	"cmp"
	"container/heap"
	"slices"
)

// job is a cut, and the cut that has to be made before it, -1 for none: the last one of the same board, or the one
// that the board comes off with.
type job struct {
	Cut
	after int
}

// device is what a group of cuts is made with.
type device uint8

const (
	atFence device = iota
	atStop
	onSled // clean-up cuts on the sled, which do without a stop
)

// group is the cuts of one setting.
type group struct {
	device
	left    int    // still to be made
	blocked int    // of these, wait for cuts of other settings
	ready   ranked // can be made now
}

// order makes cuts one after the other.
//
// A setting comes as soon as all that is ever cut at it can be cut at once. Where there is none such, one has to come
// twice: that of the earliest stage. Cuts along a guide leave fence and stop alone: they are made once others wait for
// them.
type order struct {
	plan   [4]source
	jobs   []job
	next   [][]int // the jobs that follow each
	of     []int   // the group of each, by its rank; -1 along a guide
	waits  [][]int // the groups of jobs that cannot be made before each, for each such job
	groups []group
	guided ranked // cuts along a guide that can be made
	whole  [2]ranked
	some   [2]ranked // groups, of fence and sled, of which all, or some, can be made
	sled   int       // 1 where the sled is on the saw
	stop   int       // the group that the stop is set for, -1 for none
	trims  int       // that of clean-up cuts on the sled, likewise
	cuts   []Cut
}

// source is groups to choose from: those of which all that is ever cut at their setting can be cut at once, or of
// which some can be, so that the setting has to come twice; of what is on the saw, the fence or the sled, or not.
type source uint8

const (
	wholeHere source = iota
	wholeThere
	someHere
	someThere
)

// plans tell which groups come first: the better one is taken.
var plans = [...][4]source{{wholeHere, wholeThere, someHere, someThere}, {wholeHere, someHere, wholeThere, someThere}}

// inOrder puts jobs in order, each of which stands after the one that it follows.
func inOrder(jobs []job) (best []Cut) {
	least := 0
	for i, p := range plans {
		cuts := planned(jobs, p)
		setDevices(cuts)
		if n := Moves(cuts) + Changes(cuts); i == 0 || n < least {
			best, least = cuts, n
		}
	}
	return best
}

// planned puts jobs in order by a plan.
func planned(jobs []job, plan [4]source) []Cut {
	o := &order{plan: plan, jobs: jobs, next: make([][]int, len(jobs)), waits: make([][]int, len(jobs)),
		stop: -1, trims: -1}
	o.sort()
	for i, j := range jobs {
		if j.after >= 0 {
			o.next[j.after] = append(o.next[j.after], i)
		} else {
			o.comes(i)
		}
	}
	o.block()
	for g, ok := o.choose(); ok; g, ok = o.choose() {
		o.make(g)
	}
	o.drain(&o.guided)
	return o.cuts
}

// sort makes the groups, in the order in which they are cut where either could be: by stage, those of the fence before
// those of the sled; at the fence wide strips before narrow ones, so that a board is soon light, and on the sled short
// lengths before long ones, for the rest of a long board is held more safely than a short one.
func (o *order) sort() {
	type setting struct {
		device
		to int64
	}
	first := make(map[setting]int) // its first job
	at := func(j job) setting {
		switch {
		case j.Kind == FenceCut:
			return setting{atFence, j.Setting}
		case j.Trim:
			return setting{device: onSled}
		}
		return setting{atStop, j.Setting}
	}
	var list []setting
	for i, j := range o.jobs {
		if _, known := first[at(j)]; j.Kind != HandHeld && !known {
			first[at(j)] = i
			list = append(list, at(j))
		}
	}
	slices.SortStableFunc(list, func(a, b setting) int {
		x, y := o.jobs[first[a]], o.jobs[first[b]]
		size := cmp.Compare(x.Setting, y.Setting)
		if x.Kind == FenceCut {
			size = -size
		}
		return cmp.Or(cmp.Compare(x.Stage, y.Stage), yes(y.Trim)-yes(x.Trim), cmp.Compare(x.Kind, y.Kind), size)
	})
	rank := make(map[setting]int)
	for i, s := range list {
		rank[s] = i
		if o.groups = append(o.groups, group{device: s.device}); s.device == onSled {
			o.trims = i
		}
	}
	for _, j := range o.jobs {
		g := -1
		if j.Kind != HandHeld {
			g = rank[at(j)]
			o.groups[g].left++
		}
		o.of = append(o.of, g)
	}
}

func yes(b bool) int {
	if b {
		return 1
	}
	return 0
}

// block finds for each job the last one before it that is made at another setting, and what can be made without any.
func (o *order) block() {
	last := make([]int, len(o.jobs))
	for i, j := range o.jobs {
		g := o.of[i]
		if last[i] = -1; g < 0 {
			continue
		}
		p := j.after
		for p >= 0 && o.of[p] != g && o.along(p, g) {
			p = o.jobs[p].after
		}
		if p >= 0 && o.of[p] == g {
			p = last[p]
		}
		if last[i] = p; p >= 0 {
			o.waits[p] = append(o.waits[p], g)
			o.groups[g].blocked++
		}
	}
	for g := range o.groups {
		o.offer(g)
	}
}

// along reports whether a job is made along with those of a group, without a setting of its own.
func (o *order) along(i, g int) bool {
	of := o.of[i]
	return of < 0 || o.groups[of].device == onSled && o.groups[g].device == atStop
}

// offer has a group among those to choose from, if anything of it can be made.
func (o *order) offer(g int) {
	one := o.groups[g]
	side := min(int(one.device), 1)
	if one.left > one.blocked {
		heap.Push(&o.some[side], g)
		if one.blocked == 0 {
			heap.Push(&o.whole[side], g)
		}
	}
}

// choose takes the group to go on with.
func (o *order) choose() (g int, ok bool) {
	for _, from := range o.plan {
		side, list := o.sled, &o.some
		if from == wholeThere || from == someThere {
			side = 1 - side
		}
		whole := from == wholeHere || from == wholeThere
		if whole {
			list = &o.whole
		}
		for len(list[side]) > 0 {
			g := heap.Pop(&list[side]).(int)
			if one := o.groups[g]; one.left == one.blocked || whole && one.blocked > 0 {
				continue
			}
			if o.stop >= 0 && side == 1 && o.groups[o.stop].left > o.groups[o.stop].blocked {
				o.offer(g) // the stop stands already
				g = o.stop
			}
			return g, true
		}
	}
	return 0, false
}

// make makes all cuts of a group that can be made.
func (o *order) make(g int) {
	one := &o.groups[g]
	if o.sled = min(int(one.device), 1); one.device == atStop {
		o.stop = g
	}
	for one.left > one.blocked {
		if one.left-one.blocked > len(one.ready) {
			o.drain(&o.guided)
		}
		if one.device == atStop && o.trims >= 0 { // they take no setting while the sled is on
			o.drain(&o.groups[o.trims].ready)
		}
		o.drain(&one.ready)
	}
}

// drain makes cuts that can be made, and those that can be made after them.
func (o *order) drain(ready *ranked) {
	for len(*ready) > 0 {
		o.cut(heap.Pop(ready).(int))
	}
}

// cut makes a cut, after which others can be made.
func (o *order) cut(i int) {
	o.cuts = append(o.cuts, o.jobs[i].Cut)
	if g := o.of[i]; g >= 0 {
		o.groups[g].left--
	}
	for _, n := range o.next[i] {
		o.comes(n)
	}
	for _, g := range o.waits[i] {
		o.groups[g].blocked--
		o.offer(g)
	}
}

// comes has a job that can be made.
func (o *order) comes(i int) {
	to := &o.guided
	if g := o.of[i]; g >= 0 {
		to = &o.groups[g].ready
	}
	heap.Push(to, i)
}

// ranked is numbers of which the least comes first.
type ranked []int

func (r ranked) Len() int           { return len(r) }
func (r ranked) Less(i, j int) bool { return r[i] < r[j] }
func (r ranked) Swap(i, j int)      { r[i], r[j] = r[j], r[i] }
func (r *ranked) Push(x any)        { *r = append(*r, x.(int)) }
func (r *ranked) Pop() any {
	last := (*r)[len(*r)-1]
	*r = (*r)[:len(*r)-1]
	return last
}
