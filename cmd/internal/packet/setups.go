package packet

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// holds are how parts are held for the kinds of work, as drawings show them.
var holds = map[setup.Holding]paper.Hold{setup.Across: paper.Flat, setup.Along: paper.Flat, setup.AtEnd: paper.AtEnd,
	setup.AtEdge: paper.AtEnd, setup.OnEnd: paper.OnEnd, setup.Fingers: paper.OnJig}

// testPieceFrom names an offcut that gives the test piece of a machine, or says that none does. Empty without sheets.
func (m maker) testPieceFrom(kind joinery.CutterKind) string {
	switch t, laid := m.plan.TestPieces(m.batch.Drawers)[kind]; {
	case !laid:
		return ""
	case t.Offcut != "":
		return " The offcut " + t.Offcut + " gives it."
	default:
		return fmt.Sprintf(" No offcut of %s gives it: have a piece more.", t.Stock)
	}
}

// setups prints a card for every setting.
func (m maker) setups() {
	m.Chapter("Setups")
	for _, c := range m.sheet.Machines {
		m.Heading(1, fmt.Sprintf("%s, %s: %s", upper(joinery.CutterKind(c.Machine).Machine()),
			c.CutsWith(m.unit), headed(c.Drawers)))
		m.Text("One setting for everything? " + c.OneSetup.Text)
		for _, choice := range c.OneSetup.Minimal {
			if choice.Spacers != nil {
				m.Text(choice.Spacers.Text)
			}
		}
		m.Text(strings.TrimSuffix(present.TestPiece(c, m.unit), ".") + m.pushedTogether(c) + "." +
			m.testPieceFrom(joinery.CutterKind(c.Machine)))
		if len(c.Refused) > 0 {
			m.Heading(2, "Not on this machine")
			for _, r := range c.Refused {
				m.Item(0, "!", r.RefusedText())
			}
		}
		m.gauges(c)
		if c.Order != "" {
			m.Text(c.Order)
		}
		if len(c.Settings) > 0 && joinery.CutterKind(c.Machine).Fenced() {
			m.Small("The drawings are seen by the operator, who feeds away from himself with the fence at his right.")
		}
		step, said := 0, make(map[string]bool)
		for i := range c.Settings {
			m.card(c, i, step, said)
			step += len(c.Settings[i].Cuts)
		}
		if len(c.Files) > 0 {
			m.BigFigures(upper(joinery.CutterKind(c.Machine).Machine()), m.bits(c), cardMarks)
			if m.onSheets() {
				m.Text("All parts are cut out of sheets: the run cards of these say how. " + filing.RouterParts +
					" has a drawing of each part alone, to make one again.")
			} else {
				m.files(c)
			}
		}
		m.checks(c.Machine, c.Checks, c.ChecksText)
		m.apart(c, step)
	}
}

// pushedTogether says what is right of the two ends of a test piece, by the limits of all drawers of a machine.
func (m maker) pushedTogether(c present.Machine) string {
	most := make(map[joinery.CheckCode]float64)
	for _, d := range c.Drawers {
		for _, f := range m.report.FitOf(d) {
			if f.Part != string(joinery.Front) {
				continue
			}
			if before, known := most[f.Check]; !known || f.Limits[1].MM() < before {
				most[f.Check] = f.Limits[1].MM()
			}
		}
	}
	said := ""
	for _, k := range []struct {
		check joinery.CheckCode
		words string
	}{{joinery.CheckRecess, "box front flush within"}, {fit.ShoulderGap, "shoulders open at most"}} {
		if mm, known := most[k.check]; known {
			said += fmt.Sprintf(", %s %s", k.words, geom.LengthOf(mm).RoundDown(m.unit).Text(m.unit))
		}
	}
	return strings.Replace(said, ",", ":", 1)
}

// cardMarks are ticked at a machine before the run.
var cardMarks = []string{"setup done", "first piece measured"}

// gauges are those that are set by hand, with what is marked with each.
func (m maker) gauges(c present.Machine) {
	if len(c.Gauges) == 0 {
		return
	}
	t := present.NewTable(present.In("gauge", m.unit.String()), present.Words("marks"))
	for _, g := range c.Gauges {
		t.Add(m.reported(g.At), strings.Join(g.Marks, "; "))
	}
	m.table(t)
}

