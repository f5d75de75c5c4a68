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
)

// twoSheets is a job whose board is 0.93 m2 of sheets of 1 m2 and lies on two of them: no
// more than one side of 620 mm lies along a sheet, and 240 + 140 mm high ones fill it.
const twoSheets = `job: Two sheets
units: mm
stock:
  birch: {thickness: [12.1, 12.2], sheet: 1000 x 1000, grain: length, price: 55%s}
  hard: {thickness: 6, sheet: 1000 x 1000, price: 20}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: long, outside: 620 x 140 x 620, sides: birch, bottom: hard}
  - {name: deep, outside: 620 x 240 x 620, sides: birch, bottom: hard}
`

// TestOneCountOfSheets: every output has the layout's number of sheets, and its price.
func TestOneCountOfSheets(t *testing.T) {
	job := fmt.Sprintf(twoSheets, "")
	out := filepath.Join(t.TempDir(), "out")
	if status, _, errs := call(t, job, "build", "-", "-o", out); status != 0 {
		t.Fatal(errs)
	}
	read := func(name string) string {
		data, err := os.ReadFile(filepath.Join(out, name))
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	var texts [2]string
	for i, args := range [][]string{{"parts", "-", "--all"}, {"sheets", "-", "--all"}} {
		status, said, errs := call(t, job, args...)
		if texts[i] = said; status != 0 {
			t.Fatal(errs)
		}
	}
	row := regexp.MustCompile(`(?m)^birch +8 +0\.93 +2 +110\.00$`)
	for name, text := range map[string]string{"parts": texts[0], "parts.txt": read("parts.txt")} {
		if !row.MatchString(text) || !strings.Contains(text, "birch: 2 sheets of 1000.00 x 1000.00 mm") || !strings.Contains(text, "as priced: 150.00") {
			t.Errorf("%s has another number of sheets:\n%s", name, text)
		}
	}
	if !strings.Contains(texts[1], "birch: 2 sheets of 1000.00 x 1000.00 mm") {
		t.Errorf("sheets: %s", texts[1])
	}
	if buy := read("tables/buy.csv"); !strings.Contains(buy, `board,"birch, 1000 x 1000 mm",2,sheets,110.00`) {
		t.Errorf("buy.csv: %s", buy)
	}
	_, parts, _ := call(t, job, "parts", "-", "--json")
	for name, text := range map[string]string{"parts --json": parts, "report.json": read("report.json")} {
		r, err := record.Read([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		if m := r.Material[0]; m.Sheets != 2 || m.Cost != 110 || r.Sheets[0].Count != 2 || r.Buy[0].Quantity != 2 || r.Buy[0].Cost != 110 {
			t.Errorf("%s: %+v, %+v", name, m, r.Buy[0])
		}
	}
	// The same search everywhere: also the places are the same.
	var laid record.Sheets
	_, text, _ := call(t, job, "sheets", "-", "--json")
	if err := json.Unmarshal([]byte(text), &laid); err != nil {
		t.Fatal(err)
	}
	r, err := record.Read([]byte(parts))
	if err != nil {
		t.Fatal(err)
	}
	if a, b := fmt.Sprintf("%+v", laid.Stocks), fmt.Sprintf("%+v", r.Sheets); len(laid.Stocks) != 2 || len(a) != len(b) {
		t.Errorf("sheets and parts lay out in two ways:\n%s\n%s", a, b)
	}
}

// TestTooFewSheets: too little stock is one error in every command, at the stock's count,
// with the pieces that are short; nothing is written, and what the hint says ends it.
func TestTooFewSheets(t *testing.T) {
	job := fmt.Sprintf(twoSheets, ", count: 1")
	inTemp(t)
	const want = "(standard input):4:89: error: birch: there is no sheet for 4 of its 8 pieces: 2 x long-side, 2 x long-box-front = long-back; it has 1 sheet of 1000 x 1000 mm"
	for _, args := range [][]string{{"check", "-"}, {"parts", "-", "--all"}, {"build", "-", "-o", "out"}, {"sheets", "-", "--all"}, {"setup", "-"}, {"fit", "-"}} {
		status, _, errs := call(t, job, args...)
		if status != exitJob || !strings.Contains(errs, want) || !strings.Contains(errs, "hint: have 2 sheets of 1000 x 1000 mm and write `count: 2`") {
			t.Errorf("%v: %d, %s", args, status, errs)
		}
		if status, out, _ := call(t, job, append(args, "--json")...); status != exitJob || !strings.Contains(out, `"code": "no-sheet"`) || !strings.Contains(out, `"line": 4`) {
			t.Errorf("%v --json: %d, %s", args, status, out)
		}
	}
	if left, _ := os.ReadDir("."); len(left) != 0 {
		t.Errorf("left behind: %v", left)
	}
	if status, out, errs := call(t, fmt.Sprintf(twoSheets, ", count: 2"), "check", "-"); status != 0 || !strings.Contains(out, "no errors") {
		t.Errorf("as the hint says: %d, %s", status, errs)
	}
	// An offcut on the shelf may hold what is short.
	if err := os.WriteFile("shelf.csv", []byte("stock,name,length,width\nbirch,old,990,990\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if status, _, errs := call(t, job, "sheets", "-", "--shelf", "shelf.csv"); status != 0 {
		t.Errorf("with an offcut: %s", errs)
	}
	// One that no sheet holds, trims considered, takes a larger one.
	large := strings.Replace(fmt.Sprintf(twoSheets, ""), "620 x 140 x 620", "620 x 140 x 995", 1)
	status, _, errs := call(t, large, "check", "-")
	if status != exitJob || !strings.Contains(errs, "2 x long-side; it has sheets of 1000 x 1000 mm") || !strings.Contains(errs, "the largest take a sheet of at least 1005 x 150 mm") {
		t.Errorf("too large: %d, %s", status, errs)
	}
	for sheet, fits := range map[string]int{"1005 x 1000": exitDone, "1004 x 1000": exitJob} {
		mended := strings.ReplaceAll(large, "grain: length", "grain: length, other-sheets: {large: {sheet: "+sheet+"}}")
		mended = strings.Replace(mended, "hard: {thickness: 6, sheet: 1000 x 1000",
			"hard: {thickness: 6, sheet: 2000 x 1000", 1)
		if status, _, errs := call(t, mended, "check", "-"); status != fits {
			t.Errorf("with sheets of %s: %d, %s", sheet, status, errs)
		}
	}
}

// undermounted are boxes of a saw whose fronts get holes, and whose backs get notches, which
// take the lower end of their rabbets away: on the blank, both have the same cuts. The slides
// take an inside of 562 - 43 to 562 - 42, aimed at is its middle: 519.5, which with two tongues of
// 12.025 / 2 is a front of 531.525, less what random boxes are wider in the mean.
const undermounted = `units: mm
stock:
  birch: {thickness: [12.0, 12.05], sheet: 2440 x 1220, grain: length}
  hard: {thickness: 5.85, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.05}
openings:
  base: {width: 562, height: 400, depth: 520, cabinet: frameless, fronts: inset}
drawers:
  - name: base
    opening: base
    slide: undermount
    rows: 2
    sides: birch
    bottom: hard
    joinery: {bottom-height: 13}
    drawer-front: {stock: birch}
`

// TestBlanks: front and back that differ only in holes and notches are one blank in the cut
// list; those whose grooves differ are not, nor are parts that a router cuts out. The table
// of parts keeps a row for each.
func TestBlanks(t *testing.T) {
	_, text, _ := call(t, undermounted, "parts", "-", "--all")
	if want := "4 blanks, 531.52 x 175 mm, with the same cuts: 2 (base-1-box-front, base-2-box-front) get 4 holes each; 2 (base-1-back, base-2-back) get 2 holes and 2 notches each\n"; !strings.Contains(text, want) {
		t.Errorf("undermount: no %q in\n%s", want, text)
	}
	if _, csv, _ := call(t, undermounted, "parts", "-", "--csv"); !strings.Contains(csv,
		"\r\nbase-1-box-front,") || !strings.Contains(csv, "\r\nbase-1-back,") {
		t.Errorf("parts.csv lost a row: %s", csv)
	}
	_, text, _ = call(t, "", "parts", "../../samples/workshop-bench.yaml", "--all")
	if !strings.Contains(text, "4 blanks, 395.7 x 137.85 mm, with the same cuts: 2 (tote-box-front) get 1 opening each; 2 (tote-back) stay as they are") || strings.Contains(text, "(left-1-box-front)") {
		t.Errorf("workshop bench:\n%s", text)
	}
	if _, text, _ = call(t, "", "parts", "../../samples/kitchen-bank.yaml", "--all"); strings.Contains(text, "blanks,") {
		t.Errorf("a router's parts have blanks:\n%s", text)
	}
}

// TestUncheckedLoad: a load whose bottom cannot be checked is said once for each stock, at
// the load, with what to write, and that ends it.
func TestUncheckedLoad(t *testing.T) {
	job := strings.NewReplacer("620 x 620", "620 x 620, load: 12 kg", "620 x 140 x 620", "620 x 140 x 620, load: 12 kg", "620 x 240 x 620", "620 x 240 x 620, load: 12 kg").Replace(fmt.Sprintf(twoSheets, ""))
	const want = "the bottom was not checked under its load: the stiffness of hard is not known"
	status, _, errs := call(t, job, "check", "-")
	if status != 0 || strings.Count(errs, want) != 1 || !strings.Contains(errs, "(standard input):8:") ||
		!strings.Contains(errs, "into the stock hard") {
		t.Errorf("check: %d, %s", status, errs)
	}
	// The others count warnings and notes, and say where they are listed.
	for _, command := range []string{"parts", "setup", "fit"} {
		status, out, errs := call(t, job, command, "-")
		if status != 0 || errs != "" || !strings.Contains(out, "2 warnings.\nNext: drawerwright check -") {
			t.Errorf("%s: %d, %s%s", command, status, out, errs)
		}
	}
	if _, out, _ := call(t, job, "parts", "-", "--all"); strings.Count(out, want) != 1 {
		t.Errorf("parts says it %d times", strings.Count(out, want))
	}
	for _, mended := range []string{"material: hardboard", "stiffness: 3100"} {
		if _, _, errs := call(t, strings.Replace(job, "thickness: 6,", "thickness: 6, "+mended+",", 1), "check", "-"); strings.Contains(errs, want) {
			t.Errorf("with %s: %s", mended, errs)
		}
	}
}
