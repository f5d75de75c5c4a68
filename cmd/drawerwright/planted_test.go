package main

import (
	"maps"
	"os"
	"slices"
	"testing"

	"drawerwright/cmd/internal/readback"
)

// nearSide ends the line of a setting.
const nearSide = ", each from its face to the near side of the cutter."

// planted are contradictions of the sample with wooden runners, each a number or a word
// that is changed in one output, and the kind and measure that it makes disagree.
var planted = []struct{ out, find, instead, kind, measure string }{
	{readback.CheckText, `^(.*yaml): 8 kinds`, "${1}: 9 kinds", "total", "kinds"},
	{readback.CheckText, ` 9 boxes, no errors`, " 8 boxes, no errors", "total", "boxes"},
	{readback.CheckText, `no errors, no warnings`, "no errors, 2 warnings", "total", "warnings listed"},
	{readback.CheckText, `, \d+ notes$`, ", 18 notes", "total", "notes listed"},
	{readback.CheckText, `note: tote: a saw`, "warning: tote: a saw", "total", "different warnings"},
	{readback.CheckJSON, `("level": ")note`, "${1}warning", "total", "different warnings"},
	{readback.PartsText, `^notes$`, "warnings", "total", "different warnings"},
	{readback.ReportJSON, `("level": ")note`, "${1}warning", "total", "different warnings"},
	{readback.CheckText, `note: tote: a saw`, "note: tote: no saw", "note", "drawers"},
	{readback.CheckText, `note: right-1, right-2, right-3: a saw`, "note: right-1, right-2: a saw", "note", "drawers"},
	{readback.CheckJSON, `"message": "tote: a saw`, `"message": "tote: no saw`, "note", "drawers"},
	{readback.PartsText, `^tote: a saw.*\n`, "", "note", "drawers"},
	{readback.ReportJSON, `"message": "a saw cannot cut the pull, a hand`, `"message": "the saw cannot cut the pull, a hand`, "note", "drawers"},

	{readback.Packet, "tote: a saw cannot cut the pull, a hand-hold", "tote: a saw cuts the pull, a hand-hold", "note", "drawers"},

	{readback.CheckText, `^(tote: )goes together`, "${1}loose", "verdict", "said"},
	{readback.CheckJSON, `("text": ")goes together`, "${1}loose", "verdict", "said"},
	{readback.PartsText, `^(left-1: )goes together`, "${1}loose", "verdict", "said"},
	{readback.PartsJSON, `("summary": ")goes together`, "${1}loose", "verdict", "said"},
	{readback.FitText, `^(left-1: )goes together`, "${1}loose", "verdict", "said"},
	{readback.FitJSON, `("text": ")goes together`, "${1}loose", "verdict", "said"},
	{readback.SetupText, `^(left-1, .*: )goes together`, "${1}loose", "verdict", "said"},
	{readback.SetupJSON, `("text": ")goes together`, "${1}loose", "verdict", "said"},
	{readback.ReportJSON, `("text": ")Fits: 8`, "${1}Fits: 7", "total", "answer"},
	{readback.Packet, "Fits: 8 kinds of drawer; of right-1, the least sure, more than 999 of 1,000 boxes come out", "Fits: 8 kinds of drawer; of right-2, the least sure, more than 999 of 1,000 boxes come out", "total", "answer"},
	{readback.Page, `("title":"left-1: )goes together`, "${1}loose", "verdict", "said"},

	{readback.PartsText, `^( *\d+ +)2( .* right-1-side)`, "${1}4${2}", "group", "pieces"},
	{readback.PartsTxt, `^( *\d+ +\d+ +)555( .* right-1-side)`, "${1}556${2}", "part", "length"},
	{readback.PartsText, `^( *\d+ +\d+ +\S+ +)51.57( .* left-1-back)`, "${1}51.58${2}", "part", "width"},
	{readback.PartsText, `^(birch 12, )12.15 mm thick`, "${1}12.16 mm thick", "part", "thickness"},
	{readback.PartsText, `^( *\d+ .*)both faces( .*left-1-box-front)`, "${1}inside face${2}", "group", "cuts"},
	{readback.PartsText, `^ *26( .* tote-side)`, " 27${1}", "group", "number"},
	{readback.PartsTxt, `left-1-bottom, left-2-bottom, `, "left-1-bottom, ", "group", "parts"},
	{readback.ReportJSON, `("number": )1,`, "${1}2,", "group", "number"},
	{readback.CutList, `^(birch 12,.*,tote-side,)26`, "${1}27", "group", "number"},
	{readback.Packet, "26: tote-side", "27: tote-side", "group", "number"},
	{readback.ShopPage, `(class="no">)26(.*tote-side)`, "${1}27${2}", "group", "number"},
	{readback.PartsCSV, `^(tote-side,tote,side,)4`, "${1}5", "part", "quantity"},
	{readback.PartsList, `^(tote-side,tote,side,4,)280`, "${1}281", "part", "length"},
	{readback.PartsJSON, `("name": "tote-side",(?:.*\n)*?.*"width": )137\.85`, "${1}137.86", "part", "width"},
	{readback.ReportJSON, `("name": "tote-side",(?:.*\n)*?.*"quantity": )4`, "${1}2", "part", "quantity"},
	{readback.CutList, `^(birch 12,.*,inside face,none,tote-side)`, "${1} tote-box-front", "group", "parts"},
	{readback.CutList, `^(birch 12,[^,]*,)4(,.*tote-side,\d+\r?)$`, "${1}6${2}", "group", "pieces"},
	{readback.Packet, "137.85", "137.58", "part", "width"},
	{readback.Packet, "9 boxes of 8 kinds. Lengths are in mm; sizes are width x height x depth.", "8 boxes of 8 kinds. Lengths are in mm.", "total", "boxes"},
	{readback.Packet, "±0.80", "±0.08", "fit", "limit to"},
	{readback.Packet, "±0.50", "±0.05", "fit", "limit from"},
	{readback.Packet, "±1.00", "±0.10", "fit", "limit from"},
	{readback.Packet, "420 x 150 x 280", "420 x 150 x 290", "box", "outside depth"},
	{readback.Page, `("name":"tote","count":)2`, "${1}3", "box", "count"},
	{readback.Page, `("text":"tote-side"},{"text":"4"},{"text":"280"},{"text":"137.)85`, "${1}86", "part", "width"},
	{readback.Page, `("text":"outside"},{"text":"47)8`, `${1}9`, "box", "outside width"},

	{readback.Packet, "15.00 to 27.40", "15.00 to 27.04", "cut", "right"},
	{readback.Packet, "32.00", "23.00", "cut", "diameter"},
	{readback.Packet, "460.02 to 466.09", "460.20 to 466.09", "cut", "left, seen through"},
	{readback.ReportJSON, `("name": "left-1-side-left",(?:.*\n)*?\s+"depth": )6\.\d+`, "${1}5.9", "cut", "depth"},

	{readback.PartsText, `^(left-1 +)88.63`, "${1}88.64", "row", "front height"},
	{readback.PartsTxt, `^(left-2 +\S+ +)317.59`, "${1}317.95", "row", "front lower edge"},
	{readback.SlideLines, `^(left,left-1,)441.37`, "${1}441.38", "row", "slide line"},
	{readback.Packet, "451.37", "451.73", "row", "box lower edge"},
	{readback.PartsText, `^  156.10 mm for`, "  156.20 mm for", "spacer", "length"},
	{readback.PartsText, `^(opening left: worked out from )480.00`, "${1}480.10", "opening", "width"},

	{readback.PartsText, `^(birch 12 +)38`, "${1}37", "stock", "pieces"},
	{readback.PartsTxt, `^(ply 6 +7 +)1.74`, "${1}1.75", "stock", "area"},
	{readback.PartsText, `^(birch 12 .* )116.00`, "${1}58.00", "stock", "cost"},
	{readback.PartsTxt, `^(board and banding as priced: )140`, "${1}72", "total", "cost"},
	{readback.PartsTxt, `^(birch 12: )2 sheets`, "${1}1 sheet", "layout", "sheets"},
	{readback.SheetsText, `^(birch 12: 2 sheets.*; )best possible`, "${1}at most 1 sheet from best", "layout", "said"},
	{readback.SheetsText, `(\d+) cuts; fence`, "9${1} cuts; fence", "layout", "cuts"},
	{readback.SheetsJSON, `"count": 2,\n`, "\"count\": 3,\n", "layout", "sheets"},
	{readback.SheetsCSV, `^birch 12,1,1,.*\n`, "", "stock", "pieces"},
	{readback.LayoutList, `^(birch 12,2,)1`, "${1}2", "stock", "pieces"},
	{readback.LayoutList, `^(birch 12,)2(,1,birch 12,part)`, "${1}1${2}", "layout", "pieces on sheet 1"},
	{readback.Packet, "Fence 555.00 mm", "Fence 575.00 mm", "saw cut", "setting"},
	{readback.Packet, "Fence 467.30 mm", "Fence still 467.30 mm", "layout", "times that the fence is set"},
	{readback.CutsList, `^birch 12,1,.*\n`, "", "layout", "cuts"},
	{readback.BuyList, `^(runner,.*,)14(,pieces)`, "${1}15${2}", "buy", "quantity"},
	{readback.BuyList, `^(board,.*),116.00`, "${1},58.00", "buy", "cost"},
	{readback.PartsText, `^(runner +left-1 +2 +)555.00`, "${1}556.00", "strip", "length"},
	{readback.PartsText, `^(runner +555.* )14`, "${1}15", "buy", "quantity"},

	{readback.PartsText, `^(right-1 +)2.5 kg`, "${1}3.0 kg", "weight", "empty in kg"},
	{readback.PartsTxt, `^(tote +)2.5 kg`, "${1}2.6 kg", "weight", "empty in kg"},
	{readback.PartsTxt, `^(left-1 +\S+ kg +\S+ kg +- +)0.25`, "${1}0.32", "sag", "clamped"},
	{readback.PartsText, `^(tote +box front +)3 mm( +30)`, "${1}4 mm${2}", "bore", "diameter"},

	{readback.FitText, `^(box front tongue clearance in its dado +)0.23`, "${1}0.24", "fit", "nominal"},
	{readback.FitJSON, `("name": "box front tongue clearance in its dado",\s+"nominal": )0\.2\d+`, "${1}0.26", "fit",
		"nominal"},
	{readback.FitText, `^(birch 12 +)12.15`, "${1}12.51", "board", "mean"},
	{readback.FitText, `^(both diagonals, over the ends of the sides +)732`, "${1}733", "stack", "diagonal"},
	{readback.PartsJSON, `("name": "box front tongue clearance in its dado",\s+"nominal": )0\.2\d+`, "${1}0.26", "fit",
		"nominal"},

	{readback.PartsText, `^(saw +6.30 +)6.08`, "${1}6.18", "corner", "fence"},
	{readback.SetupText, `^(SETTING 1: .*height )6.08`, "${1}6.18", "machine 1", "height"},
	{readback.SetupText, `^(SETTING 1: .*fence )15.00`, "${1}16.00", "machine 1", "fence"},
	{readback.SetupText, `^(SETTING 1: .*fence 15.00 mm, then )21.10`, "${1}22.10", "machine 1", "then fence 1"},
	{readback.SetupText, `^(SETTING 2: .*fence 0.00 mm, then )5.85`, "${1}5.95", "machine 1", "then fence 1"},
	{readback.Packet, "21.10", "22.10", "machine 1", "then fence 1"},
	{readback.Packet, "Setting 1: cutter 6.30 mm wide, height 6.08 mm, fence 15.00 mm, then 21.10 mm" + nearSide,
		"Setting 1: cutter 6.30 mm wide, height 6.08 mm, fence 15.00 mm, then 22.10 mm" + nearSide, "machine 1",
		"then fence 1"},
	{readback.ShopPage, `(class="measure">then fence</dt><dd><span class="figure">)21.10`, "${1}22.10", "machine 1",
		"then fence 1"},
	{readback.SetupText, `(passes, the fence at )15.00`, "${1}15.10", "machine 1", "pass 1"},
	{readback.SetupText, `No: 3 settings`, "No: 4 settings", "machine 1", "one setting"},
	{readback.SetupText, `2 x right-1-side`, "3 x right-1-side", "machine 1", "who"},
	{readback.SetupJSON, `("settings": \[\s+\{\s+"cutter": [\d.]+,\s+"height": )6.075`, "${1}6.1", "machine 1", "height"},
	{readback.Page, `(SETTING 1: .*?height )6.08`, "${1}6.18", "machine 1", "height"},

	{readback.ShopPage, `(class="said">)Fits`, "${1}Does not fit", "total", "answer"},
	{readback.ShopPage, `9 boxes of 8 kinds`, "8 boxes of 8 kinds", "total", "boxes"},
	{readback.ShopPage, `(class="remark">)tote: a saw`, "${1}tote: no saw", "note", "drawers"},
	{readback.ShopPage, `(class="verdict">left-1[^:]*: )goes together`, "${1}loose", "verdict", "said"},
	{readback.ShopPage, `(class="stock">birch 12, )12.15`, "${1}12.16", "part", "thickness"},
	{readback.ShopPage, `(class="pieces">)4(</span>.*tote-side)`, "${1}5${2}", "group", "pieces"},
	{readback.ShopPage, `(class="length">)280(.*tote-side)`, "${1}281${2}", "part", "length"},
	{readback.ShopPage, `(class="width">)137.85(.*tote-side)`, "${1}137.86${2}", "part", "width"},
	{readback.ShopPage, `(class="parts">tote-side)`, "${1}, tote-back", "group", "parts"},
	{readback.ShopPage, `<li><label>.*tote-bottom.*</li>\n`, "", "group", "pieces"},
	{readback.ShopPage, `(Table saw, cutter )6.30`, "${1}6.35", "machine 1", "cutter"},
	{readback.ShopPage, `(class="one">.*?)No: 3 settings`, "${1}No: 4 settings", "machine 1", "one setting"},
	{readback.ShopPage, `(class="setting">Setting 1: .*?height )6.08`, "${1}6.18", "machine 1", "height"},
	{readback.ShopPage, `(class="measure">height</dt><dd><span class="figure">)6.08`, "${1}6.18", "machine 1", "height"},
	{readback.ShopPage, `(class="measure">fence</dt><dd><span class="figure">)15.00`, "${1}16.00", "machine 1", "fence"},
	{readback.ShopPage, `(class="measure">cutter</dt><dd><span class="figure">)6.30`, "${1}6.20", "machine 1", "cutter"},
	{readback.ShopPage, `(class="passes">2 passes, the fence at )15.00`, "${1}15.10", "machine 1", "pass 1"},
	{readback.ShopPage, `(class="step">1\. )`, "${1}not ", "machine 1", "how"},
	{readback.ShopPage, `2 x right-1-side`, "3 x right-1-side", "machine 1", "who"},
	{readback.ShopPage, `(class="is">)\d`, "${1}9", "machine 1", "is"},
	{readback.ShopPage, `(class="boxes">)2(.*tote)`, "${1}3${2}", "box", "count"},
	{readback.ShopPage, `420 x 150 x 280`, "420 x 150 x 290", "box", "outside depth"},
}

