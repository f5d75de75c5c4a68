package present

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// PrintSheets prints layouts, and how saws take the sheets apart.
func PrintSheets(out *Printed, s record.Sheets, u geom.Unit) {
	if s.Job != "" {
		fmt.Fprintf(out, "%s: sheets\n", s.Job)
	}
	if len(s.Stocks) == 0 {
		fmt.Fprintln(out, "\nNo stock has the size of its sheets: write `sheet: 2440 x 1220` into it.")
	}
	for _, k := range s.Stocks {
		layoutText(out, k, u)
		cutsText(out, k, u)
	}
	runsText(out, s.Stocks, u)
}

// SheetsSummary is the first line of a stock's layout: sheets, bound, yield and cost.
func SheetsSummary(k record.SheetStock, u geom.Unit) string {
	var out bytes.Buffer
	for i, z := range record.UsedSizes(k) {
		if i > 0 {
			out.WriteString(", ")
		}
		noun := map[bool]string{false: "sheet", true: "offcut"}[z.Offcut]
		size, grain := k.AsWritten(z)
		count := words.Count(z.Used, noun, noun+"s")
		fmt.Fprintf(&out, "%s of %s x %s %s", count, tape(size[0], u), tape(size[1], u), u)
		if grain == 1 {
			fmt.Fprintf(&out, " with the grain along the %s %s", tape(size[1], u), u)
		}
	}
	if len(k.Sheets) == 0 {
		out.WriteString("no sheet")
	}
	fmt.Fprintf(&out, "; %s; yield %.1f %%", k.Summary, 100*k.Yield)
	if k.Cost > 0 {
		fmt.Fprintf(&out, "; cost %.2f", k.Cost)
	}
	return out.String()
}

// SheetsHow says by which rules a stock was laid out.
func SheetsHow(k record.SheetStock, u geom.Unit) string {
	how := map[bool]string{true: "cut from edge to edge", false: "each part cut out by itself"}[k.Method == nest.Guillotine.String()]
	if k.Stages > 0 {
		how += fmt.Sprintf(" in %d stages", k.Stages)
	}
	how += fmt.Sprintf(", kerf %s, trim %s %s", inShop(k.Kerf, u), inShop(k.Trim, u), u)
	switch {
	case k.EndTrim > k.Trim && len(k.KeepOut) > 0:
		how += fmt.Sprintf(" and %s at the left end, for areas to keep out of", caliper(k.EndTrim, u))
	case k.EndTrim > k.Trim:
		how += fmt.Sprintf(" and %s at the ends, for registration holes", caliper(k.EndTrim, u))
	}
	return how
}

// inShop prints a length that nobody reads off a caliper: in inches as a fraction where it is one.
func inShop(v record.Length, u geom.Unit) string {
	if u == geom.Inch {
		return of(v).Number(u)
	}
	return caliper(v, u)
}

// layoutText prints a layout, with how its sheets lie and what holds their parts.
func layoutText(out *Printed, k record.SheetStock, u geom.Unit) {
	fmt.Fprintf(out, "\n%s: %s\n%s\n", k.Stock, SheetsSummary(k, u), SheetsHow(k, u))
	piecesText(out, k, u)
	for _, note := range SheetNotes(k, u) {
		fmt.Fprintln(out, note)
	}
	if !k.Completed {
		fmt.Fprintln(out, "The search was stopped: more time may save a sheet.")
	}
}

// piecesText prints which pieces lie on which sheet, and those that lie on none.
func piecesText(out *Printed, k record.SheetStock, u geom.Unit) {
	t := NewTable(Words("sheet"), Numbers("parts"), In("offcut", u.String()), Words("pieces"))
	if k.Routed {
		t.Columns = append(t.Columns, Words("held by"))
	}
	for _, sheet := range k.Sheets {
		name := numbers(sheet)
		if len(k.Sizes) > 1 {
			name += " " + k.Sizes[sheet.Size].Name
		}
		offcut := "-"
		if len(sheet.Offcuts) > 0 {
			o := sheet.Offcuts[0]
			if offcut = usable(o.Length, o.Width, u); len(sheet.Offcuts) > 1 {
				offcut += fmt.Sprintf(" and %d more", len(sheet.Offcuts)-1)
			}
		}
		for n, like := range byPart(sheet) {
			row := []string{"", "", "", fmt.Sprintf("%d x %s", len(like), words.And(like[0].Names()))}
			if k.Routed {
				row = append(row, HeldBy(like))
			}
			if n == 0 {
				row[0], row[1], row[2] = name, fmt.Sprintf("%.1f %%", 100*sheet.Yield), offcut
			}
			t.Add(row...)
		}
	}
	t.Print(out, "")
	for _, p := range k.Unplaced {
		fmt.Fprintf(out, "no sheet holds %d x %s: %s\n", p.Count, p.Part, p.Reason)
	}
}

