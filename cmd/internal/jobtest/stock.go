package jobtest

import (
	"fmt"
	"slices"
	"strings"
)

// stock is a stock of the file.
type stock struct {
	name      string
	thickness float64
	solid     bool
	front     bool // drawer fronts are cut from it
	kerf      float64
}

// stockOf is the name of a stock as thick as that, which is added unless there is one.
func (d *drawing) stockOf(prefix string, thickness float64, front bool) string {
	for i, s := range d.others {
		if strings.HasPrefix(s.name, prefix) && s.thickness == thickness {
			d.others[i].front = d.others[i].front || front
			return s.name
		}
	}
	s := stock{name: fmt.Sprintf("%s%d", prefix, len(d.others)+1), thickness: thickness, front: front}
	d.others = append(d.others, s)
	return s.name
}

// stockSection writes all stocks, and the climate where one is of solid wood.
func (d *drawing) stockSection() string {
	all := []stock{d.sides}
	if d.front.name != d.sides.name {
		all = append(all, d.front)
	}
	all = append(all, d.others...)
	var b strings.Builder
	b.WriteString("stock:\n")
	for _, s := range all {
		fmt.Fprintf(&b, "  %s: %s\n", s.name, d.stock(s))
	}
	if slices.ContainsFunc(all, func(s stock) bool { return s.solid }) {
		now := d.between(40, 55, "air now")
		fmt.Fprintf(&b, "climate: {now: %d %%, driest: %d %%, dampest: %d %%, temperature: %d C}\n", now, now-d.between(0, 10, "drier"), now+d.between(0, 10, "damper"), d.between(15, 25, "temperature"))
	}
	return b.String()
}

func (d *drawing) stock(s stock) entries {
	var e entries
	d.thickness(&e, s)
	if s.solid || !d.odds(8, "no sheet") {
		d.sheets(&e, s)
	}
	switch {
	case s.solid:
		e.say("material", "%s", d.word("wood", "cherry", "red oak", "yellow-poplar", "sugar maple"))
		if d.odds(2, "quartered") {
			e.say("cut", "quartersawn")
		}
	case !d.odds(6, "no material"):
		e.say("material", "%s", d.word("material", "birch-plywood", "plywood", "mdf", "hardboard", "particleboard"))
	}
	if s.kerf > 0 {
		e.say("kerf", "%s", d.mm(s.kerf))
	}
	if d.odds(5, "banded") {
		e.say("edge-banding", "{thickness: %s, price: %.2f}", d.mm(d.length(0.4, 2, "banding")),
			d.length(0.2, 2, "price of banding"))
	}
	return e
}

// thickness is one reading, one with a standard, or three about the mean.
func (d *drawing) thickness(e *entries, s stock) {
	switch d.between(0, 5, "readings") {
	case 0:
		e.say("thickness", "%s", d.mm(s.thickness))
		if !s.solid && d.odds(2, "by standard") && s.thickness >= 6 && s.thickness <= 18 {
			e.say("tolerance", "%s", d.word("standard", "en315-sanded", "ps1-sanded"))
		}
	default:
		spread := d.length(0, 0.1, "spread")
		e.say("thickness", "%s", d.list(s.thickness, s.thickness-spread, s.thickness+spread))
	}
}

// sheets are sizes with prices; sometimes how many there are.
func (d *drawing) sheets(e *entries, s stock) {
	sizes := []string{"2440 mm x 1220 mm", "1525 mm x 1525 mm", "96 in x 48 in", "60 in x 60 in"}
	if s.solid {
		sizes = []string{"2400 mm x 400 mm", "96 in x 16 in"}
	}
	size := d.word("sheet", sizes...)
	e.say("sheet", "%s", size)
	if d.job.Machine == "router" && !s.solid && d.odds(4, "measured sheets") {
		shortest := []string{"2438 mm x 1217 mm", "1523 mm x 1521.5 mm", "95.9 in x 47.9 in", "59.9 in x 59.9 in"}
		e.say("min-sheet", "%s", shortest[slices.Index(sizes, size)])
	}
	if d.job.Machine == "router" && !s.solid && d.odds(4, "clamped") {
		e.say("keep-out", "[{at: 0 mm x %d mm, size: 40 mm x 60 mm}, {at: %d mm x 0 mm, size: 60 mm x 40 mm}]", d.between(300, 700, "clamp at an end"), d.between(200, 900, "clamp at the edge"))
	}
	if grain := d.word("grain", "length", "length", "none"); s.solid || grain != "none" {
		e.say("grain", "length")
	}
	if !d.odds(4, "no price") {
		e.say("price", "%.2f", float64(d.between(800, 12000, "price"))/100)
	}
	if d.odds(6, "in the rack") {
		e.say("count", "%d", d.between(2, 60, "sheets"))
	}
	if !s.solid && d.odds(6, "more sizes") {
		e.say("other-sheets", "{half: {sheet: 1220 mm x 1220 mm, price: %.2f}}",
			float64(d.between(500, 6000, "price of a half"))/100)
	}
	if s.front && d.odds(3, "fronts match") {
		e.say("match", "%s", d.word("match", "batch", "sequence"))
	}
}
