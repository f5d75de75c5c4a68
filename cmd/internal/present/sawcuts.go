package present

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/breakdown"
)

// Kinds of cuts, as a record has them.
var (
	handHeld = breakdown.HandHeld.String()
	fenceCut = breakdown.FenceCut.String()
	sledCut  = breakdown.SledCut.String()
)

// setFor prints what fence, stop or guide is set to for a cut, after the cut before it. A guide is laid on every board
// anew. What is set again says so: whoever follows the rows has moved it since.
func setFor(c, before record.SawCut, u geom.Unit) string {
	stopless := before.Trim && before.Kind == sledCut
	switch setting := byRule(c.Setting, u); {
	case c.Trim && c.Kind != fenceCut:
		return "takes " + tape(c.Setting, u)
	case c.Kind == handHeld:
		return "cut at " + setting
	case c.SetAsCut > 0:
		return "again " + setting
	case c.SettingChanged:
		return setting
	case before.Kind == c.Kind && !stopless:
		return "as before"
	default:
		return "still " + setting
	}
}

// What is done before the sled comes onto the saw, where the fence stands, and before the fence does.
const fenceAway, sledOff = "first move the fence aside", "first take the sled off"

// swaps say of each cut what has to be moved away for it: the fence for the first on the sled after a cut along the
// fence, the sled for the first along the fence after that; nothing for most.
func swaps(cuts []record.SawCut) []string {
	away, at := make([]string, len(cuts)), ""
	for i, c := range cuts {
		switch {
		case c.Kind == handHeld:
			continue
		case c.Kind == sledCut && at == fenceCut:
			away[i] = fenceAway
		case c.Kind == fenceCut && at == sledCut:
			away[i] = sledOff
		}
		at = c.Kind
	}
	return away
}

// inHand says what is to be watched of a board at a cut, shortly; nothing for most.
func inHand(c record.SawCut) (list []string) {
	switch {
	case c.TooSmallToHold:
		list = append(list, "too small to hold: sled and clamp")
	case looseAtStop(c):
		list = append(list, "hold-down at the stop")
	case pivots(c):
		list = append(list, "short at the sled's fence: clamp it there")
	case thin(c):
		list = append(list, "strip on the far side of the blade")
	case c.NeedsHelper && c.Kind != handHeld:
		list = append(list, "two persons")
	}
	return list
}

// What is shorter at a stop, or narrower under a hand-held saw, in mm, needs more than a hand: common practice, no
// source.
const shortAtStop, narrowForGuide = 50.0, 150.0

// looseAtStop reports whether a piece comes off that lies loose and short between blade and stop.
func looseAtStop(c record.SawCut) bool {
	return c.Kind == sledCut && !c.Trim && !shaves(c) && c.Setting.MM() < shortAtStop
}

// pivotsBelow is how much shorter than the cut the edge at the sled's fence may be: a board that is shorter there turns
// (common practice, no source).
const pivotsBelow = 1.0 / 3

// pivots reports whether a board lies at the sled's fence with an edge so short that the cut turns it.
func pivots(c record.SawCut) bool {
	left := c.Remainder
	if left == nil {
		left = c.Yields
	}
	if c.Kind != sledCut || left == nil {
		return false
	}
	edge, cut := c.Workpiece.Length, c.Workpiece.Width
	if left.Length == edge { // it is divided the other way
		edge, cut = cut, edge
	}
	return edge.MM() < pivotsBelow*cut.MM()
}

// thin reports whether a strip comes off between fence and blade where no push stick goes.
func thin(c record.SawCut) bool { return c.Kind == fenceCut && !c.Trim && c.Setting.MM() < thinStrip }

// narrowUnderGuide reports whether a guide and the saw on it have too little board to lie on.
func narrowUnderGuide(c record.SawCut) bool {
	return c.Kind == handHeld && min(c.Workpiece.Length, c.Workpiece.Width).MM() < narrowForGuide
}

