package main

import (
	"bytes"
	"compress/zlib"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"drawerwright/cmd/internal/job"
	"drawerwright/export/dxf/dxftest"
)

// wildTitles are what a title can be at most: parts of all that ends a text in some format.
var wildTitles = []string{`</script><b id=x7q9>-->]]>&lt;<x7q9/>`, `=x7q9() ) /x7q9 (\\) <</x7q9 1>> endstream`, `"' onload="x7q9()" %s%n {{.x7q9}} ${x7q9}`, "../../CON\U0001f600"}

// TestNamesInFiles: whatever a job, a list and a shelf name, what is written of it has sound files with names for every
// system, and no name is more than text in any of them.
func TestNamesInFiles(t *testing.T) {
	var plain []string // that everything can have, one for each name of a file
	taken := map[string]bool{}
	for _, what := range slices.Sorted(maps.Keys(names)) {
		if c := names[what]; c.taken == everything && !taken[job.FileName(c.name)] {
			taken[job.FileName(c.name)] = true
			plain = append(plain, c.name)
		}
	}
	each := func(format string) (text string) {
		for _, name := range plain {
			text += fmt.Sprintf("  "+format+"\n", name)
		}
		return text
	}
	t.Run("all names", func(t *testing.T) {
		builtOf(t, "job: CON\nunits: mm\ncad: step\n"+
			"cutter: {kind: router, bits: {\"birch 1/2\\\"\": {diameter: 6}, \"O'Neil\": {diameter: 3}}}\n"+
			"stock:\n"+each("%q: {thickness: [12.1, 12.1], sheet: 2440 x 1220}")+
			"openings:\n"+each("%q: {width: 400, height: 300, depth: 360, cabinet: frameless, fronts: none}")+
			"slides:\n"+each("%q: {kind: side-mount, clearance: 12.7}")+
			"drawers:\n"+each("- {name: %q, opening: %[1]q, slide: %[1]q, rows: 1, sides: %[1]q, bottom: %[1]q}"))
	})
	for _, title := range wildTitles {
		t.Run(title, func(t *testing.T) {
			builtOf(t, "job: '"+strings.ReplaceAll(title, "'", "''")+"'\nunits: mm\ncad: step\n"+
				"stock: {a/b: {thickness: [12.1, 12.1], sheet: 2440 x 1220}}\ncutter: {kind: router, diameter: 6}\n"+
				"drawers: [{name: d, outside: 400 x 100 x 300, sides: a/b, bottom: a/b}]\n")
		})
	}
	t.Run("a list", func(t *testing.T) {
		var list bytes.Buffer
		w := csv.NewWriter(&list)
		w.Write([]string{"kind", "name", "length", "width", "count"})
		for i, what := range slices.Sorted(maps.Keys(names)) {
			if name := names[what].name; names[what].taken != "" && len(name) < 100 {
				w.Write([]string{"part", name, "100", "100", "1"})
				if i%10 == 0 {
					w.Write([]string{"sheet", name, "1500", "1200", ""})
				}
			}
		}
		w.Flush()
		dir := filepath.Join(t.TempDir(), "out")
		if code, _, errs := call(t, list.String(), "layout", "-", "-o", dir); code != 0 {
			t.Fatal(errs)
		}
		soundFolder(t, dir)
	})
}

// builtOf builds a job, and the sheets of it from a shelf of wild offcuts, and looks at all that is written.
func builtOf(t *testing.T, text string) {
	t.Helper()
	dir := t.TempDir()
	file, out, shelf := filepath.Join(dir, "job.yaml"), filepath.Join(dir, "out"), filepath.Join(dir, "shelf.csv")
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	if code, _, errs := call(t, "", "build", file, "-o", out, "--exploded"); code != 0 {
		t.Fatalf("%s\n%s", errs, text)
	}
	if code, _, errs := call(t, "", "sheets", file, "--shelf", shelf, "--put-back"); code != 0 {
		t.Fatal(errs)
	}
	if code, _, errs := call(t, "", "sheets", file, "--shelf", shelf); code != 0 { // it can be read again
		t.Fatal(errs)
	}
	if err := os.Rename(shelf, filepath.Join(out, "shelf.csv")); err != nil {
		t.Fatal(err)
	}
	soundFolder(t, out)
}

// fileName is what every system takes as the name of a file.
var fileName = regexp.MustCompile(`^[a-z0-9]([a-z0-9._+-]*[a-z0-9])?$`)

