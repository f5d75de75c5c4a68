package prove_test

// harmedHoles are of what a panel is turned over on.
var harmedHoles = map[string]seeded{
	"a registration hole moved": {file: frontOut, code: "register", harm: func(d *drawing) int {
		d.holes()[0].points(moved(0, 0.4))
		return 0
	}},
	"the pins moved": {file: frontIn, at: frontOut, code: "register", harm: func(d *drawing) int {
		for _, e := range d.holes() {
			e.points(moved(0.4, 0))
		}
		return 0
	}},
	"holes drilled again": {file: frontIn, code: "unknown-layer", also: "register", harm: func(d *drawing) int {
		e := d.holes()[0]
		e.put("8", "REGISTER")
		return e.line()
	}},
	"a registration hole larger": {file: frontOut, code: "register", harm: func(d *drawing) int {
		d.holes()[0].numbers("40", func(r float64) float64 { return r + 0.5 })
		return 0
	}},
	"registration holes off the axis": {code: "register", at: frontIn, folder: func(f *folder) { // in both drawings alike
		for _, name := range []string{frontIn, frontOut} {
			d := drawn(f.t, f.files[name])
			x := 1.0
			if name == frontOut {
				x = -1
			}
			d.holes()[0].points(moved(x, 0))
			f.files[name] = d.data()
		}
	}},
	"a registration hole of straight sides": {file: frontOut, code: "register", harm: func(d *drawing) int {
		hole, e := d.first("REGISTER"), d.first("RABBET")
		tags := d.tagsOf(e)
		x, y, _, _ := hole.box()
		layer := hole.layer
		d.remove(hole)
		d.insert(d.first(layer), tags)
		square, i := [][2]float64{{x - 3, y - 3}, {x + 3, y - 3}, {x + 3, y + 3}, {x - 3, y + 3}}, -1
		e = d.first("RABBET")
		e.points(func(x, y float64) (float64, float64) { i++; return square[i][0], square[i][1] })
		e.put("8", layer)
		return 0
	}},
	"a registration hole lost": {file: frontOut, code: "register", also: "count", harm: func(d *drawing) int {
		d.remove(d.holes()[0])
		return 0
	}},
	"a pin lost": {file: frontIn, at: frontOut, code: "register", harm: func(d *drawing) int {
		d.remove(d.holes()[0])
		return 0
	}},
}
