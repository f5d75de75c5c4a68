package job

import (
	"fmt"

	"drawerwright/geom/joinery"
	"drawerwright/geom/plate"
	"drawerwright/geom/wood"
)

// usualMoisture is the moisture of wood that is weighed, in percent: that at which
// the Wood Handbook gives the specific gravity of dry wood.
const usualMoisture = 12

// The words for cuts.
const flatsawn, quartersawn = "flatsawn", "quartersawn"

// air is a climate as the package wood takes it.
type air struct{ now, driest, dampest, celsius float64 }

func airOf(climate *section) air {
	share := func(name string) float64 { return climate.values[name].number / 100 }
	return air{share("now"), share("driest"), share("dampest"), climate.values["temperature"].number}
}

// material sets what follows from the kind of sheet or wood, and what the file
// says instead.
func (r *reader) material(stock *joinery.Stock, s *section, climate *section) {
	get := s.values
	species, solid := wood.Find(get["material"].text)
	sheet, isSheet := wood.FindSheet(get["material"].text)
	switch {
	case solid:
		r.solidStock(stock, species, get["cut"].text, climate)
	case isSheet && stock.Thickness.Mean > 0:
		sheetStock(stock, sheet, climate)
	}
	if cut := get["cut"]; !solid && cut.given && (get["material"].text != "" || !get["material"].given) {
		r.fail(CodeNoEffect, cut.at, "delete it, or write a kind of wood as `material:`", "cut is for solid wood, and the stock %s is not", quote(s.name))
	}
	if density := get["density"].number; density > 0 {
		stock.Density = density
	}
	r.elastic(stock, s)
}

func sheetStock(stock *joinery.Stock, sheet wood.Sheet, climate *section) {
	stock.Density, stock.Creep = sheet.Density, sheet.Creep
	if along, across, err := sheet.Stiffness(stock.Thickness.Mean); err == nil {
		stock.Stiffness, stock.StiffnessAcross, stock.StiffAs = along, across, sheet.Name
	}
	stock.Shear, stock.Poisson = sheet.Shear, sheet.Poisson
	if climate == nil {
		return
	}
	a := airOf(climate)
	if season, err := wood.SheetMovement(sheet, a.now, a.driest, a.dampest, a.celsius); err == nil {
		stock.Swelling, stock.Shrinkage = season.Swell, season.Shrink
	}
}

func (r *reader) solidStock(stock *joinery.Stock, species wood.Species, cut string, climate *section) {
	stock.Solid, stock.Creep = true, wood.SolidCreep
	stock.Stiffness, stock.StiffnessAcross = species.Modulus, float64(wood.AcrossShare*species.Modulus)
	stock.Shear, stock.Poisson = float64(wood.ShearShare*species.Modulus), wood.SolidPoisson
	if density, err := wood.Density(species.Gravity, usualMoisture); err == nil {
		stock.Density = density
	}
	if climate == nil {
		return
	}
	sawn := wood.Flatsawn
	if cut == quartersawn {
		sawn = wood.Quartersawn
	}
	a := airOf(climate)
	season, err := wood.SeasonalMovement(species, sawn, a.now, a.driest, a.dampest, a.celsius)
	if err != nil { // a humidity that could not be read, and that has been reported
		return
	}
	stock.Swelling, stock.Shrinkage = season.Swell, season.Shrink
	if season.Limited {
		r.add(Problem{Code: CodeMoisture, Hint: "give the air over weeks, not over a day, of the place where the wood lies and of the room where it will stand; if that is so, leave more room than is asked for",
			Message: fmt.Sprintf("in this air wood has %.1f %% of moisture now, %.1f %% at its driest and %.1f %% at its dampest; it moves in proportion from %g to %g %%, and beyond that its movement is an estimate",
				season.Now, season.Dry, season.Damp, wood.MinLinear, wood.MaxLinear)}, climate.at)
	}
}

// elastic puts the shop's own figures of stiffness in the place of the material's, and
// checks that they can go together.
func (r *reader) elastic(stock *joinery.Stock, s *section) {
	get := s.values
	if along := get["stiffness"].number; along > 0 {
		stock.Stiffness, stock.StiffnessAcross, stock.StiffAs = along, along, ""
	}
	if across := get["stiffness-across"].number; across > 0 {
		stock.StiffnessAcross, stock.StiffAs = across, ""
	}
	if poisson := get["poisson"]; poisson.given {
		stock.Poisson = poisson.number
	}
	unread := get["stiffness"].given && get["stiffness"].number == 0 || get["material"].given && get["material"].text == ""
	for _, name := range []string{"stiffness-across", "shear", "poisson"} {
		r.noEffect(stock.Stiffness == 0 && stock.Thickness.Mean > 0 && !unread, get, name, "write `stiffness:` or `material:` too, or delete it", "how stiff the stock is along its grain is not known")
	}
	if stock.Stiffness == 0 {
		return
	}
	// A sheet that is alike in all directions has 1 / (2 (1 + Poisson)) of its
	// stiffness; one with a grain has less.
	most := plate.MostShear(stock.Stiffness, stock.StiffnessAcross)
	if shear := get["shear"]; shear.number > 0 {
		stock.Shear = shear.number
		if shear.number > most {
			r.fail(CodeOutOfRange, shear.at, "look for a slip of the decimal point in shear or stiffness, or delete shear",
				"shear is %.0f N/mm2: no sheet as stiff as %s has more than %.0f", shear.number, quote(s.name), most)
		}
	} else if stock.Shear > most/(1+stock.Poisson) { // the material's, beside the shop's own stiffness
		stock.Shear = 0
	}
}
