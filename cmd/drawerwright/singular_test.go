package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// oneOfAll is a job of which there is one of almost everything: a drawer, a box, a bit with
// one flute, a sheet that a saw takes apart, an opening with one row.
const oneOfAll = `units: mm
job: One
stock:
  birch: {thickness: [11.9], sheet: 1525 x 1525, grain: length, price: 58}
  ply: {thickness: 6, sheet: 470 x 440, price: 33}
cutter: {kind: router, bits: {five: {diameter: 5, reach: 28, flutes: 1}}}
openings: {base: {width: 443, height: 160, depth: 480, cabinet: frameless, fronts: overlay}}
drawers:
  - name: box
    opening: base
    slide: side-mount
    rows: 1
    sides: birch
    bottom: ply
    drawer-front: {stock: birch, handles: knob}
`

// many are the things that outputs count, in the plural.
const many = "bits|blanks|boards|boxes|cuts|drawers|errors|faces|files|fingers|flutes|holes|kinds|layers|lengths|" +
	"lines|mistakes|notches|notes|offcuts|openings|pages|pairs|parts|passes|pieces|places|plates|readings|rows|" +
	"screws|sections|settings|sheets|slides|slots|stages|steps|tabs|times|warnings"

// TestOneIsSingular: nothing that is printed or written counts one of something in the plural.
func TestOneIsSingular(t *testing.T) {
	plural := regexp.MustCompile(`(?m)^.*(?:^|[^\w.,/-])1 +(?:` + many + `)\b.*$`)
	inTemp(t)
	if err := os.WriteFile("one.yaml", []byte(oneOfAll), 0o644); err != nil {
		t.Fatal(err)
	}
	const router, saw = "kind: router, bits: {five: {diameter: 5, reach: 28, flutes: 1}}", "kind: saw, width: 6.2"
	sawn := strings.Replace(oneOfAll, router, saw, 1)
	if err := os.WriteFile("sawn.yaml", []byte(sawn), 0o644); err != nil {
		t.Fatal(err)
	}
	small := strings.Replace(oneOfAll, "470 x 440", "460 x 440", 1)
	if err := os.WriteFile("small.yaml", []byte(small), 0o644); err != nil {
		t.Fatal(err)
	}
	said := make(map[string]string)
	for _, args := range []string{"check one.yaml", "build one.yaml -o one", "parts one.yaml --all", "setup one.yaml --all", "sheets one.yaml --all", "fit one.yaml --all",
		"check sawn.yaml", "build sawn.yaml -o sawn", "parts sawn.yaml --all", "setup sawn.yaml --all", "sheets sawn.yaml --all", "check small.yaml", "prove one --all", "prove sawn --all"} {
		_, out, errs := call(t, "", strings.Fields(args)...)
		said[args] = out + errs
	}
	for _, dir := range []string{"one", "sawn"} {
		err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			data, err := os.ReadFile(path)
			texts := []string{".txt", ".csv", ".dxf", ".svg"}
			if slices.Contains(texts, filepath.Ext(path)) || path == filepath.Join(dir, "shop.html") {
				said[path] = string(data)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(said) < 40 {
		t.Errorf("only %d outputs", len(said))
	}
	if want := "there is no sheet for 1 of its 1 piece:"; !strings.Contains(said["check small.yaml"], want) {
		t.Errorf("no %q in %s", want, said["check small.yaml"])
	}
	if !strings.Contains(said["parts one.yaml --all"], "bit five, 1 flute\n") {
		t.Errorf("no bit with one flute in %s", said["parts one.yaml --all"])
	}
	for name, text := range said {
		for _, line := range plural.FindAllString(text, 3) {
			t.Errorf("%s: %s", name, strings.TrimSpace(line))
		}
	}
}

// TestSettingNamesWhatItCuts: a setting is said to serve only drawers with parts that it cuts: a tote with butt corners
// has none.
func TestSettingNamesWhatItCuts(t *testing.T) {
	_, out, errs := call(t, "", "setup", "../../samples/workshop-bench.yaml", "--all")
	said := strings.Join(strings.Fields(out), " ")
	const want = "cutter height, 6.08 mm, serve left-1, left-2, left-3, left-4, right-1, right-2, right-3: box fronts"
	const ofBottom = "from the left end and from the front edge"
	for _, want := range []string{want, "60.00 and 525.85; 232.05 and 525.85", ofBottom} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in\n%s%s", want, out, errs)
		}
	}
}
