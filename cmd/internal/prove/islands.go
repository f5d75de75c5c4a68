package prove

import "slices"

// islands takes for what they are the outlines that lie within another one of their layer:
// wood that stays there, as round a panel whose four rabbets are one outline.
func islands(cuts []sheetCut) []sheetCut {
	within := func(in, out sheetCut) bool {
		if in.file != out.file || in.layer != out.layer || in.operation == "profile" || in.operation == "register" || in.path != nil || out.path != nil || len(in.loop) == 0 || len(out.loop) == 0 {
			return false
		}
		a, b := in.loop.Bounds(), out.loop.Bounds()
		return a.Min.X > b.Min.X && a.Min.Y > b.Min.Y && a.Max.X < b.Max.X && a.Max.Y < b.Max.Y && ringsOf(out.loop).inside(in.loop[0].Point)
	}
	// Of outlines about each other every second one is an island, in the nearest about it.
	about := make([]int, len(cuts))
	nearest := make([]int, len(cuts))
	for i := range cuts {
		nearest[i] = -1
		for j := range cuts {
			if i == j || !within(cuts[i], cuts[j]) {
				continue
			}
			about[i]++
			if nearest[i] < 0 || cuts[j].loop.Area() < cuts[nearest[i]].loop.Area() {
				nearest[i] = j
			}
		}
	}
	for i := range cuts {
		if about[i]%2 == 1 {
			cuts[nearest[i]].region = cuts[nearest[i]].region.with(cuts[i].loop.Flatten(ringChord))
		}
	}
	var rest []sheetCut
	for i, c := range cuts {
		if about[i]%2 == 0 {
			rest = append(rest, c)
		}
	}
	return slices.Clip(rest)
}
