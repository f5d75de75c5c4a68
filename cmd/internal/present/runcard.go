package present

import (
	"fmt"
	"math"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// SheetSeen says from which side the picture of a sheet shows it; nothing where saws cut,
// to which it is all one.
func SheetSeen(s *sheets.Stock, one sheets.Sheet) []string {
	faces := s.Faces(one)
	switch {
	case !s.Routed || len(faces) == 0:
		return nil
	case faces[0] == geom.Inside:
		return []string{"Inside faces are up here, as on the machine."}
	case len(faces) > 1:
		return []string{"Inside faces are up here, as on the machine once the sheet is turned over.",
			"For the first face outside faces are up: the left of the picture is then at the right."}
	}
	return []string{"Inside faces are up here, and outside faces on the machine:",
		"what is left here lies at the right there."}
}

// RunPins say where registration holes are.
func RunPins(f record.RunFace, u geom.Unit) (list []string) {
	for _, p := range f.Pins {
		list = append(list, fmt.Sprintf("pin of %s at x %s, y %s from zero", geom.LengthOf(p.Diameter.MM()).Text(u),
			caliper(p.X, u), caliper(p.Y, u)))
	}
	return list
}

// RunTable is the steps of one face; what was not said is a dash.
func RunTable(f record.RunFace, u geom.Unit) Table {
	unit, from := u.String(), ""
	if len(f.Steps) > 0 {
		from = f.Steps[0].From
	}
	t := NewTable(Numbers("step"), Words("layer"), Words("bit"), In(setHeading(from), unit), Numbers("passes"),
		Numbers("rpm"), In("feed", unit+"/min"), In("plunge", unit+"/min"), In("chip load", unit), Numbers("minutes"))
	said := func(v float64, text string) string {
		if v == 0 {
			return "-"
		}
		return text
	}
	for i, s := range f.Steps {
		bit := bitOfStep(s, u)
		switch {
		case s.BitChange:
		case i == 0:
			bit += ", " + staysIn
		default:
			bit = "same bit"
		}
		t.Add(fmt.Sprint(i+1), s.Layer, bit, setInTable(s.ToSet, s.Through, u),
			said(float64(s.Passes), fmt.Sprint(s.Passes)),
			said(s.Speed, fmt.Sprintf("%.0f", s.Speed)), said(s.Feed.MM(), feed(s.Feed, u)),
			said(s.Plunge.MM(), feed(s.Plunge, u)), said(s.ChipLoad.MM(), chipLoad(s.ChipLoad, u)),
			said(s.Minutes, fmt.Sprintf("%.1f", s.Minutes)))
	}
	return t
}

// chipLoad prints it as tables of feeds do: hundredths of a millimeter, or tenths of a
// thousandth of an inch.
func chipLoad(v record.Length, u geom.Unit) string {
	return words.Either(u, fmt.Sprintf("%.2f", v.In(u)), fmt.Sprintf("%.4f", v.In(u)))
}

// feed prints one a minute, in whole millimeters or inches.
func feed(v record.Length, u geom.Unit) string { return fmt.Sprintf("%.0f", v.In(u)) }

// RunNotes are what holds for the whole card.
func RunNotes(r record.Run, u geom.Unit) []string {
	list := []string{"Zero: " + r.Zero + "."}
	if r.IntoSpoilboard > 0 {
		list = append(list, fmt.Sprintf("What goes through goes %s into the spoilboard, below the thickest board that was measured.", geom.LengthOf(r.IntoSpoilboard.MM()).Text(u)))
	}
	for _, k := range r.KeepOut {
		list = append(list, fmt.Sprintf("Keep out, for clamps and stops: %s x %s at x %s, y %s from zero, whichever "+
			"face is up. Nothing is cut there.",
			caliper(k.Length, u), caliper(k.Width, u), caliper(k.X, u), caliper(k.Y, u)))
	}
	if r.Minutes > 0 {
		list = append(list, fmt.Sprintf("Cutting takes some %.0f minutes: an estimate from the feeds in the job, without bit changes, travel between cuts and slowing in corners.", math.Ceil(r.Minutes)))
	}
	return list
}

// RunRules stand once before all cards.
func RunRules() []string { return []string{runCaution, HowCut()} }

const runCaution = "Feeds and speeds are the shop's own, as the job has them; what the makers of bit and machine " +
	"say, and what a test cut shows, comes first. Stay out of reach while the spindle turns; wear eye and hearing " +
	"protection; extract dust where it is made."

// runText prints the card of a sheet.
func runText(out *Printed, name string, r record.Run, u geom.Unit) {
	fmt.Fprintf(out, "\nrun card, %s\n", name)
	for _, note := range RunNotes(r, u) {
		fmt.Fprintf(out, "  %s\n", note)
	}
	for _, f := range r.Faces {
		fmt.Fprintf(out, "%s\n", f.File)
		for i, b := range f.Preparation {
			fmt.Fprintf(out, "  %d. %s\n", i+1, b)
		}
		for _, pin := range RunPins(f, u) {
			fmt.Fprintf(out, "  %s\n", pin)
		}
		for _, line := range RunOrder(f, u) {
			fmt.Fprintf(out, "  %s\n", line)
		}
		RunTable(f, u).WithoutBlank().Print(out, "")
	}
}

// runsText prints the cards of all sheets that a router cuts.
func runsText(out *Printed, stocks []record.SheetStock, u geom.Unit) {
	said := false
	for _, k := range stocks {
		for _, one := range k.Sheets {
			if one.Run == nil {
				continue
			}
			if !said {
				fmt.Fprintf(out, "\nrun cards\n%s\n", strings.Join(RunRules(), "\n"))
				said = true
			}
			runText(out, fmt.Sprintf("%s, sheet %s", k.Stock, numbers(one)), *one.Run, u)
		}
	}
}
