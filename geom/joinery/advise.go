package joinery

import (
	"math"
	"slices"
	"strings"

	"drawerwright/geom"
)

// What a check thinks would help are candidates: a change may end one complaint and
// raise another, in a part of the box of which the check knows nothing. So when a box
// has been judged, each candidate is tried: the changed box is worked out, and the
// candidate is named only if the complaint is gone and nothing new has come. A range
// that does not hold at its ends is narrowed to where it does; where no change will do
// by itself, two are tried together.

// mostWays is how many ways a hint names: more are not read.
const mostWays = 3

// outcome is what following a remedy comes to.
type outcome struct {
	Remedy
	ended  bool // the complaint, at all ends of the ranges
	errors int  // left, at most
	trial  *layout
}

// right reports whether the complaint is gone and nothing new has come.
func (o outcome) right() bool { return o.ended && len(o.Then) == 0 }

// advise tries the candidates of every problem, keeps those that hold, and puts them
// into words. What a check asks a person to do stands where none does.
func (l *layout) advise() {
	for i := range l.problems {
		p := &l.problems[i]
		found := l.ways(*p)
		p.Remedies, p.Ask = nil, p.Hint
		var texts []string
		for _, o := range found[:min(len(found), mostWays)] {
			p.Remedies = append(p.Remedies, o.Remedy)
			texts = append(texts, o.Text(l.Spec))
		}
		if len(texts) > 0 {
			p.Hint = strings.Join(texts, "; or ")
		}
	}
}

// ways are the candidates of a problem that hold, with the fewest errors left beside:
// an error keeps the box from being judged further, and would hide what a change breaks.
func (l *layout) ways(p Problem) []outcome {
	var right, others []outcome
	for _, r := range p.Remedies {
		if len(r.Changes) == 0 || l.Planned && r.resizes() || slices.ContainsFunc(right, func(o outcome) bool { return r.includes(o.Remedy) }) {
			continue
		}
		if o := l.narrowed(p, r); slices.ContainsFunc(o.Changes, func(c Change) bool { return !l.toBeHad(c) }) {
			continue
		} else if o.right() {
			right = append(right, o)
		} else if o.ended {
			others = append(others, o)
		}
	}
	if len(right) == 0 {
		right = l.pairs(p, others)
	}
	if len(right) == 0 {
		right = l.announced(p, others)
	}
	least := math.MaxInt
	for _, o := range right {
		least = min(least, o.errors)
	}
	return slices.DeleteFunc(right, func(o outcome) bool { return o.errors > least })
}

// includes reports whether a remedy writes all entries that another writes.
func (r Remedy) includes(o Remedy) bool {
	for _, c := range o.Changes {
		if !slices.ContainsFunc(r.Changes, func(d Change) bool {
			return d.Field == c.Field && d.Key == c.Key && d.Item == c.Item && d.Word == c.Word
		}) {
			return false
		}
	}
	return true
}

// resizes reports whether a remedy writes the outside size, which is not for a box whose
// size follows from its opening.
func (r Remedy) resizes() bool {
	return slices.ContainsFunc(r.Changes, func(c Change) bool { return c.Field == FieldOutside })
}

// narrowed follows a remedy all over its range, or where in it that holds.
func (l *layout) narrowed(p Problem, r Remedy) outcome {
	all := l.follow(p, r)
	if all.right() || len(r.Changes) > 1 || r.Changes[0].Word != "" || r.Changes[0].Count > 0 {
		return all
	}
	if c, ok := l.narrower(p, r.Changes[0]); ok {
		return l.follow(p, Remedy{Changes: []Change{c}})
	}
	return all
}

// pairs are two changes together: one that ends the complaint, at one end of its range,
// and one that ends what it brings.
func (l *layout) pairs(p Problem, others []outcome) []outcome {
	for _, o := range others {
		if len(o.Changes) > 1 {
			continue
		}
		first := o.Changes[0]
		first.Min = o.Ends()[0][0]
		first.Max = first.Min
		for _, q := range o.trial.problems {
			for _, r := range q.Remedies {
				both := Remedy{Changes: []Change{first}}.with(r)
				if len(r.Changes) != 1 || l.Planned && r.resizes() || !l.toBeHad(first) || !l.toBeHad(r.Changes[0]) || r.includes(Remedy{Changes: []Change{first}}) || !both.compatible() {
					continue
				}
				if o := l.follow(p, both); o.right() {
					return []outcome{o}
				}
			}
		}
	}
	return nil
}

// compatible reports whether no entry is written twice.
func (r Remedy) compatible() bool {
	for i, c := range r.Changes {
		for _, d := range r.Changes[:i] {
			if c.Field == d.Field && c.Key == d.Key && c.Item == d.Item {
				return false
			}
		}
	}
	return true
}

