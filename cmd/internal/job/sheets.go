package job

import (
	"fmt"
	"math"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/breakdown"
	"drawerwright/geom/mill"
	"drawerwright/geom/sheet"
)

// kept is the smallest offcut that is usually kept in a unit, as a job file has it.
func kept(u geom.Unit) string {
	size := sheet.UsualKept(u)
	return geom.LengthOf(size[0]).Text(u) + " x " + geom.LengthOf(size[1]).Text(u)
}

// The words for how parts are cut from sheets.
const (
	MethodGuillotine = "guillotine"
	MethodFree       = "free"
)

// The words for which layout is taken.
const (
	PreferSettings = "few-settings"
	PreferTime     = "little-time"
	PreferOffcut   = "large-offcut"
	PreferSheet    = "sheet-for-time"
)

// The words for how the first cuts of a sheet run.
const (
	FirstRip      = "rip"
	FirstCrosscut = "crosscut"
)

// timesAtSaw are what a shop can say of its work at the saw.
var timesAtSaw = []struct {
	name, doc string
	of        func(*breakdown.Times) *int
}{
	{"setting", "Setting fence or stop, with a test cut that is measured",
		func(t *breakdown.Times) *int { return &t.Setting }},
	{"guide", "Measuring, laying and clamping a guide", func(t *breakdown.Times) *int { return &t.Guide }},
	{"cut", "What one cut takes", func(t *breakdown.Times) *int { return &t.Cut }},
	{"turn", "Turning a board, or fetching it, and laying it against the fence",
		func(t *breakdown.Times) *int { return &t.Turn }},
	{"helper", "What a cut takes longer with a board that needs two people",
		func(t *breakdown.Times) *int { return &t.Helper }},
}

var timeKeys = func() (keys []key) {
	for _, k := range timesAtSaw {
		usual := breakdown.UsualTimes
		keys = append(keys, key{name: k.name, form: formMeasure, measures: periods, max: maxTime, doc: k.doc,
			fallback: fmt.Sprintf("%d s", *k.of(&usual)), example: fmt.Sprintf("%d s", *k.of(&usual)/2), why: noSource})
	}
	return keys
}()

var sheetKeys = []key{
	{name: "method", form: formWord, words: []string{MethodGuillotine, MethodFree}, doc: "How parts are cut from sheets: by cuts from edge to edge as saws make them, or each by itself",
		without: "free where a router cuts all parts of a stock, else guillotine",
		example: "guillotine"},
	{name: "stages", form: formCount, min: 2, max: maxStages, doc: "In how many stages a saw takes a sheet apart, each at a right angle to the one before", without: "as many as it takes",
		example: "3", with: "method: guillotine"},
	{name: "first-cuts", form: formWord, words: []string{FirstRip, FirstCrosscut},
		doc: "How the first cuts of a sheet run at the saw: along its longer side (of a square one, along the " +
			"grain), or across it",
		without: "as it costs least, then as `prefer` says", example: "rip", with: "method: guillotine",
		why: "a long sheet is hard to crosscut on a table saw, and a wide one is past the fence"},
	{name: "prefer", form: formWord, words: []string{PreferSettings, PreferTime, PreferOffcut, PreferSheet},
		fallback: PreferSettings,
		doc: "Which of the layouts that cost as little a saw cuts: with the fewest settings of fence, stop and " +
			"guide, in the least time, or with the largest offcut; sheet-for-time takes a sheet more where that " +
			"saves " + fmt.Sprint(sheet.WorthSheet/60) + " minutes at the saw",
		example: "large-offcut", why: "each setting is a place for a mistake; " + noSource},
	{name: "times", form: formSection, keys: timeKeys, without: "usual times hold",
		doc: "What work at the saw takes in the shop, by which minutes are told and layouts chosen", why: noSource,
		example: "{setting: 2 min, cut: 30 s}"},
	{name: "kerf", form: formLength, min: 0.5, max: maxSheetKerf, doc: "What is lost between parts: the saw's kerf, or the bit with the gap it needs", without: both(sheet.UsualKerf) + " for saws; for routers the bit or the overcut and " + mm(mill.MinWaste),
		example: "3.2"},
	{name: "trim", form: formLength, max: maxTrim, doc: "What is cut off each edge of a sheet, or left round the parts by a router", without: both(sheet.UsualTrim) + " for saws; for routers what bit and overcut take, " + mm(mill.MinWaste) + " and what the sheets may be short",
		example: "5"},
	{name: "flip-on", form: formWord, words: []string{FlipOnPins, FlipOnThree, FlipOnStops}, fallback: FlipOnPins,
		doc:     "What locates a sheet that is turned over to have its other face cut: pins near both ends, a third one in the middle of the upper edge too, or stops at its lower edge and at one end, without holes",
		example: "three-pins", why: "two pins place a sheet both ways"},
	{name: "pin-distance", form: formLength, min: 1, max: maxTrim, doc: "From the end of the shortest sheet to the middle of a pin", without: "the radius of the hole and " + mm(sheet.PinWeb),
		example: "12"},
	{name: "min-offcut", form: formSize, sides: []string{"longer", "shorter"}, min: minOffcut, max: maxSize,
		fallback: kept(geom.Millimeter), inInch: kept(geom.Inch),
		doc:     "The smallest offcut that the shop keeps",
		example: "400 x 150", why: "shorter or narrower than that is seldom used; common practice, no source"},
	{name: "max-weight", form: formMeasure, measures: loads, min: minMaxWeight, max: maxLoad, fallback: fmt.Sprintf("%g kg", sheet.UsualMaxWeight),
		doc:     "The heaviest board that one person puts onto a saw; a heavier sheet is first cut in two where it lies",
		example: "30 kg", why: "what one person lifts with care; common practice, no source"},
}

