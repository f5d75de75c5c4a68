package fit

import "drawerwright/geom/joinery"

// ends are front and back, or the front alone where they are twins or the back is
// not on tongues.
func (m *model) ends() []joinery.Role {
	if s := m.d.Spec; s.Front.Same(s.Back) || s.BackJoint == joinery.Housed {
		return []joinery.Role{joinery.Front}
	}
	return []joinery.Role{joinery.Front, joinery.Back}
}

// dado is how wide the slot for the tongues is.
func (m *model) dado() float64 { return m.f + m.nominal(joinery.CheckTonguePlay, joinery.Front) }

// seats adds the second seat of front and back: the tongue against the inner wall of
// its dado.
func (m *model) seats() {
	if m.d.Spec.Joint != joinery.DadoRabbet {
		return
	}
	limit := m.limits().Recess
	for _, r := range m.ends() {
		board, dado, _ := end(r)
		stock := m.d.Spec.Front
		if r == joinery.Back {
			stock = m.d.Spec.Back
		}
		inner := m.f + m.dado() - stock.Thickness.Mean
		c := joinery.Check{CheckID: joinery.CheckID{Code: RecessInner, Part: r}, Name: string(r) + " recess, pushed inwards", Least: -limit, Most: limit + m.limits().TonguePlay.Max,
			Words: joinery.Words{Within: joinery.Goes, Below: joinery.Proud, Above: joinery.Recessed}}
		// What the tongue has in play comes on top.
		// The inside face bears on the wall, so that the whole board counts.
		m.extra(c, func(x []float64) float64 { return inner + x[fence] + x[cutter] + x[dadoWidth] + x[dado] - x[board] }, up(fence, cutter, dadoWidth, dado), down(board))
	}
}

// shoulder is the gap at the front's shoulder when its tongue is home.
func (m *model) shoulder() {
	if m.d.Spec.Joint != joinery.DadoRabbet {
		return
	}
	most := m.limits().Shoulder
	c := joinery.Check{CheckID: joinery.CheckID{Code: ShoulderGap, Part: joinery.Front}, Name: "open at the shoulders (below 0: room at the tongue's end)", Least: -m.limits().EndRoom, Most: most,
		Words: joinery.Words{Within: joinery.Goes, Below: joinery.Loose, Above: joinery.Open}}
	t := [][]Term{up(leftRabbet), down(leftDado)}
	set := height
	if m.own {
		set = dadoHeight
	}
	if long := m.tongueLength(); long != set { // else one height makes both
		t = append(t, up(long), down(set))
	}
	if m.twice {
		t = append(t, up(cutter))
	}
	if m.floor {
		t = append(t, down(leftSide))
	}
	m.extra(c, func(x []float64) float64 {
		return m.room() - m.d.Spec.GlueRoom + m.long(x, leftRabbet) - m.deep(x, leftSide, leftDado)
	}, t...)
}

// slack is what the bottom is smaller than its grooves, both ways. Front and back are
// pushed outwards, where the box is as large as asked.
func (m *model) slack() {
	s := m.d.Spec
	if s.BottomFit == joinery.BottomApplied {
		return
	}
	limit := m.limits().BottomSlack
	c := joinery.Check{CheckID: joinery.CheckID{Code: joinery.CheckBottomSlack, Part: joinery.Bottom}, Name: joinery.SlackName(joinery.CheckBottomSlack), Least: limit.Min, Most: limit.Max, Words: joinery.PlayWords}
	inside, t := m.inside()
	grooved := s.BottomFit.Grooved() // else it lies between the walls
	t = append(t, down(bottomLength))
	if grooved {
		t = append(t, up(height, grooveDepth))
	}
	if m.floor && grooved {
		t = append(t, up(leftSide, rightSide))
	}
	m.extra(c, func(x []float64) float64 {
		v := s.BottomSlack + inside(x) - x[bottomLength]
		if grooved {
			v += float64(2*x[height]) + float64(2*x[grooveDepth])
		}
		if m.floor && grooved { // the same wood is left under the grooves too
			v += x[leftSide] + x[rightSide]
		}
		return v
	}, merged(t)...)

	c.Name, c.Code = joinery.SlackName(joinery.CheckBottomSlackDeep), joinery.CheckBottomSlackDeep
	if s.BottomFit == joinery.BottomSlidIn { // it is open behind: nothing keeps the corners from closing
		c.Least = 0
	}
	k := m.deepSlack()
	t = nil
	for i, by := range k {
		switch {
		case by > 0:
			t = append(t, up(i))
		case by < 0:
			t = append(t, down(i))
		}
	}
	m.extra(c, func(x []float64) float64 {
		v := s.SlackDeep()
		for i, by := range k {
			v += float64(by * x[i])
		}
		return v
	}, t...)
}

