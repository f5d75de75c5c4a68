package job

import (
	"slices"
	"strings"
)

var mistakes = slices.Concat(plainMistakes, partMistakes, openingMistakes)

// partMistakes are about corners, fittings and materials.
var partMistakes = []mistake{
	// Corners.
	{"fasteners of tongues", "count: 6", "fasteners: screws", []string{"10:16 no-effect"}},
	{"setback of a tongued back", "count: 6", "back-setback: 12", []string{"10:19 no-effect"}},
	{"fingers of a butt joint", "count: 6", "joint: butt\n    finger-width: 12", []string{"11:19 no-effect"}},
	{"fasteners of an unknown joint", "count: 6", "joint: glued\n    fasteners: nails", []string{"10:12 unknown-word", "11:16 unknown-word"}},
	{"back with fingers", "count: 6", "back-joint: box-joint", []string{"10:17 unknown-word"}},
	{"groove too high", "cutter-height: 6", "bottom-height: 0", []string{"7:18 out-of-range"}},

	// Dividers.
	{"no dividers", "count: 6", "dividers: []", []string{"10:15 too-many"}},
	{"one divider without a dash", "count: 6", "dividers: {direction: across}", []string{"10:15 wrong-kind"}},
	{"divider of nothing", "count: 6", "dividers: [{}]", []string{"10:16 missing-key", "10:16 missing-key", "10:16 missing-key"}},
	{"divider of another stock", "count: 6", "dividers: [{direction: across, at: 3, stock: oak}]", []string{"10:50 unknown-stock"}},
	{"divider askew", "count: 6", "dividers: [{direction: athwart, at: 0, stock: birch, loose: maybe}]", []string{"10:28 unknown-word", "10:41 out-of-range", "10:65 unknown-word"}},
	{"divider at a word", "count: 6", "dividers: [{direction: along, at: [100, half], stock: birch}]", []string{"10:45 not-a-length"}},
	{"divider at a length", "count: 6", "dividers: [{direction: along, at: 100 mm, stock: birch}]", []string{"10:39 not-a-number"}},
	{"divider at nothing", "count: 6", "dividers: [{direction: along, at: [], stock: birch}]", []string{"10:39 too-many"}},
	{"folders of two sizes", "count: 6", "dividers: [{direction: along, at: 1, stock: birch, folders: 330 x 4}]", []string{"10:65 not-a-size"}},
	{"folders of nothing", "count: 6", "dividers: [{direction: along, at: 1, stock: birch, folders: 330 x 240 x 4}]", []string{"10:77 out-of-range"}},
	{"many dividers", "count: 6", "dividers: [" + strings.Repeat("{direction: along, at: 3, stock: birch}, ", maxDividers) + "{}]", []string{"10:2066 too-many"}},

	// Inserts.
	{"insert of nothing", "count: 6", "insert: {}", []string{"10:13 missing-key", "10:13 missing-key", "10:13 missing-key"}},
	{"insert of another stock", "count: 6", "insert: {stock: oak, columns: 2, rows: 2}", []string{"10:21 unknown-stock"}},
	{"insert of words", "count: 6", "insert: {stock: birch, columns: [80, rest], rows: 0}", []string{"10:42 not-a-length", "10:55 out-of-range"}},
	{"insert of many cells", "count: 6", "insert: {stock: birch, columns: 21, rows: [], wall-clearance: 2 m}", []string{"10:37 out-of-range", "10:47 too-many", "10:67 out-of-range"}},
	{"insert and dividers", "count: 6", "dividers: [{direction: along, at: 2, stock: birch}]\n    insert: {stock: birch, columns: 2, rows: 2}", []string{"11:13 no-effect"}},

	// Pulls and fronts.
	{"pull of no shape", "count: 6", "pull: {width: 30}", []string{"10:11 missing-key"}},
	{"height of a hole", "count: 6", "pull: {shape: hole, height: 30}", []string{"10:33 no-effect"}},
	{"slot below the edge", "count: 6", "pull: {shape: slot, width: 90, from-top: 30}", []string{"10:46 no-effect"}},
	{"front without size", "count: 6", "drawer-front: {stock: birch, width: 460}", []string{"10:19 missing-key"}},
	{"front of another stock", "count: 6", "drawer-front: {stock: oak, width: 460, height: 160, overhang-left: 0, overhang-below: -3}", []string{"10:27 unknown-stock"}},
	{"one hole of a pair", "count: 6", "drawer-front: {stock: birch, width: 460, height: 160, overhang-left: 0, overhang-below: 10, handles: handle}", []string{"10:19 missing-key"}},
	{"two holes of one", "count: 6", "drawer-front: {stock: birch, width: 460, height: 160, overhang-left: 0, overhang-below: 10, handles: knob, handle-spacing: 96}", []string{"10:128 no-effect"}},
	{"holes of none", "count: 6", "drawer-front: {stock: birch, width: 460, height: 160, overhang-left: 0, overhang-below: 10, handle-from-top: 40}", []string{"10:114 no-effect"}},

	// Loads and spares.
	{"load without unit", "count: 6", "load: 20", []string{"10:11 unknown-unit"}},
	{"load of stones", "count: 6", "load: 3 st", []string{"10:11 unknown-unit"}},
	{"load of a word", "count: 6", "load: much", []string{"10:11 not-a-number"}},
	{"load of a lorry", "count: 6", "load: 2300 lb", []string{"10:11 out-of-range"}},
	{"half a spare", "count: 6", "spares: 0.5", []string{"10:13 not-a-number"}},

	// Materials.
	{"unknown material", "5.9}", "5.9, material: pine board}", []string{"4:41 unknown-word"}},
	{"cut of a sheet", "5.9}", "5.9, material: plywood, cut: quartersawn}", []string{"4:55 no-effect"}},
	{"cut of anything", "5.9}", "5.9, cut: flatsawn}", []string{"4:36 no-effect"}},
	{"density of lead", "5.9}", "5.9, density: 11340}", []string{"4:40 out-of-range"}},
	{"stiffness in bars", "5.9}", "5.9, stiffness: 9000 bar}", []string{"4:42 unknown-unit"}},
	{"tolerance of many readings", "12.24]", "12.24], tolerance: en315-sanded", []string{"3:56 no-effect"}},
	{"tolerance of a foil", "5.9}", "1.2, tolerance: en315-sanded}", []string{"4:42 out-of-range"}},
	{"boards and sheets", "5.9}", "5.9, sheet: 900 x 900, grain: length, boards: {width: 180}}", []string{"4:72 no-effect"}},
	{"boards across the grain", "5.9}", "5.9, grain: none, boards: {width: 180}}", []string{"4:52 no-effect"}},
	{"boards of plywood", "5.9}", "5.9, material: mdf, grain: length, boards: {width: 180}}", []string{"4:69 no-effect"}},
	{"boards too thin", "5.9}", "5.9, grain: length, boards: {width: 180, rough: 7.8}}", []string{"4:74 rough-thin"}},
	{"boards of no width", "5.9}", "5.9, grain: length, boards: {waste: 300 %}}", []string{"4:54 missing-key", "4:62 out-of-range"}},
	{"banding of nothing", "5.9}", "5.9, edge-banding: {price: 1}}", []string{"4:45 missing-key"}},
	{"climate without a material", "units: mm", "units: mm\nclimate: {now: 45 %, driest: 30 %, dampest: 65 %}", []string{"2:10 no-effect"}},
	{"climate of a half", "units: mm", "units: mm\nclimate: {now: 45 %}", []string{"2:10 missing-key", "2:10 missing-key", "2:10 no-effect"}},
	{"climate upside down", "units: mm\nstock:\n", "units: mm\nclimate: {now: 45 %, driest: 65 %, dampest: 30 %}\nstock:\n  oak: {thickness: 20, material: white oak}\n", []string{"2:45 out-of-range"}},
	{"climate without units", "units: mm\nstock:\n", "units: mm\nclimate: {now: 45, driest: 2 %, dampest: 65 %, temperature: 20}\nstock:\n  oak: {thickness: 20, material: white oak}\n",
		[]string{"2:16 unknown-unit", "2:28 out-of-range", "2:61 unknown-unit"}},
}
