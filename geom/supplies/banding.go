package supplies

import "drawerwright/geom/joinery"

// BandingWaste is how many times its edges a part takes of banding, for what is trimmed off;
// common practice, no source.
const BandingWaste = 1.1

// AllRound reports whether a part gets edge banding on all its edges, where its stock has
// one: drawer fronts do, walls and dividers on the upper edge alone. Common practice, no source.
func AllRound(r joinery.Role) bool { return r == joinery.DrawerFrontRole }

// BandedEdge is the length of the edges of a piece that get banding, in millimeters: none of
// a bottom's, whose edges are in grooves or under the walls.
func BandedEdge(p joinery.Part) float64 {
	switch {
	case p.Role == joinery.Bottom:
		return 0
	case AllRound(p.Role):
		return p.Panel.Outline.Perimeter()
	}
	return p.Panel.Length()
}
