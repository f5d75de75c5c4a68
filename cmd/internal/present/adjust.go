package present

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// Adjustment is what adjust --json prints.
type Adjustment struct {
	Tool         string        `json:"tool"`
	Job          string        `json:"job"`
	Units        string        `json:"units"`
	Drawer       string        `json:"drawer"`
	Machine      string        `json:"machine"`
	Readings     []ReadingRow  `json:"readings"`
	Conflicts    []string      `json:"conflicts"` // readings that contradict each other
	Cutter       Estimated     `json:"cutter"`
	StatedCutter record.Length `json:"stated_cutter"`
	OffWidth     string        `json:"cutter_off,omitempty"` // that the cutter is not as wide as the job says
	Front        Estimated     `json:"front_thickness"`
	Sides        Estimated     `json:"sides_thickness"`
	AllRight     bool          `json:"all_right"` // leave it
	// Measure is what is still to be measured before something is moved.
	Measure  []ReadingWanted `json:"measure"`
	Moves    []MoveRow       `json:"moves"`
	AsIs     []MeasureRow    `json:"as_is"`
	After    []MeasureRow    `json:"after"`
	Wrong    string          `json:"wrong,omitempty"` // why no fence distance is right
	Salvages []string        `json:"salvages"`
	Square   string          `json:"square,omitempty"`
	Fits     string          `json:"fits,omitempty"`
	// FrontLength is that of fronts still to be cut where nothing is moved; 0 while the
	// readings do not tell it.
	FrontLength record.Length `json:"front_length_as_is,omitempty"`
	Written     []string      `json:"written"`          // entries of the new job file
	Logged      string        `json:"logged,omitempty"` // what became of it in the shop's log
	// Warns is what check says of the new job file and did not say of the old one.
	Warns []string `json:"warns,omitempty"`
}

// ReadingRow is a reading, what all of them together make of it, and the rest.
type ReadingRow struct {
	Reading  string        `json:"reading"`
	Value    record.Length `json:"value"`
	Expected record.Length `json:"expected"`
	Residual record.Length `json:"residual"`
	Rejected bool          `json:"rejected"`
}

// Estimated is a length with its standard deviation.
type Estimated struct {
	Value record.Length `json:"value"`
	Sigma record.Length `json:"sigma"`
}

// MoveRow is what to do about a setting: leave, move, measure (more first) or try (the
// move, on another test piece). By above 0 is the fence away from the cutter, the cutter
// up. Sure says that parts come out right then beyond doubt.
type MoveRow struct {
	Setting string        `json:"setting"`
	Action  string        `json:"action"`
	Sure    bool          `json:"sure"`
	By      record.Length `json:"by"`
	From    record.Length `json:"from"`
	To      record.Length `json:"to"`
	Missing []string      `json:"missing"`
	Text    string        `json:"text"`
}

// MeasureRow is a measure with its verdict.
type MeasureRow struct {
	Check   joinery.CheckCode `json:"check"`
	Name    string            `json:"name"`
	Value   record.Length     `json:"value"`
	Sigma   record.Length     `json:"sigma"`
	Limits  [2]record.Length  `json:"limits"`
	Verdict string            `json:"verdict"`

	within bool
}

// judgedSaid are measures as they are printed, with what n makes of lengths.
func judgedSaid(list []testcut.Predicted) []MeasureRow {
	said := []MeasureRow{}
	for _, q := range list {
		verdict := string(q.Verdict)
		if q.EitherWay() {
			verdict = unknown
		}
		said = append(said, MeasureRow{q.Code, q.Name, record.Length(q.Nominal), record.Length(q.Sigma),
			[2]record.Length{record.Length(q.LowerLimit), record.Length(q.UpperLimit)},
			verdict, verdict == string(q.Verdicts.Within)})
	}
	return said
}

// TestCut says of which drawer a test cut is, and in which unit it is printed.
type TestCut struct {
	Job    string
	Unit   geom.Unit
	Drawer string
	Setup  joinery.Setup
}

