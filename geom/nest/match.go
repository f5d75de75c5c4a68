package nest

import (
	"cmp"
	"context"
	"slices"
)

// mostMatched are the sheets among which batches are chosen.
const mostMatched = 64

// mostChoices is how many layouts are made to choose batches; beyond that they are
// chosen one after the other.
const mostChoices = 16

// matched lays pieces out with each group of those that match on sheets of one batch.
func matched(ctx context.Context, pieces []Piece, sheets []Sheet, r Rules, o Options) (Layout, error) {
	var groups []int
	var batches []string
	area := make(map[int]float64)
	for _, p := range pieces {
		if p.Match > 0 && p.Count > 0 {
			if area[p.Match] == 0 {
				groups = append(groups, p.Match)
			}
			area[p.Match] += float64(p.Length) * float64(p.Width) * float64(p.Count)
		}
	}
	for _, s := range sheets {
		if !slices.Contains(batches, s.Batch) {
			batches = append(batches, s.Batch)
		}
	}
	if len(groups) == 0 || len(batches) < 2 {
		return solve(ctx, pieces, sheets, nil, r, o), nil
	}
	if len(sheets) > mostMatched {
		return Layout{}, &Problem{-1, -1, "pieces that match can be laid out on up to 64 sizes of sheet"}
	}
	slices.SortStableFunc(groups, func(a, b int) int { return cmp.Compare(area[b], area[a]) })
	chosen := make(map[int]string)
	try := func(effort int) Layout {
		only := make([]sizeSet, len(pieces))
		for i, p := range pieces {
			batch, known := chosen[p.Match]
			if p.Match <= 0 || !known {
				continue
			}
			for n, s := range sheets {
				if s.Batch == batch {
					only[i] |= 1 << n
				}
			}
		}
		o.Effort = max(effort, 1)
		return solve(ctx, pieces, sheets, only, r, o)
	}
	effort := cmp.Or(o.Effort, DefaultEffort)
	choices := 1
	for range groups {
		if choices *= len(batches); choices > mostChoices {
			break
		}
	}
	// What no layout can do without, whichever batches are chosen.
	w := begin(pieces, sheets, nil, r)
	least := w.least()
	bound := func(l Layout) Layout {
		if slices.Max(l.Left) == 0 {
			l.Least, l.Fewest = least*w.price, w.fewest(least)
		}
		return l
	}
	if choices > mostChoices {
		each := effort / (len(groups)*len(batches) + 1)
		for _, g := range groups {
			choose(chosen, g, batches, func() Layout { return try(each) })
		}
		return bound(try(each)), nil
	}
	var best Layout
	found := false
	var all func(n int)
	all = func(n int) {
		if n < len(groups) {
			for _, b := range batches {
				chosen[groups[n]] = b
				all(n + 1)
			}
			return
		}
		if l := try(effort / choices); !found || better(l, best) {
			best, found = l, true
		}
	}
	all(0)
	return bound(best), nil
}

// choose takes for a group the batch with which the layout is best.
func choose(chosen map[int]string, group int, batches []string, try func() Layout) {
	var best Layout
	at := -1
	for i, b := range batches {
		chosen[group] = b
		if l := try(); at < 0 || better(l, best) {
			best, at = l, i
		}
	}
	chosen[group] = batches[at]
}

// better tells which of two layouts leaves fewer pieces, or else costs less.
func better(a, b Layout) bool {
	left := func(l Layout) (n int) {
		for _, v := range l.Left {
			n += v
		}
		return n
	}
	if x, y := left(a), left(b); x != y {
		return x < y
	}
	return a.Cost < b.Cost
}

// mixed finds a group of pieces that match and lie on sheets of two batches.
func mixed(l Layout, pieces []Piece, sheets []Sheet) (piece int, found bool) {
	batch := make(map[int]string)
	for _, s := range l.Sheets {
		for _, p := range s.Placed {
			m := pieces[p.Piece].Match
			if m <= 0 {
				continue
			}
			if b, known := batch[m]; known && b != sheets[s.Sheet].Batch {
				return p.Piece, true
			}
			batch[m] = sheets[s.Sheet].Batch
		}
	}
	return 0, false
}
