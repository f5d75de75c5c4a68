package job

import (
	"cmp"
	"regexp"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
	"drawerwright/geom/opening"
)

// form is what the value of a key looks like.
type form int

const (
	formTitle    form = iota // up to 60 printable characters
	formName                 // the name of a drawer
	formStock                // the name of a stock that the file lists
	formRef                  // the name of something else in the file
	formPath                 // the name of a file, from the folder of the job file
	formWord                 // one of the key's words
	formLength               // a length
	formReadings             // a length, or a list of them
	formLengths              // a list of lengths
	formCells                // a whole number, or a list of lengths and the key's words
	formEdges                // a length, or a list of one for each of the key's sides
	formSize                 // lengths with x between them, or a list of them
	formCount                // a whole number
	formPrice                // a plain number
	formMeasure              // a number with one of the key's units
	formSection              // a mapping with the key's own keys, or one of its words
	formNamed                // a mapping of names to sections
	formWords                // a list of the key's words, each once
	formPattern              // text with the key's words in braces
	formList                 // a list of sections
)

// key is one entry of the job file. The reader and the schema both follow it.
type key struct {
	name     string
	form     form
	doc      string // one sentence without its full stop
	required bool
	fallback string // read in the place of a missing entry; empty when there is none
	inInch   string // the fallback of a job in inches, where it is another
	without  string // what happens without the entry, when that is no fallback
	words    []string
	trade    map[string]string // what a shop may write for one of the words, in lower case
	called   string            // what a shop may call the entry
	sides    []string          // what the numbers of a size are
	min, max float64           // in millimeters for lengths, in the first unit for measures, both included
	measures []measure
	keys     []key
	oneOf    []string // of the keys, one and no other has to be there
	needs    string   // the word that a pattern cannot do without
	noun     string   // what a list or a mapping of names lists
	example  string   // a value
	with     string   // entries beside it that the example needs, a line each
	why      string   // why the fallback, or what happens without the entry, is what it is
	most     int      // of them, or of the lengths of a list
}

// yes and no are the words of entries that are one or the other.
const yes, no = "yes", "no"

// grainWidth is a grain along the second number of the sheet.
const grainWidth joinery.Grain = "width"

// mm writes a length of the joinery package as the job file would.
func mm(length float64) string { return geom.LengthOf(length).Text(geom.Millimeter) }

// both writes a usual length in mm, and that of a job in inches.
func both(usual func(geom.Unit) float64) string {
	inch := geom.LengthOf(usual(geom.Inch)).Text(geom.Inch)
	return mm(usual(geom.Millimeter)) + ", with units: in " + inch + ","
}

// usual is the fallback of a job in a unit.
func (k *key) usual(u geom.Unit) string {
	if u == geom.Inch && k.inInch != "" {
		return k.inInch
	}
	return k.fallback
}

// fallbacks are the fallbacks of both units, in words.
func (k *key) fallbacks() string {
	if k.inInch == "" {
		return k.fallback
	}
	return k.fallback + ", with units: in " + k.inInch
}

// inch writes a length in mm as a job file in inches would.
func inch(length float64) string { return geom.LengthOf(length).Text(geom.Inch) }

