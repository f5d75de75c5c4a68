// Package shop makes shop.html, the page for a phone in the shop: verdict and cautions, the cut
// list, every setup with its numbers large, the boxes and what to buy, each with a tick that stays on
// the phone. It is one file that needs no network.
package shop

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// content is what the page says, in its order. Numbers are printed here and nowhere else.
type content struct {
	Title, Unit string
	Fits        bool
	Answer      string
	Total       string
	Verdicts    []string
	Basis       string
	Warnings    []string
	Notes       []string
	First       string
	Cautions    []string // for all work, and for the machines
	Stocks      []stock
	Machines    []machine
	Boxes       []box
	Buy         []buy
	Sources     []string
}

// stock is the cut list of one.
type stock struct {
	Heading string
	Rows    []row
	Blanks  []string
}

// row are equal parts.
type row struct {
	Tick                             int // a number of its own for each tick of the page
	No, Pieces, Length, Width, Parts string
}

// box is one kind of drawer.
type box struct {
	Tick                 int
	Count, Name, Outside string
}

// buy is one thing to buy.
type buy struct {
	Tick                       int
	Kind, Quantity, Unit, Name string
}

// machine is what is set up on one.
type machine struct {
	Heading, OneSetting string
	Spacers             []string
	TestPiece, Order    string
	Refused             []string
	Gauges              []gauge
	Settings            []setting
	Files               []file
	Checks              []check // of a router
	ChecksText          []string
	Apart               []place
}

type gauge struct{ At, Marks string }

// setting is one that a machine is set to, with its cuts.
type setting struct {
	Heading    string
	Figures    []present.Figure
	Notes      []string
	Steps      []step
	Checks     []check
	ChecksText []string
}

// step is a cut, or what is sawn or bored apart.
type step struct {
	Tick                 int
	Text, Parts, Passes  string
	Note                 string
	Cautions             []string
	CautionsStandAlready bool // further up, for the same work
}

type file struct {
	Tick                    int
	Pieces, Part, How, File string
}

type check struct{ What, Is, Right string }

// place is where something is sawn or bored, with the steps there.
type place struct {
	Heading string
	Notes   []string
	Steps   []step
}

// maker numbers ticks and steps while a page is made.
type maker struct {
	unit  geom.Unit
	ticks int
	step  int             // of the machine
	said  map[string]bool // the work whose cautions stand on the page
}

// contentOf is the page of a batch and its report.
func contentOf(b batch.Batch, r record.Kept) content {
	m := &maker{unit: b.Units, said: make(map[string]bool)}
	sheet, verdict := present.SetupsOf(record.WorkOf(b)), record.VerdictOn(b)
	out := content{Title: titleOf(b), Unit: b.Units.String(), Fits: verdict.Fits, Answer: verdict.Text,
		Total: fmt.Sprintf("%s of %s", words.Count(b.Boxes(), "box", "boxes"), words.Count(len(b.Kinds()), "kind", "kinds")),
		Basis: present.Basis, First: sheet.First, Warnings: present.Gathered(r.Warnings, geom.LevelWarning),
		Notes: present.Gathered(r.Warnings, geom.LevelNote), Cautions: cited(sheet.General)}
	for _, v := range sheet.Verdicts {
		out.Verdicts = append(out.Verdicts, v.String()+".")
	}
	for _, c := range sheet.Machines {
		for _, said := range cited(c.Cautions) {
			out.Cautions = append(out.Cautions, machineName(c)+": "+said)
		}
	}
	for _, s := range present.CutList(r.CutList, r.Blanks, b.Units) {
		one := m.stock(s)
		if l := present.RoughOf(r.Lumber, s.Stock); l != nil {
			one.Blanks = slices.Concat(one.Blanks, present.RoughLines(*l, b.Units))
		}
		out.Stocks = append(out.Stocks, one)
	}
	for _, c := range sheet.Machines {
		out.Machines = append(out.Machines, m.machine(c))
	}
	for _, d := range r.Drawers {
		number := func(l record.Length) string { return geom.LengthOf(l.MM()).Number(b.Units) }
		size := fmt.Sprintf("%s x %s x %s", number(d.Outside.Width), number(d.Outside.Height), number(d.Outside.Depth))
		out.Boxes = append(out.Boxes, box{m.tick(), fmt.Sprint(d.Count), d.Name, size})
	}
	for _, x := range r.Buy {
		out.Buy = append(out.Buy, buy{m.tick(), x.Kind, fmt.Sprint(x.Quantity), x.Unit, x.Name})
	}
	for i, source := range sheet.Sources {
		out.Sources = append(out.Sources, fmt.Sprintf("[%d] %s", i+1, source))
	}
	return out
}

