package fit

import (
	"drawerwright/geom/joinery"
)

// known adds a check of the package joinery: its value as set, and what moves it.
func (m *model) known(c joinery.Check) {
	plain := func(value func(x []float64) float64, t ...[]Term) {
		m.add(c, func(x []float64) float64 { return c.Nominal + value(x) }, t...)
	}
	board, dado, tongue := end(c.Part)
	switch c.Code {
	case joinery.CheckTonguePlay:
		if !m.router && !m.flat {
			// Slot less tongue: the tongue is the fence distance, whatever the board.
			plain(func(x []float64) float64 { return x[cutter] + x[dadoWidth] - x[fence] - x[tongue] }, up(cutter, dadoWidth), down(fence, tongue))
		} else if m.floor {
			plain(func(x []float64) float64 { return x[cutter] + x[dadoWidth] + x[height] - x[tongue] }, up(cutter, dadoWidth, height), down(tongue))
		} else {
			// The rabbet's depth is measured from the outside face: the rest is tongue.
			deep := m.tongueHeight()
			plain(func(x []float64) float64 { return x[cutter] + x[dadoWidth] - x[board] + x[deep] - x[tongue] }, up(cutter, dadoWidth, deep), down(board, tongue))
		}
	case joinery.CheckRecess:
		m.level(c, board, dado, tongue, plain)
	case joinery.CheckBottomPlay:
		m.bottomPlay(plain)
	case joinery.CheckBottomFlush:
		// The groove's lower wall less the rabbets' depth.
		if m.router && !m.floor {
			plain(func(x []float64) float64 { return x[fence] - x[height] + x[groovePlace] + x[bottomTongue] }, up(fence, groovePlace, bottomTongue), down(height))
		} else if m.router {
			plain(func(x []float64) float64 { return x[fence] - x[height] - x[bottom] + x[groovePlace] + x[bottomTongue] }, up(fence, groovePlace, bottomTongue), down(height, bottom))
		} else if wall := m.grooveWall(); m.flatBottom() {
			plain(func(x []float64) float64 { return x[wall] - x[bottomHeight] + x[groovePlace] + x[bottomTongue] }, up(wall, groovePlace, bottomTongue), down(bottomHeight))
		} else {
			own := m.rabbetFence()
			plain(func(x []float64) float64 { return x[wall] + x[own] - x[bottom] + x[groovePlace] + x[bottomTongue] }, up(unique(wall, own)...), up(groovePlace, bottomTongue), down(bottom))
		}
	case joinery.CheckOutsideWidth:
		m.width(c)
	case joinery.CheckOutsideDepth:
		m.depth(c)
	case joinery.CheckLap:
		switch {
		case m.d.Spec.Joint == joinery.BoxJoint:
			plain(func(x []float64) float64 { return -x[leftSide] }, down(leftSide))
		case m.floor:
			plain(func(x []float64) float64 { return x[height] + x[leftDado] }, up(height, leftDado))
		default:
			plain(func(x []float64) float64 { return x[height] + x[leftDado] - x[leftSide] }, up(height, leftDado), down(leftSide))
		}
	case joinery.CheckBackPlay:
		plain(func(x []float64) float64 { return x[cutter] + x[backDado] + x[backWidth] - x[back] }, up(cutter, backDado, backWidth), down(back))
	case joinery.CheckFingerPlay:
		// Notches come out wider by what fingers come out narrower.
		plain(func(x []float64) float64 { return float64(2*x[cutter]) + x[frontDado] }, up(cutter, frontDado))
	case joinery.CheckDividerPlay:
		// The board of a divider has no source of its own: its readings are in Min and Max.
		minus, plus := c.Nominal-c.Min, c.Max-c.Nominal
		at := len(m.sources)
		m.sources = append(m.sources[:at:at], Source{Name: "thickness of the divider", Minus: plus, Plus: minus, Cause: OfDividers})
		plain(func(x []float64) float64 { return x[cutter] + x[dividerDado] - x[at] }, up(cutter, dividerDado), down(at))
	}
}

