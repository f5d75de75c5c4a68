package mill

// PlungeArea reports whether a bit makes a cut by going straight down: a hole of its own size, in
// which it has nowhere to go.
func (c Cut) PlungeArea(b Bit) bool {
	if len(c.Path) > 0 {
		return false
	}
	_, r, round := c.Outline.AsCircle()
	return round && 2*r <= b.Diameter+touching
}
