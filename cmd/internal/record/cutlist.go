package record

import (
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/supplies"
)

// CutGroup is what a shop cuts as one: parts of equal panels, stock and setting, whichever
// drawers they are for.
type CutGroup struct {
	Number    int      `json:"number"` // by which pictures, lists, drawings, sheets and labels call them
	Parts     []string `json:"parts"`  // the drawing of the first serves for all
	Stock     string   `json:"stock"`
	Length    Length   `json:"length"`
	Width     Length   `json:"width"`
	Thickness Length   `json:"thickness"`
	// Blank is the least length and width of what each is cut out of by a router; nil for parts that are sawn to size,
	// and for those of sheets.
	Blank    *[2]Length `json:"blank,omitempty"`
	Quantity int        `json:"quantity"` // spares among them
	Spares   int        `json:"spares,omitempty"`
	Grain    string     `json:"grain"`
	Cuts     string     `json:"cuts"` // which faces are cut
	Banding  string     `json:"banding"`
	Machine  string     `json:"machine"`
	// Setting is the fence distance and the cutter height; nil where nothing is cut.
	Setting *[2]Length `json:"setting,omitempty"`
}

// Blank is what a shop saws as one size and gives the same cuts in one setting, before its
// parts get what tells them apart.
type Blank struct {
	Stock    string      `json:"stock"`
	Length   Length      `json:"length"`
	Width    Length      `json:"width"`
	Quantity int         `json:"quantity"`
	Parts    []BlankPart `json:"parts"`
}

// BlankPart are equal parts that are made of a blank.
type BlankPart struct {
	Parts     []string `json:"parts"`
	Quantity  int      `json:"quantity"`
	LaterCuts string   `json:"later_cuts,omitempty"` // what each gets afterward; empty for nothing
}

// Bit is a bit of the job.
type Bit struct {
	Name     string `json:"name"`
	Diameter Length `json:"diameter"`
	Flutes   int    `json:"flutes,omitempty"`
	Tool     int    `json:"tool,omitempty"`
}

// CutListOf are the groups of a batch, by stock and setting, and the blanks that some of them
// are made of.
func CutListOf(b batch.Batch) (list []CutGroup, blanks []Blank) {
	list, blanks = []CutGroup{}, []Blank{}
	groups := batch.Merged(b)
	for _, g := range groups {
		p := g.Parts[0]
		one := CutGroup{Number: p.Number, Parts: partNames(g), Stock: p.Stock.Name, Length: Length(p.Panel.Length()),
			Width:     Length(p.Panel.Width()),
			Thickness: Length(p.Panel.Thickness), Quantity: g.Quantity, Spares: g.Spares, Grain: grainOf(p),
			Cuts: cutFaces(p.Panel), Banding: banded(p), Machine: string(g.Setup.Cutter.Kind)}
		one.Blank = blankOf(g)
		if one.Cuts != uncut {
			one.Setting = &[2]Length{Length(g.Setup.FenceDistance), Length(g.Setup.CutterHeight)}
		}
		list = append(list, one)
	}
	for _, k := range batch.Blanks(groups) {
		p := k.Groups[0].Parts[0]
		one := Blank{Stock: p.Stock.Name, Length: Length(p.Panel.Length()), Width: Length(p.Panel.Width()),
			Quantity: k.Quantity}
		for _, g := range k.Groups {
			one.Parts = append(one.Parts, BlankPart{partNames(g), g.Quantity, batch.Later(g.Parts[0].Panel)})
		}
		blanks = append(blanks, one)
	}
	return Settle(list, b.Units), Settle(blanks, b.Units)
}

// blankOf is the blank that serves all parts of a group, which bits of several kinds may cut.
func blankOf(g batch.Group) (blank *[2]Length) {
	for _, p := range g.Parts {
		length, width, ok := p.Blank()
		if !ok {
			continue
		}
		if blank == nil {
			blank = new([2]Length)
		}
		blank[0], blank[1] = max(blank[0], Length(length)), max(blank[1], Length(width))
	}
	return blank
}

// CutFrom is the length and width that parts have before their joints are cut: those of their blank, or their own.
func (g CutGroup) CutFrom() (length, width Length) {
	if g.Blank != nil {
		return g.Blank[0], g.Blank[1]
	}
	return g.Length, g.Width
}

func partNames(g batch.Group) []string {
	names := make([]string, len(g.Parts))
	for i, p := range g.Parts {
		names[i] = p.Name
	}
	return names
}

// grainOf says along which side of a part the grain runs.
func grainOf(p *batch.Part) string {
	if p.Stock.Grain == joinery.GrainNone {
		return "none"
	}
	return "along the length"
}

// cutFaces says which faces of a panel are cut.
func cutFaces(p geom.Panel) string {
	switch inside, outside := p.CutOn(geom.Inside), p.CutOn(geom.Outside); {
	case inside && outside:
		return "both faces"
	case outside:
		return "outside face"
	case inside:
		return "inside face"
	}
	if p.Shaped() {
		return "outline"
	}
	return uncut
}

// uncut is a part that is sawn to its size and no more.
const uncut = "none"

// banded says which edges get edge banding, of stock that has one.
func banded(p *batch.Part) string {
	switch {
	case p.Banding == 0:
		return "none"
	case supplies.AllRound(p.Role):
		return "all edges"
	}
	return "upper edge"
}

// idleBits are bits of the job with which no layer of any drawing is cut: of those of parts, some are used.
func idleBits(b batch.Batch, laid []SheetStock, used map[Bit]bool) (list []Bit) {
	for _, k := range laid {
		for _, s := range k.Sheets {
			for _, l := range s.Layers {
				used[l.Cutter()] = true
			}
		}
	}
	for _, d := range b.Drawers {
		for _, bit := range d.Bits {
			one := Bit{bit.Name, Length(bit.Diameter), bit.Flutes, bit.Tool}
			if !used[one] && !slices.Contains(list, one) {
				list = append(list, one)
			}
		}
	}
	return list
}
