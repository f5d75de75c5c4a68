package present

import (
	"fmt"
	"math"
	"strings"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/setup"
)

// jigNotes are the figures that a finger jig is set to, and where the notches of each
// wall are. The jig's pin goes into the notch before: what is between it and the cutter
// is one finger.
func (m maker) jigNotes(c setup.Cut) (notes []string) {
	text := func(mm float64) string { return geom.LengthOf(mm).Fixed(m.batch.Units) }
	unit := m.batch.Units.String()
	var all [][]notch
	called := make(map[string][]string)
	for _, piece := range c.Boards {
		for _, b := range m.boards {
			if b.Name != piece.Name {
				continue
			}
			list := notchesOf(b.Panel)
			key := fmt.Sprint(list)
			if len(called[key]) == 0 {
				all = append(all, list)
			}
			called[key] = append(called[key], b.Name)
			break
		}
	}
	fingers := fingersOf(all, c.Cutter)
	if c.Work == setup.Fingers {
		for _, finger := range fingers {
			notes = append(notes, fmt.Sprintf("Jig: a pin as wide as one notch, %s %s, that fits it without play, its near side %s %s from the cutter: one finger. Each notch goes over the pin for the next.", text(c.Cutter), unit, text(finger), unit))
		}
	}
	for _, list := range all {
		var places []string
		for _, s := range list {
			place := text(s.low) + " to " + text(s.high)
			if n := passes(s, c.Cutter); n > 1 && c.Work == setup.Fingers {
				place += fmt.Sprintf(" in %d passes", n)
			}
			places = append(places, place)
		}
		said := fmt.Sprintf("Notches over the lower edge of %s, %s: %s", words.Some(called[fmt.Sprint(list)]), unit, strings.Join(places, ", "))
		switch {
		case c.Work != setup.Fingers || len(fingers) != 1 || len(list) == 0:
		case list[0].low < alikeNotch:
			said += "; mark the first from the wall that goes into it"
		case list[0].low-fingers[0] > alikeNotch:
			said += fmt.Sprintf("; for the first a spacer of %s between the pin and the lower edge", text(list[0].low-fingers[0]))
		default:
			said += "; for the first the lower edge lies at the pin"
		}
		notes = append(notes, said+".")
	}
	return notes
}

// notch is one over the lower edge of a wall.
type notch struct{ low, high float64 }

// notchesOf are those at the left end of a wall, from below; those at the right are alike.
func notchesOf(p geom.Panel) (list []notch) {
	for _, e := range p.EdgeCuts {
		if b := e.Area.Bounds(); e.Kind == geom.FingerCut && b.Min.X <= p.Outline.Bounds().Min.X {
			list = append(list, notch{b.Min.Y, b.Max.Y})
		}
	}
	return list
}

// alikeNotch is what two notches may differ by and still be one setting, in mm.
const alikeNotch = 0.01

// passes are how many a cutter takes for a notch.
func passes(s notch, cutter float64) int {
	if cutter <= 0 {
		return 1
	}
	return max(1, int(math.Ceil((s.high-s.low-alikeNotch)/cutter)))
}

// fingersOf are the widths of fingers between two notches of one pass each, each once.
func fingersOf(all [][]notch, cutter float64) (widths []float64) {
	for _, list := range all {
		for i := 1; i < len(list); i++ {
			if passes(list[i-1], cutter) > 1 || passes(list[i], cutter) > 1 {
				continue
			}
			wide, known := list[i].low-list[i-1].high, false
			for _, w := range widths {
				known = known || math.Abs(w-wide) < alikeNotch
			}
			if !known {
				widths = append(widths, wide)
			}
		}
	}
	return widths
}
