package present

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/opening"
)

// SharedSizeText says what is made in one size, or could be, and what that takes.
func SharedSizeText(a record.SharedSize, u geom.Unit) string {
	var shims []string
	for i, s := range a.Shims {
		if s > 0 {
			shims = append(shims,
				fmt.Sprintf("in %s %s at the left and at the right", a.Openings[i], words.Length(s.MM(), u)))
		}
	}
	between := "between the slides and the cabinet: "
	if len(shims) == 0 {
		between += "none"
	}
	between += strings.Join(shims, "; ")
	size := fmt.Sprintf("boxes for a governing opening of %s x %s %s", byRule(a.Width, u), byRule(a.Depth, u), u)
	if a.Rows > 0 {
		size += fmt.Sprintf(", of one height too in %d of the rows,", a.Rows)
	}
	if a.Made {
		return fmt.Sprintf("made in one size: %s serve %s. Shims %s.", size, strings.Join(a.Openings, " and "), between)
	}
	return fmt.Sprintf("near-equal openings: %s would serve %s. Write `group-openings: yes` in the job to make them in one size, with shims %s.", size, strings.Join(a.Openings, " and "), between)
}

// LinesCSV is the table of slide lines: heights over the lower edge of the opening.
func LinesCSV(r record.Kept) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write([]string{"opening", "drawer", "slide_line", "box_bottom", "front_bottom", "front_height", "shim", "units"})
	number := func(l record.Length) string { return geom.LengthOf(l.MM()).Decimal(r.Unit()) }
	for _, c := range r.Cabinets {
		for _, row := range c.Rows {
			line := ""
			if len(c.Files) > 0 { // else the slide has no height of its own
				line = number(row.SlideLine)
			}
			w.Write([]string{c.Name, row.Drawer, line, number(row.BoxBottom),
				number(row.FrontBottom), number(row.FrontHeight), number(c.Shim), r.Units})
		}
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}

// PackingText says how far the sides of a cabinet are packed out.
func PackingText(c record.Cabinet, u geom.Unit) string {
	if slices.ContainsFunc(c.Strips, func(s record.Strip) bool { return s.Part == string(opening.Guide) }) {
		return fmt.Sprintf("pack the cabinet's sides out by %s, level with its frame: that is what the guides do",
			words.Length(c.Packing.MM(), u))
	}
	return fmt.Sprintf("pack the cabinet's sides out by %s, level with its frame, where slides are screwed on",
		words.Length(c.Packing.MM(), u))
}

// ShimText says what is put between the slides and a cabinet.
func ShimText(c record.Cabinet, u geom.Unit) string {
	return fmt.Sprintf("put shims of %s between the slides and the cabinet, at the left and at the right",
		words.Length(c.Shim.MM(), u))
}

// SpacerText says on what the spacers of a cabinet stand.
func SpacerText(c record.Cabinet) string { return SpacersOf(c, c.Rows[len(c.Rows)-1].Drawer) }

// SpacersOf is [SpacerText] with other words for the lowest drawer, for several cabinets in which it is the same.
func SpacersOf(c record.Cabinet, called string) string {
	lowest := c.Rows[len(c.Rows)-1].Drawer // rows go from the top down
	on := "on the opening's lower edge"
	if !slices.ContainsFunc(c.Spacers, func(s record.Spacer) bool { return slices.Contains(s.Drawers, lowest) }) {
		return "two of each, under the slides of a drawer while they are screwed on, on the slides below"
	}
	said := "two of each, under the slides of a drawer while they are screwed on: those of " + called + " stand " + on
	if len(c.Rows) > 1 {
		said += ", the others on the slides below"
	}
	return said + ". A cabinet floor that is lower than that edge, as behind the rail of a face frame, asks for " +
		"those of " + called + " to be longer by as much"
}

// OpeningText says from which width, height and depth of its readings an opening is worked out, and for which slide.
func OpeningText(c record.Cabinet, u geom.Unit) string {
	return fmt.Sprintf("worked out from %s %s; slide: %s", openingSize(c, u), u, c.Slide)
}

