package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom/sheet"
)

// TestSheets: every sample's parts are on sheets, all of them, and a second run prints
// the same.
func TestSheets(t *testing.T) {
	files, _ := filepath.Glob("../../samples/*.yaml")
	for _, file := range files {
		var text [2]string
		for i := range text {
			status, out, errs := call(t, "", "sheets", file, "--json", "--effort", "20")
			if status != 0 {
				t.Fatalf("%s: %s", file, errs)
			}
			text[i] = out
		}
		if text[0] != text[1] {
			t.Errorf("%s: laid out in another way the second time", file)
		}
		var s record.Sheets
		if err := json.Unmarshal([]byte(text[0]), &s); err != nil {
			t.Fatal(err)
		}
		if len(s.Stocks) == 0 {
			t.Errorf("%s: no stock is laid out", file)
		}
		for _, k := range s.Stocks {
			placed := 0
			for _, sheet := range k.Sheets {
				placed += len(sheet.Placements)
				z := k.Sizes[sheet.Size]
				for _, p := range sheet.Placements {
					if p.X < k.Trim-1e-6 || p.Y < k.Trim-1e-6 || p.X+p.Length > z.Length-k.Trim+1e-6 || p.Y+p.Width > z.Width-k.Trim+1e-6 {
						t.Errorf("%s: %s leaves its sheet", file, p.Part)
					}
				}
			}
			if placed != k.Pieces || len(k.Unplaced) > 0 || k.Count < k.MinSheets ||
				k.Optimal != (k.Summary == "best possible") {
				t.Errorf("%s, %s: %d of %d pieces on %d sheets, at least %d, %s", file, k.Stock, placed,
					k.Pieces, k.Count, k.MinSheets, k.Summary)
			}
		}
		status, out, _ := call(t, "", "sheets", file, "--all", "--effort", "20")
		if status != 0 || !strings.Contains(out, "kerf") {
			t.Errorf("%s prints %q", file, out)
		}
	}
}

// TestSheetsSaid: rules of the job are kept, and what cannot be is said.
func TestSheetsSaid(t *testing.T) {
	job, err := os.ReadFile("../../samples/bench-drawers.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		more   string
		args   []string
		status int
		want   string
	}{
		"stages":       {"sheets: {stages: 2, kerf: 4, trim: 10}\n", nil, 0, "laid out for cutting from edge to edge in 2 stages, kerf 4.00, trim 10.00 mm"},
		"free":         {"sheets: {method: free, kerf: 12}\n", nil, 0, "laid out for cutting each part out by itself, kerf 12.00, trim 5.00 mm"},
		"both":         {"sheets: {method: free, stages: 2}\n", nil, 1, "stages are those of a saw"},
		"large trims":  {"sheets: {trim: 200}\n", nil, 0, "best possible"},
		"no effort":    {"", []string{"--effort", "0"}, 2, "--effort 0: it is from 1 to"},
		"other effort": {"", []string{"--effort", "5"}, 0, "best possible"},
	} {
		status, out, errs := call(t, c.more+string(job), append([]string{"sheets", "-", "--all"}, c.args...)...)
		if status != c.status || !strings.Contains(out+errs, c.want) {
			t.Errorf("%s: %d, %s%s", name, status, out, errs)
		}
	}
	small := strings.Replace(string(job), "sheet: 1525 x 1525", "sheet: 505 x 480", 1)
	if status, _, errs := call(t, small, "sheets", "-", "--all"); status != 1 || !strings.Contains(errs, "there is no sheet for ") || !strings.Contains(errs, "4 x bench-wide-side") {
		t.Errorf("small sheets: %d, %s", status, errs)
	}
}

// TestTemplatesWithoutStock: a stock that is misspelled is said, not searched for for ever.
func TestTemplatesWithoutStock(t *testing.T) {
	job, err := os.ReadFile("../../samples/hand-cut.yaml")
	if err != nil {
		t.Fatal(err)
	}
	status, _, errs := call(t, strings.Replace(string(job), "stock: hardboard 3", "stock: hardbord 3", 1), "check", "-")
	if status != 1 || !strings.Contains(errs, "hardbord 3") {
		t.Errorf("%d, %s", status, errs)
	}
}

