package firstbox

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"time"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/shoplog"
	"drawerwright/geom/testcut"
)

// Reading is what was read of a row, in mm.
type Reading struct {
	Row int
	MM  float64
}

// Verdicts on a first box.
const (
	Right = "right"
	Open  = "open" // nothing is out of its limits, and not all is read
	Out   = "out of limits"
)

// Record is a first box with the verdict on it, as inspect --json prints it.
type Record struct {
	Units   string   `json:"units"`
	Drawer  string   `json:"drawer"`
	Verdict string   `json:"verdict"` // right, open or out of limits
	Rows    []Judged `json:"rows"`
	// Adjust is what adjust says, where a reading of the test cut is out; Do is what to do about others.
	Adjust *present.Adjustment `json:"adjust,omitempty"`
	Do     []string            `json:"do"`

	form   Form
	advice testcut.Advice
}

// Judged is a row with what was read.
type Judged struct {
	present.Check
	Read    bool          `json:"read"`
	Reading record.Length `json:"reading"` // 0 where none was taken
	Verdict string        `json:"verdict"` // right, right as the box is, under, over or not measured
}

// Verdicts on rows: on one that was not read, on a part that is right since its box is, and on others by their sides.
const (
	notRead    = "not measured"
	rightByBox = "right, as the box is"
)

var sides = map[int]string{-1: "under", 0: Right, 1: "over"}

// Judge says of the readings of a first box which are out of their limits, and what to do first: what adjust says of
// those of the test cut, and of others what moves each. A box of which all is within its limits is right, and nothing
// is moved for it.
func (f Form) Judge(b batch.Batch, readings []Reading) Record {
	out := Record{Units: b.Units.String(), Drawer: f.Drawer(), Rows: make([]Judged, len(f.Rows)), Do: []string{}, form: f}
	for i, r := range f.Rows {
		out.Rows[i] = Judged{Check: r.Check, Verdict: notRead}
	}
	for _, one := range f.withApart(readings) {
		r := &out.Rows[one.Row]
		r.Read, r.Reading, r.Verdict = true, record.Length(one.MM), sides[r.Side(one.MM)]
	}
	f.byTheBox(out.Rows)
	cut := f.ofCut(readings)
	if len(cut) > 0 {
		out.advice = f.model.Advise(cut)
	}
	out.Verdict = out.judge(b)
	return out
}

// byTheBox takes parts for right whose size is out of its limits, where that of the box that follows from it was read
// at all its places and is right: limits of parts leave room for all else that may be off, and then nothing was.
func (f Form) byTheBox(rows []Judged) {
	for i, j := range rows {
		if size := f.Rows[i].follows; size != "" && j.Read && !j.isRight() && f.each(rows, size, Judged.isRight) {
			rows[i].Verdict = rightByBox
		}
	}
}

// each reports whether something holds of all readings of a size of the box.
func (f Form) each(rows []Judged, size joinery.CheckCode, holds func(Judged) bool) bool {
	for i, j := range rows {
		if f.Rows[i].box == size && !holds(j) {
			return false
		}
	}
	return true
}

// isRight reports whether a row was read and is right.
func (j Judged) isRight() bool { return j.Verdict == Right || j.Verdict == rightByBox }

// judge is the verdict on a first box; it fills in what to do.
func (r *Record) judge(b batch.Batch) string {
	verdict, cut := Right, false
	for i, j := range r.Rows {
		switch {
		case j.isRight():
			continue
		case j.Read:
			verdict, cut = Out, cut || r.form.Rows[i].kind != ""
		case verdict == Right:
			verdict = Open
		}
	}
	decided := make(map[testcut.Setting]bool)
	if cut {
		decided = r.adjusted(b)
	}
	r.others(b.Units, decided)
	return verdict
}

// adjusted takes what adjust says of the readings of the test cut, where it says to do anything, and gives the settings
// that it decides on. What it would leave is no answer to a reading that is out of its limits: those hold.
func (r *Record) adjusted(b batch.Batch) map[testcut.Setting]bool {
	decided := make(map[testcut.Setting]bool)
	said := present.AdjustmentOf(present.TestCut{Job: b.Title, Unit: b.Units, Drawer: r.Drawer,
		Setup: r.form.drawer.Setup}, r.form.model, r.advice)
	said.Moves = slices.DeleteFunc(said.Moves, func(m present.MoveRow) bool {
		return testcut.Action(m.Action) == testcut.Leave
	})
	said.AllRight = false
	for _, m := range said.Moves {
		decided[testcut.Setting(m.Setting)] = true
	}
	if said.OffWidth != "" {
		decided[testcut.Cutter] = true
	}
	if len(said.Conflicts) > 0 {
		for _, row := range r.form.Rows {
			decided[row.by.Setting] = true
		}
		if r.notHome() {
			r.Do = append(r.Do, notHome)
			return decided
		}
	}
	again := slices.ContainsFunc(said.Readings, func(one present.ReadingRow) bool { return one.Rejected })
	if len(decided) > 0 || said.Wrong != "" || again {
		r.Adjust = &said
	}
	return decided
}

// notHome is said of a box that is as much too wide at both ends, or too narrow, and whose parts do not tell of it.
const notHome = "width front and width back agree with each other, and not with the parts: push all corners home, " +
	"and measure both again; where they stay, measure box front and back and their dados again."

