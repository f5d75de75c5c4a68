package sheets

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/words"
)

// serve says which part each placed piece is: pieces of one size serve one part after the
// other, in the order in which they lie. Of a piece on sheets that are cut alike, each sheet's
// can be another part.
func (s *Stock) serve() {
	part, taken := make([]int, len(s.Pieces)), make([]int, len(s.Pieces))
	for i := range s.Laid {
		one := &s.Laid[i]
		one.Serves = make([][]int, len(one.Placements))
		for n, p := range one.Placements {
			parts := s.Parts[p.Piece]
			for range one.Count {
				at := &part[p.Piece]
				for *at < len(parts)-1 && taken[p.Piece] >= parts[*at].Quantity {
					*at, taken[p.Piece] = *at+1, 0
				}
				one.Serves[n] = append(one.Serves[n], *at)
				taken[p.Piece]++
			}
		}
	}
}

// Part is the part that a placed piece is, on the first of the sheets that are cut alike.
func (s *Stock) Part(one Sheet, placement int) Served {
	return s.Parts[one.Placements[placement].Piece][one.Serves[placement][0]]
}

// parts are those that a placed piece is on sheets that are cut alike, each once.
func (s *Stock) parts(one Sheet, placement int) (list []Served) {
	var known []int
	for _, at := range one.Serves[placement] {
		if !slices.Contains(known, at) {
			known = append(known, at)
			list = append(list, s.Parts[one.Placements[placement].Piece][at])
		}
	}
	return list
}

// Names are those of the parts that a placed piece is on sheets that are cut alike, each once.
func (s *Stock) Names(one Sheet, placement int) (names []string) {
	for _, p := range s.parts(one, placement) {
		if !slices.Contains(names, p.Name) {
			names = append(names, p.Name)
		}
	}
	return names
}

// holds names some placed pieces by their parts, and shortly by the numbers of these, where they have any.
func (s *Stock) holds(one Sheet, placed []int) (name, short string) {
	return mostly(placed, func(n int) string { return words.And(s.Names(one, n)) }), mostly(placed, func(n int) string {
		if of := s.Numbers(one, n); of != "" {
			return "no. " + of
		}
		return words.And(s.Names(one, n))
	})
}

// mostly names one piece, or of more the name that most have, with how many these are and how many have others.
func mostly(placed []int, name func(int) string) string {
	count := make(map[string]int)
	most := name(placed[0])
	for _, n := range placed {
		one := name(n)
		if count[one]++; count[one] > count[most] {
			most = one
		}
	}
	if len(placed) == 1 {
		return most
	}
	said := fmt.Sprintf("%d x %s", count[most], most)
	if more := len(placed) - count[most]; more > 0 {
		said += fmt.Sprintf(" and %d more", more)
	}
	return said
}

// Numbers are those of these parts, as the cut list has them; empty for the pieces of a list,
// which have none.
func (s *Stock) Numbers(one Sheet, placement int) string {
	var list []string
	for _, p := range s.parts(one, placement) {
		if n := strconv.Itoa(p.Number); p.Number > 0 && !slices.Contains(list, n) {
			list = append(list, n)
		}
	}
	return strings.Join(list, ", ")
}

// Source is where a piece comes from: the number of its sheet, and what saws call the board that it is, none where a
// router cuts.
type Source struct {
	Sheet int
	Board string
}

// Sources tells for each part by its name where its pieces come from, as often as it is laid, sheet by sheet.
func (s *Stock) Sources() map[string][]Source {
	from := make(map[string][]Source)
	for _, one := range s.Laid {
		for n, p := range one.Placements {
			board := ""
			if n < len(one.Called) {
				board = one.Called[n]
			}
			for sheet, at := range one.Serves[n] {
				name := s.Parts[p.Piece][at].Name
				from[name] = append(from[name], Source{one.Number + sheet, board})
			}
		}
	}
	for _, list := range from {
		slices.SortFunc(list, func(a, b Source) int {
			return cmp.Or(cmp.Compare(a.Sheet, b.Sheet), cmp.Compare(a.Board, b.Board))
		})
	}
	return from
}
