package record

import (
	"math"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
	"drawerwright/geom/breakdown"
)

// stockLayout tells the layout of one stock; unit is that of its words.
type stockLayout struct {
	*sheets.Stock
	unit  geom.Unit
	looks filing.Looks
}

// fromNM is a length in nanometers.
func fromNM(l int64) Length { return Length(geom.Length(l).MM()) }

// sawMinutes are whole ones, at least one of any work.
func sawMinutes(seconds int) int { return (seconds + 59) / 60 }

func sheetStock(of *sheets.Stock, u geom.Unit, looks filing.Looks) SheetStock {
	s, l := stockLayout{of, u, looks}, of.Layout
	out := SheetStock{Stock: s.Name, Method: s.Rules.Method.String(), Stages: s.Rules.Stages,
		FirstCuts: s.FirstCuts, FirstMore: s.FirstMore.Sheets, FirstMoreCost: Money(s.FirstMore.Cost),
		Kerf: fromNM(s.Rules.Kerf), Trim: fromNM(int64(s.Trim)), EndTrim: fromNM(int64(s.Trim)),
		Flipped: s.RotatedSheets, Routed: s.Routed, Grained: s.Grained(), GrainAcross: s.GrainAcross,
		Count: l.Count, MinSheets: l.MinSheets, Optimal: l.Optimal(), Completed: l.Completed,
		Sizes: []SheetSize{}, Sheets: []LaidSheet{}, Unplaced: []Shortfall{}, Cuts: []SawCut{},
		SettingChanges: breakdown.Moves(s.Cuts), SawMinutes: sawMinutes(s.Times.Seconds(s.Cuts))}
	for _, c := range s.Choices {
		out.Choices = append(out.Choices, SheetChoice{Prefer: c.Prefer, Taken: c.Taken, Sheets: c.Sheets,
			Cost: Money(c.Cost), Settings: c.Settings, Cuts: c.Cuts, Turns: c.Turns, Stages: c.Stages,
			Minutes: sawMinutes(c.Seconds), Offcut: [2]Length{fromNM(c.Offcut.Length), fromNM(c.Offcut.Width)}})
	}
	if !s.Routed {
		out.RipCapacity, out.SledCapacity = fromNM(int64(s.Capacity.Rip)), fromNM(int64(s.Capacity.Crosscut))
		out.MaxStop = fromNM(int64(s.Capacity.MaxStop))
	}
	if s.Routed {
		out.Undersize = [2]Length{Length(s.Short[0]), Length(s.Short[1])}
	}
	for _, k := range s.KeepOut {
		out.KeepOut = append(out.KeepOut, BoxOf(k))
	}
	if on, pins := s.FlipRegistration(); on != "" {
		out.FlipOn = &FlipRegistration{On: on, Pins: [][2]Length{}, HoleDiameter: Length(2 * s.Pin.Radius)}
		for _, q := range pins {
			out.FlipOn.Pins = append(out.FlipOn.Pins, [2]Length{Length(q.X), Length(q.Y)})
		}
	}
	used := s.Used()
	for i, z := range s.Sheets {
		out.Sizes = append(out.Sizes, SheetSize{Name: z.Name, Length: fromNM(z.Length), Width: fromNM(z.Width),
			Offcut: z.Offcut, Batch: z.Batch, Price: z.Price, Used: used[i]})
		out.EndTrim = fromNM(z.Trim.Left)
		if !z.Offcut {
			out.Cost += float64(z.Price * float64(used[i]))
		}
	}
	out.Cost = Money(out.Cost)
	for _, one := range s.Measured[:min(l.Count, len(s.Measured))] {
		out.Measured = append(out.Measured, MeasuredSheet{one.Number, Length(one.Thickness.Mean)})
	}
	s.addSheets(&out)
	for i, n := range l.Remaining {
		if out.Pieces += s.Pieces[i].Count; n > 0 {
			out.Unplaced = append(out.Unplaced, Shortfall{Pieces{s.Pieces[i].Name, n}, whyLeft(of, i)})
		}
	}
	out.Summary = saidOf(l, s.Remaining(), out.Sizes)
	for _, c := range s.Cuts {
		out.Cuts = append(out.Cuts, s.sawCut(c))
	}
	return out
}

