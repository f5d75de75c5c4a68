package report

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// SetupText prints a setup sheet for the bench.
func SetupText(s SetupSheet, u geom.Unit) []byte {
	t := &sheetText{unit: u}
	if s.Job != "" {
		t.line("%s: setups", s.Job)
		t.line("")
	}
	t.wrapped("", s.First)
	t.cautions("", s.General)
	for _, m := range s.Machines {
		t.machine(m)
	}
	t.line("")
	t.line("sources")
	cites := s.Cited()
	for i, source := range s.Sources {
		if !cites[i+1] {
			continue
		}
		t.line("  [%d] %s", i+1, source)
	}
	return t.out.Bytes()
}

// sheetText writes lines no longer than a page is wide.
type sheetText struct {
	out  bytes.Buffer
	unit geom.Unit
	step int
	said map[string]bool // the kinds of work whose cautions stand above already
}

const pageWidth = 100

func (t *sheetText) line(format string, args ...any) { fmt.Fprintf(&t.out, format+"\n", args...) }

// wrapped breaks a text at spaces; what follows the first line is set in by two more.
func (t *sheetText) wrapped(indent, text string) {
	line, more := indent, indent+"  "
	for _, word := range strings.Fields(text) {
		if utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > pageWidth && strings.TrimSpace(line) != "" {
			t.line("%s", strings.TrimRight(line, " "))
			line = more
		}
		if strings.TrimSpace(line) != "" {
			line += " "
		}
		line += word
	}
	if strings.TrimSpace(line) != "" {
		t.line("%s", line)
	}
}

func (t *sheetText) cautions(indent string, list []Caution) {
	for _, c := range list {
		text := "! " + c.Text
		if c.Source > 0 {
			text += fmt.Sprintf(" [%d]", c.Source)
		}
		t.wrapped(indent, text)
	}
}

func (t *sheetText) number(v float64) string { return caliper(v, t.unit) }

// MachineName is a machine as a heading calls it.
func MachineName(kind string) string {
	return map[joinery.CutterKind]string{joinery.Saw: "table saw", joinery.RouterTable: "router table", joinery.Router: "CNC router", joinery.Hand: "by hand"}[joinery.CutterKind(kind)]
}

// CutterName is what its cutter is called.
func CutterName(kind string) string {
	return map[joinery.CutterKind]string{joinery.Saw: "cutter", joinery.RouterTable: "bit", joinery.Router: "smallest bit", joinery.Hand: "plough iron"}[joinery.CutterKind(kind)]
}

func (t *sheetText) machine(m Machine) {
	unit := t.unit.String()
	t.line("")
	t.line("%s, %s %s %s wide: %s", strings.ToUpper(MachineName(m.Machine)), CutterName(m.Machine), t.number(m.Cutter), unit, Some(m.Drawers))
	t.cautions("", m.Cautions)
	t.line("")
	t.wrapped("", "One setting for everything? "+m.OneSetup.Said)
	choices := m.OneSetup.Fewest
	for _, c := range choices {
		if c.Spacers != nil {
			t.wrapped("", c.Spacers.Said)
		}
	}
	t.line("")
	t.wrapped("", "Cut a test piece of the same boards first, a side's and a front's end, push it together and measure. "+
		"`drawerwright adjust` takes the readings and says what to move.")
	t.step, t.said = 0, make(map[string]bool)
	for i, s := range m.Settings {
		t.setting(i+1, s, m.Machine)
	}
	if joinery.CutterKind(m.Machine).FollowsDrawing() {
		t.files(m)
	}
}

func (t *sheetText) setting(number int, s Setting, machine string) {
	unit := t.unit.String()
	t.line("")
	if s.Height == 0 {
		t.line("SETTING %d: no fence", number)
	} else {
		t.line("SETTING %d: height %s %s, fence %s %s from its face to the near side of the %s", number, t.number(s.Height), unit, t.number(s.Fence), unit, CutterName(machine))
	}
	if s.Fence == 0 && s.Height > 0 {
		t.wrapped("  ", "The fence is a sacrificial one, in which part of the cutter is buried: every distance counts from its face.")
	}
	if p := s.Spacers; p != nil && s.Fence > 0 {
		t.wrapped("  ", fmt.Sprintf("Nearest of the shop's spacers: fence %s; height %s.", t.pieces(p.Fence, s.Fence), t.pieces(p.Height, s.Height)))
	}
	if len(s.Steps) > 1 {
		t.wrapped("  ", "Raise the bit in steps: "+t.list(s.Steps)+" "+unit+"; every part passes at each.")
	}
	for _, c := range s.Cuts {
		t.cut(c)
	}
	t.checks(s.Checks)
}

