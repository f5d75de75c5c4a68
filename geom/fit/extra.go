package fit

import (
	"fmt"

	"drawerwright/geom/joinery"
)

// ends are front and back, or the front alone where they are twins or the back is
// not on tongues.
func (m *model) ends() []joinery.Role {
	if s := m.d.Spec; s.Front == s.Back || s.BackJoint == joinery.Housed {
		return []joinery.Role{joinery.Front}
	}
	return []joinery.Role{joinery.Front, joinery.Back}
}

// dado is how wide the slot for the tongues is.
func (m *model) dado() float64 { return m.f + m.nominal("tongue-play", joinery.Front) }

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
		c := joinery.Check{Code: "recess-inner", Part: r, Name: string(r) + " recess, pushed inwards", Least: -limit, Most: limit, Words: joinery.RecessWords}
		// The inside face bears on the wall, so that the whole board counts.
		m.extra(c, func(x []float64) float64 { return inner + x[fence] + x[cutter] + x[dado] - x[board] }, up(fence, cutter, dado), down(board))
	}
}

// shoulder is the gap at the front's shoulder when its tongue is home.
func (m *model) shoulder() {
	if m.d.Spec.Joint != joinery.DadoRabbet {
		return
	}
	most := m.limits().Shoulder
	c := joinery.Check{Code: "shoulder-gap", Part: joinery.Front, Name: "open at the shoulders (below 0: room at the tongue's end)", Least: -mostEndRoom, Most: most,
		Words: joinery.Words{Within: joinery.Goes, Below: joinery.Loose, Above: joinery.Open}}
	t := [][]Term{up(leftRabbet), down(leftDado)}
	switch { // on a saw one height makes both, unless the dados have their own
	case m.router:
		t = append(t, up(fence), down(height))
	case m.own:
		t = append(t, up(height), down(dadoHeight))
	}
	if m.router && m.own {
		t[len(t)-1] = down(dadoHeight)
	}
	if m.floor {
		t = append(t, down(leftSide))
	}
	m.extra(c, func(x []float64) float64 {
		return m.room() - m.d.Spec.GlueRoom + m.long(x, leftRabbet) - m.deep(x, leftSide, leftDado)
	}, t...)
}

// mostEndRoom is the most room at a tongue's end, in mm: beyond, the end grain has no
// glue line at all; common practice, no source.
const mostEndRoom = 1.0

// slack is what the bottom is smaller than its grooves, both ways. Front and back are
// pushed outwards, where the box is as large as asked.
func (m *model) slack() {
	s := m.d.Spec
	if s.BottomFit == joinery.BottomApplied {
		return
	}
	_, moved := m.spread(make([]float64, sources))
	limit := m.limits().BottomSlack
	c := joinery.Check{Code: "bottom-slack", Part: joinery.Bottom, Name: "bottom slack from side to side", Least: limit.Least, Most: limit.Most, Words: joinery.PlayWords}
	// From face to face of the sides is the outside width less the sides: their own
	// thickness does not move it but through a floor that it sets.
	inside := func(x []float64) float64 {
		v, _ := m.spread(x)
		return v - x[leftSide] - x[rightSide] + x[frontLength]
	}
	t := append([][]Term{}, onlyOthers(moved)...)
	t = append(t, up(frontLength, height, grooveDepth), down(bottomLength))
	if m.inward() {
		t = append(t, down(leftSide, rightSide))
	}
	m.extra(c, func(x []float64) float64 {
		return s.BottomSlack + inside(x) + float64(2*x[height]) + float64(2*x[grooveDepth]) - x[bottomLength]
	}, merged(t)...)

	c.Name, c.Code = "bottom slack from front to back", "bottom-slack-deep"
	stands := m.stands()
	m.extra(c, func(x []float64) float64 {
		v := s.BottomSlack + x[sideLength] + float64(2*x[height]) + float64(2*x[grooveDepth]) - x[bottomWidth]
		for _, e := range stands {
			v -= e.value(x)
		}
		return v
	}, append(standTerms(stands), up(sideLength, height, grooveDepth), down(bottomWidth))...)
}

// limits are those of the job.
func (m *model) limits() joinery.Limits {
	if l := m.d.Spec.Limits; l != (joinery.Limits{}) {
		return l
	}
	return joinery.DefaultLimits
}