// AdjustmentOf puts advice on a test cut into words.
func AdjustmentOf(of TestCut, c testcut.Model, a testcut.Advice) Adjustment {
	known := func(k testcut.Estimated) Estimated { return Estimated{record.Length(k.Value), record.Length(k.Sigma)} }
	out := Adjustment{Tool: "drawerwright", Job: of.Job, Units: of.Unit.String(), Drawer: of.Drawer,
		Machine: string(of.Setup.Cutter.Kind),
		Cutter:  known(a.Cutter), StatedCutter: record.Length(a.Stated), Front: known(a.Front), Sides: known(a.Side),
		Readings:  []ReadingRow{},
		Conflicts: append([]string{}, a.Conflicts...), AllRight: a.AllRight,
		Measure: []ReadingWanted{}, Moves: []MoveRow{}, Salvages: []string{}, Written: []string{}}
	for _, r := range a.Residuals {
		out.Readings = append(out.Readings, ReadingRow{r.Name, record.Length(r.Value), record.Length(r.Expected),
			record.Length(r.Residual), r.Rejected})
	}
	text := func(mm float64) string { return geom.LengthOf(mm).Text(of.Unit) }
	if a.CutterOff() {
		out.OffWidth = fmt.Sprintf("the cutter cuts %s wide, and the job says %s",
			text(a.Cutter.Value), text(a.Stated))
		if of.Setup.Cutter.Kind == joinery.Router { // any of its bits may have cut them
			out.OffWidth = slotsOff(a.Cutter.Value-a.Stated, text)
		}
		if l := a.SlotLimits; l != nil {
			out.OffWidth += fmt.Sprintf("; a slot of %s %s is right", words.Within(l.Min, l.Max, of.Unit), of.Unit)
		}
	}
	out.Measure = append(out.Measure, wanted(a, c, out.Machine)...)
	out.AsIs, out.After = judgedSaid(a.AsItIs), judgedSaid(a.After)
	for _, m := range a.Moves {
		m = m.Printed(of.Unit.Step())
		one := MoveRow{Setting: string(m.Setting), By: record.Length(m.By), From: record.Length(m.From),
			To: record.Length(m.To), Action: string(m.Action), Sure: m.Sure,
			Missing: []string{}}
		for _, k := range m.Missing {
			name := string(k)
			if slices.ContainsFunc(a.Residuals, func(r testcut.Residual) bool { return r.Kind == k }) {
				name += " again"
			}
			one.Missing = append(one.Missing, name)
		}
		one.Text = doText(m, out.Machine, text)
		out.Moves = append(out.Moves, one)
	}
	if none := a.NoSetting; none != nil {
		c := none.Remedies[0].Changes[0]
		out.Wrong = fmt.Sprintf("%s; a cutter %s to %s wide would", none.Fact.In(of.Unit), text(c.Min), text(c.Max))
		if !slices.ContainsFunc(a.Moves, func(m testcut.Move) bool { return m.Worse }) {
			out.Wrong += ", or this fence distance as a compromise"
		}
	}
	if slices.ContainsFunc(a.Moves, func(m testcut.Move) bool { return m.Action == testcut.Measure }) {
		return record.Settle(out, of.Unit) // what becomes of cut parts is not known yet
	}
	for _, s := range a.Salvages {
		out.Salvages = append(out.Salvages, saveText(s, deeper(of.Setup), text))
	}
	if len(a.Salvages) > 0 {
		out.FrontLength = record.Length(c.FrontLengthFor(a.Estimate))
	}
	return record.Settle(out, of.Unit)
}

// unknown is the verdict on a measure that may be out of its limits on either side.
const unknown = "not known yet"

// slotsOff says by how much slots of a router are not what their drawing asks for, in mm.
func slotsOff(by float64, text func(float64) string) string {
	than := "wider"
	if by < 0 {
		than = "narrower"
	}
	return fmt.Sprintf("slots come out %s %s than they are drawn", text(math.Abs(by)), than)
}

