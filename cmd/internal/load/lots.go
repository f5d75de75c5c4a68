package load

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/advice"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/nest"
	"drawerwright/geom/setup"
	"drawerwright/geom/sheet"
)

// codeLots is the code of what is to be said of the lots of measured sheets.
const codeLots geom.Code = "lots"

// lotEffort is how long is searched for how many sheets some boxes take, often.
const lotEffort = 1

// mostBoxes is more than come from as many sheets as readings are taken of.
const mostBoxes = 10_000

// sortSheets puts the measured sheets of a job into lots, stock by stock. Where that does not do, its sheets are
// taken as they come; either is said.
func (l *Loaded) sortSheets(ctx context.Context) {
	if l.Job == nil || l.Failed() {
		return
	}
	asCome, written := l.Job, job.Sorted{Lots: map[string][][]int{}, Shares: l.Job.WholeShares()}
	var notes job.Problems
	for _, stock := range asCome.Stocks {
		if len(asCome.Sheets.Of[stock.Name].Measured) == 0 {
			continue
		}
		s := sorter{ctx: ctx, file: asCome, stock: stock.Name, before: l.Job, sorted: written,
			tried: make(map[[2]int][]foreseen)}
		now, problems, saved, note := s.sort()
		if ctx.Err() != nil { // nobody waits for lots, nor for what is to be said of them
			return
		}
		if now != nil {
			l.Job, l.Problems, written = now, problems, s.sorted
			l.Saved = append(l.Saved, saved)
		}
		notes = append(notes, asCome.StockProblem(stock.Name, "readings-per-sheet", note))
	}
	l.Problems = append(l.Problems, notes...)
	l.sort()
}

// sorter puts the sheets of one stock into lots.
type sorter struct {
	ctx    context.Context
	file   *job.Job // as it is written
	stock  string
	before *job.Job   // with the stocks that were sorted before
	sorted job.Sorted // what before is
	strict bool       // see serves
	tried  map[[2]int][]foreseen
	order  []job.MeasuredSheet // by thickness
	boxes  []int               // the share of each
	come   []foreseen          // the drawers of before, its sheets as they come
}

// foreseen is what the boxes of a drawer come out as.
type foreseen struct {
	count int
	right fit.Odds
	weak  map[joinery.CheckID]bool // that leave their limits
	setup joinery.Setup            // as it is printed
}

// foresee works out what the boxes of a job come out as; false where some cannot be made.
func foresee(j *job.Job) (list []foreseen, sound bool) {
	boxes, sound := batch.Boxes(j, advice.NewMemory())
	for _, b := range boxes {
		one := foreseen{b.Spec.Count, b.Outcome.Right, make(map[joinery.CheckID]bool),
			setup.Key(b.Setup, b.Spec.Units.Step())}
		for _, m := range b.Outcome.Measures {
			if m.OutOfLimits() {
				one.weak[m.CheckID] = true
			}
		}
		list = append(list, one)
	}
	return list, sound
}

// sort gives the job with its sheets in lots, nil where they stay as they come, and what to say of that.
func (s *sorter) sort() (j *job.Job, problems job.Problems, saved string, note geom.Diagnosis) {
	s.order = slices.Clone(s.file.Sheets.Of[s.stock].Measured)
	slices.SortStableFunc(s.order, func(a, b job.MeasuredSheet) int {
		return cmp.Compare(a.Thickness.Mean, b.Thickness.Mean)
	})
	for i, share := range s.sorted.Shares {
		if s.file.Uses(share.Entry, s.stock) && len(s.boxes) <= mostBoxes {
			s.boxes = append(s.boxes, slices.Repeat([]int{i}, share.Count)...)
		}
	}
	var sound bool
	s.come, sound = foresee(s.before)
	need, known := s.need()
	if !sound || !known || len(s.boxes) > mostBoxes {
		return nil, nil, "", s.said("its sheets are taken as they come: the boxes cannot be made and laid out")
	}
	for _, s.strict = range []bool{true, false} {
		for more := range 3 { // a search for all of a job can need a sheet more
			lots := sheet.Sorting{Sheets: len(s.order), Boxes: len(s.boxes), Serves: s.serves, Cost: s.cost,
				Need: func(from, to int) int { return need(from, to) + more }}.Lots()
			if lots == nil {
				break
			}
			sorted := s.with(lots)
			j, problems := s.file.InLots(sorted)
			if problems.Failed() || !holds(s.ctx, j) {
				continue
			}
			now, sound := foresee(j)
			if sound && right(now).Fraction >= right(s.come).Fraction {
				saved, note = s.saves(now, sorted, lots)
				s.sorted = sorted
				return j, problems, saved, note
			}
		}
	}
	note = s.said("its sheets are taken as they come: no lots of them hold all boxes and bring as many out right")
	note.Ask = geom.Sentencef("measure more sheets, and write their readings too")
	return nil, nil, "", note
}

