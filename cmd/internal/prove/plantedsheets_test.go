package prove_test

import (
	"drawerwright/cmd/internal/record"
)

// Drawings of the sheets.
const (
	sheetIn  = "router/sheets/birch-1.inside.dxf"
	sheetOut = "router/sheets/birch-1.outside.dxf"
	plyIn    = "router/sheets/ply-1.inside.dxf"
)

// shift moves the n-th line of a layer and gives where it begins.
func shift(layer string, n int, dx, dy float64) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		e.points(moved(dx, dy))
		return e.line()
	}
}

// aside moves the n-th line of a layer across its longer side.
func aside(layer string, n int, by float64) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		if x0, y0, x1, y1 := e.box(); x1-x0 > y1-y0 {
			e.points(moved(0, by))
		} else {
			e.points(moved(by, 0))
		}
		return e.line()
	}
}

// shorter and wider change one end, or one side, of the n-th line of a layer.
func shorter(layer string, n int, by float64) func(*drawing) int { return resized(layer, n, by, 0) }

func wider(layer string, n int, by float64) func(*drawing) int { return resized(layer, n, 0, by) }

func resized(layer string, n int, shorter, wider float64) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		if x0, y0, x1, y1 := e.box(); x1-x0 > y1-y0 {
			return boxed(layer, n, shorter, 0, 0, wider)(d)
		}
		return boxed(layer, n, 0, shorter, wider, 0)(d)
	}
}

// onto puts the n-th line of a layer onto another layer.
func onto(layer string, n int, other string) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		e.put("8", d.first(other).layer)
		return e.line()
	}
}

// lost takes the n-th line of a layer out.
func lost(layer string, n int) func(*drawing) int {
	return func(d *drawing) int {
		d.remove(d.on(layer)[n])
		return 0
	}
}

// boxOf reshapes the n-th line of a layer to a rectangle that is moved from its own.
func boxed(layer string, n int, x0, y0, x1, y1 float64) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		a, b, c, k := e.box()
		d.reshape(e, [][2]float64{{a + x0, b + y0}, {c + x1, b + y0}, {c + x1, k + y1}, {a + x0, k + y1}})
		return d.on(layer)[n].line()
	}
}

