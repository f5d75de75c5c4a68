package setup

import (
	"math"

	"drawerwright/geom/joinery"
)

// sameSetting is half of what settings of one sheet differ by at least, in mm.
const sameSetting = 0.01

// Serves reports whether a setting is the one at which a drawer's corners are cut. By hand
// no setting has a cutter.
func (s Setting) Serves(d joinery.Setup) bool {
	made := s.Cutter == 0 || math.Abs(d.Cutter.Width-s.Cutter) < sameSetting
	return made && math.Abs(d.FenceDistance-s.Fence) < sameSetting && math.Abs(d.CutterHeight-s.Height) < sameSetting
}

// Tongued are the ends of a box that a setting makes flush or not, each with a cost of its
// own: none but of corners with tongues; the back where it is no twin of the front and does
// not stand in dados.
func Tongued(s joinery.Spec) []joinery.Role {
	switch {
	case s.Joint != joinery.DadoRabbet:
		return nil
	case s.Back.Same(s.Front) || s.BackJoint == joinery.Housed:
		return []joinery.Role{joinery.Front}
	}
	return []joinery.Role{joinery.Front, joinery.Back}
}
