package report

import (
	"bytes"
	"fmt"
	"math"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// Adjustment is what adjust --json prints.
type Adjustment struct {
	Tool     string         `json:"tool"`
	Job      string         `json:"job"`
	Units    string         `json:"units"`
	Drawer   string         `json:"drawer"`
	Machine  string         `json:"machine"`
	Readings []ReadingSaid  `json:"readings"`
	Clash    []string       `json:"clash"` // readings that contradict each other
	Cutter   Estimated      `json:"cutter"`
	Front    Estimated      `json:"front_thickness"`
	Sides    Estimated      `json:"sides_thickness"`
	Moves    []MoveSaid     `json:"moves"`
	AsItIs   []MeasuredSaid `json:"nothing_moved"`
	After    []MeasuredSaid `json:"after"`
	Wrong    string         `json:"wrong,omitempty"` // why no fence distance is right
	Saves    []string       `json:"cut_parts"`
	Square   string         `json:"square,omitempty"`
	Fits     string         `json:"fits,omitempty"`
	// FrontLength is that of fronts still to be cut where nothing is moved.
	FrontLength float64  `json:"front_length_nothing_moved,omitempty"`
	Written     []string `json:"written"` // entries of the new job file
}

// ReadingSaid is a reading, what all of them together make of it, and the rest.
type ReadingSaid struct {
	Reading  string  `json:"reading"`
	Value    float64 `json:"value"`
	Expected float64 `json:"expected"`
	Residual float64 `json:"residual"`
	Left     bool    `json:"left_out"`
}

// Estimated is a length with its standard deviation.
type Estimated struct {
	Value float64 `json:"value"`
	Sigma float64 `json:"sigma"`
}

// MoveSaid is a setting to move: By above 0 is the fence away from the cutter, the
// cutter up.
type MoveSaid struct {
	Setting string   `json:"setting"`
	By      float64  `json:"by"`
	From    float64  `json:"from"`
	To      float64  `json:"to"`
	Settled bool     `json:"settled"`
	Missing []string `json:"missing"`
	Said    string   `json:"said"`
}

// MeasuredSaid is a measure with its verdict.
type MeasuredSaid struct {
	Check   string     `json:"check"`
	Words   string     `json:"words"`
	Value   float64    `json:"value"`
	Sigma   float64    `json:"sigma"`
	Limit   [2]float64 `json:"limit"`
	Verdict string     `json:"verdict"`
}

// AdjustmentOf puts advice on a drawer's test cut into words.
func AdjustmentOf(b batch.Batch, d batch.Drawer, c testcut.Cut, a testcut.Advice) Adjustment {
	n := func(mm float64) float64 { return number(mm, b.Units) }
	known := func(k testcut.Known) Estimated { return Estimated{n(k.Value), n(k.Sigma)} }
	out := Adjustment{Tool: "drawerwright", Job: b.Title, Units: b.Units.String(), Drawer: d.Spec.Name, Machine: string(d.Setup.Cutter.Kind),
		Cutter: known(a.Cutter), Front: known(a.Front), Sides: known(a.Side), Readings: []ReadingSaid{}, Clash: append([]string{}, a.Clash...), Moves: []MoveSaid{}, Saves: []string{}, Written: []string{}}
	for _, r := range a.Read {
		out.Readings = append(out.Readings, ReadingSaid{r.Name, n(r.Value), n(r.Expected), n(r.Off), r.Left})
	}
	judged := func(list []testcut.Judged) []MeasuredSaid {
		said := []MeasuredSaid{}
		for _, q := range list {
			said = append(said, MeasuredSaid{q.Code, q.Name, n(q.Nominal), n(q.Sigma), [2]float64{n(q.Least), n(q.Most)}, string(q.Verdict)})
		}
		return said
	}
	out.AsItIs, out.After = judged(a.AsItIs), judged(a.After)
	text := func(mm float64) string { return geom.LengthOf(mm).Text(b.Units) }
	for _, m := range a.Moves {
		one := MoveSaid{Setting: string(m.What), By: n(m.By), From: n(m.From), To: n(m.To), Settled: m.Settled, Missing: []string{}, Said: moveText(m, out.Machine, text)}
		for _, k := range m.Missing {
			one.Missing = append(one.Missing, string(k))
		}
		out.Moves = append(out.Moves, one)
	}
	if t := a.NoSetting; t.Why != "" {
		out.Wrong = fmt.Sprintf("the cutter is too %s for a front of %s: no fence distance makes it flush with the right play; a cutter %s to %s wide would, or this fence distance as a compromise", t.Why, text(a.Front.Value), text(t.Least), text(t.Most))
	}
	for _, s := range a.Saves {
		out.Saves = append(out.Saves, saveText(s, text))
	}
	if len(a.Saves) > 0 {
		out.FrontLength = n(c.LengthOfFront(a.Estimate))
	}
	return out
}

// tiny is a move that no shop makes, in mm.
const tiny = 0.01

func moveText(m testcut.Move, machine string, text func(float64) string) string {
	by := text(math.Abs(m.By))
	if math.Abs(m.By) < tiny {
		return map[testcut.Setting]string{testcut.Fence: "leave the fence", testcut.Height: "leave the cutter's height", testcut.DadoHeight: "leave the height for the dados", testcut.EndPlace: "leave the stop for the fronts"}[m.What]
	}
	up := m.By > 0
	pick := func(a, b string) string {
		if up {
			return a
		}
		return b
	}
	if machine == string(joinery.Hand) {
		switch m.What {
		case testcut.Fence:
			return fmt.Sprintf("set the marking gauge %s by %s, from %s to %s", pick("wider", "narrower"), by, text(m.From), text(m.To))
		case testcut.DadoHeight:
			return fmt.Sprintf("cut the dados %s by %s, to %s", pick("deeper", "less deep"), by, text(m.To))
		}
		return fmt.Sprintf("set the depth stop and the depth gauge %s by %s, from %s to %s", pick("deeper", "less deep"), by, text(m.From), text(m.To))
	}
	if machine == string(joinery.Router) {
		switch m.What {
		case testcut.Fence:
			return fmt.Sprintf("shift the stop for the sides by %s, so that dados come %s the end", by, pick("further from", "nearer to"))
		case testcut.EndPlace:
			return fmt.Sprintf("shift the stop for the fronts by %s, so that tongues come out %s", by, pick("longer", "shorter"))
		}
		return fmt.Sprintf("set the zero %s by %s, so that it cuts %s", pick("down", "up"), by, pick("deeper", "less deep"))
	}
	switch m.What {
	case testcut.Fence:
		return fmt.Sprintf("move the fence %s the cutter by %s (%s), from %s to %s", pick("away from", "towards"), by, pick("shim in", "shim out"), text(m.From), text(m.To))
	case testcut.DadoHeight:
		return fmt.Sprintf("for the dados, move the cutter %s by %s, from %s to %s", pick("up", "down"), by, text(m.From), text(m.To))
	}
	return fmt.Sprintf("move the cutter %s by %s (%s), from %s to %s", pick("up", "down"), by, pick("shim in", "shim out"), text(m.From), text(m.To))
}

func saveText(s testcut.Save, text func(float64) string) string {
	by := text(s.By)
	other := ""
	switch s.OtherCode {
	case "recess":
		other = fmt.Sprintf("; the front is then %s %s", text(math.Abs(s.Other)), map[bool]string{true: "proud", false: "recessed"}[s.Other < 0])
	case "tongue-play":
		other = fmt.Sprintf("; the play is then %s", text(s.Other))
	case "outside-width":
		other = fmt.Sprintf("; the box is then %s wide", text(s.Other))
	}
	switch s.Remedy {
	case testcut.Keep:
		return "what is cut can be used as it is"
	case testcut.PlaneFront:
		return fmt.Sprintf("the front stands proud: plane or sand %s off its outside after gluing up", by)
	case testcut.DeepenRabbet:
		return fmt.Sprintf("cut the rabbets %s deeper: the fence closer to the cutter by as much%s", by, other)
	case testcut.TrimSides:
		return fmt.Sprintf("the front stands back: trim %s off those ends of the sides; the box gets less deep by as much", by)
	case testcut.WidenDado:
		return fmt.Sprintf("the tongue is tight: widen the dados by a second pass, the fence %s further away%s", by, other)
	case testcut.ShimDado:
		return fmt.Sprintf("the tongue is loose: glue a strip of %s to the inner wall of each dado%s", by, other)
	case testcut.ShortenFront:
		return fmt.Sprintf("the box is too wide: cut %s off each end of front and back, and their rabbets again at the same length", by)
	case testcut.NewFront:
		return fmt.Sprintf("the box is too narrow: cut new fronts and backs %s long", by)
	case testcut.ShimSlides:
		return fmt.Sprintf("or keep it and put %s behind each slide", by)
	case testcut.DeepenDado:
		return fmt.Sprintf("or cut the dados %s deeper, and the tongues as much longer", by)
	case testcut.TrimTongue:
		return fmt.Sprintf("the shoulders stay open: trim %s off the end of each tongue%s", by, other)
	}
	return string(s.Remedy) + " " + by
}

// AdjustmentText prints it for the bench.
func AdjustmentText(a Adjustment, u geom.Unit) []byte {
	var out bytes.Buffer
	t := sheetText{unit: u}
	fmt.Fprintf(&out, "test cut of %s\n\n", a.Drawer)
	var rows [][]string
	for _, r := range a.Readings {
		left := ""
		if r.Left {
			left = "left out: it does not agree with the others; measure it again"
		}
		rows = append(rows, []string{r.Reading, caliper(r.Value, u), caliper(r.Expected, u), caliper(r.Residual, u), left})
	}
	if len(rows) > 0 {
		table(&out, []string{"reading", ">" + u.String(), ">together they say", ">rest", ""}, rows)
	}
	if len(a.Clash) > 0 {
		t.wrapped("", fmt.Sprintf("These readings contradict each other: %s. Measure them again; until then nothing is to be moved.", strings.Join(a.Clash, ", ")))
	}
	if len(a.Readings) > 0 && len(a.Clash) == 0 {
		t.line("")
		t.line("what to move")
		for _, m := range a.Moves {
			t.wrapped("  ", m.Said+settledText(m))
		}
		t.wrapped("  ", fmt.Sprintf("The cut is %s %s wide, give or take %s.", caliper(a.Cutter.Value, u), u, caliper(2*a.Cutter.Sigma, u)))
		if a.Wrong != "" {
			t.wrapped("  ", a.Wrong+".")
		}
		t.measured("if nothing is moved", a.AsItIs)
		t.measured("if this is followed", a.After)
		if len(a.Saves) > 0 {
			t.line("")
			t.line("parts that are cut already")
			for _, s := range a.Saves {
				t.wrapped("  ", s)
			}
			t.wrapped("  ", fmt.Sprintf("With nothing moved, fronts and backs still to be cut have to be %s %s long.", caliper(a.FrontLength, u), u))
		}
	}
	for _, more := range []string{a.Square, a.Fits} {
		if more != "" {
			t.line("")
			t.wrapped("", more)
		}
	}
	if len(a.Written) > 0 {
		t.line("")
		t.line("written for the parts not yet cut")
		for _, w := range a.Written {
			t.line("  %s", w)
		}
	}
	return append(out.Bytes(), t.out.Bytes()...)
}

func settledText(m MoveSaid) string {
	switch {
	case m.Settled:
		return "."
	case len(m.Missing) > 0:
		return ". NOT SURE YET: measure " + strings.Join(m.Missing, " and ") + " too."
	}
	return ". NOT SURE: the limits leave less room than a caliper tells; cut another test piece after the move."
}

func (t *sheetText) measured(title string, list []MeasuredSaid) {
	if len(list) == 0 {
		return
	}
	t.line("")
	var rows [][]string
	for _, q := range list {
		rows = append(rows, []string{"  " + q.Words, t.number(q.Value), "+-" + t.number(2*q.Sigma), t.number(q.Limit[0]) + " to " + t.number(q.Limit[1]), q.Verdict})
	}
	table(&t.out, []string{title, ">" + t.unit.String(), ">known to", ">right", "verdict"}, rows)
}
