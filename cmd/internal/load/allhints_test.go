package load

import (
	"context"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
)

// hint is what is advised of a job, with the changes that it names as data.
type hint struct {
	at            about
	message, text string
	remedies      int
	edits         [][]job.Edit
	instead       []string
	leaves        []string // the path of an entry that is to be deleted
}

// hints are all that is advised of a job, from all that advises: the reader of the file,
// joinery, fit, router, machines, loads, templates, names, and sheets.
func hints(t *testing.T, text string) (all []hint, count map[about]int, failed bool) {
	t.Helper()
	count = make(map[about]int)
	add := func(h hint) {
		if h.text == "" {
			t.Fatalf("%v has no hint: %s", h.at, h.message)
		}
		count[h.at]++
		all = append(all, h)
	}
	j, problems := job.Read("job.yaml", strings.NewReader(text))
	for _, p := range problems {
		h := hint{at: about{-1, geom.Code(p.Code), ""}, message: p.Message, text: p.Hint, instead: p.Instead}
		if strings.HasPrefix(p.Hint, "delete it") {
			h.leaves = job.Outlined([]byte(text)).PathOf(p)
		}
		add(h)
	}
	if j == nil {
		return all, count, true
	}
	l := Loaded{Job: j, Problems: problems}
	var found []batch.Problem
	l.Batch, found = batch.Make(t.Context(), j)
	for _, p := range found {
		shown := p.Shown(j)
		at := about{p.Drawer, p.Code, p.Subject.Part}
		if p.OfJob {
			at.drawer = -1
		}
		h := hint{at: at, message: shown.Message, text: shown.Hint, remedies: len(p.Remedies)}
		for _, w := range p.Ways {
			h.edits = append(h.edits, w.Edits)
			if !strings.Contains(shown.Hint, w.Text) {
				t.Fatalf("%q does not say %q", shown.Hint, w.Text)
			}
			for _, e := range w.Edits {
				if !strings.Contains(shown.Hint, e.Value) {
					t.Fatalf("%q does not say %q", shown.Hint, e.Value)
				}
			}
		}
		failed = failed || p.IsError()
		add(h)
	}
	if failed = failed || problems.Failed(); failed {
		return all, count, failed
	}
	plan, err := sheets.Of(context.Background(), l.Batch, nil, sheets.Search{})
	short := plan.Short(context.Background(), sheets.Search{})
	if p, is := err.(*sheets.Problem); is {
		short = append(short, p)
	}
	for _, p := range short {
		h := hint{at: about{-1, p.Code, p.Stock}, message: p.Fact.In(j.Units), text: p.Ask.In(j.Units)}
		if len(p.Edits) > 0 {
			h.edits = [][]job.Edit{p.Edits}
		}
		add(h)
	}
	return all, count, false
}

// asks are the codes of which a hint may name no change of the job file as data, with the
// reason.
var asks = map[geom.Code]string{
	// How it is done: nothing is wrong.
	"back-setup": "says the fences of the passes", "rabbet-passes": "says the fences of the passes", "groove-setup": "says the fence",
	"bottom-setup": "one more setting, where slides ask for the groove's height", "rabbet-setup": "one more setting, where lengths cannot be made alike",
	"pull-by-hand": "the machine cannot: a jigsaw does", "groove-shows": "a saw cannot stop a groove, and plugs are for who sees it",
	// What only a person sees, measures, buys or wishes.
	"assumed":        "only a tape tells how far a frame stands in",
	"opening-spread": "a cabinet is as it is: shims, or another cabinet", "out-of-square": "a cabinet is as it is: shims", "diagonals": "one of the readings is wrong: only a tape tells which",
	"load-unchecked": "only who bought the board knows what it is", "weight-unknown": "only who bought the board knows what it is",
	"racking": "slides in step, or two drawers: the maker's wish", "pull": "where a pull goes, and what it meets, is the maker's wish", "proportions": "only who wrote the size knows whether it was meant",
	"letters": "a name is the maker's wish", "same-name": "a name is the maker's wish", "bottom-behind": "another board or slide is bought", "weight": "a stronger slide is bought, where the box alone is too heavy",
	"handle": "where a handle goes is the maker's wish", "drawer-front": "where a front goes is the maker's wish", "divider-room": "where dividers go is the maker's wish",
	"insert-cells": "how many cells is the maker's wish", "insert-clearance": "sorting", "insert-clearance-depth": "sorting",
	"notch": "the slide maker's sheet says it", "hook": "the slide maker's sheet says it", "side-thickness": "another slide, where no thinner sides make a box", "recess-under": "another slide, where no groove stands as high",
	"solid-grain": "only who sees the boards knows the grain", "moisture": "only who has the wood knows where it lies",
	"uneven-readings": "one of the readings is wrong: only a caliper tells which",
	"finger-width":    "the topmost fingers are planed off, where the height is the opening's", "fasteners": "pilot holes: a board is as thick as it is", "room": "a box in an opening has its size from there",
	"inside": "holes beyond a board: another place for what is screwed on", "web": "holes that break through: another place for what is screwed on", "ring": "a shape that crosses itself: sizes far from any drawer's", "thin-web": "thicker boards are bought",
	"bit-width": "of several bits, the shop chooses which it adds", "bit-reach": "of several bits, the shop chooses which it buys longer", "bit-radius": "of several bits, the shop chooses which it adds", "corner-relief": "a smaller bit: how small hangs on the corner",
	"outline-corner": "a chisel squares it", "register": "where several pockets are in the way, the shop tries places", "small-part": "held down otherwise, where an onion skin is no way", "tabs": "held down otherwise, where an onion skin is no way", "part-spacing": "a smaller bit, where sheets are too small for the gap",
	"setup-limit": "other means for these cuts alone, where no machine takes the whole drawer", "template": "what cuts templates, and how large, is the shop's", "no-sheet": "fronts that match: another batch is bought",
	"unknown-key": "who wrote an entry of another section moves it there",
	"no-effect":   "only the shop knows whether another job needs the entry",
	"sheet-held":  "what holds a part hangs on its neighbors", "sheet-pins": "where clamps and stops stand is the shop's", "layers": "patterns of names are the shop's", "file-name": "patterns of names are the shop's",
	// Boards and machine spread too far: boards are sorted, measured or planed, and the
	// accuracy is the shop's to reach. Tests of their own follow lots, accuracy and settings.
	"duplicate-key": "choosing: which of the two is meant", "tongue-clearance": "sorting", "back-clearance": "sorting", "divider-clearance": "sorting", "groove-clearance": "sorting", "bottom-flush": "sorting", "groove-step": "working more finely", "back-over-bottom": "sorting", "finger-clearance": "sorting", "cutter-narrow": "sorting", "recess": "sorting", "recess-inner": "sorting", "shoulder-gap": "sorting", "lap": "sorting",
	"outside-depth": "sorting", "outside-width": "sorting", "outside-height": "sorting", "diagonal": "sorting", "slide-clearance": "sorting, or a slide that allows more", "bottom-clearance": "sorting, or thicker boards", "bottom-clearance-depth": "sorting", "applied": "gluing, where boards are as thick as they are", "bottom-movement": "another wood, where it moves by more than any groove holds",
	"runner-width": "a measure of the shop's slide, which may be a built-in one", "wear-strip": "a measure of the shop's slide",
	"rough-thin":      "only who buys the boards knows which there are",
	"runner-binds":    "a measure of the shop's slide, which may be a built-in one",
	"cabinet-shrinks": "how far back a cabinet's back can go, and of what it is, is the maker's",
	// Openings: package opening follows what they name.
	"depth": "followed in geom/opening", "width": "followed in geom/opening", "front-movement": "followed in geom/opening", "row": "how many rows is the maker's wish", "spacers": "how many rows is the maker's wish",
}

