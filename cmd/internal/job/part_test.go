package job

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"drawerwright/geom/joinery"
	"drawerwright/geom/wood"
)

const partsFile = `units: mm
stock:
  oak: {thickness: [15.1, 15.0], material: white oak, cut: quartersawn}
  beech: {thickness: 16, material: beech, density: 700, stiffness: 2 GPa, stiffness-across: 100000 psi}
  ply: {thickness: 12, material: birch-plywood, tolerance: en315-sanded, edge-banding: {thickness: 0.8, price: 0.45}}
  board: {thickness: 6, density: 50 lb/ft3, stiffness: 3000, edge-banding: {thickness: 1}}
climate: {now: 45 %, driest: 30 %, dampest: 65%, temperature: 68 F}
cutter: {kind: router, diameter: 6}
joinery: {bottom-height: 12}
drawers:
  - name: fingers
    outside: 400 x 120 x 500
    spares: 2
    load: 20 kg
    sides: oak
    bottom: board
    joint: box-joint
    finger-width: 15
    joinery: {bottom-fit: applied}
    dividers:
      - {direction: across, at: [100, 220.5], height: 60, stock: board, loose: yes}
      - {direction: along, at: 3, stock: board, folders: 90 x 60 x 12.5}
    pull: {shape: hand-hold, width: 90, height: 30, from-top: 35}
    drawer-front: {stock: beech, width: 440, height: 150, overhang-left: 20, overhang-below: -3, handles: handle, handle-spacing: 128, handle-diameter: 5.5, handle-from-top: 60}
  - name: screwed
    outside: 400 x 120 x 500
    load: 44 lb
    sides: ply
    bottom: board
    joint: butt
    fasteners: dowels
    back-joint: dado
    back-setback: 20
    joinery: {bottom-fit: slide-in}
    pull: {shape: hole}
    drawer-front: {stock: ply, width: 440, height: 150, overhang-left: 20, overhang-below: 10, handles: knob}
  - {name: rabbeted, outside: 400 x 120 x 500, sides: ply, bottom: board, joint: rabbet, back-joint: dado, insert: {stock: board, columns: [75, free], rows: 3, contents-clearance: 8}}
`

// TestReadFittings reads corners, dividers, an insert, pulls and fronts.
func TestReadFittings(t *testing.T) {
	j := read(t, partsFile)
	board := j.Stocks[3]
	fingers, screwed, rabbeted := j.Drawers[0], j.Drawers[1], j.Drawers[2]
	if d := fingers; d.Joint != joinery.BoxJoint || d.FingerWidth != 15 || d.BottomFit != joinery.BottomApplied || d.BottomHeight != 12 || d.Spares != 2 || d.Load != 20 || d.BackJoint != "" || d.BackSetback != 0 {
		t.Errorf("got %+v", d)
	}
	if want := []joinery.Divider{
		{Stock: board, Direction: joinery.Across, At: []float64{100, 220.5}, Height: 60, Loose: true},
		{Stock: board, Direction: joinery.Along, Count: 3, Folders: joinery.Folders{Width: 90, Below: 60, Above: 12.5}},
	}; !reflect.DeepEqual(fingers.Dividers, want) {
		t.Errorf("got %+v", fingers.Dividers)
	}
	if want := (joinery.Pull{Shape: joinery.PullHandHold, Width: 90, Height: 30, FromTop: 35}); fingers.Pull != want {
		t.Errorf("got %+v", fingers.Pull)
	}
	if want := (joinery.DrawerFront{
		Stock: j.Stocks[1], Width: 440, Height: 150, OverhangLeft: 20, OverhangBelow: -3, Handles: 2, HandleSpacing: 128, HandleDiameter: 5.5, HandleFromTop: 60,
	}); !reflect.DeepEqual(*fingers.DrawerFront, want) {
		t.Errorf("got %+v", *fingers.DrawerFront)
	}
	if want := (joinery.Insert{Stock: board, Columns: []float64{75, 0}, Rows: make([]float64, 3), ContentsClearance: 8, WallClearance: 2}); !reflect.DeepEqual(*rabbeted.Insert, want) {
		t.Errorf("got %+v", *rabbeted.Insert)
	}
	if d := screwed; d.Joint != joinery.Butt || d.Fasteners != joinery.Dowels || d.BackJoint != joinery.Housed || d.BackSetback != 20 || d.BottomFit != joinery.BottomSlideIn || d.Pull != (joinery.Pull{Shape: joinery.PullHole}) {
		t.Errorf("got %+v", d)
	}
	// 44 lb = 19.95806428 kg.
	if f := screwed.DrawerFront; f.Handles != 1 || f.HandleDiameter != 0 || math.Abs(screwed.Load-19.95806428) > 1e-9 {
		t.Errorf("got %+v", f)
	}
	if d := rabbeted; d.Joint != joinery.Rabbet || d.BackSetback != joinery.UsualBackSetback(0) || d.DrawerFront != nil || d.Load != 0 {
		t.Errorf("got %+v", d)
	}
}