// openingSize is width, height and depth of an opening, without a unit.
func openingSize(c record.Cabinet, u geom.Unit) string {
	return byRule(c.Opening.Width, u) + " x " + byRule(c.Opening.Height, u) + " x " + byRule(c.Opening.Depth, u)
}

// SpacerFor is a spacer, which is cut against a stop, and the drawers for which it is.
func SpacerFor(s record.Spacer, u geom.Unit) string {
	return words.Length(s.Length.MM(), u) + " for " + strings.Join(s.Drawers, ", ")
}

// WidthText says where the width of the boxes in a cabinet comes from.
func WidthText(c record.Cabinet, u geom.Unit) string {
	said := "boxes " + caliper(c.BoxWidth, u) + " " + u.String() + " wide ="
	for i, t := range c.WidthFrom {
		n := t.Times
		switch {
		case n < 0:
			said, n = said+" -", -n
		case i > 0:
			said += " +"
		}
		if n != 1 {
			said += fmt.Sprintf(" %d x", n)
		}
		said += " " + caliper(t.Each, u) + " " + t.Of
	}
	return said
}

// RowHeads are the headings of where a row of cabinets begins and of how high it is: of the drawer
// fronts where there are any.
func RowHeads(list ...record.Cabinet) (from, height string) {
	if slices.ContainsFunc(list, func(c record.Cabinet) bool { return c.Fronts != string(opening.NoFront) }) {
		return "front lower edge", "front height"
	}
	return "row lower edge", "row height"
}

// RowTable is where the boxes of a cabinet stand, from the top down.
func RowTable(c record.Cabinet, u geom.Unit) Table {
	unit := u.String()
	from, height := RowHeads(c)
	t := NewTable(Words("drawer"), In(height, unit), In(from, unit), In("box lower edge", unit),
		In("slide line", unit), In("free above", unit), In("free below", unit))
	t.UnitOnce = true
	for _, row := range c.Rows {
		line := "-"
		if len(c.Files) > 0 {
			line = byRule(row.SlideLine, u)
		}
		t.Add(row.Drawer, byRule(row.FrontHeight, u), byRule(row.FrontBottom, u), byRule(row.BoxBottom, u), line,
			byRule(row.ClearanceAbove, u), byRule(row.ClearanceBelow, u))
	}
	return t
}

// openings prints the rows of each opening, the slide lines and the spacers.
func openings(out *Printed, r record.Kept, u geom.Unit) {
	for _, c := range r.Cabinets {
		fmt.Fprintf(out, "opening %s: %s; boxes %s deep", c.Name, OpeningText(c, u),
			byRule(c.SlideLength, u))
		if c.OutOfSquare != 0 {
			fmt.Fprintf(out, "; out of square by %s over its height", caliper(c.OutOfSquare, u))
		}
		fmt.Fprintln(out)
		if c.BoxWidth > 0 {
			fmt.Fprintln(out, WidthText(c, u))
		}
		if c.Packing > 0 {
			fmt.Fprintln(out, PackingText(c, u))
		}
		if c.Shim > 0 {
			fmt.Fprintln(out, ShimText(c, u))
		}
		RowTable(c, u).Print(out, "")
		if len(c.Spacers) > 0 {
			fmt.Fprintf(out, "spacers: %s.\n", SpacerText(c))
		}
		for _, s := range c.Spacers {
			fmt.Fprintf(out, "  %s\n", SpacerFor(s, u))
		}
		if len(c.Strips) > 0 {
			StripTable(c, u).Print(out, "")
			if t := SeasonTable(c, u); len(t.Rows) > 0 {
				t.Print(out, "")
			}
			for _, said := range StripText(c, u) {
				fmt.Fprintln(out, said)
			}
		}
		fmt.Fprintln(out,
			"Heights are over the opening's lower edge. Measures of slides are usual ones: the slide maker's sheet comes first.")
		fmt.Fprintln(out)
	}
	for _, a := range r.SharedSizes {
		fmt.Fprintf(out, "%s\n\n", SharedSizeText(a, u))
	}
}
