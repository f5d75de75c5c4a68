package present

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// said puts the verdict on one setting into sentences: whether it serves, what forcing
// it costs, and the least number of settings that is right.
func (m maker) said(o OneSetup) string {
	if len(m.Refused) > 0 {
		return m.refusedText()
	}
	all := fmt.Sprintf("all %d drawers", len(m.Drawers))
	switch len(m.Drawers) {
	case 1:
		all = "the drawer"
	case 2:
		all = "both drawers"
	}
	v, forced := m.Grouping, o.Compromise
	at := m.settingText(v.Compromise.AtFence, v.Compromise.AtHeight)
	if fence, height, shared := m.shared(); shared {
		if said := m.sharedText(o, all, fence, height); said != "" {
			return said
		}
	} else if v.One {
		return fmt.Sprintf("Not as the job stands, but %s would serve %s: %s. Give the job this fence distance and "+
			"this cutter height to have "+
			"one.", strings.TrimSuffix(at, ","), all, m.costText(forced.Costs)) + m.asked(o.JobSettings)
	}
	var out strings.Builder
	fmt.Fprintf(&out, "No. Forced on %s, %s cost: %s.", all, at, m.costText(forced.Costs))
	if n := len(o.Minimal); n > 0 {
		fewest := "settings do"
		if n == 1 {
			fewest = "setting does"
		}
		fmt.Fprintf(&out, " %d %s it right", n, fewest)
		if !o.Optimal {
			out.WriteString(" (perhaps fewer would)")
		}
		out.WriteString(":")
		for i, g := range v.Minimal {
			fmt.Fprintf(&out, " fence %s, height %s for %s", m.length(g.AtFence), m.length(g.AtHeight),
				strings.Join(o.Minimal[i].Drawers, ", "))
			if i < n-1 {
				out.WriteString(";")
			}
		}
		out.WriteString(".")
	}
	reasons := make(map[string][]string)
	var order []string
	for _, l := range o.Unserved {
		if reasons[l.Reason] == nil {
			order = append(order, l.Reason)
		}
		reasons[l.Reason] = append(reasons[l.Reason], l.Drawer)
	}
	for _, why := range order {
		fmt.Fprintf(&out, " None of this cutter suits %s: %s.", strings.Join(reasons[why], ", "), why)
	}
	return out.String() + m.asked(o.JobSettings)
}

// refusedText says that there is no one setting, for the machine cannot make all cuts: none is named that it may not
// take.
func (m maker) refusedText() string {
	var all []string
	for _, r := range m.Refused {
		all = append(all, r.Text())
	}
	said := fmt.Sprintf("No: this %s cannot cut %s.", m.Cutter.Kind.Machine(), strings.Join(all, "; "))
	if m.Settings > 0 {
		said += fmt.Sprintf(" For what it can, %s.", words.Count(m.Settings, "setting follows", "settings follow"))
	}
	return said
}

// shared is the one setting that all drawers have, as it is printed.
func (m maker) shared() (fence, height float64, ok bool) {
	first := m.Drawers[0].Setup
	for _, d := range m.Drawers {
		if m.length(d.Setup.FenceDistance) != m.length(first.FenceDistance) || m.length(d.Setup.CutterHeight) != m.length(first.CutterHeight) {
			return 0, 0, false
		}
	}
	return first.FenceDistance, first.CutterHeight, true
}

// sharedText is the verdict on the setting that all drawers have, which is the one that is
// printed: a yes only where their boxes come out right and nothing else is set. It is empty where none would serve all.
func (m maker) sharedText(o OneSetup, all string, fence, height float64) string {
	v, at := m.Grouping, m.settingText(fence, height)
	if cut := m.cutAt(fence, height); len(cut) > 0 && len(cut) < len(m.Drawers) {
		all = strings.Join(cut, ", ")
	}
	cost := m.costText(m.costs(v.Compromise, fence, height))
	if !slices.ContainsFunc(m.Drawers, func(d record.CutDrawer) bool { return d.Off }) {
		if o.JobSettings < 2 {
			return fmt.Sprintf("Yes: %s serve %s: %s.", at, all, cost)
		}
		counted := fmt.Sprintf("%d settings follow", o.JobSettings)
		if m.Cutter.Kind.FollowsDrawing() {
			counted = fmt.Sprintf("the job takes %d settings", o.JobSettings)
		}
		return fmt.Sprintf("No: %s. %s serve %s: %s.%s", counted, upper(at), all, cost, m.others(fence, height))
	}
	said := fmt.Sprintf("The job has one, and not all boxes come out right with it: %s are those of %s; see the "+
		"verdicts above. %s.", at, all, strings.ToUpper(cost[:1])+cost[1:])
	if best := m.settingText(v.Compromise.AtFence, v.Compromise.AtHeight); v.One && best != at {
		said += fmt.Sprintf(" Better for the corners would be %s: %s.", strings.TrimSuffix(best, ","),
			m.costText(o.Compromise.Costs))
	}
	if !v.One && len(o.Minimal) > 0 {
		return ""
	}
	return said + m.asked(o.JobSettings)
}

