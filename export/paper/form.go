package paper

import (
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Form prints a table with boxes to fill in: a row for each name, the first cells
// given, the others empty.
func (b *Book) Form(heads []string, rows [][]string) {
	const high = 7.5
	size := float64(small)
	first := 0.0
	for _, r := range append([][]string{heads}, rows...) {
		first = max(first, drawing.Width(drawing.Bold, size, r[0])+4)
	}
	first = min(first, b.Width()/3)
	wide := (b.Width() - first) / float64(len(heads)-1)
	x := func(i int) float64 {
		if i == 0 {
			return margin
		}
		return margin + first + float64(wide*float64(i-1))
	}
	print := func(r []string, f drawing.Face, fill drawing.Ink) {
		b.need(high)
		d := b.page
		for i := range heads {
			to := x(i + 1)
			d.Loops(drawing.Thin, fill, geom.Rectangle(x(i), b.cursor-high, to, b.cursor))
			if i >= len(r) || r[i] == "" {
				continue
			}
			lines := drawing.Wrap(f, size, to-x(i)-2, r[i])
			if len(lines) > 2 {
				lines = []string{drawing.Fit(f, size, to-x(i)-2, r[i])}
			}
			y := b.cursor - high/2 - 0.35*size + float64(0.6*size*float64(len(lines)-1))
			for k, l := range lines {
				d.Words(x(i)+1, y-float64(1.2*size*float64(k)), size, f, l)
			}
		}
		b.cursor -= high
	}
	b.Keep(high * float64(min(len(rows)+1, 8)))
	print(heads, drawing.Bold, 0.06)
	for _, r := range rows {
		if b.Room() < high {
			b.Page()
			print(heads, drawing.Bold, 0.06)
		}
		print(r, drawing.Regular, 0)
	}
	b.Space(3)
}
