package readback

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Pilot holes in the backs of drawer fronts are no numbers of the report: they come from where it says that the box
// front has its holes and where both boards stand. On paper one row may be for several drawers, whose pilots are each
// read of it.

// placed is where a part stands on its drawer: the place of its corner, and which ways its length and width run.
type placed struct{ Origin, X, Y [3]float64 }

// of is where a point of the part is in the drawer.
func (p placed) of(x, y float64) (at [3]float64) {
	for k := range at {
		at[k] = p.Origin[k] + float64(x*p.X[k]) + float64(y*p.Y[k])
	}
	return at
}

// on is where a point of the drawer is on the part, seen along its thickness.
func (p placed) on(at [3]float64) (x, y float64) {
	for k := range at {
		x += float64((at[k] - p.Origin[k]) * p.X[k])
		y += float64((at[k] - p.Origin[k]) * p.Y[k])
	}
	return x, y
}

// reportedPilots takes those of each drawer front: where on its back, from its lower left corner, the box front behind
// it has holes through. Those for handles, which a hole of the drawer front stands before, are not for screws.
func (r *reading) reportedPilots(j reported) {
	type board struct{ drawer, role string }
	at := make(map[board]int)
	for i, p := range j.Parts {
		at[board{p.Drawer, p.Role}] = i
	}
	for _, d := range j.Drawers {
		ahead, has := at[board{d.Name, "drawer-front"}]
		behind, known := at[board{d.Name, "box-front"}]
		if !has || !known {
			continue
		}
		front, box := j.Parts[ahead], j.Parts[behind]
		if len(front.Placements) == 0 || len(box.Placements) == 0 {
			r.fail("%s: nothing says where its fronts stand", d.Name)
		}
		handles := middles(front.Operations, front.Thickness)
		var across, up []float64
		for _, hole := range middles(box.Operations, box.Thickness) {
			x, y := front.Placements[0].on(box.Placements[0].of(hole[0], hole[1]))
			if !slices.ContainsFunc(handles, func(h [2]float64) bool { return same(h[0], x) && same(h[1], y) }) {
				across, up = append(across, x), append(up, y)
			}
		}
		if len(across) > 0 {
			r.pilotsAt(d.Name, "from the left", across)
			r.pilotsAt(d.Name, "from below", up)
		}
	}
}

// same reports whether holes stand behind one another, or in one row, by distances in mm or in.
func same(a, b float64) bool { return math.Abs(a-b) < 1e-4 }

// middles are those of the round holes through a part.
func middles(list []operation, thickness float64) (at [][2]float64) {
	for _, o := range list {
		if a := o.Outline; o.hole() && o.Depth >= thickness {
			at = append(at, [2]float64{(a[0][0] + a[1][0]) / 2, (a[0][1] + a[1][1]) / 2})
		}
	}
	return at
}

// pilotsAt adds distances, each once, the least first, and how many there are.
func (r *reading) pilotsAt(drawer, from string, list []float64) {
	slices.Sort(list)
	list = slices.CompactFunc(list, same)
	r.count("pilot holes", drawer, "distances "+from, len(list))
	for i, v := range list {
		r.exact("pilot holes", drawer, fmt.Sprint("distance ", i+1, " ", from), v)
	}
}

// pilots reads the table of pilot holes in the backs of drawer fronts.
func (p *packetReader) pilots() taken {
	if !p.s.begins("no.", "from the left", "from below", "drawers") {
		return notTaken
	}
	for row := range p.s.table(4) {
		for _, drawer := range strings.Split(row[3], ", ") {
			for i, from := range []string{"from the left", "from below"} {
				list := strings.Split(row[1+i], ", ")
				p.count("pilot holes", drawer, "distances "+from, len(list))
				for n, v := range list {
					p.printed("pilot holes", drawer, fmt.Sprint("distance ", n+1, " ", from), v)
				}
			}
		}
	}
	return tableTaken
}
