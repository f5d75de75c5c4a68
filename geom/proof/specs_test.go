package proof

import (
	"pgregory.net/rapid"

	"drawerwright/geom/joinery"
)

// anySpec draws jobs of small boxes, of which most can be built.
func anySpec(t *rapid.T) joinery.Spec {
	number := func(least, most float64, what string) float64 { return rapid.Float64Range(least, most).Draw(t, what) }
	sides := number(9, 19, "sides")
	ends := sides
	if rapid.Bool().Draw(t, "other ends") {
		ends = number(9, 19, "ends")
	}
	s := joinery.Spec{Name: "any", Count: 1, Width: number(80, 600, "width"), Height: number(45, 200, "height"), Depth: number(100, 500, "depth"),
		Sides: stock(sides), Front: stock(ends), Back: stock(ends), Bottom: stock(number(3, 14, "bottom")),
		Joint: rapid.SampledFrom([]joinery.Joint{joinery.DadoRabbet, joinery.DoubleRabbet,
			joinery.RabbetedFront}).Draw(t, "joint"),
		Cutter: joinery.Cutter{Kind: joinery.Saw, Width: ends/2 + number(0.02, 0.9, "play")}, GrooveEnds: joinery.GrooveThrough,
		BottomFit:       rapid.SampledFrom([]joinery.BottomFit{joinery.BottomAuto, joinery.BottomGroovedIn, joinery.BottomFlush}).Draw(t, "bottom fit"),
		BottomClearance: number(0, 3, "slack"), GlueSpace: rapid.SampledFrom([]float64{0, 0.2}).Draw(t, "glue space"),
		DadoClearance: joinery.DefaultDadoClearance, GrooveClearance: joinery.DefaultGrooveClearance,
	}
	if rapid.Bool().Draw(t, "own clearance") {
		deep := number(0, 3, "deep clearance")
		s.BottomClearanceDepth = &deep
	}
	if rapid.Bool().Draw(t, "other back") {
		s.Back = stock(ends + number(-1, 3, "back"))
	}
	if rapid.Bool().Draw(t, "own fence") {
		s.FenceDistance = ends/2 + number(-1.5, 1.5, "fence")
		s.Cutter.Width = s.FenceDistance + number(0.02, 0.9, "own clearance")
	}
	if rapid.Bool().Draw(t, "own height") {
		s.CutterHeight = sides/2 + number(-1.4, 1.4, "cutter height")
	}
	if rapid.Bool().Draw(t, "router") {
		s.Cutter = joinery.Cutter{Kind: joinery.Router, Width: number(1.5, 7, "bit")}
		s.GrooveEnds = rapid.SampledFrom([]joinery.GrooveEnds{joinery.GrooveStopped, joinery.GrooveThrough}).Draw(t, "groove ends")
		s.DepthFrom = rapid.SampledFrom([]joinery.DepthFrom{joinery.FromTop, joinery.FromSpoilboard}).Draw(t, "depth from")
	}
	if s.Joint == joinery.RabbetedFront && rapid.Bool().Draw(t, "lips") {
		s.Lip = joinery.Lip{Left: number(1, 20, "left lip"), Right: number(1, 20, "right lip"),
			Top: rapid.SampledFrom([]float64{0, 9}).Draw(t, "top lip"), Bottom: number(0, 20, "lower lip")}
	}
	return s
}

// anyDrawer draws one that joinery builds; ok is false where it refuses.
func anyDrawer(t *rapid.T) (d joinery.Drawer, ok bool) {
	d, problems, _ := joinery.LayOut(anySpec(t))
	for _, p := range problems {
		if p.IsError() {
			return d, false
		}
	}
	return d, true
}