// card is a setting: what is set in large figures, each cut as the operator sees it with its pieces to tick, and
// between what the caliper has to read. Step is how many cuts the settings before it have, said what they have said.
// What is set stays with the first cut; a card that is longer than what is left of a page goes on on the next.
func (m maker) card(c present.Machine, at, step int, said map[string]bool) {
	s := c.Settings[at]
	cautions := fresh(s.Cautions, said)
	m.Together(func() {
		m.setting(c, at, cautions)
		m.cut(s, 0, step+1)
	})
	for i := range s.Cuts[1:] {
		m.cut(s, i+1, step+i+2)
	}
	m.checks(c.Machine, s.Checks, s.ChecksText)
}

// fresh are the cautions of a setting without those that an earlier one has said, but for the first, which counts every
// time.
func fresh(list []present.Caution, said map[string]bool) (out []present.Caution) {
	for i, c := range list {
		if i == 0 || !said[c.Text] {
			out = append(out, c)
		}
		said[c.Text] = true
	}
	return out
}

// setting is what is set, with what has to be known before.
func (m maker) setting(c present.Machine, at int, cautions []present.Caution) {
	s := c.Settings[at]
	m.BigFigures(fmt.Sprintf("Setting %d", at+1), m.set(s, c.Machine), cardMarks)
	m.Small(upper(strings.ToLower(s.Heading(at+1, c.Machine, m.unit))) + ".")
	for _, caution := range cautions {
		m.Item(0, "!", caution.Cited())
	}
	for _, said := range []string{s.Buried(c.Machine), s.SpacersText(m.unit)} {
		if said != "" {
			m.Text(said)
		}
	}
	if len(s.Steps) > 1 {
		m.Text(s.Raised(m.unit))
	}
}

// cut is one of a setting, beside its drawing, unless that is the one of a cut before it.
func (m maker) cut(s present.Setting, at, step int) {
	c := s.Cuts[at]
	said := slices.ContainsFunc(s.Cuts[:at], func(b present.CutStep) bool { return b.Work == c.Work })
	tell := func() { m.step(c, step, said) }
	seen, drawn := m.operator(s, c)
	if !drawn {
		m.Together(tell)
		return
	}
	for i, before := range s.Cuts[:at] {
		if same, drawn := m.operator(s, before); drawn && reflect.DeepEqual(same, seen) {
			m.Together(func() {
				tell()
				m.Item(1, "", fmt.Sprintf("Seen from where one stands it is as in the picture at %d.", step-at+i))
			})
			return
		}
	}
	m.Scale(paper.OperatorScale)
	picture := paper.Operator(seen, m.caliper, m.Width())
	if len(c.PartsText) < longText {
		m.Beside(picture, tell)
		return
	}
	m.Beside(picture, func() {
		m.how(c, step)
		m.warned(c, said)
	})
	m.pieces(c)
}

// longText is how many letters of parts have no room beside a drawing.
const longText = 100

// operator is a cut of a setting as the operator sees it; false where it is not drawn.
func (m maker) operator(s present.Setting, c present.CutStep) (seen paper.Cut, drawn bool) {
	hold, drawn := holds[setup.Holding(c.Work)]
	seen = paper.Cut{Hold: hold, Cutter: s.Cutter.MM(), Height: s.Height.MM(), Fence: c.Faces[0].MM(),
		Thickness: m.first(c).Panel.Thickness, End: c.End(), Touching: hold == paper.AtEnd && len(c.Passes) > 1}
	for _, at := range c.Faces[1:] {
		seen.Then = append(seen.Then, at.MM())
	}
	return seen, drawn
}

// onSheets reports whether a router cuts all sheets, and all parts from them; in files for each bit parts have an order
// of their own.
func (m maker) onSheets() bool {
	sawn := slices.ContainsFunc(m.report.Sheets, func(k record.SheetStock) bool {
		return !k.Routed || len(k.Unplaced) > 0
	})
	return !sawn && !m.report.DXF.Split && len(m.report.Sheets) > 0 && len(m.report.Sheets) == len(m.report.Material)
}

// files are the drawings that a router cuts, in order.
func (m maker) files(c present.Machine) {
	t := present.NewTable(present.Numbers("pieces"), present.Words("part"), present.Words("face"),
		present.Words("drawing"))
	for _, f := range c.Files {
		t.Add(fmt.Sprint(f.Count), f.Part, f.Face+", "+f.How(), f.File)
	}
	m.ticked(t)
}

