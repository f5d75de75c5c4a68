package report

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/nest"
)

// Sheets are the layouts of a job's parts on sheets. Lengths are in its unit.
type Sheets struct {
	Tool   string       `json:"tool"`
	Job    string       `json:"job"`
	Units  string       `json:"units"`
	Stocks []SheetStock `json:"stocks"`
}

// SheetStock is the parts of one stock on its sheets.
type SheetStock struct {
	Stock  string      `json:"stock"`
	Length float64     `json:"length"`
	Width  float64     `json:"width"`
	Way    string      `json:"way"`
	Stages int         `json:"stages"` // 0 for any number
	Kerf   float64     `json:"kerf"`
	Trim   float64     `json:"trim"`
	Pieces int         `json:"pieces"`
	Count  int         `json:"count"`
	Fewest int         `json:"fewest"` // no layout does with less
	Best   bool        `json:"best"`
	Said   string      `json:"said"`
	Yield  float64     `json:"yield"` // part of the sheets' area that is pieces
	Cost   float64     `json:"cost"`
	Whole  bool        `json:"whole"` // the search ended by itself
	Sheets []LaidSheet `json:"sheets"`
	Left   []Pieces    `json:"left"` // pieces that no sheet holds
}

// LaidSheet is one that parts are cut from, from its lower left corner.
type LaidSheet struct {
	Yield  float64  `json:"yield"`
	Placed []Placed `json:"placed"`
}

// Placed is a part on a sheet: its lower left corner and its size as it lies.
type Placed struct {
	Part   string  `json:"part"`
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Length float64 `json:"length"`
	Width  float64 `json:"width"`
	Turned bool    `json:"turned"`
}

// usualKerf is a table saw's blade, in mm (common practice, no source).
const usualKerf = 3.2

// SheetsOf lays out the parts of every stock that has a sheet's size. A context that
// ends gives the best layouts so far.
func SheetsOf(ctx context.Context, b batch.Batch, o nest.Options) (Sheets, error) {
	out := Sheets{Tool: "drawerwright", Job: b.Title, Units: b.Units.String(), Stocks: []SheetStock{}}
	groups := batch.Merged(b)
	for len(groups) > 0 {
		stock := groups[0].Parts[0].Stock
		n := slices.IndexFunc(groups, func(g batch.Group) bool { return g.Parts[0].Stock.Name != stock.Name })
		if n < 0 {
			n = len(groups)
		}
		if stock.Length > 0 {
			laid, err := sheetsOf(ctx, b, stock, groups[:n], o)
			if err != nil {
				return out, fmt.Errorf("%s: %w", stock.Name, err)
			}
			out.Stocks = append(out.Stocks, laid)
		}
		groups = groups[n:]
	}
	return out, nil
}

func sheetsOf(ctx context.Context, b batch.Batch, stock joinery.Stock, groups []batch.Group, o nest.Options) (SheetStock, error) {
	n := func(mm float64) float64 { return number(mm, b.Units) }
	of := func(l int64) float64 { return n(geom.Length(l).MM()) }
	rules := nest.Rules{Way: nest.Guillotine, Stages: b.Sheets.Stages}
	sawn, gap := false, 0.0
	var pieces []nest.Piece
	total := 0
	for _, g := range groups {
		p := g.Parts[0]
		pieces = append(pieces, nest.Piece{Name: p.Name, Length: int64(geom.LengthOf(p.Panel.Length())), Width: int64(geom.LengthOf(p.Panel.Width())), Count: g.Quantity,
			Turn: stock.Grain == joinery.GrainNone})
		total += g.Quantity
		sawn = sawn || g.Setup.Cutter.Kind == joinery.Saw
		for _, p := range g.Parts {
			gap = max(gap, p.Work.Gap, p.Work.EndGap)
		}
	}
	if b.Sheets.Way == job.SheetsFree || b.Sheets.Way == "" && !sawn && b.Sheets.Stages == 0 {
		rules.Way = nest.Free
	}
	kerf := b.Sheets.Kerf
	if kerf == 0 {
		if kerf = max(usualKerf, b.Router.PartGap); !sawn {
			kerf = max(gap, b.Router.PartGap)
		}
	}
	trim := int64(geom.LengthOf(b.Sheets.Trim))
	rules.Kerf = int64(geom.LengthOf(kerf))
	sheet := nest.Sheet{Name: stock.Name, Length: int64(geom.LengthOf(stock.Length)), Width: int64(geom.LengthOf(stock.Width)), Price: stock.Price,
		Trim: nest.Trim{Left: trim, Right: trim, Bottom: trim, Top: trim}}
	l, err := nest.Lay(ctx, pieces, []nest.Sheet{sheet}, rules, o)
	if err != nil {
		return SheetStock{}, err
	}
	if err := nest.Check(l, pieces, []nest.Sheet{sheet}, rules); err != nil {
		return SheetStock{}, fmt.Errorf("the layout is wrong, which is a fault of drawerwright: %w", err)
	}
	out := SheetStock{Stock: stock.Name, Length: n(stock.Length), Width: n(stock.Width), Way: rules.Way.String(), Stages: rules.Stages, Kerf: n(kerf), Trim: n(b.Sheets.Trim),
		Pieces: total, Count: l.Count, Fewest: l.Fewest, Best: l.Best(), Whole: l.Whole, Sheets: []LaidSheet{}, Left: []Pieces{}}
	if stock.Price > 0 {
		out.Cost = math.Round(l.Cost*100) / 100
	}
	area, all := float64(sheet.Length)*float64(sheet.Width), 0.0
	for _, s := range l.Sheets {
		one, covered := LaidSheet{Placed: []Placed{}}, 0.0
		for _, p := range s.Placed {
			x, y := p.Size(pieces)
			covered += float64(x) * float64(y) / area
			one.Placed = append(one.Placed, Placed{Part: pieces[p.Piece].Name, X: of(p.X), Y: of(p.Y), Length: of(x), Width: of(y), Turned: p.Turned})
		}
		one.Yield = thousandth(covered)
		all += covered
		out.Sheets = append(out.Sheets, one)
	}
	if l.Count > 0 {
		out.Yield = thousandth(all / float64(l.Count))
	}
	left := 0
	for i, n := range l.Left {
		if n > 0 {
			out.Left = append(out.Left, Pieces{pieces[i].Name, n})
			left += n
		}
	}
	out.Said = saidOf(l, left)
	return out, nil
}