// cutIs says how wide the cut is, or how it differs from its drawing.
func (a Adjustment) cutIs(u geom.Unit) string {
	known := fmt.Sprintf(", give or take %s.", caliper(2*a.Cutter.Sigma, u))
	if a.Machine != string(joinery.Router) {
		return fmt.Sprintf("The cut is %s %s wide", caliper(a.Cutter.Value, u), u) + known
	}
	text := func(mm float64) string { return geom.LengthOf(mm).Text(u) }
	return "S" + slotsOff(a.Cutter.Value.MM()-a.StatedCutter.MM(), text)[1:] + known
}

// makeGood is what to do about a cutter that is not as wide as the job says.
func (a Adjustment) makeGood() string {
	switch {
	case len(a.Written) > 0:
		return "; the new file has what was measured"
	case a.Machine == string(joinery.Router):
		return ": measure the bit that cuts them, and write its diameter into the job"
	}
	return ": set it anew, or write what it cuts into the job, as --write does"
}

// settingName is the name of what is moved, which depends on the machine.
func settingName(s testcut.Setting, machine string) string {
	names := map[testcut.Setting]string{testcut.Fence: "the fence", testcut.Height: "the cutter's height", testcut.DadoHeight: "the height for the dados", testcut.EndPlace: "the fence for the box fronts' rabbets", testcut.RabbetHeight: "the cutter's height for the box fronts' rabbets"}
	switch machine {
	case string(joinery.Hand):
		names[testcut.Fence], names[testcut.Height], names[testcut.DadoHeight] = "the marking gauge", "the depth stop", "the depth of the dados"
	case string(joinery.Router):
		names[testcut.Fence], names[testcut.Height], names[testcut.EndPlace] = "the stop for the sides", "the zero", "the stop for the box fronts"
	}
	return names[s]
}

// doText says what to do about a setting, as a sentence.
func doText(m testcut.Move, machine string, text func(float64) string) string {
	name := settingName(m.Setting, machine)
	switch {
	case m.Worse:
		return fmt.Sprintf("leave %s: moved, it would put more out than it puts right.", name)
	case m.Action == testcut.Measure:
		why := "one reading alone can be a slip"
		if len(m.Unsure) > 0 {
			why = words.Some(m.Unsure) + " cannot be told yet"
		}
		return fmt.Sprintf("leave %s for now: %s.", name, why)
	case m.Action == testcut.Leave && !m.Sure && m.Better:
		return fmt.Sprintf("leave %s: the test cut is right. A limit is near; to be surer, %s.", name,
			moveText(m, machine, text))
	case m.Action == testcut.Leave && !m.Sure:
		return fmt.Sprintf("leave %s: the test cut is right, but a limit is near; measure the first parts too.", name)
	case m.Action == testcut.Leave || m.Action == testcut.Make && testcut.Tiny(m.By):
		return fmt.Sprintf("leave %s.", name)
	case m.Action == testcut.Try:
		return moveText(m, machine, text) +
			". A caliper cannot tell whether that is enough: cut another test piece after the move, " +
			"push it together, and give adjust its recess and clearance before you cut parts."
	}
	return moveText(m, machine, text) + "."
}