// announced is the way that brings least, with what that is. For the sake of a warning
// nothing may be worse than it was.
func (l *layout) announced(p Problem, others []outcome) []outcome {
	var best []outcome
	for _, o := range others {
		if !p.Error && (len(o.Then) > 1 || failing(o.Then)) {
			continue
		}
		if len(best) == 0 || o.errors < best[0].errors || o.errors == best[0].errors && len(o.Then) < len(best[0].Then) {
			best = []outcome{o}
		}
	}
	return best
}

// follow works the box out as changed, at the ends of the ranges.
func (l *layout) follow(p Problem, r Remedy) outcome {
	out := outcome{Remedy: Remedy{Changes: r.Changes}, ended: true}
	before := counted(l.problems)
	for _, lengths := range l.tried(r) {
		t := l.changed(r, lengths)
		now := counted(t.problems)
		if now[p.about()] >= before[p.about()] {
			return outcome{}
		}
		if out.trial == nil {
			out.trial = t
		}
		errors := 0
		for _, q := range t.problems {
			if q.Error {
				errors++
			}
		}
		out.errors = max(out.errors, errors)
		out.brings(before, t.problems)
		for _, row := range l.fellows {
			if out.right() {
				out.brings(counted(row.problems), row.changed(r, lengths).problems)
			}
		}
	}
	return out
}

// tried are the lengths with which a remedy is followed: the ends of its ranges. A fenced
// cutter's width is the pitch of a box joint's rows, whose number and rest come and go
// between two ends: there it is every step of the grid as well, or mostSteps of them.
func (l *layout) tried(r Remedy) [][]float64 {
	all := r.Ends()
	for i, c := range r.Changes {
		if c.Field != FieldCutter || l.Joint != BoxJoint || !l.Cutter.Kind.Fenced() || len(c.ends()) < 2 {
			continue
		}
		step := math.Max(l.grid(), (c.Max-c.Min)/mostSteps)
		for v := c.Min + step; v < c.Max-settle; v += step {
			between := slices.Clone(all[0])
			between[i] = v
			all = append(all, between)
		}
	}
	return all
}

const mostSteps = 100

// grid is the step in which lengths are printed.
func (l *layout) grid() float64 { return geom.Length(1).RoundUp(l.Units).MM() }

// brings notes what was not said before.
func (o *outcome) brings(before map[[2]string]int, after []Problem) {
	now := counted(after)
	for _, q := range after {
		if about := q.about(); now[about] > before[about] && !slices.ContainsFunc(o.Then, func(p Problem) bool { return p.about() == about }) {
			q.Remedies, q.Hint = nil, ""
			o.Then = append(o.Then, q)
		}
	}
}

// changed is the box worked out with a remedy's changes.
func (l *layout) changed(r Remedy, lengths []float64) *layout {
	t := newLayout(r.Follow(l.asked, lengths))
	t.checked = l.checked
	t.work()
	l.checked = t.checked
	return t
}

// tries is in how many steps a range that does not hold all over is searched.
const tries = 6

// narrower is the longest part of a range, if any, within which a change holds: on the
// grid on which it is printed. An open range is followed away from its end.
func (l *layout) narrower(p Problem, c Change) (Change, bool) {
	from, to := c.Min, c.Max
	switch {
	case c.Min == c.Max:
		return c, false
	case math.IsInf(to, 1):
		to = 1.5 * from
	case from == 0:
		from = to / 2
	}
	var best, run []float64
	steps := tries
	if c.Field == FieldCutter && l.Joint == BoxJoint && l.Cutter.Kind.Fenced() {
		steps = int(min(mostSteps, max(tries, math.Round((to-from)/l.grid()))))
	}
	for i := range steps + 1 {
		v := from + float64((to-from)*float64(i)/float64(steps))
		if i < steps {
			v = geom.LengthOf(v).RoundUp(l.Units).MM()
		} else {
			v = geom.LengthOf(v).RoundDown(l.Units).MM()
		}
		one := c
		one.Min, one.Max = v, v
		if l.follow(p, Remedy{Changes: []Change{one}}).right() {
			run = append(run, v)
		} else {
			run = nil
		}
		if len(run) > len(best) {
			best = slices.Clone(run)
		}
	}
	if len(best) == 0 {
		return c, false
	}
	c.Min, c.Max = best[0], best[len(best)-1]
	return c, true
}

// about tells problems apart: those of one code about one part are counted.
func (p Problem) about() [2]string { return [2]string{p.Code, p.Part} }

func counted(list []Problem) map[[2]string]int {
	n := make(map[[2]string]int)
	for _, p := range list {
		n[p.about()]++
	}
	return n
}

func failing(list []Problem) bool {
	return slices.ContainsFunc(list, func(p Problem) bool { return p.Error })
}
