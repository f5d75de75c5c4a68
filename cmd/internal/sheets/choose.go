package sheets

import (
	"cmp"
	"context"
	"slices"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom/breakdown"
	"drawerwright/geom/nest"
	"drawerwright/geom/sheet"
)

// Choice is a layout that can be cut, what it is the best by, and what it is like at the saw.
type Choice struct {
	Prefer                                []string // the words of the job file that take it
	Sheets, Settings, Cuts, Turns, Stages int
	Cost                                  float64
	Seconds                               int
	Offcut                                nest.Offcut // the largest that is kept, none without
	Taken                                 bool
	missing, bought                       int
}

// preference is an order in which layouts are taken.
type preference struct {
	name string
	of   func(a, b Choice) int
}

// preferences are those among layouts that cost as little. Of the rest, fewer turns of boards come first.
var preferences = []preference{
	{job.PreferSettings, func(a, b Choice) int {
		return cmp.Or(a.Settings-b.Settings, a.Turns-b.Turns, a.larger(b), a.Seconds-b.Seconds)
	}},
	{job.PreferTime, func(a, b Choice) int { return cmp.Or(a.Seconds-b.Seconds, a.Turns-b.Turns, a.larger(b)) }},
	{job.PreferOffcut, func(a, b Choice) int { return cmp.Or(a.larger(b), a.Turns-b.Turns, a.Seconds-b.Seconds) }},
}

// compare puts layouts in order by the pieces that they leave, what they cost, and their sheets.
func (c Choice) compare(with Choice) int {
	return cmp.Or(c.missing-with.missing, cmp.Compare(c.Cost, with.Cost), c.bought-with.bought)
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

// choose takes, of layouts that cost as little as the least that was found, or a sheet more where that is worth it, the
// one that is preferred, where a saw takes the sheets apart and is free to do so in any number of stages.
func (s *Stock) choose(ctx context.Context, o Search, least nest.Layout) error {
	if s.Routed || s.Rules.Method != nest.Guillotine || s.Rules.Stages > 0 || len(s.Pieces) > mostTried {
		s.first = s.Rules.First
		return s.take(least)
	}
	o.Effort, o.Progress = triedEffort, nil
	var stocks []Stock
	var choices []Choice
	for i, l := range append([]began{{least, s.Rules.First}}, s.tried(ctx, o, least)...) {
		for _, squared := range [...]bool{false, true} {
			t := *s
			t.Laid, t.first, t.squared = nil, l.first, squared
			if err := t.take(l.Layout); err != nil {
				if i == 0 {
					return err
				}
				break
			}
			stocks, choices = append(stocks, t), append(choices, t.choice())
		}
	}
	list := listed(choices, cmp.Or(s.Prefer, job.PreferSettings))
	at := slices.IndexFunc(list, func(n int) bool { return choices[n].Taken })
	*s = stocks[list[at]]
	if len(list) > 1 {
		for _, n := range list {
			s.Choices = append(s.Choices, choices[n])
		}
	}
	return nil
}

// listed are the places of the layouts from which there is to choose, each of which is the best by a preference; the
// one by the word that is given is taken.
func listed(choices []Choice, word string) (list []int) {
	best := func(of func(a, b Choice) int, may func(Choice) bool) int {
		at := -1
		for i, c := range choices {
			if may(c) && (at < 0 || of(c, choices[at]) < 0) {
				at = i
			}
		}
		return at
	}
	add := func(word string, at int) {
		if !slices.Contains(list, at) {
			list = append(list, at)
		}
		choices[at].Prefer = append(choices[at].Prefer, word)
	}
	least := slices.MinFunc(choices, Choice.compare)
	cheap := func(c Choice) bool { return c.compare(least) <= 0 }
	for _, p := range preferences {
		add(p.name, best(p.of, cheap))
	}
	quick := preferences[1]
	quickest := choices[best(quick.of, cheap)]
	more := best(quick.of, func(c Choice) bool {
		saved := quickest.Seconds - c.Seconds
		return c.missing == least.missing && c.bought == least.bought+1 && saved >= sheet.WorthSheet
	})
	switch {
	case more >= 0:
		add(job.PreferSheet, more)
	case word == job.PreferSheet:
		word = quick.name
	}
	for _, n := range list {
		choices[n].Taken = slices.Contains(choices[n].Prefer, word)
	}
	return list
}

// began is a layout with how its first cuts run.
type began struct {
	nest.Layout
	first nest.First
}

// tried are layouts in few stages, their first cuts along a sheet or across it.
func (s *Stock) tried(ctx context.Context, o Search, least nest.Layout) (list []began) {
	for _, first := range [...]nest.First{nest.FirstAlongX, nest.FirstAlongY} {
		for _, n := range fewStages {
			r := s.Rules
			if r.First != nest.FirstAny && (r.First != first || n == r.Stages) {
				continue // the least is of these rules
			}
			r.First, r.Stages = first, n
			l, err := o.lay(ctx, s.Pieces, s.Sheets, r)
			if err != nil {
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
	c := Choice{Sheets: len(s.Layout.Sheets), Settings: breakdown.Settings(s.Cuts), Turns: breakdown.Turns(s.Cuts),
		Stages: breakdown.Stages(s.Cuts), Seconds: s.Times.Seconds(s.Cuts), Cost: s.Layout.Cost,
		missing: s.Layout.Missing(), bought: s.Layout.Count}
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
