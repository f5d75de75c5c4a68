package files_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"strings"
	"testing"

	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/dxf/dxfread"
)

const turnedJob = `units: UNITS
stock:
  birch: {thickness: [12.2 mm, 12.1 mm], sheet: 1525 mm x 1525 mm KEEP}
  thin: {thickness: 6 mm}
cutter: {kind: router, bits: {six: {diameter: 6 mm, reach: 30 mm, tool: 1, flutes: 2, speed: 18000 rpm, feed: 4 m/min, plunge: 1 m/min}}}
router: {tabs: {}, into-spoilboard: 0.5 mm, depth-from: FROM}
dxf: {elevation: yes, units: mm}
drawers:
  - {name: box, outside: 400 mm x 120 mm x 400 mm, sides: birch, bottom: thin}
`

func turned(units, from, keep string) string {
	return strings.NewReplacer("UNITS", units, "FROM", from, "KEEP", keep).Replace(turnedJob)
}

// legend are the rows of layers.csv by the names of their columns.
func legend(t *testing.T, data []byte) (list []map[string]string) {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		one := map[string]string{}
		for i, cell := range row {
			one[rows[0][i]] = cell
		}
		list = append(list, one)
	}
	return list
}

// TestOneDepthIsSet: what is to be set for a layer is the height of its lines, on run cards,
// in parts.txt and in layers.csv: below the face, or over the spoilboard where the
// machine's zero is there. Cuts right through go on by 0.5 below the thickest board.
func TestOneDepthIsSet(t *testing.T) {
	for from, c := range map[string]struct {
		sign              float64
		profile, slot     float64 // over tabs of 1.5, and through
		inTable, inLegend string
	}{
		// The mean is 12.15: 12.15 - 1.5 deep, and 12.2 + 0.5.
		"top":        {-1, 10.65, 12.7, "12.70, through", "12.70 deep, through"},
		"spoilboard": {1, 1.5, -0.5, "-0.50, through", "0.50 below the spoilboard's top, through"},
	} {
		made, r := written(t, turned("mm", from, ""))
		text := string(made["parts.txt"])
		rows, at := legend(t, made["router/layers.csv"]), len(r.Layers)
		for _, l := range r.Layers {
			if *l.Elevation != record.Length(c.sign)*l.Set || l.From != from {
				t.Errorf("%s: %s of %s is set to %g from the %s, and its lines lie at %g", from, l.Layer, l.File,
					l.Set, l.From, *l.Elevation)
			}
		}
		set := map[string]float64{}
		one := r.Sheets[0].Sheets[0]
		steps := 0
		for _, f := range one.Run.Faces {
			for _, s := range f.Steps {
				l, row := one.Layers[steps], rows[at+steps]
				if l.Layer != s.Layer || l.ToSet != s.ToSet || *l.Elevation != record.Length(c.sign)*s.Set {
					t.Errorf("%s: step %+v, legend %+v at %g", from, s, l, *l.Elevation)
				}
				if row["layer"] != s.Layer || row["to_set"] != fmt.Sprintf("%.2f", s.Set) || row["set_from"] != from {
					t.Errorf("%s: step %+v, layers.csv %v", from, s, row)
				}
				set[s.Operation] = s.Set.MM()
				steps++
			}
		}
		if steps < 5 || math.Abs(set["profile"]-c.profile) > 1e-6 || math.Abs(set["slot"]-c.slot) > 1e-6 {
			t.Errorf("%s: %d steps set %v", from, steps, set)
		}
		for _, want := range []string{c.inTable, c.inLegend} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: parts.txt does not say %q", from, want)
			}
		}
	}
}

// TestLayersNotCutAreNamed: outlines of parts that are cut out from the other face stand in a
// drawing, closed like cuts; whoever cut them would free all parts on the first face.
func TestLayersNotCutAreNamed(t *testing.T) {
	made, _ := written(t, turned("mm", "top", ""))
	if !strings.Contains(string(made["router/sheets/birch-1.outside.dxf"]), "\nOUTLINE\n") {
		t.Fatal("the sheet's first drawing has no outlines of parts")
	}
	named := false
	for _, row := range legend(t, made["router/layers.csv"]) {
		named = named || row["layer"] == "OUTLINE" && row["operation"] == "not cut"
	}
	if !named {
		t.Error("layers.csv does not say that OUTLINE is not cut")
	}
	parts := jobtest.Unfolded(made["parts.txt"])
	_, cards, _ := strings.Cut(parts, "\nrun cards\n")
	for name, text := range map[string]string{"parts.txt": parts, "run cards": cards} {
		for _, want := range []string{"LABEL, BLANK, OUTLINE, SCALE, SHEET and TABS are not cut",
			"CUTOUT and SLOT are cleared inside their lines, all of the area"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not said", name, want)
			}
		}
	}
}

