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
const stepColumns = 3

// stepGap is between pictures beside each other and below their words, in mm; stepHang
// is the room of the number.
const (
	stepGap  = 4.0
	stepHang = 6.0
	// stepHigh and tightStepHigh are how high pictures of steps are at most.
	stepHigh, tightStepHigh = 38.0, 36.0
)

// StepRoom is the room of the picture of a step in a book.
func (b *Book) StepRoom() geom.Point {
	if b.Tight {
		return geom.Point{X: b.stepsWide(1), Y: tightStepHigh}
	}
	return geom.Point{X: b.stepsWide(1), Y: stepHigh}
}

// stepsWide is how wide so many steps beside each other are.
func (b *Book) stepsWide(n int) float64 {
	one := (b.Width() - (stepColumns-1)*stepGap) / stepColumns
	return float64(one*float64(n)) + float64(stepGap*float64(n-1))
}

// Steps are steps in their order: with pictures side by side, their words below; where fewer than fill a line
// stand in one, the words of the steps after them stand at their right, and those of a single one too. All else is
// paragraphs. Pictures are put into lines so that all together are as low as can be.
func (b *Book) Steps(list []Step) {
	best := make([]stepRow, len(list)+1) // from each step on, the lowest
	for i := len(list) - 1; i >= 0; i-- {
		pictures := 0 // that can stand in a line from here on
		for pictures < min(stepColumns, len(list)-i) && list[i+pictures].Picture.Width > 0 {
			pictures++
		}
		for n := min(1, pictures); n <= pictures; n++ {
			row := b.stepRow(list[i:], n)
			if row.total = row.high + best[i+row.steps].total; best[i].steps == 0 || row.total < best[i].total-1e-9 {
				best[i] = row
			}
		}
	}
	for i := 0; i < len(list); i += best[i].steps {
		if best[i].pictures == 0 {
			b.Item(0, list[i].sign(), list[i].Words)
			continue
		}
		b.stepLine(list[i:], best[i])
	}
}

// sign stands before the words of a step.
func (s Step) sign() string { return fmt.Sprintf("%d.", s.Number) }

// lines are the words of a step, broken for a column.
func (s Step) lines(wide float64) []string {
	return drawing.Wrap(drawing.Regular, caption, wide-stepHang, s.Words)
}

// stepRow is what stands in one line: so many steps, of which the first have pictures.
type stepRow struct {
	pictures, steps int
	first           int     // of the steps whose words stand at the right
	picture, aside  float64 // heights of the pictures, and of the words at the right
	high            float64 // of all, with the room below it
	total           float64 // with all that follows
}

// stepRow is the line of a list of steps that begins with so many pictures.
func (b *Book) stepRow(list []Step, pictures int) stepRow {
	if pictures == 0 {
		lines := drawing.Wrap(drawing.Regular, body, b.Width()-stepHang, list[0].Words)
		return stepRow{steps: 1, high: float64(b.lead(body)*float64(len(lines))) + b.Gap(afterText)}
	}
	wide, below := b.stepsWide(1), 0.0
	row := stepRow{pictures: pictures, first: pictures}
	for _, s := range list[:pictures] {
		row.picture = max(row.picture, s.Picture.Height)
		below = max(below, b.lead(caption)*float64(len(s.lines(wide))))
	}
	if pictures == 1 {
		row.first, below = 0, 0
	}
	right := b.stepsRight(pictures)
	for row.steps = row.first; row.steps < len(list) && pictures < stepColumns; row.steps++ {
		s := list[row.steps]
		need := b.lead(caption)*float64(len(s.lines(right))) + 1
		if row.steps >= pictures && (s.Picture.Width > 0 || row.aside+need > row.picture+below) {
			break
		}
		row.aside += need
	}
	row.steps = max(row.steps, pictures)
	row.high = max(row.picture+below, row.aside) + b.Gap(stepGap)
	return row
}

// stepsRight is what is left of a line beside so many pictures, in mm.
func (b *Book) stepsRight(pictures int) float64 { return b.Width() - b.stepsWide(pictures) - stepGap }

// stepLine puts a row of steps on the page.
func (b *Book) stepLine(list []Step, row stepRow) {
	b.Keep(row.high)
	wide := b.stepsWide(1)
	for i, s := range list[:row.pictures] {
		x := b.left() + b.stepsWide(i) + stepGap
		at := geom.Point{X: x + (wide-s.Picture.Width)/2, Y: b.cursor - (row.picture+s.Picture.Height)/2}
		b.put(s.Picture, at)
		if row.first > 0 {
			b.stepWords(s, x, wide, b.cursor-row.picture)
		}
	}
	y := b.cursor - (row.high-b.Gap(stepGap)-row.aside)/2
	for _, s := range list[row.first:row.steps] {
		y = b.stepWords(s, b.left()+b.stepsWide(row.pictures)+stepGap, b.stepsRight(row.pictures), y) - 1
	}
	b.Space(row.high)
}

// stepWords writes the words of a step into a column below a height, and gives that below them.
func (b *Book) stepWords(s Step, x, wide, y float64) float64 {
	for i, l := range s.lines(wide) {
		if i == 0 {
			b.page.Words(x, y-caption, caption, drawing.Bold, s.sign())
		}
		b.page.Words(x+stepHang, y-caption, caption, drawing.Regular, l)
		y -= b.lead(caption)
	}
	return y
}
