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
func (d *Drawer) once(what string, r geom.Remedy, lengths []float64, try func() trial) trial {
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
func told(rows []Drawer, row int, problems []geom.Diagnosis, advise bool) []geom.Diagnosis {
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
		check := p.Subject.Check
		if check == nil {
			continue
		}
		for _, m := range d.Outcome.Measures {
			if m.CheckID == check {
				said[m.CheckID] = true
				problems[i].Fact = geom.Sentencef("%s; %s", p.Fact, m.Right)
			}
		}
	}
	for i, m := range d.Outcome.Measures {
		if m.Out() && !said[m.CheckID] {
			p := outOfLimits(m)
			if !advise {
				problems = append(problems, p)
				continue
			}
			switch r, ends, found := retry(rows, row, i); {
			case found && ends:
				p.Remedies = []geom.Remedy{r}
			case found:
				p.Eases = []geom.Remedy{r}
			default:
				p.Ask = d.help(d.Outcome.Help(i), m)
			}
			problems = append(problems, p)
		}
	}
	return problems
}

// fieldOf is the entry of the job that a measure is of.
func fieldOf(m fit.Foreseen) geom.Setting {
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

// outOfLimits says what a measure is likely, and what it may be.
func outOfLimits(m fit.Foreseen) geom.Diagnosis {
	mm := func(v float64) geom.Millimetres { return geom.Millimetres(v) }
	fact := geom.Sentencef("%s: likely %s to %s, right is %s to %s: %s", m.Short(), mm(m.Min), mm(m.Max), mm(m.Least), mm(m.Most), m.Verdict)
	if m.Code == fit.SlideClearance && m.Max-m.Min > m.Most-m.Least {
		fact = geom.Sentencef("%s; the slide takes %s, less than the %s that boxes differ by in this shop", fact, mm(m.Most-m.Least), mm(m.Max-m.Min))
	}
	return m.Misfit(geom.Diagnosis{
		Code: geom.Code(m.Code), Level: geom.LevelWarning, Subject: geom.Subject{Part: string(m.Part), Setting: fieldOf(m)},
		Fact: geom.Sentencef("%s; %s", fact, m.Right),
	})
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

// help says what would help most.
func (d *Drawer) help(h fit.Help, m fit.Foreseen) geom.Sentence {
	if h.Cause == "" {
		return geom.Sentencef("change what the drawer asks for, or its limits")
	}
	var said geom.Sentence
	switch least := finest(d.Spec.Cutter.Kind); {
	case h.Need == 0 && h.Halved.Part < m.Right.Part+noticeable:
		said = geom.Sentencef("no one thing that is off moves it much: change what the drawer asks for, or its limits")
	case h.Cause.Board():
		if stock, assumed := d.oneReading(h.Cause); assumed {
			return geom.Sentencef("%s has one reading, and a standard lets its boards differ by %s: measure more of them, and write the thinnest and the thickest",
				stock, geom.Millimetres(2*h.Now))
		}
		said = sortBoards(h)
	case h.Need < least && h.Now/2 < least:
		return geom.Sentencef("%s: no shop works much finer: change what the drawer asks for, or its limits", d.offMost(h))
	case h.Need < least:
		h.Need = 0
		said = geom.Sentencef("%s: halve it", d.offMost(h))
	default:
		said = geom.Sentencef("%s: keep it within %s and write `accuracy: {%s: %s}`", d.offMost(h), geom.AtMost(h.Need), h.Cause, geom.AtMost(h.Need))
	}
	if h.Need == 0 && h.Halved.Part >= m.Right.Part+noticeable {
		said = geom.Sentencef("%s; with half of it %s", said, h.Halved)
	}
	if m.Code == fit.SlideClearance && m.Max-m.Min > m.Most-m.Least {
		said = geom.Sentencef("%s; or take a slide that allows more", said)
	}
	return said
}

// sortBoards is what helps where boards differ most.
func sortBoards(h fit.Help) geom.Sentence {
	lots := geom.Sentencef("measure alike")
	if h.Need > 0 {
		lots = geom.Sentencef("differ by no more than %s", geom.AtMost(2*h.Need))
	}
	return geom.Sentencef("%s, which differ by %s, move it most: sort them into lots that %s, and write the readings of each",
		h.Cause, geom.Millimetres(2*h.Now), lots)
}

// offMost is what moves a measure most, and by how much it is off.
func (d *Drawer) offMost(h fit.Help) geom.Sentence {
	what := causeText[h.Cause]
	if d.Spec.Cutter.Kind.FollowsDrawing() {
		switch h.Cause {
		case fit.OfFence:
			what = "how well the board is placed"
		case fit.OfHeight:
			what = "the router's zero"
		}
	}
	return geom.Sentencef("%s, +-%s, moves it most", what, geom.Millimetres(h.Now))
}