var sheetSizeKeys = []key{
	{name: "sheet", form: formSize, sides: []string{"length", "width"}, required: true, min: minSize, max: maxSize, doc: "Its size, the grain as that of the stock",
		example: "1525 x 760"},
	{name: "price", form: formPrice, min: 0, max: maxPrice, doc: "The price of one, in any currency", without: "it costs nothing",
		example: "34", with: "sheet: 1525 x 760"},
	{name: "count", form: formCount, min: 1, max: maxSheetCount, doc: "How many there are", without: "as many as it takes",
		example: "2", with: "sheet: 1525 x 760"},
	{name: "batch", form: formTitle, doc: "The batch that they were made in, for parts that match", without: "the batch has no name",
		example: "April", with: "sheet: 1525 x 760"},
}

// The words for what a sheet is put down on when it has been turned over.
const (
	FlipOnPins  = "pins"
	FlipOnThree = "three-pins"
	FlipOnStops = "stops"
)

var keepOutKeys = []key{
	{name: "at", form: formSize, sides: []string{"x", "y"}, required: true, min: -maxSize, max: maxSize, doc: "Its lower left corner, from that of the sheet as its drawing shows it before it is turned over",
		example: "0 x 700", with: "size: 40 x 80"},
	{name: "size", form: formSize, sides: []string{"length", "width"}, required: true, min: 1, max: maxSize, doc: "Its size along x and y",
		example: "40 x 80", with: "at: 0 x 700"},
}

// The words for parts that have to look alike.
const (
	MatchBatch    = "batch"
	MatchSequence = "sequence"
)

const (
	maxStages             = 9
	maxTime               = 3600     // s
	maxSheetKerf, maxTrim = 100, 200 // mm
	maxSheetSizes         = 20       // of one stock: more than any list of a mill
	maxSheetCount         = 100_000  // of one size
	maxKeepOuts           = 20       // of one stock
	minOffcut             = 10       // mm: less is a splinter
	minMaxWeight          = 1        // kg
	minReachOfSaw         = 100      // mm: the smallest saws for benches
)

// Sheets are the rules by which parts are laid out on sheets.
type Sheets struct {
	Method    string     // MethodGuillotine, MethodFree or "", which leaves it to the machine
	Prefer    string     // PreferSettings, PreferTime, PreferOffcut or PreferSheet
	Stages    int        // 0 for any number
	FirstCuts string     // FirstRip, FirstCrosscut or "" for either
	Kerf      float64    // mm; 0 leaves it to the machine
	Trim      float64    // mm; 0 leaves it to the machine, unless it is written
	NoTrim    bool       // 0 is written
	FlipOn    string     // FlipOnPins, FlipOnThree or FlipOnStops
	Pins      float64    // mm from the end of the shortest sheet to a pin; 0 is chosen
	MinOffcut [2]float64 // mm, the longer and the shorter side of the least offcut
	MaxWeight float64    // kg
	Times     breakdown.Times
	Of        map[string]StockSheets
}

// StockSheets are the sizes of the sheets of one stock, the length along the grain. The
// first one is that of the stock itself.
type StockSheets struct {
	Sizes []SheetSize
	Match string // MatchBatch, MatchSequence or "", for fronts
	// GrainAcross says that the file writes the width of a sheet first: the grain runs along
	// its second number.
	GrainAcross bool
	// Measured are its sheets, where each was measured, as they are cut; LotOf is then the stock of the file.
	Measured []MeasuredSheet
	LotOf    string
	// Short is by how much sheets may be shorter and narrower than their size, in mm.
	Short [2]float64
	// KeepOut are the areas that nothing is cut in, as the sheet lies at first.
	KeepOut []geom.Rect
}

// SheetSize is a size that sheets come in.
type SheetSize struct {
	Name          string  // empty for that of the stock
	Length, Width float64 // mm
	Price         float64
	Count         int // 0 for as many as it takes
	Batch         string
}

