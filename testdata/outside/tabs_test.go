package outside

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawerwright/geom"
)

// tabs are the bridges that a job asks for, in millimeters.
type tabs struct{ width, height float64 }

var tabsAsked = regexp.MustCompile(`tabs: \{width: ([0-9.]+), height: ([0-9.]+)`)

func tabsOf(job string) (tabs, bool) {
	m := tabsAsked.FindStringSubmatch(job)
	if m == nil {
		return tabs{}, false
	}
	w, _ := strconv.ParseFloat(m[1], 64)
	h, _ := strconv.ParseFloat(m[2], 64)
	return tabs{w, h}, true
}

// slotsIn takes the slots between tabs out of what a reader found, in millimeters.
func slotsIn(list []entity, scale float64) (slots, rest []entity) {
	for _, e := range list {
		if !strings.HasPrefix(e.Layer, "SLOT_") {
			rest = append(rest, e)
			continue
		}
		points := make([][3]float64, len(e.Points))
		for i, p := range e.Points {
			points[i] = [3]float64{p[0] * scale, p[1] * scale, p[2]}
		}
		e.Points = points
		slots = append(slots, e)
	}
	return slots, rest
}

// stretch is a piece of a panel's outline, in millimeters from its first corner.
type stretch struct{ from, to float64 }

// checkTabs judges the slots around a panel, in panel coordinates: they lie along
// the whole outline but for tabs of the width that was asked for, which stand on
// edges that no other part touches and not in the mouths of pockets.
func (r report) checkTabs(slots []entity, p part, s sheet, asked tabs) error {
	length, width := s.Length(), s.Width()
	starts := [4]float64{0, length, length + width, 2*length + width}
	// along gives the sides that a point is on, and how far along the outline.
	along := func(q [3]float64) map[int]float64 {
		on := map[int]float64{}
		if q[0] < -micrometer || q[0] > length+micrometer || q[1] < -micrometer || q[1] > width+micrometer {
			return on
		}
		for side, d := range [4][2]float64{{q[1], q[0]}, {q[0] - length, q[1]}, {q[1] - width, length - q[0]}, {q[0], width - q[1]}} {
			if math.Abs(d[0]) < micrometer {
				on[side] = starts[side] + d[1]
			}
		}
		return on
	}
	var covered []stretch
	for _, e := range slots {
		bit := s.bits(e.Layer)[0]
		if !e.Closed {
			return fmt.Errorf("an open slot")
		}
		for i, q := range e.Points {
			on, next := along(q), along(e.Points[(i+1)%len(e.Points)])
			if out := max(-q[0], q[0]-length, -q[1], q[1]-width); len(on) == 0 && math.Abs(out-bit-slotRoom) > micrometer {
				return fmt.Errorf("a slot has a corner %.4f mm from the panel, its bit is %.4f", out, bit)
			}
			for side, a := range on {
				if b, same := next[side]; same {
					covered = append(covered, stretch{min(a, b), max(a, b)})
				}
			}
		}
	}
	slices.SortFunc(covered, func(a, b stretch) int { return cmp.Compare(a.from, b.from) })
	around := 2 * (length + width)
	var free []stretch
	at := covered[len(covered)-1].to - around
	for _, c := range covered {
		if c.from < at-micrometer {
			return fmt.Errorf("slots run into each other at %.3f", c.from)
		}
		if c.from > at+micrometer {
			free = append(free, stretch{at, c.from})
		}
		at = c.to
	}
	if len(free) != len(slots) || len(free) < 2 {
		return fmt.Errorf("%d tabs between %d slots", len(free), len(slots))
	}
	for _, f := range free {
		if math.Abs(f.to-f.from-asked.width) > micrometer {
			return fmt.Errorf("a tab is %.4f mm wide, asked for %.4f", f.to-f.from, asked.width)
		}
		middle := math.Mod((f.from+f.to)/2+around, around)
		side := 3
		for side > 0 && middle < starts[side] {
			side--
		}
		d := middle - starts[side]
		const off = 0.01 // just outside the panel
		beside := [4][2]float64{{d, -off}, {length + off, d}, {length - d, width + off}, {-off, width - d}}[side]
		if other := r.partAt(p, beside[0], beside[1]); other != "" {
			return fmt.Errorf("a tab at %.3f, %.3f, where %s is", beside[0], beside[1], other)
		}
		dx, dy := asked.width/2, 2*off
		if side%2 == 1 {
			dx, dy = dy, dx
		}
		for _, k := range s.Pockets {
			b := k.Outline.Bounds()
			if beside[0] > b.Min.X-dx && beside[0] < b.Max.X+dx && beside[1] > b.Min.Y-dy && beside[1] < b.Max.Y+dy {
				return fmt.Errorf("a tab at %.3f, %.3f in the mouth of the %s", beside[0], beside[1], k.Kind)
			}
		}
	}
	return nil
}

