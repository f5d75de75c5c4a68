package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/record"
)

// everyKind is a job of whose build each kind of file is one.
const everyKind = `units: mm
stock:
  birch: {thickness: [12.16, 12.24], sheet: 1525 x 1525, grain: length}
  thin ply: {thickness: 5.9, sheet: 1525 x 1525}
  plate: {thickness: 3, sheet: 1220 x 610, kerf: 0.18}
cutter: {kind: saw, width: 6.35}
templates: {stock: plate, bed: 600 x 400}
cad: step
openings: {hole: {width: 506, height: 200, depth: 530, cabinet: frameless, fronts: none}}
drawers:
  - {name: one, opening: hole, slide: side-mount, sides: birch, bottom: thin ply}
  - {name: two, outside: 460 x 140 x 500, sides: birch, bottom: thin ply, cutter: {kind: router, diameter: 6}}
`

// kindsBuilt moves the test into an empty folder, with such a build in out, and gives the names of its files.
func kindsBuilt(t *testing.T) (names []string) {
	t.Helper()
	inTemp(t)
	if code, out, errs := call(t, everyKind, "build", "-", "-o", "out", "--png", "--exploded"); code != exitDone {
		t.Fatal(out, errs)
	}
	return filesIn(t, "out")
}

// filesIn are the files of a folder but for the list of them.
func filesIn(t *testing.T, dir string) (names []string) {
	t.Helper()
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && name != outdir.ManifestName {
			names = append(names, name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return names
}

// differs are the faults of a folder that is no longer as it was built.
func differs(t *testing.T, dir string) string {
	t.Helper()
	c, err := asBuilt(dir)
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, f := range c.Faults {
		said = append(said, f.Code+" "+f.File)
	}
	return strings.Join(said, ", ")
}

// TestEveryChangeIsNamed: whatever is appended to, put into, cut off or changed in a file of a build of any kind,
// without its size or with, that file is named; so are a file that is lost and one that was added.
func TestEveryChangeIsNamed(t *testing.T) {
	names := kindsBuilt(t)
	if said := differs(t, "out"); said != "" {
		t.Fatal(said)
	}
	kinds := make(map[string]bool)
	middle := func(data []byte, with string, over int) []byte {
		at := len(data) / 2
		return slices.Concat(data[:at], []byte(with), data[at+over:])
	}
	for _, name := range names {
		kinds[filepath.Ext(name)] = true
		path := filepath.Join("out", filepath.FromSlash(name))
		built, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for change, data := range map[string][]byte{
			"appended": slices.Concat(built, []byte("\n")), "put in": middle(built, " ", 0),
			"changed": middle(built, string(built[len(built)/2]^1), 1), "cut off": built[:len(built)-1],
		} {
			if err := os.WriteFile(path, data, 0o644); err != nil {
				t.Fatal(err)
			}
			if said := differs(t, "out"); said != record.FaultChanged+" "+name {
				t.Errorf("%s, %s: %q", name, change, said)
			}
		}
		if err := os.Remove(path); err != nil {
			t.Fatal(err)
		}
		if said := differs(t, "out"); said != record.FaultLost+" "+name {
			t.Errorf("%s, lost: %q", name, said)
		}
		beside := filepath.ToSlash(filepath.Join(filepath.Dir(name), "another"))
		for file, data := range map[string][]byte{name: built, beside: nil} {
			if err := os.WriteFile(filepath.Join("out", filepath.FromSlash(file)), data, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if said := differs(t, "out"); said != record.FaultAdded+" "+beside {
			t.Errorf("beside %s: %q", name, said)
		}
		if err := os.Remove(filepath.Join("out", filepath.FromSlash(beside))); err != nil {
			t.Fatal(err)
		}
	}
	for _, kind := range []string{".csv", ".dxf", ".glb", ".html", ".json", ".pdf", ".png", ".step", ".stl", ".svg", ".txt"} {
		if !kinds[kind] {
			t.Errorf("no %s among %q", kind, names)
		}
	}
}

// TestNotAsBuilt: an answer begins with what is no longer as it was built, and says all the same what becomes of the
// boxes as the files are now.
func TestNotAsBuilt(t *testing.T) {
	const side = "router/parts/one-side.inside.dxf"
	const goes = " As the files are now 1 drawer goes together as drawn; all others agree."
	for name, c := range map[string]struct {
		change func(t *testing.T)
		says   string
	}{
		"as built": {func(*testing.T) {}, "Proven: 1 drawer goes together as drawn; all other files agree, and are as they were built."},
		"looked at": {func(t *testing.T) {
			harm(t, "out/report.json", func(b []byte) []byte { return b })
			if err := os.WriteFile("out/Thumbs.db", nil, 0o644); err != nil {
				t.Fatal(err)
			}
		}, "Proven: "},
		"a note in a drawing": {func(t *testing.T) {
			harm(t, "out/"+side, func(b []byte) []byte { return append([]byte("999\nlooked at by the shop\n"), b...) })
		}, "! Not as built. Changed since it was built: " + side + "." + goes},
		"a file more": {func(t *testing.T) {
			if err := os.WriteFile("out/notes.txt", nil, 0o644); err != nil {
				t.Fatal(err)
			}
		}, "! Not as built. Not of the build: notes.txt." + goes},
		"cuts moved": {func(t *testing.T) {
			harm(t, "out/"+side, func(b []byte) []byte { return bytes.ReplaceAll(b, []byte("\n10\n500"), []byte("\n10\n503")) })
		}, "! Not proven: one: files at fault. Changed since it was built: " + side + "."},
		"no list": {func(t *testing.T) {
			if err := os.Remove("out/" + outdir.ManifestName); err != nil {
				t.Fatal(err)
			}
		}, "! Not as built. Nothing says what was built: see .drawerwright-manifest." + goes},
		"no such list": {func(t *testing.T) {
			harm(t, "out/"+outdir.ManifestName, func(b []byte) []byte { return b[:len(b)/2] })
		}, "! Not as built. Nothing says what was built: see .drawerwright-manifest." + goes},
	} {
		t.Run(name, func(t *testing.T) {
			oneBuilt(t)
			c.change(t)
			want := exitJob
			if strings.HasPrefix(c.says, "Proven: ") {
				want = exitDone
			}
			code, out, errs := call(t, "", "prove", "out")
			if first, _, _ := strings.Cut(out, "\n"); code != want || !strings.HasPrefix(first, c.says) {
				t.Errorf("exit %d: %s%s", code, out, errs)
			}
		})
	}
}

// TestShopSettingsAreCompared: each figure, step and count of a setting that is changed on the page for a phone is
// named by itself, so that a list of what was built that is written anew hides nothing.
func TestShopSettingsAreCompared(t *testing.T) {
	names := kindsBuilt(t)
	page, err := os.ReadFile("out/shop.html")
	if err != nil {
		t.Fatal(err)
	}
	prover, err := openProof("out")
	if err != nil {
		t.Fatal(err)
	}
	changed := 0
	figures := regexp.MustCompile(`class="(?:figure|who|is|right|passes|step|setting)">[^<]*?(\d)[^<]*<`)
	for _, at := range figures.FindAllSubmatchIndex(page, -1) {
		harmed := slices.Clone(page)
		digit := &harmed[at[2]]
		*digit = '0' + (*digit-'0'+1)%10
		shop := prover.Worker().Check(prover.Checks()-1, func(name string) ([]byte, error) {
			if name == "shop.html" {
				return harmed, nil
			}
			return os.ReadFile(filepath.Join("out", filepath.FromSlash(name)))
		})
		if shop.Name != "shop.html" || len(shop.Faults) == 0 {
			t.Errorf("%s with another digit: %+v", page[at[0]:at[1]], shop)
		}
		if changed++; changed == 1 {
			forged(t, names, "forged", harmed)
		}
	}
	if changed < 20 {
		t.Errorf("%d figures", changed)
	}
	if said := differs(t, "forged"); said != "" {
		t.Fatal(said)
	}
	code, out, _ := call(t, "", "prove", "forged")
	if code != exitJob || !strings.HasPrefix(out, "! Not proven: 1 file disagrees ") {
		t.Errorf("exit %d: %s", code, out)
	}
}

// forged copies a build with another page for a phone, and a list that knows it.
func forged(t *testing.T, names []string, dir string, page []byte) {
	t.Helper()
	stage, err := outdir.Create(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		data, err := os.ReadFile(filepath.Join("out", filepath.FromSlash(name)))
		if err != nil {
			t.Fatal(err)
		}
		if name == "shop.html" {
			data = page
		}
		if err := stage.WriteFile(name, data); err != nil {
			t.Fatal(err)
		}
	}
	if err := stage.Commit(); err != nil {
		t.Fatal(err)
	}
}
