package joinery

import (
	"testing"

	"drawerwright/geom"
)

// cutOf is the first pocket of a kind in a panel.
func cutOf(t *testing.T, p geom.Panel, k geom.Kind) geom.Pocket {
	t.Helper()
	for _, c := range p.Pockets {
		if c.Kind == k {
			return c
		}
	}
	t.Fatalf("no %s", k)
	return geom.Pocket{}
}

// TestDimensionsAreThePanels: what is kept of a drawer's sizes is what its panels have.
func TestDimensionsAreThePanels(t *testing.T) {
	for name, change := range map[string]func(*Spec){
		"tongues":       func(s *Spec) { s.Joint, s.GlueSpace = DadoRabbet, 0.3 },
		"double rabbet": func(s *Spec) { s.Joint = DoubleRabbet },
		"rabbet":        func(s *Spec) { s.Joint = Rabbet },
		"front over":    func(s *Spec) { s.Joint, s.Front = RabbetedFront, sheet("front", 18) },
		"butt":          func(s *Spec) { s.Joint = Butt },
		"fingers":       func(s *Spec) { s.Joint = BoxJoint },
		"housed":        func(s *Spec) { s.Joint, s.BackJoint, s.BackSetback = Rabbet, Housed, 12 },
		"slid in":       func(s *Spec) { s.Joint, s.BottomFit = DadoRabbet, BottomSlideIn },
		"flush":         func(s *Spec) { s.Joint, s.BottomFit = DadoRabbet, BottomFlush; s.Bottom = sheet("thick", 9) },
	} {
		d := mustBuild(t, routedBox(change))
		dims := d.Dimensions
		side, front, bottom := d.part(Side).Panel, d.part(Front).Panel, d.part(Bottom).Panel
		near(t, name+": side", dims.Walls.SideLen, side.Length())
		near(t, name+": front", dims.Walls.EndLen, front.Length())
		near(t, name+": height", dims.Walls.Height, side.Width())
		near(t, name+": clear depth", d.Spec.Depth-dims.Walls.ToFront-dims.Walls.ToBack, d.Inside.Depth)
		clear := dims.Walls.SideLen - dims.Walls.SidesToFront - dims.Walls.SidesToBack
		near(t, name+": clear of the sides", clear, d.Inside.Depth)
		groove := cutOf(t, side, geom.Groove)
		near(t, name+": rise", dims.Seat.Rise, groove.Outline.Bounds().Min.Y)
		near(t, name+": groove", dims.Seat.Groove, groove.Outline.Bounds().Height())
		near(t, name+": deep", dims.Seat.Deep, groove.Depth)
		near(t, name+": bottom", dims.Seat.Length, bottom.Length())
		near(t, name+": bottom's width", dims.Seat.Width, bottom.Width())
		corner := dims.Corner
		switch d.Spec.Joint {
		case DadoRabbet:
			dado, rabbet := cutOf(t, side, geom.Dado), cutOf(t, front, geom.Rabbet)
			near(t, name+": place", corner.Place, dado.Outline.Bounds().Min.X)
			near(t, name+": dado", corner.Dado, dado.Outline.Bounds().Width())
			near(t, name+": dado's depth", corner.DadoDeep, dado.Depth)
			near(t, name+": tongue", corner.Tongue, front.Thickness-rabbet.Depth)
			near(t, name+": tongue's length", corner.TongueLen, rabbet.Outline.Bounds().Width())
		case DoubleRabbet:
			near(t, name+": side's rabbet", corner.DadoDeep, cutOf(t, side, geom.Rabbet).Depth)
			end := cutOf(t, front, geom.Rabbet)
			near(t, name+": rabbet", corner.EndDeep, end.Depth)
			near(t, name+": rabbet's length", corner.EndRabbet[0], end.Outline.Bounds().Width())
		case RabbetedFront:
			near(t, name+": side's rabbet", corner.DadoDeep, cutOf(t, side, geom.Rabbet).Depth)
			end := cutOf(t, front, geom.Rabbet)
			near(t, name+": rabbet", corner.EndDeep, end.Depth)
			near(t, name+": rabbet's length", corner.EndRabbet[0], end.Outline.Bounds().Width())
		case Rabbet:
			near(t, name+": side's rabbet", corner.DadoDeep, cutOf(t, side, geom.Rabbet).Depth)
		case BoxJoint:
			cuts := len(side.EdgeCuts)/2 + len(front.EdgeCuts)/2 // one of them in every row
			near(t, name+": rows", float64(len(corner.FingerRows)-1), float64(cuts))
		}
		if d.Spec.BackJoint == Housed {
			back := cutOf(t, side, geom.Dado).Outline.Bounds()
			near(t, name+": back's dado", corner.BackDado, back.Width())
			near(t, name+": back's place", corner.BackPlace, side.Length()-back.Max.X)
		}
		if d.Spec.BottomFit.SlidesIn() {
			near(t, name+": back's rise", dims.Seat.BackRise, side.Width()-d.part(Back).Panel.Width())
		}
		if dims.Seat.OnTongue {
			near(t, name+": bottom's tongue", dims.Seat.InGroove, bottom.Thickness-cutOf(t, bottom, geom.Rabbet).Depth)
		}
	}
}

// TestHousedBackAddsNoDepth: a back between the sides does not lap over them, so that the
// range of its boards is none of the depth: 450 - 0.2 to 450 + 0.3 of the front alone.
func TestHousedBackAddsNoDepth(t *testing.T) {
	d := mustBuild(t, routedBox(func(s *Spec) {
		s.Joint, s.BackJoint, s.BackSetback = DoubleRabbet, Housed, 12
		s.Front = Stock{Name: "f", Thickness: Thickness{12, 11.8, 12.3}}
		s.Back = Stock{Name: "k", Thickness: Thickness{12, 11.9, 12.1}}
	}))
	depth := d.fit(CheckOutsideDepth)
	near(t, "least depth", depth.Min, 449.8)
	near(t, "most depth", depth.Max, 450.3)
}
