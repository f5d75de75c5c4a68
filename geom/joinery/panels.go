package joinery

import (
	"reflect"
	"slices"

	"drawerwright/geom"
)

// checkPanels judges every panel by the rules of package geom and by its sheet.
func (l *layout) checkPanels() {
	for i, p := range l.drawer.Parts {
		if slices.ContainsFunc(l.drawer.Parts[:i], func(q Part) bool { return q.Stock.Same(p.Stock) && alike(q.Panel, p.Panel) }) {
			continue // a twin: the back of the front, one side of the other
		}
		field := l.fieldOf(p.Role)
		told := make(map[geom.Rule]bool) // once a panel is enough
		thinnest := l.thinnest(p)
		for _, v := range l.violations(thinnest) {
			if told[v.Rule] {
				continue
			}
			told[v.Rule] = true
			d := v.Diagnosis(thinnest)
			d.Subject = about(field, p.Role)
			d.Fact = geom.Sentencef("%s, %s at the thinnest: %s", p.Role, geom.Millimeters(thinnest.Thickness), d.Fact)
			d.Ask = geom.Sentencef("take thicker boards, or other distances")
			d.Remedies = l.webWays(thinnest, v)
			l.say(d)
		}
		l.checkSheet(p, field)
		if p.Stock.Solid && p.Stock.Grain == GrainNone {
			l.refuse(geom.Diagnosis{
				Code: "solid-grain", Subject: about(field, p.Role),
				Fact: geom.Sentencef("%s is solid wood, and the job does not say how its grain runs", p.Stock.Name),
				Ask:  geom.Sentencef("write grain: length, and the sheet's size with the length along the grain first: it has to run along the length of every part"),
			}, true)
		}
	}
}

// checkedPanel is a panel with what the rules say of it.
type checkedPanel struct {
	panel geom.Panel
	found []geom.Violation
}

// violations are those of a panel. Most of a box stays as it was when advice is tried,
// and what has been checked once is known.
func (l *layout) violations(p geom.Panel) []geom.Violation {
	for _, c := range l.checked {
		if reflect.DeepEqual(c.panel, p) {
			return c.found
		}
	}
	found := p.Check()
	l.checked = append(l.checked, checkedPanel{p, found})
	return found
}

// fieldOf is the entry of the job file that a part's stock comes from.
func (l *layout) fieldOf(r Role) geom.Setting {
	switch r {
	case DividerRole:
		return FieldDividers
	case InsertRole:
		return FieldInsert
	case DrawerFrontRole:
		return FieldDrawerFront
	}
	_, field := l.stockOf(r)
	return field
}

// thinnest is a part's panel as its thinnest board comes out: cuts go less deep
// where it is the wood left that stays the same.
func (l *layout) thinnest(p Part) geom.Panel {
	out := p.Panel
	less := p.Stock.Thickness.Mean - p.Stock.Thickness.Min
	out.Thickness -= less
	out.Pockets = slices.Clone(out.Pockets)
	for i := range out.Pockets {
		if k := &out.Pockets[i]; k.Face == geom.Outside && l.sameLeft(p.Role) || l.fromSpoilboard() {
			k.Depth -= less
		}
	}
	return out
}

// webWays are what leaves enough under a pocket.
func (l *layout) webWays(p geom.Panel, v geom.Violation) []geom.Remedy {
	if v.Rule != geom.RuleThinWeb || v.Pocket < 0 {
		return nil
	}
	room := 0.0
	if p.Pockets[v.Pocket].Kind == geom.Dado {
		room = l.GlueSpace
	}
	ways := []geom.Remedy{l.most(SettingCutterHeight, p.Thickness-geom.MinWeb-room)}
	if v.Other >= 0 || p.Pockets[v.Pocket].Face == geom.Outside {
		ways = []geom.Remedy{l.most(SettingCutterHeight, l.h-(geom.MinWeb-v.Value))}
	}
	if room > 0 {
		ways = append(ways, l.most(SettingGlueSpace, p.Thickness-geom.MinWeb-l.h))
	}
	return ways
}

// checkSheet refuses a part that no sheet of its stock can hold.
func (l *layout) checkSheet(p Part, field geom.Setting) {
	s, length, width := p.Stock, p.Panel.Length(), p.Panel.Width()
	fits := func(length, width float64) bool {
		within := func(sheet [2]float64) bool { return length <= sheet[0]+settle && width <= sheet[1]+settle }
		return within([2]float64{s.Length, s.Width}) || slices.ContainsFunc(s.More, within)
	}
	if s.Length == 0 || fits(length, width) {
		return
	}
	sheet := geom.Sentencef("%s x %s", geom.Millimeters(s.Length), geom.Millimeters(s.Width))
	if s.Grain == GrainLength {
		sheet = geom.Sentencef("%s along the grain, %s across", geom.Millimeters(s.Length), geom.Millimeters(s.Width))
	}
	hint := "make the box smaller or buy a larger sheet"
	if s.Grain == GrainNone {
		if fits(width, length) {
			return
		}
	} else if fits(width, length) {
		hint = "it would fit turned: if the grain runs along the other number of the sheet, say so with grain: length or width; if it does not matter, write grain: none"
	}
	l.refuse(geom.Diagnosis{
		Code: "sheet", Subject: about(field, p.Role),
		Fact: geom.Sentencef("the %s is %s x %s; a sheet of %s is %s",
			p.Role, geom.Millimeters(length), geom.Millimeters(width), s.Name, sheet),
		Ask: geom.Sentencef(hint),
	}, true)
}