// CutTable is a table of cuts: number, setting, how, board, what it gives and what stays in
// hand.
func CutTable(cuts []record.SawCut, u geom.Unit) Table {
	unit := u.String()
	t := NewTable(Numbers("cut"), Column{Heading: "fence or stop", Unit: unit}, Words("how"), Words("of"), Words("comes off"),
		Column{Heading: "remainder", Unit: unit}, Words(""))
	size := func(h record.Workpiece) string { return tape(h.Length, u) + " x " + tape(h.Width, u) }
	away := swaps(cuts)
	for i, c := range cuts {
		var before record.SawCut
		if i > 0 {
			before = cuts[i-1]
		}
		setting, how := setFor(c, before, u), c.Kind
		if c.Trim {
			how += ", clean-up"
		} else if c.Rough {
			how += ", rough"
		}
		if c.Count > 1 {
			how += fmt.Sprintf(", %d boards", c.Count)
		}
		gives, left := "sawdust", "-"
		if !c.Trim && shaves(c) {
			left = shaved(c, u)
		}
		if c.Trim {
			gives = trimmed(c)
		} else if c.Yields != nil {
			if gives = c.Yields.Name; !c.Yields.Piece {
				gives += ", " + size(*c.Yields)
			}
		}
		if c.Remainder != nil {
			switch left = size(*c.Remainder); {
			case c.Remainder.Piece:
				left = c.Remainder.Name
			case c.Remainder.Offcut:
				clean := c.Remainder.CleanSize
				if left += ", offcut"; clean[0] < c.Remainder.Length || clean[1] < c.Remainder.Width {
					left += fmt.Sprintf(", %s clean", usable(clean[0], clean[1], u))
				}
			case c.Remainder.Waste:
				left += ", waste"
			case c.Remainder.Name != c.Workpiece.Name:
				left = c.Remainder.Name + ", " + left
			}
		}
		notes := inHand(c)
		if away[i] != "" {
			notes = append([]string{away[i]}, notes...)
		}
		if c.SetAsCut > 0 {
			notes = append(notes, fmt.Sprintf("check with a piece of cut %d", c.SetAsCut))
		}
		if c.Remainder != nil && c.Remainder.Piece && !c.Trim {
			notes = append(notes, "measure what is left")
		}
		t.Add(fmt.Sprint(i+1), setting, how, mark(c.Workpiece.Name), gives, left, strings.Join(notes, "; "))
	}
	return t
}

// trimmed is the edge that a clean-up cut takes off.
func trimmed(c record.SawCut) string {
	if c.Remainder.Width < c.Workpiece.Width {
		return "lower edge"
	}
	return "left edge"
}

// thinStrip is the width from which on a strip is pushed between fence and blade, in mm (common practice, no source).
const thinStrip = 30.0

// CutNotes say how the table of a stock's cuts is to be read, and what can hurt at the kinds of cuts that are in it
// (common practice, no source).
func CutNotes(k record.SheetStock, u geom.Unit) []string {
	kinds, short := make(map[string]bool), false
	for _, c := range k.Cuts {
		kinds[c.Kind], short = true, short || c.TooSmallToHold
	}
	list := []string{cutsCounted(k) + " " + boardsCalled}
	if note := kerfNote(k, u); note != "" {
		list = append(list, note)
	}
	if slices.ContainsFunc(record.UsedSizes(k), func(z record.SheetSize) bool { return z.Offcut }) {
		list = append(list, "Of an offcut the lower and left edges are taken to be straight and square: see that they "+
			"are, or clean them up first, if its size leaves room for that.")
	}
	machine := kinds[fenceCut] || kinds[sledCut]
	list = append(append(list, settingNotes(k, machine, u)...), shaveNotes(k)...)
	if machine {
		list = append(list, firstOfSetting, fmt.Sprintf("Planned for a fence that opens to %s, a sled that takes %s, "+
			"a stop as far as %s: see that yours do; what is larger, or too heavy for one person, is cut along "+
			"a guide.",
			of(k.RipCapacity).Text(u), of(k.SledCapacity).Text(u), of(k.MaxStop).Text(u)))
	}
	alone := "" // of fence cuts without crosscuts, of which it is said else
	if !kinds[sledCut] {
		alone = " " + heldUp
	}
	if kinds[fenceCut] {
		list = append(list, "A fence cut runs along the fence; its piece is between fence and blade. A push stick "+
			"moves what is narrower than "+words.Either(u, "150 mm", "6 in")+"."+alone+wholeAtFence(k))
	}
	if slices.ContainsFunc(k.Cuts, thin) {
		list = append(list, "No push stick goes beside a strip narrower than "+words.Either(u, "30 mm", "1 1/4 in")+
			": cut it off on the far side of the blade, the fence set for each by a stop, or by hand.")
	}
	if kinds[sledCut] {
		list = append(list, sledNotes(k, u)...)
	}
	if kinds[handHeld] {
		list = append(list, handHeldNote(machine))
	}
	if machine && slices.ContainsFunc(k.Cuts, narrowUnderGuide) {
		list = append(list, "A board narrower than "+words.Either(u, "150 mm", "6 in")+" does not carry guide and "+
			"saw: lay scrap of its thickness beside it, clamped like it, or saw it by hand.")
	}
	if short && machine {
		list = append(list, "Boards shorter than "+words.Either(u, "300 mm", "12 in")+" are not held by hand at a "+
			"saw: clamp them to a sled, or saw them by hand. Of small pieces keep the board long as long as there "+
			"are any to cut from it.")
	}
	if weightUnknown(k) {
		list = append(list, unknownWeight(k, u))
	}
	return append(list, safely(machine))
}