// TestLayout: a list is laid out, its offcut first, and what is wrong is said with lines.
func TestLayout(t *testing.T) {
	const good = "kind,name,length,width,count,price,turn\nsheet,large,100,100,,10,\noffcut,shelf,50,100,1,,\npart,a,50,50,6,,\npart,b,25,50,2,,yes\n"
	for name, c := range map[string]struct {
		list   string
		args   []string
		status int
		want   string
	}{
		"good":       {good, []string{"--kerf", "0"}, 0, "list: 2 sheets of large, 100.00 x 100.00 mm, 1 offcut of 50.00 x 100.00 mm; best possible; yield 70.0 %"},
		"in inches":  {good, []string{"--kerf", "3/16", "--units", "in"}, 0, "kerf 3/16, trim 0 in"},
		"usual inch": {good, []string{"--units", "in"}, 0, "kerf 1/8, trim 0 in"},
		"free":       {good, []string{"--method", "free"}, 0, "laid out for cutting each part out by itself, kerf 3.20"},
		"stages":     {good, []string{"--stages", "3", "--trim", "2"}, 0, "in 3 stages, kerf 3.20, trim 2.00"},
		"ripped":     {good, []string{"--first-cuts", "rip", "--kerf", "0"}, 0, "(no sheet more than without that)"},
		"free rip":   {good, []string{"--method", "free", "--first-cuts", "rip"}, 2, "for guillotine layouts"},
		"no cut":     {good, []string{"--first-cuts", "round"}, 2, "--first-cuts round"},
		"too large":  {good + "part,c,300,300,2,,\n", nil, 1, "no sheet holds 2 x c"},
		"free stage": {good, []string{"--method", "free", "--stages", "3"}, 2, "for guillotine layouts"},
		"wide kerf":  {good, []string{"--kerf", "101"}, 2, "--kerf 101: write a length from 0 to 100 mm"},
		"no way":     {good, []string{"--method", "round"}, 2, "--method round"},
		"no lines":   {"", nil, 1, "there is no sheet to cut from"},
		"wrong":      {good + "part,c,x,300,2,,\n", nil, 1, "(standard input):6: the length \"x\" is no length"},
		"a set":      {"name,length,width,count,set,kind\na,500,100,3,s,\nb,500,120,2,s,\np,900,900,,,sheet\n", nil, 1, "(standard input):3: the count of piece b is 2, that of others of its set 3"},
		"as JSON":    {good + "part,c,x,300,2,,\n", []string{"--json"}, 1, `"line": 6`},
	} {
		status, out, errs := call(t, c.list, append([]string{"layout", "-", "--all", "--effort", "10"}, c.args...)...)
		if status != c.status || !strings.Contains(out+errs, c.want) {
			t.Errorf("%s: %d, %s%s", name, status, out, errs)
		}
	}
}

// TestLayoutReach: which cuts of a list are ripped, crosscut or made with a saw taken to the
// board is by what the flags say that the table saw holds. The whole sheet is cut at 1250,
// then its rest of 1186.8, both over its width of 1220. As set the fence opens to 1300 and
// the sled crosscuts 600 of boards up to 1600, at a stop up to 900.
func TestLayoutReach(t *testing.T) {
	const list = "kind,name,length,width,count\nsheet,birch,2440,1220,\npart,top,1250,1220,1\npart,side,500,1220,1\n"
	for flags, want := range map[string][2]string{
		"":                   {"hand-held", "fence cut"},
		"--rip-capacity 499": {"hand-held", "hand-held"},
		"--crosscut-capacity 1219 --max-length-on-sled 2440":                 {"hand-held", "fence cut"},
		"--crosscut-capacity 1220 --max-length-on-sled 2439 --max-stop 1250": {"hand-held", "fence cut"},
		"--crosscut-capacity 1220 --max-length-on-sled 2440 --max-stop 1249": {"hand-held", "fence cut"},
		// The second is on the sled already.
		"--crosscut-capacity 1220 --max-length-on-sled 2440 --max-stop 1250": {"sled cut", "sled cut"},
		"--rip-capacity 499 --crosscut-capacity 1220":                        {"hand-held", "sled cut"},
	} {
		status, out, errs := call(t, list, append([]string{"layout", "-", "--all", "--effort", "10"}, strings.Fields(flags)...)...)
		if status != 0 {
			t.Fatalf("%s: %d, %s", flags, status, errs)
		}
		for i, how := range want {
			cut := regexp.MustCompile(fmt.Sprintf(`(?m)^ {2}%d .*$`, i+1)).FindString(out)
			if !regexp.MustCompile("  " + how + "(, rough)?  ").MatchString(cut) {
				t.Errorf("%s: cut %d is %q, not %s", flags, i+1, cut, how)
			}
		}
	}
	for _, name := range []string{"rip-capacity", "crosscut-capacity", "max-length-on-sled", "max-stop"} {
		if status, _, errs := call(t, list, "layout", "-", "--"+name, "wide"); status != exitUsage || !strings.Contains(errs, "--"+name+" wide: ") {
			t.Errorf("%s: %d, %s", name, status, errs)
		}
	}
}

