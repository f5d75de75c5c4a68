package job

import (
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// corners fills in what belongs to some joints alone, and complains of what the
// drawer's joint has no use for.
func (b *builder) corners(d *Drawer, s *section, put func(geom.Setting, value)) {
	get := s.values
	for _, f := range []geom.Setting{joinery.SettingBackJoint, joinery.SettingBackSetback, joinery.SettingFasteners,
		joinery.SettingFingerWidth, joinery.SettingLip,
		joinery.SettingTails, joinery.SettingDovetailSlope} {
		put(f, get[string(f)])
	}
	d.BackJoint = joinery.Joint(get["back-joint"].text)
	if d.BackJoint != "" {
		d.BackSetback = joinery.UsualBackSetback(b.units)
		if setback := get["back-setback"]; setback.given {
			d.BackSetback = setback.mm(0)
		}
	}
	d.Fasteners = joinery.Fastener(get["fasteners"].text)
	d.FingerWidth = get["finger-width"].mm(0)
	if v := get[string(joinery.SettingLip)]; len(v.lengths) > 0 {
		d.Lip = joinery.Lip{Left: v.mm(0), Right: v.mm(1), Top: v.mm(2), Bottom: v.mm(3)}
	}
	d.Tails, d.DovetailSlope = int(get["tails"].number), get["slope"].number
	b.noEffect(!get["back-joint"].given, get, "back-setback", "delete it, or write `back-joint: dado`",
		"it is for a back in dados of the sides")
	if d.Joint == "" {
		return
	}
	b.noEffect(d.Joint != joinery.Butt, get, "fasteners", "delete it, or write `joint: butt`", "it is for a butt joint, and this is "+string(d.Joint))
	b.noEffect(d.Joint != joinery.RabbetedFront, get, string(joinery.SettingLip),
		"delete it, or write `joint: rabbeted-front`", "it is for a rabbeted-front, and this is "+string(d.Joint))
	b.noEffect(d.Joint == joinery.RabbetedFront && get["opening"].given, get, string(joinery.SettingLip),
		"delete it, and write `fronts: overlay` for the opening and `overlay:` for how far the front covers "+
			"the cabinet",
		"in an opening, lips follow from its size")
	b.noEffect(get["drawer-front"].given, get, string(joinery.SettingLip), "delete it, or the drawer front",
		"a drawer front covers the opening already")
	b.noEffect(d.Joint != joinery.BoxJoint, get, "finger-width", "delete it, or write `joint: box-joint`", "it is for a box joint, and this is "+string(d.Joint))
	for _, f := range []geom.Setting{joinery.SettingTails, joinery.SettingDovetailSlope} {
		b.noEffect(d.Joint != joinery.Dovetail, get, string(f), "delete it, or write `joint: dovetail`",
			"it is for dovetails, and this is "+string(d.Joint))
	}
}

// noEffect complains of an entry that does nothing, when that is so.
func (r *reader) noEffect(so bool, get map[string]value, name, hint, why string) {
	if v := get[name]; so && v.given && !r.lost {
		r.fail(CodeNoEffect, v.at, hint, "%s does nothing here: %s", name, why)
	}
}

// fittings fills in dividers, insert and pull. It reports whether all that are given could
// be read.
func (b *builder) fittings(d *Drawer, s *section, put func(geom.Setting, value)) (settled bool) {
	settled = true
	for _, f := range []geom.Setting{joinery.FieldDividers, joinery.FieldInsert, joinery.FieldPull, joinery.FieldDrawerFront} {
		put(f, s.values[string(f)])
	}
	for _, s := range s.values["dividers"].sections {
		get := s.values
		b.checkStock("stock", get["stock"])
		div := joinery.Divider{
			Stock: b.stocks[get["stock"].text], Direction: joinery.GrainDirection(get["direction"].text),
			Count: int(get["at"].number), Height: get["height"].mm(0), Loose: get["loose"].text == "yes",
		}
		for i := range get["at"].lengths {
			div.At = append(div.At, get["at"].mm(i))
		}
		if f := get[joinery.KeyFolders]; len(f.lengths) == 3 {
			div.Folders = joinery.Folders{Width: f.mm(0), Below: f.mm(1), Above: f.mm(2)}
		}
		settled = settled && div.Stock.Thickness.Mean > 0 && div.Direction != "" && (div.Count > 0 || len(div.At) > 0)
		d.Dividers = append(d.Dividers, div)
	}
	settled = settled && len(d.Dividers) == len(s.values["dividers"].sections) && (!s.values["dividers"].given || len(d.Dividers) > 0)
	if grid := s.values["insert"].section; grid != nil {
		divided := s.values["dividers"].given
		b.noEffect(divided, s.values, "insert", "delete it, or the dividers", "dividers stand where it would")
		d.Insert = b.insert(grid)
		settled = settled && !divided && d.Insert.Stock.Thickness.Mean > 0 &&
			len(d.Insert.Columns) > 0 && len(d.Insert.Rows) > 0
	}
	if s := s.values["pull"].section; s != nil {
		get := s.values
		d.Pull = joinery.Pull{Shape: joinery.PullShape(get["shape"].text), Width: get["width"].mm(0), Height: get["height"].mm(0), FromTop: get["from-top"].mm(0)}
		round := d.Pull.Shape == joinery.PullHole || d.Pull.Shape == joinery.PullHalf
		b.noEffect(round, get, "height", "delete it: its width is its diameter", "the pull is round")
		top := d.Pull.Shape == joinery.PullHalf || d.Pull.Shape == joinery.PullSlot
		b.noEffect(top, get, "from-top", "delete it, or take a hole or a hand-hold",
			"the pull is cut out of the top edge")
	}
	return settled
}

// insert makes the grid of a drawer.
func (b *builder) insert(s *section) *joinery.Insert {
	get := s.values
	b.checkStock("stock", get["stock"])
	cells := func(v value) []float64 {
		return append(make([]float64, int(v.number)), all64(v)...)
	}
	return &joinery.Insert{Stock: b.stocks[get["stock"].text], Columns: cells(get["columns"]), Rows: cells(get["rows"]),
		Height: get["height"].mm(0), ContentsClearance: get[joinery.KeyContentsClearance].mm(0), WallClearance: get[joinery.KeyWallClearance].mm(0)}
}

// drawerFront makes the front of a drawer. One with an outside size gives the
// sizes of its front; one in an opening has them from there.
func (b *builder) drawerFront(s *section, planned bool) *joinery.DrawerFront {
	get := s.values
	b.checkStock("stock", get["stock"])
	front := &joinery.DrawerFront{
		Stock: b.stocks[get["stock"].text],
		Width: get["width"].mm(0), Height: get["height"].mm(0), OverhangLeft: get["overhang-left"].mm(0), OverhangBelow: get["overhang-below"].mm(0),
	}
	var missing []string
	for _, name := range []string{"width", "height", "overhang-left", "overhang-below"} {
		b.noEffect(planned, get, name, "delete it", "the drawer front is as the opening asks for")
		if !planned && !get[name].given {
			missing = append(missing, "`"+name+":`")
		}
	}
	if len(missing) > 0 && !b.lost {
		b.fail(CodeMissingKey, s.at, "write "+strings.Join(missing, ", ")+" there",
			"without an opening, a drawer front needs `width`, `height`, `overhang-left` and `overhang-below`")
	}
	b.handles(front, s)
	return front
}

// handles sets the holes for a knob or handle.
func (b *builder) handles(front *joinery.DrawerFront, s *section) {
	get := s.values
	word := get["handles"].text
	switch word {
	case "knob":
		front.Handles = 1
	case "handle":
		front.Handles = 2
		if !get["handle-spacing"].given && !b.lost {
			b.fail(CodeMissingKey, s.at, "write `handle-spacing:`, from the middle of one hole to the other",
				"a handle has two holes, and nothing says how far apart")
		}
	case "":
		return
	}
	b.noEffect(word != "handle", get, "handle-spacing", "delete it, or write `handles: handle`",
		"only a handle has two holes")
	for _, name := range []string{"handle-diameter", "handle-from-top"} {
		b.noEffect(word == "none", get, name, "delete it, or write `handles: knob`", "the drawer front has no holes")
	}
	if front.Handles > 0 {
		front.HandleSpacing, front.HandleDiameter, front.HandleFromTop = get["handle-spacing"].mm(0), get["handle-diameter"].mm(0), get["handle-from-top"].mm(0)
	}
}