// plantedSheets are of one line of a sheet's drawing, or of all of it.
var plantedSheets = map[string]planted{
	"a dado 0.3 aside":              {file: sheetIn, code: "cuts-part", harm: aside("DADO", 0, 0.3)},
	"a dado 3 aside":                {file: sheetIn, code: "cuts-part", harm: aside("DADO", 3, 3)},
	"a dado 3 aside the other way":  {file: sheetIn, code: "cuts-part", harm: aside("DADO", 5, -3)},
	"a dado elsewhere in its part":  {file: sheetIn, code: "cuts-part", harm: shift("DADO", 0, 0, 100)},
	"a dado short of the edge":      {file: sheetIn, code: "not-cut", harm: shorter("DADO", 1, 12)},
	"a dado lost":                   {file: sheetIn, code: "not-cut", harm: lost("DADO", 2)},
	"a dado counted":                {file: sheetIn, code: "count", harm: lost("DADO", 2)},
	"a dado 0.4 wider":              {file: sheetIn, code: "cuts-part", harm: wider("DADO", 6, 0.4)},
	"a dado as deep as the outline": {file: sheetIn, code: "cuts-part", harm: onto("DADO", 1, "SLOT")},
	"a dado as a line round it":     {file: sheetIn, code: "cuts-part", harm: onto("DADO", 2, "PROFILE")},
	"a dado twice":                  {file: sheetIn, code: "doubled", harm: twice("DADO", 4)},
	"a dado open":                   {file: sheetIn, code: "open", harm: opened("DADO", 3)},
	"a dado that crosses itself":    {file: sheetIn, code: "crossing", harm: crossed("DADO", 2)},
	"a dado narrower than its bit":  {file: sheetIn, code: "bit-too-big", harm: wider("DADO", 7, -4)},
	"a groove 1 higher":             {file: sheetIn, code: "cuts-part", harm: aside("GROOVE", 0, 1)},
	"a groove 1 lower":              {file: sheetIn, code: "cuts-part", harm: aside("GROOVE", 4, -1)},
	"a groove too short":            {file: sheetIn, code: "not-cut", harm: shorter("GROOVE", 2, 30)},
	"a groove lost":                 {file: sheetIn, code: "not-cut", harm: lost("GROOVE", 6)},
	"a groove twice":                {file: sheetIn, code: "doubled", harm: twice("GROOVE", 1)},
	"a groove off the sheet":        {file: sheetIn, code: "off-sheet", harm: shift("GROOVE", 3, 900, 0)},
	"a groove above the sheet":      {file: sheetIn, code: "off-sheet", harm: shift("GROOVE", 3, 0, 1000)},
	"a groove at another height":    {file: sheetIn, code: "height", harm: func(d *drawing) int { e := d.first("GROOVE"); e.raise("3.0"); return e.line() }},
	"a hole 2 aside":                {file: sheetIn, code: "cuts-part", harm: shift("DRILL", 0, 2, 0)},
	"a hole lost":                   {file: sheetIn, code: "not-cut", harm: lost("DRILL", 1)},
	"a hole larger": {file: sheetIn, code: "cuts-part", harm: func(d *drawing) int {
		e := d.on("DRILL")[2]
		e.numbers("40", func(v float64) float64 { return v + 1 })
		return e.line()
	}},
	"a hole not through":                {file: sheetIn, code: "not-cut", harm: onto("DRILL", 3, "DADO")},
	"an outline 1 aside":                {file: sheetIn, code: "cuts-part", harm: shift("PROFILE", 0, 1, 0)},
	"an outline 1 down":                 {file: sheetIn, code: "cuts-part", harm: shift("PROFILE", 5, 0, -1)},
	"an outline too small":              {file: sheetIn, code: "cuts-part", harm: boxed("PROFILE", 2, 0, 2, 0, 0)},
	"an outline lost":                   {file: sheetIn, code: "not-cut-out", harm: lost("PROFILE", 3)},
	"an outline at the sheet's edge":    {file: sheetIn, code: "off-sheet", harm: shift("PROFILE", 0, -24, 0)},
	"an outline over its neighbor":      {file: sheetIn, code: "cuts-part", harm: boxed("PROFILE", 4, 0, 0, 40, 0)},
	"a slot into the tab beside it":     {file: sheetIn, code: "narrow-tab", harm: anyLine(longerSlot(2))},
	"a slot over a whole tab":           {file: sheetIn, code: "loose", harm: anyLine(longerSlot(9))},
	"a slot over the tab beside it":     {file: sheetIn, code: "loose", part: "base-1-drawer-front", harm: everySlot},
	"a slot into a part":                {file: sheetIn, code: "cuts-part", harm: shift("SLOT", 0, 10, 10)},
	"a slot before what it cuts off":    {file: sheetIn, code: "order", harm: first("SLOT")},
	"the outline before the grooves":    {file: sheetIn, code: "order", harm: first("PROFILE")},
	"a line on a layer that is unknown": {file: sheetIn, code: "unknown-layer", harm: func(d *drawing) int { e := d.first("DADO"); e.put("8", "NOTHING"); return e.line() }},
	"a layer that is not listed":        {file: sheetIn, code: "unlisted-layer", harm: func(d *drawing) int { e := d.first("DADO"); e.put("8", "DADO_INSIDE_7-00MM"); return e.line() }},
	"a rabbet 0.5 aside":                {file: sheetOut, code: "not-cut", harm: aside("RABBET", 0, 0.5)},
	"a rabbet in another part":          {file: sheetOut, code: "cuts-part", harm: shift("RABBET", 2, -270, 0)},
	"a rabbet lost":                     {file: sheetOut, code: "not-cut", harm: lost("RABBET", 3)},
	"a rabbet twice":                    {file: sheetOut, code: "doubled", harm: twice("RABBET", 1)},
	"the outside not turned over":       {file: sheetOut, code: "cuts-part", harm: flipped(1500)},
	"the outside's marks not turned":    {file: sheetOut, code: "mirror", harm: flipped(1500)},
	"the inside turned over":            {file: sheetIn, code: "cuts-part", harm: flipped(1500)},
	"a corner mark moved":               {file: sheetIn, code: "mirror", harm: func(d *drawing) int { d.mark().points(moved(3, 0)); return 0 }},
	"a hole to register by moved":       {file: sheetOut, code: "register", at: sheetIn, harm: func(d *drawing) int { d.on("REGISTER")[0].points(moved(0, 0.5)); return 0 }},
	"a hole to register by lost":        {file: sheetOut, code: "register", at: sheetIn, harm: func(d *drawing) int { d.remove(d.on("REGISTER")[0]); return 0 }},
	"both holes to register by moved": {file: sheetOut, code: "register", harm: func(d *drawing) int {
		for _, e := range d.on("REGISTER") {
			e.points(moved(0.5, 0))
		}
		return 0
	}},
	"all a hundredth larger":        {file: sheetIn, code: "scale", harm: grown(1.01)},
	"all of it larger than a sheet": {file: sheetIn, code: "size", harm: grown(1.01)},
	"all of it moved":               {file: sheetIn, code: "origin", harm: func(d *drawing) int { d.all(false, 1, moved(10, 0)); return 0 }},
	"in inches":                     {file: sheetIn, code: "units", harm: func(d *drawing) int { d.unit("1", "Units: inches"); return 0 }},
	"the sheet's outline lost":      {file: sheetIn, code: "no-outline", harm: lost("SHEET", 0)},
	"the square lost":               {file: sheetIn, code: "scale", harm: lost("SCALE", 0)},
	"the drawing lost":              {file: sheetOut, code: "missing-file", gone: true},
	"the drawing cut short":         {file: sheetIn, code: "unreadable", bytes: func(b []byte) ([]byte, int) { return b[:len(b)/2], 0 }},
	"a rabbet under the tabs":       {file: sheetOut, code: "loose", at: sheetIn, part: "base-1-box-front", harm: overTabs},
	"a bottom's outline moved":      {file: plyIn, code: "cuts-part", harm: shift("PROFILE", 0, 0, 2)},

	"holes to register by too shallow for a thicker board": {code: "pin-depth", at: sheetOut, edit: func(r *record.Report) { r.Stocks[0].Max += 0.3 }},
	"another bit for a layer of the sheet":                 {code: "bit", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) { layerOf(s, "groove").Tool = 9 })},
}

