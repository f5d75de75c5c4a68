package merge

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/geom"
)

// CommonBlanks gathers parts that are sawn as one size and get the same grooves, dados,
// rabbets and fingers in one setting, before each gets holes and notches of its own: lists
// of two places or more, in order of the first. A router that follows drawings cuts each
// part out of its sheet, and has none.
func CommonBlanks(parts []Part) (blanks [][]int) {
	at := make(map[string]int)
	var all [][]int
	for i, p := range parts {
		if p.Setting.Cutter.Kind.FollowsDrawing() {
			continue
		}
		key := fmt.Sprintf("%s\x00%v\x00%d %d\x00%s", p.Stock, p.Setting,
			geom.LengthOf(p.Panel.Length()), geom.LengthOf(p.Panel.Width()), common(p.Panel))
		n, known := at[key]
		if !known {
			n = len(all)
			at[key] = n
			all = append(all, nil)
		}
		all[n] = append(all[n], i)
	}
	for _, list := range all {
		if len(list) > 1 {
			blanks = append(blanks, list)
		}
	}
	return blanks
}

// later reports whether a pocket is cut after those of the common setting.
func later(k geom.Pocket) bool {
	return k.Kind == geom.Drill || k.Kind == geom.Cutout || k.Kind == geom.Mortise
}

// common tells apart what is cut in the common setting: pockets at their full length on the
// blank, and the fingers of a box joint. The order of pockets has no meaning.
func common(p geom.Panel) string {
	var list []string
	box := func(l geom.Loop) string {
		b := l.Bounds()
		return fmt.Sprint(geom.LengthOf(b.Min.X), geom.LengthOf(b.Min.Y), geom.LengthOf(b.Max.X),
			geom.LengthOf(b.Max.Y))
	}
	for _, k := range p.Pockets {
		if !later(k) {
			list = append(list, fmt.Sprint(k.Kind, k.Face, geom.LengthOf(k.Depth), box(k.OnBlank())))
		}
	}
	for _, e := range p.EdgeCuts {
		if e.Kind.Interlocks() {
			list = append(list, "finger "+box(e.Area))
		}
	}
	slices.Sort(list)
	return strings.Join(slices.Compact(list), ";")
}

// Later counts what a part gets after the cuts of the common setting.
type Later struct{ Holes, Openings, Mortises, Notches, Slots, Pulls int }

// LaterOn are those cuts of a panel: holes, openings and mortises in its face, and what is cut out of
// its edges but fingers.
func LaterOn(p geom.Panel) Later {
	n := Later{Openings: len(p.Holes)}
	for _, k := range p.Pockets {
		switch k.Kind {
		case geom.Drill:
			n.Holes++
		case geom.Cutout:
			n.Openings++
		case geom.Mortise:
			n.Mortises++
		}
	}
	for _, e := range p.EdgeCuts {
		switch e.Kind {
		case geom.NotchCut:
			n.Notches++
		case geom.CrossingCut:
			n.Slots++
		case geom.PullCut:
			n.Pulls++
		}
	}
	return n
}
