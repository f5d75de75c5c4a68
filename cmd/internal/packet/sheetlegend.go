package packet

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
)

// pieceRow says of pieces of one size on a sheet what they are called on its picture, which number they have in the cut
// list, if any, which parts they are, and how a router holds them, if that is to be said.
type pieceRow struct {
	keys, number, size, held string
	parts                    counted
}

// merged are rows without those that differ from one before in nothing but the parts.
func merged(rows []pieceRow) (list []pieceRow) {
	for _, r := range rows {
		i := slices.IndexFunc(list, func(o pieceRow) bool {
			return o.keys == r.keys && o.number == r.number && o.size == r.size && o.held == r.held
		})
		if i < 0 {
			list = append(list, r)
			continue
		}
		for _, name := range r.parts.names {
			list[i].parts.add(name, r.parts.of[name])
		}
	}
	return list
}

// counted are names in their order, with how many there are of each.
type counted struct {
	names []string
	of    map[string]int
}

func (c *counted) add(name string, n int) {
	if c.of == nil {
		c.of = make(map[string]int)
	}
	if c.of[name] += n; c.of[name] == n {
		c.names = append(c.names, name)
	}
}

// String names them, several of one with their count where there are others.
func (c counted) String() string {
	list := slices.Clone(c.names)
	for i, name := range list {
		if n := c.of[name]; n > 1 && len(list) > 1 {
			list[i] = fmt.Sprintf("%s (%d)", name, n)
		}
	}
	return strings.Join(list, ", ")
}

// partsOf are the parts that the pieces of one size on a sheet are, and what number those of a job have.
func partsOf(s *sheets.Stock, one sheets.Sheet, piece int) (number string, parts counted) {
	var numbers []string
	for i, q := range one.Placements {
		if q.Piece != piece {
			continue
		}
		if n := s.Numbers(one, i); n != "" && !slices.Contains(numbers, n) {
			numbers = append(numbers, n)
		}
		parts.add(words.And(s.Names(one, i)), 1)
	}
	return strings.Join(numbers, ", "), parts
}