// safely says what comes first at a machine, and at a saw that is taken to the board.
func safely(machine bool) string {
	if machine {
		return "Guard and riving knife on; clear slivers only when the blade stands still. Local rules and the saw's " +
			"manual come first."
	}
	return "Clamp board and guide, and keep both hands behind the teeth; what the maker of a saw with a motor says " +
		"comes first."
}

// sledNotes say how boards lie on the sled.
func sledNotes(k record.SheetStock, u geom.Unit) []string {
	list := []string{"A sled cut is made on a sled or miter gauge against a stop, never along the fence: " +
		"that edge is too short. First move the fence away: what is cut off would jam between it " +
		"and the blade. " + heldUp}
	if slices.ContainsFunc(k.Cuts, pivots) {
		list = append(list, "A board whose edge at the sled's fence is shorter than a third of the cut turns as it is "+
			"cut: clamp it to the sled, or take the sled away and rip it, its long edge along the fence.")
	}
	if slices.ContainsFunc(k.Cuts, looseAtStop) {
		list = append(list, "A piece shorter than "+words.Either(u, "50 mm", "2 in")+" lies loose at the stop once it "+
			"is cut: a hold-down that is clamped to the sled presses it, never fingers; let the blade stop first.")
	}
	return list
}

// largeBoard is the length from which on a board at the fence is more than a table saw's own table holds, in mm (common
// practice, no source).
const largeBoard = 1200.0

// wholeAtFence says what holds a board as large as a sheet at the fence, where there is one and nobody is told yet to
// take two people for it.
func wholeAtFence(k record.SheetStock) string {
	if weightUnknown(k) || !slices.ContainsFunc(k.Cuts, func(c record.SawCut) bool {
		return c.Kind == fenceCut && max(c.Workpiece.Length, c.Workpiece.Width).MM() > largeBoard
	}) {
		return ""
	}
	return " A whole sheet takes tables beside and behind the saw; else rip it along a guide."
}

// shaves reports whether a cut takes off less than the blade is wide: nothing is left of it.
func shaves(c record.SawCut) bool {
	return c.Trim && c.Yields == nil || !c.Trim && c.Yields != nil && c.Remainder == nil
}

// shaved says how little such a cut takes beside the piece.
func shaved(c record.SawCut, u geom.Unit) string {
	w, p := c.Workpiece, c.Yields
	return "shave " + tape(w.Length-p.Length+w.Width-p.Width, u)
}

// shaveNotes say how such cuts are made, where there are any.
func shaveNotes(k record.SheetStock) []string {
	if !slices.ContainsFunc(k.Cuts, shaves) {
		return nil
	}
	return []string{"A shave takes off less than the blade is wide, all of it dust, and pushes the blade aside: hold " +
		"the board firmly against fence, stop or guide, feed slowly, and measure the first."}
}

// weightUnknown reports whether nobody can say whether one person lifts a sheet.
func weightUnknown(k record.SheetStock) bool { return len(k.Sheets) > 0 && k.Sheets[0].Weight == 0 }

