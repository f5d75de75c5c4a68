package prove_test

// handedOn are what other programs do to a drawing as a whole.
var handedOn = map[string]seeded{
	"the outside is not turned over": {file: frontOut, code: "mirror", harm: func(d *drawing) int {
		d.all(true, 1, func(x, y float64) (float64, float64) { return 447.8 - x, y })
		return d.mark().line()
	}},
	"an inside is turned over": {file: sideIn, code: "mirror", harm: func(d *drawing) int {
		d.all(true, 1, func(x, y float64) (float64, float64) { return 500 - x, y })
		return d.mark().line()
	}},
	"mirrored about the other axis": {file: frontOut, code: "mirror", also: "register", harm: func(d *drawing) int {
		d.all(true, 1, func(x, y float64) (float64, float64) { return x, 140 - y })
		return d.mark().line()
	}},
	"turned by half a turn": {file: sideIn, code: "mirror", also: "moved", harm: func(d *drawing) int {
		d.all(false, 1, func(x, y float64) (float64, float64) { return 500 - x, 140 - y })
		return d.mark().line()
	}},
	"the corner mark is lost": {file: frontOut, code: "mirror", harm: func(d *drawing) int {
		d.remove(d.mark())
		return 0
	}},
	"moved off 0, 0": {file: sideIn, code: "origin", harm: func(d *drawing) int {
		d.all(false, 1, moved(12.5, 0))
		return d.first("PROFILE").line()
	}},
	"inches taken for millimeters": {file: sideIn, code: "scale", also: "missing moved size uncut", harm: func(d *drawing) int {
		d.all(false, 25.4, func(x, y float64) (float64, float64) { return x * 25.4, y * 25.4 })
		return d.first("SCALE").line()
	}},
	"millimeters under an inch header": {file: sideIn, code: "units", also: "missing moved scale size uncut", harm: func(d *drawing) int {
		d.unit("1", "Units: inches")
		return 0
	}},
	"no unit": {file: sideIn, code: "units", harm: func(d *drawing) int {
		d.unit("0", "Exported by somebody")
		return 0
	}},
	"another unit": {file: sideIn, code: "units", harm: func(d *drawing) int { // 5: centimeters
		d.unit("5", "Units: centimeters")
		return 0
	}},
	"stretched in one direction": {file: bottomIn, code: "scale", also: "size", harm: func(d *drawing) int {
		d.all(false, 1, func(x, y float64) (float64, float64) { return x, y * 1.001 })
		return d.first("SCALE").line()
	}},
	"the square stretched alone": {file: sideIn, code: "scale", harm: func(d *drawing) int {
		e := d.first("SCALE")
		e.points(func(x, y float64) (float64, float64) { return x * 1.02, y })
		return e.line()
	}},
	"the square lost": {file: sideIn, code: "scale", harm: func(d *drawing) int {
		d.remove(d.first("SCALE"))
		return 0
	}},
	"the square twice": {file: sideIn, code: "scale", harm: func(d *drawing) int {
		e := d.first("SCALE")
		d.insert(e, d.tagsOf(e))
		return 0
	}},
}