// strained is a job for a shop whose machines and racks are small.
func strained(text string) string {
	before, drawers, _ := strings.Cut(text, "\ndrawers:\n")
	before = regexp.MustCompile(`, count: \d+`).ReplaceAllString(before, "")
	before = regexp.MustCompile(`sheet: \d+ (mm|in) x \d+ (mm|in)`).ReplaceAllString(before, "$0, count: 1")
	return before + `
group-openings: yes
machines:
  saw: {max-height: 8 mm, min-length-on-end: 180 mm, max-length-on-end: 400 mm, min-length-along-fence: 250 mm, max-length-on-sled: 450 mm}
  router-table: {max-height: 7 mm, min-length-on-end: 180 mm, max-length-on-end: 400 mm, min-length-along-fence: 250 mm, max-length-on-sled: 450 mm}
drawers:
` + drawers
}

// TestEveryHintIsFollowed: every hint of every source names a change of the job file as
// data, which ends the complaint and makes no other, or is of a code of which the table says
// why only a person can follow it.
func TestEveryHintIsFollowed(t *testing.T) {
	followed, asked := make(map[geom.Code]int), make(map[geom.Code]int)
	for seed := range uint64(36) {
		text := jobtest.Seeded(seed, jobtest.Want{}).Text
		switch seed % 3 {
		case 1:
			text = spoilt(text, seed)
		case 2:
			text = strained(text)
		}
		all, before, failed := hints(t, text)
		for _, h := range all {
			if h.leaves != nil {
				h.edits = [][]job.Edit{nil}
			}
			if len(h.edits) == 0 {
				if h.remedies+len(h.instead) == 0 { // those are followed by tests of their own
					asked[h.at.code]++
					if asks[h.at.code] == "" {
						t.Errorf("seed %d: %s: %s\n%s\nnames no change, and nothing says why", seed,
							h.at.code, h.message, h.text)
					}
				}
				continue
			}
			for _, edits := range h.edits {
				changed, err := job.Patch([]byte(text), edits...)
				if h.leaves != nil {
					changed, err = job.Remove([]byte(text), h.leaves...)
				}
				if err != nil {
					t.Errorf("seed %d: %s\n%s\n%v", seed, h.message, h.text, err)
					continue
				}
				followed[h.at.code]++
				after, now, _ := hints(t, string(changed))
				if now[h.at] >= before[h.at] {
					t.Errorf("seed %d: %s\n%s\nfollowed with %v does not end it", seed, h.message, h.text, edits)
				}
				for at, n := range now {
					if n > before[at] && !(failed && at.drawer < 0) && !(strings.HasPrefix(string(at.code), "sheet-") && len(edits) > 0 && strings.HasPrefix(edits[0].Value, "{kind: router,")) { // what a router needs of sheets that none has cut yet
						i := slices.IndexFunc(after, func(h hint) bool { return h.at == at })
						t.Errorf("seed %d: %s\n%s\nfollowed with %v leads into %v: %s", seed, h.message,
							h.text, edits, at, after[i].message)
					}
				}
			}
		}
	}
	t.Logf("followed %v\nasked %v", followed, asked)
	for _, code := range []geom.Code{"sag", "weight", "setup-limit", "no-sheet"} {
		if followed[code] == 0 {
			t.Errorf("no hint of %s was followed", code)
		}
	}
}
