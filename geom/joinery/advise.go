package joinery

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// What a check thinks would help are candidates: a change may end one complaint and
// raise another, in a part of the box of which the check knows nothing. So when a box
// has been judged, each candidate is tried: the changed box is worked out, and the
// candidate is named only if the complaint is gone and nothing new has come. A range
// that does not hold at its ends is narrowed to where it does; where no change will do
// by itself, two are tried together.

// maxWays is how many ways a hint names: more are not read.
const maxWays = 3

// outcome is what following a remedy comes to.
type outcome struct {
	geom.Remedy
	ended  bool             // the complaint, at all ends of the ranges
	errors int              // left, at most
	trial  []geom.Diagnosis // at the first of these ends
}

// right reports whether the complaint is gone and nothing new has come.
func (o outcome) right() bool { return o.ended && len(o.Then) == 0 }

// advise tries the candidates of every problem, and keeps those that hold.
func (l *layout) advise() {
	for i := range l.problems {
		p := &l.problems[i]
		found := l.ways(*p)
		p.Remedies = nil
		for _, o := range found[:min(len(found), maxWays)] {
			p.Remedies = append(p.Remedies, o.Remedy)
		}
	}
}

// ways are the candidates of a problem that hold, with the fewest errors left beside:
// an error keeps the box from being judged further, and would hide what a change breaks.
func (l *layout) ways(p geom.Diagnosis) []outcome {
	var right, others []outcome
	for _, r := range p.Remedies {
		if len(r.Changes) == 0 || !l.forPlanned(r) || slices.ContainsFunc(right, func(o outcome) bool { return r.Includes(o.Remedy) }) {
			continue
		}
		if o := l.narrowed(p, r); slices.ContainsFunc(o.Changes, func(c geom.Change) bool { return !l.toBeHad(c) }) {
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

// forPlanned reports whether a remedy keeps the size of a box that follows from its opening.
func (l *layout) forPlanned(r geom.Remedy) bool { return !l.Planned || !r.Writes(SettingOutside) }

// narrowed follows a remedy all over its range, or where in it that holds.
func (l *layout) narrowed(p geom.Diagnosis, r geom.Remedy) outcome {
	all := l.follow(p, r)
	if all.right() || len(r.Changes) > 1 || r.Changes[0].Word != "" || r.Changes[0].Count > 0 {
		return all
	}
	if c, ok := l.narrower(p, r.Changes[0]); ok {
		return l.follow(p, geom.Remedy{Changes: []geom.Change{c}})
	}
	return all
}

// pairs are two changes together: one that ends the complaint, at one end of its range,
// and one that ends what it brings.
func (l *layout) pairs(p geom.Diagnosis, others []outcome) []outcome {
	for _, o := range others {
		if len(o.Changes) > 1 {
			continue
		}
		first := o.Changes[0]
		first.Min = o.Ends()[0][0]
		first.Max = first.Min
		for _, q := range o.trial {
			for _, r := range q.Remedies {
				both := geom.Remedy{Changes: []geom.Change{first}}.With(r)
				if len(r.Changes) != 1 || !l.forPlanned(r) || !l.toBeHad(first) || !l.toBeHad(r.Changes[0]) || r.Includes(geom.Remedy{Changes: []geom.Change{first}}) || both.Repeats() {
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

// announced is the way that brings least, with what that is. For the sake of a warning
// nothing may be worse than it was.
func (l *layout) announced(p geom.Diagnosis, others []outcome) []outcome {
	var best []outcome
	for _, o := range others {
		if !p.IsError() && (len(o.Then) > 1 || geom.AnyError(o.Then)) {
			continue
		}
		if len(best) == 0 || o.errors < best[0].errors || o.errors == best[0].errors && len(o.Then) < len(best[0].Then) {
			best = []outcome{o}
		}
	}
	return best
}

// follow works the box out as changed, at the ends of the ranges.
func (l *layout) follow(p geom.Diagnosis, r geom.Remedy) outcome {
	out := outcome{Remedy: geom.Remedy{Changes: r.Changes}, ended: true}
	before := geom.Topics(l.problems)
	for n, lengths := range l.tried(r) {
		after := l.changed(r, lengths)
		now := geom.Topics(after)
		if now[p.Topic()] >= before[p.Topic()] {
			return outcome{}
		}
		if n == 0 {
			out.trial = after
		}
		errors := 0
		for _, q := range after {
			if q.IsError() {
				errors++
			}
		}
		out.errors = max(out.errors, errors)
		out.brings(before, after)
		for _, row := range l.fellows {
			if out.right() {
				out.brings(geom.Topics(row.problems), row.changed(r, lengths))
			}
		}
	}
	return out
}

// tried are the lengths with which a remedy is followed: the ends of its ranges, and of a box joint,
// whose rows come and go between two ends, lengths between them as well.
func (l *layout) tried(r geom.Remedy) [][]float64 {
	all := r.Ends()
	if l.Joint != BoxJoint {
		return all
	}
	for i, c := range r.Changes {
		if len(c.Ends()) < 2 {
			continue
		}
		for _, v := range l.rowChanges(c) {
			between := slices.Clone(all[0])
			between[i] = v
			all = append(all, between)
		}
	}
	return all
}

// rowChanges are lengths within the range of a change, each with other rows of a box joint where
// there are such: the width of a fenced cutter is their pitch, a router's fingers divide the height.
func (l *layout) rowChanges(c geom.Change) (list []float64) {
	steps := 2.0 * tries
	switch {
	case c.Setting == SettingFingerWidth && !l.Cutter.Kind.Fenced():
		for rows := 3.0; rows < maxSteps && l.wallHeight()/rows > c.Min; rows += 2 {
			if v := l.wallHeight() / rows; v < c.Max {
				list = append(list, v)
			}
		}
		return list
	case c.Setting == SettingCutter && l.Cutter.Kind.Fenced():
		steps = maxSteps
	}
	step := (c.Max - c.Min) / steps
	for v := c.Min + step; v < c.Max-settle; v += step {
		list = append(list, v)
	}
	return list
}

const maxSteps = 100

// grid is the step in which lengths are printed: what a micrometer, which is less, is rounded up to.
func (l *layout) grid() float64 { return geom.LengthOf(0.001).RoundUp(l.Units).MM() }

// brings notes what was not said before.
func (o *outcome) brings(before map[geom.Topic]int, after []geom.Diagnosis) {
	now := geom.Topics(after)
	for _, q := range after {
		if about := q.Topic(); now[about] > before[about] && !slices.ContainsFunc(o.Then, func(p geom.Diagnosis) bool { return p.Topic() == about }) {
			q.Remedies, q.Ask = nil, geom.Sentence{}
			o.Then = append(o.Then, q)
		}
	}
}

// changedBox is what is said of a box with changes, a length for each.
type changedBox struct {
	changes  []geom.Change
	lengths  []float64
	problems []geom.Diagnosis
}

// is reports whether a box has these changes: their ranges say only which lengths are tried.
func (b changedBox) is(changes []geom.Change, lengths []float64) bool {
	return slices.Equal(b.lengths, lengths) && slices.EqualFunc(b.changes, changes, func(c, d geom.Change) bool {
		c.Min, c.Max, d.Min, d.Max = 0, 0, 0, 0
		return c == d
	})
}

// changed is what is said of the box with a remedy's changes. It is kept where the box has fellows,
// which mostly have the same problems and ask for the same changes.
func (l *layout) changed(r geom.Remedy, lengths []float64) []geom.Diagnosis {
	for _, b := range l.changes {
		if b.is(r.Changes, lengths) {
			return b.problems
		}
	}
	t := newLayout(Follow(l.asked, r, lengths))
	t.checked, t.trial = l.checked, true
	t.work()
	l.checked = t.checked
	if len(l.fellows) > 0 {
		l.changes = append(l.changes, changedBox{r.Changes, lengths, t.problems})
	}
	return t.problems
}

// tries is in how many steps a range that does not hold all over is searched.
const tries = 6

// narrower is the longest part of a range, if any, within which a change holds: on the
// grid on which it is printed. An open range is followed away from its end.
func (l *layout) narrower(p geom.Diagnosis, c geom.Change) (geom.Change, bool) {
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
	if c.Setting == SettingCutter && l.Joint == BoxJoint && l.Cutter.Kind.Fenced() {
		steps = int(min(maxSteps, max(tries, math.Round((to-from)/l.grid()))))
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
		if l.follow(p, geom.Remedy{Changes: []geom.Change{one}}).right() {
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