// soundFolder looks at every file of a folder.
func soundFolder(t *testing.T, dir string) {
	t.Helper()
	looked := map[string]int{}
	for name, text := range tree(t, dir) {
		if name == ".drawerwright-manifest" {
			continue
		}
		for _, part := range strings.Split(name, "/") {
			if base, _, _ := strings.Cut(part, "."); !fileName.MatchString(part) || job.IsDevice(base) {
				t.Errorf("%s is no name for every system", name)
			}
		}
		look, known := soundFiles[path.Ext(name)]
		if !known {
			t.Errorf("nothing looks at %s", name)
			continue
		}
		if at := strings.IndexFunc(text, turns); at >= 0 && path.Ext(name) != ".stl" && utf8.ValidString(text) {
			t.Errorf("%s: the direction of writing is turned: %.40q", name, text[at:])
		}
		if err := look([]byte(text)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		looked[path.Ext(name)]++
	}
	t.Log(looked)
}

// turns reports whether a letter turns the direction of what is written behind it.
func turns(c rune) bool { return unicode.Is(unicode.Bidi_Control, c) }

// soundFiles look at a file by its ending: whether it is whole, and whether a text in it is more than text.
var soundFiles = map[string]func(data []byte) error{
	".dxf":  dxftest.Raised,
	".svg":  soundSVG,
	".html": soundHTML,
	".csv":  soundCSV,
	".pdf":  soundPDF,
	".json": func(data []byte) error { return json.Unmarshal(data, new(any)) },
	".glb":  soundGLB,
	".txt":  soundText,
	".stl":  begins(""), ".png": begins("\x89PNG"), ".step": begins("ISO-10303-21;"),
}

func begins(with string) func(data []byte) error {
	return func(data []byte) error {
		if !bytes.HasPrefix(data, []byte(with)) {
			return fmt.Errorf("it begins with %.20q", data)
		}
		return nil
	}
}

// soundSVG: only what draws, and no way to run anything.
func soundSVG(data []byte) error {
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		tag, err := d.Token()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		e, begins := tag.(xml.StartElement)
		if !begins {
			continue
		}
		if !slices.Contains([]string{"svg", "title", "desc", "g", "path", "text", "style", "rect", "line", "circle", "polyline", "polygon"}, e.Name.Local) {
			return fmt.Errorf("there is a %s", e.Name.Local)
		}
		for _, a := range e.Attr {
			if strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "href" {
				return fmt.Errorf("a %s has %s=%q", e.Name.Local, a.Name.Local, a.Value)
			}
		}
	}
}

// soundHTML: no name has become a tag or ended the script that its data are in.
func soundHTML(data []byte) error {
	if found := regexp.MustCompile(`(?i)<(b id|/?x7q9|script>x7q9|!--)`).Find(data); found != nil {
		return fmt.Errorf("there is %q", found)
	}
	if open, shut := bytes.Count(data, []byte("<script")), bytes.Count(data, []byte("</script")); open != shut {
		return fmt.Errorf("%d scripts begin and %d end", open, shut)
	}
	tags := regexp.MustCompile(`(?s)(<script[^>]*>).*?</script>`).ReplaceAll(data, []byte("$1")) // without their data
	if found := regexp.MustCompile(`<[^>]*x7q9\(`).Find(tags); found != nil && bytes.Contains(found, []byte(`onload="`)) {
		return fmt.Errorf("there is %q", found)
	}
	return nil
}

// notFormula is what a spreadsheet takes for a number or leaves as it is, whatever it begins with.
var notFormula = regexp.MustCompile(`^-$|^-?\d+(\.\d+)?$`)

// soundCSV: rows of as many cells, none of them a formula.
func soundCSV(data []byte) error {
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	for _, cell := range slices.Concat(rows...) {
		if strings.ContainsAny(cell[:min(1, len(cell))], "=+-@\t\r") && !notFormula.MatchString(cell) {
			err = errors.Join(err, fmt.Errorf("a formula: %q", cell))
		}
	}
	return err
}

// soundGLB: its JSON is whole.
func soundGLB(data []byte) error {
	if len(data) < 20 || string(data[:4]) != "glTF" {
		return errors.New("no glTF")
	}
	size := int(data[12]) | int(data[13])<<8 | int(data[14])<<16 | int(data[15])<<24
	return json.Unmarshal(data[20:20+size], new(any))
}

// soundText: letters that print, and no turn of direction.
func soundText(data []byte) error {
	if plain(string(data)) != string(data) {
		return errors.New("it has letters that do not print")
	}
	return nil
}

// soundPDF: outside the strings of its objects no name of the job is to be seen.
func soundPDF(data []byte) error {
	text := regexp.MustCompile(`(?s)stream\r?\n(.*?)\r?\nendstream`).ReplaceAllFunc(data, func(b []byte) []byte {
		b = b[bytes.IndexByte(b, '\n')+1:]
		if r, err := zlib.NewReader(bytes.NewReader(b)); err == nil {
			b, _ = io.ReadAll(r) // what follows its end is not read
			return b
		}
		return nil // metadata, which are XML
	})
	var bare bytes.Buffer
	for depth, i := 0, 0; i < len(text); i++ {
		switch {
		case text[i] == '\\' && depth > 0:
			i++
		case text[i] == '(':
			depth++
		case text[i] == ')':
			depth--
		case depth == 0:
			bare.WriteByte(text[i])
		}
	}
	if found := regexp.MustCompile("x7q9|/OpenAction|/JavaScript").Find(bare.Bytes()); found != nil {
		return fmt.Errorf("there is a %s", found)
	}
	for _, xmp := range regexp.MustCompile(`(?s)<\?xpacket.*?</x:xmpmeta>`).FindAll(data, -1) {
		if err := xml.Unmarshal(xmp[bytes.Index(xmp, []byte("<x:")):], new(struct{})); err != nil {
			return err
		}
	}
	return nil
}