// apart are what is sawn and bored afterward.
func (m maker) apart(c present.Machine, step int) {
	place, said := "", make(map[string]bool)
	metric := false
	for _, s := range c.Separate {
		if at := s.Place(c.Machine); at != place {
			place = at
			m.Heading(2, upper(at))
		}
		if s.Metric && !metric {
			metric = true
			m.Text(present.MetricBits)
		}
		step++
		m.Together(func() { m.step(s, step, said[s.Work]) })
		said[s.Work] = true
	}
}

// maxTicked are the parts of a cut that have a box to tick each; of more, those of a drawer are ticked together.
const maxTicked = 4

// step is a step in words, with its pieces to tick. Its cautions stand where they count, at the first such cut.
func (m maker) step(c present.CutStep, step int, said bool) {
	m.how(c, step)
	m.pieces(c)
	m.warned(c, said)
}

// how says how a step is made, and in how many passes.
func (m maker) how(c present.CutStep, step int) {
	m.Item(0, fmt.Sprintf("%d.", step), c.How(m.unit)+".")
	if len(c.Passes) > 1 {
		m.Item(1, "", c.Fences(m.unit))
	}
}

// pieces are those of a step, to be ticked.
func (m maker) pieces(c present.CutStep) {
	parts := strings.Split(c.PartsText, ", ")
	switch {
	case !strings.HasPrefix(c.PartsText, fmt.Sprint(c.Parts[0].Count, " x ")):
		parts = []string{c.PartsText}
	case len(parts) > maxTicked:
		parts = m.byDrawer(parts, c.Parts)
	}
	for _, p := range parts {
		m.Tick(1, p)
	}
}

// byDrawer joins the words for pieces of one drawer that follow each other.
func (m maker) byDrawer(words []string, pieces []record.Pieces) (list []string) {
	before := ""
	for i, p := range pieces {
		drawer := m.drawerOf(p.Part)
		if i > 0 && drawer == before {
			list[len(list)-1] += ", " + words[i]
		} else {
			list = append(list, words[i])
		}
		before = drawer
	}
	return list
}

// drawerOf is the name of the drawer that a part is of.
func (m maker) drawerOf(part string) string {
	for _, d := range m.batch.Drawers {
		if slices.ContainsFunc(d.Parts, func(p batch.Part) bool { return p.Name == part }) {
			return d.Spec.Name
		}
	}
	return "" // never: steps are of the batch's parts
}

// warned is what is to be known of a step, and what can hurt unless that is said.
func (m maker) warned(c present.CutStep, said bool) {
	if c.Note != "" {
		m.Item(1, "", c.Note)
	}
	if said {
		return
	}
	for _, caution := range c.Cautions {
		m.Caution(1, caution.Cited())
	}
}

// tableBegins is what the words above a table of readings take with its first rows, in mm.
const tableBegins = 30.0

// checks are the limits of a caliper as tables: between which it reads what is right on the test piece, with
// what to move where that is known, and on the parts.
func (m maker) checks(machine string, list []present.Check, said []string) {
	var piece, parts []present.Check
	for _, c := range list {
		if c.OfParts {
			parts = append(parts, c)
		} else {
			piece = append(piece, c)
		}
	}
	advised := present.Advised(piece)
	table := present.GoTable
	if advised {
		m.Keep(tableBegins)
		m.Small(present.Corrected(joinery.CutterKind(machine), piece))
		table = present.MoveTable
	}
	m.limits(table(piece, m.unit).Renamed("what", "on the test piece"))
	m.limits(present.GoTable(parts, m.unit).Renamed("what", "on the parts").Renamed("set to", "should be"))
	if len(list) > 0 && !advised {
		m.Small("Every combination of readings within these limits is right. For any other, set the machine to its " +
			"figures anew and cut another test piece; drawerwright adjust says what to move, and which way.")
	}
	for _, s := range said {
		m.Text(s)
	}
}

// limits are those of readings that are taken on one thing, with room for the reading.
func (m maker) limits(t present.Table) {
	if len(t.Rows) > 0 {
		heads := columns(t)
		for i := range heads {
			heads[i].Fill = heads[i].Head == present.Measured
		}
		m.Table(heads, t.Texts())
	}
}

// first is the first part of a step.
func (m maker) first(c present.CutStep) batch.Part {
	for _, d := range m.batch.Drawers {
		for _, p := range d.Parts {
			if p.Name == c.Parts[0].Part {
				return p
			}
		}
	}
	return batch.Part{Part: new(joinery.Part)} // never: steps are of the batch's parts
}
