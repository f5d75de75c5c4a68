package sheets

import (
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/nest"
	"drawerwright/geom/sheet"
)

// blocked are the areas of a sheet of a length that nothing may be cut in, in mm. What is
// clamped stays where it is on the machine, so that on a sheet that is turned over end for
// end the same areas are blocked as seen from the other end.
func (s *Stock) blocked(length float64) []geom.Rect {
	var list []geom.Rect
	if !s.FromOutside {
		list = sheet.KeptOut(s.KeepOut, geom.Inside, length)
	}
	if s.RotatedSheets || s.FromOutside {
		list = append(list, sheet.KeptOut(s.KeepOut, geom.Outside, length)...)
	}
	return list
}

// KeptOut are the areas of a sheet to keep out of while any of its faces is cut, as its
// picture shows them, with inside faces up.
func (s *Stock) KeptOut(one Sheet) (list []geom.Rect) {
	if !s.Routed {
		return nil
	}
	for _, f := range s.Faces(one) {
		for _, k := range sheet.KeptOut(s.KeepOut, f, geom.Length(s.Sheets[one.Sheet].Length).MM()) {
			if !slices.Contains(list, k) {
				list = append(list, k)
			}
		}
	}
	return list
}

// clear takes as the trims of a sheet what leaves the largest rectangle of it in which no
// part's cuts reach an area to keep out of. Nothing is left where there is none.
func (s *Stock) clear(z nest.Sheet) nest.Trim {
	if len(s.KeepOut) == 0 {
		return z.Trim
	}
	return sheet.ClearTrim(z, s.blocked(geom.Length(z.Length).MM()), s.needs.Drawn())
}
