package present

import (
	"math"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// SetupSheet is what setup --json prints: for each cutter whether one setting serves
// its drawers, and how each cut is set up.
type SetupSheet struct {
	Tool     string          `json:"tool"`
	Job      string          `json:"job"`
	Units    string          `json:"units"`
	Verdicts []record.Judged `json:"verdicts"` // on the drawers, as everywhere
	First    string          `json:"first"`
	General  []Caution       `json:"general"`
	Machines []Machine       `json:"machines"`
	Sources  []string        `json:"sources"`
}

// Machine is a machine with one cutter, or a router with its bits.
type Machine struct {
	Machine string        `json:"machine"`
	Cutter  record.Length `json:"cutter"` // of a router the narrowest bit that cuts something
	// Bits are the diameters of all bits of a router that cut something, the narrowest first.
	Bits     []record.Length `json:"bits,omitempty"`
	Drawers  []string        `json:"drawers"`
	Cautions []Caution       `json:"cautions"`
	OneSetup OneSetup        `json:"one_setup"`
	Settings []Setting       `json:"settings"` // empty for a router, which follows its drawings
	// Order says why the settings follow each other as they do.
	Order    string    `json:"order,omitempty"`
	Gauges   []Gauge   `json:"gauges,omitempty"` // by hand, what is marked with each
	Separate []CutStep `json:"separate"`         // what is sawn and bored afterward
	Refused  []CutStep `json:"refused"`          // what goes beyond the machine's limits
	Files    []Cutting `json:"files,omitempty"`  // of a router
	Checks   []Check   `json:"checks,omitempty"`
	// ChecksText is what has to be said of the limits of Checks.
	ChecksText []string `json:"checks_text,omitempty"`
}

// OneSetup is the verdict on one fence distance and one cutter height for all drawers
// of a machine.
type OneSetup struct {
	One bool `json:"one"`
	// Text is the verdict and what it costs, in sentences.
	Text string `json:"text"`
	// JobSettings is how many settings all cuts of the job as it stands take: those that follow.
	JobSettings int        `json:"job_settings"`
	Compromise  Choice     `json:"compromise"`
	Minimal     []Choice   `json:"minimal"`
	Optimal     bool       `json:"optimal"` // that there are none fewer
	Unserved    []Unserved `json:"unserved"`
}

// Choice is a setting for some drawers: between what it can be, what suits them best,
// and what the shop's spacers make of it.
type Choice struct {
	Fence       record.Length    `json:"fence"`
	Height      record.Length    `json:"height"`
	FenceRange  [2]record.Length `json:"fence_range"` // the first over the second where nothing suits all
	HeightRange [2]record.Length `json:"height_range"`
	Drawers     []string         `json:"drawers"`
	Costs       []Cost           `json:"costs"`
	Spacers     *Spacers         `json:"spacers,omitempty"`
}

// Cost is what a setting does to a drawer's front; the back has its own where it is
// of another thickness.
type Cost struct {
	Drawer    string         `json:"drawer"`
	Part      string         `json:"part"`
	Recess    record.Length  `json:"recess"`              // proud below 0
	Clearance *record.Length `json:"clearance,omitempty"` // a router makes its slots to fit
	Sliver    record.Length  `json:"sliver,omitempty"`    // what one pass leaves at the outside of the rabbet
}

// Spacers are stacks of the shop's spacers for fence and height. One serves for both.
type Spacers struct {
	Fence  []record.Length `json:"fence"`
	Height []record.Length `json:"height"`
	One    bool            `json:"one"`
	Text   string          `json:"text"` // what they cost against the best setting
	Costs  []Cost          `json:"costs"`
}

// Unserved is a drawer that no setting of its cutter suits.
type Unserved struct {
	Drawer string `json:"drawer"`
	Reason string `json:"reason"`
}

// Setting is one cutter height and fence distance with its cuts in order; by hand, the
// depth and the distance of a gauge.
type Setting struct {
	Cutter  record.Length   `json:"cutter,omitempty"`
	Height  record.Length   `json:"height"`
	Fence   record.Length   `json:"fence"`
	Spacers *Spacers        `json:"spacers,omitempty"`
	Steps   []record.Length `json:"height_passes,omitempty"` // of a router table
	// Cautions are those for setting it.
	Cautions []Caution `json:"cautions,omitempty"`
	Cuts     []CutStep `json:"cuts"`
	Checks   []Check   `json:"checks"`
	// ChecksText is what has to be said of the limits of Checks.
	ChecksText []string `json:"checks_text,omitempty"`
}

// Cutting is a drawing that a router cuts, or what a bit cuts of it until it is changed.
type Cutting struct {
	Part  string `json:"part"`
	Count int    `json:"count"`
	Face  string `json:"face"`
	File  string `json:"file"`
	Flip  bool   `json:"flip"` // turned over on its two holes before this one
	// Bit is the one to put in before; empty where the drawing is one file.
	Bit string `json:"bit,omitempty"`
	// AsItLies says that the part stays as the file before left it.
	AsItLies bool `json:"as_it_lies,omitempty"`
}

// How says in words how the part lies, and with which bit.
func (c Cutting) How() string {
	how := "face up"
	switch {
	case c.AsItLies:
		how = "as it lies"
	case c.Flip:
		how = "turned over on its two holes"
	}
	if c.Bit != "" {
		how += ", with " + c.Bit
	}
	return how
}

// SetupsOf is the setup sheet of the work of a job.
func SetupsOf(w record.Work) SetupSheet {
	out := SetupSheet{Tool: "drawerwright", Job: w.Job, Units: w.Unit.String(), Verdicts: w.Verdicts, First: first,
		General: general, Machines: []Machine{}}
	byHand := true
	for _, of := range w.Machines {
		out.Machines = append(out.Machines, maker{of, w.Unit, w.Spacers}.machine())
		byHand = byHand && of.Cutter.Kind == joinery.Hand
	}
	if byHand {
		out.General = atHand
	}
	out.cite()
	return record.Settle(out, w.Unit)
}

// maker makes the sheet of one machine.
type maker struct {
	record.MachineWork
	unit    geom.Unit
	spacers []float64 // the shop's
}

func (m maker) text(mm float64) string { return geom.LengthOf(mm).Text(m.unit) }

func (m maker) machine() Machine {
	out := Machine{Machine: string(m.Cutter.Kind), Cutter: record.Length(m.Cutter.Width), Settings: []Setting{}}
	for _, d := range m.Bits {
		out.Bits = append(out.Bits, record.Length(d))
	}
	if len(out.Bits) > 0 {
		out.Cutter = out.Bits[0]
	}
	for _, d := range m.Drawers {
		out.Drawers = append(out.Drawers, d.Name)
	}
	out.Cautions, out.Separate, out.Refused = ofMachine[m.Cutter.Kind], []CutStep{}, []CutStep{}
	out.OneSetup = m.verdict()
	if m.Cutter.Kind.FollowsDrawing() {
		out.Separate = m.bores()
		out.Files = m.files()
		out.Checks, out.ChecksText = m.checksOf(m.OtherLimits)
		return out
	}
	for i, s := range m.Plan.Settings {
		out.Settings = append(out.Settings, m.setting(s, m.Limits[i]))
	}
	m.otherChecks(&out)
	for _, c := range m.Plan.Separate {
		out.Separate = append(out.Separate, m.step(c))
	}
	out.Separate = append(out.Separate, m.bores()...)
	for _, c := range m.Plan.Refused {
		out.Refused = append(out.Refused, m.step(c))
	}
	if out.Order = orderOf(m.Plan, m.Cutter.Kind); m.Cutter.Kind == joinery.Hand {
		out.Gauges = m.gauges(m.Plan)
	}
	return out
}

func (m maker) files() []Cutting {
	list := []Cutting{}
	for _, f := range m.Files {
		one := Cutting{Part: f.Part, Count: f.Count, Face: f.Face.String(), File: f.File, Flip: f.Turn, AsItLies: f.Goes}
		if f.Bit != nil {
			one.Bit = bitWords(*f.Bit, m.unit)
		}
		list = append(list, one)
	}
	return list
}

// setting is one with the caliper limits of the drawers whose corners are cut at it.
func (m maker) setting(s setup.Setting, limits *record.CaliperLimits) Setting {
	out := Setting{Cutter: record.Length(s.Cutter), Height: record.Length(s.Height), Fence: record.Length(s.Fence),
		Cautions: m.settingCautions(s), Checks: []Check{}}
	if m.Pass > 0 {
		for _, h := range setup.HeightPasses(s.Cutter, m.Pass, s.Height) {
			out.Steps = append(out.Steps, record.Length(h))
		}
	}
	for _, c := range s.Cuts {
		out.Cuts = append(out.Cuts, m.step(c))
	}
	if limits != nil {
		out.Checks, out.ChecksText = m.checks(*limits), m.checksSaid(*limits)
	}
	if len(m.spacers) > 0 && s.Height > 0 && m.Cutter.Kind.Fenced() {
		out.Spacers = m.stacks(s.Fence, s.Height)
	}
	return out
}

// verdict is on one setting for the drawers of a machine.
func (m maker) verdict() OneSetup {
	v := m.Grouping
	if len(m.Refused) > 0 { // what would serve may be what it cannot take
		v.One, v.Minimal = false, nil
	}
	out := OneSetup{One: v.One, JobSettings: m.Settings, Compromise: m.choice(v.Compromise), Optimal: v.Optimal,
		Minimal: []Choice{}, Unserved: []Unserved{}}
	for _, g := range v.Minimal {
		out.Minimal = append(out.Minimal, m.choice(g))
	}
	for _, i := range v.Unserved {
		out.Unserved = append(out.Unserved, Unserved{m.Drawers[i].Name, m.Needs[i].Impossible})
	}
	out.Text = m.said(out)
	return out
}

func (m maker) choice(g setup.Group) Choice {
	c := Choice{Fence: record.Length(g.AtFence), Height: record.Length(g.AtHeight),
		FenceRange:  [2]record.Length{record.Length(g.Fence.Min), record.Length(min(g.Fence.Max, maxSetting))},
		HeightRange: [2]record.Length{record.Length(g.Height.Min), record.Length(g.Height.Max)},
		Costs:       m.costs(g, g.AtFence, g.AtHeight)}
	for _, i := range g.Drawers {
		c.Drawers = append(c.Drawers, m.Drawers[i].Name)
	}
	if len(m.spacers) > 0 {
		c.Spacers = m.stackFor(g)
	}
	return c
}

// maxSetting stands for no limit, in mm: no fence of a corner is further away.
const maxSetting = 1000.0

// costs are those of the drawers of a group, each different one once.
func (m maker) costs(g setup.Group, fence, height float64) []Cost {
	list := []Cost{}
	for _, i := range g.Drawers {
		d := m.Drawers[i]
		c := m.Needs[i].Cost(fence, height)
		for end, part := range d.Tongued {
			one := Cost{Drawer: d.Name, Part: string(part), Recess: record.Length(c.Recess[end]),
				Sliver: record.Length(c.Sliver[end])}
			if !math.IsNaN(c.Clearance[end]) {
				play := record.Length(c.Clearance[end])
				one.Clearance = &play
			}
			list = append(list, one)
		}
	}
	return record.Settle(list, m.unit) // the last bits of a computation are no sliver
}

// stackFor makes a group's setting up of the shop's spacers: one stack for both where
// there is one, else two; else those that come nearest.
func (m maker) stackFor(g setup.Group) *Spacers {
	c, found := g.Choose(m.spacers)
	if !found {
		return nil
	}
	s := m.listed(c)
	s.Costs = m.costs(g, c.Fence.Height, c.Height.Height)
	s.Text = m.spacersText(c, s.Costs, m.costs(g, g.AtFence, g.AtHeight), g)
	return s
}

// stacks are the spacers nearest to a setting that is given.
func (m maker) stacks(fence, height float64) *Spacers {
	if c, found := setup.ChooseFor(m.spacers, fence, height); found {
		return m.listed(c)
	}
	return nil
}

func (m maker) listed(c setup.Chosen) *Spacers {
	s := &Spacers{One: c.One, Fence: []record.Length{}, Height: []record.Length{}, Costs: []Cost{}}
	for _, v := range c.Fence.Pieces {
		s.Fence = append(s.Fence, record.Length(v))
	}
	for _, v := range c.Height.Pieces {
		s.Height = append(s.Height, record.Length(v))
	}
	return s
}
