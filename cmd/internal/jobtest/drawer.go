package jobtest

import (
	"fmt"
	"slices"
	"strings"
)

// drawers draws one to three entries. With templates the plates' stock is added.
func (d *drawing) drawers() {
	var b strings.Builder
	b.WriteString("drawers:\n")
	for i := range d.between(1, 3, "entries") {
		fmt.Fprintf(&b, "  - %s\n", d.drawer([]string{"ash", "elm", "oak"}[i]))
	}
	d.entries = b.String()
	if d.odds(6, "templates") {
		d.others = append(d.others, stock{name: "plates", thickness: 4, kerf: d.length(0.1, 0.3, "plates' kerf")})
	}
}

// box is what an entry has drawn so far.
type box struct {
	width, height, depth float64 // about, in an opening
}

func (d *drawing) drawer(name string) entries {
	e := entries{"name: " + name}
	slide := d.wanted(d.want.Slide, "slide", Slides)
	corner := d.wanted(d.want.Corner, "corner", Corners[:len(Corners)-1])
	if corner == "rabbet" && d.want.Corner == "" && d.odds(2, "front before the sides") {
		corner = fronted
	}
	if corner == "box-joint" && d.want.Corner == "" && d.job.Machine == "hand" && d.odds(2, "tails") {
		corner = tailed
	}
	bottom := d.wanted(d.want.Bottom, "bottom", Bottoms)
	if d.want.Bottom == "" && !d.odds(12, "odd bottom") {
		bottom = suits(bottom, corner, slide)
	}
	d.job.Slides = append(d.job.Slides, slide)
	var b box
	b.width, b.height, b.depth = d.length(180, 620, "width"), d.length(75, 220, "height"), d.length(200, 520, "depth")
	if slide == Outside {
		e.say("outside", "%s", d.size(b.width, b.height, b.depth))
	} else {
		d.inOpening(&e, &b, name, slide)
	}
	e.say("sides", "%s", d.sides.name)
	if d.front.name != d.sides.name {
		e.say("box-front", "%s", d.front.name)
	}
	d.corner(&e, corner)
	d.bottomOf(&e, slide, bottom)
	if slide == Outside && d.odds(2, "several") {
		e.say("count", "%d", d.between(2, 6, "count"))
	}
	if d.odds(5, "spares") {
		e.say("spares", "%d", d.between(1, 2, "spare"))
	}
	d.divided(&e, b)
	d.pulled(&e)
	switch {
	case slide == Outside && d.odds(5, "drawer front"):
		d.ownFront(&e, b)
	case slide == Outside && corner == fronted && bottom != "applied" && d.odds(2, "lips"):
		end := d.mm(d.length(6, 14, "lips at the ends"))
		e.say("lip", "[%s, %s, %s, %s]", end, end, d.mm(d.length(6, 14, "upper lip")),
			d.mm(d.length(0, 10, "lower lip")))
	}
	if d.odds(2, "load") {
		if d.inches() {
			e.say("load", "%d lb", d.between(5, 40, "pounds"))
		} else {
			e.say("load", "%d kg", d.between(2, 20, "kilograms"))
		}
	}
	return e
}

// suits is a bottom that can be made with such a corner and slide: that one if it can.
func suits(bottom, corner, slide string) string {
	raised := slide == "undermount" || slide == "center-mount" // which stand under the bottom
	switch {
	case (corner == "box-joint" || corner == tailed) && (bottom == "slide-in" || bottom == "fielded"),
		raised && slices.Contains([]string{"applied", "flush", "fielded", "cleats"}, bottom):
		return "grooved-in"
	}
	return bottom
}

func (d *drawing) corner(e *entries, corner string) {
	d.job.Corners = append(d.job.Corners, corner)
	if corner == Housed {
		corner = d.word("front of a housed back", "dado-rabbet", "rabbet", "butt")
		d.job.Corners = append(d.job.Corners, corner)
		e.say("back-joint", "dado")
		if d.odds(2, "own setback") {
			e.say("back-setback", "%s", d.mm(d.length(8, 20, "setback")))
		}
	}
	if corner != "dado-rabbet" || d.odds(2, "says its corner") {
		e.say("joint", "%s", corner)
	}
	switch {
	case corner == "butt":
		e.say("fasteners", "%s", d.word("fasteners", "screws", "dowels", "tenons"))
	case corner == "box-joint" && d.job.Machine == "router" && d.odds(2, "own fingers"):
		e.say("finger-width", "%s", d.mm(d.length(10, 25, "finger")))
	case corner == tailed && d.odds(2, "own slope"):
		e.say("slope", "%d", d.between(5, 10, "slope"))
	}
}

