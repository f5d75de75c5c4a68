package readback

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
)

// PageAnswers are answers of the page: what it says for each of its lists, and the sheets.
type PageAnswers struct {
	Looks  []PageLook      `json:"looks"`
	Sheets json.RawMessage `json:"sheets"`
}

// PageLook is one answer and what was asked for.
type PageLook struct {
	Show   string          `json:"show"`
	Drawer string          `json:"drawer"`
	Answer json.RawMessage `json:"answer"`
}

type looked struct {
	Problems []warned
	More     int
	Failed   bool
	Said     string
	Answer   string
	Drawers  []struct {
		Name  string
		Count int
	}
	Width  *struct{ Opening, Said string }
	Tables []pageTable
	Notes  string
}

type pageTable struct {
	Title string
	Head  []string
	Rows  [][]string
}

// UnmarshalJSON takes the titles of the columns and the texts of the cells.
func (t *pageTable) UnmarshalJSON(data []byte) error {
	var all struct {
		Title   string
		Columns []struct{ Title string }
		Rows    [][]struct{ Text, Level string }
	}
	if err := json.Unmarshal(data, &all); err != nil {
		return err
	}
	t.Title = all.Title
	for _, c := range all.Columns {
		t.Head = append(t.Head, c.Title)
	}
	for _, row := range all.Rows {
		texts := make([]string, len(row))
		for i, c := range row {
			texts[i] = c.Text
		}
		t.Rows = append(t.Rows, texts)
	}
	return nil
}

// at is the place of the column under a head, which may end in a unit; below 0 without one.
func (t pageTable) at(head string) int {
	return slices.IndexFunc(t.Head, func(h string) bool {
		return h == head || h == head+" mm" || h == head+" in"
	})
}

// either is the first of some heads that the table has; empty without one.
func (t pageTable) either(heads ...string) string {
	for _, h := range heads {
		if t.at(h) >= 0 {
			return h
		}
	}
	return ""
}

// get is the cell of a row below a head.
func (t pageTable) get(r *reading, row []string, head string) string {
	i := t.at(head)
	if i < 0 || i >= len(row) {
		r.fail("%s: no column %q among %q", t.Title, head, t.Head)
	}
	return row[i]
}

var pageSaid = regexp.MustCompile(`^(\d+) kinds? of drawer, (\d+) box(?:es)?$`)

func page(r *reading, text string) {
	var all PageAnswers
	r.decode(text, &all)
	for _, look := range all.Looks {
		var l looked
		r.decode(string(look.Answer), &l)
		if l.Failed || l.More > 0 {
			r.fail("%s: not all is well", look.Show)
		}
		r.remarks(listed(l.Problems))
		m := pageSaid.FindStringSubmatch(l.Said)
		if m == nil {
			r.fail("says %q", l.Said)
		}
		r.words("total", "job", "answer", l.Answer)
		r.words("total", "job", "kinds", m[1])
		r.words("total", "job", "boxes", m[2])
		for _, d := range l.Drawers {
			r.count("box", d.Name, "count", d.Count)
		}
		if l.Width != nil {
			r.boxWidth(l.Width.Opening, l.Width.Said)
		}
		switch look.Show {
		case "fit":
			r.pageFit(l, look.Drawer)
		case "parts":
			r.pageParts(l)
		case "setups":
			r.pageSetups(l)
		case "buy":
			r.pageBuy(l)
		}
	}
	if len(all.Sheets) > 0 {
		sheetsJSON(r, string(all.Sheets))
	}
}

func (r *reading) pageFit(l looked, drawer string) {
	for _, t := range l.Tables {
		for _, row := range t.Rows {
			switch {
			case strings.HasPrefix(t.Title, "The box"):
				which, box := map[string]string{"outside": "outside", "clear inside": "inside"}[row[0]]
				if !box { // the opening that it stands in
					continue
				}
				for i, side := range []string{"width", "height", "depth"} {
					r.taped("box", drawer, which+" "+side, row[1+i])
				}
			case strings.HasPrefix(t.Title, drawer+": "):
				r.words("verdict", drawer, "said", strings.TrimPrefix(t.Title, drawer+": "))
				of := drawer + ": " + shortOf(t.get(r, row, "measure"))
				limits := t.get(r, row, "limits")
				r.limits("fit", of, limits, "limit from", "limit to")
				r.beside(of, limits, "nominal", t.get(r, row, "as set"))
				for _, measure := range []string{"likely", "worst"} {
					r.rangeBeside(of, limits, measure, t.get(r, row, measure))
				}
				r.words("fit", of, "verdict", t.get(r, row, "verdict"))
				r.words("fit", of, "right of 1,000", t.get(r, row, "right of 1,000"))
			case strings.HasPrefix(t.Title, "Boards"):
				r.printed("board", row[0], "mean", t.get(r, row, "thickness"))
				r.printed("board", row[0], "least", t.get(r, row, "least"))
				r.printed("board", row[0], "most", t.get(r, row, "most"))
			default:
				r.fail("an unknown table: %s", t.Title)
			}
		}
	}
}

var pageStock = regexp.MustCompile(`^(.+), (.+) (?:mm|in) thick$`)

func (r *reading) pageParts(l looked) {
	for _, t := range l.Tables {
		m := pageStock.FindStringSubmatch(t.Title)
		if m == nil {
			r.fail("no stock: %q", t.Title)
		}
		pieces := 0
		for _, row := range t.Rows {
			names := strings.Split(t.get(r, row, "parts"), ", ")
			first := names[0]
			r.words("group", first, "parts", strings.Join(names, ", "))
			r.words("group", first, "number", t.get(r, row, "no."))
			for _, what := range []string{"pieces", "cuts", "grain", "banding"} {
				r.words("group", first, what, t.get(r, row, what))
			}
			r.words("group", first, "setting", t.get(r, row, t.either(pairHeads...)))
			r.words("part", first, "stock", m[1])
			r.printed("part", first, "thickness", m[2])
			r.printed("part", first, "length", t.get(r, row, "length"))
			r.printed("part", first, "width", t.get(r, row, "width"))
			pieces += whole(r, t.get(r, row, "pieces"))
		}
		r.count("stock", m[1], "pieces", pieces)
	}
}

func (r *reading) pageBuy(l looked) {
	for _, t := range l.Tables {
		for _, row := range t.Rows {
			name := row[0] + " " + row[1]
			r.words("buy", name, "quantity", row[2])
			r.words("buy", name, "unit", row[3])
			r.money("buy", name, "cost", row[4])
		}
	}
}

func (r *reading) pageSetups(l looked) {
	for _, t := range l.Tables {
		for _, row := range t.Rows {
			for _, d := range strings.Split(t.get(r, row, "drawers"), ", ") {
				r.printed("corner", d, "cutter", t.get(r, row, "cutter"))
				r.printed("corner", d, "fence", t.get(r, row, t.either(fenceHead, edgeHead)))
				height, _, _ := strings.Cut(t.get(r, row, t.either(heightHead, deepHead)), " ")
				r.printed("corner", d, "height", height)
			}
		}
	}
	setupText(r, l.Notes)
}
