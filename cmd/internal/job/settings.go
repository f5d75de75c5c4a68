package job

import (
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// setJoinery fills in the settings of the joints: each is the drawer's own, or
// the file's, or the fallback. It tells whether all that are given could be read.
func (b *builder) setJoinery(d *Drawer, own *section, put func(joinery.Field, value)) (settled bool) {
	settled = true
	setting := func(f joinery.Field) value {
		v := either(own.values[string(f)], b.joinery.values[string(f)])
		put(f, v)
		if own.values[string(f)].given {
			d.ownSettings = append(d.ownSettings, f)
		}
		settled = settled && (!v.given || v.text != "" || len(v.lengths) > 0)
		return v
	}
	d.FenceDistance = setting(joinery.FieldFenceDistance).mm(0)
	d.CutterHeight = setting(joinery.FieldCutterHeight).mm(0)
	d.BottomFit = joinery.BottomFit(setting(joinery.FieldBottomFit).text)
	d.BottomHeight = setting(joinery.FieldBottomHeight).mm(0)
	d.BottomSlack = setting(joinery.FieldBottomSlack).mm(0)
	d.GlueRoom = setting(joinery.FieldGlueRoom).mm(0)
	ends := setting(joinery.FieldGrooveEnds)
	dadoPlay, groovePlay := setting(joinery.FieldDadoPlay), setting(joinery.FieldGroovePlay)

	if faces := setting("faces"); faces.text == oneFace && !b.namesJoint(d) {
		d.Joint = joinery.DoubleRabbet
	}
	d.GrooveEnds = joinery.GrooveEnds(ends.text)
	switch d.Cutter.Kind {
	case joinery.Router:
		if !ends.given {
			d.GrooveEnds = joinery.GrooveStopped
		}
		d.DadoPlay, d.GroovePlay = dadoPlay.mm(0), groovePlay.mm(0)
		if b.router.values["exact-slots"].text == string(mill.SlotsWidened) {
			d.SlotRoom = mill.SlotRoom
		}
		d.DepthFrom = joinery.DepthFrom(b.router.values["depth-from"].text)
		for _, k := range routerKeys {
			put(joinery.Field(k.name), b.router.values[k.name])
		}
	case joinery.Saw:
		if !ends.given {
			d.GrooveEnds = joinery.GrooveThrough
		}
	default:
		return false // without a machine nothing can be checked against it
	}
	b.routed = b.routed || d.Cutter.Kind == joinery.Router
	for _, f := range routerFields {
		v := own.values[string(f)]
		_, known := b.sawn[f]
		switch {
		case d.Cutter.Kind != joinery.Saw:
		case v.given && asksRouter(f, v):
			b.notForSaw(f, v.at, d.Name)
		case !v.given && !known:
			b.sawn[f] = d.Name
		}
	}
	return settled
}

// namesJoint tells whether a drawer's own entry decides on its joint.
func (b *builder) namesJoint(d *Drawer) bool { _, given := d.places[joinery.FieldJoint]; return given }

// routerFields are the settings that only a router can keep.
var routerFields = []joinery.Field{joinery.FieldGrooveEnds, joinery.FieldDadoPlay, joinery.FieldGroovePlay}

// asksRouter tells whether a given value asks for what a saw cannot do.
func asksRouter(f joinery.Field, v value) bool {
	return f != joinery.FieldGrooveEnds || v.text == string(joinery.GrooveStopped)
}

func (b *builder) notForSaw(f joinery.Field, at Position, drawer string) {
	if f == joinery.FieldGrooveEnds {
		b.fail(CodeNotForSaw, at, "write `groove-ends: through`, or cut the drawer with a router",
			"the drawer %s is cut with a saw, whose grooves cannot be stopped", quote(drawer))
		return
	}
	b.fail(CodeNotForSaw, at, "delete the entry, or cut the drawer with a router",
		"%s is for a router, and the drawer %s is cut with a saw: the slot is as wide as the cutter", f, quote(drawer))
}

// checkDefaults reports settings for the whole file that its saws cannot keep:
// stopped grooves where one drawer is sawn, plays where no drawer is routed.
// With both machines in a file the plays are for the router alone.
func (b *builder) checkDefaults() {
	if at := b.root.values["router"]; at.given && !b.routed && len(b.sawn) > 0 {
		b.fail(CodeNotForSaw, at.at, "delete the entry, or cut a drawer with a router", "router is for a router, and every drawer is cut with a saw")
	}
	for _, f := range routerFields {
		v := b.joinery.values[string(f)]
		drawer, sawn := b.sawn[f]
		if v.given && sawn && asksRouter(f, v) && (f == joinery.FieldGrooveEnds || !b.routed) {
			b.notForSaw(f, v.at, drawer)
		}
	}
}
