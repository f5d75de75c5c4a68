package batch

import (
	"drawerwright/geom/joinery"
	"drawerwright/geom/merge"
)

// Group is what a shop cuts as one: parts of equal panels, stock and setting,
// whichever drawers they are for.
type Group struct {
	Parts    []*Part // at least one; drawn alike
	Setup    joinery.Setup
	Quantity int // of all, spares among them
	Spares   int
}

// Merged gathers equal parts by stock, in order of first use, and within a stock by
// setting.
func Merged(b Batch) (list []Group) {
	var parts []*Part
	var setups []joinery.Setup
	var asked []merge.Part
	for _, d := range b.Drawers {
		for i := range d.Parts {
			p := &d.Parts[i]
			parts, setups = append(parts, p), append(setups, d.Setup)
			asked = append(asked, merge.Part{Stock: p.Stock.Name, Setting: SettingKey(d), Bits: p.Bits, Panel: p.Panel})
		}
	}
	for _, equal := range merge.EqualParts(asked) {
		g := Group{Setup: setups[equal[0]]}
		for _, i := range equal {
			g.Parts = append(g.Parts, parts[i])
			g.Quantity += parts[i].Quantity
			g.Spares += parts[i].Spares
		}
		list = append(list, g)
	}
	return list
}

// numberParts gives every part the number of its group, by which pictures, lists, drawings,
// sheets and labels call it.
func (b *Batch) numberParts() {
	numbers := make(map[string]int)
	for i, g := range Merged(*b) {
		for _, p := range g.Parts {
			numbers[p.Name] = i + 1
		}
	}
	for i := range b.Drawers {
		for j := range b.Drawers[i].Parts {
			p := &b.Drawers[i].Parts[j]
			p.Number = numbers[p.Name]
		}
	}
}