func titleOf(b batch.Batch) string {
	if b.Title == "" {
		return "Drawer boxes"
	}
	return b.Title
}

func machineName(c present.Machine) string { return upper(joinery.CutterKind(c.Machine).Machine()) }

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func cited(list []present.Caution) (out []string) {
	for _, c := range list {
		out = append(out, c.Cited())
	}
	return out
}

func (m *maker) tick() int {
	m.ticks++
	return m.ticks
}

func (m *maker) stock(s present.StockParts) stock {
	out := stock{Heading: s.Stock + ", " + s.Thickness + " thick"}
	if s.Grained {
		out.Heading += "; the grain runs along the length"
	}
	for _, t := range s.Table.Pick(present.NumberColumn, "pieces", "length", "width", "parts").Texts() {
		out.Rows = append(out.Rows, row{m.tick(), t[0], t[1], t[2], t[3], t[4]})
	}
	for _, said := range s.Blanks {
		out.Blanks = append(out.Blanks, said+".")
	}
	return out
}

func (m *maker) machine(c present.Machine) machine {
	out := machine{TestPiece: present.TestPiece(c, m.unit), Order: c.Order, OneSetting: c.OneSetup.Text, ChecksText: c.ChecksText,
		Heading: fmt.Sprintf("%s, %s %s: %s", machineName(c), present.CutterName(c.Machine),
			words.Length(c.Cutter.MM(), m.unit), strings.Join(c.Drawers, ", "))}
	for _, choice := range c.OneSetup.Minimal {
		if choice.Spacers != nil {
			out.Spacers = append(out.Spacers, choice.Spacers.Text)
		}
	}
	for _, r := range c.Refused {
		out.Refused = append(out.Refused, r.RefusedText())
	}
	for _, g := range c.Gauges {
		out.Gauges = append(out.Gauges, gauge{words.Length(g.At.MM(), m.unit), strings.Join(g.Marks, "; ")})
	}
	m.step = 0
	for i, s := range c.Settings {
		out.Settings = append(out.Settings, m.setting(i+1, c.Machine, s))
	}
	for _, f := range c.Files {
		out.Files = append(out.Files, file{m.tick(), fmt.Sprint(f.Count), f.Part, f.Face + ", " + f.How(), f.File})
	}
	out.Checks = m.checks(c.Checks)
	for _, s := range c.Separate {
		at := upper(s.Place(c.Machine))
		if n := len(out.Apart); n == 0 || out.Apart[n-1].Heading != at {
			out.Apart = append(out.Apart, place{Heading: at})
		}
		last := &out.Apart[len(out.Apart)-1]
		if s.Metric && !slices.Contains(last.Notes, present.MetricBits) {
			last.Notes = append(last.Notes, present.MetricBits)
		}
		last.Steps = append(last.Steps, m.cut(s))
	}
	return out
}

func (m *maker) setting(n int, machine string, s present.Setting) setting {
	out := setting{Heading: upper(strings.ToLower(s.Heading(n, machine, m.unit))), Figures: s.Figures(machine, m.unit),
		Checks: m.checks(s.Checks), ChecksText: s.ChecksText}
	if said := s.Buried(machine); said != "" {
		out.Notes = append(out.Notes, said)
	}
	if said := s.SpacersText(m.unit); said != "" {
		out.Notes = append(out.Notes, said)
	}
	if len(s.Steps) > 1 {
		out.Notes = append(out.Notes, s.Raised(m.unit))
	}
	for _, c := range s.Cuts {
		out.Steps = append(out.Steps, m.cut(c))
	}
	return out
}

func (m *maker) cut(c present.CutStep) step {
	m.step++
	out := step{Tick: m.tick(), Text: fmt.Sprintf("%d. %s.", m.step, c.How(m.unit)), Parts: c.PartsText, Note: c.Note,
		Cautions: cited(c.Cautions), CautionsStandAlready: m.said[c.Work]}
	m.said[c.Work] = true
	if len(c.Passes) > 1 {
		out.Passes = c.Fences(m.unit)
	}
	return out
}

func (m *maker) checks(list []present.Check) (out []check) {
	for _, t := range present.CheckTable(list, m.unit).Texts() {
		out = append(out, check{t[0], t[1], t[2]})
	}
	return out
}
