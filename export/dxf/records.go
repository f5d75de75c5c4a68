package dxf

// The bodies of table records that are the same in both versions. (Group codes:
// values from memory.)

// linePattern writes a line type without dashes.
func (f *writing) linePattern(description string) {
	f.str(3, description)
	f.int(72, 'A') // alignment, the only kind there is
	f.int(73, 0)   // dashes
	f.real(40, 0)  // length of the pattern
}

// textStyle writes a text style of free height in the format's plain letters.
func (f *writing) textStyle() {
	height := 5 * microOne / 2
	if f.d.Unit == Inch {
		height = microOne / 10
	}
	f.real(40, 0)        // height: free
	f.real(41, microOne) // width factor
	f.real(50, 0)        // slant
	f.int(71, 0)
	f.real(42, height) // last height used
	f.str(3, "txt")
	f.str(4, "")
}

// viewport writes a view from above that shows the whole drawing.
func (f *writing) viewport() {
	x, y, height := f.view()
	f.point(10, 0, 0) // lower left of the window, as fractions
	f.point(11, microOne, microOne)
	f.point(12, x, y)               // center of the view
	f.point(13, 0, 0)               // snap base
	f.point(14, microOne, microOne) // snap spacing
	f.point(15, microOne, microOne) // grid spacing
	f.point3(16, 0, 0, microOne)    // toward the eye
	f.point3(17, 0, 0, 0)           // target
	f.real(40, height)
	f.real(41, toMicro(viewAspect))
	f.real(42, 50*microOne) // lens
	f.real(43, 0)
	f.real(44, 0)
	f.real(50, 0)
	f.real(51, 0)
	f.int(71, 0)
	f.int(72, 1000) // smoothness of circles
	f.int(73, 1)
	f.int(74, 3)
	f.int(75, 0)
	f.int(76, 0)
	f.int(77, 0)
	f.int(78, 0)
}
