package page

import (
	"encoding/csv"
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

// table is rows of text under heads; a column whose head begins with > is flush right.
type table struct {
	Title string     `json:"title"`
	Head  []string   `json:"head"`
	Rows  [][]string `json:"rows"`
}

// fitTables are what the joints of one drawer will do.
func fitTables(b batch.Batch) []table {
	u := b.Units
	number := func(v float64) string { return geom.LengthOf(v * u.MM()).Fixed(u) }
	// The dash stays with the number before it.
	span := func(r [2]float64) string {
		return strings.Replace(words.Span(r[0]*u.MM(), r[1]*u.MM(), u), " to ", "\u00a0– ", 1)
	}
	all := present.Forecasts(b)
	f := all.Drawers[0]
	fit := table{Title: f.Drawer + ": " + f.Said, Head: []string{"measure", ">as set " + u.String(), ">right from – to", ">likely", "", ">right of 1,000", ">at worst"}}
	for _, m := range f.Fit {
		fit.Rows = append(fit.Rows, []string{m.Words, number(m.Nominal), span(m.Limit), span(m.Likely), m.Verdict, m.Of1000, span(m.Worst)})
	}
	d := b.Drawers[0]
	size := func(mm float64) string { return geom.LengthOf(mm).Number(u) }
	box := table{Title: "The box, " + u.String(), Head: []string{"", ">width", ">height", ">depth"}, Rows: [][]string{
		{"outside", size(d.Outside.Width), size(d.Outside.Height), size(d.Outside.Depth)},
		{"clear inside", size(d.Inside.Width), size(d.Inside.Height), size(d.Inside.Depth)},
	}}
	boards := table{Title: "Boards that this reckons with, " + u.String(), Head: []string{"stock", ">thickness", ">least", ">most", "by"}}
	for _, one := range all.Boards {
		boards.Rows = append(boards.Rows, []string{one.Stock, number(one.Mean), number(one.Least), number(one.Most), one.Source()})
	}
	return []table{box, fit, boards}
}

// partTables are the cut list, a table for each stock.
func partTables(b batch.Batch) []table {
	head, rows := fromCSV(present.CutListCSV(b))
	column := func(row []string, name string) string { return row[slices.Index(head, name)] }
	pair := present.PairHead(batch.Merged(b))
	var list []table
	for _, row := range rows {
		title := column(row, "stock") + ", " + column(row, "thickness") + " " + column(row, "units") + " thick"
		if len(list) == 0 || list[len(list)-1].Title != title {
			list = append(list, table{Title: title, Head: []string{"part", ">pieces", ">length", ">width", "grain",
				"cuts", "banding", ">" + pair}})
		}
		t := &list[len(list)-1]
		parts := strings.ReplaceAll(column(row, "parts"), " ", " = ")
		t.Rows = append(t.Rows, []string{parts, column(row, "pieces"), column(row, "length"), column(row, "width"), column(row, "grain"), column(row, "cuts"), column(row, "banding"), column(row, "setting")})
	}
	return list
}

// setupTables are the settings that serve the drawers.
func setupTables(b batch.Batch) []table {
	u := b.Units
	number := func(v float64) string { return geom.LengthOf(v * u.MM()).Fixed(u) }
	var list []table
	routed := false
	for _, s := range record.Setups(b) {
		router := joinery.CutterKind(s.Machine) == joinery.Router
		if len(list) == 0 || router != routed {
			fence, height := present.SettingHeads(joinery.CutterKind(s.Machine))
			list = append(list, table{Title: "Settings, " + u.String(), Head: []string{"machine", ">cutter",
				">" + fence, ">" + height, "drawers"}})
			routed = router
		}
		t := &list[len(list)-1]
		t.Rows = append(t.Rows, []string{s.Machine, number(s.CutterWidth), number(s.FenceDistance), number(s.CutterHeight), words.Some(s.Drawers)})
	}
	return list
}

// buyTables are what to buy.
func buyTables(b batch.Batch, p sheets.Plan) []table {
	_, rows := fromCSV(present.BuyCSV(record.ToBuy(b, p)))
	return []table{{Title: "To buy", Head: []string{"kind", "name", ">quantity", "", ">cost"}, Rows: rows}}
}

// fromCSV reads one of the report's lists.
func fromCSV(data []byte) (head []string, rows [][]string) {
	all, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	if err != nil || len(all) == 0 {
		return nil, nil // never: it was written a moment ago
	}
	return all[0], all[1:]
}
