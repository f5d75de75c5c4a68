package outside

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the pages that the golden folder should hold")

// run gives what a program prints.
func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = &out, &errs
	if err := c.Run(); err != nil {
		t.Fatalf("%s %q: %v\n%s", name, args, err, errs.String())
	}
	if errs.Len() > 0 {
		t.Errorf("%s %q complains: %s", name, args, errs.String())
	}
	return out.String()
}

// TestPacketHoldsEverything: poppler finds every part and drawer with its numbers as
// text in the packet of every sample, a title, and letters of its own alone.
func TestPacketHoldsEverything(t *testing.T) {
	for _, file := range sampleFiles(t) {
		dir, r := build(t, textOf(t, file))
		packet := filepath.Join(dir, "packet.pdf")
		text := strings.Join(strings.Fields(run(t, "pdftotext", "-layout", packet, "-")), " ")
		says := func(what string) {
			t.Helper()
			if !strings.Contains(text, what) {
				t.Errorf("%s: %q is nowhere in the packet", filepath.Base(file), what)
			}
		}
		for _, d := range r.Drawers {
			says(d.Name)
		}
		for _, p := range r.Parts {
			says(p.Name)
			if r.Units == "in" {
				continue
			}
			for _, v := range []float64{p.Length, p.Width} {
				says(strings.TrimRight(strings.TrimRight(hundredths(v), "0"), "."))
			}
			for _, o := range p.Operations {
				if o.Depth < p.Thickness {
					says(hundredths(o.Depth))
				}
			}
		}
		info := run(t, "pdfinfo", packet)
		if !regexp.MustCompile(`(?m)^Title: +\S`).MatchString(info) {
			t.Errorf("%s: no title: %s", filepath.Base(file), info)
		}
		rows := strings.Split(strings.TrimSpace(run(t, "pdffonts", packet)), "\n")[2:]
		if len(rows) == 0 {
			t.Errorf("%s: no letters", filepath.Base(file))
		}
		for _, row := range rows {
			// name, type, encoding, emb, sub, uni, object
			if !regexp.MustCompile(`TrueType +Identity-H +yes .* yes +\d+ +\d+$`).MatchString(row) {
				t.Errorf("%s: letters not embedded, or without their characters: %s", filepath.Base(file), row)
			}
		}
	}
}

// TestPacketUnits: the packet of a job in inches has no metric unit, and that of one in
// millimeters none of inches; goods that are sold by millimeters, as bits, have inches after them. The single letters g and m also name cuts on the drawings, so
// glue alone is looked at for them.
func TestPacketUnits(t *testing.T) {
	metric := regexp.MustCompile(`\b(\d+ mm|mm2?|cm|m2|kg|N/mm2|grams?|meters?)\b|glue .* g$`)
	goods := regexp.MustCompile(`\b[\d.]+ mm \([\d.]+`)
	inches := regexp.MustCompile(`\b(sq ft|sq in|oz|lb|psi|inches)\b|\d in\b`)
	for _, file := range sampleFiles(t) {
		dir, r := build(t, textOf(t, file))
		other := inches
		if r.Units == "in" {
			other = metric
		}
		for _, line := range strings.Split(run(t, "pdftotext", "-layout", filepath.Join(dir, "packet.pdf"), "-"), "\n") {
			if found := other.FindString(goods.ReplaceAllString(strings.TrimSpace(line), "")); found != "" {
				t.Errorf("%s: %q in %q", filepath.Base(file), found, strings.TrimSpace(line))
			}
		}
	}
}

