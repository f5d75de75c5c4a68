package packet

import (
	"fmt"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
)

const inOpening = `units: mm
stock:
  birch: {thickness: [12.21, 12.16], grain: length}
  board: {thickness: 5.9, grain: none}
cutter: {kind: saw, width: 6.35}
openings:
  hole: {width: 560, height: 500, depth: 545, cabinet: frameless, fronts: %s}
drawers:
  - {name: chest, opening: hole, slide: side-mount, rows: 3, sides: birch, bottom: board%s}
`

// A box with a drawer front has its steps, after the glue has set; a job with both kinds of
// boxes says which order is whose. One without has none.
func TestDrawerFrontsAreHung(t *testing.T) {
	said := func(d batch.Drawer) string {
		taken, err := take(nil, d)
		if err != nil {
			t.Fatal(err)
		}
		var all []string
		for _, step := range (maker{Book: &paper.Book{Size: paper.A4}}).steps(taken) {
			all = append(all, step.Words)
		}
		return strings.Join(all, "\n")
	}
	with := read(t, "", fmt.Appendf(nil, inOpening, "inset", ", drawer-front: {stock: birch, handles: knob}"))
	got := said(with.Drawers[0])
	for _, want := range []string{"When the glue has set", "Hang the drawer front last. With the box on its slides",
		"chapter Slides", "wider than the screws", "knob or handle"} {
		at := strings.Index(got, want)
		if at < 0 {
			t.Fatalf("no %q, or not in that order:\n%s", want, got)
		}
		got = got[at:]
	}
	bare := read(t, "", fmt.Appendf(nil, inOpening, "none", ""))
	if got := said(bare.Drawers[0]); strings.Contains(got, "drawer front") {
		t.Errorf("a box without a drawer front is told to hang one:\n%s", got)
	}
	apart := read(t, "", []byte(strings.Replace(strings.SplitAfter(string(many(1)), "drawers:\n")[0], "drawers:",
		"drawers:\n  - {name: one, outside: 300 x 100 x 300, sides: ply, bottom: board, drawer-front: {stock: ply, "+
			"width: 310, height: 110, overhang-left: 5, overhang-below: 5}}", 1)))
	if got := said(apart.Drawers[0]); !strings.Contains(got, "lying on its back") || strings.Contains(got, "knob") {
		t.Errorf("a drawer front without an opening, and without a handle:\n%s", got)
	}
	table := "the columns out left and out below in the packet's chapter Assembly"
	if !strings.Contains(said(apart.Drawers[0]), table) {
		t.Error("the table that says where the drawer front stands is not named")
	}
}

// TestDividersAreNamedAsTheyAre: one divider is one, and dividers cross only where one runs across the others.
func TestDividersAreNamedAsTheyAre(t *testing.T) {
	const glued = " A little glue into those dados first."
	for dividers, want := range map[string]string{
		"":                                     "",
		"{direction: across, at: 1, stock: b}": "Lower the divider into its dados from above." + glued,
		"{direction: across, at: 2, stock: b}": "Lower the dividers into their dados from above." + glued,
		"{direction: across, at: 2, stock: b, loose: yes}": "Lower the dividers into their dados from above.",
		"{direction: across, at: [90], stock: b}, {direction: across, at: [200], stock: b, loose: yes}": "Lower the " +
			"dividers into their dados from above. A little glue into the dados of those that are not loose first.",
		"{direction: across, at: 1, stock: b}, {direction: along, at: 1, stock: b}": "Lower the dividers into their dados " +
			"from above, those that cross each other as one." + glued,
	} {
		if dividers != "" {
			dividers = "dividers: [" + dividers + "]"
		}
		b := read(t, "", fmt.Appendf(nil, "units: mm\nstock: {b: {thickness: 6}, s: {thickness: 12.2}}\n"+
			"cutter: {kind: router, diameter: 3}\ndrawers:\n  - {name: d, "+
			"outside: 400 x 120 x 400, sides: s, bottom: b, "+
			"%s}\n", dividers))
		if got := lowerDividers(b.Drawers[0]); got != want {
			t.Errorf("%s: %q, want %q", dividers, got, want)
		}
	}
}

// The lowest slide's spacers stand on the opening's lower edge, each other on the slide below.
func TestSpacersSayOnWhatTheyStand(t *testing.T) {
	b := read(t, "", fmt.Appendf(nil, inOpening, "none", ""))
	r := record.MakeKept(b, sheets.Plan{}, nil)
	if said := present.SpacerText(r.Cabinets[0]); !strings.Contains(said, "those of chest-3 stand on the opening's "+
		"lower edge, the others on the slides below") || !strings.Contains(said, "face frame") {
		t.Error(said)
	}
	r.Cabinets[0].Rows = r.Cabinets[0].Rows[2:]
	if said := present.SpacerText(r.Cabinets[0]); strings.Contains(said, "the others") {
		t.Error(said)
	}
	r.Cabinets[0].Spacers = r.Cabinets[0].Spacers[1:]
	for i := range r.Cabinets[0].Spacers {
		r.Cabinets[0].Spacers[i].Drawers = []string{"chest-1"}
	}
	if said := present.SpacerText(r.Cabinets[0]); strings.Contains(said, "lower edge") {
		t.Error(said)
	}
}

// TestEqualBoxesAreOneKind: three rows of one height make one kind of box, which is one row of the first page with the
// names of all; a row of another height is another kind.
func TestEqualBoxesAreOneKind(t *testing.T) {
	for rows, want := range map[string]string{
		"rows: 3":                "3 boxes of 1 kind. |3 chest-1, chest-2, chest-3",
		"rows: [160, 160, free]": "3 boxes of 2 kinds. |2 chest-1, chest-2|1 chest-3",
	} {
		b := read(t, "", []byte(strings.Replace(fmt.Sprintf(inOpening, "none", ""), "rows: 3", rows, 1)))
		var pages []drawing.Page
		if err := lay(t.Context(), b, record.MakeKept(b, sheets.Plan{}, nil), sheets.Plan{}, func(p drawing.Page) {
			pages = append(pages, p)
		}); err != nil {
			t.Fatal(err)
		}
		var said []string
		boxes := ""
		for _, w := range pages[0].Texts {
			switch text := strings.TrimSpace(w.String); {
			case strings.Contains(text, " boxes of "):
				said = append(said, text[:strings.Index(text, "Lengths")])
			case len(text) == 1 && strings.Trim(text, "123") == "":
				boxes = text
			case strings.HasPrefix(text, "chest-") && !strings.Contains(text, "taken apart") &&
				strings.Count(text, "-") == 1+strings.Count(text, ","): // of drawers, not of parts
				said = append(said, boxes+" "+text)
			}
		}
		if got := strings.Join(said, "|"); got != want {
			t.Errorf("%s: %q, want %q", rows, got, want)
		}
	}
}
