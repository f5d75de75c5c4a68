package batch

import (
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/advice"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// teller says what one of the drawers of an entry comes out as.
type teller struct {
	rows   []Drawer
	row    int
	advise bool
	sheets job.Sheets
}

// told adds what the outcome says to the problems of the layout. What leaves its limits is a warning: of the layout,
// where another setting would mend it, else of the outcome.
func (t teller) told(problems []geom.Diagnosis) []geom.Diagnosis {
	rows, row, advise := t.rows, t.row, t.advise
	d := &rows[row]
	said := make(map[joinery.CheckID]bool)
	if advise {
		d.KeepOdds(problems)
	}
	for i, p := range problems {
		for _, id := range concerned(p) {
			said[id] = true
		}
		for at, m := range d.Outcome.Measures {
			if p.Subject.Check == m.CheckID {
				problems[i].Fact = geom.Sentencef("%s; %s", p.Fact, m.Right)
				if advise && !p.IsError() {
					d.measureFirst(&problems[i], at)
				}
			}
		}
	}
	for _, m := range d.Outcome.Measures { // of the width that box and slide limit alike, the slide's is said
		if m.OutOfLimits() && m.Code == fit.SlideClearance && !d.Shop.Slide.InsideCounts {
			said[joinery.CheckID{Code: joinery.CheckOutsideWidth}] = true
		}
	}
	var boxes []advice.Box
	for i, m := range d.Outcome.Measures {
		if m.OutOfLimits() && !said[m.CheckID] {
			p := outOfLimits(m)
			if !advise {
				problems = append(problems, p)
				continue
			}
			if boxes == nil {
				boxes = boxesOf(rows)
			}
			d.measureFirst(&p, i)
			switch r, ends, found := advice.Retry(boxes, row, i); {
			case found && ends:
				p.Remedies = []geom.Remedy{r}
			case found:
				p.Eases = []geom.Remedy{r}
			case p.Reread != "": // what else helps is known once that is measured
			default:
				p.Ask, p.Asked = t.help(d, d.Outcome.MostUseful(i), m)
			}
			problems = append(problems, p)
		}
	}
	return problems
}

// measureFirst has a stock measured again before anything is changed for a measure, where a standard
// says what its boards are and readings may say better.
func (d *Drawer) measureFirst(p *geom.Diagnosis, index int) {
	again, helps := d.MeasureAgain(index)
	if !helps {
		return
	}
	p.Reread = again.Stock
	p.First = geom.Sentencef("measure %s %d more times and write all %d readings: with one, a standard lets its "+
		"boards differ by %s; with %[3]d alike, %[5]s", again.Stock, advice.Readings-1, advice.Readings,
		geom.Millimeters(again.Differ), again.Right)
}

// concerned are the measures that a problem is about.
func concerned(p geom.Diagnosis) []joinery.CheckID {
	if id, one := p.Subject.Check.(joinery.CheckID); one {
		return []joinery.CheckID{id}
	}
	if p.Code == "bottom-clearance" { // it is the same one way and the other
		return []joinery.CheckID{{Code: joinery.CheckBottomClearance, Part: joinery.Bottom},
			{Code: joinery.CheckBottomClearanceDepth, Part: joinery.Bottom}}
	}
	return nil
}

// boxesOf are drawers as advice is found for them.
func boxesOf(rows []Drawer) []advice.Box {
	boxes := make([]advice.Box, len(rows))
	for i, d := range rows {
		boxes[i] = *d.Box
	}
	return boxes
}

// seen is by how much two lengths differ that are printed unlike in any unit, in mm.
const seen = geom.InchMM / 1000

// outOfLimits says what a measure is likely, and what it may be.
func outOfLimits(m fit.SimulatedMeasure) geom.Diagnosis {
	mm := func(v float64) geom.Caliper { return geom.Caliper(v) }
	judged := func(v float64) geom.Judged { return geom.Judged{MM: v, Right: m.Limits(), Fixed: true} }
	fact := geom.Sentencef("%s: likely %s to %s, right is %s: %s", m.Short(), judged(m.Min), judged(m.Max),
		geom.RightIs{Interval: m.Limits(), Fixed: true}, m.Words())
	takes, differ := m.UpperLimit-m.LowerLimit, m.Max-m.Min
	switch {
	case m.Code != fit.SlideClearance || differ <= takes:
	case differ <= takes+seen:
		fact = geom.Sentencef("%s; the slide takes %s, a little less than boxes differ by in this shop", fact, mm(takes))
	default:
		fact = geom.Sentencef("%s; the slide takes %s, less than the %s that boxes differ by in this shop", fact,
			mm(takes), mm(differ))
	}
	return m.Misfit(geom.Diagnosis{
		Code: geom.Code(m.Code), Level: geom.LevelWarning, Subject: geom.Subject{Part: string(m.Part), Setting: advice.SettingFor(m)},
		Fact: geom.Sentencef("%s; %s", fact, m.Right),
	})
}

// causeText says what is off, in the words of the job file's accuracy.
var causeText = map[fit.Cause]string{
	fit.OfCutter: "how well the width of the slot is known", fit.OfCut: "how much one cut differs from the next", fit.OfFence: "how well the fence is set",
	fit.OfHeight: "how well the cutter's height is set", fit.OfLength: "how well parts are cut to length",
}

// fieldAccuracy is the entry of how well the shop's machine cuts, with a key for each cause.
const fieldAccuracy geom.Setting = "accuracy"

// KeyLots is the key of a change of boards: how much those of a lot may differ by, in mm.
const KeyLots = "lots"

// help says what would help most, and the change that it asks for, if it is one.
func (t teller) help(d *Drawer, h fit.Improvement, m fit.SimulatedMeasure) (said geom.Sentence, asked geom.Change) {
	if h.Cause == "" {
		return geom.Sentencef("change the drawer's entries, or its limits"), asked
	}
	switch least := advice.Finest(d.Spec.Cutter.Kind); {
	case h.Need == 0 && h.Halved.Fraction < m.Right.Fraction+advice.Noticeable:
		said = geom.Sentencef("no one thing that is off moves it much: change the drawer's entries, or its limits")
	case h.Cause.Board():
		if said = t.sortBoards(d, h); h.Need > 0 {
			asked = geom.Change{Setting: boardsOf[h.Cause], Key: KeyLots, Max: 2 * h.Need}
		}
	case h.Need < least && h.Current/2 < least:
		return geom.Sentencef("%s: no shop works much finer: change the drawer's entries, or its limits",
			d.offMost(h)), asked
	case h.Need < least:
		h.Need = 0
		said = geom.Sentencef("%s: halve it", d.offMost(h))
	case d.Shop.Accuracy.Learned(h.Cause): // which no entry changes
		said = geom.Sentencef("%s, as the log shows it: keep it within %s", d.offMost(h), geom.AtMost(h.Need))
	default:
		asked = geom.Change{Setting: fieldAccuracy, Key: string(h.Cause), Max: h.Need}
		said = geom.Sentencef("%s: keep it within %s and write `accuracy: {%s: %s}`", d.offMost(h), geom.AtMost(h.Need), h.Cause, geom.AtMost(h.Need))
	}
	if h.Need == 0 && h.Halved.Fraction >= m.Right.Fraction+advice.Noticeable {
		said = geom.Sentencef("%s; with half of it %s", said, h.Halved)
	}
	if m.Code == fit.SlideClearance && m.Max-m.Min > m.UpperLimit-m.LowerLimit+seen {
		said = geom.Sentencef("%s; or take a slide that allows more", said)
	}
	return said, asked
}

// boardsOf are the entries of the boards that are the cause of what is off.
var boardsOf = map[fit.Cause]geom.Setting{
	fit.OfSides: joinery.SettingSides, fit.OfFront: joinery.SettingBoxFront, fit.OfBack: joinery.SettingBack,
	fit.OfBottom: joinery.SettingBottom, fit.OfDividers: joinery.FieldDividers,
}

// stockOf is the stock of the boards that are the cause of what is off.
func (d *Drawer) stockOf(c fit.Cause) string {
	return map[fit.Cause]joinery.Stock{fit.OfSides: d.Spec.Sides, fit.OfFront: d.Spec.Front, fit.OfBack: d.Spec.Back,
		fit.OfBottom: d.Spec.Bottom}[c].Name
}

// sortBoards is what helps where boards differ most: lots, or where the sheets are in lots already, others.
func (t teller) sortBoards(d *Drawer, h fit.Improvement) geom.Sentence {
	if len(t.sheets.Of[d.stockOf(h.Cause)].Measured) > 0 {
		alike := geom.Sentencef("alike")
		if h.Need > 0 {
			alike = geom.Sentencef("within %s", geom.AtMost(2*h.Need))
		}
		return geom.Sentencef("%s, which differ by %s, move it most, and are in lots already: take other sheets, which "+
			"measure %s, or more, so that each lot has some that do", h.Cause, geom.Millimeters(2*h.Current), alike)
	}
	lots := geom.Sentencef("measure alike")
	if h.Need > 0 {
		lots = geom.Sentencef("differ by no more than %s", geom.AtMost(2*h.Need))
	}
	return geom.Sentencef("%s, which differ by %s, move it most: sort them into lots that %s, and write the readings of "+
		"each, or all of them with `readings-per-sheet`",
		h.Cause, geom.Millimeters(2*h.Current), lots)
}

// offMost is what moves a measure most, and by how much it is off.
func (d *Drawer) offMost(h fit.Improvement) geom.Sentence {
	what := causeText[h.Cause]
	if d.Spec.Cutter.Kind.FollowsDrawing() {
		switch h.Cause {
		case fit.OfFence:
			what = "how well the board is placed"
		case fit.OfHeight:
			what = "the router's zero"
		}
	}
	return geom.Sentencef("%s, +-%s, moves it most", what, geom.Millimeters(h.Current))
}