var jobKeys = []key{
	{name: "job", form: formTitle, doc: "The title of the job, for the report and the printed list", without: "the title is empty",
		example: "Bench drawers"},
	{name: "units", form: formWord, required: true, words: []string{"mm", "in"}, trade: unitWords,
		doc:     "The unit of every bare number in the file",
		example: "mm"},
	{name: "stock", form: formNamed, required: true, keys: stockKeys, noun: "stock", most: maxStocks, doc: "The sheet materials by name, as they were measured",
		example: "{birch: {thickness: 12.2}, hardboard: {thickness: 5.9}}"},
	{name: "cutter", form: formSection, keys: cutterKeys, without: "every drawer needs its own",
		doc:     "The tool that makes dados, grooves and rabbets",
		example: "{kind: saw, width: 6.35}"},
	{name: "joinery", form: formSection, keys: joineryKeys, without: "the defaults of its entries hold",
		doc:     "Settings of the joints for all drawers; a drawer can change each",
		example: "{bottom-fit: grooved-in, bottom-clearance: 2}"},
	{name: "machines", form: formSection, keys: machineKeys, without: "cautious machines of a small shop", doc: "How far the shop's saw and router table go: nothing beyond that is planned",
		example: "{saw: {rip-capacity: 900, crosscut-capacity: 700}}"},
	{name: "router", form: formSection, keys: routerKeys, without: "the defaults of its entries hold",
		doc:     "How a router runs past edges, clears corners, turns parts over and holds them",
		example: "{tabs: {width: 8, height: 1.5}, into-spoilboard: 0.2}"},
	{name: "limits", form: formSection, keys: limitKeys, without: "the defaults of its entries hold", doc: "What the shop calls right in a finished box",
		example: "{flush: 0.2, shoulder-gap: 0.2}"},
	{name: "log", form: formPath, without: "nothing is learned from test cuts", example: "shop.csv",
		doc: "The shop's log of test cuts, from the folder of the job: `drawerwright adjust` adds to it with --log"},
	{name: "accuracy", form: formSection, words: []string{fromLog}, keys: accuracyKeys, without: "what is usual for the machine", doc: "By how much the shop's settings and cuts are off either way, all but a few in a thousand; from-log: as the log shows it, which begins with what is usual",
		example: "{fence: 0.1, length: 0.5}"},
	{name: "spacers", form: formLengths, min: minSpacer, max: maxSetting, most: maxSpacers,
		doc: "The spacer blocks and shims with which the shop sets fences and cutters, each piece it has", without: "settings are not made up of spacers",
		example: "[3, 2, 1, 0.5, 0.25]"},
	{name: "dxf", form: formSection, keys: dxfKeys, without: "the defaults of its entries hold", doc: "How drawings for machines are written",
		example: "{version: R12, units: mm}"},
	{name: "preview", form: formWord, words: []string{PreviewDesigned, PreviewMilled},
		doc: "What the solids in previews show: designed, square pockets as the joints have them; milled, what bits " +
			"leave by the drawings as they are written, with round corners, reliefs, tabs and onion skin",
		without: "milled for drawers cut with a CNC router; designed else: slots " +
			"of a saw are square and run out as they are designed",
		example: "milled"},
	{name: "cad", form: formWord, words: []string{CADStep},
		doc: "For those who go on in CAD: each part and each assembled box as exact solids in STEP (AP242), " +
			"as in previews, without tabs and onion skin",
		without: "solids are written as STL and glTF alone",
		example: "step"},
	{name: "paper", form: formSection, keys: paperKeys, without: "the defaults of its entries hold", doc: "How the packet for the bench is printed",
		example: "{size: A4, labels: page}"},
	{name: "templates", form: formSection, keys: templateKeys, without: "none are made", doc: "Marking templates and gauges to cut with a laser or a small router",
		example: "{stock: hardboard, bed: 600 x 400}"},
	{name: "sheets", form: formSection, keys: sheetKeys, without: "the defaults of its entries hold", doc: "How parts are laid out on sheets",
		example: "{kerf: 3.2, trim: 5, min-offcut: 300 x 100}"},
	{name: "climate", form: formSection, keys: climateKeys, without: "wood and sheets are not judged for swelling and shrinking",
		doc:     "The humidity of the air that wood and sheets come from and will stand in, not of the wood",
		example: "{now: 45 %, driest: 30 %, dampest: 60 %}"},
	{name: "openings", form: formNamed, keys: openingKeys, noun: "opening", most: maxOpenings, without: "every drawer gives its outside size",
		doc:     "The openings of cabinets by name, as they were measured",
		example: "{bay: {width: 564, height: 702, depth: 545, cabinet: frameless, fronts: none}}"},
	{name: "group-openings", form: formWord, words: []string{yes, no}, fallback: no,
		doc:     "yes: boxes that are made alike, for openings that differ by up to " + mm(opening.DefaultGroupOpenings) + ", are made in one size, with shims between the slides and the wider cabinet",
		example: "yes", why: "each cabinet gets the widest box that it takes, unless the shop wants one size"},
	{name: "slides", form: formNamed, keys: slideKeys, noun: "slide", most: maxSlides, without: "there are only the built-in kinds", doc: "The shop's own slides by name",
		example: "{quiet: {kind: undermount, load: 40 kg}}"},
	{name: "slides-file", form: formPath, without: "the slides are those of the job", doc: "A file of slides that jobs share, from the folder of the job: it holds units and slides",
		example: "slides.yaml"},
	{name: "drawers", form: formList, required: true, keys: drawerKeys, oneOf: []string{string(joinery.SettingOutside), "opening"}, noun: "drawer", most: maxDrawers, doc: "The drawers to make",
		example: "[{name: bench, outside: 460 x 140 x 500, sides: birch, bottom: hardboard}]"},
}

