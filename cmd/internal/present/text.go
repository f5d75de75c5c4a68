// Package present is what people read of a job: the tables and sentences that terminal,
// packet, page and files share, made of a record or of the batch it was filled from, and the
// sheets for the bench: settings, forecasts, adjustments, coupons.
package present

import (
	"fmt"
	"io"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// PartsText writes parts.txt, the job for a person: the parts by stock, the settings, what the
// joints will do, the board that it takes, and the warnings. Long lines are folded.
func PartsText(w io.Writer, r record.Kept) error {
	return hanging(w, printed(func(out *Printed) {
		if r.Answer.Word != record.Fits { // which a screen begins with anyway
			fmt.Fprintf(out, "%s\n\n", r.Answer.Text)
		}
		PrintParts(out, r)
	}))
}

// PrintParts prints what parts.txt has.
func PrintParts(out *Printed, r record.Kept) {
	u := r.Unit()
	if r.Job != "" {
		fmt.Fprintf(out, "%s\n\n", r.Job)
	}
	openings(out, r, u)
	cutListText(out, r)
	fmt.Fprintf(out, "%s\n\n", words.Rounding(u))
	settings(out, r, u)
	fits(out, r, u)
	proofs(out, r, u)
	drawings(out, r, u)
	numbered(out, r, u)
	plates(out, r, u)
	board(out, r, u)
	laid(out, r, u)
	buying(out, r)
	weights(out, r, u)
	bores(out, r, u)
	slidIn(out, r)
	for _, level := range []geom.Level{geom.LevelWarning, geom.LevelNote} {
		lines := Gathered(r.Warnings, level)
		if len(lines) > 0 {
			fmt.Fprintf(out, "\n%ss\n", level)
		}
		for _, line := range lines {
			fmt.Fprintln(out, line)
		}
	}
}

func board(out *Printed, r record.Kept, u geom.Unit) {
	_, area := words.Area(0, u)
	t := NewTable(Words("stock"), Numbers("pieces"), In("area", area), Numbers("sheets"), Numbers("their price"))
	for _, m := range r.Material {
		sheets, cost := "-", "-"
		// None where offcuts do.
		if slices.ContainsFunc(r.Sheets, func(k record.SheetStock) bool { return k.Stock == m.Stock }) {
			sheets = fmt.Sprint(m.Sheets)
		}
		if m.Cost > 0 {
			cost = fmt.Sprintf("%.2f", m.Cost)
		}
		t.Add(m.Stock, fmt.Sprint(m.Pieces), fmt.Sprintf("%.2f", m.Area.In(u)), sheets, cost)
	}
	t.Print(out, "")
}

// laid prints the layouts on sheets, which are in a folder of their own.
func laid(out *Printed, r record.Kept, u geom.Unit) {
	if len(r.Sheets) > 0 {
		fmt.Fprintln(out, "\nsheets (drawings, pictures and cuts are in the folder sheets)")
	}
	for _, k := range r.Sheets {
		fmt.Fprintf(out, "%s: %s\n", k.Stock, SheetsSummary(k, u))
		for _, note := range SheetNotes(k, u) {
			fmt.Fprintf(out, "  %s\n", note)
		}
	}
	runsText(out, r.Sheets, u)
}

// byRule prints a length of a record for a person who marks it with a rule: in inches with the
// fraction.
func byRule(v record.Length, u geom.Unit) string { return words.Place(v.MM(), u) }

// between prints two lengths of a record with the lesser first.
func between(a, b record.Length, u geom.Unit) string { return words.Span(a.MM(), b.MM(), u) }

// caliper prints a length of a record as a caliper shows it. With those of [words] it is all that
// makes lengths words here.
func caliper(v record.Length, u geom.Unit) string { return geom.LengthOf(v.MM()).Fixed(u) }