// notHome reports whether both widths are out on one side.
func (r *Record) notHome() bool {
	var sides []string
	for i, j := range r.Rows {
		if r.form.Rows[i].kind == testcut.Width {
			sides = append(sides, j.Verdict)
		}
	}
	return len(sides) == 2 && sides[0] == sides[1] && sides[0] != Right && sides[0] != notRead
}

// others says what to do about readings that are out and that adjust does not decide on. A setting is moved once for
// all of them, not at all where adjust decides on it, nor where the move would put out what is right.
func (r *Record) others(u geom.Unit, decided map[testcut.Setting]bool) {
	crooked, byAdjust := false, maps.Clone(decided)
	for i, j := range r.Rows {
		row := r.form.Rows[i]
		said := ""
		switch by := row.by.Setting; {
		case !j.Read || j.isRight():
			continue
		case row.box == fit.Diagonal:
			crooked = true
			continue
		case row.kind != "" && (r.Adjust != nil && by == "" || len(r.Do) > 0 && r.Do[0] == notHome):
			continue // adjust has all of it
		case byAdjust[by] && row.kind != "":
			continue
		case row.follows != "" && !r.form.each(r.Rows, row.follows, func(j Judged) bool { return j.Read }):
			said = j.isOut(u) + "; measure the box: where that is right there, so is this."
		case decided[by]:
			said = j.isOut(u) + "; the same setting moves it: read it again after that."
		case r.spoiled(i) != "":
			said = fmt.Sprintf("%s; moved for it, %s would be out: set the machine to its figures anew, and cut "+
				"another test piece.", j.isOut(u), r.spoiled(i))
		default:
			decided[by] = by != ""
			said = j.do(u)
		}
		r.Do = append(r.Do, said)
	}
	if crooked {
		r.Do = append(r.Do, squared(r.Rows[len(r.Rows)-1]))
	}
}

// spoiled is a reading that is right, and would be out were a setting moved that brings another to its target; empty
// where none would.
func (r *Record) spoiled(at int) string {
	by := r.form.Rows[at].by
	off := r.Rows[at].Reading.MM() - r.Rows[at].Target.MM()
	for i, j := range r.Rows {
		other := r.form.Rows[i].by
		if other.Setting == "" || other.Setting != by.Setting || j.Verdict != Right {
			continue
		}
		move := -off
		if other.Opposite != by.Opposite {
			move = off
		}
		if j.Side(j.Reading.MM()+move) != 0 {
			return j.What
		}
	}
	return ""
}

// withApart adds how far the diagonals are apart, where both were read; what was written of that counts no more.
func (f Form) withApart(readings []Reading) []Reading {
	var across []float64
	last := len(f.Rows) - 1 // of the form
	for _, r := range readings {
		if f.Rows[r.Row].box == f.Rows[last].box && r.Row != last {
			across = append(across, r.MM)
		}
	}
	if len(across) == 2 {
		readings = append(readings[:len(readings):len(readings)], Reading{last, math.Abs(across[0] - across[1])})
	}
	return readings
}

// squared says what to do about diagonals that are out, by how far they are apart.
func squared(apart Judged) string {
	if apart.Read && apart.Verdict == Right {
		return "the diagonals follow from width and depth: look at these."
	}
	return present.Squaring + " Measure it again then."
}

// ofCut are the readings that adjust takes.
func (f Form) ofCut(readings []Reading) (list []testcut.Reading) {
	for _, one := range readings {
		r := f.Rows[one.Row]
		if r.kind == "" {
			continue
		}
		v := one.MM
		if r.left { // the cut is as much deeper as less wood is left
			meant, _ := f.model.Plausible(testcut.Reading{Kind: r.kind})
			v = meant - (v - r.Target.MM())
		}
		list = append(list, testcut.Reading{Kind: r.kind, Value: v, Name: r.What})
	}
	return list
}

// do says what to do about a reading that is out of its limits.
func (j Judged) do(u geom.Unit) string {
	way := j.IfMore
	if j.Verdict == sides[-1] {
		way = j.IfLess
	}
	if way == "" {
		return j.isOut(u) + "; no one setting moves it: look at the other readings, and measure again."
	}
	by := geom.LengthOf(math.Abs(j.Reading.MM() - j.Target.MM()))
	return fmt.Sprintf("%s: %s, by %s.", j.isOut(u), way, by.Text(u))
}

// isOut says what was read, and what is right.
func (j Judged) isOut(u geom.Unit) string {
	_, least, most := j.Texts()
	return fmt.Sprintf("%s: %s, right is %s to %s", j.What, j.reads(u), least, most)
}

// reads prints the reading beside its limits.
func (j Judged) reads(u geom.Unit) string {
	return geom.FixedBeside(j.Reading.MM(), geom.Interval{Min: j.Min.MM(), Max: j.Max.MM()}, u)
}

// logged are the lines that a first box adds to a shop's log, those that its readings would add as a test cut; why says
// why there are none.
func (r Record) logged(day time.Time) (cuts []shoplog.Cut, why string) {
	if r.Verdict == Open {
		return nil, "Nothing is added to the log yet: it takes a first box once all of it is read."
	}
	a := r.advice
	if r.Adjust == nil { // nothing is moved
		a.Moves = nil
	}
	cuts = r.form.model.Logged(a, day, r.form.drawer.Tool)
	return cuts, present.NotLogged(a, cuts)
}