// deepSlack is how much the bottom's slack from front to back changes with each
// source.
func (m *model) deepSlack() []float64 {
	s := m.d.Spec
	k := make([]float64, sources)
	k[sideLength], k[bottomWidth] = 1, -1
	for _, r := range []joinery.Role{joinery.Front, joinery.Back} {
		board, dado, tongue := end(r)
		switch {
		case r == joinery.Back && s.BottomFit == joinery.BottomSlidIn:
			k[board]++ // to the outside face, behind the inside one
		case s.BottomFit.Grooved():
			k[height]++
			k[grooveDepth]++
			if m.floor { // the same wood is left under the groove
				k[board]++
			}
		}
		// Less how far the inside face is from the end of the sides.
		switch {
		case r == joinery.Back && s.BackJoint == joinery.Housed:
			k[fence]--
			k[dado]--
			k[backPlace]--
			k[board]--
		case s.Joint == joinery.DadoRabbet:
			// The wall of the dado and the tongue before it.
			k[fence]--
			k[dado]--
			k[tongue]--
			switch {
			case !m.router && !m.flat:
				k[fence]--
			case m.floor:
				k[height]++
			default:
				k[m.tongueHeight()]++
				k[board]--
			}
		case s.Joint == joinery.Rabbet:
			k[fence]--
			k[dado]--
		case s.Joint == joinery.DoubleRabbet:
			// The side's end meets the floor of the front's rabbet.
			k[height]--
			k[tongue]--
			if m.floor {
				k[board]--
			}
		}
		// Else what a board is thicker comes out outside, as its recess says.
	}
	return k
}

// limits are those of the job.
func (m *model) limits() joinery.Limits {
	if l := m.d.Spec.Limits; l != (joinery.Limits{}) {
		return l
	}
	return joinery.DefaultLimits
}

// inside is the width between the sides, over what it is meant to be.
func (m *model) inside() (value func(x []float64) float64, t [][]Term) {
	switch m.d.Spec.Joint {
	case joinery.BoxJoint: // the sides bear on the floors of the front's notches
		return func(x []float64) float64 { return x[frontLength] }, [][]Term{up(frontLength)}
	case joinery.DoubleRabbet: // the floors of their rabbets on its shoulders
		t = [][]Term{up(frontLength), down(height, leftDado, rightDado)}
		if m.floor {
			t = append(t, down(leftSide, rightSide))
		}
		return func(x []float64) float64 {
			return x[frontLength] - m.deep(x, leftSide, leftDado) - m.deep(x, rightSide, rightDado)
		}, t
	}
	// The outside width less the sides: their own thickness does not move it but
	// through a floor that it sets.
	t = m.spreadTerms()
	t = append(onlyOthers(t), up(frontLength))
	if m.floor {
		t = append(t, down(leftSide, rightSide))
	}
	return func(x []float64) float64 {
		return m.spread(x) - x[leftSide] - x[rightSide] + x[frontLength]
	}, t
}

// onlyOthers leaves out the terms of the sides' thickness.
func onlyOthers(list [][]Term) (out [][]Term) {
	for _, l := range list {
		var keep []Term
		for _, t := range l {
			if t.Source != leftSide && t.Source != rightSide {
				keep = append(keep, t)
			}
		}
		out = append(out, keep)
	}
	return out
}

// merged makes one term of several on one source; the later one counts, since the
// grooves are twice as much as the dados in what they share.
func merged(list [][]Term) [][]Term {
	at := map[int]int{}
	var out []Term
	for _, l := range list {
		for _, t := range l {
			if i, known := at[t.Source]; known {
				out[i] = t
				continue
			}
			at[t.Source] = len(out)
			out = append(out, t)
		}
	}
	return [][]Term{out}
}

// size adds the height and the diagonals.
func (m *model) size() {
	l, d := m.limits(), m.d
	m.extra(joinery.Check{CheckID: joinery.CheckID{Code: OutsideHeight}, Name: "outside height", Least: d.Outside.Height - l.Height, Most: d.Outside.Height + l.Height, Words: joinery.HeightWords},
		func(x []float64) float64 {
			v := d.Outside.Height + x[ripWidth]
			if d.Spec.BottomFit == joinery.BottomApplied { // the walls stand on it
				v += x[bottom]
			}
			return v
		}, up(ripWidth, bottom))
	t := m.spreadTerms()
	deep := d.Spec.Depth
	diagonal := func(x []float64) float64 {
		return hypot(d.Outside.Width+m.spread(x)+x[frontLength], deep+x[sideLength])
	}
	meant := diagonal(make([]float64, sources))
	m.extra(joinery.Check{CheckID: joinery.CheckID{Code: Diagonal}, Name: "diagonals over the sides' outside corners", Least: meant - l.Diagonal, Most: meant + l.Diagonal, Words: joinery.DiagonalWords},
		diagonal, append(t, up(frontLength, sideLength))...)
}

// runs adds what the slide wants.
func (m *model) runs(slide *Running) {
	if slide == nil {
		return
	}
	c := joinery.Check{CheckID: joinery.CheckID{Code: SlideClearance}, Name: "outside width for the slides", Least: slide.Least, Most: slide.Most, Words: joinery.WidthWords}
	if !slide.InsideCounts {
		t := m.spreadTerms()
		m.extra(c, func(x []float64) float64 {
			return m.d.Outside.Width + m.spread(x) + x[frontLength]
		}, append(t, up(frontLength))...)
		return
	}
	c.Name = "inside width for the slides"
	inside, t := m.inside()
	m.extra(c, func(x []float64) float64 { return m.d.Inside.Width + inside(x) }, merged(t)...)
}
