package starter

import (
	"fmt"
	"regexp"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// sheet is a job file that is being written, with the field that each line says.
type sheet struct {
	lines []string
	of    []Field // of each line; none where it is Fields
}

// say adds lines that say nothing of a field.
func (s *sheet) say(lines ...string) {
	for _, l := range lines {
		s.line(Fields, "%s", l)
	}
}

func (s *sheet) line(f Field, format string, args ...any) {
	s.lines = append(s.lines, fmt.Sprintf(format, args...))
	s.of = append(s.of, f)
}

func (s *sheet) text() string { return strings.Join(s.lines, "\n") + "\n" }

// field is what a line says, from 1; the cutter where it says nothing that is asked for.
func (s *sheet) field(line int) Field {
	if line < 1 || line > len(s.of) || s.of[line-1] == Fields {
		return Cutter
	}
	return s.of[line-1]
}

// Title is what a first job calls itself until a person gives it another.
const Title = "First drawers"

// write writes the job of answers that are all given, with changes that make it right.
func (a Answers) write(c changes) *sheet {
	s := &sheet{}
	s.say("# A first job. Numbers without a unit are "+words.Either(a.unit(), "millimeters", "inches")+
		"; 12 mm, 1/2 in or 17 5/8\" work too.",
		"# What else can be said: drawerwright explain. Whether it fits: drawerwright check FILE",
		"job: "+Title)
	s.line(Units, "units: %s", a[Units])
	a.writeStock(s, c)
	a.writeCutter(s, c)
	a.writeOpening(s, c)
	a.writeDrawer(s, c)
	return s
}

func (a Answers) writeStock(s *sheet, c changes) {
	size := ", sheet: " + words.Either(a.unit(), "2440 x 1220", "96 x 48")
	s.say("", "# Caliper readings of the boards: the mean sets the joints, the extremes say how they fit.")
	if c.noSheet {
		size = ""
		s.say("# A usual sheet is too small for these parts; say yours, as in sheet: 3050 x 1525")
	} else {
		s.say("# Sheets as they are usually sold, length x width: change them to yours.")
	}
	s.say("stock:")
	s.line(Sides, "  sides: {thickness: [%s]%s, grain: length}", a.lengths(Sides), size)
	s.line(Bottom, "  bottom: {thickness: [%s]%s, grain: none}", a.lengths(Bottom), size)
}

func (a Answers) writeCutter(s *sheet, c changes) {
	kind, key := joinery.CutterKind(a[Machine]), "width"
	s.say("", "# "+cutterComment(kind))
	if kind.Rounds() {
		key = "diameter"
	}
	switch {
	case c.smallBit:
		s.say("# A second bit cuts what the first is too wide for.")
		s.line(Cutter, "cutter: {kind: %s, bits: {first: {diameter: %s}, second: {diameter: %s}}}", kind, a[Cutter],
			words.Either(a.unit(), "3", "1/8"))
	case c.grooveCutter != "":
		s.say("# The groove is made to fit the bottom, in passes: measure the slot of that cutter as well.")
		s.line(Cutter, "cutter: {kind: %s, %s: %s, groove-cutter: %s}", kind, key, a[Cutter], c.grooveCutter)
	default:
		s.line(Cutter, "cutter: {kind: %s, %s: %s}", kind, key, a[Cutter])
	}
	if c.onionSkin {
		s.say("# Small parts stay on an onion skin of the sheet, which a knife cuts through, and do not fly.")
		s.line(Cutter, "router: {onion-skin: %s}", words.Either(a.unit(), "0.5", "0.02"))
	}
	if kind == joinery.Hand {
		s.say("", "# How closely you saw and pare to a knife line, either way: see what your test pieces give.")
		s.line(Cutter, "accuracy: {cutter: %s, cut: %s, length: %s}", words.Either(a.unit(), "0.06", "0.002"),
			words.Either(a.unit(), "0.08", "0.003"), words.Either(a.unit(), "0.2", "0.008"))
	}
}

func cutterComment(k joinery.CutterKind) string {
	switch k {
	case joinery.Router, joinery.RouterTable:
		return "The bit. Measure a test cut too: one can cut wider than it is."
	case joinery.Hand:
		return "The plow's iron."
	}
	return "The slot that one pass cuts, measured in a test cut."
}

func (a Answers) writeOpening(s *sheet, c changes) {
	if a[Measured] != Opening {
		return
	}
	s.say("", "# The hole in the cabinet, where it is narrowest.",
		"# With a face frame: cabinet: face-frame, and frame-overhang: how far it stands in before the sides.",
		"# With drawer fronts: fronts: overlay or inset here, and drawer-front: {stock: ...} at the drawer.",
		"openings:")
	size, err := job.SplitSize(a[Size], 3)
	if err != nil { // the reader says of the whole text what is wrong
		size = []string{a[Size], a[Size], a[Size]}
	}
	for i, side := range size { // of several readings the smallest counts
		if list := job.SplitReadings(side); len(list) > 1 {
			size[i] = "[" + strings.Join(list, ", ") + "]"
		}
	}
	s.line(Size, "  cabinet: {width: %s, height: %s, depth: %s, cabinet: frameless, fronts: none}",
		size[0], size[1], size[2])
	a.writeSlide(s, c)
}

// writeSlide writes the slide of the shop's own that a job needs, if it does.
func (a Answers) writeSlide(s *sheet, c changes) {
	if a.slideName(c) == a[Slide] {
		return
	}
	of, more := Slide, ""
	s.say("")
	if a[SlideLength] != "" {
		of, more = SlideLength, ", lengths: ["+a[SlideLength]+"]"
		s.say("# The slide of this length; without lengths the longest that fits is taken.")
	}
	if c.ownSlide {
		more += ", clearance-minus: " + words.Either(a.unit(), "1", "0.04")
		s.say("# They are fitted to the box, which may come out a little narrower.")
	}
	s.say("slides:")
	s.line(of, "  %s: {kind: %s%s}", a.slideName(c), a[Slide], more)
}

// notInNames is what of a length no name takes.
var notInNames = regexp.MustCompile(`[^\w.]+`)

// slideName is what the file calls the slide: by its kind and the length that was asked for.
func (a Answers) slideName(c changes) string {
	switch {
	case c.ownSlide:
		return "fitted"
	case a[SlideLength] != "":
		return a[Slide] + "-" + strings.Trim(notInNames.ReplaceAllString(a[SlideLength], "-"), "-")
	}
	return a[Slide]
}

// rows reports whether several drawers share the opening.
func (a Answers) rows() bool { return a[Measured] != Box && a[Rows] != "" && a[Rows] != "1" }

func (a Answers) writeDrawer(s *sheet, c changes) {
	s.say("", "drawers:", "  - name: drawer")
	s.line(Count, "    count: %s", a[Count])
	if a[Measured] == Box {
		s.line(Size, "    outside: %s   # width x height x depth", a[Size])
	} else {
		s.line(Size, "    opening: cabinet")
		if a.rows() {
			s.line(Rows, "    rows: %s   # drawers above each other in the opening", a[Rows])
		}
		s.line(Slide, "    slide: %s", a.slideName(c))
	}
	s.line(Sides, "    sides: sides   # box front and back too, unless they are given")
	s.line(Bottom, "    bottom: bottom")
	if c.joint != dado {
		s.say("    # " + jointReason[c.joint])
		s.line(Cutter, "    joint: %s", c.joint)
	}
	if list := a.joinery(c); len(list) > 0 {
		s.line(Cutter, "    joinery: {%s}", strings.Join(list, ", "))
	}
}

// joinery are the entries of that section.
func (a Answers) joinery(c changes) (list []string) {
	if c.fence != "" {
		list = append(list, "fence-distance: "+c.fence)
	}
	if a[Machine] == string(joinery.Hand) {
		list = append(list, "dado-clearance: "+words.Either(a.unit(), "0.25", "0.01"))
	}
	if c.applied {
		list = append(list, "bottom-fit: applied")
	}
	slide := a.slide()
	high := 0.0 // of the bottom's underside, in mm
	switch {
	case c.overHooks:
		high = slide.HookHeight + slide.HookDiameter/2
	case c.raised:
		high = slide.BottomRecess
	}
	if high > 0 {
		list = append(list, "bottom-height: "+geom.LengthOf(high).RoundUp(a.unit()).Number(a.unit()))
	}
	return list
}
