// Package starter makes the first job file of a shop out of six answers: the unit, what was
// measured, the slide, the thickness of the boards, the machine, how many. [Ask] asks them of a
// person, [Answers.Usual] fills in what is usual, [Make] writes a job that check finds nothing
// to warn of.
package starter

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// Field is what one line of an answer says; several can belong to one question.
type Field int

const (
	Units    Field = iota
	Measured       // the hole in a cabinet, or the box itself
	Size
	Slide
	Sides // readings of their thickness
	Bottom
	Machine
	Cutter
	Count
	// What may be said beyond the questions, of an opening alone.
	SlideLength // empty for the longest that fits
	Rows        // drawers above each other in the opening; empty for one
	Fields      // how many there are
)

// The two things that can be measured.
const (
	Opening = "opening"
	Box     = "box"
)

// Answers are texts as a person wrote them, by field; empty ones are not given.
type Answers [Fields]string

// field is how a field is asked for.
type field struct {
	question int      // from 1
	flag     string   // that gives it on the command line
	text     string   // the question
	picture  string   // what is measured, on one line
	words    []string // the answers that there are; nil for lengths and numbers
}

var fields = [Fields]field{
	Units: {1, "units", "In which unit do you measure?",
		"mm: 12.21. in: decimals, or fractions as on a tape, 17 5/8", []string{"mm", "in"}},
	Measured: {2, "opening or --box", "What did you measure: the opening in the cabinet, or the box itself?",
		"opening: the hole that one drawer runs in. box: its outside, without a drawer front",
		[]string{Opening, Box}},
	Size: {2, "opening or --box", "", "", nil},
	Slide: {3, "slide", "What does the drawer run on?",
		"between cabinet and box: || slide | box | slide ||", slides()},
	Sides: {4, "thickness", "How thick are the boards of the sides? Give two readings or more.",
		"caliper across the board -->|##|<--, at several places, on several boards", nil},
	Bottom: {4, "bottom-thickness", "And those of the bottom?",
		"the same way, on the thinner board that closes the box from below", nil},
	Machine: {5, "machine", "What cuts the joints?",
		"saw: table saw. router-table: bit and fence. router: CNC. hand: saw, chisel, plow", machines()},
	Cutter: {5, "cutter", "", "", nil},
	Count:  {6, "count", "", "each is a box of its own: [ ] [ ] [ ]", nil},
	SlideLength: {3, "slide-length", "How long is the slide?",
		"as its box is deep: |<-- slide -->|", nil},
	Rows: {6, "rows", "How many drawers stand above each other in the opening?",
		"from the top down, equally high: [=] [=] [=]", nil},
}

// number is that of the question that a field belongs to, with a letter where it is one of two.
func (f Field) number() string {
	n := fields[f].question
	switch {
	case f > 0 && fields[f-1].question == n:
		return fmt.Sprintf("%db", n)
	case f+1 < Fields && fields[f+1].question == n:
		return fmt.Sprintf("%da", n)
	}
	return fmt.Sprint(n)
}

func slides() (list []string) {
	for _, k := range opening.Kinds {
		list = append(list, string(k))
	}
	return list
}

func machines() (list []string) {
	for _, k := range joinery.Kinds {
		list = append(list, string(k))
	}
	return list
}

// asked is a field's question and picture, which for some hang on answers before.
func (a Answers) asked(f Field) (text, picture string) {
	text, picture = fields[f].text, fields[f].picture
	switch {
	case f == Size && a[Measured] == Box:
		text, picture = "Its size, width x height x depth?", "over the outsides: |<-- width -->|, height, front to back"
	case f == Size:
		text = "The opening's width x height x depth?"
		picture = "inside, where it is narrowest: ||<-- width -->||, height, front edge to back"
	case f == Count && a[Measured] == Box:
		text = "How many boxes like this?"
	case f == Count:
		text = "How many openings like this, with one such drawer each?"
	case f == Sides:
		picture += ": " + a.Usual(f)
	case f == Cutter:
		text, picture = cutterQuestion(joinery.CutterKind(a[Machine]))
	}
	return text, picture
}

