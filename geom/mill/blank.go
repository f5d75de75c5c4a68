package mill

import "drawerwright/geom"

// Blank is the least length and width, in mm, of the piece that a panel is cut from: room at
// its ends for registration holes, and at its edges for the bit and for cuts that run out.
func (w Operations) Blank(p geom.Panel) (length, width float64) {
	return p.Length() + 2*w.EndGap, p.Width() + 2*w.Gap
}
