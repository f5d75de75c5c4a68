package main

import (
	"bytes"
	"fmt"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/report"
	"drawerwright/geom"

	"github.com/spf13/cobra"
)

func newParts(s streams) *cobra.Command {
	var asJSON, asCSV bool
	c := &cobra.Command{
		Use:   "parts JOB",
		Short: "Print the cut list, the settings and the fit of a job",
		Long: `parts works out a job and prints its cut list by stock, the fence distance and
cutter height that serve it, what the joints will do, and how much board it takes.
JOB may be - for standard input.`,
		Example: `  $ drawerwright parts drawers.yaml
  $ drawerwright parts drawers.yaml --csv > parts.csv`,
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			l, err := load(args[0], s)
			if err != nil {
				return err
			}
			if err := l.show(s); err != nil {
				return err
			}
			if l.failed() {
				return errShown
			}
			switch {
			case asJSON:
				err = writeJSON(s, report.Make(l.batch, l.warnings))
			case asCSV:
				_, err = s.out.Write(report.CSV(l.batch))
			default:
				_, err = s.out.Write(cutList(l.batch))
			}
			if err != nil {
				return jobError{err}
			}
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the whole report as JSON")
	c.Flags().BoolVar(&asCSV, "csv", false, "print the cut list as CSV")
	c.MarkFlagsMutuallyExclusive("json", "csv")
	return c
}

// cutList is the parts of a job by stock, then settings, fit and board, as text.
func cutList(b batch.Batch) []byte {
	var out bytes.Buffer
	text := func(mm float64) string { return geom.LengthOf(mm).Number(b.Units) }
	unit := b.Units.String()
	material := report.Material(b)
	for _, m := range material {
		var rows [][]string
		thick := ""
		for _, d := range b.Drawers {
			for _, p := range d.Parts {
				if p.Stock.Name != m.Stock {
					continue
				}
				thick = text(p.Panel.Thickness)
				faces := "one face"
				switch {
				case len(p.Panel.Pockets) == 0:
					faces = "no face"
				case p.Outside != "":
					faces = "two faces"
				}
				rows = append(rows, []string{p.Name, fmt.Sprint(p.Quantity), text(p.Panel.Length()), text(p.Panel.Width()), faces})
			}
		}
		fmt.Fprintf(&out, "%s, %s %s thick (mean of the readings)\n", m.Stock, thick, unit)
		table(&out, []string{"part", ">pieces", ">length " + unit, ">width " + unit, "cut on"}, rows)
		fmt.Fprintln(&out)
	}
	r := report.Make(b, nil)
	var rows [][]string
	for _, s := range r.Setups {
		rows = append(rows, []string{s.Machine, setting(s.CutterWidth, b.Units), setting(s.FenceDistance, b.Units), setting(s.CutterHeight, b.Units), count(len(s.Drawers), "drawer", "kinds of drawer")})
	}
	table(&out, []string{"machine", ">cutter " + unit, ">fence distance " + unit, ">cutter height " + unit, "for"}, rows)
	fmt.Fprintln(&out)
	rows = nil
	for _, f := range r.Fit {
		rows = append(rows, []string{f.Drawer, f.Check, setting(f.Nominal, b.Units), setting(f.Min, b.Units), setting(f.Max, b.Units), f.Verdict})
	}
	table(&out, []string{"drawer", "fit", ">nominal " + unit, ">least " + unit, ">most " + unit, "verdict"}, rows)
	fmt.Fprintln(&out)
	rows = nil
	area := "m2"
	if b.Units == geom.Inch {
		area = "sq ft"
	}
	for _, m := range material {
		sheets, cost := "", ""
		if m.AtLeast > 0 {
			sheets = fmt.Sprint(m.AtLeast)
		}
		if m.Cost > 0 {
			cost = fmt.Sprintf("%.2f", m.Cost)
		}
		rows = append(rows, []string{m.Stock, fmt.Sprint(m.Pieces), fmt.Sprintf("%.2f", m.Area), sheets, cost})
	}
	table(&out, []string{"stock", ">pieces", ">area " + area, ">sheets by area, at least", ">their cost"}, rows)
	return out.Bytes()
}

// setting prints a number of the report, which is in the job's unit, to what a
// caliper shows.
func setting(v float64, u geom.Unit) string {
	if u == geom.Inch {
		return fmt.Sprintf("%.3f", v)
	}
	return fmt.Sprintf("%.2f", v)
}
