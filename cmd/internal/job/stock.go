package job

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/wood"
)

// Banding is what the edges of a stock are banded with.
type Banding struct {
	Stock     string
	Thickness float64 // mm
	Price     float64 // of a metre, in the job's own currency; 0 when not said
}

// acrossPart is the stiffness of solid wood across the grain as a part of that
// along it: at the low end of the Wood Handbook's table 5-1, from memory.
const acrossPart = 0.05

// usualMoisture is the moisture of wood that is weighed, in percent: that at which
// the Wood Handbook gives the specific gravity of dry wood.
const usualMoisture = 12

// The words for cuts.
const flatsawn, quartersawn = "flatsawn", "quartersawn"

// tolerances are the words for the standards on the thickness of sheets.
var tolerances = []struct {
	word     string
	standard wood.Standard
}{
	{"en315-sanded", wood.EN315Sanded}, {"en315-unsanded", wood.EN315Unsanded},
	{"ps1-sanded", wood.PS1Sanded}, {"ps1-unsanded", wood.PS1Unsanded},
}

func toleranceWord(s wood.Standard) string {
	for _, t := range tolerances {
		if t.standard == s {
			return t.word
		}
	}
	return ""
}

func toleranceWords() []string {
	var all []string
	for _, t := range tolerances {
		all = append(all, t.word)
	}
	return all
}

// materials are the words for sheets and kinds of solid wood.
func materials() []string { return append(wood.SheetNames(), wood.Names()...) }

// stocks makes the stocks of a job and their bandings.
func (r *reader) stocks(root *section) (stocks []joinery.Stock, bandings []Banding) {
	climate := root.values["climate"]
	if s := climate.section; s != nil {
		r.checkClimate(s)
	}
	solid := false
	for _, s := range root.values["stock"].sections {
		stock := r.stock(s, climate.section)
		solid = solid || stock.Solid
		stocks = append(stocks, stock)
		if b := s.values["banding"].section; b != nil {
			bandings = append(bandings, Banding{Stock: s.name, Thickness: b.values["thickness"].mm(0), Price: b.values["price"].number})
		}
	}
	if climate.given && !solid && !r.lost && len(stocks) > 0 && !r.unsure(root) {
		r.fail(CodeNoEffect, climate.at, "delete it, or write the `material:` of a stock", "climate is for solid wood, and no stock is")
	}
	return stocks, bandings
}

// unsure tells whether a material could not be read, so that solid wood may be meant.
func (r *reader) unsure(root *section) bool {
	for _, s := range root.values["stock"].sections {
		if m := s.values["material"]; m.given && m.text == "" {
			return true
		}
	}
	return false
}

func (r *reader) checkClimate(s *section) {
	driest, dampest := s.values["driest"], s.values["dampest"]
	if driest.number > 0 && dampest.number > 0 && driest.number > dampest.number {
		r.fail(CodeOutOfRange, dampest.at, "exchange the two", "dampest is %g %%, drier than driest, %g %%", dampest.number, driest.number)
		dampest.number = driest.number
		s.values["dampest"] = dampest
	}
}

func (r *reader) stock(s *section, climate *section) joinery.Stock {
	get := s.values
	stock := joinery.Stock{
		Name:   s.name,
		Length: get["sheet"].mm(0),
		Width:  get["sheet"].mm(1),
		Grain:  joinery.Grain(get["grain"].text),
		Price:  get["price"].number,
	}
	if stock.Grain == grainWidth { // turn the sheet, so that its length is along the grain
		stock.Length, stock.Width, stock.Grain = stock.Width, stock.Length, joinery.GrainLength
	}
	for _, z := range sheetSizes(s) {
		if z.Name != "" {
			stock.More = append(stock.More, [2]float64{z.Length, z.Width})
		}
	}
	if lengths := get["thickness"].lengths; len(lengths) > 0 {
		readings := make([]float64, len(lengths))
		for i, l := range lengths {
			readings[i] = l.MM()
		}
		stock.Thickness = joinery.Measure(readings...)
	}
	r.tolerance(&stock.Thickness, get["thickness"], get["tolerance"])
	r.material(&stock, s, climate)
	return stock
}

// tolerance spreads a single reading as its standard does.
func (r *reader) tolerance(t *joinery.Thickness, readings, tolerance value) {
	if tolerance.text == "" || len(readings.lengths) == 0 {
		return
	}
	if len(readings.lengths) > 1 {
		r.fail(CodeNoEffect, tolerance.at, "delete it, or give one reading alone", "tolerance spreads a single reading, and here are %d", len(readings.lengths))
		return
	}
	for _, kind := range tolerances {
		if kind.word != tolerance.text {
			continue
		}
		minus, plus, err := wood.Tolerance(kind.standard, t.Mean)
		if err != nil || t.Mean-minus < minThickness || t.Mean+plus > maxThickness {
			r.fail(CodeOutOfRange, tolerance.at, "delete it, and give readings of several sheets", "%s is not for a thickness of %s", kind.word, geom.LengthOf(t.Mean).Text(r.units))
			return
		}
		t.Min, t.Max = t.Mean-minus, t.Mean+plus
	}
}

// material sets what follows from the kind of sheet or wood, and what the file
// says instead.
func (r *reader) material(stock *joinery.Stock, s *section, climate *section) {
	get := s.values
	if sheet, found := wood.FindSheet(get["material"].text); found && stock.Thickness.Mean > 0 {
		stock.Density = sheet.Density
		if along, across, err := sheet.Stiffness(stock.Thickness.Mean); err == nil {
			stock.Stiffness, stock.StiffnessAcross = along, across
		}
	}
	species, solid := wood.Find(get["material"].text)
	if solid {
		stock.Solid, stock.Stiffness, stock.StiffnessAcross = true, species.Modulus, float64(acrossPart*species.Modulus)
		if density, err := wood.Density(species.Gravity, usualMoisture); err == nil {
			stock.Density = density
		}
		r.movement(stock, species, get["cut"].text, climate)
	} else if cut := get["cut"]; cut.given && (get["material"].text != "" || !get["material"].given) {
		r.fail(CodeNoEffect, cut.at, "delete it, or write a kind of wood as `material:`", "cut is for solid wood, and the stock %s is not", quote(s.name))
	}
	if density := get["density"].number; density > 0 {
		stock.Density = density
	}
	if along := get["stiffness"].number; along > 0 {
		stock.Stiffness, stock.StiffnessAcross = along, 0
	}
	if across := get["stiffness-across"].number; across > 0 {
		stock.StiffnessAcross = across
	}
}

// movement sets how much a solid stock swells and shrinks across the grain.
func (r *reader) movement(stock *joinery.Stock, species wood.Species, cut string, climate *section) {
	if climate == nil {
		return
	}
	sawn := wood.Flatsawn
	if cut == quartersawn {
		sawn = wood.Quartersawn
	}
	share := func(name string) float64 { return climate.values[name].number / 100 }
	season, err := wood.SeasonalMovement(species, sawn, share("now"), share("driest"), share("dampest"), climate.values["temperature"].number)
	if err != nil { // a humidity that could not be read, and that has been reported
		return
	}
	stock.Swelling, stock.Shrinkage = season.Swell, season.Shrink
}
