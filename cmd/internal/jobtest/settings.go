package jobtest

import "strings"

func (d *drawing) head() string {
	title := ""
	if d.odds(2, "title") {
		title = "job: Drawers of " + d.word("whom", "the bench", "a kitchen", "the hall") + "\n"
	}
	return title + "units: " + d.job.Units + "\n"
}

// settings are the sections that need not be there.
func (d *drawing) settings() string {
	var b strings.Builder
	for _, section := range []func() string{d.limits, d.accuracy, d.spacers, d.dxf, d.paper, d.sheetRules, d.templates} {
		b.WriteString(section())
	}
	return b.String()
}

func (d *drawing) limits() string {
	var e entries
	if d.odds(4, "limits") {
		e.say("min-tongue-clearance", "%s", d.mm(d.length(0.05, 0.1, "least")))
		e.say("max-tongue-clearance", "%s", d.mm(d.length(0.38, 0.5, "most")))
		e.say("flush", "%s", d.mm(d.length(0.2, 0.4, "recess")))
		e.say("shoulder-gap", "%s", d.mm(d.length(0.2, 0.9, "shoulder")))
		e.say("width", "%s", d.mm(d.length(0.4, 1.2, "width")))
	}
	return e.section("limits")
}

func (d *drawing) accuracy() string {
	var e entries
	if d.odds(4, "accuracy") {
		for _, what := range []string{"cutter", "cut", "fence", "height"} {
			e.say(what, "%s", d.mm(d.length(0.02, 0.1, what)))
		}
		e.say("length", "%s", d.mm(d.length(0.1, 0.5, "length")))
	}
	return e.section("accuracy")
}

func (d *drawing) spacers() string {
	if !d.odds(3, "spacers") {
		return ""
	}
	if d.inches() {
		return "spacers: [1/4, 1/8, 1/16, 1/32, 0.01, 0.005]\n"
	}
	return "spacers: [6, 3, 2, 1, 0.5, 0.25, 0.1]\n"
}

func (d *drawing) dxf() string {
	var e entries
	if d.odds(3, "dxf") {
		version, units := d.word("version", "R2000", "R12"), d.word("units of drawings", "mm", "in")
		e.say("version", "%s", version)
		e.say("units", "%s", units)
		if version == "R12" && units != d.job.Units {
			e.say("notes", "none")
		}
		if d.odds(2, "elevation") {
			e.say("elevation", "yes")
			if d.odds(2, "by elevation alone") {
				e.say("layers", `"{operation}_T{tool}"`)
			}
		}
	}
	return e.section("dxf")
}

func (d *drawing) paper() string {
	var e entries
	if d.odds(3, "paper") {
		e.say("size", "%s", d.word("paper size", "A4", "Letter", "A3"))
		e.say("labels", "%s", d.word("labels", "grid", "none"))
	}
	return e.section("paper")
}

func (d *drawing) sheetRules() string {
	var e entries
	if !d.odds(3, "sheets") {
		return ""
	}
	if d.odds(2, "way") {
		e.say("method", "guillotine")
		if d.odds(3, "timed") {
			e.say("times", "{setting: %d s, cut: %d min}", d.between(0, 300, "to set"), d.between(0, 3, "to cut"))
		}
		if d.odds(3, "begun") {
			e.say("first-cuts", "%s", d.word("first cuts", "rip", "crosscut"))
		}
		if d.odds(2, "staged") {
			e.say("stages", "%d", d.between(2, 4, "stages"))
		} else {
			e.say("prefer", "%s", d.word("preferred", "few-settings", "little-time", "large-offcut", "sheet-for-time"))
		}
	}
	if d.job.Machine == "router" { // bits need more room than blades
		e.say("kerf", "%s", d.mm(d.length(20, 30, "gap")))
		e.say("trim", "%s", d.mm(d.length(15, 25, "rim")))
		on := d.word("turned on", "pins", "three-pins", "stops")
		e.say("flip-on", "%s", on)
		if on != "stops" {
			e.say("pin-distance", "%s", d.mm(d.length(7.5, 15, "pins")))
		}
	} else {
		e.say("kerf", "%s", d.mm(d.length(2, 10, "kerf")))
		e.say("trim", "%s", d.mm(d.length(2, 10, "trim")))
	}
	if d.odds(2, "keeps") {
		e.say("min-offcut", "%s", d.size(d.length(200, 500, "kept long"), d.length(80, 200, "kept wide")))
		e.say("max-weight", "%d kg", d.between(15, 40, "heaviest"))
	}
	return e.section("sheets")
}

// templates are cut from a stock of their own, which stocks list already.
func (d *drawing) templates() string {
	var e entries
	for _, s := range d.others {
		if s.kerf > 0 {
			e.say("stock", "%s", s.name)
			e.say("bed", "%s", d.size(d.length(400, 900, "bed"), d.length(300, 600, "bed's width")))
			e.say("register", "%s", d.word("held by", "pins", "lip"))
		}
	}
	return e.section("templates")
}