// partAt names a part of the drawer whose box holds a point of another part's
// middle, in millimeters of that part.
func (r report) partAt(p part, x, y float64) string {
	for _, stands := range p.Placements {
		q := stands.at(x/r.mm(), y/r.mm(), p.Thickness/2)
		for _, o := range r.Parts {
			if o.Drawer != p.Drawer || o.Name == p.Name {
				continue
			}
			for _, s := range o.Placements {
				a, b := s.at(0, 0, 0), s.at(o.Length, o.Width, o.Thickness)
				in := true
				for k := range 3 {
					in = in && q[k] > min(a[k], b[k]) && q[k] < max(a[k], b[k])
				}
				if in {
					return o.Role
				}
			}
		}
	}
	return ""
}

// TestTabsFind: the judgment of tabs sees one that is too narrow, one on an edge
// that another part bears on, one in a pocket's mouth, a slot too few and a slot
// too near.
func TestTabsFind(t *testing.T) {
	i := slices.IndexFunc(extraJobs, func(j extraJob) bool { return j.name == "tabs" })
	dir, r := build(t, extraJobs[i].text)
	asked, _ := tabsOf(extraJobs[i].text)
	part := slices.IndexFunc(r.Parts, func(p part) bool { return p.Role == "box-front" })
	p := r.Parts[part]
	s := r.sheet(p, geom.Millimeter)
	a := audit(t, []string{dir + "/" + p.Files.Inside})[0]
	good, _ := slotsIn(a.Entities, 1)
	if err := r.checkTabs(good, p, s, asked); err != nil {
		t.Fatal(err)
	}
	layer, length, width := good[0].Layer, s.Length(), s.Width()
	// Slots all round but for two tabs on two sides that face each other; w is their width.
	around := func(w, x, y float64) []entity {
		out := s.bits(layer)[0] + slotRoom
		if y > 0 { // on the ends
			return []entity{
				{Layer: layer, Closed: true, Points: [][3]float64{{-out, y}, {-out, -out}, {length + out, -out}, {length + out, y}, {length, y}, {length, 0}, {0, 0}, {0, y}}},
				{Layer: layer, Closed: true, Points: [][3]float64{{length + out, y + w}, {length + out, width + out}, {-out, width + out}, {-out, y + w}, {0, y + w}, {0, width}, {length, width}, {length, y + w}}},
			}
		}
		return []entity{
			{Layer: layer, Closed: true, Points: [][3]float64{{x + w, -out}, {length + out, -out}, {length + out, width + out}, {x + w, width + out}, {x + w, width}, {length, width}, {length, 0}, {x + w, 0}}},
			{Layer: layer, Closed: true, Points: [][3]float64{{x, width + out}, {-out, width + out}, {-out, -out}, {x, -out}, {x, 0}, {0, 0}, {0, width}, {x, width}}},
		}
	}
	if err := r.checkTabs(around(asked.width, 100, 0), p, s, asked); err != nil {
		t.Fatal(err)
	}
	moved := around(asked.width, 100, 0)
	moved[0].Points[0][1] += 2 * micrometer
	for name, slots := range map[string][]entity{
		"narrow":  around(asked.width-2*micrometer, 100, 0),
		"bearing": around(asked.width, 0, 60),
		"mouth":   around(asked.width, 2, 0),
		"missing": good[1:],
		"doubled": append(slices.Clone(good), good[0]),
		"near":    moved,
	} {
		if r.checkTabs(slots, p, s, asked) == nil {
			t.Errorf("%s: not found", name)
		}
	}
}