// saidOf is what may be said of a layout: "best possible" only where the bound is met.
func saidOf(l nest.Layout, left int) string {
	switch over := l.Count - l.Fewest; {
	case left > 0:
		return fmt.Sprintf("%d pieces are larger than what the trims leave of a sheet", left)
	case over == 0:
		return "best possible"
	default:
		return fmt.Sprintf("at most %d from best", over)
	}
}

// SheetsText prints layouts.
func SheetsText(s Sheets, u geom.Unit) []byte {
	var out bytes.Buffer
	if s.Job != "" {
		fmt.Fprintf(&out, "%s: sheets\n", s.Job)
	}
	if len(s.Stocks) == 0 {
		fmt.Fprintln(&out, "\nNo stock has the size of its sheets: write `sheet: 2440 x 1220` into it.")
	}
	for _, k := range s.Stocks {
		how := map[bool]string{true: "cut from edge to edge", false: "each part cut out by itself"}[k.Way == nest.Guillotine.String()]
		if k.Stages > 0 {
			how += fmt.Sprintf(" in %d stages", k.Stages)
		}
		noun := "sheets"
		if k.Count == 1 {
			noun = "sheet"
		}
		fmt.Fprintf(&out, "\n%s: %d %s of %s x %s %s, %s; %.1f %% of them is parts", k.Stock, k.Count, noun, caliper(k.Length, u), caliper(k.Width, u), u, k.Said, 100*k.Yield)
		if k.Cost > 0 {
			fmt.Fprintf(&out, "; cost %.2f", k.Cost)
		}
		fmt.Fprintf(&out, "\n%s, kerf %s, trim %s %s\n", how, caliper(k.Kerf, u), caliper(k.Trim, u), u)
		var rows [][]string
		for i, sheet := range k.Sheets {
			var all []string
			for _, p := range counted(sheet) {
				all = append(all, fmt.Sprintf("%d x %s", p.Count, p.Part))
			}
			for n, words := range all {
				row := []string{"", "", words}
				if n == 0 {
					row[0], row[1] = fmt.Sprint(i+1), fmt.Sprintf("%.1f %%", 100*sheet.Yield)
				}
				rows = append(rows, row)
			}
		}
		table(&out, []string{">sheet", ">parts", "pieces"}, rows)
		for _, p := range k.Left {
			fmt.Fprintf(&out, "no sheet holds %d x %s\n", p.Count, p.Part)
		}
		if !k.Whole {
			fmt.Fprintln(&out, "The search was stopped: more time may save a sheet.")
		}
	}
	return out.Bytes()
}

// counted are the pieces of a sheet by part.
func counted(s LaidSheet) (list []Pieces) {
	for _, p := range s.Placed {
		i := slices.IndexFunc(list, func(q Pieces) bool { return q.Part == p.Part })
		if i < 0 {
			i = len(list)
			list = append(list, Pieces{Part: p.Part})
		}
		list[i].Count++
	}
	slices.SortStableFunc(list, func(a, b Pieces) int { return cmp.Compare(a.Part, b.Part) })
	return list
}
