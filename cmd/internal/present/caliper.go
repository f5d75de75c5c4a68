package present

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/gauge"
)

// Check is what a caliper should read, and between what it may be: as printed, so that a
// target is between its limits on paper too.
type Check struct {
	What   string        `json:"what"`
	Target record.Length `json:"target"`
	Min    record.Length `json:"min"`
	Max    record.Length `json:"max"`

	OfParts bool `json:"of_parts,omitempty"` // it is read on the parts, not on a test piece
	// IfMore and IfLess say what to move, by the difference, for a reading over and under its target; none where one
	// reading alone does not tell.
	IfMore string `json:"if_more,omitempty"`
	IfLess string `json:"if_less,omitempty"`

	rounded gauge.Rounded
}

// offList is said of a reading whose limits are for parts of any size.
const offList = ", difference from the cut list"

// CheckOf is a reading between its limits, by a name.
func CheckOf(what string, r gauge.Row, u geom.Unit) Check {
	p := r.Round(u)
	mm := func(v float64) record.Length { return record.Length(v * u.MM()) }
	return Check{What: what, OfParts: r.Kind.OfSize(), rounded: p, Target: mm(p.Target), Min: mm(p.Min), Max: mm(p.Max)}
}

// Side is on which side of its limits, as they are printed, a reading in mm is: -1 below, 1 above, 0 between them.
func (c Check) Side(mm float64) int {
	switch {
	case mm < c.Min.MM()-geom.Settle:
		return -1
	case mm > c.Max.MM()+geom.Settle:
		return 1
	}
	return 0
}

// Texts are the target and the limits as they are printed.
func (c Check) Texts() (target, least, most string) {
	r := c.rounded
	return r.Text(r.Target), r.Text(r.Min), r.Text(r.Max)
}

// ChecksOf are the caliper's limits for drawers of a machine that are cut at one setting.
func ChecksOf(w record.MachineWork, set record.CaliperLimits, u geom.Unit) []Check {
	return maker{MachineWork: w, unit: u}.checks(set)
}

// checks are the caliper's limits for drawers that are cut at one setting, of which
// every combination is right for all of them.
func (m maker) checks(set record.CaliperLimits) []Check {
	list := []Check{}
	for _, r := range set.Rows {
		c := CheckOf(string(r.Kind), r, m.unit)
		if r.Relative {
			c.What += offList
		}
		if move, certain := set.Corrections[r.Kind]; certain && !c.OfParts {
			c.IfMore, c.IfLess = m.corrected(move, r)
		}
		list = append(list, c)
	}
	return list
}

// checksOf are those of several groups, each with its drawers' names where there are more.
func (m maker) checksOf(groups []record.CaliperLimits) (list []Check, said []string) {
	list = []Check{}
	for _, g := range groups {
		rows, more := m.checks(g), m.checksSaid(g)
		if len(groups) > 1 {
			of := strings.Join(g.Drawers, ", ") + ": "
			for i := range rows {
				rows[i].What = of + rows[i].What
			}
			for i := range more {
				more[i] = of + more[i]
			}
		}
		list, said = append(list, rows...), append(said, more...)
	}
	return list, said
}

// otherChecks adds those of drawers whose corners no one setting makes, as those of box
// joints, to the last setting; where there is none, to the machine.
func (m maker) otherChecks(out *Machine) {
	if len(m.OtherLimits) == 0 {
		return
	}
	list, said := m.checksOf(m.OtherLimits)
	if n := len(out.Settings); n > 0 {
		last := &out.Settings[n-1]
		last.Checks, last.ChecksText = append(last.Checks, list...), append(last.ChecksText, said...)
		return
	}
	out.Checks, out.ChecksText = list, said
}

