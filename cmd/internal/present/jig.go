package present

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/setup"
)

// jigNotes are the figures that a finger jig is set to, and where the notches of each
// wall are. The jig's pin goes into the notch before: what is between it and the cutter
// is one finger.
func (m maker) jigNotes(c setup.Cut) (notes []string) {
	text := func(mm float64) string { return geom.LengthOf(mm).Fixed(m.unit) }
	unit := m.unit.String()
	var all [][]geom.Interval
	called := make(map[string][]string)
	slope := 0.0
	for _, piece := range c.Boards {
		for _, b := range m.Boards {
			if b.Name != piece.Name {
				continue
			}
			list := setup.Notches(b.Panel)
			slope = math.Round(setup.Slope(b.Panel)*100) / 100
			key := fmt.Sprint(list)
			if len(called[key]) == 0 {
				all = append(all, list)
			}
			called[key] = append(called[key], b.Name)
			break
		}
	}
	fingers := setup.FingerWidths(all, c.Cutter)
	if c.Holding == setup.Fingers {
		for _, finger := range fingers {
			notes = append(notes, fmt.Sprintf("Jig: a pin as wide as one notch, %s %s, that fits it without clearance, its near side %s %s from the cutter: one finger. Each notch goes over the pin for the next.", text(c.Cutter), unit, text(finger), unit))
		}
	}
	if slope > 0 {
		along := strconv.FormatFloat(slope, 'f', -1, 64)
		notes = append(notes, "Set the bevel to 1 aside for "+along+" along.")
	}
	for _, list := range all {
		var places []string
		for _, s := range list {
			place := text(s.Min) + " to " + text(s.Max)
			if n := setup.NotchPasses(s, c.Cutter); n > 1 && c.Holding == setup.Fingers {
				place += fmt.Sprintf(" in %d passes", n)
			}
			places = append(places, place)
		}
		parts := strings.Join(called[fmt.Sprint(list)], ", ")
		said := fmt.Sprintf(notchesOf(c.Edge), parts, unit, strings.Join(places, ", "))
		if c.Holding == setup.Fingers && len(fingers) == 1 && len(list) > 0 {
			switch spacer, marked := setup.FirstNotch(list[0], fingers[0]); {
			case marked:
				said += "; mark the first from the part that goes into it"
			case spacer > 0:
				said += fmt.Sprintf("; for the first a spacer of %s between the pin and the lower edge", text(spacer))
			default:
				said += "; for the first the lower edge lies at the pin"
			}
		}
		notes = append(notes, said+".")
	}
	return notes
}

// notchesOf says what notches are of, where, and that they follow.
func notchesOf(kind geom.EdgeKind) string {
	switch kind {
	case geom.TailCut:
		return "What comes out over the lower edge of %s, at its floor, where it is widest, %s: %s"
	case geom.PinCut:
		return "Sockets over the lower edge of %s, on the inside face, where they are narrowest, %s: %s"
	}
	return "Notches over the lower edge of %s, %s: %s"
}
