package job

import "strings"

// openingBase is a file without mistakes that the cases below change.
const openingBase = `units: mm
stock: {birch: {thickness: 12}, thin: {thickness: 6}}
cutter: {kind: saw, width: 6}
openings:
  a: {width: 500, height: 600, depth: 550, cabinet: frameless, fronts: overlay}
  b: {width: 500, height: 600, depth: 550, cabinet: face-frame, fronts: inset, frame-overhang: 0}
slides:
  own: {kind: side-mount}
drawers:
  - name: one
    opening: a
    slide: own
    rows: 3
    sides: birch
    bottom: thin
    drawer-front: {stock: birch}
`

// changed is openingBase with a change, or another file where it changes nothing,
// so that the case fails.
func changed(from, to string) string {
	if !strings.Contains(openingBase, from) {
		return "no " + from
	}
	return strings.Replace(openingBase, from, to, 1)
}

var openingMistakes = []mistake{
	// Openings.
	{"no openings of a name", "", changed("opening: a", "opening: c"), []string{"11:14 unknown-name"}},
	{"no openings at all", "", strings.Replace(base, "outside: 460 x 140 x 500", "opening: a\n    slide: none", 1), []string{"11:14 missing-key"}},
	{"opening without words", "", changed(", cabinet: frameless, fronts: overlay", ""), []string{"5:6 missing-key", "5:6 missing-key"}},
	{"opening that gapes", "", changed("width: 500", "width: [500, 50]"), []string{"5:14 mixed-readings"}},
	{"opening with one diagonal", "", changed("depth: 550", "depth: 550, diagonals: 781"), []string{"5:55 not-a-size"}},
	{"opening of an unknown cabinet", "", changed("frameless", "frame"), []string{"5:53 unknown-word"}},
	{"same openings", "", changed("  b:", "  A:"), []string{"6:3 same-name"}},

	// Slides.
	{"slide of no kind", "", changed("{kind: side-mount}", "{clearance: 12}"), []string{"8:8 missing-key"}},
	{"slide of an unknown kind", "", changed("{kind: side-mount}", "{kind: sidemount}"), []string{"8:15 unknown-word"}},
	{"slide named like a kind", "", changed("own: {kind: side-mount}\n", "own: {kind: none}\n  undermount: {kind: undermount}\n"), []string{"9:15 same-name"}},
	{"hook of another kind", "", changed("{kind: side-mount}", "{kind: side-mount, hook-inset: 7, load: 30 kg}"), []string{"8:39 no-effect"}},
	{"clearance of another kind", "", changed("{kind: side-mount}", "{kind: undermount, clearance: 7}"), []string{"8:38 no-effect"}},
	{"slide too wide", "", changed("{kind: side-mount}", "{kind: side-mount, clearance: 1 m, load: 30}"), []string{"8:38 out-of-range", "8:49 unknown-unit"}},
	{"slide without lengths", "", changed("{kind: side-mount}", "{kind: side-mount, lengths: []}"), []string{"8:36 too-many"}},
	{"unknown slide", "", changed("slide: own", "slide: onw"), []string{"12:12 unknown-name"}},
	{"no slide", "", changed("    slide: own\n", ""), []string{"10:5 missing-key"}},
	{"slide misspelled", "", changed("    slide: own\n", "    slied: own\n"), []string{"12:5 unknown-key"}},

	// Other files.
	{"file from the root", "", changed("slides:\n", "slides-file: /etc/slides.yaml\nslides:\n"), []string{"7:14 file"}},
	{"file on a drive", "", changed("slides:\n", "slides-file: 'c:slides.yaml'\nslides:\n"), []string{"7:14 file"}},
	{"file with a backslash", "", changed("slides:\n", "slides-file: shop\\slides.yaml\nslides:\n"), []string{"7:14 file"}},
	{"file without a name", "", changed("slides:\n", "slides-file: ''\nslides:\n"), []string{"7:14 file"}},
	{"file that is not there", "", changed("slides:\n", "slides-file: none.yaml\nslides:\n"), []string{"7:14 file"}},
	{"file with mistakes", "", changed("slides:\n", "slides-file: bad.yaml\nslides:\n"),
		[]string{"bad.yaml:3:36 out-of-range", "bad.yaml:3:59 no-effect", "bad.yaml:4:13 unknown-word", "bad.yaml:5:9 same-name"}},
	{"mistakes in both files", "", strings.Replace(changed("slides:\n", "slides-file: empty.yaml\nslides:\n"), "rows: 3", "rows: 0", 1), []string{"14:11 out-of-range", "empty.yaml:1:1 empty"}},
	{"file of another job", "", changed("slides:\n", "slides-file: job.yml\nslides:\n"), []string{"job.yml:1:1 missing-key", "job.yml:2:1 unknown-key"}},
	{"torn file", "", changed("slides:\n", "slides-file: torn.yaml\nslides:\n"), []string{"torn.yaml:2:9 unclosed"}},
	{"slide in both files", "", changed("slides:\n", "slides-file: twin.yaml\nslides:\n"), []string{"7:14 same-name"}},

	// Drawers in openings.
	{"outside and opening", "", changed("opening: a", "opening: a\n    outside: 9 x 9 x 9"), []string{"12:14 no-effect"}},
	{"neither outside nor opening", "", changed("    opening: a\n    slide: own\n    rows: 3\n", ""), []string{"10:5 missing-key", "13:19 missing-key"}},
	{"rows of an outside size", "", changed("opening: a", "outside: 400 x 100 x 500"), []string{"12:12 no-effect", "13:11 no-effect", "16:19 missing-key"}},
	{"no rows", "", changed("rows: 3", "rows: []"), []string{"13:11 too-many"}},
	{"half a row", "", changed("rows: 3", "rows: [140, half]"), []string{"13:17 not-a-length"}},
	{"row of no height", "", changed("rows: 3", "rows: [0, free]"), []string{"13:12 out-of-range"}},
	{"rows too high", "", changed("rows: 3", "rows: [300, 320, free]"), []string{"13:11 rows"}},
	{"rows too low", "", changed("rows: 3", "rows: 12"), []string{"13:11 row"}},
	{"graduation of one", "", changed("rows: 3", "rows: [140, free]\n    graduation: {arithmetic: 40}"), []string{"14:17 no-effect"}},
	{"gap of one", "", changed("rows: 3", "front-gap: 3"), []string{"13:16 no-effect"}},
	{"two graduations", "", changed("rows: 3", "rows: 3\n    graduation: {arithmetic: 40, geometric: 1.2}"), []string{"14:45 no-effect"}},
	{"no graduation", "", changed("rows: 3", "rows: 3\n    graduation: {}"), []string{"14:17 missing-key"}},
	{"graduation of a word", "", changed("rows: 3", "rows: 3\n    graduation: golden"), []string{"14:17 unknown-word"}},
	{"ratio with a unit", "", changed("rows: 3", "rows: 3\n    graduation: {geometric: 1.2 mm}"), []string{"14:29 unknown-unit"}},
	{"steep graduation", "", changed("rows: 3", "rows: 3\n    graduation: {arithmetic: 400}"), []string{"14:17 graduation"}},
	{"reveal of an overlay", "", changed("rows: 3", "rows: 3\n    reveal: 3"), []string{"14:13 no-effect"}},
	{"overlay of an inset", "", changed("opening: a", "opening: b\n    overlay: 3"), []string{"12:14 no-effect"}},
	{"overlay of two sides", "", changed("rows: 3", "rows: 3\n    overlay: [3, 3]"), []string{"14:14 not-a-size"}},
	{"inset without front", "", strings.Replace(changed("opening: a", "opening: b"), "    drawer-front: {stock: birch}\n", "", 1), []string{"10:5 missing-key"}},
	{"front of none", "", changed("fronts: overlay", "fronts: none"), []string{"16:19 no-effect"}},
	{"size of a planned front", "", changed("{stock: birch}", "{stock: birch, width: 400, overhang-below: 3}"), []string{"16:41 no-effect", "16:62 no-effect"}},
	{"no box that low", "", changed("rows: 3", "rows: 3\n    box-heights: [300]"), []string{"14:18 row"}},
	{"opening too shallow", "", changed("depth: 550", "depth: 200"), []string{"12:12 depth"}},
	{"opening too narrow", "", changed("width: 500", "width: 90"), []string{"5:14 width"}},
	{"sides too thick", "", strings.NewReplacer("birch: {thickness: 12}", "birch: {thickness: 18}", "side-mount", "undermount").Replace(openingBase), []string{"14:12 side-thickness"}},
	{"front beyond all", "", strings.NewReplacer("height: 600", "height: 3999", "rows: 3", "overlay: 20").Replace(openingBase), []string{"11:14 out-of-range"}},
	{"name of a row taken", "", openingBase + "  - {name: one-2, outside: 9 x 9 x 9, sides: birch, bottom: thin}\n", []string{"17:12 same-name"}},
	{"name of a row too long", "", changed("name: one", "name: "+strings.Repeat("o", maxName-1)), []string{"10:11 bad-name"}},
}
