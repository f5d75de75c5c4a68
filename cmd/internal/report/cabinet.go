package report

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
)

// Cabinet is an opening with the drawers that share it.
type Cabinet struct {
	Name        string   `json:"name"`
	Opening     Size     `json:"opening"` // as it counts: the smallest readings
	OutOfSquare float64  `json:"out_of_square"`
	Packing     float64  `json:"packing,omitempty"` // of the cabinet's sides, level with its frame
	Shim        float64  `json:"shim,omitempty"`    // at each side, between the slides and the cabinet
	Slide       string   `json:"slide"`
	SlideLength float64  `json:"slide_length"`
	Rows        []Row    `json:"rows"` // from the top down
	Spacers     []Spacer `json:"spacers"`
	Holes       int      `json:"holes"` // in each side
	Files       []string `json:"files,omitempty"`
	Preview     string   `json:"preview,omitempty"` // its boxes as they stand in it
}

// Row is one drawer in its opening. Heights are over the lower edge of the opening.
type Row struct {
	Drawer      string  `json:"drawer"`
	FrontHeight float64 `json:"front_height"`
	FrontBottom float64 `json:"front_bottom"`
	BoxBottom   float64 `json:"box_bottom"`
	Above       float64 `json:"above"` // what the box keeps free
	Below       float64 `json:"below"`
	Line        float64 `json:"line"` // of the slide's screws
}

// Spacer is a block on which a slide rests while it is screwed on.
type Spacer struct {
	Length  float64  `json:"length"`
	Drawers []string `json:"drawers"`
}

// Alike is openings that differ by so little that boxes of one size serve them.
type Alike struct {
	Openings []string  `json:"openings"`
	Made     bool      `json:"made"`  // the job asks for it, and the boxes are of that size
	Width    float64   `json:"width"` // of the opening for which the boxes are, or would be, made
	Depth    float64   `json:"depth"`
	Rows     int       `json:"rows"`  // how many have boxes of one height too
	Shims    []float64 `json:"shims"` // at the left and at the right side, for each opening
}

// Text says what is made in one size, or could be, and what that takes.
func (a Alike) Text(u geom.Unit) string {
	var shims []string
	for i, s := range a.Shims {
		if s > 0 {
			shims = append(shims,
				fmt.Sprintf("in %s %s at the left and %s at the right", a.Openings[i], caliper(s, u), caliper(s, u)))
		}
	}
	between := "between the slides and the cabinet: "
	if len(shims) == 0 {
		between += "none"
	}
	between += strings.Join(shims, "; ")
	size := fmt.Sprintf("boxes for an opening of %s x %s %s", caliper(a.Width, u), caliper(a.Depth, u), u)
	if a.Rows > 0 {
		size += fmt.Sprintf(", of one height too in %d of the rows,", a.Rows)
	}
	if a.Made {
		return fmt.Sprintf("made in one size: %s serve %s. Shims %s.", size, strings.Join(a.Openings, " and "), between)
	}
	return fmt.Sprintf("near-equal openings: %s would serve %s. Write `alike: yes` in the job to make them in one size, with shims %s.", size, strings.Join(a.Openings, " and "), between)
}

func cabinets(b batch.Batch, n func(float64) float64) []Cabinet {
	list := []Cabinet{}
	for _, bank := range b.Banks {
		p := bank.Plan
		c := Cabinet{Name: bank.Name, Opening: Size{n(p.Opening.Width), n(p.Opening.Height), n(p.Opening.Depth)},
			OutOfSquare: n(p.OutOfSquare), Packing: n(p.Packing), Shim: n(p.Shim),
			Slide: p.Slide.Name, SlideLength: n(p.SlideLength), Rows: []Row{}, Spacers: []Spacer{}, Holes: len(p.Holes)}
		name := func(row int) string { return b.Drawers[bank.Drawers[row]].Spec.Name }
		if len(p.Rows) > 0 {
			c.Preview = bank.Preview()
		}
		for i, r := range p.Rows {
			c.Rows = append(c.Rows,
				Row{name(i), n(r.FrontHeight), n(r.FrontBottom), n(r.BoxBottom), n(r.Above), n(r.Below), n(r.Line)})
		}
		for _, s := range p.Spacers {
			one := Spacer{Length: n(s.Length)}
			for _, row := range s.Rows {
				one.Drawers = append(one.Drawers, name(row))
			}
			c.Spacers = append(c.Spacers, one)
		}
		if bank.Files.Left != "" {
			c.Files = []string{bank.Files.Left, bank.Files.Right, bank.Files.SVG}
		}
		list = append(list, c)
	}
	return list
}