// plantedMarks are of tabs that a program is to make.
var plantedMarks = map[string]planted{
	"marks for tabs lost":                 {file: sheetIn, code: "loose", part: "base-1-box-front", harm: lostOnes("TABS", 48, 50)},
	"all marks for tabs lost":             {file: sheetIn, code: "loose", part: "base-1-side", harm: func(d *drawing) int { return lostOnes("TABS", 16, 47)(d) }},
	"a mark for a tab round a corner":     {file: sheetIn, code: "tab-mark", harm: shift("TABS", 0, 80, 0)},
	"a mark for a tab off its part":       {file: sheetIn, code: "tab-mark", harm: shift("TABS", 1, 0.5, 0)},
	"a mark for a tab in its part":        {file: sheetIn, code: "tab-mark", harm: aside("TABS", 2, -10)},
	"a mark for a tab too narrow":         {file: sheetIn, code: "tab-mark", harm: boxed("TABS", 3, 0, 0, 0, -2)},
	"a mark for a tab at a dado":          {file: sheetIn, code: "tab-mark", part: "base-1-side", harm: shift("TABS", 21, 0, -82)},
	"a mark for a tab that ends too soon": {file: sheetIn, code: "tab-mark", harm: boxed("TABS", 5, 2, 0, 0, 0)},
	"a mark for a tab twice":              {file: sheetIn, code: "tab-mark", harm: twice("TABS", 4)},
	"a mark for a tab open":               {file: sheetIn, code: "tab-mark", harm: opened("TABS", 7)},
	"marks that nobody asked for":         {code: "tab-mark", at: sheetIn, edit: func(r *record.Report) { r.Router.Tabs.Marked = false }},
	"more marks asked for": {code: "loose", at: sheetIn,
		edit: onSheet(func(s *record.LaidSheet) { s.Placements[0].Held.TabsNeeded = 40 })},
}

// lostOnes takes the lines of a layer from one to another out.
func lostOnes(layer string, from, to int) func(*drawing) int {
	return func(d *drawing) int {
		for n := to; n >= from; n-- {
			d.remove(d.on(layer)[n])
		}
		return 0
	}
}

// overTabs draws a rabbet of the outside along the lower edge of the first front, a hair
// off it, where its tabs are 1.5 high.
func overTabs(d *drawing) int {
	d.reshape(d.on("RABBET")[0], [][2]float64{{370, 19}, {630, 19}, {630, 24.9}, {370, 24.9}})
	return 0
}

