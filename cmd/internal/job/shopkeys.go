package job

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// frameless and faceFrame are the words for cabinets.
const frameless, faceFrame = "frameless", "face-frame"

var openingKeys = []key{
	{name: "width", form: formReadings, required: true, noun: "opening", min: minSize, max: maxSize, doc: "The width, or a list of it from several heights; the smallest counts"},
	{name: "height", form: formReadings, required: true, noun: "opening", min: minSize, max: maxSize, doc: "The height, or a list of it from several places; the smallest counts"},
	{name: "depth", form: formReadings, required: true, noun: "opening", min: minSize, max: maxSize, doc: "The depth from the front edge to the back, or a list of it; the smallest counts"},
	{name: "diagonals", form: formSize, sides: []string{"one diagonal", "the other"}, min: minSize, max: 2 * maxSize, doc: "The two diagonals of its face", without: "it is taken for square"},
	{name: "cabinet", form: formWord, required: true, words: []string{frameless, faceFrame}, doc: "face-frame: the slides stand behind a frame; frameless: on the sides of the opening"},
	{name: "frame-over", form: formLength, min: 0, max: maxOverlay, doc: "How far the frame stands in before each side of the cabinet: so much the slides are packed out there", without: "the sides are level with the frame"},
	{name: "fronts", form: formWord, required: true, words: []string{string(opening.Inset), string(opening.Overlay), string(opening.NoFront)},
		doc: "inset: drawer fronts stand within the opening; overlay: before it; none: the boxes show"},
	{name: "behind", form: formLength, min: 0, max: maxSize, fallback: "0 mm", doc: "The room to keep free behind the boxes, as for pipes"},
}

// slideLength is a measure of a slide.
type slideLength struct {
	name string
	set  func(*opening.Slide) *float64
	min  float64
	kind opening.Kind // the only one that has it; empty for all
	doc  string
}

var slideLengths = []slideLength{
	{"clearance", func(s *opening.Slide) *float64 { return &s.Clearance }, 0, "", "The room at each side between box and opening; an undermount slide has inside-less instead"},
	{"plus", func(s *opening.Slide) *float64 { return &s.Plus }, 0, "", "How much wider than that the box may come out, in all"},
	{"minus", func(s *opening.Slide) *float64 { return &s.Minus }, 0, "", "How much narrower than that the box may come out, in all"},
	{"above", func(s *opening.Slide) *float64 { return &s.Above }, 0, "", "What the box keeps free above it in its row"},
	{"below", func(s *opening.Slide) *float64 { return &s.Below }, 0, "", "What the box keeps free below it in its row"},
	{"inside-less", func(s *opening.Slide) *float64 { return &s.InsideLess }, 1, opening.Undermount, "How much narrower inside than the opening the box is"},
	{"most-side", func(s *opening.Slide) *float64 { return &s.MaxSide }, minThickness, opening.Undermount, "The thickest side that goes between slide and opening"},
	{"recess", func(s *opening.Slide) *float64 { return &s.Recess }, 0, "", "How high the underside of the bottom has to stand over the bottom edges"},
	{"behind", func(s *opening.Slide) *float64 { return &s.Behind }, 0, "", "The room that the slide needs beyond its length"},
	{"notch-width", func(s *opening.Slide) *float64 { return &s.NotchWidth }, 0, opening.Undermount, "The width of the notches in the back's lower corners"},
	{"notch-height", func(s *opening.Slide) *float64 { return &s.NotchHeight }, 0, opening.Undermount, "The height of these notches"},
	{"hook-diameter", func(s *opening.Slide) *float64 { return &s.HookDiameter }, 0, opening.Undermount, "The diameter of the bores for the hooks in the back; 0 for none"},
	{"hook-depth", func(s *opening.Slide) *float64 { return &s.HookDepth }, 0, opening.Undermount, "The depth of these bores"},
	{"hook-height", func(s *opening.Slide) *float64 { return &s.HookHeight }, 0, opening.Undermount, "The height of these bores over the bottom edge"},
	{"hook-in", func(s *opening.Slide) *float64 { return &s.HookIn }, 0, opening.Undermount, "From the inside faces of the sides to these bores"},
	{"line", func(s *opening.Slide) *float64 { return &s.Line }, -maxSlideLine, "", "How high the line of the slide's screws is over the box's lower edge; less than 0 for below it"},
	{"height", func(s *opening.Slide) *float64 { return &s.Height }, 0, "", "The slide's own height, half of it below that line"},
	{"setback", func(s *opening.Slide) *float64 { return &s.Setback }, 0, "", "From the cabinet's front edge to the slide's first hole; 0 for no holes"},
	{"pitch", func(s *opening.Slide) *float64 { return &s.Pitch }, minPitch, "", "From one of the slide's holes to the next"},
}

