package main

import (
	"maps"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
)

// TestLinenChest, by hand. 450 - 20.1 - 5 leaves boxes of 424. Fronts share 640 - 2 x 3 - 2 x 4 - 130 = 496. A row of
// 248 leaves 248 - 20 - 5 = 223 for a box: 190 of those that are made. Its runner, of 20 with the wear strip, is at its
// front's lower edge, and the runner of the row above 252 over that: 252 - 20 - 190 = 42 are free, of which a kicker
// of 20 is put 5 and what the box grows by over it. Boxes and cabinet are of quartersawn white oak: 0.00180 for one
// percent of moisture. Air of 35, 45 and 60 % at 20 degrees makes that 6.96, 8.49 and 11.00 %:
// 0.00180 x 2.51 x 190 = 0.86 and, over 3 x 64 mm from the front hole of a frame's runner to the rear one, 0.00180 x
// 4.04 x 192 = 1.40. Frames are 600 + 2 x 19 wide, their runners 25 + 19 by 17, the wear strip off, and
// 424 - 2 x 60 + 2 x 10 long; panels are 638 - 2 x 44 + 2 x 10 - 2 by 324 - 2. The three of them are 5.36 million mm3
// and 0.55 m2.
func TestLinenChest(t *testing.T) {
	file, err := filepath.Abs("../../samples/linen-chest.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r := sampled(t, "linen-chest.yaml")
	c := r.Cabinets[0]
	parts := make(map[string]int)
	volume := 0.0
	for _, s := range c.Strips {
		parts[s.Part] += s.Quantity
		volume += float64(s.Quantity) * s.Length.MM() * s.Width.MM() * s.Height.MM()
		if s.Part != "front rail" && s.From.MM() < 20.1 || s.From+s.Length > 20.1+424+1e-6 && s.Quantity == 2 {
			t.Errorf("%+v", s)
		}
	}
	if want := map[string]int{"runner": 6, "wear strip": 6, "guide": 6, "kicker": 6,
		"front rail": 3, "back rail": 3, "dust panel": 3}; !maps.Equal(parts, want) {
		t.Errorf("strips: %v", parts)
	}
	// The wear strip is 25 x 3, the guide on the runner 19 x 20, the kicker 25 + 19 wide.
	frames, panels := 6*638.0*60*17+6*324.0*44*17, 3*568.0*322
	if want := frames + 6*panels + 6*424*(25*3+19*20+44*20); math.Abs(volume-want) > 1e-6*want {
		t.Errorf("strips of %g mm3, want %g", volume, want)
	}
	near := func(what string, got, want, by float64) {
		if math.Abs(got-want) > by {
			t.Errorf("%s is %.4f, want %.4f", what, got, want)
		}
	}
	low := c.Strips[len(c.Strips)-1]
	near("kicker over the box", low.Bottom.MM()-(3+20+190), 5+0.86, 0.005)
	near("free over it, dampest", c.Rows[2].Over.Dampest.MM(), 5, 1e-6)
	const takes = "The frames take 0.006 m3 of planed wood and 0.55 m2 of sheet"
	said := strings.Join(strings.Fields(ran(t, 0, "parts", file, "--all")), " ")
	if !strings.Contains(said, takes) {
		t.Errorf("wood of %g mm3, sheet of %g mm2, told as %s", frames, panels, said)
	}
	if !strings.Contains(said, "that is what the guides do") {
		t.Errorf("the cabinet's sides are packed out once more: %s", said)
	}
	if len(c.Slots) != 4 || c.Slots[0] != 0 {
		t.Fatalf("slots: %v", c.Slots)
	}
	near("rear slot", c.Slots[3].MM(), 1.40, 0.005)
	is(t, "box", drawerOf(t, r, "chest-3").Outside.Height.MM(), 190)
	// Of boards of 150 for 16.05 + 5: 27. Blanks are 2 x 6.05 larger, of what is turned over 2 x 19 longer: 424 +
	// 12.1 + 50 up to 490, 100 + 12.1 + 6 up to 120; 190 of two of (202.1 + 6) / 2 + 6 up to 115; 598.22 - 2 x 16.03 +
	// 2 x 8.01 + 38 + 50 up to 675. Two sides, front and back; twice four sides of two boards, twice front and back.
	// A quarter is added.
	oak := r.Lumber[0]
	is(t, "rough", oak.Thickness.MM(), 27)
	mm3 := 120*(2*490+2*675) + 115*2*(4*490+4*675)
	is(t, "oak 16", oak.Quantity, math.Ceil(float64(mm3)*27*1.25/1e6)/1e3)
	glued := 0
	for _, p := range oak.Parts {
		glued += p.Quantity * (p.Boards - 1)
	}
	is(t, "glued joints", float64(glued), 8)
	is(t, "price", r.Buy[0].Cost, record.Money(oak.Quantity*2900))
}

// TestBlanketChest, by hand. Fence and cutter height are half of walls of 15.025. The bottom is 560 less
// two of them, and two grooves 7.5125 deep less 1; its depth 460 less the box front, of which its
// groove takes 7.5125, less 2. Of 12.025 the rabbets along three edges leave 7.5125, and are as wide.
func TestBlanketChest(t *testing.T) {
	r := sampled(t, "blanket-chest.yaml")
	const wall, h, thick = 15.025, 7.5125, 12.025
	bottom := partOf(t, r, "blankets-bottom")
	long, deep := 560-2*wall+2*h-1, 460-wall+h-2
	is(t, "bottom", bottom.Length, record.Length(long))
	is(t, "bottom's depth", bottom.Width, record.Length(deep))
	is(t, "bottom begins", bottom.Placements[0].Origin[1], wall-h+2)
	is(t, "bottom stands", bottom.Placements[0].Origin[2], h-(thick-h))
	is(t, "back stands", partOf(t, r, "blankets-back").Placements[0].Origin[2], h+h+0.025+0.03)
	volume := (bottom.Length * bottom.Width * bottom.Thickness).MM() // less two strips and, between them, one
	rabbets := 0
	for _, o := range bottom.Operations {
		if o.Kind == "rabbet" {
			rabbets++
			volume -= ((o.Outline[1].X - o.Outline[0].X) * (o.Outline[2].Y - o.Outline[1].Y) * o.Depth).MM()
		}
	}
	volume += 2 * h * h * (thick - h)
	if want := long*deep*thick - (thick-h)*h*(2*deep+long-2*h); rabbets != 3 || math.Abs(volume-want) > 1e-6*want {
		t.Errorf("%d rabbets leave %g mm3, want %g", rabbets, volume, want)
	}
	if len(r.Parts) != 4 || len(r.Warnings) != 0 {
		t.Errorf("%d kinds of parts, warnings %v", len(r.Parts), warningCodes(r))
	}
}

// TestCutlery, by hand. Walls of 12.10333; inside 420 and 480 less two of them. Cells of 60 + 10,
// twice 55 + 10, and the rest, with strips of 6 between; a row of 245 at the back. Strips are 2
// shorter than the inside, 50 high, halved to 25; slots are (0.1 + 0.4) / 2 wider than a strip that
// has swollen: hard maple, flatsawn, 0.00353 of its size for each of 8.48 to 12.02 % of moisture, at
// 45 % and 65 % of humidity (as in TestDresser).
func TestCutlery(t *testing.T) {
	r := sampled(t, "cutlery.yaml")
	const wall, slot = (12.1 + 12.14 + 12.07) / 3, 6 + 0.25 + 6*0.00353*(12.02-8.48)
	across, along := partOf(t, r, "cutlery-insert-across"), partOf(t, r, "cutlery-insert-along")
	if across.Quantity != 1 || along.Quantity != 3 || len(r.Parts) != 6 {
		t.Errorf("%d across, %d along, %d parts", across.Quantity, along.Quantity, len(r.Parts))
	}
	is(t, "across", across.Length, 420-2*wall-2)
	is(t, "along", along.Length, 480-2*wall-2)
	for i, at := range []float64{70, 141, 212} {
		is(t, "strip", along.Placements[i].Origin[0].MM(), wall+at)
	}
	is(t, "strip across", across.Placements[0].Origin[1].MM(), 480-wall-245)
	for _, p := range []struct {
		record.Part
		slots float64
	}{{across, 3}, {along, 1}} {
		// Within a hundredth of a point of moisture.
		if got, want := areaOf(p.Part)*6, (p.Length.MM()*50-p.slots*slot*25)*6; math.Abs(got-want) > 2 {
			t.Errorf("%s has %.1f mm3, by hand %.1f", p.Name, got, want)
		}
	}
	if len(r.Warnings) != 0 {
		t.Errorf("warnings %v", warningCodes(r))
	}
}

// TestDresser, by hand. Inside 562 - 42 - 1 / 2 = 519.5, and 0.03 less as in the kitchen;
// outside 2 x 15 more. Of 520 - 10 less
// a front of 20.1 the slide of 450 fits. Rows of 640 - 6 - 3 x 4 = 622 that grow by 20:
// (622 - 120) / 4 = 125.5 and so on; the space less 7 and 14, and less what the sides
// swell. Wood Handbook, table 13-5: flatsawn cherry moves 0.00248 of its width for each
// point of moisture; 45 % and 60 % of humidity at 20 C are 8.48 and 11.00 % (equation
// 4-5, as its table 4-2 has 8.5 and 11.0).
func TestDresser(t *testing.T) {
	r := sampled(t, "dresser.yaml")
	d := drawerOf(t, r, "dresser-1")
	aimed(t, "width", d.Outside.Width, 549.5-0.0303, 0.01)
	is(t, "depth", d.Outside.Depth, 450)
	is(t, "row", r.Cabinets[0].Rows[0].FrontHeight, 125.5)
	swelling := 0.00248 * (11.00 - 8.48)
	if want := 104.5 / (1 + swelling); math.Abs(d.Outside.Height.MM()-want) > 0.02 { // two hundredths of a point of moisture
		t.Errorf("height %g, by hand %g", d.Outside.Height, want)
	}
	back := partOf(t, r, "dresser-1-back")
	// The back is 2 x 7.5 longer than the inside; its notches reach 35 beyond the inside faces and
	// take the tongues, 13 high.
	long := d.Outside.Width - 30 + 15
	is(t, "back", back.Length, long)
	has := func(x record.Length) bool {
		return slices.ContainsFunc(back.Outline, func(v record.Vertex) bool { return math.Abs((v.X - x).MM()) < 1e-6 })
	}
	if !has(0) || !has(42.5) || !has(long-42.5) || !has(long) || back.Outline[4].Y != 13 {
		t.Errorf("notches at %v", back.Outline)
	}
	if len(r.Warnings) != 0 {
		t.Errorf("warnings %v", warningCodes(r))
	}
}

// TestSewingCabinet, by hand. Rabbets and grooves are 8 deep: sides begin 20 - 8 behind the
// front, 12 long rabbets take their ends. Boxes: 420 - 2 x 0.75 less half of 0.5, and twice 0.03
// by which sides stand proud of a front in the mean: 0.4 of 0.075, by which board, fence, cut and
// cutter scatter; 400 - 5 deep. The tray's back stands 30 before the ends. Its front keeps of
// 400 x 90 x 20 what two rabbets of 12 x 90 x 8 leave, and a groove between them of
// 376 x 4.225 x 8: thickness 4.025 and 0.2 of clearance.
func TestSewingCabinet(t *testing.T) {
	r := sampled(t, "sewing-cabinet.yaml")
	if len(r.Parts) != 15 || len(r.Drawers) != 3 {
		t.Errorf("%d kinds of parts, %d drawers", len(r.Parts), len(r.Drawers))
	}
	front, side := partOf(t, r, "threads-box-front"), partOf(t, r, "threads-side-left")
	is(t, "front", front.Length, 400)
	is(t, "front's thickness", front.Thickness, 20)
	is(t, "side", side.Length, 360-(20-8))
	is(t, "back", partOf(t, r, "threads-back").Length, 400-2*12+2*8)
	is(t, "back stands", partOf(t, r, "threads-back").Placements[0].Origin[1], 360-30)
	is(t, "bottom", partOf(t, r, "threads-bottom").Length, 400-2*12+2*8-2)
	is(t, "side stands", side.Placements[0].Origin[1], 12)
	volume := front.Length * front.Width * front.Thickness
	for _, o := range front.Operations {
		if o.Kind == "rabbet" {
			volume -= (o.Outline[1].X - o.Outline[0].X) * (o.Outline[2].Y - o.Outline[1].Y) * o.Depth
		} else { // of the groove, what lies between the rabbets
			volume -= (400 - 2*12) * (o.Outline[2].Y - o.Outline[1].Y) * o.Depth
		}
	}
	is(t, "volume of the front", volume, 400*90*20-2*12*90*8-376*4.225*8)
	d := drawerOf(t, r, "cloth-1")
	aimed(t, "width", d.Outside.Width, 420-1.5-0.5/2-0.06, 0.01)
	is(t, "depth", d.Outside.Depth, 395)
	is(t, "back in rabbets", partOf(t, r, "cloth-1-back").Length, d.Outside.Width-2*12+2*8)
}

// TestHerbCounter, by hand. Boxes: 360 - 2 x 0.75 less half of 0.5 wide; 150 less runners of 20 and 5
// high; 420 - 5 deep, and the 20 - 8 of the lips before the frame. Fronts: 360 + 2 x 9 by 150 + 9, so
// that lips are 9 and half of the 1.75 beside the box, 14 above it and 20 below. Of the front of the labels,
// 320 x 120 by 12, there is behind the lips a block of (300 - 2 x 12) x 100 by 8.
func TestHerbCounter(t *testing.T) {
	r := sampled(t, "herb-counter.yaml")
	if len(r.Parts) != 10 || len(r.Drawers) != 2 {
		t.Errorf("%d kinds of parts, %d drawers", len(r.Parts), len(r.Drawers))
	}
	d, front := drawerOf(t, r, "herbs"), partOf(t, r, "herbs-box-front")
	is(t, "width", d.Outside.Width, 358.25)
	is(t, "height", d.Outside.Height, 125)
	is(t, "depth", d.Outside.Depth, 415+12)
	is(t, "front's length", front.Length, 378)
	is(t, "front's width", front.Width, 159)
	if front.Quantity != 3 || d.Lip == nil || *d.Lip != (record.Lip{Left: 9.875, Right: 9.875, Top: 14, Bottom: 20}) {
		t.Errorf("%d fronts, lips %+v", front.Quantity, d.Lip)
	}
	is(t, "side", partOf(t, r, "herbs-side-left").Length, 415)
	is(t, "front stands", front.Placements[0].Origin[2], -20)

	labels := partOf(t, r, "labels-box-front")
	low, high := record.Vertex{}, record.Vertex{X: labels.Length, Y: labels.Width} // of the block
	for _, o := range labels.Operations {
		a, b := o.Outline[0], o.Outline[2]
		switch {
		case o.Kind != "rabbet":
		case b.Y-a.Y == labels.Width && a.X == 0:
			low.X = b.X
		case b.Y-a.Y == labels.Width:
			high.X = a.X
		case a.Y == 0:
			low.Y = b.Y
		default:
			high.Y = a.Y
		}
		if o.Kind == "rabbet" {
			is(t, "depth of a rabbet", o.Depth, 8)
		}
	}
	is(t, "front of the labels", labels.Length*labels.Width*(labels.Thickness-8)+(high.X-low.X)*(high.Y-low.Y)*8,
		320*120*12+276*100*8)
}
