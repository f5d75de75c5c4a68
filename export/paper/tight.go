package paper

// A tight book has half of the usual gaps, lines closer together and pictures of steps a little lower. Letters and
// drawings of parts keep their sizes; elevations are a usual scale smaller.
const (
	tightGap     = 0.5
	tightLeading = 1.3
)

// Gap is a gap between what stands below each other, in mm, of what is usual.
func (b *Book) Gap(usual float64) float64 {
	if b.Tight {
		return tightGap * usual
	}
	return usual
}

// lead is from one base line of letters of a size to the next, in mm.
func (b *Book) lead(size float64) float64 {
	if b.Tight {
		return tightLeading * size
	}
	return leading * size
}

// Pages is how many pages have begun after each of draws, which are drawn one after the other.
func (b *Book) Pages(draws ...func()) (begun []int) {
	b.try(func() {
		before := b.number
		for _, draw := range draws {
			draw()
			begun = append(begun, b.number-before)
		}
	})
	return begun
}
