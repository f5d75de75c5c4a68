package prove

import (
	"drawerwright/cmd/internal/record"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// thickest is the thickest board that was measured of the stock, in millimeters.
func (s *sheet) thickest() float64 {
	for _, k := range s.report.Stocks {
		if k.Name == s.part.Stock {
			return k.Max.MM()
		}
	}
	return s.out.thickness
}

// pinned judges how deep registration holes go, by the name of their layer or else by the
// height of their lines.
func (s *sheet) pinned(l record.Layer, says said, line int) {
	over := s.thickest()
	if s.report.Router.DepthFrom == string(joinery.FromSpoilboard) {
		over = 0
	}
	ends := says.depth
	switch {
	case says.depthSaid && says.through:
		ends = over
	case !says.depthSaid && l.Elevation != nil:
		ends = -l.Elevation.MM()
	case !says.depthSaid:
		return
	}
	if into := ends - over; into < mill.PinDepth-says.step-sameDepth {
		s.fault("pin-depth", s.place(s.name, line), rebuild,
			"%s goes %s into the spoilboard below the thickest board: a pin needs %s",
			l.Layer, s.text(max(0, into)), s.text(mill.PinDepth))
	}
}

// oneBit looks for a layer that has another bit in another drawing: whoever gives it one by
// its name gives it to both.
func (s *sheet) oneBit(l record.Layer, line int) {
	if first := s.bits[layerKey(l.Layer)]; first.Bit != l.Bit || first.Tool != l.Tool || first.Diameter != l.Diameter {
		s.fault("bit", s.place(s.name, line), rebuild,
			"the layer %s is for the bit %s here and for %s in %s: a layer has one bit in all drawings",
			l.Layer, l.Bit, first.Bit, first.File)
	}
}
