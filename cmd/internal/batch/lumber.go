package batch

import (
	"slices"

	"drawerwright/cmd/internal/job"
)

// LumberOf is the rough boards of a stock; ok is false where it is not bought in them.
func (b Batch) LumberOf(stock string) (l job.Lumber, ok bool) {
	i := slices.IndexFunc(b.Lumber, func(l job.Lumber) bool { return l.Stock == stock })
	if i < 0 {
		return l, false
	}
	return b.Lumber[i], true
}

// gluedUp is the area in mm2 of the edges that are glued in making the parts of a drawer, all of its boxes.
func (b Batch) gluedUp(d Drawer) (area float64) {
	for _, p := range d.Parts {
		if l, ok := b.LumberOf(p.Stock.Name); ok {
			length, width, _ := p.Blank()
			area += l.Piece(length, width).Glued(p.Panel.Thickness, p.Quantity)
		}
	}
	return area
}
