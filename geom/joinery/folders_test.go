package joinery

import (
	"math"
	"testing"
)

// TestRailsStand: in a box of 460 x 140 x 500 with walls of 12.2, rails of 3 for folders 150 from hook
// to hook, 60 below and 15 above them. Inside are 435.6 from side to side, 475.6 from front to back. A
// pair is 153 over all. The bottom of 6.1 lies half of 12.2 high, the rails 0.03 over it.
func TestRailsStand(t *testing.T) {
	hung := Folders{Width: 150, Below: 60, Above: 15}
	const wide, foot = 435.6, 6.1 + 6.1 + 0.03
	const high = 140 - 15 - foot
	for name, c := range map[string]struct {
		d    Divider
		want []float64
		high float64
	}{
		"one pair": {Divider{Direction: Along, Count: 1}, []float64{(wide - 153) / 2, (wide-153)/2 + 150}, high},
		"two pairs": {Divider{Direction: Along, Count: 2}, // (435.6 - 306) / 3
			[]float64{43.2, 193.2, 239.4, 389.4}, high},
		"at": { // to 453 of 475.6
			Divider{Direction: Across, At: []float64{300, 30}, Height: 70}, []float64{30, 180, 300, 450}, 70},
	} {
		s := gridded(Insert{})
		s.Insert, s.Cutter.Width = nil, 3
		c.d.Stock, c.d.Folders = sheet("rails", 3), hung
		s.Dividers = []Divider{c.d}
		d, problems := Build(s)
		if len(problems) > 0 {
			t.Fatal(name, problems)
		}
		p := d.Parts[len(d.Parts)-1]
		if len(p.Placements) != len(c.want) || math.Abs(p.Panel.Width()-c.high) > 1e-9 {
			t.Fatalf("%s: %d rails, %g high, by hand %g", name, len(p.Placements), p.Panel.Width(), c.high)
		}
		for i, at := range p.Placements {
			got := at.Origin.X - 12.2
			if c.d.Direction == Across {
				got = at.Origin.Y - 12.2 - 3
			}
			if math.Abs(got-c.want[i]) > 1e-9 {
				t.Errorf("%s: rail %d is %g from the wall, by hand %g", name, i, got, c.want[i])
			}
		}
	}
}

// TestRailsRefused: what keeps folders from hanging, and the size that would do.
func TestRailsRefused(t *testing.T) {
	hung := Folders{Width: 150, Below: 60, Above: 15}
	for name, c := range map[string]struct {
		d     Divider
		code  string
		limit float64
	}{
		"narrow box": {Divider{Count: 1, Folders: Folders{Width: 400, Below: 60, Above: 15}}, "divider-room",
			460 + 403 + 40 - 435.6},
		"no folder":    {Divider{Count: 1, Folders: Folders{Width: 22, Below: 60, Above: 15}}, "divider-room", 0},
		"two too near": {Divider{At: []float64{30, 195}, Folders: hung}, "divider-room", 0},
		"low box": {Divider{Count: 1, Folders: Folders{Width: 150, Below: 105, Above: 15}}, "folder-height",
			105 + 10 + 15 + 12.23},
		"low rails":  {Divider{Count: 1, Height: 69, Folders: hung}, "folder-height", 70},
		"high rails": {Divider{Count: 1, Height: 115, Folders: hung}, "folder-height", 70},
	} {
		s := gridded(Insert{})
		s.Insert, s.Cutter.Width = nil, 3
		c.d.Stock, c.d.Direction = sheet("rails", 3), Along
		s.Dividers = []Divider{c.d}
		_, problems := Build(s)
		if len(problems) != 1 || string(problems[0].Code) != c.code {
			t.Fatal(name, problems)
		}
		if r := problems[0].Remedies; c.limit > 0 && (len(r) == 0 || math.Abs(r[0].Changes[0].Min-c.limit) > 0.01) {
			t.Errorf("%s: %+v, by hand %g", name, r, c.limit)
		}
	}
}
