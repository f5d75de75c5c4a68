package fit

import "slices"

// Linear is a length as a linear function of what is off: At0 as set, in mm, and what each
// source adds to it.
type Linear struct {
	At0 float64
	By  []Slope // in the order of their sources, none of them twice and none 0
}

// Slope is by how much a length rises for each mm of a source.
type Slope struct {
	Source int
	By     float64
}

// fixed is a length that nothing moves; off is what one source adds.
func fixed(mm float64) Linear { return Linear{At0: mm} }
func off(source int) Linear   { return Linear{By: []Slope{{source, 1}}} }

// length is one that is At0 as set and that some sources add to.
func length(at0 float64, sources ...int) Linear {
	l := fixed(at0)
	for _, s := range sources {
		l = l.Plus(off(s), 1)
	}
	return l
}

// Plus is a length and so many times another one.
func (l Linear) Plus(o Linear, times float64) Linear {
	sum := Linear{At0: l.At0 + float64(o.At0*times), By: make([]Slope, 0, len(l.By)+len(o.By))}
	a, b := l.By, o.By
	for len(a) > 0 || len(b) > 0 {
		var s Slope
		switch {
		case len(b) == 0 || len(a) > 0 && a[0].Source < b[0].Source:
			s, a = a[0], a[1:]
		case len(a) == 0 || b[0].Source < a[0].Source:
			s, b = Slope{b[0].Source, float64(b[0].By * times)}, b[1:]
		default:
			s, a, b = Slope{a[0].Source, a[0].By + float64(b[0].By*times)}, a[1:], b[1:]
		}
		if s.By != 0 {
			sum.By = append(sum.By, s)
		}
	}
	return sum
}

// add and less are Plus once, and less once.
func (l Linear) add(o Linear) Linear  { return l.Plus(o, 1) }
func (l Linear) less(o Linear) Linear { return l.Plus(o, -1) }

// Value is the length with what is off, by source.
func (l Linear) Value(off []float64) float64 {
	v := l.At0
	for _, s := range l.By {
		v += float64(s.By * off[s.Source])
	}
	return v
}

// lanes are the lengths of the boxes of a block, as Value has them.
func (l Linear) lanes(off []lanes, v *lanes) {
	for j := range v {
		v[j] = l.At0
	}
	for _, s := range l.By {
		for j, x := range &off[s.Source] {
			v[j] += float64(s.By * x)
		}
	}
}

// appendTo adds the numbers of the length to a key.
func (l Linear) appendTo(key []byte) []byte {
	key = appendNumbers(key, l.At0, float64(len(l.By)))
	for _, s := range l.By {
		key = appendNumbers(key, float64(s.Source), s.By)
	}
	return key
}

// slope is what a source adds to the length.
func (l Linear) slope(source int) float64 {
	for _, s := range l.By {
		if s.Source == source {
			return s.By
		}
	}
	return 0
}

// Response is a measure of a box: a length that is linear but for bends, where one part
// meets another. It is the length and so many times the lesser of two lengths at each bend.
type Response struct {
	Linear
	Bends []Bend
}

// Bend is so many times the lesser of two lengths: the other one then changes nothing, not
// by a rounding either.
type Bend struct {
	Times float64
	A, B  Linear
}

// straight is a measure without bends.
func straight(l Linear) Response { return Response{Linear: l} }

// plus is a measure and so many times a length.
func (r Response) plus(l Linear, times float64) Response {
	r.Linear = r.Linear.Plus(l, times)
	return r
}

// plusProud adds a length where it is above 0.
func (r Response) plusProud(l Linear) Response {
	r.Bends = append(slices.Clip(r.Bends), Bend{-1, Linear{}, Linear{}.less(l)})
	return r
}

// lessLesser takes the lesser of two lengths away.
func (r Response) lessLesser(a, b Linear) Response {
	r.Bends = append(slices.Clip(r.Bends), Bend{-1, a, b})
	return r
}

// Value is the measure with what is off, by source.
func (r Response) Value(off []float64) float64 {
	v := r.Linear.Value(off)
	for _, b := range r.Bends {
		v += float64(b.Times * min(b.A.Value(off), b.B.Value(off)))
	}
	return v
}

// lanes are the measures of the boxes of a block, as Value has them.
func (r Response) lanes(off []lanes, v *lanes) {
	r.Linear.lanes(off, v)
	var a, b lanes
	for _, bend := range r.Bends {
		bend.A.lanes(off, &a)
		bend.B.lanes(off, &b)
		for j := range v {
			v[j] += float64(bend.Times * min(a[j], b[j]))
		}
	}
}

// appendTo adds the numbers of the measure to a key.
func (r Response) appendTo(key []byte) []byte {
	key = appendNumbers(r.Linear.appendTo(key), float64(len(r.Bends)))
	for _, b := range r.Bends {
		key = b.B.appendTo(b.A.appendTo(appendNumbers(key, b.Times)))
	}
	return key
}

// Terms are the sources that move the measure, in their order. Each raises it or lowers it
// over its whole range, on either side of all bends.
func (r Response) Terms() (list []Term) {
	for _, source := range r.movers() {
		low := r.slope(source) // at the least and at the most
		high := low
		for _, b := range r.Bends {
			x, y := float64(b.Times*b.A.slope(source)), float64(b.Times*b.B.slope(source))
			low, high = low+min(x, y), high+max(x, y)
		}
		if high > 0 {
			list = append(list, Term{source, 1})
		} else if low < 0 {
			list = append(list, Term{source, -1})
		}
	}
	return list
}

// movers are the sources of the length and of its bends.
func (r Response) movers() (list []int) {
	for _, s := range r.By {
		list = append(list, s.Source)
	}
	for _, b := range r.Bends {
		for _, s := range slices.Concat(b.A.By, b.B.By) {
			list = append(list, s.Source)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// merged is a measure in which two sources are off as one.
func (r Response) merged(from, to int) Response {
	one := func(l Linear) Linear {
		by := l.slope(from)
		return l.Plus(off(from), -by).Plus(off(to), by)
	}
	r.Linear, r.Bends = one(r.Linear), slices.Clone(r.Bends)
	for i := range r.Bends {
		r.Bends[i].A, r.Bends[i].B = one(r.Bends[i].A), one(r.Bends[i].B)
	}
	return r
}