func moveText(m testcut.Move, machine string, text func(float64) string) string {
	by := text(math.Abs(m.By))
	up := m.By > 0
	pick := func(a, b string) string {
		if up {
			return a
		}
		return b
	}
	if machine == string(joinery.Hand) {
		switch m.Setting {
		case testcut.Fence:
			return fmt.Sprintf("set the marking gauge %s by %s, from %s to %s",
				pick("wider", "narrower"), by, text(m.From), text(m.To))
		case testcut.DadoHeight:
			return fmt.Sprintf("cut the dados %s by %s, to %s", pick("deeper", "less deep"), by, text(m.To))
		}
		return fmt.Sprintf("set the depth stop and the depth gauge %s by %s, from %s to %s",
			pick("deeper", "less deep"), by, text(m.From), text(m.To))
	}
	if machine == string(joinery.Router) {
		switch m.Setting {
		case testcut.Fence:
			return fmt.Sprintf("shift the stop for the sides by %s, so that dados come %s the end", by,
				pick("further from", "nearer to"))
		case testcut.EndPlace:
			return fmt.Sprintf("shift the stop for the box fronts by %s, so that tongues come out %s", by,
				pick("longer", "shorter"))
		}
		return fmt.Sprintf("set the zero %s by %s, so that it cuts %s", pick("down", "up"), by,
			pick("deeper", "less deep"))
	}
	switch m.Setting {
	case testcut.Fence:
		return fmt.Sprintf("move the fence %s the cutter by %s, from %s to %s",
			pick("away from", "toward"), by, text(m.From), text(m.To))
	case testcut.DadoHeight:
		return fmt.Sprintf("for the dados, move the cutter %s by %s, from %s to %s", pick("up", "down"),
			by, text(m.From), text(m.To))
	case testcut.RabbetHeight:
		return fmt.Sprintf("for the rabbets of box front and back, which lie flat, move the cutter %s by %s, so that they get %s deep and not %s", pick("up", "down"), by, text(m.To), text(m.From))
	case testcut.EndPlace:
		return fmt.Sprintf("for the rabbets of box front and back, which lie flat, move the fence %s the cutter by %s, so that tongues get %s long and not %s", pick("away from", "toward"), by, text(m.To), text(m.From))
	}
	return fmt.Sprintf("move the cutter %s by %s, from %s to %s", pick("up", "down"), by, text(m.From), text(m.To))
}

// deeper is how a machine cuts rabbets again that were not deep enough.
func deeper(s joinery.Setup) string {
	switch {
	case s.FlatTongues:
		return "the cutter up by as much"
	case s.Cutter.Kind.Fenced():
		return "the fence closer to the cutter by as much"
	case s.Cutter.Kind.FollowsDrawing():
		return "the zero lower by as much"
	}
	return "the gauge set narrower by as much"
}

func saveText(s testcut.Salvage, deeper string, text func(float64) string) string {
	by := text(s.By)
	other := ""
	switch s.OtherCode {
	case joinery.CheckRecess:
		if other = "; the box front is then flush"; testcut.Tiny(s.Other) {
			break
		}
		other = fmt.Sprintf("; the box front is then %s %s", text(math.Abs(s.Other)), map[bool]string{true: "proud", false: "recessed"}[s.Other < 0])
	case joinery.CheckTongueClearance:
		other = fmt.Sprintf("; the clearance is then %s", text(s.Other))
	case joinery.CheckOutsideWidth:
		other = fmt.Sprintf("; the box is then %s wide", text(s.Other))
	}
	switch s.Remedy {
	case testcut.Keep:
		return "what is cut can be used as it is"
	case testcut.PlaneFront:
		return fmt.Sprintf("the box front stands proud: plane or sand %s off its outside after gluing up", by)
	case testcut.DeepenRabbet:
		return fmt.Sprintf("cut the rabbets %s deeper: %s%s", by, deeper, other)
	case testcut.TrimSides:
		return fmt.Sprintf("the box front stands back: trim %s off those ends of the sides; the box gets less deep by as much", by)
	case testcut.WidenDado:
		return fmt.Sprintf("the tongue is tight: widen the dados by a second pass, the fence %s further away%s", by, other)
	case testcut.ShimDado:
		return fmt.Sprintf("the tongue is loose: glue a strip of %s to the inner wall of each dado%s", by, other)
	case testcut.ShortenFront:
		return fmt.Sprintf("the box is too wide: cut %s off each end of box front and back, and their rabbets again at the same length", by)
	case testcut.NewFront:
		return fmt.Sprintf("the box is too narrow: cut new box fronts and backs %s long", by)
	case testcut.ShimSlides:
		return fmt.Sprintf("or keep it and put %s behind each slide", by)
	case testcut.DeepenDado:
		return fmt.Sprintf("or cut the dados %s deeper, and the tongues as much longer", by)
	case testcut.TrimTongue:
		return fmt.Sprintf("the shoulders stay open: trim %s off the end of each tongue%s", by, other)
	}
	return string(s.Remedy) + " " + by
}
