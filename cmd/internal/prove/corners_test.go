package prove_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom/joinery"
)

// cornered builds the box of [jobOf] with another corner, back and bottom.
func cornered(t *testing.T, cutter string, joint, back joinery.Joint, fit joinery.BottomFit) *folder {
	t.Helper()
	text := strings.Replace(jobOf("diameter: 3", ""), "kind: router, diameter: 3", cutter, 1)
	text = strings.Replace(text, ", joinery: {dado-clearance: 0.2}", "", 1) // saws have none
	if fit == joinery.BottomFielded {                                       // thicker than its groove
		text = strings.Replace(text, "ply: {thickness: 5.9}", "ply: {thickness: 9}", 1)
	}
	j, problems := job.Read("job.yaml", strings.NewReader(text))
	if problems.Failed() {
		t.Fatal(problems)
	}
	s := &j.Drawers[0].Spec
	s.Joint, s.BackJoint, s.BottomFit, s.Fasteners, s.BackSetback, s.DadoClearance = joint, back, fit, joinery.Screws, 10, 0.2
	b, found := batch.Make(t.Context(), j)
	for _, p := range found {
		if p.IsError() {
			t.Fatal(p.Shown(j))
		}
	}
	f := &folder{files: map[string][]byte{}, t: t}
	if err := files.Write(context.Background(), b, f, files.Options{NoProof: true}); err != nil {
		t.Fatal(err)
	}
	return f
}

const routed, sawn = "kind: router, diameter: 3", "kind: saw, width: 6.35"

// TestCorners: every corner with its backs and bottoms, sound as it is written.
func TestCorners(t *testing.T) {
	for _, cutter := range []string{routed, sawn} {
		for _, joint := range joinery.Joints {
			if joint.Interlocks() {
				continue
			}
			for _, back := range []joinery.Joint{"", joinery.Housed} {
				for _, fit := range []joinery.BottomFit{joinery.BottomGroovedIn, joinery.BottomSlideIn, joinery.BottomFielded, joinery.BottomApplied, joinery.BottomCleats} {
					if !fit.Grooved() && (cutter == sawn || back != "") {
						continue // its many holes take their time, and no wall meets it otherwise
					}
					name := fmt.Sprint(cutter, " ", joint, " ", back, " ", fit)
					p := cornered(t, cutter, joint, back, fit).proof(t, prove.Options{})
					if p.Verdict != record.Goes || len(p.Remarks) != 0 || len(p.Faults) != 0 || len(p.Overlaps) != 0 {
						t.Errorf("%s: %s, %v, %v, %v", name, p.Verdict, p.Remarks, p.Faults, p.Overlaps)
						continue
					}
					if want := map[joinery.BottomFit]string{joinery.BottomSlideIn: "slide-in", joinery.BottomFielded: "slide-in", joinery.BottomApplied: "applied",
						joinery.BottomCleats: "cleats"}[fit]; p.Bottom.BottomFit != want {
						t.Errorf("%s: the bottom is %q", name, p.Bottom.BottomFit)
					}
					for _, c := range p.Corners {
						held := joint == joinery.DadoRabbet || c.End == "back" && back == joinery.Housed
						laps := joint == joinery.DoubleRabbet && !held || joint == joinery.RabbetedFront && c.End != "back"
						if c.Interlocked != held || c.Laps != laps {
							t.Errorf("%s: %+v", name, c)
						}
						if c.End == "back" && back == joinery.Housed {
							steady(t, name+": setback", c.Recess, 10)
							steady(t, name+": clearance", c.Clearance, map[string]float64{routed: 0.2, sawn: (0.1 + 0.4) / 2}[cutter])
						}
					}
				}
			}
		}
	}
}

