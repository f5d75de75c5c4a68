package joinery

import (
	"fmt"
	"math"

	"drawerwright/geom"
)

// Item is hardware that one box takes.
type Item struct {
	Name  string
	Count int
	// Offcut is a piece that the shop cuts from what is left over, and does not buy.
	Offcut bool
}

// long names what is bought by a diameter and a length, which is rounded down to what
// is sold: whole millimetres, or eighths of an inch.
func (l *layout) long(name string, diameter, most float64) string {
	step := 1.0
	if l.Units == geom.Inch {
		step = geom.InchMM / 8
	}
	return fmt.Sprintf("%s %s x %s", name, l.text(diameter), l.text(math.Floor(most/step+settle)*step))
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
