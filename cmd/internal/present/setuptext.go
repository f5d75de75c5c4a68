package present

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// SetupText is a setup sheet for the bench, of any width.
func SetupText(s SetupSheet, u geom.Unit) []byte {
	return printed(func(out *Printed) { PrintSetup(out, s, u) })
}

// PrintSetup prints a setup sheet.
func PrintSetup(out *Printed, s SetupSheet, u geom.Unit) {
	t := &sheetText{Printed: out, unit: u}
	if s.Job != "" {
		t.line("%s: setups", s.Job)
		t.line("")
	}
	for _, v := range s.Verdicts {
		t.paragraph("", v.String()+".")
	}
	t.paragraph("", Basis)
	t.line("")
	t.paragraph("", s.First)
	t.cautions("", s.General)
	for _, m := range s.Machines {
		t.machine(m)
	}
	t.line("")
	t.line("sources")
	for i, source := range s.Sources {
		t.line("  [%d] %s", i+1, source)
	}
}

// sheetText writes a sheet for the bench.
type sheetText struct {
	*Printed
	unit geom.Unit
	step int
	said map[string]bool // the kinds of work whose cautions stand above already
}

func (t *sheetText) line(format string, args ...any) { fmt.Fprintf(t, format+"\n", args...) }

// paragraph writes a text on a line of its own, unless it is empty.
func (t *sheetText) paragraph(indent, text string) {
	if text != "" {
		t.line("%s%s", indent, text)
	}
}

func (t *sheetText) cautions(indent string, list []Caution) {
	for _, c := range list {
		t.paragraph(indent, "! "+c.Cited())
	}
}

func (t *sheetText) number(v record.Length) string { return caliper(v, t.unit) }

// Jig reports whether a finger jig takes the fence's place.
func (s Setting) Jig() bool { return len(s.Cuts) > 0 && s.Cuts[0].Work == string(setup.Fingers) }

// How a setting with a sacrificial fence is to be read: one for cuts as wide as the cutter or less, one for wider cuts.
const (
	buried = "Part of the cutter is buried in the fence, and what stands out of it is what each cut takes from its " +
		"end or edge."
	touching = "For the first pass the cutter just touches the sacrificial fence, none of it buried: it takes the " +
		"very end or edge. For each later pass the fence is moved away from the cutter."
)

// Buried says how a setting with a sacrificial fence is to be read; empty for any other.
func (s Setting) Buried(machine string) string {
	if s.Fence != 0 || s.Jig() || !joinery.CutterKind(machine).Fenced() {
		return ""
	}
	wide, said := s.wide(), buried
	switch {
	case wide == len(s.Cuts):
		said = touching
	case wide > 0:
		said = "Cuts of one pass: " + lower(buried) + " Cuts of several: " + lower(touching)
	}
	return said
}

// wide are how many cuts take more than one pass.
func (s Setting) wide() (n int) {
	for _, c := range s.Cuts {
		if len(c.Passes) > 1 {
			n++
		}
	}
	return n
}

// touches reports whether a sacrificial fence stands at the cutter, and buries none of it.
func (s Setting) touches() bool { return s.Fence == 0 && !s.Jig() && s.wide() == len(s.Cuts) }

// FenceFrom says between which faces the distance of a machine's fence is.
func FenceFrom(machine string) string {
	return "from its face to the near side of the " + CutterName(machine)
}

// Heading names a setting by what is set.
func (s Setting) Heading(number int, machine string, u geom.Unit) string {
	mm := func(v record.Length) string { return words.Length(v.MM(), u) }
	if joinery.CutterKind(machine) == joinery.Hand {
		return fmt.Sprintf("SETTING %d: gauge or fence %s, depth or shoulder %s", number, mm(s.Fence), mm(s.Height))
	}
	name := CutterName(machine)
	then := s.thenFences(u)
	to := " " + FenceFrom(machine)
	if then != "" && (s.Fence > 0 || s.touches()) {
		to = ", each" + to
	}
	if s.touches() {
		to = strings.Replace(to, "its", "the sacrificial fence's", 1)
	}
	fence := "fence " + mm(s.Fence) + then + to
	switch {
	case s.Jig():
		fence = "finger jig"
	case s.Fence == 0 && !s.touches():
		fence = "sacrificial fence"
		if then != "" {
			fence += then + to
		}
	}
	return fmt.Sprintf("SETTING %d: %s %s wide, height %s, %s", number, name, mm(s.Cutter), mm(s.Height), fence)
}

