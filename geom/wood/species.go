package wood

import "slices"

// Species is a kind of solid wood, by averages over many trees.
type Species struct {
	Name string // plain trade name, lower case

	// Radial and Tangential are the dimensional change coefficients C_R and
	// C_T: the part of its size that wood changes by for one percent of
	// moisture, across the growth rings and along them.
	Radial, Tangential float64

	Gravity float64 // specific gravity, ovendry mass by volume at 12 % moisture
	Modulus float64 // modulus of elasticity along the grain at 12 %, N/mm2
}

// Solid wood beside its modulus along the grain. The shares are at the low end of the
// elastic ratios of the Wood Handbook's table 5-1 (E_T / E_L of 0.03 to 0.09, G_LT / E_L
// of 0.05 to 0.10, G_RT / E_L of 0.003 to 0.02), Poisson is the low end of sqrt(mu_LT mu_TL), so that no bottom sags
// by more than is said: from memory.
const (
	AcrossShare = 0.05 // of Modulus: the modulus of elasticity across the grain
	ShearShare  = 0.05 // of Modulus: the modulus of shear in the plane of a board
	// The same through the thickness, of strips along the grain and across it, whose fibers roll.
	ThroughShare, ThroughAcrossShare = 0.05, 0.003
	SolidPoisson                     = 0.1 // between the two directions the geometric mean of both ratios
)

// SolidCreep is by how much a load that stays for years multiplies the sag of solid wood
// in a dry room: 1 + k_def of service class 1, 0.60, EN 1995-1-1 table 3.2, from memory.
const SolidCreep = 1.60

// UsualCreep is the same where the material is not known: the upper end of a rule of
// thumb of 1.5 to 2, from memory.
const UsualCreep = 2.0

// species follows the Wood Handbook: coefficients of table 13-5, gravity and
// modulus of tables 5-3 and 5-5. What the columns rest on differs by block.
var species = []Species{
	// Coefficients original; gravity and modulus secondary.
	{"beech", 0.00190, 0.00431, 0.64, 11900},
	{"yellow birch", 0.00256, 0.00338, 0.62, 13900},
	{"paper birch", 0.00219, 0.00304, 0.55, 11000},
	{"cherry", 0.00126, 0.00248, 0.50, 10300},
	{"red maple", 0.00137, 0.00289, 0.54, 11300},
	{"white ash", 0.00169, 0.00274, 0.60, 12000},
	{"red alder", 0.00151, 0.00256, 0.41, 9500},
	{"basswood", 0.00230, 0.00330, 0.37, 10100},

	// Coefficients original; gravity from memory; modulus secondary.
	{"white oak", 0.00180, 0.00365, 0.68, 12270},
	{"walnut", 0.00190, 0.00274, 0.55, 11590},

	// Coefficients original; gravity and modulus from memory (red oak: northern).
	{"red oak", 0.00158, 0.00369, 0.63, 12500},
	{"sugar maple", 0.00165, 0.00353, 0.63, 12600},
	{"hard maple", 0.00165, 0.00353, 0.63, 12600}, // the trade's name of it
	{"butternut", 0.00116, 0.00223, 0.38, 8100},

	// Coefficients secondary; gravity from memory, modulus secondary.
	{"eastern white pine", 0.00071, 0.00212, 0.35, 8550},

	// Coefficients secondary (one copy; for teak's C_R another has
	// 0.00101); gravity and modulus from memory, the gravity computed from that
	// of green wood, 0.45 and 0.55, by G / (1 - 0.265 * 0.6 G).
	{"mahogany", 0.00172, 0.00238, 0.48, 10300},
	{"teak", 0.00100, 0.00186, 0.60, 10700},

	// Coefficients from memory; gravity and modulus secondary (coast type).
	{"douglas-fir", 0.00165, 0.00267, 0.48, 13400},

	// From memory throughout.
	{"yellow-poplar", 0.00158, 0.00289, 0.42, 10900},
	{"ponderosa pine", 0.00133, 0.00216, 0.40, 8900},
	{"hickory", 0.00259, 0.00411, 0.72, 14900},
	{"sycamore", 0.00172, 0.00296, 0.49, 9800},
	{"aspen", 0.00119, 0.00234, 0.38, 8100},
	{"sitka spruce", 0.00148, 0.00263, 0.40, 10800},
	{"western redcedar", 0.00111, 0.00234, 0.32, 7700},
}

// Find gives the species of a name as [Names] lists it.
func Find(name string) (Species, bool) {
	i := slices.IndexFunc(species, func(s Species) bool { return s.Name == name })
	if i < 0 {
		return Species{}, false
	}
	return species[i], true
}

// Names lists the species, sorted.
func Names() []string {
	var names []string
	for _, s := range species {
		names = append(names, s.Name)
	}
	slices.Sort(names)
	return names
}
