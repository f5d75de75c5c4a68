package job

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// frameless and faceFrame are the words for cabinets.
const frameless, faceFrame = "frameless", "face-frame"

var openingKeys = []key{
	{name: "width", form: formReadings, required: true, noun: "opening", min: minSize, max: maxSize, doc: "The width, or a list of it from several heights; the smallest counts",
		example: "[564.2, 563.6]"},
	{name: "height", form: formReadings, required: true, noun: "opening", min: minSize, max: maxSize, doc: "The height, or a list of it from several places; the smallest counts",
		example: "[702, 702.4]"},
	{name: "depth", form: formReadings, required: true, noun: "opening", min: minSize, max: maxSize, doc: "The depth from the front edge to the back, or a list of it; the smallest counts",
		example: "545"},
	{name: "diagonals", form: formSize, sides: []string{"one diagonal", "the other"}, min: minSize, max: 2 * maxSize, doc: "The two diagonals of its face", without: "it is taken for square",
		example: "[900.5, 900.1]"},
	{name: "cabinet", form: formWord, required: true, words: []string{frameless, faceFrame}, doc: "face-frame: the slides stand behind a frame; frameless: on the sides of the opening",
		example: "face-frame"},
	{name: "frame-overhang", form: formLength, min: 0, max: maxOverlay, doc: "How far the face frame overhangs each side of the cabinet on the inside; slides are packed out by as much", without: "the sides are level with the frame",
		example: "19", with: "cabinet: face-frame"},
	{name: "cabinet-stock", form: formStock, doc: "The stock of the cabinet's sides: of solid wood, they move across wooden runners, whose screws then go through slots", without: "they are taken not to move",
		example: "birch"},
	{name: "fronts", form: formWord, required: true, words: []string{string(opening.Inset), string(opening.Overlay), string(opening.NoFront)},
		doc:     "inset: drawer fronts stand within the opening; overlay: before it; none: the boxes show",
		example: "overlay"},
	{name: "clearance-behind", form: formLength, min: 0, max: maxSize, fallback: "0 mm", doc: "The room to keep free behind the boxes, as for pipes",
		example: "30", why: "nothing stands behind most drawers"},
	{name: string(opening.SettingWebFrame), form: formLength, min: minThickness, max: maxOverlay,
		doc: "How wide the front and back rails of web frames are, which carry boxes on wooden runners; these are " +
			"their sides",
		without: "each runner is a strip by itself",
		example: "60"},
	{name: string(opening.SettingDustPanel), form: formLength, min: minThickness, max: maxOverlay,
		doc: "The thickness of a panel in the grooves of each web frame", without: "there is none",
		example: "6", with: "web-frame: 60"},
}

// slideLength is a measure of a slide.
type slideLength struct {
	name string
	set  func(*opening.Slide) *float64
	min  float64
	kind opening.Kind // the only one that has it; empty for all
	doc  string
}

// screwLine is the entry that wooden runners have none of: their line is in the middle of their height.
const screwLine = "screw-line"

