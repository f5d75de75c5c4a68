package page

import (
	"context"
	"net/http"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
)

// sheets gives the layout of the parts on sheets. A tab gives its request up when the job
// changes, which ends the search.
func (p *Page) sheets(w http.ResponseWriter, r *http.Request) {
	var asked struct {
		Text string `json:"text"`
		Unit string `json:"unit"`
	}
	if !read(w, r, &asked) {
		return
	}
	ctx, stop := context.WithTimeout(r.Context(), sheetTime)
	defer stop()
	done, ok := p.soundWork(ctx, w, asked.Text)
	if !ok {
		return
	}
	plan := done.shownIn(asked.Unit).Plan
	laid := record.SheetsOf(plan)
	cuts, said := make([]table, len(laid.Stocks)), make([]string, len(laid.Stocks))
	for i, k := range laid.Stocks {
		said[i] = present.SheetsSummary(k, plan.Units) + "; " + present.SheetsHow(k, plan.Units)
		cuts[i] = shown("Cuts", present.CutTable(k.Cuts, plan.Units))
	}
	reply(w, http.StatusOK, struct {
		record.Sheets
		Cuts []table  `json:"cuts"` // of each stock, in their order
		Said []string `json:"said"`
		// Numbers are those of the parts, by their names.
		Numbers map[string]int `json:"numbers"`
	}{laid, cuts, said, numbersOf(done.Batch)})
}

// numbersOf are the numbers of all parts by their names.
func numbersOf(b batch.Batch) map[string]int {
	numbers := make(map[string]int)
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			numbers[p.Name] = p.Number
		}
	}
	return numbers
}