var cutterKeys = []key{
	{name: "kind", form: formWord, required: true, words: kindWords(), trade: kindTrade,
		doc: "saw: a blade or dado stack, every slot is as wide as the cutter and runs through; router-table: a bit under a table with a fence, every slot is as wide as the bit; " +
			"router: a CNC router, a slot is made to fit and can stop; hand: gauge, knife, saw, chisel and plow plane, a slot is made to fit and can stop",
		example: "saw", with: "width: 6.35"},
	{name: "width", form: formLength, min: minCutter, max: maxCutter, doc: "The width of the slot that one pass of a saw cuts; of a router or a router table, the same as diameter; by hand, that of the plow iron",
		without: "a saw and hand work need it",
		example: "6.35", with: "kind: saw"},
	{name: "diameter", form: formLength, min: minCutter, max: maxCutter, doc: "The diameter of the bit of a router table, or of a router's only bit", without: "a saw and hand work have width; a router may have bits",
		example: "6", with: "kind: router"},
	{name: "machine", form: formTitle, doc: "What the shop's log calls the machine", without: "its kind",
		example: "old table saw", with: "kind: saw\nwidth: 6.35"},
	{name: "name", form: formTitle, doc: "What the shop's log calls the cutter", without: "the log does not tell the cutters of a machine apart",
		example: "dado stack", with: "kind: saw\nwidth: 6.35"},
	{name: "groove-cutter", form: formLength, min: minCutter, max: maxCutter, doc: "The width of the slot that one pass of the cutter for the bottom's grooves cuts on a saw or a router table; they are then made to fit, in passes where they are wider. It may be the same cutter",
		without: "grooves are as wide as the cutter",
		example: "3.2", with: "kind: saw\nwidth: 6.35"},
	{name: "reach", form: formLength, min: minReach, max: maxReach, doc: "How deep that bit can cut", without: "it reaches any depth",
		example: "22", with: "kind: router\ndiameter: 6"},
	{name: "flutes", form: formCount, min: 1, max: maxFlutes, doc: "How many cutting edges that bit has, for the legend of layers", without: "the legend does not say",
		example: "2", with: "kind: router\ndiameter: 6"},
	{name: "bits", form: formNamed, keys: bitKeys, noun: "bit", most: maxBits, doc: "The bits of a router by name; every cut takes the widest that fits",
		without: "the router has one bit, of that diameter",
		example: "{large: {diameter: 10, reach: 30}, small: {diameter: 6}}", with: "kind: router"},
}

// kindTrade is what a shop calls the kinds of cutters.
var kindTrade = map[string]string{
	"dado stack": string(joinery.Saw), "dado set": string(joinery.Saw), "dado blade": string(joinery.Saw),
	"blade": string(joinery.Saw), "table saw": string(joinery.Saw), "tablesaw": string(joinery.Saw),
	"cnc": string(joinery.Router), "cnc router": string(joinery.Router),
	"hand saw": string(joinery.Hand), "handsaw": string(joinery.Hand), "hand tools": string(joinery.Hand),
	"chisel": string(joinery.Hand), "plow": string(joinery.Hand),
}

// unitWords is what a shop calls the units of numbers.
var unitWords = map[string]string{
	"millimeter": "mm", "millimeters": "mm", "metric": "mm",
	"inch": "in", "inches": "in", "imperial": "in", `"`: "in",
}

// handleTrade is what a shop calls what a handle, with two screws, and a knob, with one, are here.
var handleTrade = map[string]string{"pull": "handle", "pulls": "handle", "bar": "handle", "handles": "handle", "knobs": "knob", "button": "knob"}

// UnitWord is the word of the job file for what a shop calls a unit; the same where none is.
func UnitWord(called string) string { return cmp.Or(unitWords[strings.ToLower(called)], called) }