// TestPlantedContradictionsAreFound: what is changed in one output disagrees with the
// others, in the measure that was changed; something is planted in every output.
func TestPlantedContradictionsAreFound(t *testing.T) {
	text, err := os.ReadFile("../../samples/workshop-bench.yaml")
	if err != nil {
		t.Fatal(err)
	}
	outputs := commanded(t, string(text))
	job := read(t, string(text), outputs, true)
	for out := range outputs {
		if !slices.ContainsFunc(planted, func(p struct{ out, find, instead, kind, measure string }) bool { return p.out == out }) {
			t.Errorf("nothing is planted in %q", out)
		}
	}
	for _, p := range planted {
		changed, found := readback.Plant(p.out, outputs[p.out], p.find, p.instead)
		if !found {
			t.Errorf("%s: %q is nowhere", p.out, p.find)
			continue
		}
		all := maps.Clone(outputs)
		all[p.out] = changed
		facts, err := readback.Read(job, all)
		if err != nil {
			t.Errorf("%s, %q: %v", p.out, p.instead, err)
			continue
		}
		if !slices.ContainsFunc(readback.Compare(job, facts, all), func(c readback.Contradiction) bool { return c.Kind == p.kind && c.Measure == p.measure }) {
			t.Errorf("%s: %q for %q is not found as a contradiction of %s, %s: %v", p.out, p.instead,
				p.find, p.kind, p.measure, readback.Compare(job, facts, all))
		}
	}
}
