package prove_test

import (
	"math"
	"slices"
)

// harmedLines are of one line of a drawing.
var harmedLines = map[string]seeded{
	"a slot into its tab": {file: sideIn, more: "router: {tabs: {}}\n", code: "narrow-tab", harm: func(d *drawing) int {
		line := longerSlot(2)(d)
		slots := d.on("SLOT")
		return slots[slices.IndexFunc(slots, func(e entity) bool { return e.line() == line })+1].line() // the tab ends there
	}},
	"a mark for a tab off its outline": {file: sideIn, more: "router: {tabs: {as: marks}}\n", code: "tab-mark", harm: aside("TABS", 0, 0.5)},
	"one mark for tabs left": {file: sideIn, more: "router: {tabs: {as: marks}}\n", code: "tab-mark", harm: func(d *drawing) int {
		return lostOnes("TABS", 1, len(d.on("TABS"))-1)(d)
	}},
	"a polyline open": {file: sideIn, code: "open", also: "missing", harm: func(d *drawing) int {
		e := d.first("DADO")
		e.open()
		return e.line()
	}},
	"the outline open": {file: sideIn, code: "no-outline", harm: func(d *drawing) int {
		d.first("PROFILE").open()
		return 0
	}},
	"the outline lost": {file: bottomIn, code: "no-outline", harm: func(d *drawing) int {
		d.remove(d.first("PROFILE"))
		return 0
	}},
	"the outline too long": {file: sideIn, code: "size", harm: func(d *drawing) int {
		e := d.first("PROFILE")
		e.points(func(x, y float64) (float64, float64) { return x * 501 / 500, y })
		return e.line()
	}},
	"the outline on the outside too long": {file: frontOut, code: "size", also: "mirror moved register", harm: func(d *drawing) int {
		e := d.first("OUTLINE")
		e.points(func(x, y float64) (float64, float64) { return x * 448.8 / 447.8, y })
		return e.line()
	}},
	"a line doubled": {file: sideIn, code: "doubled", also: "count extra", harm: func(d *drawing) int {
		e := d.first("DADO")
		return d.insert(e, d.tagsOf(e)) + 2*(e.to-e.from)
	}},
	"a line doubled on another layer": {file: sideIn, code: "doubled", also: "count extra", harm: func(d *drawing) int {
		e := d.first("DADO")
		tags := d.tagsOf(e)
		to := d.first("GROOVE")
		line := d.insert(to, tags)
		d.on("DADO_INSIDE_6-10MM")[2].put("8", to.layer)
		return line
	}},
	"a line doubled the other way round": {file: sideIn, code: "doubled", also: "count extra", harm: func(d *drawing) int {
		e := d.first("DADO")
		x0, y0, x1, y1 := e.box()
		line := d.insert(e, d.tagsOf(e)) + 2*(e.to-e.from)
		ring, i := [][2]float64{{x1, y1}, {x1, y0}, {x0, y0}, {x0, y1}}, -1
		d.first("DADO").points(func(x, y float64) (float64, float64) { i++; return ring[i][0], ring[i][1] })
		return line
	}},
	"a line that crosses itself": {file: sideIn, code: "crossing", also: "missing", harm: func(d *drawing) int {
		e := d.first("DADO")
		x0, y0, x1, y1 := e.box()
		ring, i := [][2]float64{{x0, y0}, {x1, y0}, {x0, y1}, {x1, y1}}, -1
		e.points(func(x, y float64) (float64, float64) { i++; return ring[i][0], ring[i][1] })
		return e.line()
	}},
	"an outline that crosses itself": {file: bottomIn, code: "crossing", also: "shape", harm: func(d *drawing) int {
		e := d.first("PROFILE")
		x0, y0, x1, y1 := e.box()
		ring, i := [][2]float64{{x0, y0}, {x1, y0}, {x0, y1}, {x1, y1}}, -1
		e.points(func(x, y float64) (float64, float64) { i++; return ring[i][0], ring[i][1] })
		return e.line()
	}},
	"a line lost": {file: sideIn, code: "count", also: "missing", harm: func(d *drawing) int {
		d.remove(d.first("DADO"))
		return 0
	}},
	"a whole layer lost": {file: frontIn, code: "missing", harm: func(d *drawing) int {
		d.remove(d.first("GROOVE"))
		return 0
	}},
	"a pocket too many": {file: sideIn, code: "extra", also: "count", harm: func(d *drawing) int {
		e := d.first("DADO")
		tags := d.tagsOf(e)
		line := d.insert(e, tags)
		d.first("DADO").points(moved(200, 0))
		return line
	}},
	"the outline with a bite": {file: sideIn, code: "shape", harm: func(d *drawing) int { // as long and wide as before
		e := d.first("PROFILE")
		d.reshape(e, [][2]float64{{0, 0}, {500, 0}, {500, 140}, {300, 140}, {250, 100}, {200, 140}, {0, 140}})
		return e.line()
	}},
	"a corner of the outline lost": {file: sideIn, code: "shape", harm: func(d *drawing) int {
		e := d.first("PROFILE")
		d.reshape(e, [][2]float64{{0, 0}, {500, 0}, {500, 130}, {490, 140}, {0, 140}})
		return e.line()
	}},
	"a pocket with relief wider": {file: sideIn, more: "joinery: {cutter-height: 7}", code: "moved", harm: func(d *drawing) int {
		e := d.first("GROOVE") // from 6.1 to 12.2; a round of 1.5 may reach further
		e.points(func(x, y float64) (float64, float64) {
			if y > 12 {
				y += 1
			}
			return x, y
		})
		return e.line()
	}},
	"a pocket moved": {file: sideIn, code: "moved", harm: func(d *drawing) int {
		e := d.first("GROOVE")
		e.points(moved(0, 0.5))
		return e.line()
	}},
	"a pocket a little wider": {file: sideIn, code: "moved", harm: func(d *drawing) int {
		e := d.first("DADO")
		_, _, x1, _ := e.box()
		e.points(func(x, y float64) (float64, float64) {
			if x == x1 {
				x += 0.1
			}
			return x, y
		})
		return e.line()
	}},
	"a dado moved": {file: sideIn, code: "moved", harm: func(d *drawing) int {
		e := d.first("DADO")
		e.points(moved(0.4, 0))
		return e.line()
	}},
	"no overcut": {file: sideIn, code: "overcut", also: "corner-radius", harm: func(d *drawing) int {
		e := d.first("DADO")
		e.points(func(x, y float64) (float64, float64) { return x, math.Max(0, math.Min(140, y)) })
		return e.line()
	}},
	"overcut at one end only": {file: frontOut, code: "overcut", harm: func(d *drawing) int {
		e := d.first("RABBET")
		e.points(func(x, y float64) (float64, float64) { return x, math.Max(0, y) })
		return e.line()
	}},
	"a LINE for a closed polyline": {file: sideIn, code: "entity", also: "missing", harm: func(d *drawing) int {
		e := d.first("DADO")
		layer := e.layer
		d.remove(e)
		return d.insert(d.first("DADO"), []tag{{"0", "LINE"}, {"8", layer}, {"10", "6.1"}, {"20", "-2.5"}, {"11", "6.1"}, {"21", "142.5"}})
	}},
	"a text on a cut layer": {file: sideIn, code: "entity", also: "count", harm: func(d *drawing) int {
		e := d.first("DADO")
		return d.insert(e, []tag{{"0", "TEXT"}, {"8", e.layer}, {"10", "6.1"}, {"20", "0"}, {"40", "3"}, {"1", "left"}})
	}},
	"a line with a height": {file: sideIn, code: "height", also: "missing", harm: func(d *drawing) int {
		e := d.first("GROOVE")
		e.raise("3.0")
		return e.line()
	}},
	"a line in another plane": {file: sideIn, code: "height", also: "missing", harm: func(d *drawing) int {
		e := d.first("GROOVE")
		d.tags = slices.Insert(d.tags, e.from+1, tag{"210", "1.0"}, tag{"220", "0.0"}, tag{"230", "0.0"})
		return e.line()
	}},
	"a line on the sheet of paper": {file: sideIn, code: "height", also: "missing", harm: func(d *drawing) int {
		e := d.first("GROOVE")
		d.tags = slices.Insert(d.tags, e.from+1, tag{"67", "1"})
		return e.line()
	}},
	"a polyline of one point": {file: sideIn, code: "entity", also: "missing", harm: func(d *drawing) int {
		e := d.first("GROOVE")
		e.shorten(1)
		return e.line()
	}},
}