// unknownWeight says what follows from that.
func unknownWeight(k record.SheetStock, u geom.Unit) string {
	said := "The weight of a sheet is not known. "
	if slices.ContainsFunc(k.Cuts, func(c record.SawCut) bool { return c.Stage == 0 }) {
		said += "Those larger than " + words.Either(u, "2440 x 1220 mm", "96 x 48 in") +
			" are first cut in two where they lie. "
	}
	return said + "It takes two people, and tables beside and behind the saw; alone, cut it in two where it lies, " +
		"along a guide."
}

// heldUp is said of boards at a saw.
const heldUp = "Hold up, level with the table, what reaches beyond it or the sled."

// cutsCounted says how many cuts and settings there are.
func cutsCounted(k record.SheetStock) string {
	guides := 0
	for _, c := range k.Cuts {
		if c.Kind == handHeld {
			guides++
		}
	}
	set := "fence or stop is set " + times(k.SettingChanges)
	switch {
	case guides == len(k.Cuts):
		return words.Count(len(k.Cuts), "cut", "cuts") + "; each is measured and marked."
	case k.SettingChanges == 0:
		set = "neither fence nor stop is set"
	}
	if guides > 0 {
		set += ", a guide is laid " + times(guides)
	}
	return fmt.Sprintf("%s; %s; about %s.", words.Count(len(k.Cuts), "cut", "cuts"), set,
		words.Count(k.SawMinutes, "minute", "minutes"))
}

// firstOfSetting says how a setting is used, and which face shows where teeth leave the board.
const firstOfSetting = "Measure the first piece of each setting before the next is cut; then the edge just cut goes " +
	"to the fence or stop. Teeth tear out where they leave the wood: better face up at a table saw, down under a " +
	"hand-held one with a motor."

// boardsCalled says what names and sizes of boards are.
const boardsCalled = "Name each strip (letters go on over all stocks, no I, no O): 1A2 comes off 1A, 1-2 off " +
	"sheet 1. Measure from the lower and left edges."

// settingNotes say what the words of some cuts mean: clean-up, again, measure.
func settingNotes(k record.SheetStock, machine bool, u geom.Unit) (list []string) {
	trims, again, rest, rough := make(map[string]bool), false, false, false
	for _, c := range k.Cuts {
		if c.Trim {
			trims[c.Kind] = true
		}
		again, rough = again || c.SetAsCut > 0, rough || c.Rough
		rest = rest || c.Remainder != nil && c.Remainder.Piece && !c.Trim
	}
	var how []string
	for _, h := range []struct{ kind, how string }{
		{fenceCut, "along the fence with the opposite edge against it"}, {sledCut, "on the sled without a stop"},
		{handHeld, "along a guide"},
	} {
		if trims[h.kind] {
			how = append(how, h.how)
		}
	}
	if len(how) > 0 {
		after := "From then on all is measured from that edge."
		if machine {
			after = "From then on that edge runs along the fence or lies at the stop."
		}
		list = append(list, "A clean-up cut takes the lower or left edge off, straight and "+
			"square, "+strings.Join(how, ", or ")+". "+after)
		if trims[fenceCut] {
			list = append(list, "Joint a rough or bowed edge before it goes against the fence.")
		}
	}
	if rough {
		list = append(list, "A rough cut leaves a board a little too large: a later cut at the fence, or on the sled, "+
			"brings it to size. See that a guided edge is straight before it runs along the fence.")
	}
	if again {
		list = append(list, "\"Again\": the fence or stop stood elsewhere since, or the fence was taken away for "+
			"the sled. Set it anew, and check it with a piece of the cut named there before a part is cut.")
	}
	if rest {
		list = append(list, fmt.Sprintf("Where the remainder is a part, it takes up any error of the kerf of %g %s: "+
			"measure it.",
			k.Kerf.In(u), u))
	}
	return list
}

// handHeldNote says how cuts are made with a saw that is taken to the board, beside those on a machine.
func handHeldNote(machine bool) string {
	if machine {
		return "Hand-held cuts are made with a track saw, or a circular saw along a clamped guide, the board flat " +
			"on foam or battens that hold both halves. What is said is where the cut is: the guide stands off it " +
			"by what the saw's base has beside the blade. Take a fine blade: the edge stays on the piece."
	}
	return "All cuts are made with a track saw, or by hand along a clamped guide or a knifed line, the board flat " +
		"on foam or battens that hold both halves. Take a fine blade: the edge stays on the piece. With a hand saw " +
		"leave a little beside the line, and plane to it."
}

func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}