// cutterQuestion asks for what a machine cuts with.
func cutterQuestion(k joinery.CutterKind) (text, picture string) {
	switch k {
	case joinery.Router, joinery.RouterTable:
		return "What diameter has the bit?", "across its cutting edges -->|()|<--"
	case joinery.Hand:
		return "How wide is the plow's iron?", "across its edge -->|__|<--"
	}
	return "How wide is the slot that one pass cuts?", "in a test cut, not on the blade: ###|<-->|###"
}

// unit is that of the answers, which are all given.
func (a Answers) unit() geom.Unit {
	if a[Units] == geom.Inch.String() {
		return geom.Inch
	}
	return geom.Millimeter
}

// slide is what the drawer runs on; none of a box that was measured itself.
func (a Answers) slide() opening.Slide {
	if a[Measured] == Box {
		return opening.Slide{}
	}
	s, _ := opening.BuiltIn(opening.Kind(a[Slide]), a.unit())
	return s
}

// Needed reports whether a field has to be answered: a box that was measured itself has no
// slide.
func (a Answers) Needed(f Field) bool {
	switch f {
	case Slide:
		return a[Measured] != Box
	case SlideLength, Rows: // taken where they are said
		return a[Measured] != Box && a[f] != ""
	}
	return true
}

// Usual is what a field is when nothing is said of it, after the answers before it.
func (a Answers) Usual(f Field) string {
	pick := func(mm, in string) string { return words.Either(a.unit(), mm, in) }
	switch f {
	case Units:
		if a.fractions() {
			return geom.Inch.String()
		}
		return geom.Millimeter.String()
	case Measured:
		return Opening
	case Size:
		if a[Measured] == Box {
			return pick("400 x 120 x 450", "15 3/4 x 4 3/4 x 17 3/4")
		}
		return pick("564 x 150 x 545", "22 3/16 x 6 x 21")
	case Slide:
		return string(opening.SideMount)
	case Sides:
		return pick("12.1, 12.0, 12.2", "0.480, 0.478, 0.483")
	case Bottom:
		return pick("5.8, 5.85", "0.228, 0.230")
	case SlideLength:
		return pick("450", "18")
	case Machine:
		return string(joinery.Saw)
	case Cutter:
		return a.usualCutter(pick)
	}
	return "1"
}

// fractions reports whether an answer has a fraction and no unit: nobody measures in fractions
// of a millimeter.
func (a Answers) fractions() bool {
	return slices.ContainsFunc([]Field{Size, Sides, Bottom, Cutter}, func(f Field) bool {
		return strings.ContainsAny(a[f], "/½¼¾⅛⅜⅝⅞") && !strings.ContainsAny(a[f], "cmfi")
	})
}

func (a Answers) usualCutter(pick func(mm, in string) string) string {
	switch joinery.CutterKind(a[Machine]) {
	case joinery.Router:
		return pick("6", "1/4")
	case joinery.Hand:
		return pick("5", "3/16")
	}
	return pick("6.3", "1/4")
}

// Words are the answers that a field has; none of lengths and numbers.
func (f Field) Words() []string { return fields[f].words }

// Flag is the flag that gives a field.
func (f Field) Flag(a Answers) string {
	if f == Measured || f == Size {
		return "--" + a[Measured]
	}
	return "--" + fields[f].flag
}

// Filled are the answers with the usual ones where none is given.
func (a Answers) Filled() Answers {
	for f := range Fields {
		if a[f] == "" && a.Needed(f) {
			a[f] = a.Usual(f)
		}
	}
	return a
}

// Missing are the flags that would give what is not answered.
func (a Answers) Missing() (flags []string) {
	for f := range Fields {
		flag := "--" + fields[f].flag
		// The unit and how many have an answer that is right for many.
		if a[f] == "" && a.Needed(f) && f != Units && f != Count && !slices.Contains(flags, flag) {
			flags = append(flags, flag)
		}
	}
	return flags
}