// said is a note on the stock.
func (s *sorter) said(format string, args ...any) geom.Diagnosis {
	return geom.Diagnosis{Code: codeLots, Level: geom.LevelNote,
		Fact: geom.Sentencef("%s: %s", s.stock, fmt.Sprintf(format, args...))}
}

// with adds lots of the stock: the boxes of a share may come from several.
func (s *sorter) with(lots []sheet.Lot) job.Sorted {
	out := job.Sorted{Lots: map[string][][]int{}}
	for stock, l := range s.sorted.Lots {
		out.Lots[stock] = l
	}
	from := 0
	counts := make([]map[int]int, len(s.sorted.Shares)) // of each share, how many of each lot
	for i, l := range lots {
		var places []int
		for _, one := range s.order[l.From:l.To] {
			places = append(places, one.Number-1)
		}
		out.Lots[s.stock] = append(out.Lots[s.stock], places)
		for _, share := range s.boxes[from : from+l.Boxes] {
			if counts[share] == nil {
				counts[share] = map[int]int{}
			}
			counts[share][i]++
		}
		from += l.Boxes
	}
	for i, share := range s.sorted.Shares {
		if counts[i] == nil {
			out.Shares = append(out.Shares, share)
		}
		for lot := range lots {
			if n := counts[i][lot]; n > 0 {
				one := job.Share{Entry: share.Entry, Count: n, Of: map[string]int{s.stock: lot}}
				for stock, of := range share.Of {
					one.Of[stock] = of
				}
				out.Shares = append(out.Shares, one)
			}
		}
	}
	return out
}

// trial is what all boxes come out as from one lot: the sheets by thickness from one to before another; nil where they
// cannot be made.
func (s *sorter) trial(from, to int) []foreseen {
	at := [2]int{from, to}
	if list, known := s.tried[at]; known || s.ctx.Err() != nil {
		return list
	}
	j, problems := s.file.InLots(s.with([]sheet.Lot{{From: from, To: to, Boxes: len(s.boxes)}}))
	if !problems.Failed() {
		if list, sound := foresee(j); sound && len(list) == len(s.come) {
			s.tried[at] = list
		}
	}
	return s.tried[at]
}

// serves reports whether one setting serves all boxes from some sheets: strictly, no fewer of any come out right than
// from sheets as they come; and no measure leaves its limits that each of the sheets keeps by itself. Where one does
// not keep it, no more boxes come out wrong than a shop notices.
func (s *sorter) serves(from, to int) bool {
	list := s.trial(from, to)
	for i, b := range list {
		if s.strict && b.right.Fraction < s.come[i].right.Fraction {
			return false
		}
		if len(b.weak) == 0 {
			continue
		}
		weak, least := make(map[joinery.CheckID]bool), 1.0
		for n := from; n < to; n++ {
			one := s.trial(n, n+1)
			if one == nil {
				return false
			}
			least = min(least, one[i].right.Fraction)
			maps.Copy(weak, one[i].weak)
		}
		if b.right.Fraction < least-advice.Noticeable {
			return false
		}
		for id := range b.weak {
			if !weak[id] {
				return false
			}
		}
	}
	return list != nil
}

// cost is how many of 1,000 boxes come out wrong from some sheets, and then how much these differ, in m.
func (s *sorter) cost(from, to int) float64 {
	t := s.thickness(from, to)
	return math.Round(1000-1000*right(s.trial(from, to)).Fraction) + (t.Max-t.Min)/1000
}

// thickness is between which thicknesses the sheets from one to before another are.
func (s *sorter) thickness(from, to int) geom.Interval {
	t := geom.Interval{Min: math.Inf(1), Max: math.Inf(-1)}
	for _, one := range s.order[from:to] {
		t.Min, t.Max = min(t.Min, one.Thickness.Min), max(t.Max, one.Thickness.Max)
	}
	return t
}

