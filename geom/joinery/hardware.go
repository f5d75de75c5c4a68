package joinery

import (
	"fmt"
	"strings"

	"drawerwright/geom"
)

// Item is hardware that one box takes.
type Item struct {
	Name  string
	Count int
	// Offcut is a piece that the shop cuts from what is left over, and does not buy.
	Offcut bool
}

// A screw by the name under which it is sold, with its thickness, its clearance hole, and the pilot
// hole where it goes into the end of a board, in mm.
type screw struct {
	name               string
	thick, hole, pilot float64
}

// called is a screw's thickness in a sentence.
func (s screw) called() string {
	if strings.HasPrefix(s.name, "#") {
		return s.name
	}
	return s.name + " mm"
}

// sixty4 is a 64th of an inch in mm: drills and dowels of an inch shop are whole numbers of
// them.
const sixty4 = geom.InchMM / 64

// gauge is the thickness of a screw of a gauge in mm: 0.060 + 0.013 n inches (#6 0.138, #8 0.164).
func gauge(n float64) float64 { return (0.060 + float64(0.013*n)) * geom.InchMM }

// Screws that are used, in a metric shop by their diameter, in an inch shop by their gauge. Sizes,
// holes and lengths are common practice, no source.
var (
	cornerScrew = [2]screw{{"4", 4, 4.5, 3}, {"#8", gauge(8), 11 * sixty4, 8 * sixty4}}
	bottomScrew = [2]screw{{name: "3.5", thick: 3.5, hole: 4}, {name: "#6", thick: gauge(6), hole: 10 * sixty4}}
	// The fixing screw's hole is for a large washer: the front can be moved by 2 mm or so.
	fixingScrew = [2]screw{{"4.5", 4.5, 8, 3}, {"#8", gauge(8), 20 * sixty4, 8 * sixty4}}
)

// Lengths of screws and dowels, and thicknesses of dowels and tenons, that are sold; in mm, or
// in 64ths of an inch.
var (
	metricLengths = []float64{12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100}
	inchLengths   = []float64{32, 40, 48, 64, 80, 96, 112, 128, 144, 160, 192, 224, 256}
	metricDowels  = []float64{4, 5, 6, 8}
	inchDowels    = []float64{12, 16, 20}
	metricTenons  = []float64{4, 5, 6, 8, 10}
	inchTenons    = []float64{10, 12, 16, 20, 24}
)

// inch reports whether the shop buys and drills in inches.
func (l *layout) inch() bool { return l.Units == geom.Inch }

// screw is one of a pair that the shop buys.
func (l *layout) screw(of [2]screw) screw {
	if l.inch() {
		return of[1]
	}
	return of[0]
}

// sized is a hole in mm, or in 64ths of an inch for a shop that drills those.
func (l *layout) sized(mm, in64 float64) float64 {
	if l.inch() {
		return in64 * sixty4
	}
	return mm
}

// sold is the largest of what is sold in the shop's unit that is not above a size; 0 where
// there is none.
func (l *layout) sold(metric, in64 []float64, most float64) (size float64) {
	list, step := metric, 1.0
	if l.inch() {
		list, step = in64, sixty4
	}
	for _, v := range list {
		if v*step <= most+settle {
			size = v * step
		}
	}
	return size
}

// long names what is bought by a thickness and a length.
func (l *layout) long(name, thick string, most float64) string {
	return fmt.Sprintf("%s %s x %s", name, thick, l.text(l.soldLength(most)))
}

// soldLength is the longest that is sold, or where that is too long one to be shortened.
func (l *layout) soldLength(most float64) float64 {
	if length := l.sold(metricLengths, inchLengths, most); length > 0 {
		return length
	}
	return geom.LengthOf(most).RoundDown(l.Units).MM()
}

// takes adds hardware to the box.
func (l *layout) takes(name string, count int) {
	if count == 0 {
		return
	}
	for i := range l.drawer.Hardware {
		if l.drawer.Hardware[i].Name == name {
			l.drawer.Hardware[i].Count += count
			return
		}
	}
	l.drawer.Hardware = append(l.drawer.Hardware, Item{Name: name, Count: count})
}
