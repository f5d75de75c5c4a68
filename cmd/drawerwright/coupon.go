package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/coupon"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"

	"github.com/spf13/cobra"
)

func newCoupon(s streams) *cobra.Command {
	var asJSON, all bool
	var drawer, dir string
	c := &cobra.Command{
		Use:   "coupon JOB",
		Short: "Make a fit coupon: stepped slots and a comb that measures the cut",
		Long: `coupon prints how to cut a small panel of slots, each 0.05 mm (0.002 in) wider than
the one before, and a comb of slits, from the stock of a drawer's sides: the slot into
which the tongue slides as wanted and the comb's teeth go back in by adjust, as
fits=N, coupon-N=... and tooth=...

For a router it writes the drawing too, with -o into a folder.`,
		Example: `  $ drawerwright coupon drawers.yaml
  $ drawerwright coupon drawers.yaml --drawer tray -o coupon`,
		Args:              oneJob,
		ValidArgsFunction: jobFiles,
		RunE: func(c *cobra.Command, args []string) error {
			l, err := ready(args[0], asJSON, s)
			if err != nil {
				return err
			}
			at, err := chosen(l.Batch, drawer)
			if err != nil {
				return err // usage
			}
			d := l.Batch.Drawers[at]
			made, err := couponOf(l.Batch, d)
			if err != nil {
				return l.refuse(at, err, asJSON, s)
			}
			out := present.CouponOf(d.Spec.Name, d.Spec.Sides.Name, made)
			if dir != "" {
				drawn, err := drawCoupon(l.Batch, d, made, dir)
				if err != nil {
					return l.refuse(at, err, asJSON, s)
				}
				out.Draw(drawn.path, record.Legend(drawn.part, drawn.layers, l.Batch.DXF))
			}
			if asJSON {
				return done(writeJSON(s.out, out))
			}
			return done(s.show(present.Screen{
				Head:  []present.Line{l.cannotCut(at), {Text: present.CouponHead(out)}},
				Whole: func(text *present.Printed) { present.PrintCoupon(text, out) },
				More:  "the same command with --all",
				All:   all,
			}))
		},
	}
	c.Flags().StringVar(&drawer, "drawer", "",
		"the drawer whose tongue and stock it is for (default: the first of the job)")
	c.Flags().StringVarP(&dir, "output", "o", "", "the folder for a router's drawing")
	allFlag(c, &all)
	c.Flags().BoolVar(&asJSON, "json", false, "print it as JSON")
	return c
}

// couponTongue is what is pushed into the coupon: a tongue, or the bottom where the
// corner has none.
func couponTongue(d batch.Drawer) float64 {
	if tongue := d.Dimensions.Corner.Tongue; tongue > 0 {
		return tongue
	}
	return d.Spec.Bottom.Thickness.Mean
}

// slotBit is the bit that a router makes the slots of a drawer's sides with, those that the
// coupon tries; false where none is cut.
func slotBit(d batch.Drawer) (mill.Bit, bool) {
	slot := geom.Dado
	if d.Spec.Joint != joinery.DadoRabbet {
		slot = geom.Groove // for the bottom
	}
	for _, p := range d.Parts {
		for _, c := range p.Work().Cuts {
			if p.Role == joinery.Side && c.Operation == slot.String() && c.Bit >= 0 {
				return p.Bits[c.Bit], true
			}
		}
	}
	return mill.Bit{}, false
}

func couponOf(b batch.Batch, d batch.Drawer) (coupon.Coupon, error) {
	if d.Setup.Cutter.Kind == joinery.Hand {
		return coupon.Coupon{}, diagnosed{notFor("a coupon is for machines: by hand each dado is pared until its own tongue goes in",
			"cut one dado in scrap, and pare it to its tongue"), b.Units}
	}
	width := d.Setup.Cutter.Width
	if d.Spec.Joint != joinery.DadoRabbet { // then the slots are grooves for the bottom
		width = d.Setup.GrooveCutter()
	}
	asked := coupon.Asked{Thickness: d.Spec.Sides.Thickness.Mean, Tongue: couponTongue(d),
		Bottom: d.Dimensions.Corner.Tongue == 0, Cutter: width,
		Router: d.Setup.Cutter.Kind.FollowsDrawing(), Depth: d.Setup.CutterHeight, Unit: b.Units}
	if bit, found := slotBit(d); found && len(d.Bits) > 1 {
		asked.Cutter, asked.Bit = bit.Diameter, bit.Name
	}
	c, err := coupon.Make(asked)
	return c, inUnit(err, b.Units)
}

// notFor says of a kind of cutter that a coupon, or its drawing, is not for it.
func notFor(fact, ask string) geom.Diagnosis {
	return geom.Diagnosis{Code: coupon.CodeCutter, Level: geom.LevelError, Subject: geom.Subject{Setting: joinery.SettingCutter},
		Fact: geom.Sentencef("%s", fact), Ask: geom.Sentencef("%s", ask)}
}

// drawnCoupon is the file of a coupon, with what is drawn there.
type drawnCoupon struct {
	path   string
	part   router.Part
	layers []router.Layer
}

// drawCoupon writes a router's drawing of a coupon into a folder, under a new name.
func drawCoupon(b batch.Batch, d batch.Drawer, c coupon.Coupon, dir string) (out drawnCoupon, err error) {
	if !d.Setup.Cutter.Kind.FollowsDrawing() {
		return out, diagnosed{notFor("only a CNC router needs a drawing of the coupon: the printed steps say how it is cut",
			"give the command without -o"), b.Units}
	}
	settings := b.Router
	settings.Bits = d.Bits
	t := d.Spec.Sides.Thickness
	work, found := mill.Prepare(mill.Part{Panel: c.Panel, MinThickness: t.Min, MaxThickness: t.Max}, settings)
	for _, d := range found {
		if d.IsError() {
			d.Fact = geom.Sentencef("the coupon: %s", d.Fact)
			return out, diagnosed{d, b.Units}
		}
	}
	name := job.FileName(d.Spec.Name) + "-coupon"
	out.part = router.Part{Name: name, Quantity: 1, Stock: d.Spec.Sides.Name, Panel: c.Panel, Work: work, Bits: d.Bits, FromSpoilboard: b.Router.FromSpoilboard}
	if out.layers, err = router.Layers(out.part, geom.Inside, b.DXF); err != nil {
		return out, fmt.Errorf("the coupon: %w", err)
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return out, err
	}
	out.path = filepath.Join(dir, name+"."+geom.Inside.String()+".dxf")
	var drawn bytes.Buffer
	if _, err := router.Draw(out.part, geom.Inside, out.layers, b.DXF).WriteTo(&drawn); err != nil {
		return out, err
	}
	return out, writeNew(out.path, drawn.Bytes())
}
