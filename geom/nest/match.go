package nest

import (
	"cmp"
	"context"
	"slices"
)

// maxMatched are the sheets among which batches are chosen.
const maxMatched = 64

// maxChoices is how many layouts are made to choose batches; beyond that they are
// chosen one after the other.
const maxChoices = 16

// matching lays pieces out with each group of those that match on sheets of one batch.
type matching struct {
	pieces  []Piece
	sheets  []Sheet
	rules   Rules
	options Options
	groups  []int          // of pieces that match, the largest first
	batches []string       // of the sheets
	chosen  map[int]string // batches of groups
}

func newMatching(pieces []Piece, sheets []Sheet, r Rules, o Options) *matching {
	m := &matching{pieces: pieces, sheets: sheets, rules: r, options: o, chosen: make(map[int]string)}
	area := make(map[int]float64)
	for _, p := range pieces {
		if p.Match > 0 && p.Count > 0 {
			if area[p.Match] == 0 {
				m.groups = append(m.groups, p.Match)
			}
			area[p.Match] += float64(p.Length) * float64(p.Width) * float64(p.Count)
		}
	}
	for _, s := range sheets {
		if !slices.Contains(m.batches, s.Batch) {
			m.batches = append(m.batches, s.Batch)
		}
	}
	slices.SortStableFunc(m.groups, func(a, b int) int { return cmp.Compare(area[b], area[a]) })
	return m
}

// matched lays pieces out with each group of those that match on sheets of one batch.
func matched(ctx context.Context, pieces []Piece, sheets []Sheet, r Rules, o Options) (Layout, error) {
	m := newMatching(pieces, sheets, r, o)
	if len(m.groups) == 0 || len(m.batches) < 2 {
		return m.laid(ctx, nil, o), nil
	}
	if len(sheets) > maxMatched {
		return Layout{}, refused(CodeMatch, SettingRules, 0, "pieces that match can be laid out on up to %d sizes of sheet", maxMatched)
	}
	choices := 1
	for range m.groups {
		if choices *= len(m.batches); choices > maxChoices {
			break
		}
	}
	// What no layout can do without, whichever batches are chosen.
	w := begin(pieces, sheets, nil, r)
	least := w.least()
	var best Layout
	if effort := cmp.Or(o.Effort, DefaultEffort); choices > maxChoices {
		best = m.oneByOne(ctx, effort/(len(m.groups)*len(m.batches)+1))
	} else {
		best = m.all(ctx, effort/choices)
	}
	if slices.Max(best.Remaining) == 0 {
		best.LowerBound, best.MinSheets = least*w.price, w.fewest(least)
	}
	return best, nil
}

// try lays out with the batches that are chosen.
func (m *matching) try(ctx context.Context, effort int) Layout {
	only := make([]sizeSet, len(m.pieces))
	for i, p := range m.pieces {
		batch, known := m.chosen[p.Match]
		if p.Match <= 0 || !known {
			continue
		}
		for n, s := range m.sheets {
			if s.Batch == batch {
				only[i] |= 1 << n
			}
		}
	}
	o := m.options
	o.Effort = max(effort, 1)
	return m.laid(ctx, only, o)
}

// oneByOne chooses the batch of one group after the other.
func (m *matching) oneByOne(ctx context.Context, effort int) Layout {
	for _, g := range m.groups {
		choose(m.chosen, g, m.batches, func() Layout { return m.try(ctx, effort) })
	}
	return m.try(ctx, effort)
}

// all tries every choice of batches.
func (m *matching) all(ctx context.Context, effort int) (best Layout) {
	found := false
	var from func(n int)
	from = func(n int) {
		if n < len(m.groups) {
			for _, b := range m.batches {
				m.chosen[m.groups[n]] = b
				from(n + 1)
			}
			return
		}
		if l := m.try(ctx, effort); !found || better(l, best) {
			best, found = l, true
		}
	}
	from(0)
	return best
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

// better reports  of two layouts leaves fewer pieces, or else costs less.
func better(a, b Layout) bool {
	left := func(l Layout) (n int) {
		for _, v := range l.Remaining {
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
		for _, p := range s.Placements {
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
