package report

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// drawings prints the legend, a line for each file in the order of cutting, and
// which parts have to be turned over.
func drawings(out *bytes.Buffer, r Report, u geom.Unit) {
	fmt.Fprintln(out, "drawings, their layers in the order of cutting")
	files := []string{}
	legend := make(map[string][]string)
	for _, l := range r.Layers {
		if _, known := legend[l.File]; !known {
			files = append(files, l.File)
		}
		text := l.Layer
		if l.Bit != "" {
			text += fmt.Sprintf(" (%s, %s)", l.Bit, geom.LengthOf(l.Diameter*u.MM()).Text(u))
		}
		legend[l.File] = append(legend[l.File], text)
	}
	for _, f := range files {
		fmt.Fprintf(out, "%s: %s\n", f, strings.Join(legend[f], ", "))
	}
	routed := slices.ContainsFunc(r.Drawers, func(d Drawer) bool { return d.Machine == string(joinery.Router) })
	if routed {
		turned(out, r)
	}
	fmt.Fprintln(out)
}

// turned lists the parts to turn over by what an error in turning does.
func turned(out *bytes.Buffer, r Report) {
	var words []string
	parts := make(map[string][]string)
	for _, f := range r.Faces {
		if f.Flip == nil {
			continue
		}
		if _, known := parts[f.Flip.Words]; !known {
			words = append(words, f.Flip.Words)
		}
		parts[f.Flip.Words] = append(parts[f.Flip.Words], f.Part)
	}
	if len(words) == 0 {
		fmt.Fprintln(out, "no part has to be turned over on the router")
		return
	}
	for _, w := range words {
		fmt.Fprintf(out, "cut the outside face first, turn over end for end, then the inside: %s: %s\n", some(parts[w]), w)
	}
}

// proofs prints what the drawings, cut virtually, make of each drawer.
func proofs(out *bytes.Buffer, r Report, u geom.Unit) {
	if len(r.Proof) == 0 {
		return
	}
	ProofText(out, r.Proof, u)
	fmt.Fprintln(out)
}

// ProofText prints proofs as a table, and the faults of their files below it.
func ProofText(out *bytes.Buffer, proofs []Proof, u geom.Unit) {
	var rows [][]string
	span := func(v Range) string {
		least, most := caliper(v.Min, u), caliper(v.Max, u)
		if least == most {
			return caliper(v.Mean, u)
		}
		return least + " to " + most
	}
	for _, p := range proofs {
		play, gap, recess := Range{}, Range{}, Range{}
		captured, seats := false, []string{}
		for _, c := range p.Corners {
			if c.Captured && (!captured || c.Play.Min < play.Min) {
				play, captured = c.Play, true
			}
			if c.Seat != "" && !slices.Contains(seats, c.Seat) {
				seats = append(seats, c.Seat)
			}
			if c.ShoulderGap.Max > gap.Max {
				gap = c.ShoulderGap
			}
			stands := c.Recess
			if !c.Captured { // an end that laps over the sides
				stands = c.Lap
			}
			if max(stands.Max, -stands.Min) > max(recess.Max, -recess.Min) {
				recess = stands
			}
		}
		row := []string{p.Drawer, "-", strings.Join(seats, ", "), span(gap), span(recess), "-", span(p.Width), span(p.Depth), span(p.Diagonal), caliper(p.Rack.Max, u), p.Verdict}
		if captured {
			row[1] = span(play)
		}
		if p.Bottom != nil {
			row[5] = span(p.Bottom.Play)
		}
		rows = append(rows, row)
	}
	unit := u.String()
	fmt.Fprintf(out, "proof: the drawings read back, cut with their bits and put together; least to most over the readings, %s\n", unit)
	table(out, []string{"drawer", ">tongue play", "seat on", ">open shoulder", ">recess or lap", ">bottom play", ">width", ">depth", ">diagonal", ">may rack by", "verdict"}, rows)
	for _, p := range proofs {
		for _, c := range p.Corners {
			if !c.Goes {
				fmt.Fprintf(out, "%s: the %s does not go into the %s: %s\n", p.Drawer, c.End, c.Side, tooThick(c.Play, u))
			}
		}
		if b := p.Bottom; b != nil && !b.Goes {
			fmt.Fprintf(out, "%s: the bottom does not go in: %s up and down, %s across the box, %s along it\n", p.Drawer, room(b.Play, u), room(b.Slack[0], u), room(b.Slack[1], u))
		}
		if len(p.FailsWith) > 0 {
			var boards []string
			for _, r := range p.FailsWith {
				boards = append(boards, r.Stock+" "+caliper(r.Thickness, u)+" "+unit)
			}
			fmt.Fprintf(out, "%s: does not go together from boards of %s\n", p.Drawer, strings.Join(boards, ", "))
		}
		for _, o := range p.Overlaps {
			fmt.Fprintf(out, "%s: %s and %s overlap by %.1f mm3\n", p.Drawer, o.A, o.B, o.Volume)
		}
		for _, f := range p.Faults {
			fmt.Fprintf(out, "%s: %s\n", f.Place(), f.Message)
			if f.Hint != "" {
				fmt.Fprintf(out, "  hint: %s\n", f.Hint)
			}
		}
	}
}

// Place is where a fault is, as file:line.
func (f Fault) Place() string {
	if f.Line > 0 {
		return fmt.Sprintf("%s:%d", f.File, f.Line)
	}
	return f.File
}

// room says how much there is, or lacks. What is far below 0 is something else in
// the way, and no measure of the part.
func room(r Range, u geom.Unit) string {
	const far = 3.0 // mm
	switch mm := r.Mean * u.MM(); {
	case mm < -far:
		return "blocked"
	case r.Mean < 0:
		return fmt.Sprintf("%s %s too large", caliper(-r.Mean, u), u)
	}
	return fmt.Sprintf("%s %s of room", caliper(r.Mean, u), u)
}

func tooThick(play Range, u geom.Unit) string {
	if play.Mean < 0 {
		return "too thick by " + caliper(-play.Mean, u) + " " + u.String()
	}
	return "their cuts do not meet"
}