func kindWords() (words []string) {
	for _, k := range joinery.Kinds {
		words = append(words, string(k))
	}
	return words
}

var bitKeys = []key{
	{name: "diameter", form: formLength, required: true, min: minCutter, max: maxCutter, doc: "The diameter of the bit",
		example: "6"},
	{name: "reach", form: formLength, min: minReach, max: maxReach, doc: "How deep it can cut", without: "it reaches any depth",
		example: "22", with: "diameter: 6"},
	{name: "flutes", form: formCount, min: 1, max: maxFlutes, doc: "How many cutting edges it has, for the legend of layers", without: "the legend does not say",
		example: "2", with: "diameter: 6"},
	{name: "tool", form: formCount, min: 1, max: maxTool, doc: "Its number in the machine, for {tool} in names of layers, the legend and layers.csv", without: "it goes by its name",
		example: "3", with: "diameter: 6"},
	{name: "type", form: formWord, words: bitTypeWords(), doc: "Which way its edges carry the chips: of an up-cut bit the lower face of the sheet is clean, of a down-cut bit the upper, of a compression bit both", without: "not said",
		example: "down-cut", with: "diameter: 6"},
	{name: "tip", form: formLength, min: 0.1, max: maxReach, doc: "How much of a compression bit, from its tip, cuts upward", without: "not said",
		example: "5", with: "diameter: 6\ntype: compression"},
	{name: "feed", form: formMeasure, measures: feeds, min: 1, max: maxFeed, doc: "Its feed rate, from the shop's own table", without: "no time is estimated, unless chip-load and speed say it",
		example: "4 m/min", with: "diameter: 6"},
	{name: "plunge", form: formMeasure, measures: feeds, min: 1, max: maxFeed, doc: "Its plunge rate", without: "as the feed",
		example: "1.2 m/min", with: "diameter: 6"},
	{name: "speed", form: formMeasure, measures: speeds, min: 100, max: maxSpeed, doc: "Its spindle speed", without: "not said",
		example: "18000 rpm", with: "diameter: 6"},
	{name: "chip-load", form: formLength, min: 0.001, max: maxClearance, doc: "How far it advances for each cutting edge: with speed and flutes, in place of feed", without: "it follows from feed, speed and flutes",
		example: "0.12", with: "diameter: 6\nflutes: 2\nspeed: 18000 rpm"},
	{name: "pass-depth", form: formLength, min: 0.1, max: maxReach, doc: "How deep one pass goes at most", without: "any depth in one pass",
		example: "6", with: "diameter: 6"},
}

func bitTypeWords() (words []string) {
	for _, t := range mill.BitTypes {
		words = append(words, string(t))
	}
	return words
}

