package sheets

import (
	"cmp"
	"context"
	"slices"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom/breakdown"
	"drawerwright/geom/nest"
)

// Choice is a layout that costs as little as the least that was found, by what is preferred, and what it is like at
// the saw.
type Choice struct {
	Prefer                         string
	Sheets, Settings, Cuts, Stages int
	Seconds                        int
	Offcut                         nest.Offcut // the largest that is kept, none without
	Taken                          bool
}

// preferences are the orders in which layouts of one cost are taken.
var preferences = []struct {
	name string
	of   func(a, b Choice) int
}{
	{job.PreferSettings, func(a, b Choice) int {
		return cmp.Or(a.Settings-b.Settings, a.larger(b), a.Seconds-b.Seconds)
	}},
	{job.PreferTime, func(a, b Choice) int { return cmp.Or(a.Seconds-b.Seconds, a.larger(b)) }},
	{job.PreferOffcut, func(a, b Choice) int { return cmp.Or(a.larger(b), a.Seconds-b.Seconds) }},
}

// larger compares the largest offcuts, the larger first.
func (c Choice) larger(than Choice) int {
	area := func(c Choice) float64 { return float64(c.Offcut.Length) * float64(c.Offcut.Width) }
	return cmp.Compare(area(than), area(c))
}

// fewStages are those of the layouts that are tried beside the one of any number, for each way in which first cuts may
// run: they come apart with fewer turns, and in the way that fence and sled take.
var fewStages = [...]int{0, 2, 3}

// triedEffort is how long each of them is searched for: one that costs as little is soon found.
const triedEffort = Effort / 4

// mostTried is how many different pieces are laid out again; of more, each layout takes its time.
const mostTried = 300

// choose takes, of layouts that cost no more than the least that was found, the one that is preferred, where a saw
// takes the sheets apart and is free to do so in any number of stages.
func (s *Stock) choose(ctx context.Context, o Search, least nest.Layout) error {
	if s.Routed || s.Rules.Method != nest.Guillotine || s.Rules.Stages > 0 || len(s.Pieces) > mostTried {
		s.first = s.Rules.First
		return s.take(least)
	}
	o.Effort, o.Progress = triedEffort, nil
	var stocks []Stock
	var choices []Choice
	for i, l := range append([]began{{least, s.Rules.First}}, s.tried(ctx, o, least)...) {
		t := *s
		t.Laid, t.first = nil, l.first
		if err := t.take(l.Layout); err != nil {
			if i == 0 {
				return err
			}
			continue
		}
		stocks, choices = append(stocks, t), append(choices, t.choice())
	}
	best := 0
	var list []Choice
	for _, p := range preferences {
		at := 0
		for i := range choices {
			if p.of(choices[i], choices[at]) < 0 {
				at = i
			}
		}
		c := choices[at]
		c.Prefer = p.name
		if p.name == cmp.Or(s.Prefer, job.PreferSettings) {
			best, c.Taken = at, true
		}
		list = append(list, c)
	}
	*s = stocks[best]
	taken := list[slices.IndexFunc(list, func(c Choice) bool { return c.Taken })]
	if slices.ContainsFunc(list, func(c Choice) bool { return !c.like(taken) }) {
		s.Choices = list
	}
	return nil
}

// like reports whether two layouts are alike but for what they are preferred by.
func (c Choice) like(as Choice) bool {
	c.Prefer, c.Taken, as.Prefer, as.Taken = "", false, "", false
	c.Offcut.X, c.Offcut.Y, as.Offcut.X, as.Offcut.Y = 0, 0, 0, 0
	return c == as
}

// began is a layout with how its first cuts run.
type began struct {
	nest.Layout
	first nest.First
}

// tried are layouts in few stages, their first cuts along a sheet or across it, that leave no more pieces and cost no
// more than the least.
func (s *Stock) tried(ctx context.Context, o Search, least nest.Layout) (list []began) {
	for _, first := range [...]nest.First{nest.FirstAlongX, nest.FirstAlongY} {
		for _, n := range fewStages {
			r := s.Rules
			if r.First != nest.FirstAny && (r.First != first || n == r.Stages) {
				continue // the least is of these rules
			}
			r.First, r.Stages = first, n
			l, err := o.lay(ctx, s.Pieces, s.Sheets, r)
			if err != nil || l.Missing() > least.Missing() || l.Cost > least.Cost || l.Count > least.Count {
				continue
			}
			// What is known of any layout is known of it too.
			l.LowerBound, l.MinSheets, l.Completed = least.LowerBound, least.MinSheets, least.Completed
			list = append(list, began{l, first})
		}
	}
	return list
}

// choice is what the layout that was taken is like at the saw.
func (s *Stock) choice() Choice {
	c := Choice{Sheets: len(s.Layout.Sheets), Settings: breakdown.Settings(s.Cuts), Stages: breakdown.Stages(s.Cuts),
		Seconds: breakdown.Seconds(s.Cuts)}
	for _, k := range s.Cuts {
		c.Cuts += k.Count
	}
	for _, one := range s.Laid {
		for _, o := range one.Offcuts {
			if (Choice{Offcut: o}).larger(c) < 0 {
				c.Offcut = o
			}
		}
	}
	return c
}
