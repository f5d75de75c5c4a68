package present

import (
	"fmt"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/coupon"
)

// Coupon is what coupon --json prints.
type Coupon struct {
	Tool   string        `json:"tool"`
	Drawer string        `json:"drawer"`
	Stock  string        `json:"stock"`
	Units  string        `json:"units"`
	Length record.Length `json:"length"`
	Width  record.Length `json:"width"`
	Step   record.Length `json:"step"`
	Tongue record.Length `json:"tongue"` // what goes in, as thick as it is meant to be
	Slots  []CouponSlot  `json:"slots"`
	Pitch  record.Length `json:"comb_pitch"`
	Tooth  record.Length `json:"tooth"` // as meant
	Teeth  int           `json:"teeth"`
	Steps  []string      `json:"steps"`
	File   string        `json:"file,omitempty"`
	// Layers are those of the file, in the order of cutting.
	Layers []record.Layer `json:"layers,omitempty"`
}

// Unit is that of the numbers in JSON.
func (c Coupon) Unit() geom.Unit { return record.UnitOf(c.Units) }

// CouponSlot is a slot by its number, with where its near wall is from the datum end.
type CouponSlot struct {
	Number int           `json:"number"`
	Width  record.Length `json:"width"`
	At     record.Length `json:"at"`
}

// CouponOf is a coupon for the report.
func CouponOf(drawer, stock string, c coupon.Coupon) Coupon {
	u := c.Asked.Unit
	out := Coupon{Tool: "drawerwright", Drawer: drawer, Stock: stock, Units: u.String(),
		Length: record.Length(c.Panel.Length()), Width: record.Length(c.Panel.Width()), Step: record.Length(c.Step), Tongue: record.Length(c.Asked.Tongue),
		Pitch: record.Length(c.Comb.Pitch), Tooth: record.Length(c.Comb.Tooth()), Teeth: c.Comb.Teeth, Steps: c.Steps,
		Slots: []CouponSlot{}}
	for _, s := range c.Slots {
		out.Slots = append(out.Slots, CouponSlot{s.Number, record.Length(s.Width), record.Length(s.X)})
	}
	return record.Settle(out, u)
}

// Draw adds the file of its drawing.
func (c *Coupon) Draw(file string, layers []record.Layer) {
	c.File, c.Layers = file, layers
	*c = record.Settle(*c, c.Unit())
}

// CouponHead says what the coupon is cut from.
func CouponHead(c Coupon) string {
	return fmt.Sprintf("Fit coupon for %s: cut %s x %s %s of %s, then follow the steps.", c.Drawer,
		caliper(c.Length, c.Unit()), caliper(c.Width, c.Unit()), c.Units, c.Stock)
}

// PrintCoupon prints it for the bench.
func PrintCoupon(out *Printed, c Coupon) {
	t := sheetText{Printed: out, unit: c.Unit()}
	slots := NewTable(Numbers("slot"), In("wide", c.Units), In("wider than what goes in", c.Units),
		In("from the datum end", c.Units))
	slots.UnitOnce = true
	for _, s := range c.Slots {
		slots.Add(fmt.Sprint(s.Number), t.number(s.Width), t.number(s.Width-c.Tongue), t.number(s.At))
	}
	slots.Print(t.Printed, "")
	t.line("")
	for i, s := range c.Steps {
		t.paragraph("", fmt.Sprintf("%d. %s", i+1, s))
	}
	if c.File != "" {
		t.line("")
		t.line("drawing: %s", c.File)
		layers := NewTable(Words(""), Words(""), Words(""))
		for _, l := range c.Layers {
			layers.Add(layerSaid(l, c.Unit())...)
		}
		layers.Print(t.Printed, "  ")
	}
	t.line("")
	t.paragraph("", "Then: `drawerwright adjust JOB tooth=... coupon-1=... fits=N`.")
}
