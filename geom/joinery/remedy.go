package joinery

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// Follow makes a remedy's changes to a spec, a length for each; one that writes a word
// has no use for its length.
func Follow(s Spec, r geom.Remedy, lengths []float64) Spec {
	for i, c := range r.Changes {
		s.write(c, lengths[i])
	}
	return s
}

// write makes one change. The setting of a stock is its thickness, that of the cutter its
// width.
func (s *Spec) write(c geom.Change, v float64) {
	switch c.Setting {
	case SettingOutside:
		*map[string]*float64{"width": &s.Width, "height": &s.Height, "depth": &s.Depth}[c.Key] = v
	case SettingSides:
		with := s.Sides.thick(v)
		for _, o := range []*Stock{&s.Front, &s.Back} { // of which the file says nothing else
			if o.Same(s.Sides) {
				*o = with
			}
		}
		s.Sides = with
	case SettingBoxFront:
		with := s.Front.thick(v)
		if s.Back.Same(s.Front) {
			s.Back = with
		}
		s.Front = with
	case SettingBack:
		s.Back = s.Back.thick(v)
	case SettingBottom:
		s.Bottom = s.Bottom.thick(v)
	case SettingCutter:
		s.Bits = slices.Clone(s.Bits)
		for i := range s.Bits { // the narrowest
			if s.Bits[i].Diameter == s.Cutter.Width {
				s.Bits[i].Diameter = v
			}
		}
		s.Cutter.Width = v
	case SettingGrooveCutter:
		s.Cutter.Groove = v
	case FieldDividers:
		s.divide(c, v)
	case FieldInsert:
		n := *s.Insert
		*map[string]*float64{"": &n.WallClearance, KeyContentsClearance: &n.ContentsClearance, "height": &n.Height}[c.Key] = v
		s.Insert = &n
	case FieldPull:
		*map[string]*float64{"width": &s.Pull.Width, "height": &s.Pull.Height, "from-top": &s.Pull.FromTop}[c.Key] = v
	case SettingJoint:
		s.joined(Joint(c.Word))
	case SettingBackJoint:
		s.BackJoint = Joint(c.Word)
	case SettingBottomFit:
		s.BottomFit = BottomFit(c.Word)
	case SettingGrooveEnds:
		s.GrooveEnds = GrooveEnds(c.Word)
	case SettingFasteners:
		s.Fasteners = Fastener(c.Word)
	default:
		*s.setting(c.Setting) = v
	}
}

// joined gives a spec another corner, and a back that is as the front the board that it then is
// of by default.
func (s *Spec) joined(j Joint) {
	if s.Joint = j; j == RabbetedFront && s.Back.Same(s.Front) {
		s.Back = s.Sides
	}
}

// divide makes a change to one of the dividers.
func (s *Spec) divide(c geom.Change, v float64) {
	s.Dividers = slices.Clone(s.Dividers)
	d := &s.Dividers[c.Item]
	switch {
	case c.Count > 0:
		d.At, d.Count = nil, c.Count
	case c.Key == KeyAt:
		d.At, d.Count = []float64{v}, 0
	case c.Key == "height":
		d.Height = v
	default:
		d.Stock = d.Stock.thick(v)
	}
}

// setting is where a spec keeps a length that one entry gives.
func (s *Spec) setting(f geom.Setting) *float64 {
	switch f {
	case SettingFenceDistance:
		return &s.FenceDistance
	case SettingCutterHeight:
		return &s.CutterHeight
	case SettingBottomClearance:
		return &s.BottomClearance
	case SettingBottomClearanceDepth:
		deep := s.ClearanceDepth()
		s.BottomClearanceDepth = &deep // not what other specs share
		return s.BottomClearanceDepth
	case SettingBottomHeight:
		return &s.BottomHeight
	case SettingDadoClearance:
		return &s.DadoClearance
	case SettingGrooveClearance:
		return &s.GrooveClearance
	case SettingGlueSpace:
		return &s.GlueSpace
	case SettingBackSetback:
		return &s.BackSetback
	case SettingFingerWidth:
		return &s.FingerWidth
	}
	panic("joinery: no length is kept under " + string(f))
}

// thick is the same stock at another thickness, its readings as far apart.
func (s Stock) thick(mean float64) Stock {
	t := s.Thickness
	s.Name = "other " + s.Name
	s.Thickness = Thickness{Mean: mean, Min: mean - (t.Mean - t.Min), Max: mean + (t.Max - t.Mean)}
	return s
}

// between, least, most and exactly are remedies that write one length, on the grid that
// it is printed on; a range that is none there is no remedy.
func (l *layout) between(f geom.Setting, least, most float64) geom.Remedy {
	c := geom.Change{Setting: f, Min: geom.LengthOf(math.Max(0, least)).RoundUp(l.Units).MM(), Max: most}
	if !math.IsInf(most, 1) {
		c.Max = geom.LengthOf(most).RoundDown(l.Units).MM()
	}
	if c.Max <= 0 || c.Min > c.Max {
		return geom.Remedy{}
	}
	return geom.Remedy{Changes: []geom.Change{c}}
}

func (l *layout) least(f geom.Setting, v float64) geom.Remedy { return l.between(f, v, math.Inf(1)) }
func (l *layout) most(f geom.Setting, v float64) geom.Remedy  { return l.between(f, 0, v) }
func (l *layout) exactly(f geom.Setting, v float64) geom.Remedy {
	v = l.printed(v)
	return geom.Remedy{Changes: []geom.Change{{Setting: f, Min: v, Max: v}}}
}

// write is a remedy that writes a word.
func write[T ~string](f geom.Setting, w T) geom.Remedy {
	return geom.Remedy{Changes: []geom.Change{{Setting: f, Word: string(w)}}}
}
