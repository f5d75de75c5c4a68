package testcut_test

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// corrected is how a machine is cut for a test of corrections, and which of its readings have one.
type corrected struct {
	machine machine
	spec    func(*joinery.Spec)
	kinds   map[fit.ReadingKind]testcut.Setting
}

// read are the readings of a corner as a sheet names them.
func (c corner) read() map[fit.ReadingKind]float64 {
	return map[fit.ReadingKind]float64{fit.DadoWidth: c.slot, fit.DadoPlace: c.edge, fit.DadoDepth: c.depth,
		fit.UnderDado: c.side - c.depth, fit.TongueThick: c.tongue, fit.RabbetDeep: c.front - c.tongue,
		fit.TongueLong: c.tongueLength}
}

// moved is the machine with one setting moved.
func (m machine) moved(v testcut.Move) machine {
	switch v.Setting {
	case testcut.Cutter:
		m.cutter += v.By
	case testcut.Fence:
		m.fence += v.By
	case testcut.Height:
		m.height += v.By
	case testcut.DadoHeight:
		m.dado += v.By
	case testcut.EndPlace:
		m.end += v.By
	case testcut.RabbetHeight:
		m.rabbet += v.By
	}
	return m
}

var correctedMachines = map[string]corrected{
	"saw": {kinds: map[fit.ReadingKind]testcut.Setting{fit.DadoWidth: testcut.Cutter, fit.DadoPlace: testcut.Fence,
		fit.DadoDepth: testcut.Height, fit.TongueThick: testcut.Fence, fit.TongueLong: testcut.Height}},
	"saw with glue space": {machine: machine{glue: 0.3}, spec: func(s *joinery.Spec) { s.GlueSpace = 0.3 },
		kinds: map[fit.ReadingKind]testcut.Setting{fit.DadoWidth: testcut.Cutter, fit.DadoPlace: testcut.Fence,
			fit.DadoDepth: testcut.DadoHeight, fit.TongueThick: testcut.Fence, fit.TongueLong: testcut.Height}},
	"fronts flat": {machine: machine{flat: true, glue: 0.3}, spec: func(s *joinery.Spec) {
		s.GlueSpace, s.OnEnd = 0.3, joinery.OnEnd{Length: geom.Interval{Min: 150, Max: 300}}
	}, kinds: map[fit.ReadingKind]testcut.Setting{fit.DadoWidth: testcut.Cutter, fit.DadoPlace: testcut.Fence,
		fit.DadoDepth: testcut.DadoHeight, fit.RabbetDeep: testcut.RabbetHeight, fit.TongueLong: testcut.EndPlace}},
	"router from the top": {machine: machine{router: true}, spec: routed(joinery.FromTop),
		kinds: map[fit.ReadingKind]testcut.Setting{fit.DadoWidth: testcut.Cutter, fit.DadoPlace: testcut.Fence,
			fit.DadoDepth: testcut.Height, fit.RabbetDeep: testcut.Height, fit.TongueLong: testcut.EndPlace}},
	"router from the spoilboard": {machine: machine{router: true, floor: true}, spec: routed(joinery.FromSpoilboard),
		kinds: map[fit.ReadingKind]testcut.Setting{fit.DadoWidth: testcut.Cutter, fit.DadoPlace: testcut.Fence,
			fit.UnderDado: testcut.Height, fit.TongueThick: testcut.Height, fit.TongueLong: testcut.EndPlace}},
}

func routed(from joinery.DepthFrom) func(*joinery.Spec) {
	return func(s *joinery.Spec) {
		s.Cutter = joinery.Cutter{Kind: joinery.Router, Width: 6}
		s.DadoClearance, s.GrooveClearance, s.DepthFrom, s.GrooveEnds = 0.25, 0.2, from, joinery.GrooveStopped
	}
}

// TestCorrectionsBringReadingsNearer: on a machine that cuts by the physics written down in the tests, a reading that
// is off by any setting is back where it should be after the move that stands beside it, by the difference.
func TestCorrectionsBringReadingsNearer(t *testing.T) {
	for name, k := range correctedMachines {
		s := spec()
		if k.spec != nil {
			k.spec(&s)
		}
		d, problems, _ := joinery.LayOut(s)
		if len(d.Parts) == 0 {
			t.Fatal(name, problems)
		}
		list := testcut.Corrections([]joinery.Drawer{d})
		m := k.machine
		thick := s.Sides.Thickness.Mean
		m.noise, m.width, m.dadoPlay = func() float64 { return 0 }, s.Width, s.DadoClearance
		m.side, m.front, m.sideSet, m.frontSet = thick, thick, thick, thick
		m.setCutter, m.setFence, m.setHeight = s.Cutter.Width, thick/2, thick/2
		aim := m.cut().read()
		for kind, setting := range k.kinds {
			c, known := list[kind]
			if !known || c.Setting != setting {
				t.Errorf("%s: %s is put right by the %s %v, not by the %s", name, kind, c.Setting, known, setting)
				continue
			}
			for _, off := range []float64{-0.3, 0.2} {
				was := m.moved(testcut.Move{Setting: setting, By: off})
				by := was.cut().read()[kind] - aim[kind]
				if math.Abs(math.Abs(by)-math.Abs(off)) > 1e-9 {
					t.Errorf("%s: the %s off by %g makes the %s off by %g", name, setting, off, kind, by)
				}
				if left := was.moved(c.Of(by)).cut().read()[kind] - aim[kind]; math.Abs(left) > 1e-9 {
					t.Errorf("%s: the %s is off by %g, and after %+v by %g", name, kind, by, c.Of(by), left)
				}
			}
		}
	}
}

// TestNoCorrection: nothing is said of a reading that no one setting moves by as much as it is moved itself, of one
// that several passes make, of a part's size, and of one that drawers do not agree on.
func TestNoCorrection(t *testing.T) {
	layOut := func(change func(*joinery.Spec)) joinery.Drawer {
		s := spec()
		change(&s)
		d, problems, _ := joinery.LayOut(s)
		if len(d.Parts) == 0 {
			t.Fatal(problems)
		}
		return d
	}
	fingers := layOut(func(s *joinery.Spec) { // on a router, whose bit goes around them
		routed(joinery.FromTop)(s)
		s.Joint = joinery.BoxJoint
	})
	passes := layOut(func(s *joinery.Spec) { s.Bottom, s.Cutter.Groove = stock("thick", 8.9), s.Cutter.Width })
	onEnd := layOut(func(*joinery.Spec) {})
	flat := layOut(func(s *joinery.Spec) { s.GlueSpace = 0.3 })
	for _, k := range []struct {
		drawers []joinery.Drawer
		kind    fit.ReadingKind
	}{
		{[]joinery.Drawer{fingers}, fit.FingerFit}, {[]joinery.Drawer{passes}, fit.GrooveWidth},
		{[]joinery.Drawer{onEnd}, fit.FrontLength}, {[]joinery.Drawer{onEnd, flat}, fit.DadoDepth},
	} {
		if c, known := testcut.Corrections(k.drawers)[k.kind]; known {
			t.Errorf("%s of %d drawers is put right by %+v", k.kind, len(k.drawers), c)
		}
	}
	if passes.Setup.GroovePasses < 2 {
		t.Error("the groove takes one pass")
	}
	if c := testcut.Corrections([]joinery.Drawer{onEnd, passes})[fit.DadoPlace]; c.Setting != testcut.Fence {
		t.Errorf("two drawers agree on the fence, and it is %+v", c)
	}
}
