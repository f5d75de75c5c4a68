package stock

import (
	"drawerwright/geom/joinery"
	"drawerwright/geom/plate"
)

// DropShear forgets the shear of a material beside a shop's own stiffness, where these cannot
// go together: one that is alike in all directions has 1 / (1 + Poisson) of [plate.MaxShear];
// one with a grain has less.
func DropShear(s *joinery.Stock) {
	if s.Shear > plate.MaxShear(s.Stiffness, s.StiffnessAcross)/(1+s.Poisson) {
		s.Shear = 0
	}
}
