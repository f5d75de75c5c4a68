package sheets

import (
	"context"
	"fmt"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/nest"
	"drawerwright/geom/sheet"
)

// Problem is what is wrong with the sheets of a stock, at one of its keys in the job file.
type Problem struct {
	Stock, Key string
	geom.Diagnosis
	Edits []job.Edit // of the job file, that the hint names; none where only a person knows what to do
}

// codeNoSheet is the code of pieces without a sheet.
const codeNoSheet geom.Code = "no-sheet"

func (s *Stock) problem(code geom.Code, key string, fact geom.Sentence, ask string) *Problem {
	return &Problem{Stock: s.Name, Key: key, Diagnosis: geom.Diagnosis{Code: code, Level: geom.LevelError,
		Fact: geom.Sentencef("%s: %s", s.Name, fact), Ask: geom.Sentencef("%s", ask)}}
}

// fault is the problem of what should never be: a fault of the program.
func (s *Stock) fault(code geom.Code, key string, err error) *Problem {
	return s.problem(code, key, geom.Sentencef("%v", err), "please report it with the job file")
}

// tooLittle is the problem of a length under a problem's key that has to be at least so long:
// that is what to write, or to leave it out.
func (s *Stock) tooLittle(code geom.Code, key string, measured, least geom.Length, fact geom.Sentence) *Problem {
	out := s.problem(code, key, fact, "")
	path := strings.Split(key, ".")
	limit := geom.AtLeast(least.MM())
	out.Measured, out.Limit = geom.Millimeters(measured.MM()), limit
	out.Ask = geom.Sentencef("write `%s: %s` or more, or leave it out", path[len(path)-1], limit)
	return out
}

// writes keeps the value that the hint names for the problem's key.
func (p *Problem) writes(value string) *Problem {
	p.Edits = []job.Edit{job.KeyEdit(p.Key, value)}
	return p
}

// Short are the stocks of which there is too little, with the pieces that are short and
// what would hold them all.
func (p Plan) Short(ctx context.Context, o Search) (list []*Problem) {
	for i := range p.Stocks {
		if s := &p.Stocks[i]; s.Remaining() > 0 {
			list = append(list, s.short(ctx, o, p.Units))
		}
	}
	return list
}

func (s *Stock) short(ctx context.Context, o Search, u geom.Unit) *Problem {
	all := 0
	var names []string
	var large []nest.Piece // those that fit no sheet
	matched := false       // some of them because others lie beside them
	for i, n := range s.Layout.Remaining {
		q := s.Pieces[i]
		if all += q.Count; n == 0 {
			continue
		}
		names = append(names, fmt.Sprintf("%d x %s", n, s.called(i)))
		if !s.Fits(i) {
			matched = matched || s.FitsAlone(i)
			large = append(large, nest.Whole(s.Pieces, i, s.Rules.Kerf))
		}
	}
	out := &Problem{Stock: s.Name, Key: "sheet", Diagnosis: geom.Diagnosis{Code: codeNoSheet, Level: geom.LevelError}}
	out.Fact = geom.Sentencef("%s: there is no sheet for %d of its %s: %s; it has %s", s.Name,
		s.Remaining(), words.Count(all, "piece", "pieces"), words.Some(names), rack(s.Sheets))
	out.Ask = geom.Sentencef("add a larger size below `other-sheets:`, or make the boxes smaller")
	if len(large) > 0 {
		length, width := sheet.MinSize(large, s.Sheets[len(s.Sheets)-1])
		if s.GrainAcross { // as its other sizes are written
			length, width = width, length
		}
		size := atLeast{length, width}
		instead := "make the boxes smaller"
		if matched {
			instead = "leave out `match:`, which keeps drawer fronts side by side"
		}
		out.Ask = geom.Sentencef("the largest take a sheet of at least %s, trims and grain considered: "+
			"add such a size below `other-sheets:`, or "+instead, size)
		out.Edits = []job.Edit{job.LargerSheet(s.Name, size.In(u))}
		return out
	}
	if any, err := s.begunAnyhow(ctx, o); s.FirstCuts != "" && err == nil && any.Missing() == 0 {
		out.Ask = geom.Sentencef("leave out `first-cuts:` in the section sheets: then there are enough")
		return out
	}
	for i, z := range s.Sheets {
		n, found := sheet.Enough(s.Sheets, i, func(z []nest.Sheet) (nest.Layout, error) {
			return o.lay(ctx, s.Pieces, z, s.Rules)
		})
		if !found {
			continue
		}
		size := "" // the stock's own
		if out.Key = "count"; i > s.own() {
			out.Key, size = "other-sheets", z.Name
		}
		out.Edits = []job.Edit{job.SheetCount(s.Name, size, n)}
		out.Ask = geom.Sentencef("have %d sheets of %s and write `count: %d`, or add another size below `other-sheets:`", n, sheetSize(z), n)
		return out
	}
	if s.matches() {
		out.Ask = geom.Sentencef("`match:` keeps drawer fronts on sheets of one batch, or side by side: add a larger size or more sheets of one batch, or leave it out")
	}
	return out
}

// called is a piece by the parts that it serves.
func (s *Stock) called(piece int) string {
	parts := s.Parts[piece]
	switch len(parts) {
	case 1:
		return parts[0].Name
	case 2:
		return parts[0].Name + " = " + parts[1].Name
	}
	return fmt.Sprintf("%s = %d more", parts[0].Name, len(parts)-1)
}

// own is the place of the stock's own size among its sheets: offcuts come before it.
func (s *Stock) own() int {
	for i, z := range s.Sheets {
		if !z.Offcut {
			return i
		}
	}
	return len(s.Sheets)
}

func (s *Stock) matches() bool {
	for _, p := range s.Pieces {
		if p.Match > 0 {
			return true
		}
	}
	return false
}

// rack is the sheets that a stock has.
type rack []nest.Sheet

// In says how many there are of each size.
func (r rack) In(u geom.Unit) string {
	var list []string
	for _, z := range r {
		noun := "sheet"
		if z.Offcut {
			noun = "offcut"
		}
		if z.Count != 1 {
			noun += "s"
		}
		if z.Count == 0 {
			list = append(list, noun+" of "+sheetSize(z).In(u))
		} else {
			list = append(list, fmt.Sprintf("%d %s of %s", z.Count, noun, sheetSize(z).In(u)))
		}
	}
	return words.Some(list)
}

// sheetSize is that of a sheet.
type sheetSize nest.Sheet

// In prints both lengths.
func (z sheetSize) In(u geom.Unit) string {
	return geom.Length(z.Length).Number(u) + " x " + geom.Length(z.Width).Text(u)
}

// atLeast is a least size, in nm.
type atLeast [2]int64

// In prints both lengths, rounded up, with the unit.
func (a atLeast) In(u geom.Unit) string {
	return fmt.Sprintf("%s x %s %s", geom.Length(a[0]).RoundUp(u).Number(u), geom.Length(a[1]).RoundUp(u).Number(u), u)
}
