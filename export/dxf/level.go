package dxf

// level is how high an entity lies, and how far up it reaches from there.
type level struct{ elevation, thickness micro }

// Level says at which height lies what is drawn from now on, and how far up it reaches
// from there, both in drawing units: the elevation and the thickness of the format
// (group 38, of R12 and of circles 30; group 39). At first both are 0. Errors:
// [ErrNotFinite], [ErrOutOfRange].
func (d *Drawing) Level(elevation, thickness float64) {
	if d.err != nil {
		return
	}
	for _, q := range []struct {
		name  string
		value float64
	}{{"elevation", elevation}, {"thickness", thickness}} {
		if rule := beyond(q.value, MaxCoordinate); rule != nil {
			d.err = &Error{Rule: rule, Entity: len(d.entities), Vertex: -1, Quantity: q.name, Value: q.value}
			return
		}
	}
	d.at = level{toMicro(elevation), toMicro(thickness)}
}

// level numbers the level that is set, from 1; 0 is Z = 0 without thickness.
func (d *Drawing) level() int32 {
	d.heights.take(d.at.elevation)
	d.heights.take(d.at.elevation + d.at.thickness)
	if d.at == (level{}) {
		return 0
	}
	if n := len(d.levels); n == 0 || d.levels[n-1] != d.at {
		d.levels = append(d.levels, d.at)
	}
	return int32(len(d.levels))
}

// of gives the level of an entity.
func (d *Drawing) of(e entity) level {
	if e.level == 0 {
		return level{}
	}
	return d.levels[e.level-1]
}

// heights is how far down and up a drawing reaches.
type heights struct {
	low, high micro
	some      bool
}

func (h *heights) take(z micro) {
	if !h.some {
		*h = heights{z, z, true}
		return
	}
	h.low, h.high = min(h.low, z), max(h.high, z)
}

// appendThickness appends group 39, unless it is 0.
func (l level) appendThickness(b []byte) []byte {
	if l.thickness == 0 {
		return b
	}
	b = append(b, "39\n"...)
	b = l.thickness.appendTo(b)
	return append(b, '\n')
}
