package report

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"fmt"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// SheetsText prints layouts, and how saws take the sheets apart.
func SheetsText(s Sheets, u geom.Unit) []byte {
	var out bytes.Buffer
	if s.Job != "" {
		fmt.Fprintf(&out, "%s: sheets\n", s.Job)
	}
	if len(s.Stocks) == 0 {
		fmt.Fprintln(&out, "\nNo stock has the size of its sheets: write `sheet: 2440 x 1220` into it.")
	}
	for _, k := range s.Stocks {
		layoutText(&out, k, u)
		cutsText(&out, k, u)
	}
	return out.Bytes()
}

// SheetsSummary is the first line of a stock's layout: sheets, bound, yield and cost.
func SheetsSummary(k SheetStock, u geom.Unit) string {
	var out bytes.Buffer
	for i, z := range used(k) {
		if i > 0 {
			out.WriteString(", ")
		}
		noun := map[bool]string{false: "sheet", true: "offcut"}[z.Offcut]
		fmt.Fprintf(&out, "%s of %s x %s %s", count(z.Used, noun), caliper(z.Length, u), caliper(z.Width, u), u)
	}
	if len(k.Sheets) == 0 {
		out.WriteString("no sheet")
	}
	fmt.Fprintf(&out, "; %s; %.1f %% of them is parts", k.Said, 100*k.Yield)
	if k.Cost > 0 {
		fmt.Fprintf(&out, "; cost %.2f", k.Cost)
	}
	return out.String()
}

// SheetsHow says by which rules a stock was laid out.
func SheetsHow(k SheetStock, u geom.Unit) string {
	how := map[bool]string{true: "cut from edge to edge", false: "each part cut out by itself"}[k.Way == nest.Guillotine.String()]
	if k.Stages > 0 {
		how += fmt.Sprintf(" in %d stages", k.Stages)
	}
	how += fmt.Sprintf(", kerf %s, trim %s %s", caliper(k.Kerf, u), caliper(k.Trim, u), u)
	if k.Ends > k.Trim {
		how += fmt.Sprintf(" and %s at the ends, for registration holes", caliper(k.Ends, u))
	}
	return how
}

func layoutText(out *bytes.Buffer, k SheetStock, u geom.Unit) {
	fmt.Fprintf(out, "\n%s: %s\n%s\n", k.Stock, SheetsSummary(k, u), SheetsHow(k, u))
	var rows [][]string
	for _, sheet := range k.Sheets {
		name := numbers(sheet)
		if len(k.Sizes) > 1 {
			name += " " + k.Sizes[sheet.Size].Name
		}
		offcut := "-"
		if len(sheet.Offcuts) > 0 {
			o := sheet.Offcuts[0]
			if offcut = caliper(o.Length, u) + " x " + caliper(o.Width, u); len(sheet.Offcuts) > 1 {
				offcut += fmt.Sprintf(" and %d more", len(sheet.Offcuts)-1)
			}
		}
		for n, p := range counted(sheet) {
			row := []string{"", "", "", fmt.Sprintf("%d x %s", p.Count, p.Part)}
			if n == 0 {
				row[0], row[1], row[2] = name, fmt.Sprintf("%.1f %%", 100*sheet.Yield), offcut
			}
			rows = append(rows, row)
		}
	}
	table(out, []string{"sheet", ">parts", ">offcut " + u.String(), "pieces"}, rows)
	for _, p := range k.Left {
		fmt.Fprintf(out, "no sheet holds %d x %s\n", p.Count, p.Part)
	}
	if !k.Whole {
		fmt.Fprintln(out, "The search was stopped: more time may save a sheet.")
	}
}

// numbers are those of the sheets that are cut alike.
func numbers(s LaidSheet) string {
	if s.Count > 1 {
		return fmt.Sprintf("%d (%d alike)", s.Number, s.Count)
	}
	return fmt.Sprint(s.Number)
}

// CutRows are the lines of a table of cuts: number, setting, how, board, what it gives
// and what stays in hand.
func CutRows(cuts []SawCut, u geom.Unit) (rows [][]string) {
	size := func(h Hand) string { return caliper(h.Length, u) + " x " + caliper(h.Width, u) }
	for i, c := range cuts {
		setting := caliper(c.Setting, u)
		if !c.Moved {
			setting = "as before"
			if c.Kind == "hand-held" {
				setting = "guide at " + caliper(c.Setting, u)
			}
		}
		how := c.Kind
		if c.Count > 1 {
			how += fmt.Sprintf(", %d boards", c.Count)
		}
		gives, left := "sawdust", "-"
		if c.Gives != nil {
			gives = c.Gives.Name
			if !c.Gives.Piece && c.Kind != "trim" {
				gives += ", " + size(*c.Gives)
			}
		}
		if c.Left != nil {
			switch left = size(*c.Left); {
			case c.Left.Piece:
				left = c.Left.Name
			case c.Left.Offcut:
				left += ", offcut"
			case c.Left.Waste:
				left += ", waste"
			case c.Left.Name != c.From.Name:
				left = c.Left.Name + ", " + left
			}
		}
		note := ""
		switch {
		case c.Short:
			note = "too small to hold by hand: sled and clamp, or by hand saw"
		case c.Two && c.Kind != "hand-held":
			note = "two persons"
		}
		rows = append(rows, []string{fmt.Sprint(i + 1), setting, how, c.From.Name, gives, left, note})
	}
	return rows
}

