package nest

import (
	"cmp"
	"slices"
)

// unit is what sizes and values of kinds are whole numbers of.
const unit = 1 << 30

// measure gives each kind a size: what goes on a sheet has no more than unit.
type measure []int64

// maxMeasures is how many measures groups are held against, maxTight by how many they are bounded.
const maxMeasures, maxTight = 80, 5

// measures are those by products of dual feasible functions, those first by which all pieces are most.
func (t *task) measures(z size) (out []measure) {
	type summed struct {
		measure
		sum int64
	}
	var list []summed
	t.products(z, maxThresholds, func(value func(k kind) float64) {
		s := summed{measure: make(measure, len(t.kinds))}
		for i, k := range t.kinds {
			s.measure[i] = max(0, int64(value(k)*unit-1)) // less, whatever the rounding errors
			s.sum += s.measure[i] * int64(t.demand[i])
		}
		list = append(list, s)
	})
	slices.SortStableFunc(list, func(a, b summed) int { return cmp.Compare(b.sum, a.sum) })
	for _, s := range list {
		same := func(m measure) bool { return slices.Equal(m, s.measure) }
		if len(out) < maxMeasures && !slices.ContainsFunc(out, same) {
			out = append(out, s.measure)
		}
	}
	return out
}

// kindSet are kinds.
type kindSet []uint64

func newKindSet(kinds int) kindSet  { return make(kindSet, (kinds+63)/64) }
func (s kindSet) has(kind int) bool { return s[kind/64]>>(kind%64)&1 == 1 }
func (s kindSet) add(kind int)      { s[kind/64] |= 1 << (kind % 64) }
func (s kindSet) drop(kind int)     { s[kind/64] &^= 1 << (kind % 64) }

// keep drops all that are not of another set.
func (s kindSet) keep(others kindSet) {
	for i := range s {
		s[i] &= others[i]
	}
}

// choosing looks for groups of pieces, none of a kind more often than it is wanted, that go on a sheet and
// are worth more than most: by branch and bound over which of the kinds that is worth most for its size is
// taken or is not.
type choosing struct {
	*packs
	values []int64
	most   int64
	tight  []measure // those that bound best
	order  [][]int   // of each of them, kinds by value for size
	room   []int64   // that each of them leaves
	left   []int     // of each kind, how many can be chosen
	now    []int     // what is chosen
	found  [][]int   // each worth more than those before
	nodes  int
	few    int // how many nodes there may be
	last   int // node at which one was found
	whole  bool
}

// maxNodesWithout is how many nodes a search goes on after one that found a group, maxUntested how many there are
// from one on of more than four pieces before it is found out whether they go on a sheet.
const maxNodesWithout, maxUntested = 300, 20

// choose looks for groups worth more than most; in no more than so many nodes; where it finds none
// and is whole, there are none.
func (b *packs) choose(values []int64, most int64, nodes int) *choosing {
	c := &choosing{packs: b, values: values, most: most, few: nodes, whole: true, left: slices.Clone(b.demand)}
	open := newKindSet(len(values))
	for k, v := range values {
		if v > 0 {
			open.add(k)
		}
	}
	c.tighten(open)
	c.visit(open, 0)
	return c
}

// byValue are kinds in the order of value for size.
func (c *choosing) byValue(m measure) (order []int) {
	for k, v := range c.values {
		if v > 0 {
			order = append(order, k)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(c.values[j]*m[i], c.values[i]*m[j]) })
	return order
}

// tighten chooses the measures: first the one that bounds best, then those by which the fractions that the
// others allow are too much.
func (c *choosing) tighten(open kindSet) {
	x := make([]float64, len(c.values))
	for len(c.tight) < maxTight {
		most, at := 0.0, -1
		for n, m := range c.measures {
			worth := 0.0
			if len(c.tight) == 0 {
				worth = 1 / float64(1+c.bound(c.byValue(m), m, open, unit, nil))
				c.spent += int64(10 * len(x))
			}
			for k, v := range x {
				worth += float64(v * float64(m[k]))
			}
			if worth > most {
				most, at = worth, n
			}
		}
		c.spent += int64(len(c.measures) * len(x))
		if n := len(c.tight); at < 0 || n > 0 && most < unit*1.001 {
			return
		}
		m := c.measures[at]
		order, now := c.byValue(m), make([]float64, len(x))
		c.bound(order, m, open, unit, now)
		c.tight, c.order, c.room = append(c.tight, m), append(c.order, order), append(c.room, unit)
		for k := range x {
			x[k] += float64((now[k] - x[k]) / float64(len(c.tight)))
		}
	}
}

// bound is no less than what open kinds are worth for which there is room by a measure: they are taken in
// their order, the last in part. Where x is not nil, it gets how much of each.
func (c *choosing) bound(order []int, m measure, open kindSet, room int64, x []float64) (value int64) {
	whole := room
	for _, k := range order {
		if !open.has(k) || m[k] > whole {
			continue
		}
		n := int64(c.left[k])
		part := m[k]*n > room
		if part {
			n = room / m[k]
		}
		room -= m[k] * n
		value += c.values[k] * n
		if x != nil {
			x[k] = float64(n)
		}
		if part {
			value += c.values[k] * room / m[k]
			return value
		}
	}
	return value
}

// visit takes kinds of those that are open, each in turn, to what is chosen.
func (c *choosing) visit(open kindSet, value int64) {
	open = slices.Clone(open)
	begin, tested := c.nodes, false
	for {
		c.nodes++
		c.spent += 60
		if c.nodes > c.few || len(c.found) > 0 && c.nodes > c.last+maxNodesWithout || c.over() {
			c.whole = false
		}
		for i, m := range c.tight {
			if !c.whole || value+c.bound(c.order[i], m, open, c.room[i], nil) <= c.most {
				return
			}
		}
		if !tested && (len(c.now) < 5 || value > c.most || c.nodes > begin+maxUntested) {
			if tested = true; !c.possible() {
				return
			}
		}
		if value > c.most {
			c.most, c.last = value, c.nodes
			c.found = append(c.found, slices.Clone(c.now))
		}
		next := slices.IndexFunc(c.order[0], open.has)
		if next < 0 {
			return
		}
		k := c.order[0][next]
		c.take(k, open, value)
		open.drop(k)
	}
}

// possible reports whether what is chosen goes on a sheet, or may do so.
func (c *choosing) possible() bool {
	if len(c.now) < 4 { // which take has seen to
		return true
	}
	c.spent += 40
	for n, m := range c.measures {
		sum := int64(0)
		for _, k := range c.now {
			sum += m[k]
		}
		if sum > unit { // the next is likely too much by the same one
			copy(c.measures[1:n+1], c.measures[:n])
			c.measures[0] = m
			return false
		}
	}
	return len(c.now) > maxTogether || c.together(groupOf(c.now...)) != never
}

// take goes on with one more of a kind, and those that go beside it.
func (c *choosing) take(k int, open kindSet, value int64) {
	for i, m := range c.tight {
		if c.room[i] < m[k] {
			return
		}
	}
	open = slices.Clone(open)
	open.keep(c.beside(groupOf(k)))
	for _, i := range c.now {
		open.keep(c.beside(groupOf(i, k)))
	}
	if c.left[k]--; c.left[k] == 0 {
		open.drop(k)
	}
	for i, m := range c.tight {
		c.room[i] -= m[k]
	}
	c.now = append(c.now, k)
	c.visit(open, value+c.values[k])
	c.now = c.now[:len(c.now)-1]
	for i, m := range c.tight {
		c.room[i] += m[k]
	}
	c.left[k]++
}
