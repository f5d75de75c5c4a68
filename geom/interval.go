package geom

// Number is what intervals are of: millimeters, or whole steps of a grid.
type Number interface{ ~int64 | ~float64 }

// IntervalOf is a closed stretch of a line from Min to Max. One with Max below Min is
// empty.
type IntervalOf[N Number] struct{ Min, Max N }

// Interval is a [IntervalOf] in millimeters.
type Interval = IntervalOf[float64]

// Len is the length; below 0 for an empty interval.
func (s IntervalOf[N]) Len() N { return s.Max - s.Min }

// Mid is the middle.
func (s IntervalOf[N]) Mid() N { return (s.Min + s.Max) / 2 }

// Contains reports whether a number is in the interval, ends included.
func (s IntervalOf[N]) Contains(v N) bool { return v >= s.Min && v <= s.Max }

// Clamp is the number in the interval that is nearest to v; Max of an empty one.
func (s IntervalOf[N]) Clamp(v N) N { return min(max(v, s.Min), s.Max) }

// Grow moves both ends out by k.
func (s IntervalOf[N]) Grow(k N) IntervalOf[N] { return IntervalOf[N]{s.Min - k, s.Max + k} }

// Shift moves both ends up by k.
func (s IntervalOf[N]) Shift(k N) IntervalOf[N] { return IntervalOf[N]{s.Min + k, s.Max + k} }

// Intersect is what two intervals have in common; empty where they are apart.
func (s IntervalOf[N]) Intersect(t IntervalOf[N]) IntervalOf[N] {
	return IntervalOf[N]{max(s.Min, t.Min), min(s.Max, t.Max)}
}

// Subtract takes an interval out of a list of others, in their order. Ends stay where they
// are: intervals that only touch are left whole.
func Subtract[N Number](list []IntervalOf[N], out IntervalOf[N]) (rest []IntervalOf[N]) {
	for _, s := range list {
		if out.Max <= s.Min || out.Min >= s.Max {
			rest = append(rest, s)
			continue
		}
		if out.Min > s.Min {
			rest = append(rest, IntervalOf[N]{s.Min, out.Min})
		}
		if out.Max < s.Max {
			rest = append(rest, IntervalOf[N]{out.Max, s.Max})
		}
	}
	return rest
}