// TestCornersLost: what holds a box no more, or is out of its limits, and what is
// none of that.
func TestCornersLost(t *testing.T) {
	moved := func(role string, axis int, by record.Length) func(*record.Report) {
		return func(r *record.Report) {
			for i := range r.Parts {
				if r.Parts[i].Role == role {
					r.Parts[i].Placements[0].Origin[axis] += by
				}
			}
		}
	}
	thin := func(stock string, mm float64) prove.Options {
		return prove.Options{Thickness: map[string]float64{stock: mm}}
	}
	for name, c := range map[string]struct {
		joint, back joinery.Joint
		fit         joinery.BottomFit
		edit        func(*record.Report)
		try         prove.Options
		verdict     string
		remark      string // a part of one; empty for none
	}{
		// 12.4 of dado about a back of 11.
		"a thin housed back": {joint: joinery.Butt, back: joinery.Housed, fit: joinery.BottomGroovedIn, try: thin("birch", 11), verdict: record.GoesNot,
			remark: "the back has 1.4 mm of clearance in the left side: more than glue fills"},
		"a back raised by 1": { // 0.03 over the thickest bottom, and 1
			joint: joinery.Rabbet, fit: joinery.BottomSlideIn, edit: moved("back", 2, 1), verdict: record.GoesNot, remark: "the back a gap stays open by 1.03 mm: more than glue bridges"},
		// 0.63, of which the bottom takes 0.2 when it is lifted in its grooves.
		"a back raised by 0.6": {joint: joinery.Rabbet, fit: joinery.BottomSlideIn, edit: moved("back", 2, 0.6), verdict: record.GoesBut, remark: "a gap stays open by 0.43 mm"},
		"a back lowered by 0.5": { // 0.03 of room, then it lifts the back
			joint: joinery.Rabbet, fit: joinery.BottomSlideIn, edit: moved("back", 2, -0.5), verdict: record.GoesBut, remark: "the bottom lifts the back by 0.47 mm"},
		"a back lowered by 2":   {joint: joinery.Rabbet, fit: joinery.BottomSlideIn, edit: moved("back", 2, -2), verdict: record.GoesNot},
		"a bottom behind":       {joint: joinery.Butt, fit: joinery.BottomApplied, edit: moved("bottom", 1, 14), verdict: record.GoesNot},
		"a front raised by 0.4": {joint: joinery.Butt, fit: joinery.BottomApplied, edit: moved("box-front", 2, 0.4), verdict: record.GoesBut, remark: "a gap stays open by 0.4 mm"},
		"boards 0.5 thin": { // of sides between which nothing is held
			joint: joinery.Butt, fit: joinery.BottomApplied, try: thin("birch", 11.7), verdict: record.GoesBut, remark: "the width is 459 mm"},
	} {
		t.Run(name, func(t *testing.T) {
			f := cornered(t, routed, c.joint, c.back, c.fit)
			if c.edit != nil {
				f.edit(t, c.edit)
			}
			p := f.proof(t, c.try)
			if said := strings.Join(p.Remarks, "\n"); p.Verdict != c.verdict || len(p.Faults) != 0 || !strings.Contains(said, c.remark) {
				t.Errorf("%s, %q, %v, want %s, %q: %+v", p.Verdict, p.Remarks, p.Faults, c.verdict, c.remark, p.Bottom)
			}
		})
	}
}

// TestFingers: fingers hold a box, with the play that they are cut with.
func TestFingers(t *testing.T) {
	p := cornered(t, routed, joinery.BoxJoint, "", joinery.BottomGroovedIn).proof(t, prove.Options{})
	for _, c := range p.Corners {
		if !c.Fits || !c.Fingers || !c.Laps {
			t.Errorf("%+v", c)
		}
		steady(t, c.End+" in "+c.Side+": clearance", c.Clearance, 0.2)
		steady(t, c.End+" in "+c.Side+": lap", c.Lap, 0)
	}
	if len(p.Corners) != 4 || len(p.Overlaps) != 0 || len(p.Remarks) != 0 {
		t.Errorf("%v, %v", p.Overlaps, p.Remarks)
	}
}