var slideLengths = []slideLength{
	{"clearance", func(s *opening.Slide) *float64 { return &s.Clearance }, 0, "", "The room at each side between box and opening; an undermount slide has inside-deduction instead"},
	{"clearance-plus", func(s *opening.Slide) *float64 { return &s.ClearancePlus }, 0, "", "How much wider than that the box may come out, in all"},
	{"clearance-minus", func(s *opening.Slide) *float64 { return &s.ClearanceMinus }, 0, "", "How much narrower than that the box may come out, in all"},
	{"clearance-above", func(s *opening.Slide) *float64 { return &s.ClearanceAbove }, 0, "", "What the box keeps free above it in its row"},
	{"clearance-below", func(s *opening.Slide) *float64 { return &s.ClearanceBelow }, 0, "", "What the box keeps free below it in its row"},
	{"inside-deduction", func(s *opening.Slide) *float64 { return &s.InsideDeduction }, 1, opening.Undermount, "How much narrower inside than the opening the box is"},
	{"max-side-thickness", func(s *opening.Slide) *float64 { return &s.MaxSideThickness }, minThickness, opening.Undermount, "The thickest side that goes between slide and opening"},
	{"bottom-recess", func(s *opening.Slide) *float64 { return &s.BottomRecess }, 0, "", "How high the underside of the bottom has to stand over the bottom edges"},
	{"clearance-behind", func(s *opening.Slide) *float64 { return &s.ClearanceBehind }, 0, "", "The room that the slide needs beyond its length"},
	{"notch-width", func(s *opening.Slide) *float64 { return &s.NotchWidth }, 0, opening.Undermount, "The width of the notches in the back's lower corners"},
	{"notch-height", func(s *opening.Slide) *float64 { return &s.NotchHeight }, 0, opening.Undermount, "The height of these notches"},
	{"hook-diameter", func(s *opening.Slide) *float64 { return &s.HookDiameter }, 0, opening.Undermount, "The diameter of the bores for the hooks in the back; 0 for none"},
	{"hook-depth", func(s *opening.Slide) *float64 { return &s.HookDepth }, 0, opening.Undermount, "The depth of these bores"},
	{"hook-height", func(s *opening.Slide) *float64 { return &s.HookHeight }, 0, opening.Undermount, "The height of these bores over the bottom edge"},
	{"hook-inset", func(s *opening.Slide) *float64 { return &s.HookInset }, 0, opening.Undermount, "From the inside faces of the sides to these bores"},
	{screwLine, func(s *opening.Slide) *float64 { return &s.ScrewLine }, -maxSlideLine, "", "How high the line of the slide's screws is over the box's lower edge; less than 0 for below it"},
	{"height", func(s *opening.Slide) *float64 { return &s.Height }, 0, "", "The slide's own height, half of it below that line; a box stands on wooden runners"},
	{"setback", func(s *opening.Slide) *float64 { return &s.Setback }, 0, "", "From the cabinet's front edge to the slide's first hole; 0 for no holes"},
	{"hole-pitch", func(s *opening.Slide) *float64 { return &s.HolePitch }, minPitch, "", "From one of the slide's holes to the next"},
	{"runner-width", func(s *opening.Slide) *float64 { return &s.RunnerWidth }, 0, opening.Wooden, "How wide runners and kickers are"},
	{"wear-strip", func(s *opening.Slide) *float64 { return &s.WearStrip }, 0, opening.Wooden, "The thickness of strips on the runners, of what wears well; it is of the height"},
}

var slideKeys = func() []key {
	const builtIn, likeSideMount = "as the built-in kind", "kind: " + string(opening.SideMount)
	const makersSheet = "usual in the trade, without a source: the slide maker's sheet comes first"
	keys := []key{
		{name: "kind", form: formWord, required: true, words: slideKinds(), doc: slideDoc + ". The other entries say in what this one differs",
			example: string(opening.Undermount)},
		{name: "lengths", form: formLengths, min: minSize, max: maxSize, most: maxSteps, doc: "The lengths in which the slide is made, each as long as its box is deep", without: builtIn,
			example: "[250, 300, 350, 400]", with: likeSideMount, why: makersSheet},
		{name: "load", form: formMeasure, measures: loads, min: minLoad, max: maxLoad, doc: "What the drawer on one pair may weigh with all that lies in it", without: builtIn,
			example: "40 kg", with: likeSideMount, why: makersSheet},
	}
	for _, l := range slideLengths {
		example, with := l.example()
		keys = append(keys, key{name: l.name, form: formLength, min: l.min, max: maxSlideLength, doc: l.doc,
			without: builtIn, example: example, with: with, why: makersSheet})
	}
	return keys
}()

// example is the measure of the first built-in kind that has it, with that kind; where none
// has one, what a shop may write.
func (l slideLength) example() (value, with string) {
	for _, k := range opening.Kinds {
		if s, ok := opening.BuiltIn(k, geom.Millimeter); ok && *l.set(&s) != 0 {
			return mm(*l.set(&s)), "kind: " + string(k)
		}
	}
	if l.kind != "" {
		return "3 mm", "kind: " + string(l.kind)
	}
	return "0.5 mm", "kind: " + string(opening.SideMount)
}

func slideKinds() []string {
	var all []string
	for _, k := range opening.Kinds {
		all = append(all, string(k))
	}
	return all
}