var routerKeys = []key{
	{name: string(mill.SettingOvercut), form: formLength, min: 0, max: maxOvercut,
		fallback: mm(mill.UsualOvercut(geom.Millimeter)), inInch: inch(mill.UsualOvercut(geom.Inch)),
		doc:     "How much further than the bit's radius a cut that leaves the part runs past its edge",
		example: "1.5", why: "so that no round corner is left standing; common practice, no source"},
	{name: string(mill.SettingRelief), form: formSection, words: reliefWords, keys: reliefKeys,
		without: string(mill.ReliefDogbone),
		doc:     "Where a part with square corners goes into a pocket, dogbone clears its corners by a round on their bisector, t-bone by one through their shorter side; with none they stay round, which is refused where the part would stop there. One for all operations, or one for each",
		example: "{groove: t-bone, others: dogbone}"},
	{name: string(mill.SettingSlots), form: formWord,
		words: []string{string(mill.SlotsWidened), string(mill.SlotsCenterline)}, fallback: string(mill.SlotsWidened),
		doc:     "widened: a slot just as wide as its bit is drawn " + mm(mill.SlotRoom) + " wider; centerline: as the line that the bit's center follows",
		example: "centerline", why: "a bit that clears inside lines cannot get into a slot of just its own width"},
	{name: "depth-from", form: formWord, words: []string{string(joinery.FromTop), string(joinery.FromSpoilboard)}, fallback: string(joinery.FromTop),
		doc:     "top: layers say how deep a cut is; spoilboard: how much wood is left under it, so that a board's thickness changes neither tongues nor the box's width",
		example: "spoilboard", why: "most machines are set to zero on the board"},
	{name: string(mill.SettingRegister), form: formSection, keys: registerKeys, without: "its defaults hold",
		doc:     "The two registration holes that locate a part when it is turned over",
		example: "{place: waste, diameter: 6}"},
	{name: string(mill.SettingTabs), form: formSection, keys: tabKeys, without: "no tabs are left", doc: "Bridges that hold a part while it is cut out, on edges that no other part bears on",
		example: "{width: 8, height: 1.5, spacing: 180}"},
	{name: "engrave", form: formSection, words: []string{yes, no}, keys: engraveKeys, without: "parts have no number on them",
		doc:     "The number of a part, engraved where it does not show in the box: below the bottom's groove, or on the underside of a bottom",
		example: "yes"},
	{name: string(mill.SettingOnionSkin), form: formLength, min: 0.1, max: maxClearance, doc: "What is left under the outline of small parts, to cut through by hand", without: "they are cut right through",
		example: "0.4"},
	{name: string(mill.SettingSmall), form: formLength, min: 1, max: 1000,
		fallback: mm(mill.UsualSmallPart(geom.Millimeter)), inInch: inch(mill.UsualSmallPart(geom.Inch)),
		doc:     "A part with less area than a square of this side is small",
		example: "120", why: "what vacuum or a few screws no longer hold well; common practice, no source"},
	{name: string(mill.SettingIntoSpoilboard), form: formLength, min: 0, max: maxClearance, fallback: "0", doc: "How far cuts that go through the board go on into the spoilboard",
		example: "0.2", why: "the spoilboard is not cut unless the shop wants it"},
	{name: string(mill.SettingPartSpacing), form: formLength, min: 0.5, max: 200, doc: "How far apart parts lie on a sheet, checked against what is cut beyond their edges", without: "as the sheets need it",
		example: "26"},
}

var engraveKeys = []key{
	{name: "depth", form: formLength, min: 0.05, max: 2, fallback: mm(mill.DefaultEngraving), doc: "How deep it is",
		example: "0.5", why: "enough to read, too little to weaken a part; common practice, no source"},
	{name: "height", form: formLength, min: 1, max: 100, doc: "How high its figures are", without: "five diameters of the bit, at least 6 mm, or what there is room for",
		example: "8"},
	{name: "bit", form: formName, doc: "The bit that engraves, and cuts nothing else", without: "the narrowest",
		example: "small"},
}

var reliefWords = []string{string(mill.ReliefDogbone), string(mill.ReliefTBone), string(mill.ReliefNone)}

// ReliefOthers is the entry for operations that have none of their own.
const ReliefOthers = "others"

var reliefKeys = func() []key {
	keys := []key{{name: ReliefOthers, form: formWord, words: reliefWords, fallback: string(mill.ReliefDogbone),
		doc:     "Of all operations that are not named",
		example: string(mill.ReliefTBone), why: "it takes the least wood that lets a square corner in"}}
	for _, operation := range mill.Relieved {
		keys = append(keys, key{name: operation, form: formWord, words: reliefWords, doc: "Of every " + operation, without: "as others",
			example: string(mill.ReliefTBone)})
	}
	return keys
}()

var registerKeys = []key{
	{name: "place", form: formWord, words: []string{string(mill.PlaceWaste), string(mill.PlaceCenterline)}, fallback: string(mill.PlaceWaste),
		doc:     "waste: beyond both ends of the part; centerline: on the part, on the axis about which it is turned over",
		example: "centerline", why: "holes in the waste leave no mark on the part"},
	{name: "diameter", form: formLength, min: minCutter, max: maxCutter, doc: "The diameter of the holes", without: "6 mm, with units: in 1/4 in, or that of the narrowest bit that reaches so deep if that is more",
		example: "8"},
	{name: "distance", form: formLength, min: 1, max: maxSize, doc: "From the part's edge to the middle of a hole", without: "as near as the cuts allow, or a quarter of the part's width on the centerline",
		example: "16"},
}

