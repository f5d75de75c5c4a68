package job

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// setJoinery fills in the settings of the joints: each is the drawer's own, or
// the file's, or the fallback. It reports whether all that are given could be read.
func (b *builder) setJoinery(d *Drawer, own *section, put func(geom.Setting, value)) (settled bool) {
	settled = true
	setting := func(f geom.Setting) value {
		v := either(own.values[string(f)], b.joinery.values[string(f)])
		put(f, v)
		if own.values[string(f)].given {
			d.ownSettings = append(d.ownSettings, f)
		}
		settled = settled && (!v.given || v.text != "" || len(v.lengths) > 0)
		return v
	}
	d.FenceDistance = setting(joinery.SettingFenceDistance).mm(0)
	d.CutterHeight = setting(joinery.SettingCutterHeight).mm(0)
	d.BottomFit = joinery.BottomFit(setting(joinery.SettingBottomFit).text)
	d.BottomHeight = setting(joinery.SettingBottomHeight).mm(0)
	d.BottomClearance = setting(joinery.SettingBottomClearance).mm(0)
	if deep := setting(joinery.SettingBottomClearanceDepth); len(deep.lengths) > 0 {
		slack := deep.mm(0)
		d.BottomClearanceDepth = &slack
	}
	d.GlueSpace = setting(joinery.SettingGlueSpace).mm(0)
	ends := setting(joinery.SettingGrooveEnds)
	dadoPlay, groovePlay := setting(joinery.SettingDadoClearance), setting(joinery.SettingGrooveClearance)

	if faces := setting("faces"); faces.text == oneFace && !b.namesJoint(d) {
		d.Joint = joinery.DoubleRabbet
	}
	d.GrooveEnds = joinery.GrooveEnds(ends.text)
	switch d.Cutter.Kind {
	case joinery.Router:
		b.setRouter(d, put)
	case joinery.Saw, joinery.RouterTable, joinery.Hand:
	default:
		return false // without a machine nothing can be checked against it
	}
	d.GrooveClearance = groovePlay.mm(0) // of a saw: for a cutter for grooves, or one that is advised
	if d.Cutter.Kind.MadeToFit() {
		d.DadoClearance = dadoPlay.mm(0)
		b.fitted = true
	}
	if !ends.given {
		d.GrooveEnds = joinery.GrooveThrough
		if d.Cutter.Kind.FollowsDrawing() { // a plow plane, like a saw, runs right through
			d.GrooveEnds = joinery.GrooveStopped
		}
	}
	b.anyMachine = true
	b.routed = b.routed || d.Cutter.Kind.FollowsDrawing()
	b.checkFollowed(d, own)
	return settled
}

// setRouter fills in what routers alone do.
func (b *builder) setRouter(d *Drawer, put func(geom.Setting, value)) {
	if b.router.values["exact-slots"].text == string(mill.SlotsWidened) {
		d.SlotRoom = mill.SlotRoom
	}
	d.DepthFrom = joinery.DepthFrom(b.router.values["depth-from"].text)
	for _, k := range routerKeys {
		put(geom.Setting(k.name), b.router.values[k.name])
	}
}

// checkFollowed reports settings of a drawer that its machine cannot keep to.
func (b *builder) checkFollowed(d *Drawer, own *section) {
	for _, f := range routerFields {
		v := own.values[string(f)]
		_, known := b.fenced[f]
		switch {
		case keeps(f, d.Cutter):
		case v.given && asksMore(f, v):
			b.notFor(f, v.at, sawn{d.Name, d.Cutter.Kind})
		case !v.given && !known:
			b.fenced[f] = sawn{d.Name, d.Cutter.Kind}
		}
	}
}

// namesJoint reports whether a drawer's own entry decides on its joint.
func (b *builder) namesJoint(d *Drawer) bool {
	_, given := d.places[joinery.SettingJoint]
	return given
}

// routerFields are the settings that not every machine can keep.
var routerFields = []geom.Setting{joinery.SettingGrooveEnds, joinery.SettingDadoClearance, joinery.SettingGrooveClearance}

// keeps reports whether a machine can do what a setting may ask for.
func keeps(f geom.Setting, c joinery.Cutter) bool {
	switch f {
	case joinery.SettingGrooveEnds:
		return c.Kind.Stops()
	case joinery.SettingGrooveClearance:
		return c.Kind.MadeToFit() || c.Groove > 0
	}
	return c.Kind.MadeToFit()
}

// asksMore reports whether a given value asks for what such a machine cannot do.
func asksMore(f geom.Setting, v value) bool {
	return f != joinery.SettingGrooveEnds || v.text == string(joinery.GrooveStopped)
}

// sawn is a drawer with its machine.
type sawn struct {
	drawer string
	kind   joinery.CutterKind
}

// kindNames are the machines as messages call them.
var kindNames = map[joinery.CutterKind]string{joinery.Saw: "a saw", joinery.RouterTable: "a router table", joinery.Router: "a CNC router", joinery.Hand: "hand tools"}

func (b *builder) notFor(f geom.Setting, at Position, d sawn) {
	if f == joinery.SettingGrooveEnds {
		b.fail(CodeNotForSaw, at, "write `groove-ends: through`, or cut the drawer with a router or a router table, or by hand",
			"the drawer %s is cut with %s, whose grooves cannot be stopped", quote(d.drawer), kindNames[d.kind])
		return
	}
	hint := "delete the entry, or cut the drawer with a CNC router or by hand"
	if f == joinery.SettingGrooveClearance {
		hint += ", or give the cutter a `groove-cutter`, whose grooves are made to fit"
	}
	b.fail(CodeNotForSaw, at, hint,
		"%s is for slots made to fit, and the drawer %s is cut with %s: the slot is as wide as the cutter", f, quote(d.drawer), kindNames[d.kind])
}

// checkDefaults reports settings for the whole file that its machines cannot keep:
// stopped grooves where one drawer is sawn, plays where no drawer's slots are made to
// fit. With both in a file the plays are for those alone.
func (b *builder) checkDefaults() {
	if at := b.root.values["router"]; at.given && !b.routed && b.anyMachine {
		b.fail(CodeNotForSaw, at.at, "delete the entry, or cut a drawer with a CNC router",
			"router is for a CNC router, and no drawer is cut with one")
	}
	routerSheets := func(of *section, names ...string) {
		for _, name := range names {
			if v := of.values[name]; v.given && !b.routed && b.anyMachine {
				b.fail(CodeNotForSaw, v.at, "delete the entry, or cut a drawer with a CNC router",
					"%s is for sheets on a CNC router, and no drawer is cut with one", name)
			}
		}
	}
	if sheets := b.root.values["sheets"].section; sheets != nil {
		routerSheets(sheets, "flip-on", "pin-distance")
	}
	for _, of := range b.root.values["stock"].sections {
		routerSheets(of, "min-sheet", "keep-out")
	}
	for _, f := range routerFields {
		v := b.joinery.values[string(f)]
		d, known := b.fenced[f]
		if v.given && known && asksMore(f, v) && (f == joinery.SettingGrooveEnds || !b.fitted) {
			b.notFor(f, v.at, d)
		}
	}
}