// plantedLayout are of the layout and the legend in the report.
var plantedLayout = map[string]planted{
	"a part placed elsewhere": {code: "not-cut-out", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) { s.Placements[2].X += 5 })},
	"two parts changed": {code: "not-cut", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) {
		s.Placements[2].Part, s.Placements[6].Part = s.Placements[6].Part, s.Placements[2].Part
	})},
	"a part turned round": {code: "mirror", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) { s.Placements[3].Rotated = !s.Placements[3].Rotated })},
	"a part that is not there": {code: "mirror", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) {
		p := s.Placements[0]
		p.Y = 700
		s.Placements = append(s.Placements, p)
	})},
	"a part left out": {code: "mirror", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) { s.Placements = s.Placements[1:] })},
	"another bit":     {code: "bit-too-big", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) { layerOf(s, "groove").Diameter = 8 })},
	"another depth":   {code: "depth", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) { layerOf(s, "groove").Depth = 5 })},
	"another count":   {code: "count", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) { layerOf(s, "groove").Cuts++ })},
	"another order": {code: "order", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) {
		s.Layers = append(s.Layers[len(s.Layers)-1:], s.Layers[:len(s.Layers)-1]...)
	})},
	"a wider bit round it": {code: "cuts-part", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) { layerOf(s, "profile").Diameter = 26 })},
	"a layer that is extra": {code: "missing", at: sheetIn, edit: onSheet(func(s *record.LaidSheet) {
		l := *layerOf(s, "dado")
		l.Layer = "DADO_INSIDE_3-00MM"
		s.Layers = append(s.Layers, l)
	})},
	"another size of sheet":                          {code: "size", at: sheetIn, edit: func(r *record.Report) { r.Sheets[0].Sizes[0].Length += 1 }},
	"a clamp where a groove is":                      {code: "keep-out", at: sheetIn, edit: func(r *record.Report) { r.Sheets[0].KeepOut = []record.Box{{X: 25, Y: 25, Length: 200, Width: 200}} }},
	"a clamp where a rabbet is, before it is turned": {code: "keep-out", at: sheetOut, edit: func(r *record.Report) { r.Sheets[0].KeepOut = []record.Box{{X: 100, Y: 100, Length: 1300, Width: 900}} }},
	"a clamp that is not drawn":                      {file: sheetOut, code: "keep-out-lost", harm: lost("BLANK", 0)},
	"a clamp drawn elsewhere":                        {file: sheetIn, code: "keep-out-moved", harm: shift("BLANK", 0, 0, 1)},
	"a clamp of another size": {code: "keep-out-lost", at: sheetIn,
		edit: func(r *record.Report) { r.Sheets[0].KeepOut[0].Width++ }},
	"more tabs asked for": {code: "loose", at: sheetIn,
		edit: onSheet(func(s *record.LaidSheet) { s.Placements[0].Held.TabsNeeded = 40 })},
	"a smaller sheet": {code: "off-sheet", at: sheetIn, edit: func(r *record.Report) { r.Sheets[0].Sizes[0].Length -= 300 }},
}

func onSheet(f func(*record.LaidSheet)) func(*record.Report) {
	return func(r *record.Report) { f(&r.Sheets[0].Sheets[0]) }
}

// layerOf is the first layer of an operation in a sheet's legend.
func layerOf(s *record.LaidSheet, operation string) *record.Layer {
	for i := range s.Layers {
		if s.Layers[i].Operation == operation {
			return &s.Layers[i]
		}
	}
	return &record.Layer{}
}

func twice(layer string, n int) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		return d.insert(e, d.tagsOf(e)) + 2*(e.to-e.from)
	}
}

func opened(layer string, n int) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		e.open()
		return e.line()
	}
}

func crossed(layer string, n int) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		x0, y0, x1, y1 := e.box()
		d.reshape(e, [][2]float64{{x0, y0}, {x1, y0}, {x0, y1}, {x1, y1}})
		return d.on(layer)[n].line()
	}
}

// first moves the first line of a layer before all that is cut: what comes next is too
// late.
func first(layer string) func(*drawing) int {
	return func(d *drawing) int {
		e := d.first(layer)
		tags := d.tagsOf(e)
		d.remove(e)
		d.insert(d.first("DRILL"), tags)
		return d.first("DRILL").line()
	}
}

// flipped turns everything over end for end.
func flipped(length float64) func(*drawing) int {
	return func(d *drawing) int {
		d.all(true, 1, func(x, y float64) (float64, float64) { return length - x, y })
		return 0
	}
}

func grown(by float64) func(*drawing) int {
	return func(d *drawing) int {
		d.all(false, by, func(x, y float64) (float64, float64) { return x * by, y * by })
		return 0
	}
}

// everySlot lets all slots of a part run over its tabs.
func everySlot(d *drawing) int {
	e := d.first("PROFILE")
	x0, y0, x1, y1 := e.box()
	const bit = 3.05
	for i, s := range [][4]float64{{x0 - bit, y0 - bit, x1 + bit, y0}, {x0 - bit, y1, x1 + bit, y1 + bit}, {x0 - bit, y0, x0, y1}, {x1, y0, x1 + bit, y1}} {
		d.reshape(d.on("SLOT")[i], [][2]float64{{s[0], s[1]}, {s[2], s[1]}, {s[2], s[3]}, {s[0], s[3]}})
	}
	return 0
}

// longerSlot draws the first straight slot further at both ends.
func longerSlot(by float64) func(*drawing) int {
	return func(d *drawing) int {
		for n, e := range d.on("SLOT") {
			x0, y0, x1, y1 := e.box()
			switch {
			case y1-y0 < 4:
				return boxed("SLOT", n, -by, 0, by, 0)(d)
			case x1-x0 < 4:
				return boxed("SLOT", n, 0, -by, 0, by)(d)
			}
		}
		panic("no slot is straight")
	}
}

// anyLine lets the fault be named at any line: a tab lies between two.
func anyLine(harm func(*drawing) int) func(*drawing) int {
	return func(d *drawing) int {
		harm(d)
		return 0
	}
}