var tabKeys = []key{
	{name: "width", form: formLength, min: 0.5, max: 100,
		fallback: mm(mill.UsualTabWidth(geom.Millimeter)), inInch: inch(mill.UsualTabWidth(geom.Inch)),
		doc:     "How much of the edge a tab holds",
		example: "8", why: "wide enough to hold, narrow enough to cut with a knife; common practice, no source"},
	{name: "height", form: formLength, min: 0.1, max: maxSetting,
		fallback: mm(mill.UsualTabHeight(geom.Millimeter)), inInch: inch(mill.UsualTabHeight(geom.Inch)),
		doc:     "How thick a tab is",
		example: "1.5", why: "thick enough to hold, thin enough to trim flush; common practice, no source"},
	{name: "spacing", form: formLength, min: 10, max: maxSize,
		fallback: mm(mill.UsualTabApart(geom.Millimeter)), inInch: inch(mill.UsualTabApart(geom.Inch)),
		doc:     "From one tab to the next",
		example: "180", why: "about a hand apart; common practice, no source"},
	{name: "as", form: formWord, words: []string{tabSlots, tabMarks}, fallback: tabSlots,
		doc:     "slots: the outline stops above the tabs, and slots between them go right through; marks: the outline goes right through, and the layer TABS shows where a program that makes tabs of its own is to put them",
		example: "marks", why: "the drawing then holds the part by itself, whatever program reads it"},
}

// tabSlots and tabMarks are how tabs are drawn.
const tabSlots, tabMarks = "slots", "marks"

var joineryKeys = []key{
	{name: string(joinery.SettingFenceDistance), form: formLength, min: minSetting, max: maxSetting,
		doc: "From the edge of a part to its dado or groove", without: "half the measured thickness of the box front",
		example: "6.2"},
	{name: string(joinery.SettingCutterHeight), form: formLength, min: minSetting, max: maxSetting,
		doc: "The depth of every cut", without: "half the measured thickness of the sides",
		example: "6"},
	{name: string(joinery.SettingGrooveEnds), form: formWord, words: []string{string(joinery.GrooveStopped), string(joinery.GrooveThrough), string(joinery.GroovePlugged)},
		doc:     "stopped: the groove of the bottom ends inside the dados of the sides, which a saw cannot do; through: it shows at the ends; plugged: it runs through there, and plugs of a size that is listed close it",
		without: "stopped for a CNC router, else through",
		example: "through"},
	{name: string(joinery.SettingBottomFit), form: formWord, fallback: string(joinery.BottomAuto),
		words: []string{string(joinery.BottomAuto), string(joinery.BottomGroovedIn), string(joinery.BottomFlush), string(joinery.BottomSlideIn), string(joinery.BottomFielded), string(joinery.BottomApplied), string(joinery.BottomCleats)},
		doc: "grooved-in: the bottom at its full thickness, in grooves all round; flush: on a tongue, level with the bottom edges; slide-in: grooved into sides and box front, under a back that ends above it; " +
			"fielded: slid in so, and thicker than the groove, on a tongue that a rabbet on its underside leaves; " +
			"applied: from below, as large as the box; cleats: from above, on strips along the insides of sides, box front and back; auto: grooved-in where the groove takes it, else flush",
		example: "grooved-in", why: "a thin bottom is held whole, a thick one on a tongue, with the same cutter"},
	{name: string(joinery.SettingBottomHeight), form: formLength, min: minSetting, max: maxSize,
		doc: "From the bottom edges up to the bottom's groove, which is then a setup of its own", without: "the fence distance",
		example: "26"},
	{name: string(joinery.SettingBottomClearance), form: formLength, min: 0, max: maxBottomClearance,
		fallback: mm(joinery.UsualBottomClearance(geom.Millimeter)), inInch: inch(joinery.UsualBottomClearance(geom.Inch)),
		doc:     "How much smaller the bottom is than its grooves from side to side, in all",
		example: "3", why: "sheet bottoms hardly move; 1 mm at each side lets the box close. Common practice, no source"},
	{name: string(joinery.SettingBottomClearanceDepth), form: formLength, min: 0, max: maxBottomClearance,
		doc: "The same from front to back; of a slide-in bottom all of it is at the box front", without: "as bottom-clearance",
		example: "3"},
	{name: string(joinery.SettingDadoClearance), form: formLength, min: 0, max: maxClearance, fallback: mm(joinery.DefaultDadoClearance),
		doc:     "How much wider than the tongues the dados are made, by a router or by hand",
		example: "0.2", why: "the middle of what is right, so that boards may be thicker or thinner"},
	{name: string(joinery.SettingGrooveClearance), form: formLength, min: 0, max: maxClearance, fallback: mm(joinery.DefaultGrooveClearance),
		doc:     "How much wider than the bottom's thickness the grooves are made, by a router or by hand",
		example: "0.3", why: "a dry bottom slides in by hand; common practice, no source"},
	{name: string(joinery.SettingGlueSpace), form: formLength, min: 0, max: maxClearance, fallback: mm(0),
		doc:     "How much deeper the dados are than the tongues are long",
		example: "0.2", why: "on a saw the dados would need a second cutter height"},
	{name: "faces", form: formWord, words: []string{anyFaces, oneFace}, fallback: anyFaces,
		doc:     "one: a drawer that names no joint gets a corner that is cut only from the inside faces, so that no part is turned over on the router",
		example: "one", why: "a corner that is cut from both faces is the stronger one"},
}