// checksSaid is what a sheet says of its limits.
func (m maker) checksSaid(s record.CaliperLimits) (said []string) {
	for _, b := range s.OutOfLimits {
		said = append(said, fmt.Sprintf("As drawn, %s is %s, and %s to %s is right: parts that are cut as drawn are "+
			"not right together. The warnings say what to change; the limits here leave it out.",
			b.Name, m.text(b.Nominal), m.text(b.LowerLimit), m.text(b.UpperLimit)))
	}
	if len(s.TooNarrow) > 0 {
		return append(said, fmt.Sprintf("There are no limits for the caliper: the limits of %s are closer than a "+
			"caliper reads.", measureNames(s.TooNarrow)))
	}
	for _, r := range s.SortBoards {
		thick := m.atLeast(r.Min) + " to " + m.atMost(r.Max)
		if r.ToOne() {
			thick = m.text((r.Min + r.Max) / 2)
		}
		said = append(said, fmt.Sprintf("The limits hold for boards of %s of %s. The job has thinner or thicker ones: "+
			"of them, push a first corner together and measure %s, too.", r.Stock, thick, measureNames(s.Why)))
	}
	if s.Lengths {
		said = append(said, m.lengthRule(s.Longer))
	}
	var once []string
	for _, stock := range s.OneReading {
		if text := fmt.Sprintf("%s (%s)", stock.Name, m.text(stock.Thickness.Mean)); !slices.Contains(once, text) {
			once = append(once, text)
		}
	}
	if len(once) > 0 {
		said = append(said, fmt.Sprintf("The limits hold for boards as thick as their one reading: %s. Give the job "+
			"more readings of a stock whose boards differ.", strings.Join(once, ", ")))
	}
	return said
}

// atLeast and atMost print bounds inward, so that what is sorted by them is right.
func (m maker) atLeast(mm float64) string {
	return geom.LengthOf(mm).RoundUp(m.unit).Text(m.unit)
}

func (m maker) atMost(mm float64) string {
	return geom.LengthOf(mm).RoundDown(m.unit).Text(m.unit)
}

// lengthRule is the other way with sides that differ: the box comes out as wide as it
// should whatever they measure.
func (m maker) lengthRule(longer float64) string {
	rest := ""
	if longer > 0 {
		rest = " and " + m.text(longer) + " more"
	}
	return fmt.Sprintf("Or cut box front and back of each box to its own sides: as long as the box is wide, less "+
		"both sides as measured,%s.", rest)
}

func measureNames(list []gauge.Measure) string {
	var names []string
	for _, m := range list {
		if !slices.Contains(names, m.Name) {
			names = append(names, m.Name)
		}
	}
	return strings.Join(names, ", ")
}

// Measured heads the column that a reading is written into.
const Measured = "measured"

// GoTable is the limits for a caliper by the two between which it reads what is right, with room for the reading.
func GoTable(list []Check, u geom.Unit) Table {
	t := NewTable(Words("what"), In("set to", u.String()), Numbers("least"), Numbers("most"), Words(Measured))
	for _, c := range list {
		target, least, most := c.Texts()
		t.Add(c.What, target, least, most, "")
	}
	return t
}

// Advised reports whether what to move is known for one of some readings at least.
func Advised(list []Check) bool {
	return slices.ContainsFunc(list, func(c Check) bool { return c.IfMore != "" })
}

// MoveTable is GoTable with what to move beside each reading.
func MoveTable(list []Check, u geom.Unit) Table {
	t := GoTable(list, u)
	t.Columns = append(t.Columns, Words("if more"), Words("if less"))
	for i, c := range list {
		t.Rows[i] = append(t.Rows[i], Cell{Text: cmp.Or(c.IfMore, "-")}, Cell{Text: cmp.Or(c.IfLess, "-")})
	}
	return t
}

// CheckTable is the limits for a caliper: what is read, what it should be, and between what it
// is right.
func CheckTable(list []Check, u geom.Unit) Table {
	t := NewTable(Words("what"), In("", u.String()), Numbers("right"))
	for _, c := range list {
		target, least, most := c.Texts()
		t.Add(c.What, target, words.To(least, most))
	}
	return t
}
