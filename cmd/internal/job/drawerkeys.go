package job

import "drawerwright/geom/joinery"

var drawerKeys = append([]key{
	{name: string(joinery.SettingName), form: formName, required: true, doc: "The name of the drawer, and of its files; with rows, they are numbered from the top"},
	{name: "count", form: formCount, min: 1, max: maxCount, fallback: "1", doc: "How many of this drawer to make"},
	{name: "spares", form: formCount, min: 0, max: maxSpares, fallback: "0", doc: "How many more of each part to make"},
	{name: string(joinery.SettingOutside), form: formSize, sides: []string{"width", "height", "depth"}, min: minSize, max: maxSize,
		doc: "The outside size of the box", without: "it follows from opening and slide"},
	{name: string(joinery.SettingSides), form: formStock, required: true, doc: "The stock of the sides"},
	{name: string(joinery.SettingFront), form: formStock, doc: "The stock of the front", without: "as the sides"},
	{name: string(joinery.SettingBack), form: formStock, doc: "The stock of the back", without: "as the front"},
	{name: string(joinery.SettingBottom), form: formStock, required: true, doc: "The stock of the bottom"},
	{name: string(joinery.SettingJoint), form: formWord, fallback: string(joinery.DadoRabbet),
		words: []string{string(joinery.DadoRabbet), string(joinery.DoubleRabbet), string(joinery.Rabbet), string(joinery.Butt), string(joinery.BoxJoint)},
		doc: "dado-rabbet: front and back end in tongues that stand in dados of the sides; double-rabbet: rabbets on the inside faces of all four, none to be turned over; " +
			"rabbet: front and back in rabbets of the sides; butt: front and back between the sides, with fasteners; box-joint: fingers on all four"},
	{name: string(joinery.SettingBackJoint), form: formWord, words: []string{string(joinery.Housed)},
		doc: "dado: the back stands at its full thickness in dados of the sides", without: "as the front's corner"},
	{name: string(joinery.SettingSetback), form: formLength, min: 0, max: maxSize, doc: "How far a back in dados stands before the ends of the sides", without: mm(joinery.DefaultSetback)},
	{name: string(joinery.SettingFasteners), form: formWord, words: []string{string(joinery.Screws), string(joinery.Dowels)}, doc: "What holds a butt joint beside glue", without: "screws"},
	{name: string(joinery.SettingFingerWidth), form: formLength, min: minFinger, max: maxSize, doc: "The width wished for of the fingers of a box joint, on a router", without: "it is chosen"},
	{name: string(joinery.SettingCutter), form: formSection, keys: cutterKeys, doc: "The tool for this drawer", without: "the tool of the file"},
	{name: "joinery", form: formSection, keys: joineryKeys, doc: "Settings of the joints of this drawer", without: "the settings of the file"},
	{name: string(joinery.FieldDividers), form: formList, keys: dividerKeys, noun: "divider", most: maxDividers, doc: "Boards that divide the inside", without: "it is not divided"},
	{name: string(joinery.FieldPull), form: formSection, keys: pullKeys, doc: "A cut in the middle of the front, or of the drawer front, by which the drawer is pulled open", without: "there is none"},
	{name: string(joinery.FieldDrawerFront), form: formSection, keys: frontKeys, doc: "A front screwed on to the box from inside", without: "there is none"},
	{name: "load", form: formMeasure, measures: loads, min: minLoad, max: maxLoad, doc: "What will lie in the drawer at most", without: "nothing is judged by it"},
}, rowKeys...)

var dividerKeys = []key{
	{name: "way", form: formWord, required: true, words: []string{string(joinery.Across), string(joinery.Along)}, doc: "across: from side to side; along: from front to back"},
	{name: "at", form: formCells, required: true, min: minSize, max: maxSize, most: maxDividers,
		doc: "How many, spaced evenly; or a list of how far from the inside of the front, or of the left side, each begins"},
	{name: "height", form: formLength, min: minSize, max: maxSize, doc: "Their height over the bottom", without: "as high as the box allows"},
	{name: "stock", form: formStock, required: true, doc: "The stock of the dividers"},
	{name: "loose", form: formWord, words: []string{"yes", "no"}, fallback: "no", doc: "yes: they slide in from the top; no: they are glued in"},
}

var pullKeys = []key{
	{name: "shape", form: formWord, required: true, words: []string{string(joinery.PullHole), string(joinery.PullHalf), string(joinery.PullSlot), string(joinery.PullHandHold)},
		doc: "hole: round, for a finger; half-round and slot: out of the top edge; hand-hold: a slot below the top edge"},
	{name: "width", form: formLength, min: minPull, max: maxSize, doc: "Its width; of a hole or a half-round, the diameter", without: "it is chosen"},
	{name: "height", form: formLength, min: minPull, max: maxSize, doc: "Its height; a hole or a half-round has none", without: "it is chosen"},
	{name: "down", form: formLength, min: minPull, max: maxSize, doc: "From the top edge to the middle of a hole or hand-hold", without: "it is chosen"},
}

var frontKeys = []key{
	{name: "stock", form: formStock, required: true, doc: "The stock of the front"},
	{name: "width", form: formLength, min: minSize, max: maxSize, doc: "Its width", without: "as the opening asks for"},
	{name: "height", form: formLength, min: minSize, max: maxSize, doc: "Its height", without: "as the opening asks for"},
	{name: "left", form: formLength, min: -maxOverlay, max: maxOverlay, doc: "How far it stands out beyond the left of the box; less than 0 for short of it", without: "as the opening asks for"},
	{name: "below", form: formLength, min: -maxOverlay, max: maxOverlay, doc: "How far it stands out below the box; less than 0 for short of it", without: "as the opening asks for"},
	{name: "handles", form: formWord, words: []string{"none", "knob", "handle"}, fallback: "none", doc: "The holes for a knob or a handle: none, one or two"},
	{name: "handle-apart", form: formLength, min: minHandle, max: maxSize, doc: "From one hole of a handle to the other", without: "a handle needs it"},
	{name: "handle-diameter", form: formLength, min: 1, max: maxHandleBore, doc: "The diameter of the holes", without: "as its screws need"},
	{name: "handle-down", form: formLength, min: 1, max: maxSize, doc: "From the front's top edge to the holes", without: "half its height"},
}
