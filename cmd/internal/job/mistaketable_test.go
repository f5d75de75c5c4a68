package job

import "strings"

// base is a file without mistakes that the cases below change.
const base = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525}
  hardboard: {thickness: 5.9}
cutter: {kind: saw, width: 6.35}
joinery:
  cutter-height: 6
drawers:
  - name: wide
    count: 6
    outside: 460 x 140 x 500
    sides: birch
    bottom: hardboard
  - name: narrow
    outside: [300, 140, 500]
    sides: birch
    bottom: hardboard
`

// mistake is a change of the base file with the problems that it must give,
// as "line:column code".
type mistake struct {
	name     string
	from, to string // from is empty when to is the whole file
	want     []string
}

func (m mistake) file() string {
	if m.from == "" {
		return m.to
	}
	return strings.Replace(base, m.from, m.to, 1)
}

var plainMistakes = []mistake{
	// Text.
	{"nothing", "", "", []string{"1:1 empty"}},
	{"comments", "", "# a job\n\n  # to come\n", []string{"1:1 empty"}},
	{"start of a document", "", "---\n", []string{"1:1 empty"}},
	{"Latin 1", "units: mm", "units: mm # \xe9", []string{"1:13 not-utf8"}},
	{"bell", "birch:", "é\a:", []string{"3:4 control"}},
	{"lone carriage return", "units: mm\n", "units: mm\r", []string{"1:10 control"}},
	{"byte order mark within", "birch:", "\ufeffbirch:", []string{"3:3 bad-name", "12:12 unknown-stock", "16:12 unknown-stock"}},
	{"tabs", "  birch", "\tbirch", []string{"3:1 tab"}},
	{"tab after spaces", "  cutter-height", " \tcutter-height", []string{"7:2 tab"}},
	{"no-break space", "  birch", " \u00a0birch", []string{"3:2 tab"}},
	// A tab hides nothing: the places of the others are those of the file.
	{"tabs and more", "  birch: {thickness: [12.21, 12.16, 12.24], sheet", "\tbirch: {thickness: [12.21, 12.16, 12.24x], shet", []string{"3:1 tab", "3:36 unknown-unit", "3:45 unknown-key"}},
	{"tabs as wide as four", "", strings.NewReplacer("    count: 6", "\tcuont: 6", "    sides", "\tsides").Replace(base), []string{"10:1 tab", "10:2 unknown-key"}},
	{"tabs as wide as eight", "", "units: mm\nstock:\n        ply: {thickness: 12}\n\tboard: {thickness: 6, shet: 8}\ncutter: {kind: saw, width: 6}\ndrawers:\n  - {name: a, outside: 400 x 100 x 500, sides: ply, bottom: board}\n", []string{"4:1 tab", "4:24 unknown-key"}},
	{"tabs alone", "", strings.NewReplacer("    ", "\t\t", "  ", "\t", "bottom: hardboard\n  - name", "bottom: hardbord\n\t- name").Replace(base), []string{"3:1 tab", "13:11 unknown-stock"}},
	{"tabs and special spaces", "", strings.Replace(strings.Replace(base, "  birch", "\tbirch", 1), "    count: 6", "   \u00a0count: 0", 1), []string{"3:1 tab", "10:4 tab", "10:12 out-of-range"}},

	// YAML.
	{"no entries", "", "a drawer, please\n", []string{"1:1 wrong-kind"}},
	{"list", "", "- units: mm\n", []string{"1:1 wrong-kind"}},
	{"no colon", "units: mm", "units mm", []string{"1:1 layout"}},
	{"no colon in the first line of a drawer", "name: wide", "name wide", []string{"9:5 layout"}},
	{"no space after the colon", "count: 6", "count:6", []string{"10:5 layout"}},
	{"no space after the colon at the end", "[300, 140, 500]", "300 x 140 x 500\n    count:6", []string{"16:5 layout"}},
	{"second colon", "sides: birch", "sides: birch: 3", []string{"12:17 layout"}},
	{"line too far right", "    sides: birch", "      sides: birch", []string{"12:7 layout"}},
	{"line too far left", "    sides: birch", "   sides: birch", []string{"12:4 layout"}},
	{"line too far right after a mapping", "  cutter-height: 6\n", "  cutter-height: 6\n    glue-space: 0\n", []string{"8:5 layout"}},
	{"first line too far right", "units: mm", "  units: mm", []string{"2:1 layout"}},
	{"text over two lines", "sides: birch", "sides: birch\n      ply", []string{"13:7 layout"}},
	{"dashes below a value", "sides: birch", "sides: birch\n      - ply\n      - oak", []string{"13:7 layout", "14:7 layout"}},
	{"dash below the last value", "    bottom: hardboard\n  - name: narrow\n    outside: [300, 140, 500]\n    sides: birch\n    bottom: hardboard\n",
		"    bottom: hardboard\n      -\n", []string{"14:7 layout"}},
	{"quotes over two lines", "sides: birch", "sides: \"birch\n      ply\"", []string{"12:12 layout"}},
	{"text after quotes", "sides: birch", `sides: "birch" ply`, []string{"12:20 layout"}},
	{"list on the line of its key", "[300, 140, 500]", "- 300", []string{"15:14 layout"}},
	{"entry between list entries", "  - name: narrow", "  box-front: birch\n  - name: narrow", []string{"14:3 layout"}},
	{"list between keys", "    count: 6", "    - 6", []string{"10:5 layout"}},
	{"quote not closed", "sides: birch", `sides: "birch`, []string{"12:12 unclosed"}},
	{"inches in quotes", "outside: 460", `outside: "18"" x 5`, []string{"11:18 unclosed"}},
	{"unknown escape", "name: wide", `name: "\wide"`, []string{"9:13 unclosed"}},
	{"square bracket not closed", "12.24]", "12.24", []string{"3:22 unclosed", "3:49 layout"}},
	{"curly bracket not closed", "6.35}", "6.35", []string{"5:9 unclosed"}},
	{"mistakes below a bracket not closed", "", strings.NewReplacer("6.35}\n", "6.35\n\n# a remark\n", "height: 6", "height: 0", "count: 6", "count: &a six").Replace(base),
		[]string{"5:9 unclosed", "9:18 out-of-range", "12:12 unsupported", "12:15 not-a-number"}},
	{"bracket not closed at the end", "[300, 140, 500]\n    sides: birch\n    bottom: hardboard\n", "[300, 140", []string{"15:14 unclosed"}},
	{"bracket not opened", "[300, 140, 500]", "300]", []string{"15:14 not-a-size"}},
	{"wrong bracket", "500]", "500}", []string{"15:14 unclosed"}},
	{"comma missing", "12.24], sheet", "12.24] sheet", []string{"3:44 layout"}},
	{"comma missing at the end of a line", "12.24], sheet: 1525 x 1525}", "12.24],\n    grain: none\n    sheet: 1525 x 1525}", []string{"5:5 layout"}},
	{"value missing in a list", "[300, 140, 500]", "[300, , 140, 500]", []string{"15:20 layout"}},
	{"colon on the next line", "kind: saw", "kind\n    : saw", []string{"6:5 layout"}},
	{"reserved sign", "name: wide", "name: @wide", []string{"9:11 layout"}},
	{"anchor", "{thickness: 5.9}", "&thin {thickness: 5.9}", []string{"4:14 unsupported"}},
	{"alias", "sides: birch", "sides: *b", []string{"12:12 unsupported"}},
	{"tag", "count: 6", "count: !!int 6", []string{"10:12 unsupported"}},
	{"merge key", "cutter-height: 6", "<<: {cutter-height: 6}", []string{"7:3 unsupported"}},
	{"block text", "name: wide", "name: |\n      wide", []string{"9:11 unsupported"}},
	{"folded text", "name: wide", "name: >-\n      wide", []string{"9:11 unsupported"}},
	{"merge key in the place of an entry", "    bottom: hardboard\n  - name: narrow", "    <<: *a\n  - name: narrow", []string{"13:5 unsupported", "13:9 unsupported"}},
	{"many merge keys", "", strings.Repeat("<<: a\n", 30), []string{"1:1 unsupported"}},
	{"explicit key", "units: mm", "? units\n: mm", []string{"1:1 unsupported"}},
	{"directive", "units: mm", "%YAML 1.2\nunits: mm", []string{"1:1 unsupported"}},
	{"second document", "cutter: {kind: saw, width: 6.35}", "---\ncutter: 3", []string{"1:1 missing-key", "5:1 unsupported"}},
	{"entry on the line of ---", "", "--- " + base, []string{"1:1 unsupported"}},
	{"two beginnings", "", "---\n---\n" + base, []string{"2:1 unsupported"}},
	{"end of the document", "", base + "...\n", []string{"18:1 unsupported"}},
	{"too deep", "sides: birch", "sides: " + strings.Repeat("[", 40), []string{"12:42 too-large"}},
	{"too deep in dashes", "sides: birch", "sides:\n     " + strings.Repeat(" -", 40), []string{"13:7 wrong-kind", "13:67 too-large"}},

	// Keys.
	{"unknown key", "units: mm", "units: mm\nunit: mm", []string{"2:1 unknown-key"}},
	{"unknown key in brackets", "width: 6.35", "width: 6.35, depth: 3", []string{"5:34 unknown-key"}},
	{"no space after the colon in brackets", "{thickness: 5.9}", "{thickness:5.9}", nil}, // the scanner knows what is meant
	{"underscore", "cutter-height", "cutter_height", []string{"7:3 unknown-key"}},
	{"key that is a number", "cutter-height", "3", []string{"7:3 unknown-key"}},
	{"key twice", "units: mm", "units: mm\n\"units\": in", []string{"2:1 duplicate-key"}},
	{"key of a drawer twice", "count: 6", "count: 6\n    count: 7\n    count: 8", []string{"11:5 duplicate-key", "12:5 duplicate-key"}},
	{"stock twice", "hardboard:", "birch: {thickness: 3}\n  hardboard:", []string{"4:3 same-name"}},
	{"no units", "units: mm", "job: a", []string{"1:1 missing-key"}},
	{"no stock", "", "units: mm\ncutter: {kind: saw, width: 6}\ndrawers:\n  - {name: a, outside: 1x1x1, sides: b, bottom: b}\n", []string{"1:1 missing-key"}},
	{"no drawers", "", "units: mm\nstock: {a: {thickness: 12}}\n", []string{"1:1 missing-key"}},
	{"no thickness", "{thickness: 5.9}", "{sheet: 1 x 1}", []string{"4:14 missing-key"}},
	{"empty mapping", "{thickness: 5.9}", "{}", []string{"4:14 missing-key"}},
	{"no bottom", "    bottom: hardboard\n  - name", "  - name", []string{"9:5 missing-key"}},
	{"no name", "  - name: wide\n    count", "  - count", []string{"9:5 missing-key"}},
	{"no cutter", "cutter: {kind: saw, width: 6.35}\n", "", []string{"8:5 missing-key"}},
	{"no cutter for the second", "cutter: {kind: saw, width: 6.35}\njoinery:\n  cutter-height: 6\ndrawers:\n  - name: wide\n",
		"drawers:\n  - name: wide\n    cutter: {kind: saw, width: 6.35}\n", []string{"12:5 missing-key"}},
	{"no kind of cutter", "kind: saw, ", "", []string{"5:9 missing-key"}},

	// Kinds.
	{"no colon after the name of a stock", "hardboard: {thickness: 5.9}", "hardboard\n    thickness: 5.9\n    sheet: 1", []string{"4:3 layout"}},
	{"no value", "count: 6", "count:", []string{"10:5 no-value"}},
	{"no value at the end", "    bottom: hardboard\n  - name: narrow", "    bottom:\n  - name: narrow", []string{"13:5 no-value"}},
	{"no value in brackets", "{thickness: 5.9}", "{thickness: , sheet: 1 x 1}", []string{"4:15 no-value"}},
	{"no entry after a dash", "  - name: narrow", "  -\n  - name: narrow", []string{"14:3 no-value"}},
	{"list of drawers without dashes", "", "units: mm\nstock: {a: {thickness: 12}}\ndrawers:\n  name: a\n", []string{"4:3 wrong-kind"}},
	{"list for a mapping", "{thickness: 5.9}", "[5.9]", []string{"4:14 wrong-kind"}},
	{"number for a mapping", "{thickness: 5.9}", "5.9", []string{"4:14 wrong-kind"}},
	{"mapping for a name", "sides: birch", "sides: {birch: 3}", []string{"12:12 wrong-kind"}},
	{"list for a name", "sides: birch", "sides: [birch]", []string{"12:12 wrong-kind"}},
	{"mapping for a list", "[12.21, 12.16, 12.24]", "{a: 12.21}", []string{"3:22 wrong-kind"}},
	{"list in a list", "[12.21, 12.16, 12.24]", "[[12.21], 12.16]", []string{"3:23 wrong-kind"}},
	{"mapping for a size", "[300, 140, 500]", "{width: 300}", []string{"15:14 wrong-kind"}},
	{"drawer without keys", "  - name: narrow\n    outside: [300, 140, 500]\n    sides: birch\n    bottom: hardboard\n", "  - narrow\n", []string{"14:5 wrong-kind"}},
	{"empty list", "", "units: mm\nstock: {a: {thickness: 12}}\ndrawers: []\n", []string{"3:10 too-many"}},
	{"empty stock", "", "units: mm\nstock: {}\ncutter: {kind: saw, width: 6}\ndrawers: [{name: a, outside: 9x9x9, sides: a, bottom: a}]\n", []string{"2:8 too-many"}},

	// Lengths.
	{"unknown unit", "5.9}", "12 furlongs}", []string{"4:26 unknown-unit"}},
	{"hexadecimal", "5.9}", "0x2}", []string{"4:26 unknown-unit"}},
	{"underscores", "5.9}", "1_0}", []string{"4:26 unknown-unit"}},
	{"exponent", "5.9}", "1e308}", []string{"4:26 not-a-length"}},
	{"not a number", "5.9}", ".nan}", []string{"4:26 not-a-length"}},
	{"infinity", "5.9}", "-.inf}", []string{"4:26 not-a-length"}},
	{"word", "5.9}", "yes}", []string{"4:26 not-a-length"}},
	{"decimal comma", "cutter-height: 6", "cutter-height: 6,5", []string{"7:18 not-a-length"}},
	{"empty length", "5.9}", `""}`, []string{"4:26 not-a-length"}},
	{"zero", "5.9}", "0}", []string{"4:26 out-of-range"}},
	{"negative", "6.35}", "-6.35}", []string{"5:28 out-of-range"}},
	{"too thin", "5.9}", "0.47}", []string{"4:26 out-of-range"}},
	{"too thick", "5.9}", "100.01}", []string{"4:26 out-of-range"}},
	{"a reading too thick", "12.16", "121.6", []string{"3:30 out-of-range"}},
	{"too wide a cutter", "6.35}", "3 in}", []string{"5:28 out-of-range"}},
	{"beyond all", "5.9}", "99999999999}", []string{"4:26 out-of-range"}},
	{"bad length and bad units", "units: mm\nstock:\n", "units: cm\nstock:\n  a: {thickness: 1 z}\n  b: {thickness: 999}\n  c: {thickness: 999 in}\n",
		[]string{"1:8 unknown-word", "3:18 unknown-unit", "5:18 out-of-range"}},
	{"negative clearance", "cutter-height: 6", "glue-space: -0.1", []string{"7:15 out-of-range"}},
	{"far readings", "12.16", "14.5", []string{"3:22 mixed-readings"}},
	{"fifty-one readings", "5.9}", "[" + strings.Repeat("5,", 50) + "5]}", []string{"4:26 too-many"}},
	{"no readings", "5.9}", "[]}", []string{"4:26 too-many"}},

	// Sizes.
	{"two numbers", "460 x 140 x 500", "460 x 140", []string{"11:14 not-a-size"}},
	{"four numbers in a list", "[300, 140, 500]", "[300, 140, 500, 1, 2]", []string{"15:14 not-a-size"}},
	{"star", "460 x 140 x 500", "460 * 140 * 500", []string{"11:14 not-a-size"}},
	{"sign at the end", "460 x 140 x 500", "460 x 140 x", []string{"11:25 not-a-length"}},
	{"negative in the middle", "460 x 140 x 500", "460 ×  -140 × 500", []string{"11:21 out-of-range"}},
	{"zero in quotes", "460 x 140 x 500", `"460 x 140 x 0"`, []string{"11:27 out-of-range"}},
	{"wrong in escapes", "460 x 140 x 500", `"460 x 140 x \"5000"`, []string{"11:14 not-a-length"}},
	{"two mistakes", "[300, 140, 500]", "[0, 140, 4001]", []string{"15:15 out-of-range", "15:23 out-of-range"}},
	{"unit at the first", "460 x 140 x 500", "460 mm x 140 x 500", []string{"11:14 not-a-size"}},
	{"unit missing in a list", "[300, 140, 500]", "[300 mm, 140, 500 mm]", []string{"15:14 not-a-size"}},
	{"unknown unit at the end", "460 x 140 x 500", "460 x 140 x 5 ell", []string{"11:14 unknown-unit", "11:20 unknown-unit", "11:26 unknown-unit"}},
	{"a router's sheets for a saw", "sheet: 1525 x 1525", "sheet: 1525 x 1525, min-sheet: 1523 x 1523, keep-out: [{at: 0 x 0, size: 9 x 9}]", []string{"3:76 not-for-a-saw", "3:99 not-for-a-saw"}},
	{"turning over for a saw", "units: mm", "units: mm\nsheets: {flip-on: stops}", []string{"2:19 not-for-a-saw"}},
	{"shortest over the sheet", "sheet: 1525 x 1525}", "sheet: 1525 x 1525, min-sheet: 1525 x 1526}", []string{"3:76 out-of-range", "3:76 not-for-a-saw"}},
	{"shortest of another size", "sheet: 1525 x 1525}", "sheet: 1525 x 1525, min-sheet: 1425 x 1525}", []string{"3:76 out-of-range", "3:76 not-for-a-saw"}},
	{"keep-out without a sheet", "{thickness: 5.9}", "{thickness: 5.9, keep-out: [{at: 0 x 0, size: 9 x 9}]}", []string{"4:41 no-effect", "4:41 not-for-a-saw"}},
	{"keep-out without a size", "sheet: 1525 x 1525}", "sheet: 1525 x 1525, keep-out: [{at: 0 x 0}]}", []string{"3:75 not-for-a-saw", "3:76 missing-key"}},
	{"pins for stops", "units: mm", "units: mm\nsheets: {flip-on: stops, pin-distance: 9}", []string{"2:19 not-for-a-saw", "2:40 no-effect", "2:40 not-for-a-saw"}},
	{"sheet of one number", "1525 x 1525", "1525", []string{"3:52 not-a-size"}},
	{"endless size", "460 x 140 x 500", strings.Repeat("x", 300), []string{"11:14 not-a-size"}},

	// Numbers and words.
	{"half a drawer", "count: 6", "count: 6.5", []string{"10:12 not-a-number"}},
	{"no drawers of a kind", "count: 6", "count: 0", []string{"10:12 out-of-range"}},
	{"too many of a kind", "count: 6", "count: 10001", []string{"10:12 out-of-range"}},
	{"negative count", "count: 6", "count: -6", []string{"10:12 out-of-range"}},
	{"price with a currency", "{thickness: 5.9}", "{thickness: 5.9, price: 58 EUR}", []string{"4:38 not-a-number"}},
	{"units", "units: mm", "units: millimeters", []string{"1:8 unknown-word"}},
	{"capital", "kind: saw", "kind: Saw", []string{"5:16 unknown-word"}},
	{"joint", "count: 6", "joint: tenon", []string{"10:12 unknown-word"}},
	{"version", "units: mm", "units: mm\ndxf: {version: R13}", []string{"2:16 unknown-word"}},

	// Names.
	{"unknown stock", "sides: birch", "sides: brich", []string{"12:12 unknown-stock"}},
	{"unknown stocks", "sides: birch\n    bottom: hardboard\n  -", "sides: Birch\n    box-front: a\n    back: b\n    bottom: c\n  -",
		[]string{"12:12 unknown-stock", "13:16 unknown-stock", "14:11 unknown-stock", "15:13 unknown-stock"}},
	{"stock of a broken list", "hardboard:", "hardboard", []string{"4:3 layout"}},
	{"same name", "name: narrow", "name: wide", []string{"14:11 same-name"}},
	{"same files", "name: narrow", "name: Wide.", []string{"14:11 same-name"}},
	{"same files of stocks", "  hardboard:", "  Birch: {thickness: 3}\n  hardboard:", []string{"4:3 same-name"}},
	{"way out", "name: wide", "name: ../wide", []string{"9:11 bad-name"}},
	{"folder", "name: wide", "name: a/b", []string{"9:11 bad-name"}},
	{"backslash", "name: wide", `name: a\b`, []string{"9:11 bad-name"}},
	{"escape in quotes", "name: wide", `name: "a\u001b[31m"`, []string{"9:11 unsupported"}},
	{"escape that is none", "name: wide", `name: "a\xyz"`, []string{"9:11 unsupported"}},
	{"direction", "name: wide", "name: a\u202eb", []string{"9:11 bad-name"}},
	{"empty name", "name: wide", `name: ""`, []string{"9:11 no-value"}},
	{"long name", "name: wide", "name: " + strings.Repeat("é", 41), []string{"9:11 bad-name"}},
	{"invisible letter", "name: wide", "name: a\u3164", []string{"9:11 bad-name"}},
	{"long title", "units: mm", "units: mm\njob: " + strings.Repeat("é", 61), []string{"2:6 bad-name"}},
	{"unprintable title", "units: mm", "units: mm\njob: \"a\u00adb\"", []string{"2:6 bad-name"}},

	// Tools and routers.
	{"reach of a saw", "width: 6.35", "width: 6.35, reach: 20", []string{"5:41 cutter"}},
	{"saw without width", ", width: 6.35", "", []string{"5:9 missing-key"}},
	{"cutter for grooves of a router", "kind: saw, width: 6.35", "kind: router, diameter: 6, groove-cutter: 3.2", []string{"5:52 cutter"}},
	{"router without bit", "kind: saw, width: 6.35", "kind: router", []string{"5:9 missing-key"}},
	{"two ways to say a bit", "kind: saw, width: 6.35", "kind: router, width: 6, diameter: 6", []string{"5:44 cutter"}},
	{"reach beside bits", "kind: saw, width: 6.35", "kind: router, reach: 20, bits: {a: {diameter: 6}}", []string{"5:31 cutter"}},
	{"no bits", "kind: saw, width: 6.35", "kind: router, bits: {}", []string{"5:30 too-many"}},
	{"bit without diameter", "kind: saw, width: 6.35", "kind: router, bits: {a: {reach: 6}}", []string{"5:34 missing-key"}},
	{"tip of a straight bit", "kind: saw, width: 6.35", "kind: router, bits: {a: {diameter: 6, type: straight, tip: 5}}", []string{"5:69 cutter"}},
	{"feed and chip load", "kind: saw, width: 6.35", "kind: router, bits: {a: {diameter: 6, feed: 4 m/min, flutes: 2, speed: 18000, chip-load: 0.1}}", []string{"5:99 cutter"}},
	{"chip load without speed", "kind: saw, width: 6.35", "kind: router, bits: {a: {diameter: 6, flutes: 2, chip-load: 0.1}}", []string{"5:70 cutter"}},
	{"feed without a unit", "kind: saw, width: 6.35", "kind: router, bits: {a: {diameter: 6, feed: 4000}}", []string{"5:54 unknown-unit"}},
	{"same bits", "kind: saw, width: 6.35", "kind: router, bits: {a b: {diameter: 6}, a-b: {diameter: 3}}", []string{"5:51 same-name"}},
	{"router table without bit", "kind: saw, width: 6.35", "kind: router-table", []string{"5:9 missing-key"}},
	{"router table with bits", "kind: saw, width: 6.35", "kind: router-table, bits: {a: {diameter: 6}}", []string{"5:9 missing-key", "5:36 cutter"}},
	{"router table with both", "kind: saw, width: 6.35", "kind: router-table, width: 6, diameter: 6", []string{"5:50 cutter"}},
	{"hand without iron", "kind: saw, width: 6.35", "kind: hand", []string{"5:9 missing-key"}},
	{"hand with a bit", "kind: saw, width: 6.35", "kind: hand, width: 6, diameter: 6", []string{"5:42 cutter"}},
	{"router of hands", "kind: saw, width: 6.35", "kind: hand, width: 6}\nrouter: {overcut: 1", []string{"6:9 not-for-a-saw"}},
	{"half a flute", "kind: saw, width: 6.35", "kind: router, diameter: 6, flutes: 1.5", []string{"5:45 not-a-number"}},
	{"shortest over longest", "units: mm", "units: mm\nmachines: {saw: {min-length-on-end: 300, max-length-on-end: 200}}", []string{"2:61 out-of-range"}},
	{"limits of a hand", "units: mm", "units: mm\nmachines: {hand: {}}", []string{"2:12 unknown-key"}},
	{"reach of the sheets", "units: mm", "units: mm\nsheets: {crosscut-capacity: 600}", []string{"2:10 unknown-key"}},
	{"router of saws", "units: mm", "units: mm\nrouter: {overcut: 1}", []string{"2:9 not-for-a-saw"}},
	{"unknown relief", "units: mm", "units: mm\nrouter: {relief: round}", []string{"2:9 not-for-a-saw", "2:18 unknown-word"}},
	{"layers of nothing", "units: mm", "units: mm\ndxf: {layers: \"CUT\"}", []string{"2:15 bad-name"}},
	{"unknown word of layers", "units: mm", "units: mm\ndxf: {layers: \"{operation}_{helix}\"}", []string{"2:15 bad-name"}},
	{"words of layers that meet", "units: mm", "units: mm\ndxf: {layers: \"{operation}{cutter}\"}", []string{"2:15 bad-name"}},
	{"files without part", "units: mm", "units: mm\ndxf: {files: \"{job}\"}", []string{"2:14 bad-name"}},
	{"files elsewhere", "units: mm", "units: mm\ndxf: {files: \"../{part}\"}", []string{"2:14 bad-name"}},
	{"bit to engrave with", "kind: saw, width: 6.35}", "kind: router, bits: {a: {diameter: 6}, c: {diameter: 1}}}\nrouter: {engrave: {bit: b}}", []string{"6:25 unknown-name"}},
	{"only bit to engrave with", "kind: saw, width: 6.35}", "kind: router, bits: {b: {diameter: 6}}}\nrouter: {engrave: {bit: b}}", []string{"6:25 cutter"}},
	{"engraved too deep", "kind: saw, width: 6.35}", "kind: router, diameter: 6}\nrouter: {engrave: {depth: 3}}", []string{"6:27 out-of-range"}},
	{"relief of a kind", "kind: saw, width: 6.35}", "kind: router, diameter: 6}\nrouter: {relief: round}", []string{"6:18 unknown-word"}},
	{"relief of an operation", "kind: saw, width: 6.35}", "kind: router, diameter: 6}\nrouter: {relief: {groove: round}}", []string{"6:27 unknown-word"}},
	{"relief of holes", "kind: saw, width: 6.35}", "kind: router, diameter: 6}\nrouter: {relief: {drill: none}}", []string{"6:19 unknown-key"}},
	{"elevation", "units: mm", "units: mm\ndxf: {elevation: up}", []string{"2:18 unknown-word"}},
	{"order twice", "units: mm", "units: mm\ndxf: {order: [dado, dado]}", []string{"2:21 duplicate-key"}},
	{"order of nothing", "units: mm", "units: mm\ndxf: {order: [sand]}", []string{"2:15 unknown-word"}},
	{"order without list", "units: mm", "units: mm\ndxf: {order: dado}", []string{"2:14 wrong-kind"}},

	// Saws.
	{"own clearance", "count: 6", "joinery: {dado-clearance: 0.2, groove-clearance: 0.2, groove-ends: stopped}",
		[]string{"10:31 not-for-a-saw", "10:54 not-for-a-saw", "10:72 not-for-a-saw"}},
	{"clearance for all", "cutter-height: 6", "dado-clearance: 0.2\n  groove-clearance: 0.2\n  groove-ends: stopped",
		[]string{"7:19 not-for-a-saw", "8:21 not-for-a-saw", "9:16 not-for-a-saw"}},
	{"stopped for all with one router", "cutter-height: 6\ndrawers:\n  - name: wide\n", "dado-clearance: 0.2\n  groove-ends: stopped\ndrawers:\n  - name: wide\n    cutter: {kind: router, width: 6}\n",
		[]string{"8:16 not-for-a-saw"}},
	{"clearance of a router table", "{kind: saw, width: 6.35}\njoinery:\n  cutter-height: 6", "{kind: router-table, width: 6.35}\njoinery:\n  groove-ends: stopped\n  dado-clearance: 0.2", []string{"8:19 not-for-a-saw"}},
	{"dado clearance with a cutter for grooves", "6.35}\njoinery:\n  cutter-height: 6", "6.35, groove-cutter: 3.2}\njoinery:\n  groove-clearance: 0.1\n  dado-clearance: 0.1", []string{"8:19 not-for-a-saw"}},
	{"clearance with a broken cutter", "{kind: saw, width: 6.35}\njoinery:\n  cutter-height: 6", "{kind: laser, width: 6.35}\njoinery:\n  dado-clearance: 6 mm", []string{"5:16 unknown-word", "7:19 out-of-range"}},
}
