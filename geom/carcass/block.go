package carcass

import "drawerwright/geom"

// Block is a cuboid along the axes, by its least and greatest corner.
type Block struct{ Low, High [3]float64 }

// moved is the block elsewhere.
func (b Block) moved(by geom.Vec3) Block {
	for k, v := range [3]float64{by.X, by.Y, by.Z} {
		b.Low[k] += v
		b.High[k] += v
	}
	return b
}

// pulled is what the block passes while it is pulled out by a travel.
func (b Block) pulled(travel float64) Block {
	b.Low[1] -= travel
	return b
}

// Over is the smallest block about both.
func (b Block) Over(c Block) Block {
	for k := range 3 {
		b.Low[k], b.High[k] = min(b.Low[k], c.Low[k]), max(b.High[k], c.High[k])
	}
	return b
}

// And is what two blocks have in common.
func (b Block) And(c Block) Block {
	for k := range 3 {
		b.Low[k], b.High[k] = max(b.Low[k], c.Low[k]), min(b.High[k], c.High[k])
	}
	return b
}

// Least is the smallest of the three extents; below 0 for none at all.
func (b Block) Least() float64 {
	return min(b.High[0]-b.Low[0], b.High[1]-b.Low[1], b.High[2]-b.Low[2])
}

// into is how far one of two blocks has to give way for the other, along the axis where that is least.
func (b Block) into(c Block) float64 {
	by := b.High[0] - c.Low[0]
	for k := range 3 {
		by = min(by, b.High[k]-c.Low[k], c.High[k]-b.Low[k])
	}
	return by
}

// middle is the place in the middle.
func (b Block) middle() (at [3]float64) {
	for k := range 3 {
		at[k] = (b.Low[k] + b.High[k]) / 2
	}
	return at
}
