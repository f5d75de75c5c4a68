package present

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
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
		size := k.AsWritten(z)
		count := words.Count(z.Used, noun, noun+"s")
		if z.Name != "" && z.Name != k.Stock && !z.Offcut { // the material of a list
			count += " of " + z.Name + ","
		} else {
			count += " of"
		}
		fmt.Fprintf(&out, "%s %s x %s %s", count, tape(size[0], u), tape(size[1], u), u)
		if along, ok := k.GrainAlong(z); ok {
			fmt.Fprintf(&out, " with the grain along the %s", tape(along, u))
		} else if k.Grained {
			out.WriteString(" with the grain along x")
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

// SheetSizes says how sizes of boards and pieces of sheets are meant.
const SheetSizes = "Sizes are along x and y of the sheet."

// SheetsHow says by which rules a stock was laid out.
func SheetsHow(k record.SheetStock, u geom.Unit) string {
	how := "laid out for cutting " + map[bool]string{true: "from edge to edge", false: "each part out by " +
		"itself"}[k.Method == nest.Guillotine.String()]
	if k.Stages > 0 {
		how += fmt.Sprintf(" in %d stages", k.Stages)
	}
	how += firstCuts(k) + fmt.Sprintf(", kerf %s, trim %s %s", inShop(k.Kerf, u), inShop(k.Trim, u), u)
	switch {
	case k.EndTrim > k.Trim && len(k.KeepOut) > 0:
		how += fmt.Sprintf(" and %s at the left end, for areas to keep out of", caliper(k.EndTrim, u))
	case k.EndTrim > k.Trim:
		how += fmt.Sprintf(" and %s at the ends, for registration holes", caliper(k.EndTrim, u))
	}
	for i, one := range k.Measured {
		how += fmt.Sprintf("; sheet %d is %s", i+1, MeasuredSheet(one, u))
	}
	return how
}

// firstCuts says how first cuts run, where that is asked for, and what it costs.
func firstCuts(k record.SheetStock) string {
	if k.FirstCuts == "" {
		return ""
	}
	more := "no sheet more"
	if k.FirstMore > 0 {
		more = words.Count(k.FirstMore, "sheet more", "sheets more")
	}
	if k.FirstMoreCost > 0 {
		more += fmt.Sprintf(", cost %.2f more,", k.FirstMoreCost)
	}
	along := map[string]string{job.FirstRip: "along", job.FirstCrosscut: "across"}[k.FirstCuts]
	return fmt.Sprintf(", first cuts %s the longer side of a sheet (%s than without that)", along, more)
}

// MeasuredNumbers are those of sheets that are cut alike, where each was measured, behind what they are called else.
func MeasuredNumbers(k record.SheetStock, one record.LaidSheet) (said string) {
	for at := one.Number - 1; at < min(one.Number-1+one.Count, len(k.Measured)); at++ {
		said += fmt.Sprintf(", your sheet %d", k.Measured[at].Number)
	}
	return said
}

// MeasuredSheet is a sheet as the shop knows it: by its number in the order of the readings, and what it measures.
func MeasuredSheet(one record.MeasuredSheet, u geom.Unit) string {
	return fmt.Sprintf("your sheet %d, %s %s", one.Number, caliper(one.Thickness, u), u)
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
	for _, note := range append(SheetNotes(k, u), heldKeys(k)) {
		if note != "" {
			fmt.Fprintln(out, note)
		}
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
		name += MeasuredNumbers(k, sheet)
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

func cutsText(out *Printed, k record.SheetStock, u geom.Unit) {
	if len(k.Cuts) == 0 {
		return
	}
	fmt.Fprintf(out, "\ncuts of %s\n", k.Stock)
	CutTable(k.Cuts, u).Print(out, "")
	for _, n := range append([]string{SheetSizes}, CutNotes(k, u)...) {
		fmt.Fprintln(out, n)
	}
	choicesText(out, k, u)
	if weightUnknown(k) {
		fmt.Fprintln(out, "In a job, `material` or `density` of the stock gives its weight.")
	}
}

// choicesText prints the layouts from which there is to choose, where there is a choice.
func choicesText(out *Printed, k record.SheetStock, u geom.Unit) {
	if len(k.Choices) == 0 {
		return
	}
	t := NewTable(Words("prefer"), Numbers("boards"), Numbers("cost"), Numbers("settings"), Numbers("cuts"),
		Numbers("turns"), Numbers("minutes"), In("largest offcut", u.String()), Words(""))
	for _, c := range k.Choices {
		offcut, taken := "-", ""
		if c.Offcut[0] > 0 {
			offcut = usable(c.Offcut[0], c.Offcut[1], u)
		}
		if c.Taken {
			taken = "this one"
		}
		t.Add(strings.Join(c.Prefer, ", "), fmt.Sprint(c.Sheets), fmt.Sprintf("%.2f", c.Cost), fmt.Sprint(c.Settings),
			fmt.Sprint(c.Cuts), fmt.Sprint(c.Turns), fmt.Sprint(c.Minutes), offcut, taken)
	}
	if k.Choices[0].Cost == k.Choices[len(k.Choices)-1].Cost {
		t = t.Without(2) // only the last can cost more
	}
	fmt.Fprintln(out, "Layouts to choose from, in a job by `prefer:` in the section sheets; settings are of "+
		"fence, stop and guide, but for clean-ups, minutes by the `times:` there or usual ones (common practice, no source):")
	t.Print(out, "")
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
				size := k.Sizes[sheet.Size].Name
				w.Write([]string{words.Cell(k.Stock), fmt.Sprint(sheet.Number), fmt.Sprint(sheet.Count), words.Cell(size),
					kind, words.Cell(name),
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
			row := []string{words.Cell(k.Stock), fmt.Sprint(i + 1), fmt.Sprint(c.Stage), c.Kind, plain(c.Setting),
				fmt.Sprint(c.Count), c.Workpiece.Name}
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