// The words for faces.
const (
	anyFaces = "any"
	oneFace  = "one"
)

var dxfKeys = []key{
	{name: "version", form: formWord, words: []string{"R2000", "R12"}, fallback: "R2000", doc: "The version of the DXF format",
		example: "R12", why: "it says its units and is read by nearly everything; R12 is for older programs"},
	{name: "units", form: formWord, words: []string{"mm", "in"}, doc: "The unit of the drawings", without: "the units of the job",
		example: "in"},
	{name: "layers", form: formPattern, words: LayerTokens, needs: "{operation}", fallback: "{operation}_{face}_{depth}",
		doc:     "The names of the layers that are cut, in capitals; {diameter} is that of holes, and T{tool} is the same as {tool}",
		example: "\"{operation}_{depth}\"", why: "operation, face and depth are what an operator assigns bits by"},
	{name: "elevation", form: formWord, words: []string{yes, no}, fallback: no,
		doc:     "yes: what is cut also lies at its depth, for programs that read heights: the floor of a cut is its elevation, and the way up to the face its thickness; cuts of different depths may then share a layer",
		example: "yes", why: "many programs expect flat drawings"},
	{name: "order", form: formWords,
		words: []string{"register", "drill", "mortise", "dado", "groove", "rabbet", "cutout"},
		doc:   "The operations that are cut first, in this order; the outline is always the last", without: "registration holes, drills, pockets, cutouts, the outline",
		example: "[groove, dado]"},
	{name: "split", form: formWord, words: []string{splitNone, splitCutter}, fallback: splitNone,
		doc:     "cutter: beside each drawing a file for each change of bit, for machines whose bits are changed by hand, numbered in the order of cutting",
		example: "cutter", why: "machines that change their bits read one file"},
	{name: "notes", form: formWord, words: []string{notesDrawn, notesNone}, fallback: notesDrawn,
		doc:     "none leaves out what is drawn beside a part: LABEL and SCALE",
		example: "none", why: "a label and a square to measure prevent mistakes"},
	{name: "files", form: formPattern, words: FileTokens, needs: "{part}", fallback: "{job}_{part}_{thickness}_{quantity}_{units}",
		doc:     "The names of the drawings, without their ending",
		example: "\"{part}_{thickness}\"", why: "a file on a stick then says what it is"},
}

// oneT takes the T before {tool} out of a pattern: the number of a tool has its own.
func oneT(pattern string) string { return tBeforeTool.ReplaceAllString(pattern, "$1{tool}") }

var tBeforeTool = regexp.MustCompile(`(^|[^A-Za-z0-9])[Tt]\{tool\}`)

// PreviewDesigned and PreviewMilled are what the solids of previews show.
const PreviewDesigned, PreviewMilled = "designed", "milled"

// CADStep is the format of exact solids.
const CADStep = "step"

// splitNone and splitCutter are how drawings are split into files.
const splitNone, splitCutter = "none", "cutter"

// notesDrawn and notesNone are whether something is drawn beside a part.
const notesDrawn, notesNone = "drawn", "none"

// The words of the two patterns.
var (
	LayerTokens = []string{"{operation}", "{face}", "{depth}", "{cutter}", "{tool}", "{stock}", "{diameter}"}
	FileTokens  = []string{"{job}", "{part}", "{thickness}", "{quantity}", "{units}"}
)