// TestTestPieceToBuy: where no offcut gives the test piece, it is among what is to buy, by its least size; else it is
// not.
func TestTestPieceToBuy(t *testing.T) {
	for size, want := range map[string]string{"520 x 250": "test piece  a, at least 300 x 120 mm ", "2440 x 1220": ""} {
		text := "units: mm\nstock: {a: {thickness: [12, 12.04], sheet: " + size + "}, " +
			"b: {thickness: [5.95, 6], sheet: 2440 x 1220}}\n" +
			"cutter: {kind: saw, width: 6.3}\n" +
			"drawers:\n  - {name: one, outside: 480 x 120 x 500, sides: a, bottom: b}\n"
		_, said, errs := call(t, text, "parts", "-", "--all")
		if named := strings.Contains(said, "test piece  "); named != (want != "") || !strings.Contains(said, want) {
			t.Errorf("%s: %s %s", size, said, errs)
		}
	}
}

// TestSheetForTime: where a sheet more saves so much time at the saw that it is worth it, `prefer: sheet-for-time`
// takes it: sheets and cuts are those of the layout that is listed so, beside the one of a sheet less.
func TestSheetForTime(t *testing.T) {
	const text = "units: mm\nstock: {birch: {thickness: [12, 12.05], sheet: 1220 x 1220, grain: length, price: 50}, " +
		"ply: {thickness: [6, 6.05]}}\ncutter: {kind: saw, width: 6.3}\n" +
		"sheets: {prefer: sheet-for-time, times: {setting: 3 min}}\ndrawers:\n" +
		"  - {name: a, count: 5, outside: 620 x 100 x 410, sides: birch, bottom: ply}\n" +
		"  - {name: b, count: 5, outside: 580 x 180 x 480, sides: birch, bottom: ply}\n" +
		"  - {name: c, count: 1, outside: 660 x 80 x 450, sides: birch, bottom: ply}\n" +
		"  - {name: d, count: 3, outside: 630 x 110 x 360, sides: birch, bottom: ply}\n"
	code, said, errs := call(t, text, "sheets", "-", "--json")
	var got record.Sheets
	if err := json.Unmarshal([]byte(said), &got); code != 0 || err != nil {
		t.Fatalf("%d, %v, %s", code, err, errs)
	}
	k := got.Stocks[0]
	by := make(map[string]record.SheetChoice)
	for _, c := range k.Choices {
		for _, word := range c.Prefer {
			by[word] = c
		}
	}
	more, least := by["sheet-for-time"], by["little-time"]
	if !more.Taken || least.Taken || k.Count != more.Sheets || k.SawMinutes != more.Minutes {
		t.Errorf("%d sheets in %d minutes are cut, of %+v", k.Count, k.SawMinutes, k.Choices)
	}
	if more.Sheets != least.Sheets+1 || least.Minutes-more.Minutes < sheet.WorthSheet/60 {
		t.Errorf("a sheet more is not worth it: %+v, %+v", more, least)
	}
}
