package present

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// PartsCSV is the cut list: a line for each part, lengths as decimal numbers in the
// job's unit, and the size once more as a person writes it.
func PartsCSV(r record.Kept) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write([]string{"part", "drawer", "role", "quantity", "length", "width", "thickness", "units",
		"size", "stock", "grain", "inside_file", "outside_file"})
	u := r.Unit()
	for _, p := range r.Parts.All() {
		length, width := of(p.Length), of(p.Width)
		w.Write([]string{
			p.Name, p.Drawer, p.Role, strconv.Itoa(p.Quantity),
			length.Decimal(u), width.Decimal(u), of(p.Thickness).Decimal(u), u.String(),
			length.Number(u) + " x " + width.Text(u), p.Stock, p.Grain, p.Files.Inside, p.Files.Outside,
		})
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}

// CutListCSV is what a shop cuts: a line for each group of equal parts, by stock
// and setting, with the part whose drawing serves for all of them first.
func CutListCSV(r record.Kept) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write([]string{"stock", "setting", "pieces", "spares", "length", "width", "thickness", "units",
		"size", "grain", "cuts", "banding", "parts", "number"})
	u := r.Unit()
	for _, g := range r.CutList {
		length, width := of(g.Length), of(g.Width)
		w.Write([]string{
			g.Stock, settingOf(g, u), strconv.Itoa(g.Quantity), strconv.Itoa(g.Spares),
			length.Decimal(u), width.Decimal(u), of(g.Thickness).Decimal(u), u.String(),
			length.Number(u) + " x " + width.Text(u), g.Grain, g.Cuts, g.Banding, strings.Join(g.Parts, " "),
			strconv.Itoa(g.Number),
		})
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}

// of is a length of a record in whole nanometers, as it is printed.
func of(v record.Length) geom.Length { return geom.LengthOf(v.MM()) }

// settingOf is the fence distance and cutter height that serve a group; a dash for parts
// that are not cut.
func settingOf(g record.CutGroup, u geom.Unit) string {
	if g.Setting == nil {
		return "-"
	}
	return caliper(g.Setting[0], u) + " / " + caliper(g.Setting[1], u)
}

// settingHeading is the heading of the column of settings of some groups.
func settingHeading(groups []record.CutGroup) string {
	if slices.ContainsFunc(groups, func(g record.CutGroup) bool { return g.Machine != string(joinery.Router) }) {
		return "fence / height"
	}
	return "slots from edge / deep"
}

// NumberColumn is the heading of the numbers of parts.
const NumberColumn = "no."

// StockParts are the parts of a cut list that are cut from one stock.
type StockParts struct {
	Stock     string
	Thickness string // the mean of the readings, with its unit
	Grained   bool   // the grain runs along the length of all of them
	Spares    bool   // some of them are spare
	Settings  bool   // they are cut at several settings
	Setting   string // the heading of the column of settings
	// Table has all columns that any output shows: [NumberColumn], pieces, length, width, cuts, of them
	// spare, [StockParts.Setting], grain, banding, parts. Whoever sorts pieces finds each by its name: none is left
	// out.
	Table Table
	// Blanks say what parts are cut out of by a router, or which of them are sawn and grooved as one size and one
	// board, and what each gets afterward.
	Blanks []string
}

// CutList is the cut list, stock by stock.
func CutList(groups []record.CutGroup, blanks []record.Blank, u geom.Unit) (list []StockParts) {
	for from, to := 0, 0; from < len(groups); from = to {
		stock := groups[from].Stock
		for to < len(groups) && groups[to].Stock == stock {
			to++
		}
		one := stockParts(groups[from:to], u)
		if said := routedFrom(groups[from:to], u); said != "" {
			one.Blanks = append(one.Blanks, said)
		}
		for _, b := range blanks {
			if b.Stock == stock {
				one.Blanks = append(one.Blanks, blankNote(b, u))
			}
		}
		list = append(list, one)
	}
	return list
}

