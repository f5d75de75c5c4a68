package page

import (
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// table is a table as the page takes it.
type table struct {
	Title   string   `json:"title"`
	Columns []column `json:"columns"`
	Rows    [][]cell `json:"rows"`
}

type column struct {
	Title string `json:"title"`
	Right bool   `json:"right,omitempty"` // flush right
}

type cell struct {
	Text  string        `json:"text"`
	Level present.Level `json:"level,omitempty"`
}

// shown is a table under a title.
func shown(title string, t present.Table) table {
	out := table{Title: title, Rows: make([][]cell, len(t.Rows))}
	for i, head := range t.Titles() {
		out.Columns = append(out.Columns, column{head, t.Columns[i].Right})
	}
	for i, row := range t.Rows {
		for _, c := range row {
			out.Rows[i] = append(out.Rows[i], cell(c))
		}
	}
	return out
}

// openingOf is the opening that a drawer stands in, as it governs; nil where it is in none.
func openingOf(b batch.Batch, drawer int) *joinery.Size {
	for _, k := range b.Banks {
		if slices.Contains(k.Drawers, drawer) {
			return &k.Plan.Opening
		}
	}
	return nil
}

// fitTables are what the joints of one drawer will do, with its sizes beside those of the opening
// that it stands in, if it does.
func fitTables(b batch.Batch, all record.Forecast, in *joinery.Size) []table {
	u := b.Units
	f, d := all.Drawers[0], b.Drawers[0]
	size := func(mm float64) string { return words.Size(mm, u) }
	box := present.NewTable(present.Words(""), present.Numbers("width"), present.Numbers("height"),
		present.Numbers("depth"))
	box.Add("outside", size(d.Outside.Width), size(d.Outside.Height), size(d.Outside.Depth))
	box.Add("clear inside", size(d.Inside.Width), size(d.Inside.Height), size(d.Inside.Depth))
	if in != nil {
		box.Add("its opening, at the least", size(in.Width), size(in.Height), size(in.Depth))
	}
	list := []table{
		shown("The box, "+u.String(), box),
		shown(f.Drawer+": "+f.Text, present.FitTable(f.Fit, u)),
		shown("Boards that this reckons with", present.BoardTable(all.Boards, u)),
	}
	if all.Log != nil {
		title := "What the log shows"
		if said := present.LogLines(all.Log); len(said) > 0 {
			title += ". " + strings.Join(said, " ")
		}
		list = append(list, shown(title, present.LogTable(all.Log, u)))
	}
	return list
}

// knownOf are the measures of a drawer that has its shape, as its picture has them.
func knownOf(d batch.Drawer, u geom.Unit) *table {
	var list []record.Fit
	for _, c := range d.Judged() {
		list = append(list, record.FitAsSet(d.Spec.Name, c))
	}
	if len(list) == 0 {
		return nil
	}
	t := shown("Fit of "+d.Spec.Name+", "+u.String(), present.SetTable(list, u))
	return &t
}

// partTables are the cut list, a table for each stock, and what is said of blanks.
func partTables(b batch.Batch) (list []table, notes []string) {
	groups, blanks := record.CutListOf(b)
	for _, s := range present.CutList(groups, blanks, b.Units) {
		list = append(list, shown(s.Stock+", "+s.Thickness+" thick",
			s.Table.Pick(present.NumberColumn, "parts", "pieces", "length", "width",
				"grain", "cuts", "banding", s.Setting)))
		notes = append(notes, s.Blanks...)
	}
	return list, notes
}

// setupTables are the settings that serve the drawers.
func setupTables(b batch.Batch) (list []table) {
	for _, t := range present.SettingTables(record.Setups(b), b.Units) {
		columns := []string{"machine", "cutter", t.Fence, t.Height, "drawers"}
		if t.Has(present.CannotCut) {
			columns = slices.Insert(columns, len(columns)-1, present.CannotCut)
		}
		list = append(list, shown("Settings", t.Pick(columns...)))
	}
	return list
}

// buyTables are what to buy.
func buyTables(b batch.Batch, p sheets.Plan) []table {
	return []table{shown("To buy", present.BuyTable(record.ToBuy(b, p)))}
}
