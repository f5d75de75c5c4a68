package stock

import (
	"drawerwright/geom/joinery"
	"drawerwright/geom/plate"
)

// MostShear is the modulus of shear, in N/mm2, that no sheet as stiff as this has: see
// [plate.MostShear].
func MostShear(s joinery.Stock) float64 { return plate.MostShear(s.Stiffness, s.StiffnessAcross) }

// DropShear forgets the shear of a material beside a shop's own stiffness, where these cannot
// go together: one that is alike in all directions has 1 / (1 + Poisson) of [MostShear]; one
// with a grain has less.
func DropShear(s *joinery.Stock) {
	if s.Shear > MostShear(*s)/(1+s.Poisson) {
		s.Shear = 0
	}
}
