// Package stock says what follows for boards from what they are made of: how heavy and how
// stiff they are, how they move with the air, how evenly thick they are taken to be, and which
// serve as plates for templates. Thicknesses are millimeters, densities kg/m3, stiffnesses
// N/mm2; the figures are those of the package wood, with their sources.
package stock

import (
	"drawerwright/geom/joinery"
	"drawerwright/geom/wood"
)

// weighed is the moisture of wood that is weighed, in percent: that at which the Wood
// Handbook gives the specific gravity of dry wood.
const weighed = 12

// OfSheet writes into a stock what follows from its kind of sheet: its stiffness at the mean
// of its readings, which has to be known, and in some air, nil for none, how it moves. What
// the package wood has no figures for stays as it is.
func OfSheet(to *joinery.Stock, kind wood.Sheet, air *wood.Air) {
	to.Density, to.Creep = kind.Density, kind.Creep
	if along, across, err := kind.Stiffness(to.Thickness.Mean); err == nil {
		to.Stiffness, to.StiffnessAcross, to.StiffAs = along, across, kind.Name
	}
	to.Shear, to.Poisson = kind.Shear, kind.Poisson
	to.Through, to.ThroughAcross = kind.Through, kind.Through
	if air == nil {
		return
	}
	if season, err := wood.SheetMovement(kind, *air); err == nil {
		to.Swelling, to.Shrinkage = season.Swell, season.Shrink
	}
}

// OfWood writes into a stock what follows from its kind of solid wood. The season says how
// moist it gets in some air; it is the zero value without air, and for humidities that are
// none.
func OfWood(to *joinery.Stock, kind wood.Species, cut wood.Cut, air *wood.Air) wood.Season {
	to.Solid, to.Creep = true, wood.SolidCreep
	to.Stiffness, to.StiffnessAcross = kind.Modulus, float64(wood.AcrossShare*kind.Modulus)
	to.Shear, to.Poisson = float64(wood.ShearShare*kind.Modulus), wood.SolidPoisson
	to.Through = float64(wood.ThroughShare * kind.Modulus)
	to.ThroughAcross = float64(wood.ThroughAcrossShare * kind.Modulus)
	if density, err := wood.Density(kind.Gravity, weighed); err == nil {
		to.Density = density
	}
	if air == nil {
		return wood.Season{}
	}
	season, err := wood.SeasonalMovement(kind, cut, *air)
	if err != nil {
		return wood.Season{}
	}
	to.Swelling, to.Shrinkage = season.Swell, season.Shrink
	// What lies along the width of a flatsawn board goes through the thickness of a quartersawn one.
	across := wood.Quartersawn
	if cut == wood.Quartersawn {
		across = wood.Flatsawn
	}
	if through, err := wood.SeasonalMovement(kind, across, *air); err == nil {
		to.Thickening = through.Swell
	}
	return season
}
