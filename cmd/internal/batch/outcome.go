package batch

import (
	"encoding/json"
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// outcomes works the outcome of drawers out, once for those that are equal but for
// their names and number, and tries a change once on all of these.
type outcomes struct {
	drawn map[string]fit.Outcome
	tried map[string]trial
}

// trial is what a change comes to.
type trial struct {
	outcome fit.Outcome
	holds   bool // nothing is worse
}

func newOutcomes() *outcomes {
	return &outcomes{make(map[string]fit.Outcome), make(map[string]trial)}
}

// of is the outcome of a drawer, with a key that all drawers equal to it have; it is empty
// where a number has none.
func (known *outcomes) of(d joinery.Drawer, s Shop) (o fit.Outcome, key string) {
	spec := d.Spec
	spec.Name, spec.Count = "", 0
	text, err := json.Marshal([]any{spec, s})
	if err != nil { // a number that JSON does not have
		return fit.Foresee(d, s.Boards, s.Accuracy, s.Slide), ""
	}
	o, done := known.drawn[string(text)]
	if !done {
		o = fit.Foresee(d, s.Boards, s.Accuracy, s.Slide)
		known.drawn[string(text)] = o
	}
	return o, string(text)
}

// once tries a change on a drawer, unless it was tried on one like it.
func (d *Drawer) once(what string, r joinery.Remedy, lengths []float64, try func() trial) trial {
	if d.key == "" || d.known == nil {
		return try()
	}
	key := fmt.Sprint(what, r.Changes, lengths, d.key)
	t, done := d.known.tried[key]
	if !done {
		t = try()
		d.known.tried[key] = t
	}
	return t
}

// told adds what the outcome of one of the drawers of an entry says to the problems of the layout. What leaves its limits
// is a warning: of the layout, where another setting would mend it, else of the outcome.
func told(rows []Drawer, row int, problems []joinery.Problem, advise bool) []joinery.Problem {
	d := &rows[row]
	said := make(map[joinery.CheckID]bool)
	if advise {
		d.keepOdds(problems)
	}
	for i, p := range problems {
		if p.Code == "bottom-slack" { // it is the same one way and the other
			said[joinery.CheckID{Code: joinery.CheckBottomSlack, Part: joinery.Bottom}] = true
			said[joinery.CheckID{Code: joinery.CheckBottomSlackDeep, Part: joinery.Bottom}] = true
		}
		if p.Check == (joinery.CheckID{}) {
			continue
		}
		said[p.Check] = true
		for _, m := range d.Outcome.Measures {
			if m.CheckID == p.Check {
				problems[i].Message += "; " + m.Right.String()
			}
		}
	}
	for i, m := range d.Outcome.Measures {
		if m.Out() && !said[m.CheckID] {
			p := joinery.Problem{Code: string(m.Code), Field: fieldOf(m), Part: string(m.Part), Check: m.CheckID, Message: d.outText(m)}
			if !advise {
				problems = append(problems, p)
				continue
			}
			if hint, r, found := retry(rows, row, i); found {
				if p.Hint = hint; len(r.Changes) > 0 {
					p.Remedies = []joinery.Remedy{r}
				}
			} else {
				p.Hint = d.helpText(d.Outcome.Help(i), m)
			}
			problems = append(problems, p)
		}
	}
	return problems
}

// fieldOf is the entry of the job that a measure is of.
func fieldOf(m fit.Foreseen) joinery.Field {
	switch m.Code {
	case fit.SlideClearance:
		return joinery.FieldUndermount // where the drawer names its slide
	case joinery.CheckOutsideWidth, joinery.CheckOutsideDepth, fit.OutsideHeight, fit.Diagonal:
		return joinery.FieldOutside
	case joinery.CheckBottomSlack, joinery.CheckBottomSlackDeep:
		return joinery.FieldBottomSlack
	}
	switch m.Part {
	case joinery.Front:
		return joinery.FieldFront
	case joinery.Back:
		return joinery.FieldBack
	case joinery.Bottom:
		return joinery.FieldBottom
	case joinery.DividerRole:
		return joinery.FieldDividers
	}
	return joinery.FieldSides
}

// outText says what a measure is likely, and what it may be.
func (d *Drawer) outText(m fit.Foreseen) string {
	text := func(mm float64) string { return geom.LengthOf(mm).Text(d.Spec.Units) }
	said := fmt.Sprintf("%s: likely %s to %s, right is %s to %s: %s", m.Short(), text(m.Min), text(m.Max), text(m.Least), text(m.Most), m.Verdict)
	if m.Code == fit.SlideClearance && m.Max-m.Min > m.Most-m.Least {
		said += fmt.Sprintf("; the slide takes %s, less than the %s that boxes differ by in this shop", text(m.Most-m.Least), text(m.Max-m.Min))
	}
	return said + "; " + m.Right.String()
}

// causeText says what is off, in the words of the job file's accuracy.
var causeText = map[fit.Cause]string{
	fit.OfCutter: "how well the width of the slot is known", fit.OfCut: "how much one cut differs from the next", fit.OfFence: "how well the fence is set",
	fit.OfHeight: "how well the cutter's height is set", fit.OfLength: "how well parts are cut to length",
}

// oneReading is the stock of a cause of which there is a single reading, so that a standard
// says between what its boards are.
func (d *Drawer) oneReading(c fit.Cause) (stock string, assumed bool) {
	b, s := d.Shop.Boards, d.Spec
	switch c {
	case fit.OfSides:
		return s.Sides.Name, b.Sides.Assumed != "" && s.Sides.Thickness.Min == s.Sides.Thickness.Max
	case fit.OfFront:
		return s.Front.Name, b.Front.Assumed != "" && s.Front.Thickness.Min == s.Front.Thickness.Max
	case fit.OfBack:
		return s.Back.Name, b.Back.Assumed != "" && s.Back.Thickness.Min == s.Back.Thickness.Max
	case fit.OfBottom:
		return s.Bottom.Name, b.Bottom.Assumed != "" && s.Bottom.Thickness.Min == s.Bottom.Thickness.Max
	}
	return "", false
}

// finest is what a shop keeps anything within at the best, in mm; common practice, no source.
func finest(k joinery.CutterKind) float64 {
	if k == joinery.Hand {
		return 0.1
	}
	return 0.03
}

// helpText says what would help most.
func (d *Drawer) helpText(h fit.Help, m fit.Foreseen) string {
	unit := d.Spec.Units
	text := func(mm float64) string { return geom.LengthOf(mm).Text(unit) }
	down := func(mm float64) string { return geom.LengthOf(mm).RoundDown(unit).Text(unit) }
	if h.Cause == "" {
		return "change what the drawer asks for, or its limits"
	}
	var said string
	if h.Need == 0 && h.Halved.Part < m.Right.Part+noticeable {
		said = "no one thing that is off moves it much: change what the drawer asks for, or its limits"
	} else if h.Cause.Board() {
		said = fmt.Sprintf("%s, which differ by %s, move it most: ", h.Cause, text(2*h.Now))
		if stock, assumed := d.oneReading(h.Cause); assumed {
			return fmt.Sprintf("%s has one reading, and a standard lets its boards differ by %s: measure more of them, and write the thinnest and the thickest", stock, text(2*h.Now))
		}
		if h.Need > 0 {
			said += fmt.Sprintf("sort them into lots that differ by no more than %s, and write the readings of each", down(2*h.Need))
		} else {
			said += "sort them into lots that measure alike, and write the readings of each"
		}
	} else {
		what := causeText[h.Cause]
		if d.Spec.Cutter.Kind.FollowsDrawing() {
			what = map[fit.Cause]string{fit.OfFence: "how well the board is placed", fit.OfHeight: "the router's zero"}[h.Cause]
			if what == "" {
				what = causeText[h.Cause]
			}
		}
		said = fmt.Sprintf("%s, +-%s, moves it most: ", what, text(h.Now))
		if least := finest(d.Spec.Cutter.Kind); h.Need < least {
			h.Need = 0
			if h.Now/2 < least {
				return said + "no shop works much finer: change what the drawer asks for, or its limits"
			}
		}
		if h.Need > 0 {
			said += fmt.Sprintf("keep it within %s and write `accuracy: {%s: %s}`", down(h.Need), h.Cause, down(h.Need))
		} else {
			said += "halve it"
		}
	}
	if h.Need == 0 && h.Halved.Part >= m.Right.Part+noticeable {
		said += fmt.Sprintf("; with half of it %s", h.Halved)
	}
	if m.Code == fit.SlideClearance && m.Max-m.Min > m.Most-m.Least {
		said += "; or take a slide that allows more"
	}
	return said
}