// pieces is a stack of spacers, and by how much it is off what is wanted.
func (t *sheetText) pieces(list []float64, wanted float64) string {
	total := 0.0
	for _, v := range list {
		total += v
	}
	text := t.number(total)
	if len(list) > 1 {
		text += " = " + strings.ReplaceAll(t.list(list), ", ", " + ")
	}
	if off := t.number(total - wanted); strings.Trim(off, "-0.") != "" {
		text += ", off by " + off
	}
	return text
}

func (t *sheetText) list(values []float64) string {
	var all []string
	for _, v := range values {
		all = append(all, t.number(v))
	}
	return strings.Join(all, ", ")
}

// How says how a part is held and moved for a cut, without a full stop.
func (c CutStep) How(u geom.Unit) string {
	width, edges := caliper(c.Width, u)+" "+u.String(), strings.Join(c.Edges, ", ")
	switch setup.Work(c.Work) {
	case setup.Across:
		turns := " in turn"
		if len(c.Edges) == 1 && c.Edges[0] != "both ends" {
			turns = ""
		}
		return fmt.Sprintf("%ss, %s wide: flat, the %s face down, %s against the fence%s, fed by a mitre gauge or a sled", c.Kind, width, c.Face, edges, turns)
	case setup.Along:
		return fmt.Sprintf("%ss, %s wide: flat, the %s face down, %s along the fence", c.Kind, width, c.Face, edges)
	case setup.AtEnd:
		return fmt.Sprintf("%ss, %s from the end: flat, the %s face down, %s against the sacrificial fence", c.Kind, width, c.Face, edges)
	case setup.OnEnd:
		return fmt.Sprintf("%ss on the other face, up to %s deep: stood on %s in turn, the %s face against the tall fence", c.Kind, width, edges, c.Face)
	case setup.Fingers:
		return fmt.Sprintf("fingers: on end in a finger jig, %s; the drawing shows the notches", edges)
	}
	return fmt.Sprintf("%ss: bored or sawn apart, as the parts' drawings have them", c.Kind)
}

// Pieces says which parts are cut so, and how many of each.
func (c CutStep) Pieces() string {
	var parts []string
	for _, p := range c.Parts {
		parts = append(parts, fmt.Sprintf("%d x %s", p.Count, p.Part))
	}
	return strings.Join(parts, ", ")
}

func (t *sheetText) cut(c CutStep) {
	t.step++
	t.wrapped("  ", fmt.Sprintf("%d. %s.", t.step, c.How(t.unit)))
	if len(c.Passes) > 1 {
		t.wrapped("     ", fmt.Sprintf("%d passes, the fence at %s %s.", len(c.Passes), t.list(c.Passes), t.unit))
	}
	t.wrapped("     ", c.Pieces())
	if t.said[c.Work] {
		t.wrapped("     ", "! Cautions as above for "+workNames[setup.Work(c.Work)]+".")
		return
	}
	t.said[c.Work] = true
	t.cautions("     ", c.Cautions)
}

var workNames = map[setup.Work]string{setup.Across: "cuts across", setup.Along: "cuts along", setup.AtEnd: "cuts at the end", setup.OnEnd: "parts on end", setup.Fingers: "fingers", setup.Apart: "holes"}

func (t *sheetText) checks(list []Check) {
	if len(list) == 0 {
		return
	}
	var rows [][]string
	for _, c := range list {
		rows = append(rows, []string{"    " + c.What, t.number(c.Is), t.number(c.Least) + " to " + t.number(c.Most)})
	}
	t.line("  measure on the test piece, and now and then")
	table(&t.out, []string{"    what", ">" + t.unit.String(), ">right"}, rows)
}

func (t *sheetText) files(m Machine) {
	t.line("")
	t.wrapped("", "Touch the bit off where the legend of the drawings counts depths from. In this order, the first face of each part before the other:")
	var rows [][]string
	for _, f := range m.Files {
		how := "face up"
		if f.Turn {
			how = "turned over on its two holes"
		}
		rows = append(rows, []string{fmt.Sprintf("  %d x", f.Count), f.Part, f.Face, how, f.File})
	}
	rowsOf(&t.out, rows)
	t.line("")
	t.checks(m.Checks)
}
