package job

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// form is what the value of a key looks like.
type form int

const (
	formTitle    form = iota // up to 60 printable characters
	formName                 // the name of a drawer
	formStock                // the name of a stock that the file lists
	formWord                 // one of the key's words
	formLength               // a length
	formReadings             // a length, or a list of them
	formSize                 // lengths with x between them, or a list of them
	formCount                // a whole number
	formPrice                // a plain number
	formSection              // a mapping with the key's own keys
	formStocks               // a mapping of names to sections
	formDrawers              // a list of sections
)

// key is one entry of the job file. The reader and the schema both follow it.
type key struct {
	name     string
	form     form
	doc      string // one sentence without its full stop
	required bool
	fallback string // read in the place of a missing entry; empty when there is none
	without  string // what happens without the entry, when that is no fallback
	words    []string
	sides    []string // what the numbers of a size are
	min, max float64  // in millimetres for lengths, both included
	keys     []key
}

// grainWidth is a grain along the second number of the sheet.
const grainWidth joinery.Grain = "width"

// mm writes a length of the joinery package as the job file would.
func mm(length float64) string { return geom.LengthOf(length).Text(geom.Millimetre) }

var jobKeys = []key{
	{name: "job", form: formTitle, doc: "The title of the job, for the report and the printed list", without: "the title is empty"},
	{name: "units", form: formWord, required: true, words: []string{"mm", "in"}, doc: "The unit of every bare number in the file"},
	{name: "stock", form: formStocks, required: true, keys: stockKeys, doc: "The sheet materials by name, as they were measured"},
	{name: "cutter", form: formSection, keys: cutterKeys, without: "every drawer needs its own",
		doc: "The tool that makes dados, grooves and rabbets"},
	{name: "joinery", form: formSection, keys: joineryKeys, without: "the defaults of its entries hold",
		doc: "Settings of the joints for all drawers; a drawer can change each"},
	{name: "dxf", form: formSection, keys: dxfKeys, without: "the defaults of its entries hold", doc: "How drawings for machines are written"},
	{name: "drawers", form: formDrawers, required: true, keys: drawerKeys, doc: "The drawers to make"},
}

var stockKeys = []key{
	{name: "thickness", form: formReadings, required: true, min: minThickness, max: maxThickness,
		doc: "The thickness, or a list of caliper readings from several places"},
	{name: "sheet", form: formSize, sides: []string{"length", "width"}, min: minSize, max: maxSize,
		doc: "The size of a sheet as bought", without: "parts are not checked against it"},
	{name: "grain", form: formWord, words: []string{string(joinery.GrainLength), string(grainWidth), string(joinery.GrainNone)}, fallback: string(joinery.GrainNone),
		doc: "length: the grain runs along the first number of the sheet; width: along the second; none: parts may lie either way"},
	{name: "price", form: formPrice, min: 0, max: maxPrice, doc: "The price of one sheet, in any currency", without: "no costs are added up"},
}

var cutterKeys = []key{
	{name: "kind", form: formWord, required: true, words: []string{string(joinery.Saw), string(joinery.Router)},
		doc: "saw: a blade or dado stack, every slot is as wide as the cutter and runs through; router: a bit, a slot is made to fit and can stop"},
	{name: "width", form: formLength, required: true, min: minCutter, max: maxCutter, doc: "The width of the slot that one pass cuts"},
}

var joineryKeys = []key{
	{name: string(joinery.FieldFenceDistance), form: formLength, min: minSetting, max: maxSetting,
		doc: "From the edge of a part to its dado or groove", without: "half the measured thickness of the front"},
	{name: string(joinery.FieldCutterHeight), form: formLength, min: minSetting, max: maxSetting,
		doc: "The depth of every cut", without: "half the measured thickness of the sides"},
	{name: string(joinery.FieldGrooveEnds), form: formWord, words: []string{string(joinery.GrooveStopped), string(joinery.GrooveThrough)},
		doc:     "stopped: the groove of the bottom ends inside the dados of the sides, routers only; through: it shows at the ends",
		without: "through for a saw, stopped for a router"},
	{name: string(joinery.FieldBottomFit), form: formWord, fallback: string(joinery.BottomAuto),
		words: []string{string(joinery.BottomAuto), string(joinery.BottomCaptured), string(joinery.BottomFlush)},
		doc:   "captured: the bottom at its full thickness; flush: on a tongue, level with the bottom edges; auto: captured where the groove takes it"},
	{name: string(joinery.FieldBottomSlack), form: formLength, min: 0, max: maxSlack, fallback: mm(joinery.DefaultBottomSlack),
		doc: "How much smaller the bottom is than its grooves, in all, each way"},
	{name: string(joinery.FieldDadoPlay), form: formLength, min: 0, max: maxPlay, fallback: mm(joinery.DefaultDadoPlay),
		doc: "How much wider a router makes the dados than the tongues"},
	{name: string(joinery.FieldGroovePlay), form: formLength, min: 0, max: maxPlay, fallback: mm(joinery.DefaultGroovePlay),
		doc: "How much wider a router makes the grooves than the bottom is thick"},
	{name: string(joinery.FieldGlueRoom), form: formLength, min: 0, max: maxPlay, fallback: mm(0),
		doc: "How much deeper the dados are than the tongues are long"},
}

var dxfKeys = []key{
	{name: "version", form: formWord, words: []string{"R2000", "R12"}, fallback: "R2000", doc: "The version of the DXF format"},
	{name: "units", form: formWord, words: []string{"mm", "in"}, doc: "The unit of the drawings", without: "the units of the job"},
}

var drawerKeys = []key{
	{name: string(joinery.FieldName), form: formName, required: true, doc: "The name of the drawer, and of its files"},
	{name: "count", form: formCount, min: 1, max: maxCount, fallback: "1", doc: "How many of this drawer to make"},
	{name: string(joinery.FieldOutside), form: formSize, required: true, sides: []string{"width", "height", "depth"}, min: minSize, max: maxSize,
		doc: "The outside size of the box"},
	{name: string(joinery.FieldSides), form: formStock, required: true, doc: "The stock of the sides"},
	{name: string(joinery.FieldFront), form: formStock, doc: "The stock of the front", without: "as the sides"},
	{name: string(joinery.FieldBack), form: formStock, doc: "The stock of the back", without: "as the front"},
	{name: string(joinery.FieldBottom), form: formStock, required: true, doc: "The stock of the bottom"},
	{name: string(joinery.FieldJoint), form: formWord, words: []string{string(joinery.DadoRabbet)}, fallback: string(joinery.DadoRabbet),
		doc: "How the corners are made"},
	{name: string(joinery.FieldCutter), form: formSection, keys: cutterKeys, doc: "The tool for this drawer", without: "the tool of the file"},
	{name: "joinery", form: formSection, keys: joineryKeys, doc: "Settings of the joints of this drawer", without: "the settings of the file"},
}
