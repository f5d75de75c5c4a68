package wood

import (
	"math"
	"slices"
)

// Sheet is a kind of sheet material.
type Sheet struct {
	Name    string  // lower case
	Density float64 // kg/m3 as delivered

	// Shear is the modulus of shear in the plane, N/mm2; 0 for a sheet that is
	// alike in all directions, where the stiffness determines it.
	Shear float64

	// Through is the modulus of shear through its thickness, N/mm2, where plies or fibers roll.
	Through float64

	// Poisson is the ratio of Poisson, between the two directions the geometric
	// mean of both ratios.
	Poisson float64

	// Creep is by how much a load that stays for years multiplies the sag.
	Creep float64

	// InPlane is an upper bound of the part of its length or width that a sheet
	// changes by for one percent of its own moisture.
	InPlane float64

	bending []bendingRow
}

// bendingRow is the modulus of elasticity in bending, N/mm2, along and across
// the face grain, of a sheet of a thickness in mm.
type bendingRow struct{ thickness, along, across float64 }

// The in-plane bounds. For plywood two readings of the Wood Handbook disagree by
// about two (0.0002 for ten percent of relative humidity, or for one of
// moisture; both secondary): this is the larger, 0.4 mm on 500 mm for four
// percent. For boards of fibers and particles: from memory.
const (
	plywoodInPlane = 0.0002
	boardInPlane   = 0.0005
)

// By how much lasting loads multiply the sag in a dry room: 1 + k_def of service
// class 1, EN 1995-1-1 table 3.2, from memory: 0.80 for plywood; 2.25 for hardboard,
// and for MDF and particleboard of the common grades.
const (
	plywoodCreep = 1.80
	boardCreep   = 3.25
)

// Shear through the thickness: of birch plywood the low end of what the Handbook of Finnish Plywood
// has for planar shear, of softwood that of spruce that rolls, of boards half of what EN 12369-1 has
// for particleboard: from memory.
const (
	birchThrough    = 120
	softwoodThrough = 50
	boardThrough    = 100
)

// sheets: densities are averages. Wood Handbook table 12-1 is meant where it is
// named; of a range of stiffness the low end is taken.
var sheets = []Sheet{
	// Handbook of Finnish Plywood, table 3-1, mean values: from memory. Each
	// pair adds up to 17500.
	{"birch-plywood", 680, 620, birchThrough, 0.1, plywoodCreep, plywoodInPlane, []bendingRow{
		{4, 16471, 1029}, {6.5, 12737, 4763}, {9, 11395, 6105},
		{12, 10719, 6781}, {15, 10316, 7184}, {18, 10048, 7452},
	}},

	// Softwood and mixed plywood. Density from specific gravity 0.4 to 0.6 and
	// stiffness from 7.0 to 8.6 GPa along the grain, table 12-1, shear and
	// Poisson: from memory. Along and across are computed for equal plies that
	// carry along their grain only: of n^3 shares of stiffness 26 and 1 for
	// three plies, 99 and 26 for five, 244 and 99 for seven, with 7000 along the
	// five. How many plies a thickness has is common practice, no source.
	{"plywood", 550, 500, softwoodThrough, 0.1, plywoodCreep, plywoodInPlane, []bendingRow{
		{5, 8511, 327}, {9, 7000, 1838}, {18, 6287, 2551},
	}},

	// Density: EN 622-2 has more than 900 (secondary); stiffness 3.1 to 5.5
	// GPa, table 12-1, from memory.
	{"hardboard", 950, 0, boardThrough, 0.3, boardCreep, boardInPlane, []bendingRow{{3, 3100, 3100}}},

	// Density: a mill's 15 to 19 mm board, secondary, indicative; thinner ones
	// reach 880. Stiffness: EN 622-5, from memory, 2700 for 6 to 9 mm, 2500 to
	// 12, 2200 to 19, 2100 to 30; a class's value is put at its thin end, so
	// that none is exceeded in between.
	{"mdf", 760, 0, boardThrough, 0.3, boardCreep, boardInPlane, []bendingRow{
		{6, 2700, 2700}, {9, 2500, 2500}, {12, 2200, 2200}, {19, 2100, 2100},
	}},

	// Density from specific gravity 0.6 to 0.8 and stiffness from 2.8 to 4.1
	// GPa, table 12-1, from memory.
	{"particleboard", 700, 0, boardThrough, 0.3, boardCreep, boardInPlane, []bendingRow{{16, 2800, 2800}}},
}

// FindSheet gives the sheet of a name as [SheetNames] lists it.
func FindSheet(name string) (Sheet, bool) {
	i := slices.IndexFunc(sheets, func(s Sheet) bool { return s.Name == name })
	if i < 0 {
		return Sheet{}, false
	}
	return sheets[i], true
}

// SheetNames lists the sheets, sorted.
func SheetNames() []string {
	var names []string
	for _, s := range sheets {
		names = append(names, s.Name)
	}
	slices.Sort(names)
	return names
}

// Stiffness gives the modulus of elasticity in bending, N/mm2, along and across
// the face grain, of a sheet of a thickness in mm. Between two listed
// thicknesses it is interpolated, beyond them the nearest is taken. A thickness
// that is not above 0 and up to [MaxNominal] is an error, and so is a Sheet that
// does not come from [FindSheet].
func (s Sheet) Stiffness(thickness float64) (along, across float64, err error) {
	if err := inRange("the thickness", thickness, math.SmallestNonzeroFloat64, MaxNominal, " mm"); err != nil {
		return 0, 0, err
	}
	if len(s.bending) == 0 {
		return 0, 0, errNoSheet
	}
	last := s.bending[0]
	for _, row := range s.bending {
		if thickness < row.thickness {
			if row == last {
				break
			}
			part := (thickness - last.thickness) / (row.thickness - last.thickness)
			return last.along + float64(part*(row.along-last.along)),
				last.across + float64(part*(row.across-last.across)), nil
		}
		last = row
	}
	return last.along, last.across, nil
}
