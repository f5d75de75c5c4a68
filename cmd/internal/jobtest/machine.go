package jobtest

import (
	"fmt"
	"math"
	"strings"
)

// choose draws what everything else follows from: unit, machine, walls and cutter.
func (d *drawing) choose() {
	d.job.Units = d.wanted(d.want.Units, "units", Units)
	d.job.Machine = d.wanted(d.want.Machine, "machine", Machines)
	d.ts = d.length(10.5, 15.8, "sides")
	d.tf = d.ts
	d.sides = stock{name: "walls", thickness: d.ts, solid: d.odds(8, "solid walls")}
	d.front = d.sides
	if d.odds(4, "other front") {
		d.tf = d.length(10.5, 19, "front")
		d.front = stock{name: "ends", thickness: d.tf}
	}
	d.fence = d.tf / 2
	switch {
	case d.fenced():
		d.slot = d.fence + d.length(0.12, 0.38, "clearance of the slot")
		if d.odds(4, "another cutter for grooves") {
			d.grooves = 3.2
		}
		return
	case d.job.Machine == "hand":
		d.bits = []float64{3.2} // the plow iron
		return
	}
	d.bits = [][]float64{{3}, {6, 3}, {4}, {8, 4, 3}, {6.35, 3.175}, {3.175}}[d.between(0, 5, "bits")]
}

// fenced reports whether slots are as wide as the machine's cutter.
func (d *drawing) fenced() bool { return d.job.Machine == "saw" || d.job.Machine == "router-table" }

// machine is the cutter, and what a router is asked to do.
func (d *drawing) machine() string {
	var e entries
	e.say("kind", "%s", d.job.Machine)
	switch {
	case d.fenced():
		e.say(map[string]string{"saw": "width", "router-table": "diameter"}[d.job.Machine], "%s", d.mm(d.slot))
		if d.grooves > 0 {
			e.say("groove-cutter", "%s", d.mm(d.grooves))
		}
		return e.section("cutter")
	case d.job.Machine == "hand":
		e.say("width", "%s", d.mm(d.bits[0]))
		return e.section("cutter")
	case len(d.bits) == 1:
		e.say("diameter", "%s", d.mm(d.bits[0]))
		if d.odds(2, "reach") {
			e.say("reach", "%s", d.mm(d.length(22, 40, "how deep")))
			e.say("flutes", "%d", d.between(1, 3, "flutes"))
		}
		return e.section("cutter") + d.router()
	}
	var bits []string
	for i, diameter := range d.bits {
		reach, tool := d.length(22, 40, "reach"), ""
		if int(math.Round(reach*100))%2 == 0 {
			tool = fmt.Sprintf("tool: %d, ", i+1)
		}
		bits = append(bits, fmt.Sprintf("%s: {%sdiameter: %s, reach: %s, flutes: %d}", []string{"large", "small", "fine"}[i], tool, d.mm(diameter), d.mm(reach), d.between(1, 3, "flutes")))
	}
	e.say("bits", "{%s}", strings.Join(bits, ", "))
	return e.section("cutter") + d.router()
}

func (d *drawing) router() string {
	var e entries
	if d.odds(3, "overcut") {
		e.say("overcut", "%s", d.mm(d.length(0, 3, "how far")))
	}
	if d.odds(3, "relief") {
		if way := d.word("way of relief", "dogbone", "t-bone", "each"); way != "each" {
			e.say("relief", "%s", way)
		} else {
			e.say("relief", "{others: %s, groove: %s, dado: t-bone, rabbet: none}",
				d.word("relief", "dogbone", "t-bone"), d.word("relief of grooves", "dogbone", "t-bone"))
		}
	}
	if d.odds(4, "exact slots") {
		e.say("exact-slots", "%s", d.word("slots", "widened", "centerline"))
	}
	if d.odds(4, "depths") {
		e.say("depth-from", "%s", d.word("from", "top", "spoilboard"))
	}
	if d.odds(4, "register") {
		e.say("register", "{place: %s}", d.word("place", "waste", "centerline"))
	}
	tabs := d.odds(3, "tabs")
	if tabs { // as high as the thinnest board needs it; what has no room for them gets a skin
		width := d.length(4, 10, "tab")
		as := []string{"", ", as: slots", "", ", as: marks"}[int(math.Round(width*100))%4]
		e.say("tabs", "{width: %s, height: %s, spacing: %s%s}", d.mm(width),
			d.mm(d.length(1.4, 1.9, "height of a tab")), d.mm(d.length(150, 250, "spacing")), as)
	}
	if skin := d.odds(3, "skin"); skin || tabs {
		e.say("onion-skin", "%s", d.mm(d.length(0.2, 0.5, "how thick")))
	}
	if d.odds(3, "engraved") {
		switch how := d.word("engraving", "yes", "with height", "with a bit"); {
		case how == "with a bit" && len(d.bits) == 3:
			e.say("engrave", "{bit: fine, depth: %s}", d.mm(0.2))
		case how == "with height":
			e.say("engrave", "{height: %s}", d.mm(d.length(12, 20, "figures")))
		default:
			e.say("engrave", "yes")
		}
	}
	if d.odds(4, "part gap") {
		e.say("part-spacing", "%s", d.mm(d.length(25, 40, "gap of parts")))
	}
	return e.section("router")
}

// joinery are the settings for all drawers.
func (d *drawing) joinery() string {
	var e entries
	if d.odds(3, "says the fence") {
		e.say("fence-distance", "%s", d.mm(d.fence))
	}
	if d.odds(3, "own height") {
		e.say("cutter-height", "%s", d.mm(d.ts/2+d.length(-0.8, 0.8, "height")))
	}
	if d.odds(4, "own deep clearance") {
		e.say("bottom-clearance-depth", "%s", d.mm(d.length(1, 2.5, "deep clearance")))
	}
	if d.odds(3, "own clearance") {
		e.say("bottom-clearance", "%s", d.mm(d.length(1, 2.5, "slack")))
	}
	if d.odds(5, "glue space") {
		e.say("glue-space", "%s", d.mm(0.2))
	}
	if !d.fenced() {
		if d.odds(4, "own clearances") {
			e.say("dado-clearance", "%s", d.mm(d.length(0.12, 0.35, "dado clearance")))
			e.say("groove-clearance", "%s", d.mm(d.length(0.1, 0.4, "groove clearance")))
		}
		if d.odds(5, "groove ends") {
			e.say("groove-ends", "%s", d.word("ends", "stopped", "through", "plugged"))
		}
	} else if d.odds(5, "plugs") {
		e.say("groove-ends", "%s", d.word("ends", "through", "plugged"))
	}
	return e.section("joinery")
}
