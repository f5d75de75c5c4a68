package job

import (
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

var drawerKeys = append([]key{
	{name: string(joinery.SettingName), form: formName, required: true, doc: "The name of the drawer, and of its files; with rows, they are numbered from the top",
		example: "bench"},
	{name: "count", form: formCount, min: 1, max: maxCount, fallback: "1",
		doc: "How many of this drawer to make; with an opening, for as many openings like it: " +
			"drawers in one opening are `rows`",
		example: "2", why: "one box is the least"},
	{name: "spares", form: formCount, min: 0, max: maxSpares, fallback: "0", doc: "How many more of each part to make",
		example: "1", why: "spare parts are board that may never be used"},
	{name: string(joinery.SettingOutside), form: formSize, sides: []string{"width", "height", "depth"}, min: minSize, max: maxSize,
		doc: "The outside size of the box", without: "it follows from opening and slide",
		example: "460 x 140 x 500"},
	{name: string(joinery.SettingSides), form: formStock, required: true, doc: "The stock of the sides",
		example: "birch"},
	{name: string(joinery.SettingBoxFront), form: formStock, doc: "The stock of the box front", without: "as the sides",
		example: "birch"},
	{name: string(joinery.SettingBack), form: formStock, doc: "The stock of the back",
		without: "as the front; of a rabbeted-front as the sides",
		example: "birch"},
	{name: string(joinery.SettingBottom), form: formStock, required: true, doc: "The stock of the bottom",
		example: "hardboard"},
	{name: string(joinery.SettingJoint), form: formWord, fallback: string(joinery.DadoRabbet),
		words: texts(joinery.Joints),
		doc: "dado-rabbet: box front and back end in tongues that stand in dados of the sides; double-rabbet: rabbets on the inside faces of all four, none to be turned over; " +
			"rabbet: box front and back in rabbets of the sides; butt: box front and back between the sides, with fasteners; box-joint: fingers on all four; " +
			"rabbeted-front: a box front, often thicker, that is the drawer's front too " +
			"and hides the ends of the sides in its rabbets; with lip it covers the opening's edges; " +
			"dovetail: tails of the sides between pins of box front and back, by hand",
		example: "double-rabbet", why: "one setting of fence and height cuts all of it, and it holds itself while the glue sets"},
	{name: string(joinery.SettingBackJoint), form: formWord, words: []string{string(joinery.Housed)},
		doc: "dado: the back stands at its full thickness in dados of the sides", without: "as the corners of the box front",
		example: "dado"},
	{name: string(joinery.SettingBackSetback), form: formLength, min: 0, max: maxSize, doc: "How far a back in dados stands before the ends of the sides", without: both(joinery.UsualBackSetback),
		example: "15", with: "back-joint: dado"},
	{name: string(joinery.SettingFasteners), form: formWord, words: texts(joinery.AllFasteners),
		doc:     "What holds a butt joint beside glue: screws, dowels, or loose tenons in mortises",
		without: "screws in a butt joint, none in others",
		example: "dowels", with: "joint: butt"},
	{name: string(joinery.SettingFingerWidth), form: formLength, min: minFinger, max: maxSize, doc: "The width wished for of the fingers of a box joint, on a router", without: "it is chosen",
		example: "12", with: "joint: box-joint"},
	{name: string(joinery.SettingLip), form: formEdges, sides: edges, min: 0, max: maxOverlay,
		doc: "How far a rabbeted-front stands out beyond the box, which goes into the opening behind these lips; " +
			"in an opening they follow from `fronts: overlay` and `overlay`",
		without: "the front is as large as the box, and stands within the opening",
		example: "[10, 10, 10, 0]", with: "joint: rabbeted-front"},
	{name: string(joinery.SettingTails), form: formCount, min: 1, max: maxTails,
		doc: "How many tails a dovetail has at each end of a side", without: "it is chosen by the height",
		example: "3", with: "joint: dovetail\ncutter: {kind: hand, width: 6}"},
	{name: string(joinery.SettingCutter), form: formSection, keys: cutterKeys, doc: "The tool for this drawer", without: "the tool of the file",
		example: "{kind: router, diameter: 6}"},
	{name: "joinery", form: formSection, keys: joineryKeys, doc: "Settings of the joints of this drawer", without: "the settings of the file",
		example: "{bottom-fit: grooved-in}"},
	{name: string(joinery.FieldDividers), form: formList, keys: dividerKeys, noun: "divider", most: maxDividers, doc: "Boards that divide the inside", without: "it is not divided",
		example: "[{direction: across, at: 2, stock: hardboard}]"},
	{name: string(joinery.FieldInsert), form: formSection, keys: insertKeys, doc: "A grid of strips that cross half and half, loose on the bottom, as for cutlery", without: "there is none",
		example: "{stock: hardboard, columns: [80, 80, free], rows: [240, free]}"},
	{name: string(joinery.FieldDrawerFront), form: formSection, keys: frontKeys, doc: "A board screwed to the box front from inside", without: "there is none",
		example: "{stock: birch}", with: "opening: base\nslide: side-mount"},
	{name: string(joinery.FieldPull), form: formSection, keys: pullKeys, doc: "A cut in the middle of the box front, or of the drawer front, by which the drawer is pulled open", without: "there is none",
		example: "{shape: half-round, width: 60}"},
	{name: "load", form: formMeasure, measures: loads, min: minLoad, max: maxLoad, doc: "What will lie in the drawer at most", without: "nothing is judged by it",
		example: "15 kg"},
}, slices.Concat(rowKeys, flankKeys)...)

var dividerKeys = []key{
	{name: "direction", form: formWord, required: true, words: []string{string(joinery.Across), string(joinery.Along)}, doc: "across: from side to side; along: from front to back",
		example: "along", with: "at: 1\nstock: hardboard"},
	{name: "at", form: formCells, required: true, min: minSize, max: maxSize, most: maxDividers,
		doc:     "How many, spaced evenly; or a list of how far from the inside of the box front, or of the left side, each begins",
		example: "[120, 240]", with: "direction: across\nstock: hardboard"},
	{name: "height", form: formLength, min: minSize, max: maxSize, doc: "Their height over the bottom", without: "as high as the box allows",
		example: "60", with: "direction: across\nat: 1\nstock: hardboard"},
	{name: joinery.KeyFolders, form: formSize, sides: []string{"width", "below", "above"}, min: minFolder, max: maxSize,
		doc: "Each two of them are rails of hanging folders, measured from hook to hook, below the rails and above them; " +
			"`at` counts the pairs, or is where each begins",
		without: "nothing hangs on them", example: "245 x 60 x 10", with: "direction: along\nat: 1\nstock: thin"},
	{name: "stock", form: formStock, required: true, doc: "The stock of the dividers",
		example: "hardboard", with: "direction: across\nat: 1"},
	{name: "loose", form: formWord, words: []string{"yes", "no"}, fallback: "no", doc: "yes: they slide in from the top; no: they are glued in",
		example: "yes", with: "direction: across\nat: 1\nstock: hardboard", why: "a divider that is glued in stiffens the box"},
}

var insertKeys = []key{
	{name: "stock", form: formStock, required: true, doc: "The stock of its strips",
		example: "hardboard", with: "columns: 3\nrows: 2"},
	{name: "columns", form: formCells, required: true, words: []string{freeRow}, min: 1, max: maxSize, most: maxCells,
		doc:     "How wide what lies in its cells is, as measured, from left to right, of which those that are free share the rest; or how many equal ones",
		example: "[80, 80, 60, free]", with: "stock: hardboard\nrows: 2"},
	{name: "rows", form: formCells, required: true, words: []string{freeRow}, min: 1, max: maxSize, most: maxCells,
		doc:     "The same of its length, from the box front to the back",
		example: "[240, free]", with: "stock: hardboard\ncolumns: 3"},
	{name: "height", form: formLength, min: minSize, max: maxSize, doc: "Its height over the bottom", without: "as high as the box allows",
		example: "50", with: "stock: hardboard\ncolumns: 3\nrows: 2"},
	{name: joinery.KeyContentsClearance, form: formLength, min: 0, max: maxSize,
		fallback: mm(joinery.UsualContentsClearance(geom.Millimeter)), inInch: inch(joinery.UsualContentsClearance(geom.Inch)),
		doc:     "How much larger than what lies in it a measured cell is, each way",
		example: "15", with: "stock: hardboard\ncolumns: 3\nrows: 2", why: "room for fingers; common practice, no source"},
	{name: joinery.KeyWallClearance, form: formLength, min: 0, max: maxGap,
		fallback: mm(joinery.UsualWallClearance(geom.Millimeter)), inInch: inch(joinery.UsualWallClearance(geom.Inch)),
		doc:     "How much shorter than the inside of the box it is in all, each way",
		example: "3", with: "stock: hardboard\ncolumns: 3\nrows: 2", why: "it is lifted out by hand; common practice, no source"},
}

var pullKeys = []key{
	{name: "shape", form: formWord, required: true, words: []string{string(joinery.PullHole), string(joinery.PullHalf), string(joinery.PullSlot), string(joinery.PullHandHold)},
		doc:     "hole: round, for a finger; half-round and slot: out of the top edge; hand-hold: a slot below the top edge",
		example: "hand-hold"},
	{name: "width", form: formLength, min: minPull, max: maxSize, doc: "Its width; of a hole or a half-round, the diameter", without: "it is chosen",
		example: "60", with: "shape: half-round"},
	{name: "height", form: formLength, min: minPull, max: maxSize, doc: "Its height; a hole or a half-round has none", without: "it is chosen",
		example: "25", with: "shape: hand-hold"},
	{name: "from-top", form: formLength, min: minPull, max: maxSize, doc: "From the top edge to the middle of a hole or hand-hold", without: "it is chosen",
		example: "40", with: "shape: hole"},
}

var frontKeys = []key{
	{name: "stock", form: formStock, required: true, doc: "The stock of the drawer front",
		example: "birch", with: "width: 470\nheight: 150\noverhang-left: 5\noverhang-below: 5"},
	{name: "width", form: formLength, min: minSize, max: maxSize, doc: "Its width", without: "as the opening asks for",
		example: "470", with: "stock: birch\nheight: 150\noverhang-left: 5\noverhang-below: 5"},
	{name: "height", form: formLength, min: minSize, max: maxSize, doc: "Its height", without: "as the opening asks for",
		example: "150", with: "stock: birch\nwidth: 470\noverhang-left: 5\noverhang-below: 5"},
	{name: "overhang-left", form: formLength, min: -maxOverlay, max: maxOverlay, doc: "How far it stands out beyond the left of the box; less than 0 for short of it", without: "as the opening asks for",
		example: "5", with: "stock: birch\nwidth: 470\nheight: 150\noverhang-below: 5"},
	{name: "overhang-below", form: formLength, min: -maxOverlay, max: maxOverlay, doc: "How far it stands out below the box; less than 0 for short of it", without: "as the opening asks for",
		example: "5", with: "stock: birch\nwidth: 470\nheight: 150\noverhang-left: 5"},
	{name: "handles", form: formWord, words: []string{"none", "knob", "handle"}, trade: handleTrade, fallback: "none", doc: "The holes for a knob or a handle: none, one or two",
		example: "knob", with: "stock: birch\nwidth: 470\nheight: 150\noverhang-left: 5\noverhang-below: 5", why: "where it is drilled, and for what, is the shop's choice"},
	{name: "handle-spacing", form: formLength, min: minHandle, max: maxSize, doc: "From one hole of a handle to the other", without: "a handle needs it",
		example: "128", with: "stock: birch\nwidth: 470\nheight: 150\noverhang-left: 5\noverhang-below: 5\nhandles: handle"},
	{name: "handle-diameter", form: formLength, min: 1, max: maxHandleBore, doc: "The diameter of the holes", without: "as its screws need",
		example: "5", with: "stock: birch\nwidth: 470\nheight: 150\noverhang-left: 5\noverhang-below: 5\nhandles: knob"},
	{name: "handle-from-top", called: "handle-height", form: formLength, min: 1, max: maxSize, doc: "From the drawer front's top edge to the holes", without: "half its height",
		example: "60", with: "stock: birch\nwidth: 470\nheight: 150\noverhang-left: 5\noverhang-below: 5\nhandles: knob"},
}

// texts are words of the program as the file has them.
func texts[T ~string](words []T) (list []string) {
	for _, w := range words {
		list = append(list, string(w))
	}
	return list
}

// flankKeys are for the flanks of dovetails.
var flankKeys = []key{
	{name: string(joinery.SettingDovetailSlope), form: formCount, min: 5, max: 10,
		doc:     "How steep the flanks of a dovetail are: 8 is 1 aside for 8 along, for hardwood, 6 is for softwood",
		without: "8",
		example: "6", with: "joint: dovetail\ncutter: {kind: hand, width: 6}"},
}
