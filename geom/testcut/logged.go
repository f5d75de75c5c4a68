package testcut

import (
	"slices"
	"time"

	"drawerwright/geom/shoplog"
)

// logged are the readings that a log takes, by what each tells of by itself: those that take more than one
// setting together tell of none.
var logged = map[Kind]shoplog.What{
	Slot: shoplog.Cutter, Edge: shoplog.Fence, Depth: shoplog.Height, FrontLength: shoplog.Length,
}

// Logged are the lines that a test cut adds to a log. A kind that was read twice, in two cuts at one setting,
// tells how much one cut differs from the next. Readings that contradict the others are left out.
func (c Model) Logged(a Advice, day time.Time, t shoplog.Tool) (list []shoplog.Cut) {
	first := make(map[Kind]float64)
	for _, r := range a.Residuals {
		what, takes := logged[r.Kind]
		if !takes || r.Kind == Slot && c.moves || r.Rejected || slices.Contains(a.Conflicts, r.Name) {
			continue
		}
		cut := shoplog.Cut{Date: day, Tool: t, What: what, Measured: r.Value}
		if before, again := first[r.Kind]; again {
			cut.What, cut.Aimed = shoplog.Again, before
		} else {
			f, _ := c.form(r.Reading, vector{})
			first[r.Kind], cut.Aimed, cut.Moved = r.Value, f.at0, a.moved(f)
		}
		list = append(list, cut)
	}
	return list
}

// moved reports whether a setting is to be moved that a reading depends on.
func (a Advice) moved(f form) bool {
	return slices.ContainsFunc(a.Moves, func(m Move) bool {
		return (m.Action == Make || m.Action == Try) && !Tiny(m.By) && f.by[unknownOf(m.Setting)] != 0
	})
}

// Open reports whether more is to be measured before it is known what to do.
func (a Advice) Open() bool {
	return slices.ContainsFunc(a.Moves, func(m Move) bool { return m.Action == Measure })
}
