package mill

import "drawerwright/geom"

// FlipGap is how far a shoulder may stay open, in mm, before one sees it; common practice,
// no source.
const FlipGap = 0.25

// Flip is what an error in turning a panel over does to the cuts on its outside face.
type Flip struct {
	// Along and Across report whether an error along or across the length moves a cut that
	// matters.
	Along, Across bool
	// Allowed is how much of it, along, in mm, the joint takes; 0 where none matters.
	Allowed float64
}

// FlipOf works out which way the cuts on the outside face of a panel can be off. One that
// runs out of the panel at both ends of an axis does not care for that axis. An error along
// makes one tongue longer and the other shorter: the glue room takes it, in mm, and [FlipGap].
func FlipOf(p geom.Panel, glueRoom float64) (f Flip) {
	panel := p.Outline.Bounds()
	for _, k := range p.Pockets {
		if k.Face == geom.Outside {
			b := k.Outline.Bounds()
			f.Along = f.Along || b.Min.X > panel.Min.X || b.Max.X < panel.Max.X
			f.Across = f.Across || b.Min.Y > panel.Min.Y || b.Max.Y < panel.Max.Y
		}
	}
	if f.Along {
		f.Allowed = glueRoom + FlipGap
	}
	return f
}