// numbers are those of the sheets that are cut alike.
func numbers(s record.LaidSheet) string {
	if s.Count > 1 {
		return fmt.Sprintf("%d (%d alike)", s.Number, s.Count)
	}
	return fmt.Sprint(s.Number)
}

// tape prints a length of a record as a tape is read.
func tape(v record.Length, u geom.Unit) string { return words.Tape(v.MM(), u) }

// usable prints the sides of an offcut, of inches none longer than it is.
func usable(length, width record.Length, u geom.Unit) string {
	return words.TapeAtMost(length.MM(), u) + " x " + words.TapeAtMost(width.MM(), u)
}

// stopAt prints what a fence or stop is set to: of inches with the nearest fraction beside it.
func stopAt(v record.Length, u geom.Unit) string {
	l := of(v)
	near, over := l.Near(u)
	switch {
	case near == "" && u == geom.Inch: // whole
		return l.Number(u)
	case near == "":
		return l.Fixed(u)
	case over == "":
		return near
	}
	return l.Fixed(u) + " (" + near + ")"
}

// setFor prints what fence, stop or guide is set to for a cut, after the cut before it.
func setFor(c, before record.SawCut, u geom.Unit) string {
	same := before.Kind == c.Kind && !before.Trim // of one device
	switch setting := stopAt(c.Setting, u); {
	case c.Trim && c.Kind != "fence cut":
		return "takes " + tape(c.Setting, u)
	case c.Kind == "hand-held" && same && before.Setting == c.Setting:
		return "guide as before"
	case c.Kind == "hand-held":
		return "guide at " + setting
	case !c.SettingChanged && same:
		return "as before"
	case !c.SettingChanged:
		return "still " + setting
	default:
		return setting
	}
}

// CutTable is a table of cuts: number, setting, how, board, what it gives and what stays in
// hand.
func CutTable(cuts []record.SawCut, u geom.Unit) Table {
	unit := u.String()
	t := NewTable(Numbers("cut"), In("fence or stop", unit), Words("how"), Words("board"), Words("piece"),
		Column{Heading: "remainder", Unit: unit}, Words(""))
	size := func(h record.Workpiece) string { return tape(h.Length, u) + " x " + tape(h.Width, u) }
	for i, c := range cuts {
		var before record.SawCut
		if i > 0 {
			before = cuts[i-1]
		}
		setting, how := setFor(c, before, u), c.Kind
		if c.Trim {
			how += ", clean-up"
		}
		if c.Count > 1 {
			how += fmt.Sprintf(", %d boards", c.Count)
		}
		gives, left := "sawdust", "-"
		if c.Yields != nil {
			gives = c.Yields.Name
			if !c.Yields.Piece && !c.Trim {
				gives += ", " + size(*c.Yields)
			}
		}
		if c.Remainder != nil {
			switch left = size(*c.Remainder); {
			case c.Remainder.Piece:
				left = c.Remainder.Name
			case c.Remainder.Offcut:
				clean := c.Remainder.CleanSize
				if left += ", offcut"; clean[0] < c.Remainder.Length || clean[1] < c.Remainder.Width {
					left += fmt.Sprintf(", %s clean", usable(clean[0], clean[1], u))
				}
			case c.Remainder.Waste:
				left += ", waste"
			case c.Remainder.Name != c.Workpiece.Name:
				left = c.Remainder.Name + ", " + left
			}
		}
		note := ""
		switch {
		case c.TooSmallToHold:
			note = "too small to hold by hand: sled and clamp, or by hand saw"
		case c.Remainder != nil && c.Remainder.Piece && !c.Trim:
			note = "measure what is left"
		case c.NeedsHelper && c.Kind != "hand-held":
			note = "two persons"
		}
		t.Add(fmt.Sprint(i+1), setting, how, c.Workpiece.Name, gives, left, note)
	}
	return t
}

