package sheet

import "slices"

// Sorting is measured sheets, in the order of their thickness, and boxes, in the order of a job,
// that are to be made of as few lots as will do: each lot is cut at one setting.
//
// That is selective assembly (parts are measured, sorted into classes and joined within a class) as
// a side condition of bin packing; common practice, no source.
type Sorting struct {
	Sheets, Boxes int
	// Serves reports whether one setting serves all boxes from the sheets from one to before another;
	// of fewer of these it then does so too, as a rule.
	Serves func(from, to int) bool
	// Need is how many sheets the boxes from one to before another take.
	Need func(from, to int) int
	// Cost is what a lot of the sheets from one to before another is chosen by, among as few: the less the better.
	Cost func(from, to int) float64
}

// Lot is the sheets From to before To, which the next Boxes of the boxes come from.
type Lot struct{ From, To, Boxes int }

// filled is the most boxes that come from sheets before a place, the sheets that they take, and the
// lots, the last one first.
type filled struct {
	boxes, sheets int
	lot           Lot
	before        *filled
}

// Lots are the fewest lots, of the fewest sheets where these are all of one lot, each of the sheets that cost the
// least; none where the sheets do not hold the boxes, or no lots of them serve them. Boxes are taken in their
// order: each lot has the next ones, as many as it holds.
func (s Sorting) Lots() []Lot {
	s.Need, s.Serves, s.Cost = remembered(s.Need), remembered(s.Serves), remembered(s.Cost)
	if s.Boxes == 0 || s.Need(0, s.Boxes) > s.Sheets {
		return nil
	}
	before := slices.Repeat([]*filled{{}}, s.Sheets+1)
	var far []int
	for range s.Sheets {
		if last := s.finished(before); last != nil {
			return s.narrowed(last)
		}
		if far == nil {
			far = s.furthest()
		}
		next, gained := s.oneMore(before, far)
		if !gained {
			return nil
		}
		before = next
	}
	return nil
}

// finished adds the last lot to the best that there is before each place; nil where none has all other boxes.
func (s Sorting) finished(before []*filled) (best *filled) {
	for from, b := range before[:s.Sheets] {
		need := s.Need(b.boxes, s.Boxes)
		to := from + need
		one := &filled{s.Boxes, b.sheets + need, Lot{from, to, s.Boxes - b.boxes}, b}
		if to <= s.Sheets && (best == nil || one.better(best, s)) && s.Serves(from, to) {
			best = one
		}
	}
	return best
}

// maxExact is of how many sheets every row of them is tried as a lot before the last one. Of more, a lot goes on as far
// as one setting serves.
const maxExact = 12

// furthest is how far a lot from each place goes on that one setting serves; nil where every row is tried.
func (s Sorting) furthest() []int {
	if s.Sheets <= maxExact {
		return nil
	}
	far, to := make([]int, s.Sheets), 0
	for from := range far {
		for to = max(to, from+1); to < s.Sheets && s.Serves(from, to+1); to++ {
		}
		far[from] = to
	}
	return far
}

// oneMore adds a lot that is not the last to the best that there is before each place, and reports whether that
// gains anything.
func (s Sorting) oneMore(before []*filled, far []int) (next []*filled, gained bool) {
	next = slices.Clone(before)
	for from, b := range before[:s.Sheets] {
		first, last := from+1, s.Sheets-1
		if far != nil {
			if from > 0 && far[from] == far[from-1] && b == before[from-1] {
				continue // fewer sheets of the same
			}
			first, last = far[from], min(far[from], last)
		}
		for to := first; to <= last; to++ {
			boxes, sheets := s.fill(b.boxes, to-from)
			one := &filled{b.boxes + boxes, b.sheets + sheets, Lot{from, to, boxes}, b}
			if boxes == 0 || !one.better(next[to], s) {
				continue
			}
			if !s.Serves(from, to) {
				break
			}
			next[to], gained = one, true
		}
	}
	for to := 1; to < len(next); to++ { // what comes from fewer sheets comes from more
		if next[to-1].better(next[to], s) {
			next[to] = next[to-1]
		}
	}
	return next, gained
}

// better reports whether more boxes, or as many from fewer sheets, or from as many at less cost, are filled.
func (f *filled) better(o *filled, s Sorting) bool {
	if f.boxes != o.boxes {
		return f.boxes > o.boxes
	}
	if f.sheets != o.sheets {
		return f.sheets < o.sheets
	}
	return f.cost(s) < o.cost(s)
}

func (f *filled) cost(s Sorting) (sum float64) {
	for ; f.before != nil; f = f.before {
		sum += s.Cost(f.lot.From, f.lot.To)
	}
	return sum
}

// fill is how many boxes from one on so many sheets hold, and how many sheets these take.
func (s Sorting) fill(from, sheets int) (boxes, taken int) {
	least, most := from, s.Boxes // Need grows with the boxes
	for least < most {
		middle := (least + most + 1) / 2
		if s.Need(from, middle) <= sheets {
			least = middle
		} else {
			most = middle - 1
		}
	}
	if least == from {
		return 0, 0
	}
	return least - from, s.Need(from, least)
}

// narrowed are the lots, each with no more sheets than its boxes take: those that cost the least.
func (s Sorting) narrowed(last *filled) (lots []Lot) {
	from := 0
	for f := last; f.before != nil; f = f.before {
		lots = append([]Lot{f.lot}, lots...)
	}
	for i, lot := range lots {
		need := s.Need(from, from+lot.Boxes)
		from += lot.Boxes
		best := lot
		for at := lot.From; at+need <= lot.To; at++ {
			fewer := best.To-best.From > need
			if (fewer || s.Cost(at, at+need) < s.Cost(best.From, best.To)) && s.Serves(at, at+need) {
				best.From, best.To = at, at+need
			}
		}
		lots[i] = best
	}
	return lots
}

// remembered asks for each range once.
func remembered[T any](ask func(from, to int) T) func(from, to int) T {
	known := make(map[[2]int]T)
	return func(from, to int) T {
		v, done := known[[2]int{from, to}]
		if !done {
			v = ask(from, to)
			known[[2]int{from, to}] = v
		}
		return v
	}
}
