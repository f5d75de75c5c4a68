package job

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/wood"
	"fmt"
)

// Banding is what the edges of a stock are banded with.
type Banding struct {
	Stock     string
	Thickness float64 // mm
	Price     float64 // of a meter, in the job's own currency; 0 when not said
}

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

// stocks makes the stocks of a job, their rough boards and their bandings.
func (r *reader) stocks(root *section, j *Job) {
	climate := root.values["climate"]
	if s := climate.section; s != nil {
		r.checkClimate(s)
	}
	moves := false
	for _, s := range root.values["stock"].sections {
		stock := r.stock(s, climate.section)
		moves = moves || s.values["material"].text != "" || s.values["movement"].given
		if b := r.boardsOf(s, &stock); b != nil {
			j.Lumber = append(j.Lumber, *b)
		}
		j.Stocks = append(j.Stocks, stock)
		if b := s.values["edge-banding"].section; b != nil {
			j.Bandings = append(j.Bandings, Banding{Stock: s.name, Thickness: b.values["thickness"].mm(0), Price: b.values["price"].number * r.perMeter()})
		}
	}
	if climate.given && !moves && !r.lost && len(j.Stocks) > 0 && !r.unsure(root) {
		r.fail(CodeNoEffect, climate.at, "delete it, or write the `material:` or `movement:` of a stock", "climate is for wood and sheets that move with it, and no stock says what it is made of")
	}
}

// perMeter is how often what a price is for goes into a meter: a foot in a file of inches.
func (r *reader) perMeter() float64 {
	if r.units == geom.Inch {
		return 1000 / (12 * geom.InchMM)
	}
	return 1
}

// unsure reports whether a material is given that could not be read.
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
		r.fail(CodeOutOfRange, dampest.at, "exchange the two",
			"dampest is %g %%, drier than driest, %g %%", dampest.number, driest.number)
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
	if !r.unlike(stock.Thickness, get["thickness"].at) {
		r.noOutlier(get["thickness"].lengths, get["thickness"].at)
	}
	r.tolerance(&stock.Thickness, get["thickness"], get["tolerance"])
	r.material(&stock, s, climate)
	return stock
}

// unlike warns of readings that differ by more than sheets of one order do, and reports whether they do.
func (r *reader) unlike(t joinery.Thickness, at Position) bool {
	minus, plus, err := wood.Tolerance(wood.EN315Sanded, t.Mean)
	differ := t.Max - t.Min
	if err != nil || differ <= minus+plus {
		return false
	}
	r.add(Problem{Level: geom.LevelWarning, Code: CodeUnevenReadings,
		Hint: "look for a mistyped digit and measure again; sheets of two orders are two stocks, or are sorted " +
			"with `readings-per-sheet`",
		Message: fmt.Sprintf("the readings of thickness differ by %.1f %% of their mean; "+
			"EN 315 allows sanded sheets %.1f %%", 100*differ/t.Mean, 100*(minus+plus)/t.Mean)}, at)
	return true
}

// tolerance spreads a single reading as its standard does.
func (r *reader) tolerance(t *joinery.Thickness, readings, tolerance value) {
	if tolerance.text == "" || len(readings.lengths) == 0 {
		return
	}
	if len(readings.lengths) > 1 {
		r.fail(CodeNoEffect, tolerance.at, "delete it, or give only one reading",
			"tolerance spreads a single reading, and here are %d", len(readings.lengths))
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
