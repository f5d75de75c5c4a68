package outside

import (
	"math"
	"strings"
	"testing"
)

// extraJob is a job that has what the samples do not.
type extraJob struct {
	name, text string
	bits       []float64              // diameters of a router's bits, in mm, when it has several
	cuts       func(c shapedCut) bool // what the job is here for; nil when not given
}

const extraStock = `units: mm
stock:
  ply 18: {thickness: [18, 17.95, 18.05]}
  ply 12: {thickness: [12, 11.96, 12.04]}
  ply 6: {thickness: [6, 5.97, 6.03]}
`

var extraJobs = []extraJob{
	// The side's groove stops in the lips behind the dados, where the bottom's
	// square corners need relief.
	{name: "relief-bisector", cuts: withRelief, text: extraStock + `
cutter: {kind: router, diameter: 3}
joinery: {cutter-height: 9}
drawers:
  - {name: lips, outside: 400 x 120 x 450, sides: ply 18, box-front: ply 12, bottom: ply 6}
`},
	{name: "relief-side", cuts: withRelief, text: extraStock + `
cutter: {kind: router, diameter: 3}
router: {relief: t-bone}
joinery: {cutter-height: 9, groove-clearance: 0.45}
drawers:
  - {name: lips, outside: 400 x 120 x 450, sides: ply 18, box-front: ply 12, bottom: ply 6}
  - {name: tight, outside: 400 x 120 x 450, sides: ply 18, box-front: ply 12, bottom: ply 6, joinery: {cutter-height: 9, bottom-clearance: 1, groove-clearance: 0.2}}
`},
	// Dados and grooves of 6 + 0.2 mm are as wide as the bit.
	{name: "slots-widened", cuts: widened, text: extraStock + `
cutter: {kind: router, diameter: 6.2}
drawers:
  - {name: exact, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6}
`},
	{name: "slots-line", cuts: centerLine, text: extraStock + `
cutter: {kind: router, diameter: 6.2}
router: {exact-slots: centerline, overcut: 2}
drawers:
  - {name: exact, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6}
  - {name: nearly, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joinery: {dado-clearance: 0.22, groove-clearance: 0.21}}
`},
	{name: "bits", bits: []float64{12.7, 6, 3}, text: extraStock + `
cutter:
  kind: router
  bits: {wide: {diameter: 12.7, reach: 25, flutes: 2}, six: {diameter: 6, reach: 25}, three: {diameter: 3, reach: 8}}
router: {depth-from: spoilboard, overcut: 0.5}
drawers:
  - {name: thin, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6}
  - {name: thick, outside: 400 x 200 x 450, sides: ply 18, bottom: ply 18, joinery: {bottom-fit: flush}}
`},
	{name: "tabs", cuts: outsidePanel, text: extraStock + `
cutter: {kind: router, diameter: 6}
router: {tabs: {width: 8, height: 2, spacing: 150}}
drawers:
  - {name: held, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6}
`},
	{name: "skin", text: `units: in
stock:
  half: {thickness: [0.472, 0.470, 0.474]}
  quarter: {thickness: 0.236}
cutter: {kind: router, diameter: 1/8}
router: {onion-skin: 0.02, small-part: 9, register: {place: centerline, distance: 1.2}}
drawers:
  - {name: wide, outside: 16 x 4 x 14, sides: half, bottom: quarter}
  - {name: small, outside: 8 x 4 x 9, sides: half, bottom: quarter}
`},
	{name: "double-rabbet", text: extraStock + `
cutter: {kind: router, diameter: 6}
drawers:
  - {name: even, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: double-rabbet}
  - {name: mixed, outside: 400 x 120 x 450, sides: ply 18, box-front: ply 12, bottom: ply 6, joint: double-rabbet}
  - {name: flush, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 12, joint: double-rabbet, joinery: {bottom-fit: flush}}
`},
	{name: "saw", text: extraStock + `
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: flush, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 12, joinery: {bottom-fit: flush}}
  - {name: mixed, outside: 400 x 120 x 450, sides: ply 18, box-front: ply 12, bottom: ply 6}
`},
	{name: "corners", text: extraStock + `
cutter: {kind: router, bits: {six: {diameter: 6, reach: 25}, three: {diameter: 3, reach: 25}}}
router: {tabs: {width: 8, height: 2, spacing: 150}}
drawers:
  - {name: rabbet, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: rabbet, pull: {shape: half-round}}
  - {name: rabbet slid, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: rabbet, joinery: {bottom-fit: slide-in}}
  - {name: fielded, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 12, joinery: {bottom-fit: fielded, bottom-height: 10}}
  - {name: butt, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: butt, joinery: {bottom-height: 13}, pull: {shape: slot}}
  - {name: butt below, outside: 400 x 120 x 450, sides: ply 18, box-front: ply 12, bottom: ply 6, joint: butt, fasteners: dowels, joinery: {bottom-fit: applied}, pull: {shape: hand-hold}}
  - {name: tenoned, outside: 400 x 120 x 450, sides: ply 18, box-front: ply 12, bottom: ply 6, joint: butt, fasteners: tenons}
  - {name: box, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: box-joint, pull: {shape: hole}}
  - {name: box mixed, outside: 400 x 120 x 450, sides: ply 18, box-front: ply 12, bottom: ply 6, joint: box-joint, joinery: {bottom-fit: applied}}
  - {name: box housed, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: box-joint, back-joint: dado, back-setback: 12, joinery: {bottom-fit: slide-in}}
  - {name: housed, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, back-joint: dado, back-setback: 15}
  - {name: lapped slid, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: double-rabbet, joinery: {bottom-fit: slide-in}}
  - {name: raised, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joinery: {bottom-height: 20}}
  - {name: fronted, outside: 400 x 120 x 450, sides: ply 12, box-front: ply 18, bottom: ply 6, joint: rabbeted-front}
  - {name: fronted housed, outside: 400 x 120 x 450, sides: ply 12, box-front: ply 18, bottom: ply 6, joint: rabbeted-front,
     back-joint: dado, joinery: {cutter-height: 9, bottom-fit: slide-in}}
  - {name: lipped, outside: 400 x 120 x 450, sides: ply 12, box-front: ply 18, bottom: ply 6, joint: rabbeted-front,
     lip: [10, 14, 9, 7], pull: {shape: hole}}
  - {name: on cleats, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: box-joint, joinery: {bottom-fit: cleats}}
`},
	{name: "fittings", text: extraStock + `
cutter: {kind: router, bits: {six: {diameter: 6, reach: 25}, three: {diameter: 3, reach: 25}}}
router: {relief: t-bone}
drawers:
  - {name: grid, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, dividers: [{direction: across, at: 2, stock: ply 6}, {direction: along, at: 1, stock: ply 6}]}
  - {name: loose, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: rabbet, dividers: [{direction: along, at: [100], stock: ply 6, loose: yes}]}
  - {name: inserted, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, insert: {stock: ply 6, columns: [80, 80, free], rows: [free, 200]}}
  - {name: fronted, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, drawer-front: {stock: ply 18, width: 440, height: 150, overhang-left: 20, overhang-below: 15, handles: handle, handle-spacing: 96}}
`},
	{name: "corners-saw", text: extraStock + `
cutter: {kind: saw, width: 6.3}
drawers:
  - {name: rabbet, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: rabbet}
  - {name: butt, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: butt, joinery: {bottom-fit: slide-in}}
  - {name: fielded, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 12, back-joint: dado, joinery: {bottom-fit: fielded, bottom-height: 10}}
  - {name: box, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: box-joint, joinery: {bottom-fit: applied}}
  - {name: box grooved, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: box-joint, cutter: {kind: saw, width: 6.3, groove-cutter: 3.2}, joinery: {groove-ends: plugged}}
  - {name: on cleats, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joinery: {bottom-fit: cleats}}
  - {name: housed, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, back-joint: dado, back-setback: 12, joinery: {bottom-fit: slide-in}}
  - {name: fronted, outside: 400 x 120 x 450, sides: ply 12, box-front: ply 18, bottom: ply 6, joint: rabbeted-front}
  - {name: lipped, outside: 400 x 120 x 450, sides: ply 12, box-front: ply 18, bottom: ply 6, joint: rabbeted-front,
     lip: [10, 10, 9, 0], dividers: [{direction: along, at: 1, stock: ply 6}]}
  - {name: divided, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, dividers: [{direction: across, at: 2, stock: ply 6}]}
  - {name: inserted, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, insert: {stock: ply 6, columns: 3, rows: 2, height: 60}}
`},
	{name: "double-rabbet-saw", text: extraStock + `
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: even, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joint: double-rabbet}
`},
	// A bottom is cut out from its underside, for its number is there; what reads a bit's
	// middle reads the sides' too.
	{name: "engraved", bits: []float64{6, 1}, cuts: func(c shapedCut) bool { return strings.HasPrefix(c.Layer, "ENGRAVE") }, text: extraStock + `
cutter: {kind: router, bits: {six: {diameter: 6, reach: 25}, point: {diameter: 1, reach: 4}}}
router: {engrave: {bit: point, depth: 0.4}}
drawers:
  - {name: raised, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6, joinery: {bottom-height: 20}}
  - {name: mixed, outside: 400 x 120 x 450, sides: ply 18, box-front: ply 12, bottom: ply 6}
`},
	// The dividers' dados are cleared otherwise than the grooves.
	{name: "relief-each", cuts: withRelief, text: extraStock + `
cutter: {kind: router, diameter: 3}
router: {relief: {groove: t-bone, others: dogbone, rabbet: none}}
joinery: {cutter-height: 9, groove-clearance: 0.45}
drawers:
  - {name: lips, outside: 400 x 120 x 450, sides: ply 18, box-front: ply 12, bottom: ply 6, dividers: [{direction: across, at: 1, stock: ply 6}]}
`},
}

func withRelief(c shapedCut) bool   { return c.Arcs > 0 }
func centerLine(c shapedCut) bool   { return c.Corners == 2 && strings.Contains(c.Layer, "_LINE_") }
func outsidePanel(c shapedCut) bool { return c.Drawn == 0 && c.Swept > 0 }
func widened(c shapedCut) bool {
	w, h := c.box()
	return math.Abs(min(w, h)-c.Bit-slotRoom) < micrometer
}

// extras are the extra jobs, each in one of the versions and units in turn, several
// at a time.
func extras(t *testing.T, each func(t *testing.T, job extraJob, version, unit string)) {
	t.Helper()
	for i, j := range extraJobs {
		t.Run(j.name, func(t *testing.T) {
			t.Parallel()
			version, unit := []string{"R2000", "R12"}[i%2], []string{"mm", "in"}[i/2%2]
			j.text = drawnIn(j.text, version, unit)
			each(t, j, version, unit)
		})
	}
}
