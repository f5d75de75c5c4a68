package joinery

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/geom"
)

// Change is one entry of a drawer, written anew: a length from Min to Max, in
// millimetres and both ends included, or a word. Max is +Inf for a length or more, Min
// is 0 for one or less. The entry of a stock stands for its thickness, that of the
// cutter for its width.
type Change struct {
	Field    Field
	Key      string // within the entry, as the width of a pull; empty for the entry itself
	Item     int    // of a list of entries, from 0
	Min, Max float64
	Word     string
	Count    int // a number of pieces instead of a length
}

// Remedy is a way to end a [Problem]: changes that are made together. [Build] has tried
// each at both ends of its range before it names it.
type Remedy struct {
	Changes []Change
	// Then are the problems that it brings where every way brings some; the hint says so.
	Then []Problem
}

// Follow makes a remedy's changes to a spec, a length for each; one that writes a word
// has no use for its length.
func (r Remedy) Follow(s Spec, lengths []float64) Spec {
	for i, c := range r.Changes {
		c.on(&s, lengths[i])
	}
	return s
}

// Ends are the lengths at both ends of the changes' ranges, each with each. An open
// range has one end.
func (r Remedy) Ends() [][]float64 {
	all := [][]float64{nil}
	for _, c := range r.Changes {
		var more [][]float64
		for _, before := range all {
			for _, v := range c.ends() {
				more = append(more, append(slices.Clone(before), v))
			}
		}
		all = more
	}
	return all
}

func (c Change) ends() []float64 {
	switch {
	case c.Min == c.Max, math.IsInf(c.Max, 1):
		return []float64{c.Min}
	case c.Min == 0:
		return []float64{c.Max}
	}
	return []float64{c.Min, c.Max}
}

// on writes the change into a spec.
func (c Change) on(s *Spec, v float64) {
	switch c.Field {
	case FieldOutside:
		*map[string]*float64{"width": &s.Width, "height": &s.Height, "depth": &s.Depth}[c.Key] = v
	case FieldSides:
		with := s.Sides.thick(v)
		for _, o := range []*Stock{&s.Front, &s.Back} { // of which the file says nothing else
			if o.Same(s.Sides) {
				*o = with
			}
		}
		s.Sides = with
	case FieldFront:
		with := s.Front.thick(v)
		if s.Back.Same(s.Front) {
			s.Back = with
		}
		s.Front = with
	case FieldBack:
		s.Back = s.Back.thick(v)
	case FieldBottom:
		s.Bottom = s.Bottom.thick(v)
	case FieldCutter:
		s.Bits = slices.Clone(s.Bits)
		for i := range s.Bits { // the narrowest
			if s.Bits[i].Diameter == s.Cutter.Width {
				s.Bits[i].Diameter = v
			}
		}
		s.Cutter.Width = v
	case FieldGrooveCutter:
		s.Cutter.Groove = v
	case FieldDividers:
		s.Dividers = slices.Clone(s.Dividers)
		if d := &s.Dividers[c.Item]; c.Count > 0 {
			d.At, d.Count = nil, c.Count
		} else if c.Key == "height" {
			d.Height = v
		} else {
			d.Stock = d.Stock.thick(v)
		}
	case FieldPull:
		*map[string]*float64{"width": &s.Pull.Width, "height": &s.Pull.Height, "down": &s.Pull.Down}[c.Key] = v
	case FieldJoint:
		s.Joint = Joint(c.Word)
	case FieldBackJoint:
		s.BackJoint = Joint(c.Word)
	case FieldBottomFit:
		s.BottomFit = BottomFit(c.Word)
	case FieldGrooveEnds:
		s.GrooveEnds = GrooveEnds(c.Word)
	case FieldFasteners:
		s.Fasteners = Fastener(c.Word)
	default:
		*s.setting(c.Field) = v
	}
}

