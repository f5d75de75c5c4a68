package job

import (
	"cmp"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// router makes the settings of a router from their section.
func (r *reader) router(s *section) mill.Settings {
	get := s.values
	out := mill.Settings{
		Overcut:        get[string(mill.SettingOvercut)].mm(0),
		Slots:          mill.Slots(get[string(mill.SettingSlots)].text),
		FromSpoilboard: get["depth-from"].text == string(joinery.FromSpoilboard),
		OnionSkin:      get[string(mill.SettingOnionSkin)].mm(0),
		SmallPart:      get[string(mill.SettingSmall)].mm(0),
		PartSpacing:    get[string(mill.SettingPartSpacing)].mm(0),
		IntoSpoilboard: get[string(mill.SettingIntoSpoilboard)].mm(0),
		Unit:           r.units,
	}
	register := r.sub(s, string(mill.SettingRegister), registerKeys).values
	out.Register = mill.Register{Place: mill.Place(register["place"].text), Diameter: register["diameter"].mm(0), Distance: register["distance"].mm(0)}
	out.Relief, out.Reliefs = reliefOf(get[string(mill.SettingRelief)])
	if e := get["engrave"]; e.section != nil {
		out.Engrave = mill.Engrave{Depth: e.section.values["depth"].mm(0), Height: e.section.values["height"].mm(0)}
	} else if e.text == yes {
		out.Engrave = mill.Engrave{Depth: mill.DefaultEngraving}
	}
	if tabs := get[string(mill.SettingTabs)].section; tabs != nil {
		out.Tabs = mill.Tabs{Width: tabs.values["width"].mm(0), Height: tabs.values["height"].mm(0), Spacing: tabs.values["spacing"].mm(0), Marked: tabs.values["as"].text == tabMarks}
	}
	return out
}

// reliefOf reads the relief of all operations, and those of single ones.
func reliefOf(v value) (all mill.Relief, own map[string]mill.Relief) {
	if v.section == nil {
		return cmp.Or(mill.Relief(v.text), mill.ReliefDogbone), nil
	}
	own = make(map[string]mill.Relief)
	for _, operation := range mill.Relieved {
		if said := v.section.values[operation]; said.text != "" {
			own[operation] = mill.Relief(said.text)
		}
	}
	return cmp.Or(mill.Relief(v.section.values[ReliefOthers].text), mill.ReliefDogbone), own
}

// cutter makes a tool of its section: a saw and a plow iron by their width, a router
// table by its bit, a router by one bit or several, of which the smallest sets the
// narrowest slot.
func (b *builder) cutter(s *section) (joinery.Cutter, []mill.Bit) {
	r := cutterReader{builder: b, at: s.at, get: s.values}
	kind := joinery.CutterKind(r.get["kind"].text)
	if at, _, n := r.said("groove-cutter"); n > 0 && kind.MadeToFit() {
		r.report(CodeCutter, at, "delete it: its grooves are made to fit anyway",
			"groove-cutter is for a saw or a router table, and this is %s", kindNames[kind])
	}
	switch kind {
	case joinery.Saw:
		return r.saw(), nil
	case joinery.Hand:
		return r.hand(), nil
	case joinery.RouterTable:
		return r.routerTable(), nil
	case joinery.Router:
		return r.router()
	}
	return joinery.Cutter{Kind: kind, Width: r.get["width"].mm(0)}, nil
}

// cutterReader reads one section of a cutter.
type cutterReader struct {
	*builder
	at  Position
	get map[string]value
}

// said counts which of some keys are given, and gives the last of them.
func (r cutterReader) said(names ...string) (at Position, name string, n int) {
	for _, k := range names {
		if v := r.get[k]; v.given {
			at, name, n = v.at, k, n+1
		}
	}
	return at, name, n
}

// report reports a mistake once, though one section may serve many drawers.
func (r cutterReader) report(code Code, at Position, hint, message string, args ...any) {
	if !r.reported[at] && !r.lost {
		r.reported[at] = true
		r.fail(code, at, hint, message, args...)
	}
}

func (r cutterReader) saw() joinery.Cutter {
	if at, name, n := r.said("diameter", "reach", "flutes", "bits"); n > 0 {
		r.report(CodeCutter, at, "write its width, or kind: router", "%s is for a router, and this is a saw", name)
	}
	if !r.get["width"].given {
		r.report(CodeMissingKey, r.at, "write `width:` there; the slot that one pass cuts, from a test cut", "a saw has no width")
	}
	return joinery.Cutter{Kind: joinery.Saw, Width: r.get["width"].mm(0), Groove: r.get["groove-cutter"].mm(0)}
}

func (r cutterReader) hand() joinery.Cutter {
	if at, name, n := r.said("diameter", "reach", "flutes", "bits"); n > 0 {
		r.report(CodeCutter, at, "write the width of the plow iron, or kind: router",
			"%s is for a router, and this is hand work", name)
	}
	if !r.get["width"].given {
		r.report(CodeMissingKey, r.at, "write `width:` there, that of the plow iron, the narrowest groove that is made",
			"hand work has no width")
	}
	return joinery.Cutter{Kind: joinery.Hand, Width: r.get["width"].mm(0)}
}

func (r cutterReader) routerTable() joinery.Cutter {
	if at, name, n := r.said("flutes", "bits"); n > 0 {
		r.report(CodeCutter, at, "write `diameter:` for its one bit, or kind: router",
			"%s is for a CNC router, and this is a router table", name)
	}
	if _, name, n := r.said("width", "diameter"); n == 0 {
		r.report(CodeMissingKey, r.at, "write `diameter:` there, that of its bit", "a router table has no bit")
	} else if n > 1 {
		r.report(CodeCutter, r.get[name].at, "delete one of the two",
			"a router table has width or diameter, and here are both")
	}
	return joinery.Cutter{Kind: joinery.RouterTable, Width: either(r.get["diameter"], r.get["width"]).mm(0),
		Reach: r.get["reach"].mm(0), Groove: r.get["groove-cutter"].mm(0)}
}

// router takes the narrowest bit that does not engrave for its width; 0 where the
// diameter of a bit is not known, which is reported where it is written.
func (r cutterReader) router() (joinery.Cutter, []mill.Bit) {
	c := joinery.Cutter{Kind: joinery.Router}
	if _, name, n := r.said("width", "diameter", "bits"); n != 1 {
		hint := "write `diameter:`, or `bits: {name: {diameter: ...}}`"
		if n == 0 {
			r.report(CodeMissingKey, r.at, hint, "a router has no bit")
		} else {
			r.report(CodeCutter, r.get[name].at, hint,
				"a router has width, diameter or bits: one of them, and here are %d", n)
		}
		return c, nil
	}
	if at, name, n := r.said("reach", "flutes"); n > 0 && r.get["bits"].given {
		r.report(CodeCutter, at, "write it for each of the bits", "with bits, %s belongs to each of them", name)
	}
	bits := r.bits()
	c.Width = r.get["width"].mm(0)
	for _, bit := range bits {
		if bit.Diameter > 0 && !bit.Engraves && (c.Width == 0 || bit.Diameter < c.Width) {
			c.Width = bit.Diameter
		}
	}
	if slices.ContainsFunc(bits, func(b mill.Bit) bool { return b.Diameter == 0 }) {
		c.Width = 0
	}
	return c, bits
}

// bits are those of a router.
func (r cutterReader) bits() (bits []mill.Bit) {
	numbered := make(map[int]string)
	for _, s := range r.get["bits"].sections {
		tool := s.values["tool"]
		if other := numbered[int(tool.number)]; tool.given && other != "" {
			r.report(CodeCutter, tool.at, "give each bit the number that it has in the machine",
				"the bits %s and %s are both tool %d", other, s.name, int(tool.number))
		}
		numbered[int(tool.number)] = s.name
		bits = append(bits, r.bit(s, r.report))
	}
	r.engraver(bits, r.report)
	if r.get["bits"].given {
		return bits
	}
	d := either(r.get["diameter"], r.get["width"]).mm(0)
	return []mill.Bit{{Name: geom.LengthOf(d).Text(r.units), Diameter: d, Reach: r.get["reach"].mm(0), Flutes: int(r.get["flutes"].number)}}
}

// bitPlace is where a bit of a router stands in the file, and its reach, if that is given.
type bitPlace struct{ bit, reach Position }

// bitsOf are the places of a cutter's bits, in their order; those of the only one are its keys.
func bitsOf(cutter *section) (list []bitPlace) {
	get := cutter.values
	for _, s := range get["bits"].sections {
		list = append(list, bitPlace{s.at, s.values["reach"].at})
	}
	if only := either(get["diameter"], get["width"]); !get["bits"].given && only.given {
		list = []bitPlace{{only.at, get["reach"].at}}
	}
	return list
}

// engraver marks the bit that is named for engraving, if it is one of several.
func (b *builder) engraver(bits []mill.Bit, report func(Code, Position, string, string, ...any)) {
	s := b.router.values["engrave"].section
	if s == nil || s.values["bit"].text == "" || len(bits) == 0 {
		return
	}
	named := s.values["bit"]
	i := slices.IndexFunc(bits, func(one mill.Bit) bool { return one.Name == named.text })
	switch {
	case i < 0:
		report(CodeUnknownName, named.at, "write the name of one of the bits, or delete the entry: the narrowest is taken", "no bit is called %s", quote(named.text))
	case len(bits) == 1:
		report(CodeCutter, named.at, "give the router another bit, or delete the entry", "the only bit %s is named for engraving, which is all that it would cut", quote(named.text))
	default:
		bits[i].Engraves = true
	}
}

// bit makes a bit of its section. Its feed may be written as a chip load.
func (b *builder) bit(s *section, report func(Code, Position, string, string, ...any)) mill.Bit {
	get := s.values
	bit := mill.Bit{Name: s.name, Diameter: get["diameter"].mm(0), Reach: get["reach"].mm(0), Flutes: int(get["flutes"].number), Tool: int(get["tool"].number),
		Feeds: mill.Feeds{Type: mill.BitType(get["type"].text), Tip: get["tip"].mm(0), Feed: get["feed"].number, Plunge: get["plunge"].number, Speed: get["speed"].number, PassDepth: get["pass-depth"].mm(0)}}
	if tip := get["tip"]; tip.given && bit.Type != mill.Compression {
		report(CodeCutter, tip.at, "write `type: compression`, or delete it", "tip is of a compression bit, and %s is none", s.name)
	}
	load := get["chip-load"]
	switch {
	case !load.given:
	case get["feed"].given:
		report(CodeCutter, load.at, "delete one of the two",
			"the bit %s has feed and chip-load, which say the same", s.name)
	case bit.Speed == 0 || bit.Flutes == 0:
		report(CodeCutter, load.at, "write its speed and flutes too, or its feed instead", "a chip load is no feed without the speed and the number of flutes of the bit %s", s.name)
	default:
		bit.Feed = float64(load.mm(0)*bit.Speed) * float64(bit.Flutes)
	}
	return bit
}
