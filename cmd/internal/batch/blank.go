package batch

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Blank is what a shop saws as one size and gives the same grooves, dados and rabbets in
// one setting, before its parts get holes and notches of their own.
type Blank struct {
	Groups   []Group // of parts that differ only in what comes later; two at least
	Quantity int
}

// Blanks finds the blanks from which parts of several groups are made, in their order; none
// for a router that follows drawings, which cuts each part out of its sheet.
func Blanks(groups []Group) (list []Blank) {
	at := make(map[string]int)
	var all []Blank
	for _, g := range groups {
		if g.Setup.Cutter.Kind.FollowsDrawing() {
			continue
		}
		p := g.Parts[0]
		key := fmt.Sprintf("%s\x00%v\x00%d %d\x00%s", p.Stock.Name, g.Setup, geom.LengthOf(p.Panel.Length()), geom.LengthOf(p.Panel.Width()), common(p.Panel))
		i, known := at[key]
		if !known {
			i = len(all)
			at[key] = i
			all = append(all, Blank{})
		}
		all[i].Groups = append(all[i].Groups, g)
		all[i].Quantity += g.Quantity
	}
	for _, b := range all {
		if len(b.Groups) > 1 {
			list = append(list, b)
		}
	}
	return list
}

// later reports whether a pocket is cut after those of the common setting.
func later(k geom.Pocket) bool { return k.Kind == geom.Drill || k.Kind == geom.Cutout }

// common tells apart what is cut in the common setting: pockets at their full length on the
// blank, and the fingers of a box joint. The order of pockets has no meaning.
func common(p geom.Panel) string {
	var list []string
	box := func(l geom.Loop) string {
		b := l.Bounds()
		return fmt.Sprint(geom.LengthOf(b.Min.X), geom.LengthOf(b.Min.Y), geom.LengthOf(b.Max.X), geom.LengthOf(b.Max.Y))
	}
	for _, k := range p.Pockets {
		if !later(k) {
			list = append(list, fmt.Sprint(k.Kind, k.Face, geom.LengthOf(k.Depth), box(k.OnBlank())))
		}
	}
	for _, e := range p.EdgeCuts {
		if e.Kind == geom.FingerCut {
			list = append(list, "finger "+box(e.Area))
		}
	}
	slices.Sort(list)
	return strings.Join(slices.Compact(list), ";")
}

// Later says what a part gets after the cuts of the common setting; empty for nothing.
func Later(p geom.Panel) string {
	holes, openings, notches, slots, pulls := 0, len(p.Holes), 0, 0, 0
	for _, k := range p.Pockets {
		switch k.Kind {
		case geom.Drill:
			holes++
		case geom.Cutout:
			openings++
		}
	}
	for _, e := range p.EdgeCuts {
		switch e.Kind {
		case geom.NotchCut:
			notches++
		case geom.CrossingCut:
			slots++
		case geom.PullCut:
			pulls++
		}
	}
	var list []string
	say := func(n int, one, many string) {
		if n > 0 {
			list = append(list, words.Count(n, one, many))
		}
	}
	say(holes, "hole", "holes")
	say(openings, "opening", "openings")
	say(notches, "notch", "notches")
	say(slots, "crossing slot", "crossing slots")
	say(pulls, "cut-out for the hand", "cut-outs for the hand")
	return strings.Join(list, " and ")
}