// isAt reports whether a setting is that of a fence distance and a cutter height, as printed.
func (m maker) isAt(s setup.Setting, fence, height float64) bool {
	return m.length(s.Fence) == m.length(fence) && m.length(s.Height) == m.length(height) &&
		m.length(s.Cutter) == m.length(m.Cutter.Width)
}

// cutAt are the drawers with parts that are cut at a setting.
func (m maker) cutAt(fence, height float64) (names []string) {
	cut := make(map[string]bool)
	for _, s := range m.Plan.Settings {
		if !m.isAt(s, fence, height) {
			continue
		}
		for _, c := range s.Cuts {
			for _, b := range c.Boards {
				cut[b.Name] = true
			}
		}
	}
	for _, d := range m.Drawers {
		if slices.ContainsFunc(d.Parts, func(p string) bool { return cut[p] }) {
			names = append(names, d.Name)
		}
	}
	return names
}

// others says what is cut at the other settings than the one that drawers share.
func (m maker) others(fence, height float64) string {
	n := 0
	var shared, others []string
	add := func(list *[]string, kind string) {
		if !slices.Contains(*list, kind) {
			*list = append(*list, kind)
		}
	}
	for _, s := range m.Plan.Settings {
		here := m.isAt(s, fence, height)
		if !here {
			n++
		}
		for _, c := range s.Cuts {
			if here {
				add(&shared, c.Name())
			} else {
				add(&others, c.Name())
			}
		}
	}
	for i, kind := range others {
		if slices.Contains(shared, kind) {
			others[i] = "other " + kind
		}
	}
	switch n {
	case 0:
		return ""
	case 1:
		return " The other setting is for " + words.And(others) + "."
	}
	return " The other settings are for " + words.And(others) + "."
}

// settingText names a setting in the words of the machine.
func (m maker) settingText(fence, height float64) string {
	at := fmt.Sprintf("one fence distance, %s, and one cutter height, %s,", m.length(fence), m.length(height))
	switch k := m.Cutter.Kind; {
	case k.FollowsDrawing():
		return strings.NewReplacer("fence distance", "distance of slots from the edge", "cutter height",
			"depth of cut").Replace(at)
	case k == joinery.Hand:
		return strings.NewReplacer("fence distance", "gauge setting", "cutter height", "depth").Replace(at)
	}
	return at
}

// asked counts the settings of the job as it stands, with those of cuts that are at no corner.
func (m maker) asked(n int) string {
	if n < 2 {
		return ""
	}
	if m.Cutter.Kind.FollowsDrawing() {
		return fmt.Sprintf(" The job as it stands takes %d settings.", n)
	}
	return fmt.Sprintf(" As the job stands %d settings follow.", n)
}

// costText is the worst of the costs in words.
func (m maker) costText(costs []Cost) string {
	var recess, sliver Cost
	least, most := record.Length(math.Inf(1)), record.Length(math.Inf(-1))
	for _, c := range costs {
		if math.Abs(c.Recess.MM()) > math.Abs(recess.Recess.MM()) {
			recess = c
		}
		if c.Sliver > sliver.Sliver {
			sliver = c
		}
		if c.Clearance != nil {
			least, most = min(least, *c.Clearance), max(most, *c.Clearance)
		}
	}
	if len(costs) == 0 {
		return "their corners keep the setting that they were worked out with"
	}
	mm := func(v record.Length) string { return m.text(v.MM()) }
	said := "box fronts flush"
	if v := mm(record.Length(math.Abs(recess.Recess.MM()))); v != mm(0) {
		word := "recessed"
		if recess.Recess < 0 {
			word = "proud"
		}
		said = fmt.Sprintf("the %s of %s %s by %s", recess.Part, recess.Drawer, word, v)
	}
	if least <= most {
		said += ", clearance of the tongues " + words.To(mm(least), mm(most))
	}
	if sliver.Sliver > 0 {
		said += fmt.Sprintf(", and one pass leaves a sliver of %s at the %s of %s", mm(sliver.Sliver),
			sliver.Part, sliver.Drawer)
	}
	return said
}

// length is one that is set.
func (m maker) length(mm float64) string { return words.Length(mm, m.unit) }

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
func (m maker) spacersText(c setup.Chosen, costs, best []Cost, g setup.Group) string {
	said := fmt.Sprintf("With the shop's spacers, %s for the fence and %s for the height",
		m.stackText(c.Fence), m.stackText(c.Height))
	if c.One {
		said = fmt.Sprintf("One stack of the shop's spacers, %s, sets both fence and height", m.stackText(c.Fence))
	}
	got, wished := m.costText(costs), m.costText(best)
	if got == wished {
		return said + ": as good as any setting."
	}
	return fmt.Sprintf("%s: %s; the best setting, %s and %s, is no spacer's: %s.", said, got,
		m.length(g.AtFence), m.length(g.AtHeight), wished)
}
