package paper

import (
	"fmt"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Step is one of a work: what is done, with a picture or without, and its number.
type Step struct {
	Number  int
	Words   string
	Picture drawing.Drawing
}

// stepColumns is how many pictures of steps stand in a line.
const stepColumns = 2

// stepGap is between pictures beside each other and below their words, in mm; stepHang
// is the room of the number.
const (
	stepGap  = 5.0
	stepHang = 6.0
)

// StepRoom is the room of the picture of a step in a book.
func (b *Book) StepRoom() geom.Point {
	return geom.Point{X: (b.Width() - (stepColumns-1)*stepGap) / stepColumns, Y: 39}
}

// Steps are steps in their order: with pictures side by side, their words below; the words of a
// picture that stands alone beside it, with those of the steps after it; all else as paragraphs.
func (b *Book) Steps(list []Step) {
	for len(list) > 0 {
		n := 0
		for n < min(stepColumns, len(list)) && list[n].Picture.Width > 0 {
			n++
		}
		switch n {
		case 0:
			b.Item(0, list[0].sign(), list[0].Words)
			n = 1
		case 1:
			n = b.stepBeside(list)
		default:
			b.stepLine(list[:n])
		}
		list = list[n:]
	}
}

// sign stands before the words of a step.
func (s Step) sign() string { return fmt.Sprintf("%d.", s.Number) }

// lines are the words of a step, broken for a column.
func (s Step) lines(wide float64) []string {
	return drawing.Wrap(drawing.Regular, caption, wide-stepHang, s.Words)
}

// stepLine puts steps with pictures into one line.
func (b *Book) stepLine(list []Step) {
	wide, high, below := b.StepRoom().X, 0.0, 0
	for _, s := range list {
		high, below = max(high, s.Picture.Height), max(below, len(s.lines(wide)))
	}
	whole := high + float64(leading*caption*float64(below)) + stepGap
	b.Keep(whole)
	for i, s := range list {
		x := margin + float64(float64(i)*(wide+stepGap))
		b.put(s.Picture, geom.Point{X: x + (wide-s.Picture.Width)/2, Y: b.cursor - (high+s.Picture.Height)/2})
		b.stepWords(s, x, b.cursor-high)
	}
	b.Space(whole)
}

// stepBeside puts a step with its picture at the left, and beside it its words and those of the
// steps after it that have room there. It gives how many that are.
func (b *Book) stepBeside(list []Step) (n int) {
	wide, high := b.StepRoom().X, list[0].Picture.Height
	taken := 0.0
	for n = 0; n < len(list); n++ {
		need := float64(leading*caption*float64(len(list[n].lines(wide)))) + 1
		if n > 0 && (list[n].Picture.Width > 0 || taken+need > high) {
			break
		}
		taken += need
	}
	whole := max(high, taken) + stepGap
	b.Keep(whole)
	p := list[0].Picture
	b.put(p, geom.Point{X: margin + (wide-p.Width)/2, Y: b.cursor - high})
	y := b.cursor - (max(high, taken)-taken)/2
	for _, s := range list[:n] {
		y = b.stepWords(s, margin+wide+stepGap, y) - 1
	}
	b.Space(whole)
	return n
}

// stepWords writes the words of a step into a column below a height, and gives that below them.
func (b *Book) stepWords(s Step, x, y float64) float64 {
	for i, l := range s.lines(b.StepRoom().X) {
		if i == 0 {
			b.page.Words(x, y-caption, caption, drawing.Bold, s.sign())
		}
		b.page.Words(x+stepHang, y-caption, caption, drawing.Regular, l)
		y -= leading * caption
	}
	return y
}