func alikes(b batch.Batch, n func(float64) float64) []Alike {
	list := []Alike{}
	for _, a := range b.Alike {
		one := Alike{Openings: a.Names, Made: a.Made, Width: n(a.Shared.Width), Depth: n(a.Shared.Depth),
			Rows: a.Shared.Rows}
		for _, c := range a.Shared.Common {
			one.Shims = append(one.Shims, n(c.Shim))
		}
		list = append(list, one)
	}
	return list
}

// LinesCSV is the table of slide lines: heights over the lower edge of the opening.
func LinesCSV(b batch.Batch) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write([]string{"opening", "drawer", "slide_line", "box_bottom", "front_bottom", "front_height", "shim", "units"})
	number := func(mm float64) string { return geom.LengthOf(mm).Decimal(b.Units) }
	for _, bank := range b.Banks {
		for i, r := range bank.Plan.Rows {
			line := ""
			if bank.Plan.Slide.Height > 0 {
				line = number(r.Line)
			}
			w.Write([]string{bank.Name, b.Drawers[bank.Drawers[i]].Spec.Name, line, number(r.BoxBottom),
				number(r.FrontBottom), number(r.FrontHeight), number(bank.Plan.Shim), b.Units.String()})
		}
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}

// ShimText says what is put between the slides and a cabinet.
func ShimText(c Cabinet, u geom.Unit) string {
	return fmt.Sprintf("put shims of %s %s between the slides and the cabinet, at the left and at the right",
		caliper(c.Shim, u), u)
}

// openings prints the rows of each opening, the slide lines and the spacers.
func openings(out *bytes.Buffer, r Report, u geom.Unit) {
	unit := u.String()
	for _, c := range r.Cabinets {
		fmt.Fprintf(out, "opening %s: %s x %s x %s %s count, %s", c.Name, caliper(c.Opening.Width, u),
			caliper(c.Opening.Height, u), caliper(c.Opening.Depth, u), unit, c.Slide)
		fmt.Fprintf(out, ", boxes %s deep", caliper(c.SlideLength, u))
		if c.OutOfSquare != 0 {
			fmt.Fprintf(out, "; out of square by %s over its height", caliper(c.OutOfSquare, u))
		}
		fmt.Fprintln(out)
		if c.Packing > 0 {
			fmt.Fprintf(out,
				"pack the cabinet's sides out by %s %s, level with its frame, where slides are screwed on\n", caliper(c.Packing, u), unit)
		}
		if c.Shim > 0 {
			fmt.Fprintln(out, ShimText(c, u))
		}
		var rows [][]string
		for _, row := range c.Rows {
			line := "-"
			if len(c.Files) > 0 {
				line = caliper(row.Line, u)
			}
			rows = append(rows,
				[]string{row.Drawer, caliper(row.FrontHeight, u), caliper(row.FrontBottom, u),
					caliper(row.BoxBottom, u), line, caliper(row.Above, u), caliper(row.Below, u)})
		}
		table(out, []string{"drawer", ">front height " + unit, ">front from", ">box from", ">slide line",
			">free above", ">free below"}, rows)
		for i, s := range c.Spacers {
			if i == 0 {
				fmt.Fprintln(out, "spacers, each under a slide, on the datum or on the slide below:")
			}
			fmt.Fprintf(out, "  %s %s for %s\n", caliper(s.Length, u), unit, strings.Join(s.Drawers, ", "))
		}
		fmt.Fprintln(out,
			"Heights are over the opening's lower edge. Measures of slides are usual ones: the slide maker's sheet comes first.")
		fmt.Fprintln(out)
	}
	for _, a := range r.Alike {
		fmt.Fprintf(out, "%s\n\n", a.Text(u))
	}
}
