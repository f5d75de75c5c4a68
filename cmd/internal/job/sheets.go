package job

// The words for how parts are cut from sheets.
const (
	SheetsGuillotine = "guillotine"
	SheetsFree       = "free"
)

var sheetKeys = []key{
	{name: "way", form: formWord, words: []string{SheetsGuillotine, SheetsFree}, doc: "How parts are cut from sheets: by cuts from edge to edge as saws make them, or each by itself",
		without: "free where a router cuts all parts of a stock, else guillotine"},
	{name: "stages", form: formCount, min: 2, max: maxStages, doc: "In how many stages a saw takes a sheet apart, each at a right angle to the one before", without: "as many as it takes"},
	{name: "kerf", form: formLength, min: 0.5, max: maxSheetKerf, doc: "What is lost between parts: the saw's kerf, or the bit with the gap it needs", without: "3.2 mm for saws, what the bits need for routers"},
	{name: "trim", form: formLength, max: maxTrim, fallback: "5 mm", doc: "What is cut off each edge of a sheet before parts are cut from it"},
}

const (
	maxStages             = 9
	maxSheetKerf, maxTrim = 100, 200 // mm
)

// Sheets are the rules by which parts are laid out on sheets.
type Sheets struct {
	Way    string  // SheetsGuillotine, SheetsFree or "", which leaves it to the machine
	Stages int     // 0 for any number
	Kerf   float64 // mm; 0 leaves it to the machine
	Trim   float64 // mm
}

func (b *builder) sheets() Sheets {
	get := b.sub(b.root, "sheets", sheetKeys).values
	s := Sheets{Way: get["way"].text, Stages: int(get["stages"].number), Kerf: get["kerf"].mm(0), Trim: get["trim"].mm(0)}
	if s.Way == SheetsFree && s.Stages > 0 {
		b.fail(CodeNoEffect, get["stages"].at, "delete it, or write `way: guillotine`", "stages are those of a saw, and the way is free")
	}
	return s
}