// setting is where a spec keeps a length that one entry gives.
func (s *Spec) setting(f Field) *float64 {
	switch f {
	case FieldFenceDistance:
		return &s.FenceDistance
	case FieldCutterHeight:
		return &s.CutterHeight
	case FieldBottomSlack:
		return &s.BottomSlack
	case FieldDeepSlack:
		deep := s.SlackDeep()
		s.DeepSlack = &deep // not what other specs share
		return s.DeepSlack
	case FieldBottomHeight:
		return &s.BottomHeight
	case FieldDadoPlay:
		return &s.DadoPlay
	case FieldGroovePlay:
		return &s.GroovePlay
	case FieldGlueRoom:
		return &s.GlueRoom
	case FieldSetback:
		return &s.Setback
	case FieldFingerWidth:
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
func (l *layout) between(f Field, least, most float64) Remedy {
	c := Change{Field: f, Min: geom.LengthOf(math.Max(0, least)).RoundUp(l.Units).MM(), Max: most}
	if !math.IsInf(most, 1) {
		c.Max = geom.LengthOf(most).RoundDown(l.Units).MM()
	}
	if c.Max <= 0 || c.Min > c.Max {
		return Remedy{}
	}
	return Remedy{Changes: []Change{c}}
}

func (l *layout) least(f Field, v float64) Remedy { return l.between(f, v, math.Inf(1)) }
func (l *layout) most(f Field, v float64) Remedy  { return l.between(f, 0, v) }
func (l *layout) exactly(f Field, v float64) Remedy {
	v = l.printed(v)
	return Remedy{Changes: []Change{{Field: f, Min: v, Max: v}}}
}

// write is a remedy that writes a word.
func write[T ~string](f Field, w T) Remedy {
	return Remedy{Changes: []Change{{Field: f, Word: string(w)}}}
}

// of names the key within the entry, and the item of a list.
func (r Remedy) of(key string, item int) Remedy {
	for i := range r.Changes {
		r.Changes[i].Key, r.Changes[i].Item = key, item
	}
	return r
}

// with is both remedies together; without one of them it is none.
func (r Remedy) with(o Remedy) Remedy {
	if len(r.Changes) == 0 || len(o.Changes) == 0 {
		return Remedy{}
	}
	return Remedy{Changes: append(slices.Clone(r.Changes), o.Changes...)}
}

// Text says what to do.
func (r Remedy) Text(s Spec) string {
	list := make([]string, len(r.Changes))
	for i, c := range r.Changes {
		list[i] = c.text(s)
	}
	text := list[0]
	for i, more := range list[1:] {
		if i < len(list)-2 {
			text += ", " + more
		} else {
			text += " and " + more
		}
	}
	for i, p := range r.Then {
		if i == 0 {
			text += "; but then "
		} else {
			text += "; and "
		}
		text += p.Message
	}
	return text
}

func (c Change) text(s Spec) string {
	if c.Word != "" {
		return fmt.Sprintf("write %s: %s", c.Field, c.Word)
	}
	if c.Count > 0 {
		return fmt.Sprintf("write %s: %d for divider %d", c.Key, c.Count, c.Item+1)
	}
	v := c.span(s.Units)
	switch c.Field {
	case FieldOutside:
		return fmt.Sprintf("make the %s %s", c.Key, v)
	case FieldSides:
		return "take sides of " + v
	case FieldFront, FieldBack, FieldBottom:
		return fmt.Sprintf("take a %s of %s", c.Field, v)
	case FieldCutter:
		return c.cutterText(s, v)
	case FieldDividers:
		if c.Key == "height" {
			return fmt.Sprintf("write a height of %s for divider %d", v, c.Item+1)
		}
		return fmt.Sprintf("take a board of %s for divider %d", v, c.Item+1)
	case FieldPull:
		return fmt.Sprintf("write %s: %s for the pull", c.Key, v)
	}
	return fmt.Sprintf("write a %s of %s", c.Field, v)
}

// cutterText asks for a cutter as it is to be had.
func (c Change) cutterText(s Spec, v string) string {
	switch bit, sold := soldBit(c); {
	case s.Cutter.Kind == Saw && c.Max >= leastStack && c.Min > widestBlade:
		return "shim the dado stack to " + v
	case s.Cutter.Kind == Saw:
		return "take a blade of " + v
	case sold && c.Min < c.Max:
		return fmt.Sprintf("take a %s of %s, such as %s", s.Cutter.Kind.tool(), v, geom.LengthOf(bit).Text(s.Units))
	}
	return fmt.Sprintf("take a %s of %s", s.Cutter.Kind.tool(), v)
}

// span prints the range of a change.
func (c Change) span(u geom.Unit) string {
	text := func(mm float64) string { return geom.LengthOf(mm).Text(u) }
	switch {
	case c.Min == c.Max:
		return text(c.Min)
	case math.IsInf(c.Max, 1):
		return text(c.Min) + " or more"
	case c.Min == 0:
		return text(c.Max) + " or less"
	}
	return text(c.Min) + " to " + text(c.Max)
}