// TestReadMaterials: what the material gives, and what the file says instead.
func TestReadMaterials(t *testing.T) {
	j := read(t, partsFile)
	close := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9*(1+want) {
			t.Errorf("%s is %.12g, want %.12g", what, got, want)
		}
	}
	emc := func(rh float64) float64 {
		m, err := wood.EMC(20, rh)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	oak, beech, ply, board := j.Stocks[0], j.Stocks[1], j.Stocks[2], j.Stocks[3]
	if !oak.Solid || !beech.Solid || ply.Solid || board.Solid {
		t.Errorf("solid: %v %v %v %v", oak.Solid, beech.Solid, ply.Solid, board.Solid)
	}
	close("density of oak", oak.Density, 0.68*1120) // 12 % moisture on 680 kg of dry wood a cubic meter
	close("stiffness of oak", oak.Stiffness, 12270)
	close("stiffness of oak across", oak.StiffnessAcross, 613.5) // a twentieth
	close("swelling of oak", oak.Swelling, 0.00180*(emc(0.65)-emc(0.45)))
	close("shrinkage of oak", oak.Shrinkage, 0.00180*(emc(0.45)-emc(0.30)))
	close("swelling of beech", beech.Swelling, 0.00431*(emc(0.65)-emc(0.45))) // flatsawn
	close("density of beech", beech.Density, 700)
	close("stiffness of beech", beech.Stiffness, 2000)
	close("stiffness of beech across", beech.StiffnessAcross, 689.475729)
	close("stiffness of plywood", ply.Stiffness, 10719)
	close("stiffness of plywood across", ply.StiffnessAcross, 6781)
	close("thinnest plywood", ply.Thickness.Min, 12-0.4-0.36) // 3 % of 12 mm
	close("thickest plywood", ply.Thickness.Max, 12+0.2+0.36)
	close("mean plywood", ply.Thickness.Mean, 12)
	close("density of board", board.Density, 800.9231687)
	if board.Stiffness != 3000 || board.StiffnessAcross != 3000 || board.Swelling != 0 {
		t.Errorf("got %+v", board)
	}
	if want := []Banding{{"ply", 0.8, 0.45}, {"board", 1, 0}}; !reflect.DeepEqual(j.Bandings, want) {
		t.Errorf("got %+v", j.Bandings)
	}
}

// TestReadPartlyMeant: an entry that was probably meant is not reported missing.
func TestReadPartlyMeant(t *testing.T) {
	_, problems := Read("job.yaml", strings.NewReader(strings.Replace(base, "outside: 460", "outsize: 460", 1)))
	if got := places(problems); !reflect.DeepEqual(got, []string{"11:5 unknown-key"}) {
		t.Errorf("got %q", got)
	}
}