// addSheets adds the sheets that are laid, and what part of them all is pieces.
func (s stockLayout) addSheets(out *SheetStock) {
	area, covered := 0.0, 0.0
	for _, one := range s.Laid {
		size := s.Sheets[one.Sheet]
		whole, parts := float64(size.Length)*float64(size.Width), 0.0
		for _, p := range one.Placements {
			x, y := p.Size(s.Pieces)
			parts += float64(float64(x) * float64(y))
		}
		laid := s.laidSheet(one)
		laid.Yield = thousandth(parts / whole)
		area, covered = area+float64(whole*float64(one.Count)), covered+float64(parts*float64(one.Count))
		out.Sheets = append(out.Sheets, laid)
	}
	if area > 0 {
		out.Yield = thousandth(covered / area)
	}
}

// laidSheet tells how one is cut, without its yield.
func (s stockLayout) laidSheet(one sheets.Sheet) LaidSheet {
	size, drawn := s.Sheets[one.Sheet], s.Drawn(one)
	laid := LaidSheet{Number: one.Number, Count: one.Count, Size: one.Sheet, Placements: []SheetPlacement{},
		Offcuts: []Box{}, Files: s.Files(one, drawn, s.looks), Weight: math.Round(s.Weight(size.Length, size.Width)*10) / 10}
	for _, d := range drawn {
		board := drawnBoard{d.Part.Bits, d.DXF, s.Stock.Stock.Thickness.Mean}
		laid.Layers = append(laid.Layers, board.legends(d.File, d.Layers)...)
	}
	laid.Run = runOf(s.Stock, one, drawn, s.unit)
	held := heldBy(one, s.unit)
	for i, p := range one.Placements {
		x, y := p.Size(s.Pieces)
		names := s.Names(one, i)
		placed := SheetPlacement{Part: names[0], Also: names[1:], Rotated: p.Rotated,
			Box: Box{fromNM(p.X), fromNM(p.Y), fromNM(x), fromNM(y)}}
		if i < len(one.Called) {
			placed.Board = one.Called[i]
		}
		if i < len(held) {
			placed.Held = &held[i]
		}
		laid.Placements = append(laid.Placements, placed)
	}
	for _, o := range one.Offcuts {
		laid.Offcuts = append(laid.Offcuts, Box{fromNM(o.X), fromNM(o.Y), fromNM(o.Length), fromNM(o.Width)})
	}
	return laid
}

// sawCut tells a cut with the boards that it is made of and that it gives.
func (s stockLayout) sawCut(c breakdown.Cut) SawCut {
	cut := SawCut{Stage: c.Stage, Kind: c.Kind.String(), Trim: c.Trim, Rough: c.Rough, Setting: fromNM(c.Setting),
		SettingChanged: c.SettingChanged, SetAsCut: c.SetAs, Count: c.Count, Workpiece: s.workpiece(c.Workpiece),
		NeedsHelper: c.NeedsHelper, TooSmallToHold: c.Short}
	if c.Yields.Name != "" {
		one := s.workpiece(c.Yields)
		cut.Yields = &one
	}
	if c.Remainder.Name != "" {
		one := s.workpiece(c.Remainder)
		cut.Remainder = &one
	}
	return cut
}

// workpiece tells a board in hand; an offcut is kept where what trims leave of it is large
// enough, and waste else.
func (s stockLayout) workpiece(h breakdown.Workpiece) Workpiece {
	kept := max(h.Clean[0], h.Clean[1]) >= int64(s.MinOffcut[0]) && min(h.Clean[0], h.Clean[1]) >= int64(s.MinOffcut[1])
	out := Workpiece{Name: h.Name, Short: h.Short, Length: fromNM(h.Length), Width: fromNM(h.Width), Piece: h.Piece,
		Offcut: h.Offcut && kept, Waste: h.Offcut && !kept}
	if out.Offcut {
		out.CleanSize = &[2]Length{fromNM(h.Clean[0]), fromNM(h.Clean[1])}
	}
	return out
}