// Wrong says what is wrong with the answer of a field, or nothing.
func (a Answers) Wrong(f Field) string {
	choice := fields[f].words
	switch {
	case !a.Needed(f):
		return ""
	case choice != nil && !slices.Contains(choice, a[f]):
		return fmt.Sprintf("%q is none of %s", a[f], strings.Join(choice, ", "))
	case choice != nil:
		return ""
	case !isLengths(a.lengths(f)):
		return "write numbers, as in " + a.Usual(f)
	case f == Size:
		if wrong := a.wrongSize(); wrong != "" {
			return wrong
		}
	case !f.readings() && strings.Contains(a[f], ","):
		return "write the decimal point as a point, as in " + words.Either(a.unit(), "12.21", "0.474")
	case f.readings() && len(job.SplitReadings(a[f])) < 2:
		if wrong := a.oneReading(f); wrong != "" {
			return wrong
		}
	}
	return a.misread(f)
}

// commaInNumber is a comma that may stand for a decimal point or between two readings.
var commaInNumber = regexp.MustCompile(`\d,\d`)

// wrongSize says what is wrong with how a size is written.
func (a Answers) wrongSize() string {
	sides, err := job.SplitSize(a[Size], 3)
	switch {
	case err != nil:
		return err.Error()
	case commaInNumber.MatchString(a[Size]):
		text := "write the decimal point as a point, as in " + words.Either(a.unit(), "412.5", "16.25")
		if a[Measured] != Box {
			text += "; where these are several readings, leave a space behind each comma"
		}
		return text
	case a[Measured] == Box && slices.ContainsFunc(sides, several):
		return "a box is made to one size: write one number for each of width, height and depth"
	}
	return ""
}

// readings reports whether a field holds readings of a thickness.
func (f Field) readings() bool { return f == Sides || f == Bottom }

// lengths are those of a field as a job file has them: readings with commas between them.
func (a Answers) lengths(f Field) string {
	if f.readings() {
		return strings.Join(job.SplitReadings(a[f]), ", ")
	}
	return a[f]
}

// several reports whether a text has more readings than one.
func several(text string) bool { return len(job.SplitReadings(text)) > 1 }

// oneReading says what is wrong with an answer that is read as one reading; nothing of a bottom,
// which a standard judges then.
func (a Answers) oneReading(f Field) string {
	if _, err := geom.ParseLength(a.lengths(f), a.unit()); err != nil {
		return fmt.Sprintf("%q is no thickness: put a comma between readings, as in %s", a[f], a.Usual(f))
	}
	if f == Bottom {
		return ""
	}
	return "one reading does not say how boards differ: give two or more, as in " + a.Usual(f)
}

// isLengths reports whether a text has only the signs of lengths, so that it means in a job
// file what it says.
func isLengths(s string) bool {
	const signs = "0123456789 ./,'\"xX×-½¼¾⅛⅜⅝⅞ cminftoeh"
	return s != "" && strings.ContainsRune("0123456789.½¼¾⅛⅜⅝⅞", []rune(s)[0]) &&
		!strings.ContainsFunc(s, func(r rune) bool { return !strings.ContainsRune(signs, r) })
}

// Full is the word of a field that begins with what was written, where one alone does.
func (f Field) Full(written string) string {
	written = strings.ToLower(strings.TrimSpace(written))
	if f == Units {
		written = job.UnitWord(written)
	}
	var found []string
	for _, w := range fields[f].words {
		if w == written {
			return w
		}
		if written != "" && strings.HasPrefix(w, written) {
			found = append(found, w)
		}
	}
	if len(found) == 1 {
		return found[0]
	}
	return written
}

// misread is what the reader of job files says of a field.
func (a Answers) misread(f Field) string {
	s := a.Filled().write(changes{joint: dado})
	_, problems := job.Read("", strings.NewReader(s.text()))
	for _, p := range problems {
		if p.IsError() && s.field(p.Line) == f {
			return strings.TrimPrefix(strings.TrimRight(p.Message+"; "+p.Hint, "; "), "drawer: ")
		}
	}
	return ""
}
