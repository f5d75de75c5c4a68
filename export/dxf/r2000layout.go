package dxf

// A4 and the letter sheet in millimeters, the unit of paper in the format
// whatever the drawing's is.
const (
	a4Width, a4Height         = 210 * microOne, 297 * microOne
	letterWidth, letterHeight = 215_900_000, 279_400_000
)

// layout writes one tab of the drawing: the model, or the one sheet of paper,
// which is empty. No printer is named.
func (f *writing) layout(name string, h, record handle) {
	model := record == modelRecord
	f.object("LAYOUT", h, layoutDictionary)
	f.plotSettings(model)
	f.str(100, "AcDbLayout")
	f.str(1, name)
	f.int(70, 1) // paper space line types are scaled
	if model {
		f.int(71, 0) // first tab
	} else {
		f.int(71, 1)
	}
	width, height := f.paper()
	low, high := [2]micro{}, [2]micro{width, height}
	if model {
		low, high = f.limits()
	}
	f.point(10, low[0], low[1]) // limits
	f.point(11, high[0], high[1])
	f.point3(12, 0, 0, 0) // insertion base
	if model && f.d.extents.some {
		f.point3(14, low[0], low[1], 0) // extents
		f.point3(15, high[0], high[1], 0)
	} else {
		f.nowhere(14, "")
		f.nowhere(15, "-")
	}
	f.real(146, 0)               // elevation
	f.point3(13, 0, 0, 0)        // origin of the coordinates
	f.point3(16, microOne, 0, 0) // their x axis
	f.point3(17, 0, microOne, 0) // their y axis
	f.int(76, 0)                 // no orthographic view
	f.handle(330, record)
}

// paper gives the size of the sheet in millimeters.
func (f *writing) paper() (width, height micro) {
	if f.d.Unit == Inch {
		return letterWidth, letterHeight
	}
	return a4Width, a4Height
}

// plotSettings writes how a tab would be printed: on the unit's usual sheet, at
// full size, without margins.
func (f *writing) plotSettings(model bool) {
	width, height := f.paper()
	f.str(100, "AcDbPlotSettings")
	f.str(1, "")            // name of the page setup
	f.str(2, "none_device") // printer
	f.str(4, "")            // name of the paper
	f.str(6, "")            // plot view
	for code := 40; code <= 43; code++ {
		f.real(code, 0) // margins
	}
	f.real(44, width)
	f.real(45, height)
	for code := 46; code <= 49; code++ {
		f.real(code, 0) // origin and window
	}
	f.real(140, 0)
	f.real(141, 0)
	f.real(142, microOne) // scale 1:1
	f.real(143, microOne)
	if model {
		f.int(70, 1024) // this is the model
	} else {
		f.int(70, 0)
	}
	if f.d.Unit == Inch {
		f.int(72, 0) // paper in inches
	} else {
		f.int(72, 1) // paper in millimeters
	}
	f.int(73, 0)  // not turned
	f.int(74, 5)  // print the whole layout
	f.str(7, "")  // plot style sheet
	f.int(75, 16) // standard scale 1:1
	f.real(147, microOne)
	f.real(148, 0)
	f.real(149, 0)
}
