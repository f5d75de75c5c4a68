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
	"drawerwright/cmd/internal/list"
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
	Sizes  []SheetSize `json:"sizes"`
	Sheets []LaidSheet `json:"sheets"`
	Left   []Pieces    `json:"left"` // pieces that no sheet holds
}

// SheetSize is a size of sheet and how many are used.
type SheetSize struct {
	Name   string  `json:"name"`
	Length float64 `json:"length"`
	Width  float64 `json:"width"`
	Offcut bool    `json:"offcut"`
	Used   int     `json:"used"`
}

// LaidSheet is one that parts are cut from, from its lower left corner.
type LaidSheet struct {
	Size   int      `json:"size"`
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
	rules := nest.Rules{Way: nest.Guillotine, Stages: b.Sheets.Stages}
	sawn, gap := false, 0.0
	var pieces []nest.Piece
	for _, g := range groups {
		p := g.Parts[0]
		pieces = append(pieces, nest.Piece{Name: p.Name, Length: int64(geom.LengthOf(p.Panel.Length())), Width: int64(geom.LengthOf(p.Panel.Width())), Count: g.Quantity,
			Turn: stock.Grain == joinery.GrainNone})
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
	rules.Kerf = int64(geom.LengthOf(kerf))
	sheet := nest.Sheet{Name: stock.Name, Length: int64(geom.LengthOf(stock.Length)), Width: int64(geom.LengthOf(stock.Width)), Price: stock.Price}
	return layOut(ctx, stock.Name, pieces, []nest.Sheet{sheet}, rules, geom.LengthOf(b.Sheets.Trim), b.Units, o)
}

// layOut lays pieces out on sheets, all with the same trim on every edge.
func layOut(ctx context.Context, stock string, pieces []nest.Piece, sheets []nest.Sheet, rules nest.Rules, trim geom.Length, u geom.Unit, o nest.Options) (SheetStock, error) {
	of := func(l int64) float64 { return number(geom.Length(l).MM(), u) }
	sheets = slices.Clone(sheets)
	priced := false
	for i := range sheets {
		sheets[i].Trim = nest.Trim{Left: int64(trim), Right: int64(trim), Bottom: int64(trim), Top: int64(trim)}
		priced = priced || sheets[i].Price > 0 && !sheets[i].Offcut
	}
	l, err := nest.Lay(ctx, pieces, sheets, rules, o)
	if err != nil {
		return SheetStock{}, err
	}
	if err := nest.Check(l, pieces, sheets, rules); err != nil {
		return SheetStock{}, fmt.Errorf("the layout is wrong, which is a fault of drawerwright: %w", err)
	}
	out := SheetStock{Stock: stock, Way: rules.Way.String(), Stages: rules.Stages, Kerf: of(rules.Kerf), Trim: of(int64(trim)),
		Count: l.Count, Fewest: l.Fewest, Best: l.Best(), Whole: l.Whole, Sizes: []SheetSize{}, Sheets: []LaidSheet{}, Left: []Pieces{}}
	for _, s := range sheets {
		out.Sizes = append(out.Sizes, SheetSize{Name: s.Name, Length: of(s.Length), Width: of(s.Width), Offcut: s.Offcut})
	}
	if priced {
		out.Cost = math.Round(l.Cost*100) / 100
	}
	area, covered := 0.0, 0.0
	for _, s := range l.Sheets {
		size := sheets[s.Sheet]
		out.Sizes[s.Sheet].Used++
		one, whole, parts := LaidSheet{Size: s.Sheet, Placed: []Placed{}}, float64(size.Length)*float64(size.Width), 0.0
		for _, p := range s.Placed {
			x, y := p.Size(pieces)
			parts += float64(float64(x) * float64(y))
			one.Placed = append(one.Placed, Placed{Part: pieces[p.Piece].Name, X: of(p.X), Y: of(p.Y), Length: of(x), Width: of(y), Turned: p.Turned})
		}
		one.Yield = thousandth(parts / whole)
		area, covered = area+whole, covered+parts
		out.Sheets = append(out.Sheets, one)
	}
	if area > 0 {
		out.Yield = thousandth(covered / area)
	}
	left := 0
	for i, n := range l.Left {
		out.Pieces += pieces[i].Count
		if n > 0 {
			out.Left = append(out.Left, Pieces{pieces[i].Name, n})
			left += n
		}
	}
	out.Said = saidOf(l, left, len(sheets))
	return out, nil
}

// saidOf is what may be said of a layout: "best possible" only where the bound is met.
func saidOf(l nest.Layout, left, sizes int) string {
	switch {
	case left > 0:
		return fmt.Sprintf("%d pieces are left: larger than what the trims leave of a sheet, or there are no more sheets", left)
	case l.Best():
		return "best possible"
	case l.Least == 0:
		return "how far from best is not known"
	case sizes == 1:
		return fmt.Sprintf("at most %d from best", l.Count-l.Fewest)
	}
	return fmt.Sprintf("at most %.1f %% over the best cost", 100*(l.Cost/l.Least-1))
}

// ListedSheets lays a list out by itself.
func ListedSheets(ctx context.Context, name string, l list.List, rules nest.Rules, trim geom.Length, u geom.Unit, o nest.Options) (Sheets, error) {
	stock, err := layOut(ctx, name, l.Pieces, l.Sheets, rules, trim, u, o)
	if err != nil {
		return Sheets{}, err
	}
	return Sheets{Tool: "drawerwright", Units: u.String(), Stocks: []SheetStock{stock}}, nil
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
		fmt.Fprintf(&out, "\n%s: ", k.Stock)
		for i, z := range used(k) {
			if i > 0 {
				out.WriteString(", ")
			}
			noun := map[bool]string{false: "sheet", true: "offcut"}[z.Offcut]
			if z.Used != 1 {
				noun += "s"
			}
			fmt.Fprintf(&out, "%d %s of %s x %s %s", z.Used, noun, caliper(z.Length, u), caliper(z.Width, u), u)
		}
		if k.Count == 0 && len(k.Sheets) == 0 {
			out.WriteString("no sheet")
		}
		fmt.Fprintf(&out, "; %s; %.1f %% of them is parts", k.Said, 100*k.Yield)
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
					if len(k.Sizes) > 1 {
						row[0] += " " + k.Sizes[sheet.Size].Name
					}
				}
				rows = append(rows, row)
			}
		}
		table(&out, []string{"sheet", ">parts", "pieces"}, rows)
		for _, p := range k.Left {
			fmt.Fprintf(&out, "no sheet holds %d x %s\n", p.Count, p.Part)
		}
		if !k.Whole {
			fmt.Fprintln(&out, "The search was stopped: more time may save a sheet.")
		}
	}
	return out.Bytes()
}

// used are the sizes of sheets that are used.
func used(k SheetStock) []SheetSize {
	return slices.DeleteFunc(slices.Clone(k.Sizes), func(z SheetSize) bool { return z.Used == 0 })
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