// CutColumns is [CutTable] for columns beside each other: pieces by their names on the picture, of what stays in hand
// its size along the cut.
func CutColumns(cuts []record.SawCut, u geom.Unit) Table {
	t := NewTable(Numbers("cut"), In("set to", u.String()), Words("how"), Words("of"), Words("piece"), Words("rest"))
	for i, c := range cuts {
		var before record.SawCut
		if i > 0 {
			before = cuts[i-1]
		}
		gives := "sawdust"
		switch {
		case c.Trim:
			gives = "trim"
		case c.Yields != nil:
			gives = calledOnSheet(c.Yields.Name)
		}
		how := c.Kind
		if c.Count > 1 {
			how += fmt.Sprintf(", %d boards", c.Count)
		}
		t.Add(fmt.Sprint(i+1), setFor(c, before, u), how, c.Workpiece.Name, gives, restOf(c, u))
	}
	return t
}

// calledOnSheet is the name of a piece on the picture of its sheet, without the part that it is.
func calledOnSheet(name string) string {
	called, _, _ := strings.Cut(name, " ")
	return called
}

// restOf is what stays in hand of a cut, and what is to be watched.
func restOf(c record.SawCut, u geom.Unit) string {
	left := "-"
	if r := c.Remainder; r != nil {
		left = tape(r.Length, u)
		if r.Width != c.Workpiece.Width {
			left = tape(r.Width, u)
		}
		switch {
		case r.Piece:
			left = calledOnSheet(r.Name)
			if !c.Trim {
				left += ": measure"
			}
		case r.Offcut:
			left = "offcut"
		case r.Waste:
			left = "waste"
		case r.Name != c.Workpiece.Name:
			left = r.Name + ", " + left
		}
	}
	switch {
	case c.TooSmallToHold:
		left += "; too small to hold: sled and clamp"
	case c.NeedsHelper && c.Kind != "hand-held":
		left += "; two persons"
	}
	return left
}