// inward tells whether a thicker side stands further into the box.
func (m *model) inward() bool {
	return m.floor || m.d.Spec.Joint == joinery.BoxJoint || m.d.Spec.Joint == joinery.DoubleRabbet
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

// stand is how far the inside face of front or back is from the end of the sides,
// over what it is meant to be.
type stand struct {
	value func(x []float64) float64
	terms []Term
}

func (m *model) stands() (list []stand) {
	s := m.d.Spec
	for _, r := range []joinery.Role{joinery.Front, joinery.Back} {
		board, dado, tongue := end(r)
		switch {
		case r == joinery.Back && s.BackJoint == joinery.Housed:
			list = append(list, stand{func(x []float64) float64 { return x[fence] + x[dado] + x[board] }, up(fence, dado, board)})
		case s.Joint == joinery.DadoRabbet && m.router && !m.floor:
			list = append(list, stand{func(x []float64) float64 { return x[fence] + x[dado] + x[board] + x[height] + x[tongue] }, up(fence, dado, board, height, tongue)})
		case s.Joint == joinery.DadoRabbet && m.router:
			list = append(list, stand{func(x []float64) float64 { return x[fence] + x[dado] + x[height] + x[tongue] }, up(fence, dado, height, tongue)})
		case s.Joint == joinery.DadoRabbet:
			list = append(list, stand{func(x []float64) float64 { return float64(2*x[fence]) + x[dado] + x[tongue] }, up(fence, dado, tongue)})
		case s.Joint == joinery.Rabbet:
			list = append(list, stand{func(x []float64) float64 { return x[fence] + x[dado] }, up(fence, dado)})
		case s.Joint == joinery.DoubleRabbet:
			// The side's end meets the floor of the front's rabbet: what the board is
			// thicker comes out outside.
			list = append(list, stand{func(x []float64) float64 { return x[tongue] }, up(tongue)})
		default:
			list = append(list, stand{func(x []float64) float64 { return x[board] }, up(board)})
		}
	}
	return list
}

// standTerms are those of two stands taken away, once each.
func standTerms(list []stand) [][]Term {
	var all []Term
	seen := map[int]bool{}
	for _, s := range list {
		for _, t := range s.terms {
			if !seen[t.Source] && t.Source != height { // the grooves outweigh it
				seen[t.Source] = true
				all = append(all, Term{t.Source, -t.Sign})
			}
		}
	}
	return [][]Term{all}
}

// size adds the height and the diagonals.
func (m *model) size() {
	l, d := m.limits(), m.d
	m.extra(joinery.Check{Code: "outside-height", Name: "outside height", Least: d.Outside.Height - l.Height, Most: d.Outside.Height + l.Height, Words: joinery.HeightWords},
		func(x []float64) float64 { return d.Outside.Height + x[ripWidth] }, up(ripWidth))
	_, t := m.spread(make([]float64, sources))
	deep := d.Spec.Depth
	diagonal := func(x []float64) float64 {
		v, _ := m.spread(x)
		return hypot(d.Outside.Width+v+x[frontLength], deep+x[sideLength])
	}
	meant := diagonal(make([]float64, sources))
	m.extra(joinery.Check{Code: "diagonal", Name: "diagonals over the sides' outside corners", Least: meant - l.Diagonal, Most: meant + l.Diagonal, Words: joinery.DiagonalWords},
		diagonal, append(t, up(frontLength, sideLength))...)
}

// runs adds what the slide wants.
func (m *model) runs(slide *Running) {
	if slide == nil {
		return
	}
	_, t := m.spread(make([]float64, sources))
	c := joinery.Check{Code: "slide-clearance", Name: fmt.Sprintf("outside width for the slides"), Least: slide.Least, Most: slide.Most, Words: joinery.WidthWords}
	if !slide.InsideCounts {
		m.extra(c, func(x []float64) float64 {
			v, _ := m.spread(x)
			return m.d.Outside.Width + v + x[frontLength]
		}, append(t, up(frontLength))...)
		return
	}
	c.Name = "inside width for the slides"
	t = append(onlyOthers(t), up(frontLength))
	if m.inward() {
		t = append(t, down(leftSide, rightSide))
	}
	m.extra(c, func(x []float64) float64 {
		v, _ := m.spread(x)
		return m.d.Inside.Width + v - x[leftSide] - x[rightSide] + x[frontLength]
	}, merged(t)...)
}