// TestPacketPages: the pages of a sample look as they were when last looked at, dot
// for dot but for the edges of lines. After a change that is meant: go test
// ./testdata/outside -run PacketPages -update, and look at them.
func TestPacketPages(t *testing.T) {
	dir, _ := build(t, textOf(t, "../../samples/bench-drawers.yaml"))
	made := t.TempDir()
	run(t, "pdftoppm", "-r", "40", "-gray", "-png", filepath.Join(dir, "packet.pdf"), filepath.Join(made, "page"))
	kept := "../golden/packet"
	pages, err := filepath.Glob(filepath.Join(made, "*.png"))
	if err != nil || len(pages) < 10 {
		t.Fatalf("%d pages, %v", len(pages), err)
	}
	if *update {
		if err := os.RemoveAll(kept); err != nil {
			t.Fatal(err)
		}
		if err := os.MkdirAll(kept, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	for _, p := range pages {
		name := filepath.Join(kept, filepath.Base(p))
		if *update {
			data, err := os.ReadFile(p)
			if err == nil {
				err = os.WriteFile(name, data, 0o644)
			}
			if err != nil {
				t.Fatal(err)
			}
			continue
		}
		if off := differing(gray(t, p), gray(t, name)); off > maxDiffering {
			t.Errorf("%s: %.2f %% of the page differs from what was looked at", filepath.Base(p), 100*off)
		}
	}
	if old, _ := filepath.Glob(filepath.Join(kept, "*.png")); len(old) != len(pages) {
		t.Errorf("%d pages, %d were looked at", len(pages), len(old))
	}
	// The comparison sees a page that is another one.
	if off := differing(gray(t, pages[0]), gray(t, pages[1])); off <= maxDiffering {
		t.Errorf("two pages differ by %.2f %% alone", 100*off)
	}
}

const (
	// maxDiffering is the part of a page's dots that may be another gray: versions of
	// poppler set the edges of letters differently, by fewer than one dot in 200.
	maxDiffering = 0.005
	// sameGray is by how much a dot may be lighter or darker, of 255.
	sameGray = 64
)

func gray(t *testing.T, name string) *image.Gray {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(name, err)
	}
	g := image.NewGray(img.Bounds())
	draw.Draw(g, g.Bounds(), img, img.Bounds().Min, draw.Src)
	return g
}

// hundredths prints a length as the packet does, halves away from zero.
func hundredths(mm float64) string {
	return fmt.Sprintf("%.2f", math.Round(math.Round(mm*1e6)/1e4)/100)
}

// differing is the part of the dots that are another gray in two pictures.
func differing(a, b *image.Gray) float64 {
	if a.Bounds() != b.Bounds() {
		return 1
	}
	n := 0
	for i, v := range a.Pix {
		if d := int(v) - int(b.Pix[i]); d > sameGray || d < -sameGray {
			n++
		}
	}
	return float64(n) / float64(len(a.Pix))
}

// TestLabelsAreRead: zbar reads every label's code from the page as a gray print of 200 dots an inch has it, the
// smallest too, and in it are the drawer and the part.
func TestLabelsAreRead(t *testing.T) {
	t.Parallel()
	small := "\npaper: {size: Letter, labels: 3x10}\n" // labels 1 in high
	for _, job := range [][2]string{{"bench-drawers", ""}, {"tool-chest", ""}, {"bench-drawers", small}} {
		file := "../../samples/" + job[0] + ".yaml"
		dir, r := build(t, textOf(t, file)+job[1])
		made := t.TempDir()
		packet := filepath.Join(dir, "packet.pdf")
		for n, text := range strings.Split(run(t, "pdftotext", packet, "-"), "\f") {
			if strings.Contains(text, "piece 1 of") {
				page := fmt.Sprint(n + 1)
				run(t, "pdftoppm", "-f", page, "-l", page, "-r", "200", "-gray", "-png", packet,
					filepath.Join(made, "page"))
			}
		}
		pages, err := filepath.Glob(filepath.Join(made, "*.png"))
		if err != nil {
			t.Fatal(err)
		}
		// zbarimg fails where a page has no code: only its output counts.
		out, _ := exec.Command("zbarimg", append([]string{"--quiet", "--raw", "-Sdisable", "-Sqrcode.enable"}, pages...)...).Output()
		read := string(out)
		if read == "" {
			t.Fatalf("%s: zbarimg read nothing", file)
		}
		for _, p := range r.Parts {
			code := fmt.Sprintf("drawer: %s\npart: %s\n", p.Drawer, p.Name)
			if n := strings.Count(read, code); n != p.Quantity {
				t.Errorf("%s: %d labels of %d hold %q", filepath.Base(file), n, p.Quantity, code)
			}
		}
	}
}

// TestTrueSize: in the PDF's, the SVG's and the DXF's own units the square of a template
// measures 100 mm, or 4 in, as programs from outside read it.
func TestTrueSize(t *testing.T) {
	dir, _ := build(t, textOf(t, "../../samples/hand-cut.yaml"))
	files, err := filepath.Glob(filepath.Join(dir, "templates", "*.as-drawn.svg"))
	if err != nil || len(files) == 0 {
		t.Fatal("no templates", err)
	}
	for _, f := range files {
		text := textOf(t, f)
		size := regexp.MustCompile(`width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"`).FindStringSubmatch(text)
		if size == nil || size[1] != size[3] || size[2] != size[4] {
			t.Errorf("%s is not in millimeters: %q", filepath.Base(f), size)
		}
		if !hasSquare(text, 100, 1e-3) {
			t.Errorf("%s: no square of 100 mm", filepath.Base(f))
		}
		if !strings.Contains(text, "measure this before you use it") {
			t.Errorf("%s does not say to measure it", filepath.Base(f))
		}
	}
	printed := filepath.Join(dir, "templates", "as-drawn.pdf")
	squares := 0
	for n, words := range strings.Split(run(t, "pdftotext", printed, "-"), "\f") {
		if strings.TrimSpace(words) == "" {
			continue
		}
		if !strings.Contains(words, "measure this before you use it") {
			t.Errorf("page %d does not say to measure it", n+1)
		}
		if !strings.Contains(words, "measure the square") {
			continue
		}
		squares++
		// poppler turns the page into SVG in points: 100 mm are 283.4646.
		page, of := filepath.Join(t.TempDir(), "page.svg"), fmt.Sprint(n+1)
		run(t, "pdftocairo", "-svg", "-f", of, "-l", of, printed, page)
		if !hasSquare(textOf(t, page), 100/25.4*72, 0.02) {
			t.Errorf("page %d: no square of 100 mm", n+1)
		}
	}
	prints := slices.DeleteFunc(files, func(f string) bool { return strings.HasPrefix(filepath.Base(f), "block-") })
	if squares != len(prints) {
		t.Errorf("%d squares for %d templates", squares, len(prints))
	}
	var drawings []string
	for _, job := range []string{textOf(t, "../../samples/hand-cut.yaml"), strings.Replace(textOf(t, "../../samples/hand-cut.yaml"), "units: mm", "units: mm\ndxf: {units: in, version: R12}", 1)} {
		dir, _ := build(t, job)
		list, err := filepath.Glob(filepath.Join(dir, "templates", "*.dxf"))
		if err != nil || len(list) == 0 {
			t.Fatal("no drawings", err)
		}
		drawings = append(drawings, list...)
	}
	for _, a := range lines[audited](t, "", python, append([]string{"dxf_audit.py"}, drawings...)...) {
		side := 100.0
		if a.Insunits != nil && *a.Insunits == 1 || a.Version == "AC1009" {
			side = 4
		}
		found := false
		for _, e := range a.Entities {
			if e.Layer != "SCALE" {
				continue
			}
			x0, y0, x1, y1 := boxOf(e)
			found = math.Abs(x1-x0-side) < 1e-9 && math.Abs(y1-y0-side) < 1e-9
		}
		if !found {
			t.Errorf("%s: no square of %g", filepath.Base(a.File), side)
		}
	}
}

// hasSquare looks in the paths of an SVG for a square of a side, in the path's unit.
func hasSquare(svg string, side, within float64) bool {
	for _, m := range regexp.MustCompile(` d="(M[^"]*)"`).FindAllStringSubmatch(svg, -1) {
		var points [][2]float64
		number := regexp.MustCompile(`-?[\d.]+`).FindAllString(m[1], -1)
		if len(number) < 8 || len(number) > 12 {
			continue
		}
		for i := 0; i+1 < len(number); i += 2 {
			x, _ := strconv.ParseFloat(number[i], 64)
			y, _ := strconv.ParseFloat(number[i+1], 64)
			points = append(points, [2]float64{x, y})
		}
		low, high := points[0], points[0]
		for _, p := range points {
			for k := range 2 {
				low[k], high[k] = min(low[k], p[k]), max(high[k], p[k])
			}
		}
		if math.Abs(high[0]-low[0]-side) < within && math.Abs(high[1]-low[1]-side) < within {
			return true
		}
	}
	return false
}