// need says how many sheets some of the boxes take; false where that cannot be known.
func (s *sorter) need() (ask func(from, to int) int, known bool) {
	plan, sound := laidOut(s.ctx, s.before, sheets.Search{Options: nest.Options{Effort: lotEffort}})
	at := slices.IndexFunc(plan.Stocks, func(k sheets.Stock) bool { return k.Name == s.stock })
	if !sound || at < 0 {
		return nil, false
	}
	k, share := &plan.Stocks[at], s.shareOf()
	size := slices.Clone(k.Sheets)
	for i := range size {
		size[i].Count = 0
	}
	return func(from, to int) int {
		counts := make(map[int]int)
		for _, share := range s.boxes[from:to] {
			counts[share]++
		}
		pieces := slices.Clone(k.Pieces)
		for i := range pieces {
			pieces[i].Count = 0
			for _, p := range k.Parts[i] {
				of := share[p.Drawer]
				if n := counts[of]; n > 0 {
					pieces[i].Count += (p.Quantity-p.Spares)/s.sorted.Shares[of].Count*n + p.Spares
				}
			}
		}
		l, err := nest.Lay(s.ctx, pieces, size, k.Rules, nest.Options{Effort: lotEffort})
		if err != nil || l.Missing() > 0 {
			return len(s.order) + 1
		}
		return l.Count
	}, true
}

// shareOf is the share of each drawer, by its name: a share has as many as its entry makes.
func (s *sorter) shareOf() map[string]int {
	shares, of := make(map[int]int), make(map[string]int)
	drawers := make(map[int]int)
	for _, share := range s.sorted.Shares {
		shares[share.Entry]++
	}
	for _, d := range s.before.Drawers {
		drawers[d.Entry()]++
	}
	at := 0
	for i, share := range s.sorted.Shares {
		for range drawers[share.Entry] / shares[share.Entry] {
			of[s.before.Drawers[at].Name] = i
			at++
		}
	}
	return of
}

// laidOut is the layout of a job; false where it cannot be built.
func laidOut(ctx context.Context, j *job.Job, o sheets.Search) (sheets.Plan, bool) {
	b, found := batch.Bare(j)
	if slices.ContainsFunc(found, func(p batch.Problem) bool { return p.IsError() }) {
		return sheets.Plan{}, false
	}
	plan, err := sheets.Of(ctx, b, nil, o)
	return plan, err == nil
}

// holds reports whether the sheets of a job hold all its parts.
func holds(ctx context.Context, j *job.Job) bool {
	plan, sound := laidOut(ctx, j, sheets.Search{})
	return sound && !slices.ContainsFunc(plan.Stocks, func(k sheets.Stock) bool { return k.Remaining() > 0 })
}

// saves says what lots save against a setting for each sheet, and against sheets as they come; and which sheets are
// of which lot.
func (s *sorter) saves(now []foreseen, sorted job.Sorted, lots []sheet.Lot) (said string, note geom.Diagnosis) {
	var which []string
	var alone []foreseen
	for i, l := range lots {
		var numbers []string
		for n, one := range s.order[l.From:l.To] {
			numbers = append(numbers, fmt.Sprint(one.Number))
			alone = append(alone, s.trial(l.From+n, l.From+n+1)...)
		}
		name := ""
		if len(lots) > 1 {
			name = " as " + sorted.StockName(s.stock, i)
		}
		t := s.thickness(l.From, l.To)
		which = append(which, fmt.Sprintf("no. %s%s, %s to %s", words.And(numbers), name,
			geom.LengthOf(t.Min).Number(s.file.Units), geom.LengthOf(t.Max).Text(s.file.Units)))
	}
	said = fmt.Sprintf("%s is cut in %s at %s", s.stock, words.Count(len(lots), "lot", "lots"),
		words.Count(settings(now), "setting", "settings"))
	if n := settings(alone); n > settings(now) {
		said += fmt.Sprintf(", where each sheet by itself would take %d", n)
	}
	said += fmt.Sprintf("; %s, %s with sheets as they come", right(now), right(s.come).Spoken())
	note = geom.Diagnosis{Code: codeLots, Level: geom.LevelNote,
		Fact: geom.Sentencef("%s; of its %d sheets, in the order of the readings, cut %s", said, len(s.order),
			strings.Join(which, "; ")),
		Ask: geom.Sentencef("write the numbers on the sheets, and keep each lot together")}
	return said + ".", note
}

// settings is how many settings boxes take.
func settings(list []foreseen) int {
	return len(setup.Together(list, func(b foreseen) joinery.Setup { return b.setup }))
}

// right is how many boxes come out right.
func right(list []foreseen) fit.Odds {
	all, sum := 0, fit.Odds{Certain: true}
	for _, b := range list {
		all += b.count
		sum.Fraction += float64(b.right.Fraction * float64(b.count))
		sum.Certain = sum.Certain && b.right.Certain
	}
	sum.Fraction /= float64(max(all, 1))
	return sum
}