// TestLegendIsOfTheDrawings: lengths in layers.csv are in the unit of the drawings that it is
// for, whose layers' names tell the same depth.
func TestLegendIsOfTheDrawings(t *testing.T) {
	made, _ := written(t, turned("in", "top", ""))
	dados := 0
	for _, row := range legend(t, made["router/layers.csv"]) {
		if row["units"] != "mm" {
			t.Fatalf("%v is not in mm", row)
		}
		if row["operation"] == "dado" {
			dados++
			depth := row["depth_in_board"]
			if want := "DADO_INSIDE_" + strings.Replace(depth, ".", "-", 1) + "MM"; row["layer"] != want ||
				row["diameter"] != "6.00" {
				t.Errorf("%s has the depth %s and a bit of %s", row["layer"], depth, row["diameter"])
			}
		}
	}
	if dados == 0 {
		t.Error("no dado in the legend")
	}
}

// TestPlungeIsOnTheCard: a hole as wide as its bit is plunged, and has no other feed.
func TestPlungeIsOnTheCard(t *testing.T) {
	made, r := written(t, turned("mm", "top", ""))
	for _, f := range r.Sheets[0].Sheets[0].Run.Faces {
		for _, s := range f.Steps {
			switch plunged := s.Operation == "register"; {
			case s.Plunge != 1000:
				t.Errorf("%s: plunge %g", s.Layer, s.Plunge)
			case plunged != (s.Feed == 0), plunged != (s.ChipLoad == 0):
				t.Errorf("%s: feed %g, chip load %g", s.Layer, s.Feed, s.ChipLoad)
			}
		}
	}
	_, cards, _ := strings.Cut(string(made["parts.txt"]), "\nrun cards\n")
	for _, line := range strings.Split(cards, "\n") {
		if cells := strings.Fields(line); len(cells) > 2 && strings.HasPrefix(cells[1], "REGISTER_") {
			if got := strings.Join(cells[len(cells)-5:], " "); !strings.HasPrefix(got, "18000 - 1000 - ") {
				t.Errorf("the card has %q for the holes", got)
			}
		}
	}
	if !strings.Contains(cards, "feed mm/min  plunge mm/min") {
		t.Error("the card has no column for the plunge")
	}
}

// TestKeepOutIsShown: clamps stay where they are on the machine, so that both drawings of a
// sheet have them at the same place; its picture, which shows one face, has both ends.
func TestKeepOutIsShown(t *testing.T) {
	made, _ := written(t, turned("mm", "top", ", keep-out: [{at: 10 mm x 700 mm, size: 30 mm x 80 mm}]"))
	for _, face := range []string{"outside", "inside"} {
		f, err := dxfread.Parse(made["router/sheets/birch-1."+face+".dxf"])
		if err != nil {
			t.Fatal(err)
		}
		areas := 0
		for _, e := range f.Entities {
			if e.Layer == "BLANK" && e.Closed && len(e.Vertices) == 4 {
				areas++
				if a, b := e.Vertices[0], e.Vertices[2]; a.X != 10 || a.Y != 700 || b.X != 40 || b.Y != 780 {
					t.Errorf("%s: an area from %+v to %+v", face, a, b)
				}
			}
		}
		if areas != 1 {
			t.Errorf("%s: %d areas to keep out of", face, areas)
		}
	}
	if n := strings.Count(string(made["sheets/birch-1.svg"]), ">keep out<"); n != 2 {
		t.Errorf("the picture has %d areas to keep out of", n)
	}
	_, cards, _ := strings.Cut(string(made["parts.txt"]), "\nrun cards\n")
	const want = "Keep out, for clamps and stops: 30.00 x 80.00 at x 10.00, y 700.00 from zero"
	if !strings.Contains(cards, want) {
		t.Errorf("the card does not say %q", want)
	}
}

// TestPictureTellsItsFace: pieces are labeled from the picture, which shows inside faces up
// whichever face the machine cuts first.
func TestPictureTellsItsFace(t *testing.T) {
	const left = "the left of the picture is at the right now"
	// A bottom level with the edges has its rabbets on the outside face.
	flush := strings.NewReplacer("thin: {thickness: 6 mm}", "thick: {thickness: 12.15 mm, sheet: 1525 mm x 1525 mm}",
		"bottom: thin", "bottom: thick, joinery: {bottom-fit: flush}", "tabs: {}", "tabs: {}, onion-skin: 0.3 mm").
		Replace(turned("mm", "top", ""))
	for _, c := range []struct {
		name, job, seen string
		first           bool // the card says how the sheet lies at first
	}{
		{"outside faces", flush, "Inside faces are up here, and outside faces on the machine:", true},
		{"both faces", turned("mm", "top", ""), "Inside faces are up here, as on the machine once the sheet is " +
			"turned over.", true},
		{"inside faces", strings.Replace(turned("mm", "top", ""), "units: mm\n",
			"units: mm\njoinery: {faces: one}\n", 1), "Inside faces are up here, as on the machine.", false},
	} {
		made, _ := written(t, c.job)
		stock := "birch"
		if c.name == "outside faces" {
			stock = "thick"
		}
		if picture := string(made["sheets/"+stock+"-1.svg"]); !strings.Contains(picture, ">"+c.seen+"<") {
			t.Errorf("%s: the picture does not say %q", c.name, c.seen)
		}
		_, card, _ := strings.Cut(string(made["parts.txt"]), "run card, "+stock)
		if got := strings.Contains(card, left); got != c.first {
			t.Errorf("%s: that the picture is the other way round is said: %v", c.name, got)
		}
	}
}
