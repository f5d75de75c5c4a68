// Package present is what people read of a job: the tables and sentences that terminal,
// packet, page and files share, made of a record or of the batch it was filled from, and the
// sheets for the bench: settings, forecasts, adjustments, coupons.
package present

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Text is the job for a person: the parts by stock, the settings, what the
// joints will do, the board that it takes, and the warnings.
func Text(b batch.Batch, r record.Report) []byte {
	var out bytes.Buffer
	if b.Title != "" {
		fmt.Fprintf(&out, "%s\n\n", b.Title)
	}
	openings(&out, r, b.Units)
	for _, groups := range byStock(batch.Merged(b)) {
		partsOf(&out, groups, b.Units)
	}
	settings(&out, r, b.Units)
	fits(&out, r, b.Units)
	proofs(&out, r, b.Units)
	drawings(&out, b, r)
	numbered(&out, r, b.Units)
	plates(&out, r, b.Units)
	board(&out, r, b.Units)
	laid(&out, r, b.Units)
	buying(&out, r)
	weights(&out, r, b.Units)
	bores(&out, r, b.Units)
	slidIn(&out, b)
	for _, level := range []geom.Level{geom.LevelWarning, geom.LevelNote} {
		lines := Gathered(r.Warnings, level)
		if len(lines) > 0 {
			fmt.Fprintf(&out, "\n%ss\n", level)
		}
		for _, line := range lines {
			fmt.Fprintln(&out, line)
		}
	}
	return out.Bytes()
}

// SettingHeads are what a machine's fence distance and cutter height are called: a router
// has neither, and keeps its distance from the edge.
func SettingHeads(kind joinery.CutterKind) (fence, height string) {
	if kind == joinery.Router {
		return "slots from edge", "slots deep"
	}
	return "fence distance", "cutter height"
}

// settings prints those of routers, and those of machines with a fence.
func settings(out *bytes.Buffer, r record.Report, u geom.Unit) {
	var routed, others []record.Setup
	for _, s := range r.Setups {
		if joinery.CutterKind(s.Machine) == joinery.Router {
			routed = append(routed, s)
		} else {
			others = append(others, s)
		}
	}
	if len(routed) > 0 {
		routedSettings(out, routed, u)
	}
	if len(others) > 0 {
		fencedSettings(out, others, u)
	}
}

// routedSettings are of a router, which follows its drawings.
func routedSettings(out *bytes.Buffer, setups []record.Setup, u geom.Unit) {
	fence, height := SettingHeads(joinery.Router)
	head := []string{"machine", ">" + fence + " " + u.String(), ">" + height + " " + u.String()}
	own := slices.ContainsFunc(setups, func(s record.Setup) bool { return s.GrooveFence > 0 || s.BackFence > 0 })
	if own {
		head = append(head, ">grooves from edge "+u.String(), ">backs from end "+u.String())
	}
	said := func(v float64) string {
		if v == 0 {
			return "-"
		}
		return words.Number(v*u.MM(), u)
	}
	var rows [][]string
	for _, s := range setups {
		row := []string{s.Machine, said(s.FenceDistance), slotHeight(s, u)}
		if own {
			row = append(row, said(s.GrooveFence), said(s.BackFence))
		}
		rows = append(rows, append(row, words.Some(s.Drawers)))
	}
	table(out, append(head, "drawers"), rows)
	fmt.Fprintln(out)
}

// slotHeight is the cutter height, and that of dados where it is another.
func slotHeight(s record.Setup, u geom.Unit) string {
	height := words.Number(s.CutterHeight*u.MM(), u)
	if s.DadoHeight > 0 {
		height += " (dados " + words.Number(s.DadoHeight*u.MM(), u) + ")"
	}
	return height
}