func stockParts(groups []record.CutGroup, u geom.Unit) StockParts {
	first, unit := groups[0], u.String()
	out := StockParts{Stock: first.Stock, Thickness: of(first.Thickness).AsSet(u) + " " + unit, Grained: first.Grain != "none",
		Setting: settingHeading(groups)}
	out.Table = NewTable(Numbers(NumberColumn), Numbers("pieces"), In("length", unit),
		In("width", unit), Words("cuts"),
		Numbers("of them spare"), Column{Heading: out.Setting, Unit: unit}, Words("grain"), Words("banding"), Words("parts"))
	settings := make(map[string]bool)
	for _, g := range groups {
		out.Spares = out.Spares || g.Spares > 0
		setting := settingOf(g, u)
		if setting != "-" {
			settings[setting] = true
		}
		out.Table.Add(fmt.Sprint(g.Number), fmt.Sprint(g.Quantity),
			of(g.Length).Measured(u), of(g.Width).Measured(u), g.Cuts,
			fmt.Sprint(g.Spares), setting, g.Grain, g.Banding, strings.Join(g.Parts, ", "))
	}
	out.Settings = len(settings) > 1
	return out
}

// ofSheets names the sheets of a stock whose readings are meant, where each was measured.
func ofSheets(stocks []record.SheetStock, name string) string {
	var numbers []string
	for _, k := range stocks {
		for _, one := range k.Measured {
			if k.Stock == name {
				numbers = append(numbers, fmt.Sprint(one.Number))
			}
		}
	}
	switch len(numbers) {
	case 0:
		return ""
	case 1:
		return " of your sheet " + numbers[0]
	}
	return " of your sheets " + words.And(numbers)
}

// cutListText prints the cut list.
func cutListText(out *Printed, r record.Kept) {
	for _, s := range CutList(r.CutList, r.Blanks, r.Unit()) {
		grain := ""
		if s.Grained {
			grain = "; the grain runs along the length"
		}
		fmt.Fprintf(out, "%s, %s thick (mean of the readings%s)%s\n", s.Stock, s.Thickness,
			ofSheets(r.Sheets, s.Stock), grain)
		shown := []string{NumberColumn, "pieces", "length", "width", "cuts"}
		if s.Spares {
			shown = append(shown, "of them spare")
		}
		if s.Settings {
			shown = append(shown, s.Setting)
		}
		s.Table.Pick(append(shown, "parts")...).Print(out, "")
		for _, said := range s.Blanks {
			fmt.Fprintln(out, said)
		}
		fmt.Fprintln(out)
		if l := RoughOf(r.Lumber, s.Stock); l != nil {
			fmt.Fprintln(out, RoughText(*l, r.Unit()))
			RoughTable(*l, r.Unit()).Print(out, "")
			for _, said := range RoughNotes(*l, r.Unit()) {
				fmt.Fprintln(out, said)
			}
			fmt.Fprintln(out)
		}
	}
}

// routedFrom says of what size the blanks are that a router cuts parts out of, by the numbers of these; empty where it
// does not.
func routedFrom(groups []record.CutGroup, u geom.Unit) string {
	var sizes []string
	numbers := make(map[string][]string)
	for _, g := range groups {
		if g.Blank == nil {
			continue
		}
		size := blankSize(*g.Blank, u)
		if numbers[size] == nil {
			sizes = append(sizes, size)
		}
		numbers[size] = append(numbers[size], fmt.Sprint(g.Number))
	}
	if len(sizes) == 0 {
		return ""
	}
	for i, size := range sizes {
		sizes[i] = fmt.Sprintf("no. %s: %s", words.And(numbers[size]), size)
	}
	return fmt.Sprintf("Cut blanks of at least these sizes in %s; the router cuts the parts out of them: %s", u,
		strings.Join(sizes, "; "))
}

// blankSize is the least length and width of a blank.
func blankSize(b [2]record.Length, u geom.Unit) string {
	return caliper(b[0], u) + " x " + caliper(b[1], u)
}

// blankNote says what parts a blank is sawn for, and what each gets afterward.
func blankNote(b record.Blank, u geom.Unit) string {
	var gets []string
	for _, p := range b.Parts {
		then := p.LaterCuts
		switch {
		case then == "" && p.Quantity > 1:
			then = "stay as they are"
		case then == "":
			then = "stays as it is"
		case p.Quantity > 1:
			then = "get " + then + " each"
		default:
			then = "gets " + then
		}
		gets = append(gets, fmt.Sprintf("%d (%s) %s", p.Quantity, strings.Join(p.Parts, ", "), then))
	}
	return fmt.Sprintf("%s, %s x %s %s, with the same cuts: %s", words.Count(b.Quantity, "blank", "blanks"),
		of(b.Length).Measured(u), of(b.Width).Measured(u), u, strings.Join(gets, "; "))
}