// CutNotes say how the table of cuts is to be read, and what can hurt.
func CutNotes(k record.SheetStock, u geom.Unit) []string {
	kinds, trims := make(map[string]bool), false
	short, rest, guides := false, false, 0
	for _, c := range k.Cuts {
		if c.Kind == "hand-held" {
			guides++
		}
		kinds[c.Kind], trims = true, trims || c.Trim
		short, rest = short || c.TooSmallToHold, rest || c.Remainder != nil && c.Remainder.Piece && !c.Trim
	}
	set := "fence or stop is set " + times(k.SettingChanges)
	machine := kinds["fence cut"] || kinds["crosscut"]
	switch {
	case !machine:
		set = "each is measured and marked"
	case k.SettingChanges == 0:
		set = "neither fence nor stop is set"
	}
	if machine && guides > 0 {
		set += ", a guide is laid " + times(guides)
	}
	list := []string{fmt.Sprintf("%s; %s. Boards have the names that stand on the picture; "+
		"one keeps its name while pieces are cut off it. Sizes are along x and y of the picture, "+
		"and all is measured from the lower and the left edge of each board.",
		words.Count(len(k.Cuts), "cut", "cuts"), set)}
	say := func(when bool, text string) {
		if when {
			list = append(list, text)
		}
	}
	say(trims, "A clean-up cut takes the lower or the left edge off, straight and square: along the fence with the "+
		"opposite edge against it, on the sled without a stop, or along a guide. From then on that edge runs along the "+
		"fence, or lies at the stop.")
	say(kinds["fence cut"], "A fence cut runs along the fence; the piece that it gives is between fence and blade.")
	say(kinds["crosscut"], "A crosscut is made on a sled or miter gauge against a stop, never along the fence: the edge "+
		"is too short beside the board (common practice, no source).")
	say(kinds["hand-held"] && machine, "Hand-held cuts are made with a track saw, or a circular saw along a clamped guide, the board flat on foam or battens that hold both halves: where a board is too heavy for one person, too wide for the fence or too long for the sled. Take a fine blade: the edge stays on the piece.")
	say(kinds["hand-held"] && !machine, "All cuts are made with a track saw, or by hand along a clamped guide or a knifed line, the board flat on foam or battens that hold both halves. Take a fine blade: the edge stays on the piece. With a hand saw leave a little beside the line, and plane to it.")
	say(rest, fmt.Sprintf("Where the remainder is a part, it takes up any error of the kerf of %g %s: measure it.", k.Kerf.In(u), u))
	say(short && machine, "Boards shorter than "+words.Either(u, "300 mm", "12 in")+" are not held by hand at a saw: clamp them to a sled, or saw them by hand. Of small pieces keep the board long as long as there are any to cut from it.")
	say(len(k.Sheets) > 0 && k.Sheets[0].Weight == 0, "The weight of a sheet is not known: write `material` or `density` for the stock. A full sheet can be too heavy for one person; cut it in two where it lies, along a guide.")
	if !machine {
		return append(list, "Clamp board and guide, and keep both hands behind the teeth; what the maker of a saw with a motor says comes first.")
	}
	return append(list, "Guard and riving knife on, a push stick for what is narrower than "+words.Either(u, "150 mm", "6 in")+", slivers cleared only when the blade stands still; local rules and the saw's manual come first.")
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

func cutsText(out *Printed, k record.SheetStock, u geom.Unit) {
	if len(k.Cuts) == 0 {
		return
	}
	fmt.Fprintf(out, "\ncuts of %s\n", k.Stock)
	CutTable(k.Cuts, u).Print(out, "")
	for _, n := range CutNotes(k, u) {
		fmt.Fprintln(out, n)
	}
}

// byPart are the pieces of a sheet by part; by all their parts where sheets that are cut alike
// hold different ones.
func byPart(s record.LaidSheet) (list [][]record.SheetPlacement) {
	at := make(map[string]int)
	for _, p := range s.Placements {
		name := words.And(p.Names())
		i, known := at[name]
		if !known {
			i = len(list)
			at[name] = i
			list = append(list, nil)
		}
		list[i] = append(list[i], p)
	}
	slices.SortStableFunc(list, func(a, b []record.SheetPlacement) int { return cmp.Compare(a[0].Part, b[0].Part) })
	return list
}

// SheetsCSV is the place of every piece and offcut on its sheet.
func SheetsCSV(s record.Sheets) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	plain := func(l record.Length) string { return fmt.Sprint(l.In(s.Unit())) }
	w.Write([]string{"stock", "sheet", "alike", "size", "kind", "name", "x", "y", "length", "width", "turned"})
	for _, k := range s.Stocks {
		for _, sheet := range k.Sheets {
			row := func(kind, name string, b record.Box, turned string) {
				w.Write([]string{k.Stock, fmt.Sprint(sheet.Number), fmt.Sprint(sheet.Count), k.Sizes[sheet.Size].Name, kind, name,
					plain(b.X), plain(b.Y), plain(b.Length), plain(b.Width), turned})
			}
			for _, p := range sheet.Placements {
				row("part", strings.Join(p.Names(), " "), p.Box, map[bool]string{false: "no", true: "yes"}[p.Rotated])
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
func CutsCSV(s record.Sheets) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	plain := func(l record.Length) string { return fmt.Sprint(l.In(s.Unit())) }
	w.Write([]string{"stock", "cut", "stage", "how", "setting", "boards", "board", "piece", "piece_length", "piece_width", "remainder", "remainder_length",
		"remainder_width"})
	for _, k := range s.Stocks {
		for i, c := range k.Cuts {
			row := []string{k.Stock, fmt.Sprint(i + 1), fmt.Sprint(c.Stage), c.Kind, plain(c.Setting), fmt.Sprint(c.Count),
				c.Workpiece.Name}
			for _, h := range []*record.Workpiece{c.Yields, c.Remainder} {
				if h == nil {
					row = append(row, "", "", "")
				} else {
					row = append(row, h.Name, plain(h.Length), plain(h.Width))
				}
			}
			w.Write(row)
		}
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}
