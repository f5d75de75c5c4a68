package readback

import (
	"fmt"
	"math"
	"regexp"
	"strings"
)

// laidStock is the layout of a stock in report.json and in sheets --json.
type laidStock struct {
	Stock, Summary string
	Pieces, Count  int
	Yield, Cost    float64
	Kerf, Trim     float64
	Sizes          []laidSize
	Sheets         []struct {
		Number, Count, Size int
		Placements          []struct{ Part string }
		Offcuts             []struct{ Length, Width float64 }
	}
	Unplaced []struct {
		Part  string
		Count int
	}
	Cuts           []struct{ Setting float64 }
	SettingChanges int `json:"setting_changes"`
}

type laidSize struct {
	Name          string
	Length, Width float64
	Offcut        bool
	Used          int
	Price         float64
}

// laid adds the facts of a layout, with what is added up from its sheets.
func (r *reading) laid(k laidStock) {
	r.count("layout", k.Stock, "sheets", k.Count)
	r.count("stock", k.Stock, "sheets", k.Count)
	r.count("stock", k.Stock, "pieces", k.Pieces)
	r.words("layout", k.Stock, "said", k.Summary)
	r.add("layout", k.Stock, "yield in %", fmt.Sprint(math.Round(1000*k.Yield)/10), 0.1)
	r.exact("layout", k.Stock, "kerf", k.Kerf)
	r.exact("layout", k.Stock, "trim", k.Trim)
	if k.Cost > 0 {
		r.money("layout", k.Stock, "cost", fmt.Sprint(k.Cost))
		r.money("stock", k.Stock, "cost", fmt.Sprint(k.Cost))
	}
	r.count("layout", k.Stock, "cuts", len(k.Cuts))
	for i, c := range k.Cuts {
		r.exact("saw cut", fmt.Sprint(k.Stock, " ", i+1), "setting", c.Setting)
	}
	if len(k.Cuts) > 0 {
		r.count("layout", k.Stock, "times that the fence is set", k.SettingChanges)
	}
	placed, used, offcuts := 0, 0, 0
	for _, s := range k.Sheets {
		placed, offcuts = placed+s.Count*len(s.Placements), offcuts+s.Count*len(s.Offcuts)
		r.count("layout", k.Stock, fmt.Sprint("pieces on sheet ", s.Number), len(s.Placements))
		if !k.Sizes[s.Size].Offcut {
			used += s.Count
		}
	}
	for _, l := range k.Unplaced {
		placed += l.Count
	}
	r.count("stock", k.Stock, "pieces", placed)
	r.count("layout", k.Stock, "sheets", used)
	r.count("layout", k.Stock, "offcuts", offcuts)
	cost := 0.0
	for _, z := range k.Sizes {
		if !z.Offcut {
			cost += float64(z.Used) * z.Price
		}
	}
	if cost > 0 {
		r.money("layout", k.Stock, "cost", fmt.Sprint(math.Round(cost*100)/100))
	}
}

func sheetsJSON(r *reading, text string) {
	var j struct{ Stocks []laidStock }
	r.decode(text, &j)
	for _, k := range j.Stocks {
		r.laid(k)
	}
}

var (
	summaryLine = regexp.MustCompile(`^(.+): (.+); (.+); yield (\S+) %(?:; cost (\S+))?$`)
	sheetsPart  = regexp.MustCompile(`(\d+) (sheet|offcut)s? of`)
	kerfLine    = regexp.MustCompile(`, kerf (.+?), trim (.+?) (?:mm|in)`)
	belowPieces = regexp.MustCompile(`^(no sheet holds|The search|Turn the sheet|Zero is|Nothing is cut|\d+ parts? (is|are) held)`)
	cutsLine    = regexp.MustCompile(`^(\d+) cuts?; (?:fence or stop is set (once|twice|(\d+) times)|neither fence nor stop is set|each is measured and marked)`)
)