// CutsWith names what a machine cuts with, by its width: all bits of a router that cut something.
func (m Machine) CutsWith(u geom.Unit) string {
	if len(m.Bits) < 2 {
		cutter := words.Length(m.Cutter.MM(), u)
		if joinery.CutterKind(m.Machine) == joinery.Router {
			cutter = words.Bit(m.Cutter.MM(), u)
		}
		return CutterName(m.Machine) + " " + cutter
	}
	var list []string
	for _, b := range m.Bits {
		list = append(list, words.Bit(b.MM(), u))
	}
	return "bits " + words.And(list)
}

// CutterName is what its cutter is called.
func CutterName(kind string) string {
	return map[joinery.CutterKind]string{joinery.Saw: "cutter", joinery.RouterTable: "bit",
		joinery.Router: "bit", joinery.Hand: "plow iron"}[joinery.CutterKind(kind)]
}

func (t *sheetText) machine(m Machine) {
	t.line("")
	t.line("%s, %s wide: %s", strings.ToUpper(joinery.CutterKind(m.Machine).Machine()), m.CutsWith(t.unit),
		words.Some(m.Drawers))
	t.cautions("", m.Cautions)
	t.line("")
	t.paragraph("", "One setting for everything? "+m.OneSetup.Text)
	choices := m.OneSetup.Minimal
	for _, c := range choices {
		if c.Spacers != nil {
			t.paragraph("", c.Spacers.Text)
		}
	}
	t.line("")
	t.paragraph("", TestPiece(m, t.unit)+" `drawerwright adjust` takes the readings and says what to move.")
	t.step, t.said = 0, make(map[string]bool)
	t.refused(m)
	t.gauges(m.Gauges)
	if m.Order != "" {
		t.line("")
		t.paragraph("", m.Order)
	}
	for i, s := range m.Settings {
		t.setting(i+1, s, m.Machine)
	}
	if joinery.CutterKind(m.Machine).FollowsDrawing() {
		t.files(m)
		t.line("")
	} else if len(m.Settings) == 0 {
		t.line("")
	}
	t.checks(m.Checks, m.ChecksText)
	t.apart(m)
}

func (t *sheetText) setting(number int, s Setting, machine string) {
	t.line("")
	t.line("%s", s.Heading(number, machine, t.unit))
	t.paragraph("  ", s.Buried(machine))
	if p := s.Spacers; p != nil && s.Fence > 0 {
		t.paragraph("  ", fmt.Sprintf("Nearest of the shop's spacers: fence %s; height %s.", t.pieces(p.Fence, s.Fence), t.pieces(p.Height, s.Height)))
	}
	if len(s.Steps) > 1 {
		t.paragraph("  ", s.Raised(t.unit))
	}
	for _, c := range s.Cuts {
		t.cut(c)
	}
	t.checks(s.Checks, s.ChecksText)
}

// pieces is a stack of spacers, and by how much it is off what is wanted.
func (t *sheetText) pieces(list []record.Length, wanted record.Length) string {
	total := record.Length(0)
	for _, v := range list {
		total += v
	}
	text := caliper(total, t.unit)
	if len(list) > 1 {
		text += " = " + SettingList(list, " + ", t.unit)
	}
	if off := t.number(total - wanted); strings.Trim(off, "-0.") != "" {
		text += ", off by " + off
	}
	return text
}

// SettingList prints numbers that something is set to, one after the other.
func SettingList(values []record.Length, between string, u geom.Unit) string {
	all := make([]string, len(values))
	for i, v := range values {
		all[i] = caliper(v, u)
	}
	return strings.Join(all, between)
}

