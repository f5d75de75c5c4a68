package nest

import (
	"cmp"
	"slices"
)

// leading is how many of the largest kinds are in a window, filling how many others, to fill up
// with; a search that is to end, but has no layout yet, lays few at a time, which is soon done.
const leading, filling, hurried = 60, 60, 6

// windows lays very many kinds out, some at a time: the largest that are left, and some
// of all the others, until half of the largest are laid.
func (s *search) windows() (out result) {
	demand, stock := slices.Clone(s.demand), s.stock()
	var order []int
	for k, n := range demand {
		order = append(order, k)
		out.left += n
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(s.task.area[b], s.task.area[a]) })
	for len(order) > 0 {
		lead, fill := min(leading, len(order)), filling
		if s.stop.Load() {
			lead, fill = min(hurried, len(order)), 0
		}
		rest := order[lead:]
		some := make([]int, len(s.kinds))
		large := 0
		for _, k := range order[:lead] {
			some[k] = demand[k]
			large += demand[k]
		}
		for i := range min(fill, len(rest)) {
			k := rest[i*len(rest)/min(fill, len(rest))]
			some[k] = demand[k]
		}
		now := s.part(some, func(t *search, wanted []int) (r result) {
			copy(t.f.left, wanted)
			for i, a := range t.task.area {
				t.f.value[i] = a * bent(a, 0.4)
			}
			for n := range t.fond {
				t.fond[n] = 1
			}
			for laid := 0; laid < max(large/2, 1); {
				f, ok := t.next(stock)
				if !ok {
					break
				}
				if stock[f.size] != endless {
					stock[f.size]--
				}
				laid += len(f.spots)
				r.add(f, t.sizes[f.size])
			}
			return r
		})
		for _, f := range now.list {
			out.add(f, s.sizes[f.size])
			for _, p := range f.spots {
				demand[p.kind]--
			}
		}
		if len(now.list) == 0 {
			// No sheet is left for the largest: smaller ones may still find one.
			order = order[lead:]
			continue
		}
		order = slices.DeleteFunc(order, func(k int) bool { return demand[k] == 0 })
	}
	return out
}