func (b *builder) sheets() Sheets {
	get := b.sub(b.root, "sheets", sheetKeys).values
	s := Sheets{Method: get["method"].text, Prefer: get["prefer"].text, FirstCuts: get["first-cuts"].text,
		Stages: int(get["stages"].number), Kerf: get["kerf"].mm(0), Trim: get["trim"].mm(0),
		FlipOn: get["flip-on"].text, Pins: get["pin-distance"].mm(0),
		MinOffcut: [2]float64{get["min-offcut"].mm(0), get["min-offcut"].mm(1)}, MaxWeight: get["max-weight"].number, Of: make(map[string]StockSheets)}
	times := b.sub(b.sub(b.root, "sheets", sheetKeys), "times", timeKeys).values
	for _, k := range timesAtSaw {
		*k.of(&s.Times) = int(math.Round(times[k.name].number))
	}
	s.NoTrim = get["trim"].given && s.Trim == 0
	if s.FlipOn == FlipOnStops && get["pin-distance"].given {
		b.fail(CodeNoEffect, get["pin-distance"].at, "delete it, or write `flip-on: pins`",
			"pin-distance is for pins, and sheets are turned over on stops")
	}
	if s.MinOffcut[0] < s.MinOffcut[1] {
		s.MinOffcut[0], s.MinOffcut[1] = s.MinOffcut[1], s.MinOffcut[0]
	}
	if s.Method == MethodFree && s.Stages > 0 {
		b.fail(CodeNoEffect, get["stages"].at, "delete it, or write `method: guillotine`",
			"stages are those of a saw, and the way is free")
	}
	if s.Method == MethodFree && s.FirstCuts != "" {
		b.fail(CodeNoEffect, get["first-cuts"].at, "delete it, or write `method: guillotine`",
			"first-cuts are those of a saw, and the way is free")
	}
	if get["prefer"].given && (s.Method == MethodFree || s.Stages > 0) {
		b.fail(CodeNoEffect, get["prefer"].at, "delete it, or let a saw cut in any number of stages",
			"prefer is for layouts that a saw takes apart in any number of stages")
	}
	for _, of := range b.root.values["stock"].sections {
		s.Of[of.name] = b.sheetSizes(of)
	}
	return s
}

func (b *builder) sheetSizes(of *section) StockSheets {
	if get := of.values; !get["sheet"].given && !b.lost && !of.meant["sheet"] {
		for _, name := range strings.Fields("count batch other-sheets match min-sheet keep-out readings-per-sheet") {
			if v := get[name]; v.given {
				b.fail(CodeNoEffect, v.at, "write `sheet: length x width` for the stock, or delete it", "%s is for sheets, and the stock %s has no size of them", name, quote(of.name))
			}
		}
	}
	out := StockSheets{Sizes: sheetSizes(of), Match: of.values["match"].text, Short: b.short(of), GrainAcross: of.values["grain"].text == string(grainWidth)}
	if out.Measured = b.measured(of); len(out.Measured) > 0 && len(out.Sizes) > 0 {
		out.Sizes[0].Count = len(out.Measured)
	}
	if of.lot != nil {
		out.LotOf = of.lot.of
	}
	for _, k := range of.values["keep-out"].sections {
		at, size := k.values["at"], k.values["size"]
		corner := geom.Point{X: at.mm(0), Y: at.mm(1)}
		out.KeepOut = append(out.KeepOut, geom.Rect{Min: corner, Max: geom.Point{X: corner.X + size.mm(0), Y: corner.Y + size.mm(1)}})
	}
	return out
}

// short is by how much the sheets of a stock may be smaller than their size, along the
// grain first.
func (b *builder) short(of *section) [2]float64 {
	size, least := of.values["sheet"], of.values["min-sheet"]
	if !least.given || len(least.lengths) < 2 || len(size.lengths) < 2 {
		return [2]float64{sheet.UsualShort, sheet.UsualShort}
	}
	var short [2]float64
	for i := range short {
		short[i] = size.mm(i) - least.mm(i)
		if short[i] < 0 {
			b.fail(CodeOutOfRange, least.at, "write what the smallest sheet measures, and its nominal size under `sheet`", "the shortest sheet is larger than sheet: %s and %s", least.lengths[i].Text(b.units), size.lengths[i].Text(b.units))
			return [2]float64{}
		}
		if short[i] > sheet.MaxShort {
			b.fail(CodeOutOfRange, least.at, "write the size that it is under `sheet`, or add it under `other-sheets:`", "the shortest sheet is %s smaller than sheet: over %s it is another size", geom.LengthOf(short[i]).Text(b.units), mm(sheet.MaxShort))
			return [2]float64{}
		}
	}
	if of.values["grain"].text == string(grainWidth) {
		short[0], short[1] = short[1], short[0]
	}
	return short
}

// sheetSizes are the sizes that a stock says its sheets come in.
func sheetSizes(of *section) (list []SheetSize) {
	size := func(name string, v map[string]value) {
		z := SheetSize{Name: name, Length: v["sheet"].mm(0), Width: v["sheet"].mm(1), Price: v["price"].number, Count: int(v["count"].number), Batch: v["batch"].text}
		if of.values["grain"].text == string(grainWidth) {
			z.Length, z.Width = z.Width, z.Length
		}
		if z.Length > 0 && z.Width > 0 {
			list = append(list, z)
		}
	}
	size("", of.values)
	for _, more := range of.values["other-sheets"].sections {
		size(more.name, more.values)
	}
	return list
}
