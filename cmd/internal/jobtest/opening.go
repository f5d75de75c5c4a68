package jobtest

import (
	"fmt"
	"math"
	"strings"
)

// places are openings, and slides of the shop's own.
func (d *drawing) places() string {
	text := ""
	if len(d.openings) > 0 {
		text += "openings:\n" + strings.Join(d.openings, "")
	}
	if len(d.slides) > 0 {
		text += "slides:\n" + strings.Join(d.slides, "")
	}
	return text
}

// inOpening puts an entry into an opening of its own.
func (d *drawing) inOpening(e *entries, b *box, name, kind string) {
	rows := d.between(1, 4, "rows")
	b.depth = d.length(300, 560, "cabinet's depth")
	row := b.height + 45 // what slides and gaps take of it
	fronts := d.word("fronts", "inset", "overlay", "none")
	d.opening(name, fronts, b.width, row*float64(rows), b.depth)
	e.say("opening", "%s", name)
	e.say("slide", "%s", d.slide(name, kind))
	d.rows(e, rows, row)
	switch {
	case fronts == "inset" && d.odds(3, "reveal"):
		e.say("reveal", "%s", d.mm(d.length(2, 3, "how wide")))
	case fronts == "overlay" && d.odds(2, "overlay"):
		e.say("overlay", "%s", d.mm(d.length(8, 16, "how far over")))
	}
	if rows > 1 && d.odds(3, "gap") {
		e.say("front-gap", "%s", d.mm(d.length(2, 4, "gap of fronts")))
	}
	if d.odds(4, "steps of heights") {
		e.say("box-heights", "%s", d.list(60, 80, 100, 120, 150, 180, 210))
	}
	if kind == "side-mount" && d.odds(4, "line boring") {
		e.say("line-boring", "32 mm")
	}
	if fronts == "inset" || fronts == "overlay" && !d.odds(4, "no drawer front") {
		var one entries
		one.say("stock", "%s", d.stockOf("face", d.length(15, 22, "drawer front"), true))
		d.handles(&one)
		e.say("drawer-front", "%s", one)
	}
}

func (d *drawing) opening(name, fronts string, width, height, depth float64) {
	var e entries
	w, wide := d.tape(width)
	h, high := d.tape(height)
	deep, _ := d.tape(depth)
	if d.odds(2, "several widths") {
		other, _ := d.tape(width + 0.8)
		w = "[" + w + ", " + other + "]"
	}
	e.say("width", "%s", w)
	e.say("height", "%s", h)
	e.say("depth", "%s", deep)
	cabinet := d.word("cabinet", "frameless", "frameless", "face-frame")
	e.say("cabinet", "%s", cabinet)
	if cabinet == "face-frame" && d.odds(2, "frame stands in") {
		e.say("frame-overhang", "%s", d.mm(d.length(5, 20, "how far in")))
	}
	e.say("fronts", "%s", fronts)
	if d.odds(3, "diagonals") {
		across := math.Hypot(wide, high)
		e.say("diagonals", "%s", d.list(across, across+d.length(0, 1, "askew")))
	}
	if d.odds(5, "behind") {
		e.say("clearance-behind", "%s", d.mm(d.length(5, 25, "kept behind")))
	}
	d.openings = append(d.openings, fmt.Sprintf("  %s: %s\n", name, e))
}

// slide is the built-in one, or one of the shop's own that differs a little.
func (d *drawing) slide(name, kind string) string {
	if !d.odds(3, "own slide") {
		return kind
	}
	var e entries
	e.say("kind", "%s", kind)
	switch kind {
	case "undermount":
		e.say("inside-deduction", "%s", d.mm(d.length(40, 45, "inside less")))
	case "side-mount":
		e.say("clearance", "%s", d.mm(d.length(12.5, 13, "clearance")))
		e.say("lengths", "%s", d.list(250, 300, 350, 400, 450, 500))
	default:
		e.say("clearance-minus", "%s", d.mm(d.length(0.5, 1.5, "minus")))
	}
	if d.odds(2, "rated") {
		e.say("load", "%d kg", d.between(15, 50, "rating"))
	}
	d.slides = append(d.slides, fmt.Sprintf("  own %s: %s\n", name, e))
	return "own " + name
}

// rows are a number, or the first row's height and what the others share.
func (d *drawing) rows(e *entries, rows int, row float64) {
	free := rows
	switch {
	case rows == 1 && d.odds(2, "one row unsaid"):
		return
	case rows > 1 && d.odds(3, "first row's height"):
		free--
		first, _ := d.tape(row - 5)
		e.say("rows", "[%s%s]", first, strings.Repeat(", free", free))
	default:
		e.say("rows", "%d", rows)
	}
	if free < 2 || !d.odds(3, "graduated") {
		return
	}
	if d.odds(2, "by a length") {
		e.say("graduation", "{arithmetic: %s}", d.mm(d.length(2, 12, "step")))
	} else {
		e.say("graduation", "{geometric: 1.%02d}", d.between(2, 15, "ratio"))
	}
}