// Raised says in which steps the bit of a router table is raised.
func (s Setting) Raised(u geom.Unit) string {
	return fmt.Sprintf("Raise the bit in steps: %s %s; every part passes at each.", SettingList(s.Steps, ", ", u), u)
}

// Fences says where the fence is for each of several passes.
func (c CutStep) Fences(u geom.Unit) string {
	return fmt.Sprintf("%d passes, the fence at %s %s.", len(c.Passes), SettingList(c.Passes, ", ", u), u)
}

func (t *sheetText) cut(c CutStep) {
	t.step++
	t.paragraph("  ", fmt.Sprintf("%d. %s.", t.step, c.How(t.unit)))
	if len(c.Passes) > 1 {
		t.paragraph("     ", c.Fences(t.unit))
	}
	t.paragraph("     ", c.PartsText)
	if c.Note != "" {
		t.paragraph("     ", c.Note)
	}
	if len(c.Cautions) > 0 && t.said[c.Work] {
		t.paragraph("     ", "! Cautions as above for "+workNames[setup.Holding(c.Work)]+".")
		return
	}
	t.said[c.Work] = true
	t.cautions("     ", c.Cautions)
}

var workNames = map[setup.Holding]string{
	setup.Across: "cuts across", setup.Along: "cuts along", setup.AtEnd: "cuts at the end",
	setup.AtEdge: "cuts at the edge", setup.OnEnd: "parts on end", setup.Fingers: "fingers",
	setup.Knifed: "knifed dados", setup.Shoulder: "shoulders", setup.Plowed: "the plow",
	setup.Chopped: "chopped grooves", setup.HandSawn: "saw and chisel", setup.Sawn: "what is sawn", setup.Bored: "holes",
	setup.Opened: "openings", "bored-end": "holes", setup.Mortised: "mortises", mortisedEnd: "mortises",
}

// apart are what is sawn and bored when the cuts with a fence are made.
func (t *sheetText) apart(m Machine) {
	place, said := "", false
	for _, c := range m.Separate {
		if at := c.Place(m.Machine); at != place {
			place = at
			t.line("")
			t.line("%s", strings.ToUpper(at))
		}
		if c.Metric && !said {
			said = true
			t.paragraph("  ", MetricBits)
		}
		t.cut(c)
	}
}

// refused says what is no setup of the machine, and what makes it.
func (t *sheetText) refused(m Machine) {
	if len(m.Refused) == 0 {
		return
	}
	t.line("")
	t.line("NOT ON THIS MACHINE")
	for _, c := range m.Refused {
		t.paragraph("  ", fmt.Sprintf("%s of %s: %s; %s.", c.Kind, c.PartsText, lower(c.Note), c.Alternatives))
	}
}

func lower(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// gauges lists the settings of marking gauges.
func (t *sheetText) gauges(list []Gauge) {
	if len(list) == 0 {
		return
	}
	t.line("")
	t.line("GAUGES, one for each distance, left as it is until the last part is marked")
	for _, g := range list {
		t.paragraph("  ", fmt.Sprintf("%s: %s.", words.Length(g.At.MM(), t.unit), strings.Join(g.Marks, "; ")))
	}
}

func (t *sheetText) checks(list []Check, said []string) {
	if len(list) > 0 {
		t.line("  measure on the test piece, and now and then; every combination within these limits is right")
		CheckTable(list, t.unit).Print(t.Printed, "    ")
	}
	for _, s := range said {
		t.paragraph("    ", s)
	}
}

func (t *sheetText) files(m Machine) {
	t.line("")
	t.paragraph("", "Touch the bit off where the legend of the drawings counts depths from. In this order, the first face of each part before the other:")
	table := NewTable(Words(""), Words(""), Words(""), Words(""), Words(""))
	for _, f := range m.Files {
		table.Add(fmt.Sprintf("%d x", f.Count), f.Part, f.Face, f.How(), f.File)
	}
	table.Print(t.Printed, "  ")
}