func fencedSettings(out *bytes.Buffer, setups []record.Setup, u geom.Unit) {
	var rows [][]string
	own := slices.ContainsFunc(setups, func(s record.Setup) bool {
		return s.GrooveFence > 0 || len(s.GrooveFences) > 0 || s.BackFence > 0
	})
	for _, s := range setups {
		passes := "-" // by hand they are pared
		if joinery.CutterKind(s.Machine).Fenced() {
			passes = "1"
		}
		bottom := "-"
		switch {
		case s.BottomHeight > 0:
			bottom = "lies flat, cutter " + words.Number(s.BottomHeight*u.MM(), u) + " high"
		case s.BottomFence > 0:
			bottom = words.Number(s.BottomFence*u.MM(), u)
		}
		if s.RabbetPasses > 1 {
			passes = fmt.Sprintf("%d, the last at %s", s.RabbetPasses, words.Number(s.LastFence*u.MM(), u))
		}
		if s.FlatTongues {
			passes += ", lying flat"
		}
		row := []string{s.Machine, words.Number(s.CutterWidth*u.MM(), u), words.Number(s.FenceDistance*u.MM(), u),
			slotHeight(s, u), passes, bottom}
		if own {
			groove, back := "-", "-"
			switch {
			case len(s.GrooveFences) > 0:
				groove = groovePasses(s, u)
			case s.GrooveFence > 0:
				groove = words.Number(s.GrooveFence*u.MM(), u)
			}
			if s.BackFence > 0 {
				back = words.Number(s.BackFence*u.MM(), u)
				if s.BackPasses > 1 && joinery.CutterKind(s.Machine).Fenced() {
					back += fmt.Sprintf(", %d passes", s.BackPasses)
				}
			}
			row = append(row, groove, back)
		}
		rows = append(rows, append(row, words.Some(s.Drawers)))
	}
	unit := u.String()
	fence, height := SettingHeads(joinery.Saw)
	head := []string{"machine", ">cutter " + unit, ">" + fence + " " + unit, ">" + height + " " + unit,
		"passes for the rabbets", "fence for flush bottoms"}
	if own {
		head = append(head, "fence for grooves", "fence for housed backs")
	}
	table(out, append(head, "drawers"), rows)
	for _, s := range setups {
		if s.FingerRow > 0 {
			fmt.Fprintf(out, "%s: %s\n", words.Some(s.Drawers), fingerRow(s, u))
		}
	}
	fmt.Fprintln(out)
}

// groovePasses are the fence distances of a cutter for grooves.
func groovePasses(s record.Setup, u geom.Unit) string {
	var at []string
	for _, f := range s.GrooveFences {
		at = append(at, words.Number(f*u.MM(), u))
	}
	return fmt.Sprintf("%s, cutter %s", strings.Join(at, " and "), words.Number(s.GrooveCutter*u.MM(), u))
}

// fingerRow says which row of fingers a jig makes higher or lower than the others.
func fingerRow(s record.Setup, u geom.Unit) string {
	row := "the lowest row"
	if s.FingerRow > 1 {
		row = fmt.Sprintf("row %d from below", s.FingerRow)
	}
	return fmt.Sprintf("%s of fingers is %s high, for the bottom's groove: a spacer in the jig sets it off on all four walls, and its notches take several passes", row, words.Length(s.FingerHeight*u.MM(), u))
}

func board(out *bytes.Buffer, r record.Report, u geom.Unit) {
	_, area := words.Area(0, u)
	var rows [][]string
	for _, m := range r.Material {
		sheets, cost := "-", "-"
		// None where offcuts do.
		if slices.ContainsFunc(r.Sheets, func(k record.SheetStock) bool { return k.Stock == m.Stock }) {
			sheets = fmt.Sprint(m.Sheets)
		}
		if m.Cost > 0 {
			cost = fmt.Sprintf("%.2f", m.Cost)
		}
		rows = append(rows, []string{m.Stock, fmt.Sprint(m.Pieces), fmt.Sprintf("%.2f", m.Area), sheets, cost})
	}
	table(out, []string{"stock", ">pieces", ">area " + area, ">sheets", ">their price"}, rows)
}

// laid tells of the layouts on sheets, which are in a folder of their own.
func laid(out *bytes.Buffer, r record.Report, u geom.Unit) {
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

// between prints two numbers of the report with the lesser first.
func between(a, b float64, u geom.Unit) string { return words.Span(a*u.MM(), b*u.MM(), u) }

// caliper prints a number of the report, which is in the job's unit, as a
// caliper shows it.
func caliper(v float64, u geom.Unit) string { return geom.LengthOf(v * u.MM()).Fixed(u) }
