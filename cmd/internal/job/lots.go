package job

import (
	"maps"
	"slices"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Sorted says which of its measured sheets each lot of a stock has, and what comes from which lots.
type Sorted struct {
	// Lots are those of each stock: their sheets by their places in [StockSheets.Measured], as they are cut.
	Lots   map[string][][]int
	Shares []Share // of the entries of the drawers, in their order
}

// Share is so many of the boxes of an entry, with the lot of each stock that is sorted and that they are of.
type Share struct {
	Entry, Count int
	Of           map[string]int
}

// lot is what a stock of [Sorted] is made of: a stock of the file, and the numbers of its sheets.
type lot struct {
	of      string
	numbers []int
}

// MeasuredSheet is a sheet of which the thickness was read.
type MeasuredSheet struct {
	Number    int // from 1, in the order of the readings
	Thickness joinery.Thickness
}

// measured takes the readings of a stock apart into its sheets.
func (b *builder) measured(of *section) (list []MeasuredSheet) {
	each, readings := of.values["readings-per-sheet"], of.values["thickness"].lengths
	if !each.given || len(readings) == 0 {
		return nil
	}
	n := int(each.number)
	if of.lot != nil {
		for i, number := range of.lot.numbers {
			list = append(list, MeasuredSheet{number, joinery.Measure(inMM(readings[i*n : (i+1)*n])...)})
		}
		return list
	}
	for _, name := range []string{"count", "other-sheets", "tolerance"} {
		if v := of.values[name]; v.given {
			b.fail(CodeNoEffect, v.at, "delete it, or readings-per-sheet",
				"%s is not for a stock of which each sheet was measured", name)
		}
	}
	if n < 1 { // which was reported
		return nil
	}
	if len(readings)%n != 0 || len(readings) < 2*n {
		b.fail(CodeOutOfRange, each.at, "write as many readings of each sheet, sheet by sheet, of two sheets at least",
			"thickness has %d readings, which are not %d of each of several sheets", len(readings), n)
		return nil
	}
	for one := range slices.Chunk(readings, n) {
		list = append(list, MeasuredSheet{len(list) + 1, joinery.Measure(inMM(one)...)})
	}
	return list
}

func inMM(lengths []geom.Length) []float64 {
	list := make([]float64, len(lengths))
	for i, l := range lengths {
		list[i] = l.MM()
	}
	return list
}

// InLots is the job with its sheets in lots: a stock of several is one stock for each, by its name with a letter, and
// a drawer of one has the letter behind its name.
func (j *Job) InLots(s Sorted) (*Job, Problems) {
	return Read(j.File, strings.NewReader(strings.Join(j.src.lines, "\n")), Files(j.open), inLots(&s))
}

func inLots(s *Sorted) Option { return func(r *reader) { r.lots = s } }

// WholeShares are those of a job as it is written.
func (j *Job) WholeShares() (list []Share) {
	for i, d := range j.Drawers {
		if i == 0 || j.Drawers[i-1].entry != d.entry {
			list = append(list, Share{Entry: d.entry, Count: d.Count})
		}
	}
	return list
}

// Uses reports whether the drawers of an entry have a part of a stock.
func (j *Job) Uses(entry int, stock string) bool {
	return slices.ContainsFunc(j.Drawers, func(d Drawer) bool {
		of := []joinery.Stock{d.Sides, d.Front, d.Back, d.Bottom}
		for _, one := range d.Dividers {
			of = append(of, one.Stock)
		}
		if d.Insert != nil {
			of = append(of, d.Insert.Stock)
		}
		if d.DrawerFront != nil {
			of = append(of, d.DrawerFront.Stock)
		}
		return d.entry == entry && slices.ContainsFunc(of, func(s joinery.Stock) bool { return s.Name == stock })
	})
}

// apply puts the stocks and the drawers of a file into their lots.
func (s *Sorted) apply(root *section) {
	s.stocks(root)
	drawers := root.values["drawers"]
	all := drawers.sections
	drawers.sections = nil
	for _, share := range s.Shares {
		one := all[share.Entry].copied()
		one.change("count", func(v *value) { v.number = float64(share.Count) })
		letters := ""
		for _, stock := range slices.Sorted(maps.Keys(share.Of)) {
			name := s.StockName(stock, share.Of[stock])
			letters += strings.TrimPrefix(name, stock)
			one.moveTo(stock, name)
		}
		one.change("name", func(v *value) { v.text += letters })
		drawers.sections = append(drawers.sections, one)
	}
	root.values["drawers"] = drawers
}

// stocks makes a stock of each lot.
func (s *Sorted) stocks(root *section) {
	stocks := root.values["stock"]
	var boards []*section
	for _, of := range stocks.sections {
		lots := s.Lots[of.name]
		if lots == nil {
			boards = append(boards, of)
		}
		for i, sheets := range lots {
			one := of.copied()
			one.name, one.lot = s.StockName(of.name, i), &lot{of: of.name}
			readings, each := of.values["thickness"], int(of.values["readings-per-sheet"].number)
			all := readings.lengths
			readings.lengths = nil
			for _, n := range sheets {
				readings.lengths = append(readings.lengths, all[n*each:(n+1)*each]...)
				one.lot.numbers = append(one.lot.numbers, n+1)
			}
			one.values["thickness"] = readings
			boards = append(boards, one)
		}
	}
	stocks.sections = boards
	root.values["stock"] = stocks
}

// StockName is the name of one of the lots of a stock; its own where there is only one.
func (s Sorted) StockName(stock string, lot int) string {
	if len(s.Lots[stock]) == 1 {
		return stock
	}
	letters := ""
	for n := lot + 1; n > 0; n = (n - 1) / 26 {
		letters = string(rune('A'+(n-1)%26)) + letters
	}
	return stock + " " + letters
}

// copied is a section of which values can be changed.
func (s *section) copied() *section {
	c := *s
	c.values = maps.Clone(s.values)
	return &c
}

func (s *section) change(key string, by func(*value)) {
	v := s.values[key]
	by(&v)
	s.values[key] = v
}

// moveTo has the parts of a drawer that are of a stock made of one of its lots.
func (s *section) moveTo(stock, lot string) {
	for key, v := range s.values {
		switch key {
		case "sides", "box-front", "back", "bottom", "stock":
			if v.text == stock {
				s.change(key, func(v *value) { v.text = lot })
			}
		case "drawer-front", "insert":
			if v.section != nil {
				v.section = v.section.copied()
				v.section.moveTo(stock, lot)
				s.values[key] = v
			}
		case "dividers":
			v.sections = slices.Clone(v.sections)
			for i, d := range v.sections {
				v.sections[i] = d.copied()
				v.sections[i].moveTo(stock, lot)
			}
			s.values[key] = v
		}
	}
}