var slideKeys = func() []key {
	const builtIn = "as the built-in kind"
	keys := []key{
		{name: "kind", form: formWord, required: true, words: slideKinds(), doc: "The built-in kind that it is like; the entries say what differs"},
		{name: "lengths", form: formLengths, min: minSize, max: maxSize, most: maxSteps, doc: "The lengths in which the slide is made, each as long as its box is deep", without: builtIn},
		{name: "load", form: formMeasure, measures: loads, min: minLoad, max: maxLoad, doc: "What the drawer on one pair may weigh with all that lies in it", without: builtIn},
	}
	for _, l := range slideLengths {
		keys = append(keys, key{name: l.name, form: formLength, min: l.min, max: maxSlideLength, doc: l.doc, without: builtIn})
	}
	return keys
}()

func slideKinds() []string {
	var all []string
	for _, k := range opening.Kinds {
		all = append(all, string(k))
	}
	return all
}

// sharedKeys are those of a file of slides.
var sharedKeys = []key{
	{name: "units", form: formWord, required: true, words: []string{geom.Millimetre.String(), geom.Inch.String()}, doc: "The unit of every bare number in the file"},
	{name: "slides", form: formNamed, required: true, keys: slideKeys, noun: "slide", most: maxSlides, doc: "The slides by name"},
}

// inOpening are the entries for a drawer in an opening alone.
var inOpening = []string{"slide", "rows", "graduation", "gap", "reveal", "overlay", "box-heights", "line-boring"}

// rowKeys are the entries of drawers that say how they share an opening.
var rowKeys = []key{
	{name: "opening", form: formRef, doc: "The opening of a cabinet in which the drawer runs, instead of its outside size", without: "the drawer has an outside size"},
	{name: string(joinery.FieldUndermount), form: formRef, words: slideKinds(), doc: "The slide on which it runs there: a built-in kind, or a slide of the shop", without: "an opening needs it"},
	{name: "rows", form: formCells, words: []string{freeRow}, min: minSize, max: maxSize, most: maxRows,
		doc: "How many drawers share the opening; or the heights of their fronts from the top, of which those that are free share the rest", without: "one"},
	{name: "graduation", form: formSection, words: []string{string(opening.Equal)}, keys: graduationKeys,
		doc: "How free rows grow from the top down: equal, or by one of two ways", without: "they are equal"},
	{name: "gap", form: formLength, min: 0, max: maxGap, fallback: mm(opening.DefaultGap), doc: "Between one front and the next"},
	{name: "reveal", form: formEdges, sides: edges, min: 0, max: maxGap, fallback: mm(opening.DefaultReveal), doc: "The gap between inset fronts and the opening"},
	{name: "overlay", form: formEdges, sides: edges, min: 0, max: maxOverlay, fallback: mm(opening.DefaultOverlay), doc: "How far overlay fronts cover the cabinet beside the opening"},
	{name: "box-heights", form: formLengths, min: minSize, max: maxSize, most: maxSteps, doc: "The heights of boxes that the shop makes; each drawer gets the highest that fits", without: "a box is as high as fits"},
	{name: "line-boring", form: formLength, min: 1, max: maxGap, doc: "The pitch of the holes in the cabinet's sides on which the slides have to come", without: "they stand anywhere"},
}

// freeRow is the word for a row without a height of its own.
const freeRow = "free"

var edges = []string{"left", "right", "top", "bottom"}

var graduationKeys = []key{
	{name: string(opening.Arithmetic), form: formLength, min: 0, max: maxSize, doc: "Each is this much higher than the one above it", without: "they do not grow by a length"},
	{name: string(opening.Geometric), form: formMeasure, measures: ratios, min: 1, max: maxRatio, doc: "Each is this many times as high as the one above it", without: "they do not grow by a ratio"},
}