// CutHead is the head of that table.
func CutHead(u geom.Unit) []string {
	return []string{">cut", ">fence or stop " + u.String(), "how", "board", "gives", "left in hand " + u.String(), ""}
}

// CutNotes say how the table of cuts is to be read, and what can hurt.
func CutNotes(k SheetStock) []string {
	list := []string{
		fmt.Sprintf("%d cuts, the fence or stop is set %s. Sizes are along x and y of the sheet; a board keeps its name while pieces are cut off it.", len(k.Cuts), times(k.Moves)),
		"A trim straightens an edge, with the factory edge against the fence; then the straight edge runs along it. What a rip gives is between fence and blade.",
		"A crosscut is made on a sled or mitre gauge against a stop, never along the fence: the edge is shorter than the piece is wide, or shorter than 300 mm (common practice, no source).",
	}
	kinds := make(map[string]bool)
	short := false
	for _, c := range k.Cuts {
		kinds[c.Kind] = true
		short = short || c.Short
	}
	if len(k.Sheets) > 0 && k.Sheets[0].Weight == 0 {
		list = append(list, "How heavy a sheet is, is not known: write material or density into the stock. A full sheet can be too heavy for one person; cut it in two where it lies, with a hand-held saw along a guide.")
	}
	if kinds["hand-held"] {
		list = append(list, "Hand-held cuts make heavy sheets light enough: lay the sheet flat on foam or battens, saw along a clamped guide, both halves supported. Measure from the edge that is trimmed later.")
	}
	if short {
		list = append(list, "Boards shorter than 300 mm are not held by hand at a saw: clamp them to a sled, or saw them by hand. They come last, from the longest board that there is.")
	}
	return append(list, "Guard and riving knife on, push stick for what is narrower than 150 mm; local rules and the saw's manual come first.")
}

func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

func cutsText(out *bytes.Buffer, k SheetStock, u geom.Unit) {
	if len(k.Cuts) == 0 {
		return
	}
	fmt.Fprintf(out, "\ncuts of %s\n", k.Stock)
	table(out, CutHead(u), CutRows(k.Cuts, u))
	for _, n := range CutNotes(k) {
		fmt.Fprintln(out, n)
	}
}

// used are the sizes of sheets that are used.
func used(k SheetStock) []SheetSize {
	return slices.DeleteFunc(slices.Clone(k.Sizes), func(z SheetSize) bool { return z.Used == 0 })
}

// counted are the pieces of a sheet by part.
func counted(s LaidSheet) (list []Pieces) {
	at := make(map[string]int)
	for _, p := range s.Placed {
		i, known := at[p.Part]
		if !known {
			i = len(list)
			at[p.Part] = i
			list = append(list, Pieces{Part: p.Part})
		}
		list[i].Count++
	}
	slices.SortStableFunc(list, func(a, b Pieces) int { return cmp.Compare(a.Part, b.Part) })
	return list
}

// SheetsCSV is the place of every piece and offcut on its sheet.
func SheetsCSV(s Sheets) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write([]string{"stock", "sheet", "alike", "size", "kind", "name", "x", "y", "length", "width", "turned"})
	for _, k := range s.Stocks {
		for _, sheet := range k.Sheets {
			row := func(kind, name string, b Box, turned string) {
				w.Write([]string{k.Stock, fmt.Sprint(sheet.Number), fmt.Sprint(sheet.Count), k.Sizes[sheet.Size].Name, kind, name,
					fmt.Sprint(b.X), fmt.Sprint(b.Y), fmt.Sprint(b.Length), fmt.Sprint(b.Width), turned})
			}
			for _, p := range sheet.Placed {
				row("part", p.Part, p.Box, map[bool]string{false: "no", true: "yes"}[p.Turned])
			}
			for _, o := range sheet.Offcuts {
				row("offcut", "", o, "")
			}
		}
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}

// CutsCSV is the cuts of all stocks in order.
func CutsCSV(s Sheets) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write([]string{"stock", "cut", "stage", "how", "setting", "boards", "board", "gives", "gives_length", "gives_width", "left", "left_length", "left_width"})
	for _, k := range s.Stocks {
		for i, c := range k.Cuts {
			row := []string{k.Stock, fmt.Sprint(i + 1), fmt.Sprint(c.Stage), c.Kind, fmt.Sprint(c.Setting), fmt.Sprint(c.Count), c.From.Name}
			for _, h := range []*Hand{c.Gives, c.Left} {
				if h == nil {
					row = append(row, "", "", "")
				} else {
					row = append(row, h.Name, fmt.Sprint(h.Length), fmt.Sprint(h.Width))
				}
			}
			w.Write(row)
		}
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}
