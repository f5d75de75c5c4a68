package job

import "drawerwright/geom"

// The words for labels.
const (
	LabelsGrid = "grid"
	LabelsPage = "page"
	LabelsNone = "none"
)

var paperKeys = []key{
	{name: "size", form: formWord, words: []string{"A4", "Letter", "A3"}, doc: "The sheets that the packet and templates are printed on", without: "A4, with inches Letter",
		example: "A4"},
	{name: "labels", form: formWord, words: labelWords(), fallback: LabelsGrid,
		doc: "Labels for the pieces: a grid on every sheet, one a page, none, or a usual sheet of labels by columns and " +
			"rows (2x4, 2x7, 2x8, 3x7, 3x8 on A4; 2x3, 2x5, 2x7, 2x10, 3x10 on Letter), whose measures are common " +
			"practice: print one on plain paper first and hold it against yours",
		example: "3x8", why: "labels are cut from one sheet of stickers or paper"},
	{name: "label-columns", form: formCount, min: 1, max: maxLabelColumns, fallback: "3", doc: "How many labels stand beside each other on a sheet",
		example: "2", why: "with 7 rows they are 70 x 42 mm on A4, a usual sheet of labels"},
	{name: "label-rows", form: formCount, min: 1, max: maxLabelRows, fallback: "7", doc: "How many labels stand above each other on a sheet",
		example: "6", why: "see label-columns"},
}

// Labels that still have room for their words and code, on the smallest of the sheets.
const (
	maxLabelColumns = 4
	maxLabelRows    = 10
)

// Paper is how the packet is printed.
type Paper struct {
	Size          string      // A4, Letter or A3
	Labels        string      // LabelsGrid, LabelsPage or LabelsNone
	Columns, Rows int         // of a grid of labels
	Sheet         *LabelSheet // nil where labels are not for one
}

func (r *reader) paper(s *section) Paper {
	p := Paper{Size: s.values["size"].text, Labels: s.values["labels"].text, Columns: int(s.values["label-columns"].number), Rows: int(s.values["label-rows"].number)}
	if p.Size == "" {
		p.Size = "A4"
		if r.units == geom.Inch {
			p.Size = "Letter"
		}
	}
	if p.Sheet = r.labelSheet(s, p.Size); p.Sheet != nil {
		p.Columns, p.Rows = p.Sheet.Columns, p.Sheet.Rows
	}
	return p
}
