package sheets

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/hold"
	"drawerwright/geom/mill"
	"drawerwright/geom/sheet"
)

// Tie is how a placed part is held in its sheet while it is cut out.
type Tie struct {
	By   hold.Kind
	Tabs int // by which it hangs, at the frame and at other parts
	Need int // that its size asks for
	// To is what each tab ends at: the place of a part among those of the sheet, or hold.Frame
	// and less for waste.
	To        []int
	OnionSkin float64
}

// Frame is how many of its tabs end at the waste round the parts.
func (h Tie) Frame() (n int) {
	for _, to := range h.To {
		if to <= hold.Frame {
			n++
		}
	}
	return n
}

// Text says in few words how a part is held; shared are tabs that end at a part beside it.
func (h Tie) Text(u geom.Unit) string {
	switch h.By {
	case hold.Tabs:
		text := words.Count(h.Tabs, "tab", "tabs")
		if shared := h.Tabs - h.Frame(); shared > 0 {
			text += fmt.Sprintf(", %d shared", shared)
		}
		return text
	case hold.OnionSkin:
		return "skin of " + geom.LengthOf(h.OnionSkin).Text(u)
	}
	return "vacuum or screws"
}

// onHold is a sheet as its bridges are planned on it.
func (s *Stock) onHold(one Sheet, b batch.Batch) hold.Sheet {
	z := s.Sheets[one.Sheet]
	nm := func(mm float64) int64 { return int64(geom.LengthOf(mm)) }
	const web = 20 // nm less than the waste between bands at the least, so that just as much counts
	out := hold.Sheet{Size: hold.Box{X1: z.Length - nm(s.Short[0]), Y1: z.Width - nm(s.Short[1])},
		Tab: nm(b.Router.Tabs.Width), Spacing: max(1, nm(b.Router.Tabs.Spacing)), Web: nm(mill.MinWaste-mill.SlotRoom) - web}
	for _, p := range one.Placements {
		part := s.Parts[p.Piece][0]
		x, y := p.Size(s.Pieces)
		q := hold.Part{Box: hold.Box{X0: p.X, Y0: p.Y, X1: p.X + x, Y1: p.Y + y}, Kind: sheet.HeldBy(part.Work()), Slot: nm(part.CutPart().Band())}
		for side, list := range part.Work().Sides {
			for _, f := range list {
				from, to := nm(f.Min), nm(f.Max)
				at := side
				if p.Rotated { // a quarter to the left: the bottom becomes the right side
					if at = (side + 1) % 4; side == hold.Right || side == hold.Left {
						from, to = x-to, x-from
					}
				}
				corner := p.X
				if at == hold.Right || at == hold.Left {
					corner = p.Y
				}
				q.Free[at] = append(q.Free[at], hold.Stretch{Min: corner + from, Max: corner + to})
			}
		}
		out.Parts = append(out.Parts, q)
	}
	return out
}

// plan finds out how the parts of each sheet are held, and gives those that are not as
// their tabs ask for: the part by its place, with the sheet.
func (s *Stock) plan(b batch.Batch) (short []unheld) {
	if !s.Routed {
		return nil
	}
	for i := range s.Laid {
		one := &s.Laid[i]
		on := s.onHold(*one, b)
		p := hold.PlaceTabs(on)
		one.Held, one.Slots = make([]Tie, len(on.Parts)), nil
		for n, q := range on.Parts {
			one.Held[n] = Tie{By: q.Kind, Tabs: p.Count[n]}
			switch q.Kind {
			case hold.Tabs:
				one.Held[n].Need = on.MinTabs(n)
			case hold.OnionSkin:
				one.Held[n].OnionSkin = sheet.OnionSkinUnder(s.Parts[one.Placements[n].Piece][0].Work())
			case hold.Loose:
				if b.Router.Tabs.Width > 0 { // tabs are asked for, and it has no room for any
					short = append(short, unheld{i, n, on.MinTabs(n), 0})
				}
			}
		}
		for _, f := range p.Bridges {
			one.Held[f.From].To = append(one.Held[f.From].To, f.To)
			if f.To >= 0 {
				one.Held[f.To].To = append(one.Held[f.To].To, f.From)
			}
		}
		for _, n := range p.Unheld {
			short = append(short, unheld{i, n, on.MinTabs(n), p.Count[n]})
		}
		if len(p.Unheld) > 0 {
			continue
		}
		var drawn [][]hold.Point
		for _, slot := range p.Slots {
			drawn = append(drawn, slot.Outline)
			loop := make(geom.Loop, len(slot.Outline))
			for k, q := range slot.Outline {
				loop[k] = geom.Vertex{Point: geom.Point{X: geom.Length(q.X).MM(), Y: geom.Length(q.Y).MM()}}
			}
			one.Slots = append(one.Slots, router.Slot{Outline: loop, Part: slot.Part})
		}
		if b.Router.Tabs.Marked {
			one.Slots, one.Marks = nil, marks(p, on)
		}
		if err := hold.Check(on, drawn); err != nil && len(drawn) > 0 {
			s.unsound = fmt.Errorf("sheet %d: the slots between tabs are wrong, which is a fault of drawerwright: %w", one.Number, err)
		}
	}
	return short
}

// marks are the bridges of a sheet across the bands that bits take.
func marks(p hold.Plan, on hold.Sheet) (list []geom.Loop) {
	for _, f := range p.Bridges {
		q := on.Parts[f.From]
		b := f.Box
		if f.To <= hold.Frame {
			b.X0, b.Y0, b.X1, b.Y1 = max(b.X0, q.Box.X0-q.Slot), max(b.Y0, q.Box.Y0-q.Slot), min(b.X1,
				q.Box.X1+q.Slot), min(b.Y1, q.Box.Y1+q.Slot)
		}
		list = append(list, geom.Rectangle(geom.Length(b.X0).MM(), geom.Length(b.Y0).MM(), geom.Length(b.X1).MM(), geom.Length(b.Y1).MM()))
	}
	return list
}

// unheld is a part that too little holds: its place on which sheet, how many tabs it needs
// and has.
type unheld struct{ sheet, placed, need, has int }

// loose is the mistake of parts that too little holds, with what ends it.
func (s *Stock) loose(b batch.Batch, list []unheld) *Problem {
	var names []string
	none, spacing := false, 0.0
	for _, h := range list {
		one := s.Laid[h.sheet]
		piece := one.Placements[h.placed].Piece
		name := fmt.Sprintf("%s on sheet %d (%d of %s)", words.And(s.Names(one, h.placed)), one.Number,
			h.has, words.Count(h.need, "tab", "tabs"))
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
		p := s.Pieces[piece]
		if h.has < hold.MinTabs {
			none = true
		} else {
			spacing = max(spacing, hold.SpacingFor(geom.Length(p.Length+p.Width).MM(), h.has))
		}
	}
	out := s.problem("sheet-held", "router.tabs", geom.Sentencef("too little holds %s: tabs stand where no other part bears, "+
		"clear of mouths of pockets, and none may end where a neighbor has no room for it", words.Some(names)),
		"write narrower tabs, or a smaller bit for the outlines")
	switch skin := b.Router.OnionSkin; {
	case none && skin == 0:
		t := s.Stock.Thickness
		least := b.Router.DefaultOnionSkin(t.Mean, t.Min)
		out.Ask = geom.Sentencef("write `onion-skin: %s` in the section router, which holds what has no room for tabs", geom.AtLeast(least))
	case !none:
		out.Ask = geom.Sentencef("write `spacing: %s` or more below `tabs:`", geom.AtLeast(spacing))
	}
	return out
}