// level is how front or back stand to the ends of the sides.
func (m *model) level(c joinery.Check, board, dado, tongue int, plain func(func(x []float64) float64, ...[]Term)) {
	switch {
	case m.d.Spec.Joint == joinery.DadoRabbet && !m.router && !m.flat:
		// Wall and tongue each are where the fence puts them.
		plain(func(x []float64) float64 { return float64(2*x[fence]) + x[dado] + x[tongue] - x[board] }, up(fence, dado, tongue), down(board))
	case m.d.Spec.Joint == joinery.DadoRabbet && m.floor:
		plain(func(x []float64) float64 { return x[fence] + x[dado] - x[height] + x[tongue] - x[board] }, up(fence, dado, tongue), down(height, board))
	case m.d.Spec.Joint == joinery.DadoRabbet:
		// The outside face is the rabbet's depth before the wall.
		deep := m.tongueHeight()
		plain(func(x []float64) float64 { return x[fence] + x[dado] - x[deep] + x[tongue] }, up(fence, dado, tongue), down(deep))
	case m.d.Spec.Joint == joinery.Rabbet:
		plain(func(x []float64) float64 { return x[fence] + x[dado] - x[board] }, up(fence, dado), down(board))
	default:
		plain(func(x []float64) float64 { return -x[board] }, down(board))
	}
}

func (m *model) bottomPlay(plain func(func(x []float64) float64, ...[]Term)) {
	flush := m.d.Setup.BottomFence > 0 || m.flush()
	switch {
	case m.router && !flush:
		plain(func(x []float64) float64 { return x[cutter] + x[grooveWidth] - x[bottom] }, up(cutter, grooveWidth), down(bottom))
	case !m.router:
		stands, tongue := bottom, []int(nil) // in the groove: the board, or the tongue that a fence leaves
		var under []int                      // what a rabbet takes of a board that lies flat
		switch {
		case m.flatBottom():
			tongue, under = []int{bottomTongue}, []int{bottomHeight}
		case flush:
			stands, tongue = m.rabbetFence(), []int{bottomTongue}
		}
		blade, moved := m.grooveBlade(), []int(nil)
		if m.d.Setup.GroovePasses > 1 {
			moved = []int{grooveMove}
		}
		plain(func(x []float64) float64 {
			v := x[blade] + x[grooveWidth] - x[stands]
			for _, i := range moved {
				v += x[i]
			}
			for _, i := range tongue {
				v -= x[i]
			}
			for _, i := range under {
				v += x[i]
			}
			return v
		}, up(blade, grooveWidth), up(moved...), up(under...), down(stands), down(tongue...))
	case m.floor:
		plain(func(x []float64) float64 { return x[cutter] + x[grooveWidth] + x[height] - x[bottomTongue] }, up(cutter, grooveWidth, height), down(bottomTongue))
	default:
		plain(func(x []float64) float64 { return x[cutter] + x[grooveWidth] + x[height] - x[bottom] - x[bottomTongue] }, up(cutter, grooveWidth, height), down(bottom, bottomTongue))
	}
}

// flatBottom reports whether the bottom lies flat for the rabbets of its tongue.
func (m *model) flatBottom() bool { return m.d.Setup.BottomHeight > 0 }

// rabbetFence is the source of the setting for a flush bottom's rabbets on a saw,
// which may be the one that serves all cuts.
func (m *model) rabbetFence() int {
	if s := m.d.Setup; s.BottomFence == s.FenceDistance {
		return fence
	}
	return bottomFence
}

// grooveBlade is the source of the width of one pass over the bottom's grooves on a saw.
func (m *model) grooveBlade() int {
	if s := m.d.Setup; s.GrooveCutter() != s.Cutter.Width {
		return grooveCutter
	}
	return cutter
}

// grooveWall is the source of where the lower wall of those grooves is on a saw.
func (m *model) grooveWall() int {
	if m.d.Setup.OwnGroove() {
		return grooveFence
	}
	return fence
}

// tongueHeight is the source of how deep the rabbets before the tongues are, where that
// is what the machine keeps: of a router, and of a front that lies flat.
func (m *model) tongueHeight() int {
	if m.flat {
		return endHeight
	}
	return height
}

// tongueLength is the source of how long they are: of a front that stands on end, the
// cutter's height.
func (m *model) tongueLength() int {
	switch {
	case m.router:
		return fence
	case m.flat:
		return endFence
	}
	return height
}

// flush reports whether the bottom stands on a tongue.
func (m *model) flush() bool {
	for _, c := range m.d.Fit {
		if c.Code == joinery.CheckBottomFlush {
			return true
		}
	}
	return false
}

// deep is how deep a dado or rabbet is cut into a side, over its meant depth.
func (m *model) deep(x []float64, board, cut int) float64 {
	set := height
	if m.own {
		set = dadoHeight
	}
	v := x[set] + x[cut]
	if m.floor { // the same wood is left under every cut
		v += x[board]
	}
	return v
}

// long is how long a rabbet is over its meant length.
func (m *model) long(x []float64, cut int) float64 {
	v := x[m.tongueLength()] + x[cut]
	if m.twice { // the last pass is set by the cutter's near side
		v += x[cutter]
	}
	return v
}

