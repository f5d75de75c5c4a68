package setup

import (
	"math"

	"drawerwright/geom/joinery"
)

// Key is a setting rounded to the smallest step that is printed, in mm: one setting serves all
// drawers with the same key.
func Key(s joinery.Setup, step float64) joinery.Setup {
	for _, v := range []*float64{
		&s.FenceDistance, &s.CutterHeight, &s.DadoHeight, &s.LastFence, &s.BottomFence, &s.GrooveFence, &s.BackFence,
		&s.LastBackFence,
		&s.BottomHeight, &s.GrooveWidth, &s.Cutter.Width, &s.Cutter.Groove,
	} {
		*v = math.Round(*v/step) * step
	}
	return s
}

// Together gathers things that have one key, as drawers that one setting serves, in the
// order in which the keys appear.
func Together[T any, K comparable](list []T, key func(T) K) (groups [][]T) {
	at := make(map[K]int)
	for _, one := range list {
		k := key(one)
		i, known := at[k]
		if !known {
			i = len(groups)
			at[k], groups = i, append(groups, nil)
		}
		groups[i] = append(groups[i], one)
	}
	return groups
}
