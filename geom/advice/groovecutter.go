package advice

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// blade is a usual saw blade or the least bit of a router table, in mm: an eighth of an inch;
// common practice, no source.
const blade = geom.InchMM / 8

// ownBlade is a cutter for the grooves of a bottom that are as wide as the stack as yet.
func (d *Box) ownBlade() (c geom.Change, can bool) {
	s := d.Spec
	length, err := geom.ParseLength(geom.LengthOf(blade).Text(s.Units), s.Units)
	c = geom.Change{Setting: joinery.SettingGrooveCutter, Min: length.MM(), Max: length.MM()}
	return c, err == nil && s.Cutter.Kind.Fenced() && (s.Cutter.Groove == 0 || s.Cutter.Groove > s.Bottom.Thickness.Mean) && s.BottomFit.Grooved()
}

// narrower is a usual iron or bit no wider than a bottom is thick, where one that is wider
// makes its groove.
func (d *Box) narrower() (c geom.Change, can bool) {
	s := d.Spec
	bit, found := joinery.SoldBit(s.Bottom.Thickness.Mean)
	length, err := geom.ParseLength(geom.LengthOf(bit).Text(s.Units), s.Units)
	c = geom.Change{Setting: joinery.SettingCutter, Min: length.MM(), Max: length.MM()}
	return c, err == nil && found && s.Cutter.Kind.MadeToFit() && len(s.Bits) == 0 && s.Cutter.Width > c.Min && s.BottomFit.Grooved()
}
