package readback

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawerwright/geom"
)

// Contradiction is something that two outputs do not agree about.
type Contradiction struct {
	Key
	Says []Fact   // one of each value, the most exact first
	Not  []string // outputs that do not have it and should
}

func (c Contradiction) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s", c.Key)
	for _, f := range c.Says {
		fmt.Fprintf(&b, "; %s in %q", f.Value, f.Out)
	}
	if len(c.Not) > 0 {
		fmt.Fprintf(&b, "; not in %q", c.Not)
	}
	return b.String()
}

// Compare finds the contradictions among the facts of some outputs of a job.
func Compare(job Job, facts []Fact, outputs Outputs) (found []Contradiction) {
	by := make(map[Key][]Fact)
	for _, f := range facts {
		by[f.Key] = append(by[f.Key], f)
	}
	keys := slices.SortedFunc(maps.Keys(by), compareKeys)
	for _, k := range keys {
		list := by[k]
		slices.SortStableFunc(list, func(a, b Fact) int {
			return cmp.Or(cmp.Compare(a.Step, b.Step), cmp.Compare(a.Out, b.Out))
		})
		c := Contradiction{Key: k, Says: list[:1:1]}
		for _, f := range list[1:] {
			if !slices.ContainsFunc(list, func(g Fact) bool { return !job.agree(g, f) }) ||
				slices.ContainsFunc(c.Says, func(g Fact) bool { return g.Value == f.Value }) {
				continue
			}
			c.Says = append(c.Says, f)
		}
		for _, out := range job.standsIn(k) {
			_, there := outputs[out]
			if there && !slices.ContainsFunc(list, func(f Fact) bool { return f.Out == out }) {
				c.Not = append(c.Not, out)
			}
		}
		if len(c.Says) > 1 || len(c.Not) > 0 {
			found = append(found, c)
		}
	}
	return found
}

func compareKeys(a, b Key) int {
	return cmp.Or(cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Of, b.Of), cmp.Compare(a.Measure, b.Measure))
}

// middle is how near to the middle between two printed numbers a length, in mm, counts as
// half, so that it is rounded up, and a nanometer for its own rounding.
var middle = (geom.Computed + 1).MM()

// agree reports whether two facts of one thing can both be right: of numbers printed with
// the same digits they must be the same, else one is the other rounded.
func (j Job) agree(a, b Fact) bool {
	if a.Value == b.Value {
		return true
	}
	x, ok := number(a.Value)
	y, good := number(b.Value)
	if !ok || !good || a.Step == 0 || b.Step == 0 {
		return false
	}
	apart, fine, coarse := math.Abs(x-y), min(a.Step, b.Step), max(a.Step, b.Step)
	if fine == coarse {
		return apart < fine/2 // 5.0 is 5
	}
	near := middle
	if j.Units == "in" {
		near /= 25.4
	}
	return apart <= (fine+coarse)/2+near
}

// number reads a decimal, or a whole number with a fraction.
func number(s string) (float64, bool) {
	s = strings.TrimSpace(s)
	if v, err := strconv.ParseFloat(s, 64); err == nil {
		return v, true
	}
	negative := strings.HasPrefix(s, "-")
	s = strings.TrimPrefix(s, "-")
	whole, part, mixed := strings.Cut(s, " ")
	if !mixed {
		whole, part = "0", s
	}
	above, below, fraction := strings.Cut(part, "/")
	w, e1 := strconv.Atoi(whole)
	n, e2 := strconv.Atoi(above)
	d, e3 := strconv.Atoi(below)
	if !fraction || e1 != nil || e2 != nil || e3 != nil || d == 0 {
		return 0, false
	}
	v := float64(w) + float64(n)/float64(d)
	if negative {
		v = -v
	}
	return v, true
}
