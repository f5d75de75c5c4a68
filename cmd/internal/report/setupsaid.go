package report

import (
	"fmt"
	"math"
	"strings"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// said puts the verdict on one setting into sentences: whether it serves, what forcing
// it costs, and the least number of settings that is right.
func (m maker) said(v setup.Verdict, o OneSetup) string {
	all := fmt.Sprintf("all %d kinds of drawer", len(m.drawers))
	switch len(m.drawers) {
	case 1:
		all = "the drawer"
	case 2:
		all = "both kinds of drawer"
	}
	forced := o.Forced
	at := fmt.Sprintf("one fence distance, %s, and one cutter height, %s,", m.length(v.Forced.AtFence), m.length(v.Forced.AtHeight))
	if m.drawers[0].Setup.Cutter.Kind.FollowsDrawing() {
		at = strings.ReplaceAll(at, "cutter height", "depth of cut")
	}
	if m.drawers[0].Setup.Cutter.Kind == joinery.Hand {
		at = strings.NewReplacer("fence distance", "gauge setting", "cutter height", "depth").Replace(at)
	}
	if v.One {
		sentence := fmt.Sprintf("Yes: %s serve %s: %s.", at, all, m.costText(forced.Costs))
		return sentence + m.asked(o.Asked)
	}
	var out strings.Builder
	fmt.Fprintf(&out, "No. Forced on %s, %s cost: %s.", all, at, m.costText(forced.Costs))
	if n := len(o.Fewest); n > 0 {
		fewest := "settings do"
		if n == 1 {
			fewest = "setting does"
		}
		fmt.Fprintf(&out, " %d %s it right", n, fewest)
		if !o.Proven {
			out.WriteString(" (perhaps fewer would)")
		}
		out.WriteString(":")
		for i, g := range v.Fewest {
			fmt.Fprintf(&out, " fence %s, height %s for %s", m.length(g.AtFence), m.length(g.AtHeight), words.Some(o.Fewest[i].Drawers))
			if i < n-1 {
				out.WriteString(";")
			}
		}
		out.WriteString(".")
	}
	reasons := make(map[string][]string)
	var order []string
	for _, l := range o.Left {
		if reasons[l.Why] == nil {
			order = append(order, l.Why)
		}
		reasons[l.Why] = append(reasons[l.Why], l.Drawer)
	}
	for _, why := range order {
		fmt.Fprintf(&out, " None of this cutter suits %s: %s.", words.Some(reasons[why]), why)
	}
	return out.String() + m.asked(o.Asked)
}

// asked counts the settings that follow, with those for dividers, raised grooves and
// all that no corner is.
func (m maker) asked(n int) string {
	if n < 2 {
		return ""
	}
	if m.drawers[0].Setup.Cutter.Kind.FollowsDrawing() {
		return fmt.Sprintf(" The job as it stands takes %d settings.", n)
	}
	return fmt.Sprintf(" All cuts of the job as it stands take %d settings; they follow.", n)
}

// costText is the worst of the costs in words.
func (m maker) costText(costs []Cost) string {
	unit := m.batch.Units
	var recess, sliver Cost
	least, most := math.Inf(1), math.Inf(-1)
	for _, c := range costs {
		if math.Abs(c.Recess) > math.Abs(recess.Recess) {
			recess = c
		}
		if c.Sliver > sliver.Sliver {
			sliver = c
		}
		if c.Play != nil {
			least, most = math.Min(least, *c.Play), math.Max(most, *c.Play)
		}
	}
	if len(costs) == 0 {
		return "their corners keep the setting that they were worked out with"
	}
	mm := func(v float64) string { return m.text(v * unit.MM()) }
	said := "fronts flush"
	if v := mm(math.Abs(recess.Recess)); v != mm(0) {
		word := "recessed"
		if recess.Recess < 0 {
			word = "proud"
		}
		said = fmt.Sprintf("the %s of %s %s by %s", recess.Part, recess.Drawer, word, v)
	}
	if least <= most {
		said += ", play of the tongues " + words.To(mm(least), mm(most))
	}
	if sliver.Sliver > 0 {
		said += fmt.Sprintf(", and one pass leaves a sliver of %s at the %s of %s", mm(sliver.Sliver), sliver.Part, sliver.Drawer)
	}
	return said
}

// length is one that is set.
func (m maker) length(mm float64) string { return words.Length(mm, m.batch.Units) }

func (m maker) stackText(s setup.Stack) string {
	var parts []string
	for _, p := range s.Pieces {
		parts = append(parts, m.text(p))
	}
	if len(parts) == 1 {
		return parts[0]
	}
	return m.text(s.Height) + " (" + strings.Join(parts, " + ") + ")"
}

// spacersText weighs what the shop's spacers make against the best setting.
func (m maker) spacersText(f, h setup.Stack, one bool, costs, best []Cost, g setup.Group) string {
	said := fmt.Sprintf("With the shop's spacers, %s for the fence and %s for the height", m.stackText(f), m.stackText(h))
	if one {
		said = fmt.Sprintf("One stack of the shop's spacers, %s, sets both fence and height", m.stackText(f))
	}
	got, wished := m.costText(costs), m.costText(best)
	if got == wished {
		return said + ": as good as any setting."
	}
	return fmt.Sprintf("%s: %s; the best setting, %s and %s, is no spacer's: %s.", said, got, m.length(g.AtFence), m.length(g.AtHeight), wished)
}