// bottomOf chooses a bottom whose thickness goes into the groove as asked.
func (d *drawing) bottomOf(e *entries, slide, fit string) {
	d.job.Bottoms = append(d.job.Bottoms, fit)
	rise := d.fence
	switch {
	case slide == "undermount":
		rise = 13
	case slide == "center-mount":
		rise = 10
	case fit == "cleats":
		rise = d.length(10, 16, "cleats")
	case fit != "applied" && d.odds(8, "raised"):
		rise = d.length(8, 14, "rise")
	}
	var own entries
	if fit != "auto" || d.odds(2, "says auto") {
		own.say("bottom-fit", "%s", fit)
	}
	if rise != d.fence {
		own.say("bottom-height", "%s", d.mm(rise))
	}
	stands := d.length(3.2, 7, "bottom") // in the groove
	least := d.grooves
	switch {
	case !d.fenced():
		least = slices.Min(d.bits)
	case d.grooves == 0:
		least = d.slot
	}
	switch {
	case d.fenced() && d.grooves == 0:
		stands = d.slot - d.length(0.08, 0.5, "clearance of the bottom")
	case stands < least:
		stands = least - 0.15
	}
	switch fit {
	case "flush":
		stands += rise
	case "fielded": // by less than its groove is high
		stands = least + d.length(1.2, rise-0.8, "what is thicker than the tongue")
	case "applied", "cleats":
		stands = d.length(4, 12, "bottom that lies")
	}
	e.say("bottom", "%s", d.stockOf("ply", stands, false))
	if len(own) > 0 {
		e.say("joinery", "%s", own)
	}
}

// divided stands dividers in dados, which a saw cuts as wide as its cutter, or an insert.
func (d *drawing) divided(e *entries, b box) {
	if !d.odds(4, "divided") {
		return
	}
	thick := d.length(4, 9, "divider")
	if d.fenced() {
		thick = d.slot - 0.2
	}
	name := d.stockOf("thin", thick, false)
	var all []string
	ways := [][]string{{"across"}, {"along"}, {"across", "along"}, nil}[d.between(0, 3, "ways")]
	if ways == nil {
		var one entries
		one.say("stock", "%s", name)
		one.say("columns", "[free, %s, free]", d.mm(d.length(30, 60, "column")))
		one.say("rows", "%d", d.between(2, 3, "rows of cells"))
		if d.odds(2, "own clearance to the walls") {
			one.say("wall-clearance", "%s", d.mm(d.length(1, 4, "clearance to the walls")))
		}
		e.say("insert", "%s", one)
		return
	}
	for _, way := range ways {
		var one entries
		one.say("direction", "%s", way)
		switch {
		case way == "along": // an odd number has one where the pull is
			one.say("at", "2")
		case d.odds(4, "at a place"):
			one.say("at", "%s", d.list(d.length(50, 110, "place")))
		default:
			one.say("at", "%d", d.between(1, 3, "how many"))
		}
		one.say("stock", "%s", name)
		if d.odds(3, "loose") {
			one.say("loose", "yes")
		}
		if !d.fenced() && d.odds(4, "folders") {
			rails := d.stockOf("rails", d.length(3, 3.9, "rail"), false)
			one = entries{"direction: " + way, "at: 1", "stock: " + rails}
			one.say("folders", "%s", d.size(b.width/3, b.height/3, 10))
		}
		all = append(all, one.String())
	}
	e.say("dividers", "[%s]", strings.Join(all, ", "))
}

func (d *drawing) pulled(e *entries) {
	if !d.odds(4, "pull") {
		return
	}
	var one entries
	shape := d.word("shape", "hole", "half-round", "slot", "hand-hold")
	one.say("shape", "%s", shape)
	if d.odds(2, "own pull") {
		one.say("width", "%s", d.mm(map[string]float64{"hole": 30, "half-round": 50, "slot": 100, "hand-hold": 90}[shape]))
	}
	e.say("pull", "%s", one)
}

// ownFront is a drawer front before a box that stands in no opening.
func (d *drawing) ownFront(e *entries, b box) {
	over := d.length(0, 20, "over")
	var one entries
	one.say("stock", "%s", d.stockOf("face", d.length(15, 22, "drawer front"), true))
	one.say("width", "%s", d.mm(b.width+2*over))
	one.say("height", "%s", d.mm(b.height+2*over))
	one.say("overhang-left", "%s", d.mm(over))
	one.say("overhang-below", "%s", d.mm(over))
	d.handles(&one)
	e.say("drawer-front", "%s", one)
}

func (d *drawing) handles(e *entries) {
	switch d.between(0, 2, "handles") {
	case 1:
		e.say("handles", "knob")
	case 2:
		e.say("handles", "handle")
		e.say("handle-spacing", "%s", d.mm(96))
	}
}