// sheetSummary reads the line that sums up the layout of a stock.
func (r *reading) sheetSummary(line string) (stock string) {
	m := summaryLine.FindStringSubmatch(line)
	if m == nil {
		r.fail("no layout: %q", line)
	}
	stock = m[1]
	n := 0
	for _, s := range sheetsPart.FindAllStringSubmatch(m[2], -1) {
		if s[2] == "sheet" {
			n += whole(r, s[1])
		}
	}
	r.count("layout", stock, "sheets", n)
	r.words("layout", stock, "said", m[3])
	r.add("layout", stock, "yield in %", m[4], 0.1)
	r.money("layout", stock, "cost", m[5])
	return stock
}

// sheetsText reads what sheets prints.
func sheetsText(r *reading, text string) {
	s := r.scan(text)
	stock, pieces := "", make(map[string]int)
	for s.more() {
		line := s.line()
		switch {
		case summaryLine.MatchString(line):
			stock = r.sheetSummary(line)
		case kerfLine.MatchString(line):
			m := kerfLine.FindStringSubmatch(line)
			r.printed("layout", stock, "kerf", m[1])
			r.printed("layout", stock, "trim", m[2])
		case strings.HasPrefix(line, "sheet ") && strings.Contains(line, "pieces"):
			pieces[stock] += r.laidPieces(s.tableUntil(belowPieces.MatchString))
			continue
		case cutsLine.MatchString(line):
			r.cutsSummary(line, stock)
		case strings.HasPrefix(line, "no sheet holds "):
			pieces[stock] += whole(r, strings.Fields(line)[3])
		}
		s.at++
	}
	for of, n := range pieces {
		r.count("stock", of, "pieces", n)
	}
}

// cutsSummary reads how many cuts take a stock apart, and how often the fence is set.
func (r *reading) cutsSummary(line, stock string) {
	m := cutsLine.FindStringSubmatch(line)
	r.words("layout", stock, "cuts", m[1])
	times := m[3]
	if n, word := map[string]string{"once": "1", "twice": "2"}[m[2]]; word {
		times = n
	}
	if times == "" {
		times = "0" // no fence is set
	}
	r.words("layout", stock, "times that the fence is set", times)
}

var (
	alike  = regexp.MustCompile(`^\d+ \((\d+) alike\)`)
	pieces = regexp.MustCompile(`^(\d+) x (.+)$`)
)

// laidPieces adds up the pieces on all sheets of a stock.
func (r *reading) laidPieces(t printedTable) (n int) {
	times := 1
	for row := range t.each(r) {
		if name := t.get(r, row, "sheet"); name != "" {
			times = 1
			if m := alike.FindStringSubmatch(name); m != nil {
				times = whole(r, m[1])
			}
		}
		m := pieces.FindStringSubmatch(t.get(r, row, "pieces"))
		if m == nil {
			r.fail("no pieces: %q", row)
		}
		n += times * whole(r, m[1])
	}
	return n
}

// layoutCSV reads the place of every piece.
func layoutCSV(r *reading, text string) {
	placed, offcuts, used := make(map[string]int), make(map[string]int), make(map[[2]string]int)
	on := make(map[[2]string]int)
	r.csvRows(text, func(get func(string) string) {
		stock, n := get("stock"), whole(r, get("alike"))
		used[[2]string{stock, get("sheet")}] = n
		if get("kind") == "part" {
			placed[stock] += n
			on[[2]string{stock, get("sheet")}]++
		} else {
			offcuts[stock] += n
		}
	})
	for of, n := range on {
		r.count("layout", of[0], "pieces on sheet "+of[1], n)
	}
	sheets := make(map[string]int)
	for of, n := range used {
		sheets[of[0]] += n
	}
	for stock, n := range placed {
		r.count("stock", stock, "pieces", n)
		r.count("layout", stock, "sheets", sheets[stock])
		r.count("layout", stock, "offcuts", offcuts[stock])
	}
}

// cutsCSV reads the cuts in order.
func cutsCSV(r *reading, text string) {
	n := make(map[string]int)
	r.csvRows(text, func(get func(string) string) { n[get("stock")]++ })
	for stock, cuts := range n {
		r.count("layout", stock, "cuts", cuts)
	}
}
