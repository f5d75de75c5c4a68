package starter

import (
	"context"
	"io"
	"io/fs"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// The joints that a first job can have, the one that holds best first.
const (
	dado   = "dado-rabbet"
	rabbet = "rabbet"
	butt   = "butt"
)

var jointReason = map[string]string{
	rabbet: "With this cutter and these boards a dado-rabbet corner does not fit; rabbets do.",
	butt:   "With this cutter and these boards neither dados nor rabbets fit: screws hold the corners.",
}

// changes are what a job says beyond the answers so that nothing is to be warned of. Each is
// made once at most, so that [Make] ends.
type changes struct {
	joint        string
	fence        string // fence distance
	grooveCutter string
	smallBit     bool // a second bit of a router
	applied      bool // the bottom is, from below
	raised       bool // the bottom is, as high as the slide wants it
	overHooks    bool // the bottom is, above the bores for the slide's hooks
	onionSkin    bool // holds small parts to their sheet
	ownSlide     bool
	noSheet      bool
}

// Problem is what is wrong with answers beside each other, and the field that could end it.
type Problem struct {
	Field         Field
	Message, Hint string
}

// String is the problem with what would end it, in lines.
func (p *Problem) String() string {
	if p.Hint == "" {
		return p.Message
	}
	return p.Message + "\n  hint: " + p.Hint
}

// Make writes the job of answers that are all given and right by themselves. Where they do
// not go together it says why; the text is empty then when nothing can be built of it. Of a bottom with
// one reading, check may have something to say: what its boards are is not known yet.
func Make(a Answers) (text string, wrong *Problem) {
	if list := job.SplitReadings(a[Bottom]); len(list) == 1 {
		return a.makeOfOne(list[0])
	}
	c := changes{joint: dado}
	for {
		s := a.write(c)
		l := load.Read("", strings.NewReader(s.text()), noFiles)
		l.Lay(context.Background(), nil, sheets.Search{})
		first := l.Problems.First(geom.LevelWarning)
		switch {
		case first == nil:
			return s.text(), nil
		case !c.mendAny(a, l):
			if !l.Failed() {
				text = s.text()
			}
			return text, a.problem(s, first)
		}
	}
}

// makeOfOne writes the job of a bottom with one reading: as for boards of that thickness. The job says
// that a standard judges them until more are written.
func (a Answers) makeOfOne(reading string) (text string, wrong *Problem) {
	const of = "  bottom: {thickness: ["
	a[Bottom] = reading + ", " + reading
	text, wrong = Make(a)
	said := "  # Read once: a standard says how its boards differ, until you write three readings or more.\n"
	return strings.Replace(text, of+a[Bottom]+"]", said+of[:len(of)-1]+reading, 1), wrong
}

// problem is what is wrong, in the words of the answers.
func (a Answers) problem(s *sheet, p *job.Problem) *Problem {
	wrong := &Problem{s.field(p.Line), strings.TrimPrefix(p.Message, "drawer: "), p.Hint}
	switch {
	case p.Code == "proportions" && a[Measured] == Opening && !a.rows():
		wrong.Field, wrong.Hint = Rows, "say how many drawers stand above each other in the opening"
	case p.Code == "depth" && a[SlideLength] != "":
		wrong.Field = SlideLength
	}
	return wrong
}

// noFiles opens nothing: a first job names no other file.
func noFiles(string) (io.ReadCloser, error) { return nil, fs.ErrNotExist }

// mendAny makes the next change that can end one of the problems, if there is one.
func (c *changes) mendAny(a Answers, l load.Loaded) bool {
	var d joinery.Spec // none where it could not be read
	if len(l.Job.Drawers) > 0 {
		d = l.Job.Drawers[0].Spec
	}
	for _, p := range l.Problems {
		if p.Level >= geom.LevelWarning && c.mend(p.Code, a, d) {
			return true
		}
	}
	return false
}

// mend makes the next change that can end a problem, if there is one.
func (c *changes) mend(code job.Code, a Answers, d joinery.Spec) bool {
	switch code {
	case "cutter-narrow", "cutter-wide", "tongue-clearance", "recess", "recess-inner", "outside-depth", "cutter-height",
		"fence-distance":
		return c.otherCorner(a, d)
	case "bottom", "groove-clearance", "bottom-clearance", "setup-limit":
		return c.otherBottom(a, d)
	case "recess-under":
		return flip(&c.raised)
	case "hook":
		return flip(&c.overHooks)
	case "small-part":
		return flip(&c.onionSkin)
	case "slide-clearance":
		fitted := a[Slide] == string(opening.Wooden) || a[Slide] == string(opening.NoSlide)
		return fitted && flip(&c.ownSlide)
	case "sheet", "sheets":
		return flip(&c.noSheet)
	}
	return false
}

// flip makes a change that is not made yet.
func flip(change *bool) bool {
	if *change {
		return false
	}
	*change = true
	return true
}

// inClearance is by how much a fence distance keeps the clearance of a tongue within its limits, in mm:
// what settings and cuts at a machine with a fence are usually off together.
const inClearance = 0.1

// otherCorner makes the slot fit by the fence where that is enough, else takes another joint.
func (c *changes) otherCorner(a Answers, d joinery.Spec) bool {
	switch {
	case c.joint == dado && d.Cutter.Kind.Fenced() && c.fence == "":
		clearance := joinery.UsualLimits(a.unit()).TongueClearance.Grow(-inClearance)
		fits := geom.Interval{Min: d.Cutter.Width - clearance.Max, Max: d.Cutter.Width - clearance.Min}
		c.fence = geom.LengthOf(fits.Clamp(d.Front.Thickness.Mean / 2)).Fixed(a.unit())
	case d.Cutter.Kind == joinery.Router && flip(&c.smallBit):
	case c.joint == dado:
		c.joint, c.fence = rabbet, ""
	case c.joint == rabbet:
		c.joint = butt
	default:
		return false
	}
	return true
}

// otherBottom makes the groove as wide as the bottom, where a machine with a fence cuts it,
// or cuts it with a second bit, else puts the bottom under the box.
func (c *changes) otherBottom(a Answers, d joinery.Spec) bool {
	switch {
	case c.applied:
		return false
	case d.Cutter.Kind.Fenced() && c.grooveCutter == "":
		c.grooveCutter = a[Cutter]
		if d.Cutter.Width > d.Bottom.Thickness.Min { // a usual blade is narrower
			c.grooveCutter = words.Either(a.unit(), "3.2", "1/8")
		}
		return true
	case d.Cutter.Kind == joinery.Router && flip(&c.smallBit):
		return true
	}
	if a.slide().BottomRecess > 0 { // it runs there
		return false
	}
	c.grooveCutter, c.applied = "", true
	return true
}
