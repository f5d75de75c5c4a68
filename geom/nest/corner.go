package nest

// corner fills a rectangle by cuts from edge to edge: the piece that suits it best goes into its corner, and two cuts
// make rectangles of the rest, of which the smaller one is filled first. It is quick, and weighs nothing in advance.
func (f *filler) corner(r area, like taste, chance func() float64) {
	for r.w > 0 && r.h > 0 {
		// A niche as high as it is deep: pieces are level with its walls where they reach its top.
		at := f.suiting(niche{ledge{r.x, 0, r.w}, r.h, r.h, r.h}, like, chance)
		if at < 0 {
			return
		}
		v := f.ways[0][at]
		f.left[v.kind]--
		f.placed = append(f.placed, spot{kind: v.kind, x: r.x, y: r.y, turned: v.turned})
		beside := area{r.x + v.along, r.y, r.w - v.along, v.across}
		above := area{r.x, r.y + v.across, r.w, r.h - v.across}
		if wide := beside.w > above.h; wide != (chance() < like.cross) {
			beside.h, above.w = r.h, v.along
		}
		if float64(beside.w)*float64(beside.h) > float64(above.w)*float64(above.h) {
			beside, above = above, beside
		}
		f.corner(beside, like, chance)
		r = above
	}
}