// sharedKeys are those of a file of slides.
var sharedKeys = []key{
	{name: "units", form: formWord, required: true, words: []string{geom.Millimeter.String(), geom.Inch.String()}, doc: "The unit of every bare number in the file"},
	{name: "slides", form: formNamed, required: true, keys: slideKeys, noun: "slide", most: maxSlides, doc: "The slides by name"},
}

// slideDoc tells the built-in kinds of slides apart.
const slideDoc = "side-mount: one at each side of the box; undermount: under the box, hooked into its back; " +
	"center-mount: one under its middle, for light drawers; wooden-runner: strips of wood on which it slides; " +
	"none: the box alone in its hole"

// inOpening are the entries for a drawer in an opening alone.
var inOpening = []string{"slide", "rows", "graduation", "front-gap", "reveal", "overlay", "box-heights", "line-boring"}

// rowKeys are the entries of drawers that say how they share an opening.
var rowKeys = []key{
	{name: "opening", form: formRef, doc: "The opening of a cabinet in which the drawer runs, instead of its outside size", without: "the drawer has an outside size",
		example: "base", with: "slide: side-mount"},
	{name: string(joinery.FieldUndermount), form: formRef, words: slideKinds(), doc: "The slide on which it runs there, one of the file's or a built-in kind. " + slideDoc, without: "an opening needs it",
		example: "side-mount", with: "opening: base"},
	{name: "rows", form: formCells, words: []string{freeRow}, min: minSize, max: maxSize, most: maxRows,
		doc: "How many drawers share the opening; or the heights of their drawer fronts from the top, of which those that are free share the rest", without: "one",
		example: "[140, free, free, free]", with: "opening: base\nslide: side-mount"},
	{name: "graduation", form: formSection, words: []string{string(opening.Equal)}, keys: graduationKeys,
		doc: "How free rows grow from the top down: equal, or by one of two ways", without: "they are equal",
		example: "equal", with: "opening: base\nslide: side-mount\nrows: 3"},
	{name: "front-gap", form: formLength, min: 0, max: maxGap,
		fallback: mm(opening.UsualFrontGap(geom.Millimeter)), inInch: inch(opening.UsualFrontGap(geom.Inch)),
		doc:     "Between one drawer front and the next",
		example: "3", with: "opening: base\nslide: side-mount", why: "room for a drawer front to move; common practice, no source"},
	{name: "reveal", form: formEdges, sides: edges, min: 0, max: maxGap,
		fallback: mm(opening.UsualReveal(geom.Millimeter)), inInch: inch(opening.UsualReveal(geom.Inch)),
		doc:     "The gap between inset drawer fronts and the opening",
		example: "2", with: "opening: base\nslide: side-mount", why: "room for an inset drawer front to swell; common practice, no source"},
	{name: "overlay", form: formEdges, sides: edges, min: 0, max: maxOverlay,
		fallback: mm(opening.UsualOverlay(geom.Millimeter)), inInch: inch(opening.UsualOverlay(geom.Inch)),
		doc:     "How far overlay drawer fronts cover the cabinet beside the opening",
		example: "[16, 16, 10, 3]", with: "opening: base\nslide: side-mount", why: "covers most of an edge of 18 mm; common practice, no source"},
	{name: "box-heights", form: formLengths, min: minSize, max: maxSize, most: maxSteps, doc: "The heights of boxes that the shop makes; each drawer gets the highest that fits", without: "a box is as high as fits",
		example: "[90, 120, 150, 180]", with: "opening: base\nslide: side-mount\nrows: 4"},
	{name: "line-boring", form: formLength, min: 1, max: maxGap, doc: "The pitch of the holes in the cabinet's sides on which the slides have to come", without: "they stand anywhere",
		example: "32 mm", with: "opening: base\nslide: side-mount\nrows: 2"},
}

// freeRow is the word for a row without a height of its own.
const freeRow = "free"

var edges = []string{"left", "right", "top", "bottom"}

var graduationKeys = []key{
	{name: string(opening.Arithmetic), form: formLength, min: 0, max: maxSize, doc: "Each is this much higher than the one above it", without: "they do not grow by a length",
		example: "20"},
	{name: string(opening.Geometric), form: formMeasure, measures: ratios, min: 1, max: maxRatio, doc: "Each is this many times as high as the one above it", without: "they do not grow by a ratio",
		example: "1.25"},
}
