package main

import (
	"encoding/json"
	"strings"
	"testing"

	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/readback"
	"drawerwright/cmd/internal/record"
)

// TestVerdictFirst: of boxes that would be right, and that no machine can cut or that do not serve, every output
// begins with that, and with what is needed and what there is; none says that they fit, or that one setting serves
// all.
func TestVerdictFirst(t *testing.T) {
	const open = "openings: {hole: {width: 500, height: 150, depth: 530, cabinet: frameless, fronts: none}}\n"
	for name, c := range map[string]struct {
		more, cutter, size, word, says string
		cut                            []string // what is not cut at the setting
	}{
		"height": {more: "machines: {saw: {max-height: 3}}\n", word: record.CannotBeCut,
			says: "this table saw cannot cut the dados, grooves and rabbets of one: the cutter would stand 6.01 mm " +
				"over the table, 3 mm is the most; make them on a router table"},
		"height by a little": {more: "machines: {saw: {max-height: 5.9}}\n", word: record.CannotBeCut,
			says: "5.9 mm is the most; make them with all cuts at a cutter height of 5.9 mm " +
				"(cutter-height: 5.9 mm); on a"},
		"narrow": {size: "outside: 400 x 34 x 450", word: record.CannotBeCut,
			says: "cannot cut the grooves of one: the part is 34 mm wide; nothing narrower than 40 mm is pushed along " +
				"the fence; make them in a board that is long and wide enough"},
		"width": {more: "machines: {saw: {max-width: 6}}\n", word: record.CannotBeCut,
			says: "the cutter is 6.3 mm wide, the machine carries 6 mm at the most"},
		"crosscut": {more: "machines: {saw: {crosscut-capacity: 100}}\n", word: record.CannotBeCut,
			says: "cannot cut the dados of one: the cut is 120 mm long, the sled takes 100 mm"},
		"sled": {more: "machines: {saw: {max-length-on-sled: 400}}\n", word: record.CannotBeCut,
			says: "cannot cut the dados of one: the part is 450 mm long, the sled takes parts up to 400 mm"},
		"along the fence": {more: "machines: {saw: {min-length-along-fence: 420}}\n", word: record.CannotBeCut,
			says: "cannot cut the grooves of one: the part is 387.98 mm long; nothing shorter than 420 mm is pushed " +
				"along the fence"},
		"router table": {more: "machines: {router-table: {max-height: 3}}\n",
			cutter: "{kind: router-table, width: 6.3}", word: record.CannotBeCut,
			says: "this router table cannot cut the dados, grooves and rabbets of one: the cutter would stand " +
				"6.01 mm over the table, 3 mm is the most"},
		"reach": {cutter: "{kind: router-table, width: 6.3, reach: 4}", word: record.CannotBeCut,
			says: "the cut is 6.01 mm deep, the bit reaches 4 mm"},
		"two limits": {more: "machines: {saw: {crosscut-capacity: 100, min-length-along-fence: 420}}\n",
			word: record.CannotBeCut, says: "Other cuts are beyond 1 other limit: see the warnings."},
		"cannot be cut, and loose": {more: "machines: {saw: {max-height: 3}}\n", cutter: "{kind: saw, width: 6.7}",
			word: record.CannotBeCut, says: "Does not fit: do not cut from this yet; "},
		"sag": {size: "outside: 400 x 120 x 450, load: 90 kg", word: record.Overloaded,
			says: "one: under 90.0 kg, spread evenly, the bottom sags by "},
		"slide": {more: open, size: "opening: hole, slide: side-mount, load: 60 kg", word: record.Overloaded,
			says: " that such slides are rated for; 80 % is usual at most; take a stronger slide."},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			if c.cutter == "" {
				c.cutter = "{kind: saw, width: 6.3}"
			}
			if c.size == "" {
				c.size = "outside: 400 x 120 x 450"
			}
			text := "units: mm\nstock: {a: {thickness: [12, 12.04], sheet: 2440 x 1220}, b: {thickness: [5.95, 6], " +
				"material: plywood, sheet: 2440 x 1220}}\n" +
				"cutter: " + c.cutter + "\n" + c.more +
				"drawers:\n  - {name: one, " + c.size + ", sides: a, bottom: b}\n"
			outputs := commanded(t, text)
			agreed(t, text, outputs, true) // the packet, the page and the page for a phone say what the report says
			var report struct{ Answer record.Answer }
			if err := json.Unmarshal([]byte(outputs[readback.ReportJSON]), &report); err != nil {
				t.Fatal(err)
			}
			a := report.Answer
			if a.Word != c.word || !strings.HasPrefix(a.Text, c.word+": ") || !strings.Contains(a.Text, c.says) ||
				a.Cut != (c.word == record.Overloaded) {
				t.Errorf("the report begins with %+v", a)
			}
			if first, _, _ := strings.Cut(jobtest.Unfolded([]byte(outputs[readback.PartsTxt])), "\n"); first != a.Text {
				t.Errorf("parts.txt begins with %q", first)
			}
			for _, command := range []string{"check", "parts", "setup", "fit", "sheets"} {
				code, said, errs := call(t, text, command, "-")
				if first, _, _ := strings.Cut(said, "\n"); code != exitDone || first != "! "+a.Text {
					t.Errorf("%s: exit %d, it begins with %q\n%s", command, code, first, errs)
				}
			}
			if c.word == record.CannotBeCut { // nor can a test cut at its setting
				for _, args := range [][]string{{"coupon", "-"}, {"adjust", "-", "slot=6.4"}} {
					if _, said, errs := call(t, text, args...); !strings.HasPrefix(said, "! "+c.word+": ") {
						t.Errorf("%s begins with %q %s", args[0], said, errs)
					}
				}
			}
			for out, said := range outputs {
				for _, wrong := range []string{"Fits: ", "everything? Yes", `"text": "Yes: `} {
					if strings.Contains(said, wrong) && (c.word == record.CannotBeCut || wrong == "Fits: ") {
						t.Errorf("%s says %q", out, wrong)
					}
				}
			}
			text = outputs[readback.PartsTxt]
			if listed := strings.Contains(text, "cannot be cut"); listed != (c.word == record.CannotBeCut) {
				t.Errorf("settings say that cuts cannot be made: %t\n%s", listed, text)
			}
		})
	}
}
