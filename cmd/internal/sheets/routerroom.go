package sheets

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/mill"
	"drawerwright/geom/sheet"
)

// cutParts are the parts of groups as a router cuts them: the first of each, or all.
func cutParts(groups []batch.Group, all bool) (list []sheet.CutPart) {
	for _, g := range groups {
		for i, p := range g.Parts {
			if all || i == 0 {
				list = append(list, p.CutPart())
			}
		}
	}
	return list
}

// room gives a stock its gap and its trims, and judges those that are written.
func (s *Stock) room(b batch.Batch, groups []batch.Group) *Problem {
	rules, u := b.Sheets, b.Units
	if !s.Routed {
		s.Trim = geom.LengthOf(rules.Trim)
		if rules.Trim == 0 && !rules.NoTrim {
			s.Trim = geom.LengthOf(sheet.UsualTrim(u))
		}
		kerf := rules.Kerf
		if kerf == 0 {
			kerf = max(sheet.UsualKerf(u), b.Router.PartSpacing)
			for _, g := range groups {
				kerf = max(kerf, g.Parts[0].Work().Gap) // of those that a router finishes
			}
		}
		s.Rules.Kerf = int64(geom.LengthOf(kerf))
		return nil
	}
	s.needs = sheet.NeedsOf(cutParts(groups, false))
	least := geom.LengthOf(s.needs.Least()).RoundUp(u)
	between, reach := geom.Millimeters(mill.MinWaste), geom.Millimeters(s.needs.Reach)
	why := geom.Sentencef("bits and cuts reach %s past a part, and %s of wood have to stay before the next", reach, between)
	if s.needs.Mixed && s.needs.Apart() >= s.needs.Gap() {
		why = geom.Sentencef("parts are held in different ways, or cut out with different bits, "+
			"so that each needs its own %s and %s of wood between", geom.Millimeters(s.needs.Band), between)
	}
	said, key := rules.Kerf, "sheets.kerf"
	if said == 0 {
		said, key = b.Router.PartSpacing, "router.part-spacing"
	}
	gap := least
	if s.GapText = said > 0; s.GapText {
		if gap = geom.LengthOf(said); gap < least {
			fact := geom.Sentencef("parts lie %s apart: %s", geom.Millimeters(said), why)
			return s.tooLittle("sheet-gap", key, gap, least, fact).writes(least.Text(u))
		}
	}
	s.Rules.Kerf = int64(gap)
	short := rules.Of[s.Name].Short
	rim := geom.LengthOf(s.needs.MinRim(short))
	s.Trim = sheet.UpToGrid(rim, u)
	if rules.Trim > 0 || rules.NoTrim {
		if s.Trim = geom.LengthOf(rules.Trim); s.Trim < rim {
			rim = rim.RoundUp(u)
			fact := geom.Sentencef("a trim of %s: bits and cuts reach %s past a part, sheets may be %s short, and a rim of %s has to stay",
				geom.Millimeters(rules.Trim), reach, geom.Millimeters(max(short[0], short[1])), between)
			return s.tooLittle("sheet-trim", "sheets.trim", s.Trim, rim, fact).writes(rim.Text(u))
		}
	}
	return nil
}

// ends are the trims at the ends and the long edges that a sheet's pins need too, beside
// those of its parts.
func (s *Stock) ends(b batch.Batch, groups []batch.Group) (ends, top geom.Length, fault *Problem) {
	ends, top = s.Trim, s.Trim
	if !s.RotatedSheets || !s.Routed {
		return ends, top, nil
	}
	if s.on = b.Sheets.FlipOn; s.on == job.FlipOnStops {
		return ends, top, nil
	}
	s.Pin = Pin{Pin: b.PinFor(s.Stock, cutParts(groups, true))}
	if deep := geom.LengthOf(sheet.Depth(s.Stock.Thickness.Max)); !s.Pin.Reaches(deep) {
		out := s.problem("sheet-pins", "sheets.flip-on",
			geom.Sentencef("no bit for its registration holes reaches %s, "+
				"through the thickest sheet into the spoilboard", geom.Millimeters(deep.MM())), "")
		out.Ask = geom.Sentencef("use a bit with a reach of %s or more, or write `flip-on: stops` in the section sheets",
			geom.AtLeast(deep.MM()))
		return ends, top, out
	}
	least := s.Pin.MinFromEdge()
	if s.Pin.FromEdge = b.Sheets.Pins; s.Pin.FromEdge == 0 {
		s.Pin.FromEdge = least
	} else if s.Pin.TooNear(s.Pin.FromEdge) {
		fact := geom.Sentencef("pins %s from the end of the shortest sheet: holes of %s leave less than %s of wood before it",
			geom.Millimeters(s.Pin.FromEdge), geom.Millimeters(2*s.Pin.Radius), geom.Millimeters(sheet.PinWeb))
		out := s.tooLittle("sheet-pins", "sheets.pin-distance", geom.LengthOf(s.Pin.FromEdge),
			geom.LengthOf(least), fact)
		return ends, top, out.writes(geom.AtLeast(least).In(b.Units))
	}
	s.Pin.Three = s.on == job.FlipOnThree
	beyond := s.Pin.Beyond(s.needs.Drawn()) // from the pin's middle to the part
	ends = max(ends, geom.LengthOf(s.Short[0]+s.Pin.FromEdge+beyond))
	if s.Pin.Three {
		top = max(top, geom.LengthOf(s.Short[1]+s.Pin.FromEdge+beyond))
	}
	return ends, top, nil
}

// pins are the middles of a sheet's registration holes, in mm from its lower left corner.
func (s *Stock) pins(length, width float64) (list []geom.Point, ok bool) {
	at := sheet.Standing{Radius: s.Pin.Radius, FromEdge: s.Pin.FromEdge, Three: s.Pin.Three, Short: s.Short}
	return at.Places(length, width, s.blocked(length))
}

// FlipRegistration is what its sheets are put down on when they have been turned over: the word of
// the job file, empty where they are not turned, and the middles of the pins on the first
// of the sizes that are used.
func (s *Stock) FlipRegistration() (on string, pins []geom.Point) {
	if s.on == "" || len(s.Laid) == 0 {
		return s.on, nil
	}
	z := s.Sheets[s.Laid[0].Sheet]
	pins, _ = s.pins(geom.Length(z.Length).MM(), geom.Length(z.Width).MM())
	return s.on, pins
}
