package joinery

import (
	"testing"

	"drawerwright/geom"
)

// One box by each machine, with 12 mm boards, a cutter of 6.35 and a bottom of 6: f and
// h are 6. A fence's slots are all 6.35 wide; made to fit, a dado is 6 + 0.2 wide, and a
// groove 6 + 0.2, but no narrower than the bit with its room (6.35) or the iron (6.35).
// By hand a dado is as narrow as its tongue wants.
func TestMachines(t *testing.T) {
	for kind, want := range map[CutterKind]struct{ dado, groove float64 }{
		Saw: {6.35, 6.35}, RouterTable: {6.35, 6.35}, Router: {6.35, 6.35}, Hand: {6.2, 6.35},
	} {
		s := Spec{Name: "a", Count: 1, Width: 400, Height: 120, Depth: 500, Sides: sheet("ply", 12), Front: sheet("ply", 12), Back: sheet("ply", 12), Bottom: sheet("thin", 6),
			Joint: DadoRabbet, Cutter: Cutter{Kind: kind, Width: 6.35}, GrooveEnds: GrooveThrough, BottomFit: BottomGroovedIn, BottomClearance: 2, DadoClearance: 0.2, GrooveClearance: 0.2}
		d, problems := Build(s)
		for _, p := range problems {
			if p.IsError() {
				t.Errorf("%s: %s", kind, fact(p))
			}
		}
		for _, k := range d.Parts[0].Panel.Pockets {
			b := k.Outline.Bounds()
			if k.Kind == geom.Dado {
				near(t, string(kind)+" dado", b.Width(), want.dado)
			} else {
				near(t, string(kind)+" groove", b.Height(), want.groove)
			}
		}
	}
}