// into is by how much front and back reach into a side.
func (m *model) into(x []float64, board, dado, rabbet int) float64 {
	deep := m.h + m.d.Spec.GlueRoom + m.deep(x, board, dado)
	return min(deep, m.h+m.room()+m.long(x, rabbet))
}

// room is how much longer a router's rabbets are than the tongues need.
func (m *model) room() float64 {
	if t := m.d.Spec.Sides.Thickness; m.floor && m.d.Spec.GlueRoom == 0 {
		return t.Max - t.Mean
	}
	return 0
}

// spread is the wood of both sides beside the front, over what it is meant to be.
func (m *model) spread(x []float64) float64 {
	switch m.d.Spec.Joint {
	case joinery.DadoRabbet:
		return x[leftSide] + x[rightSide] + float64(2*m.h) - m.into(x, leftSide, leftDado, leftRabbet) - m.into(x, rightSide, rightDado, rightRabbet)
	case joinery.Rabbet:
		return x[leftSide] + x[rightSide] - m.deep(x, leftSide, leftDado) - m.deep(x, rightSide, rightDado)
	case joinery.DoubleRabbet:
		proud := func(side, cut int) float64 {
			p := x[side] - x[height] - x[cut]
			if m.floor {
				p = -x[height] - x[cut]
			}
			return max(0, p)
		}
		return proud(leftSide, leftDado) + proud(rightSide, rightDado)
	case joinery.BoxJoint:
		return max(0, x[leftSide]) + max(0, x[rightSide])
	}
	return x[leftSide] + x[rightSide] // butt
}

// spreadTerms are the sources of spread.
func (m *model) spreadTerms() [][]Term {
	set := height
	if m.own {
		set = dadoHeight
	}
	t := [][]Term{up(leftSide, rightSide)}
	switch m.d.Spec.Joint {
	case joinery.DadoRabbet:
		if m.twice {
			t = append(t, down(cutter))
		}
		return append(t, down(unique(set, m.tongueLength())...), down(leftDado, rightDado, leftRabbet, rightRabbet))
	case joinery.Rabbet:
		return append(t, down(set, leftDado, rightDado))
	case joinery.DoubleRabbet:
		return append(t, down(height, leftDado, rightDado))
	}
	return t
}

func unique(a, b int) []int {
	if a == b {
		return []int{a}
	}
	return []int{a, b}
}

func (m *model) width(c joinery.Check) {
	t := m.spreadTerms()
	m.add(c, func(x []float64) float64 {
		return c.Nominal + m.spread(x) + x[frontLength]
	}, append(t, up(frontLength))...)
}

// depth is that of the sides, and what front and back add to it.
func (m *model) depth(c joinery.Check) {
	s := m.d.Spec
	switch s.Joint {
	case joinery.DoubleRabbet:
		lip := func(x []float64, board, cut int) float64 {
			if m.floor {
				return -x[height] - x[cut]
			}
			return x[board] - x[height] - x[cut]
		}
		m.add(c, func(x []float64) float64 {
			return c.Nominal + x[sideLength] + lip(x, front, frontTongue) + lip(x, back, backTongue)
		}, up(sideLength, front, back), down(height, frontTongue, backTongue))
	case joinery.DadoRabbet:
		proud := []float64{m.nominal(joinery.CheckRecess, joinery.Front), m.nominal(joinery.CheckRecess, joinery.Back)}
		if s.BackJoint == joinery.Housed {
			proud[1] = 0
		} else if s.Front.Same(s.Back) {
			proud[1] = proud[0]
		}
		stands := func(x []float64, i, board, dado, tongue int) float64 {
			if i == 1 && s.BackJoint == joinery.Housed {
				return 0
			}
			moved := x[fence] + x[dado] + x[tongue]
			if m.router || m.flat {
				moved -= x[m.tongueHeight()]
			} else {
				moved += x[fence]
			}
			if !m.router && !m.flat || m.floor {
				moved -= x[board]
			}
			return max(0, -proud[i]-moved)
		}
		sides := c.Nominal - max(0, -proud[0]) - max(0, -proud[1])
		m.add(c, func(x []float64) float64 {
			return sides + x[sideLength] + stands(x, 0, front, frontDado, frontTongue) + stands(x, 1, back, backDado, backTongue)
		}, up(sideLength, front, back, m.tongueHeight()), down(fence, frontDado, frontTongue, backDado, backTongue))
	default:
		m.add(c, func(x []float64) float64 { return c.Nominal + x[sideLength] }, up(sideLength))
	}
}

// nominal finds a check of the drawer; 0 where there is none.
func (m *model) nominal(code joinery.CheckCode, r joinery.Role) float64 {
	for _, c := range m.d.Fit {
		if c.Code == code && c.Part == r {
			return c.Nominal
		}
	}
	return 0
}
