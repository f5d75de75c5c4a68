package dxf

// The format's numbers for units, codes 70 of $INSUNITS and $MEASUREMENT.
const (
	insunitsInch       = 1
	insunitsMillimeter = 4
	measurementInch    = 0
	measurementMetric  = 1
)

// nothing is the bound that stands in $EXTMIN for a drawing with nothing in it,
// and its negative in $EXTMAX (values from memory).
const nothing = "100000000000000000000.0"

// emptySheet gives the limits of a drawing with nothing in it: a sheet of A3, or
// of 12 x 9 in.
func (u Unit) emptySheet() [2]micro {
	if u == Inch {
		return [2]micro{12 * microOne, 9 * microOne}
	}
	return [2]micro{420 * microOne, 297 * microOne}
}

// header writes the HEADER section: the version, the unit, where the geometry
// lies, and which table records are current. $INSUNITS and $MEASUREMENT came
// after R12, and a strict R12 reader turns away variables that it does not know,
// so there the unit is in the comment alone.
func (f *writing) header() {
	f.section("HEADER", func() {
		r2000 := f.d.Version == R2000
		version, standard, bylayer := "AC1009", "STANDARD", "BYLAYER"
		if r2000 {
			version, standard, bylayer = "AC1015", "Standard", "ByLayer"
		}
		f.variable("$ACADVER").str(1, version)
		f.variable("$DWGCODEPAGE").str(3, "ANSI_1252")
		f.variable("$INSBASE").point3(10, 0, 0, 0)
		f.bounds()
		f.variable("$TEXTSTYLE").str(7, standard)
		f.variable("$CLAYER").str(8, "0")
		f.variable("$CELTYPE").str(6, bylayer)
		f.variable("$CECOLOR").int(62, 256) // by layer
		f.variable("$DIMSTYLE").str(2, standard)
		f.variable("$LUNITS").int(70, 2) // decimal
		f.variable("$LUPREC").int(70, 4)
		f.variable("$AUNITS").int(70, 0) // degrees
		f.variable("$TILEMODE").int(70, 1)
		if r2000 {
			f.header2000()
		} else {
			f.variable("$HANDLING").int(70, 0) // entities have no handles
		}
	})
}

// header2000 writes the variables that R12 does not have.
func (f *writing) header2000() {
	insunits, measurement := insunitsMillimeter, measurementMetric
	if f.d.Unit == Inch {
		insunits, measurement = insunitsInch, measurementInch
	}
	f.variable("$INSUNITS").int(70, insunits)
	f.variable("$MEASUREMENT").int(70, measurement)
	f.variable("$CMLSTYLE").str(2, "Standard")
	f.variable("$PSTYLEMODE").int(290, 1) // plot styles go by color
	f.variable("$EXTNAMES").int(290, 1)
	f.variable("$HANDSEED").handle(5, f.entityHandle(len(f.d.entities)))
}

// variable starts a header variable, whose value the caller writes next.
func (f *writing) variable(name string) *tags {
	f.str(9, name)
	return f.tags
}

// bounds writes where the geometry lies, arcs and circles with their full reach,
// and limits that hold it.
func (f *writing) bounds() {
	low, high := f.limits()
	if f.d.extents.some {
		f.variable("$EXTMIN").point3(10, low[0], low[1], f.d.heights.low)
		f.variable("$EXTMAX").point3(10, high[0], high[1], f.d.heights.high)
	} else {
		f.variable("$EXTMIN").nowhere(10, "")
		f.variable("$EXTMAX").nowhere(10, "-")
	}
	f.variable("$LIMMIN").point(10, low[0], low[1])
	f.variable("$LIMMAX").point(10, high[0], high[1])
}

// nowhere writes a bound of nothing.
func (t *tags) nowhere(code int, sign string) {
	for axis := range 3 {
		t.str(code+10*axis, sign+nothing)
	}
}

// limits gives the lower left and the upper right of the geometry, or of an
// empty sheet.
func (f *writing) limits() (low, high [2]micro) {
	e := f.d.extents
	if !e.some {
		return low, f.d.Unit.emptySheet()
	}
	return [2]micro{e.minX, e.minY}, [2]micro{e.maxX, e.maxY}
}

// viewAspect is the width of the first view of a file over its height.
const viewAspect = 1.5

// view gives the center and the height of a view of the whole drawing with a
// margin of a tenth about it.
func (f *writing) view() (x, y, height micro) {
	low, high := f.limits()
	width := (high[0] - low[0]).float()
	tall := max((high[1] - low[1]).float(), width/viewAspect)
	return (low[0] + high[0]) / 2, (low[1] + high[1]) / 2, max(toMicro(tall*1.1), microOne)
}
