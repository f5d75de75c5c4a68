package present

import (
	"slices"
	"strings"

	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// ReadingWanted is a reading that is still to be taken of a test cut.
type ReadingWanted struct {
	Reading string   `json:"reading"`
	Again   bool     `json:"again,omitempty"` // at another place, since it was taken once
	What    string   `json:"what"`
	With    string   `json:"with"` // an instrument
	For     []string `json:"for"`  // the settings that are not to be moved before
}

// ReadingWords say what a reading is, and what it is taken with: here, in the topic of the test
// cut and in the list of what to measure.
type ReadingWords struct{ What, With string }

// readingWords are those of a corner with tongues in dados.
var readingWords = map[testcut.Kind]ReadingWords{
	testcut.Slot:         {"width of a dado", "caliper, inside jaws"},
	testcut.Depth:        {"depth of a dado, from the face to its floor", "caliper, depth rod"},
	testcut.Edge:         {"from the end of a side to the near wall of its dado", "caliper, outside jaws"},
	testcut.Tongue:       {"thickness of a tongue", "caliper, outside jaws"},
	testcut.RabbetDepth:  {"depth of the rabbet beside a tongue", "caliper, depth rod"},
	testcut.TongueLength: {"length of a tongue, from its shoulder to its end", "caliper, depth rod"},
	testcut.Clearance:    {"gap beside a tongue in its dado, dry", "feeler gauge"},
	testcut.Recess: {"box front behind the ends of the sides, dry and pulled outward; below 0: proud",
		"caliper, depth rod"},
	testcut.Width:       {"width of a box outside, dry and clamped", "rule or tape"},
	testcut.FrontLength: {"length of a box front, over its tongues", "rule or tape"},
	testcut.Front:       {"thickness of the board of the box front", "caliper, outside jaws"},
	testcut.Sides:       {"thickness of the board of the sides", "caliper, outside jaws"},
	testcut.Tooth:       {"thickness of a tooth of the coupon's comb", "caliper, outside jaws"},
	testcut.Coupon:      {"width of slot N of the coupon", "caliper, inside jaws"},
}

// slotWords are those of a corner without tongues, where they differ.
var slotWords = map[testcut.Kind]ReadingWords{
	testcut.Slot:  {"width of a groove", "caliper, inside jaws"},
	testcut.Depth: {"depth of a groove, or of the rabbet of a side, from the face to its floor", "caliper, depth rod"},
	testcut.Edge:  {"from the lower edge to the near wall of the groove", "caliper, outside jaws"},
}

// WordsOf are the words of a reading of a corner.
func WordsOf(k testcut.Kind, j joinery.Joint) ReadingWords {
	if w, own := slotWords[k]; own && j != joinery.DadoRabbet {
		return w
	}
	return readingWords[k]
}

// wanted gathers the readings that moves wait for, each once, in the order of asking.
func wanted(a testcut.Advice, c testcut.Model, machine string) (list []ReadingWanted) {
	for _, m := range a.Moves {
		if m.Action != testcut.Measure {
			continue
		}
		for _, k := range m.Missing {
			i := slices.IndexFunc(list, func(w ReadingWanted) bool { return w.Reading == string(k) })
			if i < 0 {
				words := WordsOf(k, c.Joint())
				taken := slices.ContainsFunc(a.Residuals, func(r testcut.Residual) bool { return r.Kind == k })
				list = append(list, ReadingWanted{Reading: string(k), Again: taken, What: words.What, With: words.With})
				i = len(list) - 1
			}
			list[i].For = append(list[i].For, settingName(m.Setting, machine))
		}
	}
	return list
}

// Names are the readings that are wanted.
func Names(list []ReadingWanted) (names []string) {
	for _, w := range list {
		name := w.Reading
		if w.Again {
			name += " again"
		}
		names = append(names, name)
	}
	return names
}

// toMeasure prints the list of what is to be measured.
func (t *sheetText) toMeasure(list []ReadingWanted) {
	if len(list) == 0 {
		return
	}
	t.line("measure, and give adjust these readings too")
	table := NewTable(Words("reading"), Words("what and where"), Words("with"), Words("before you move"))
	for _, w := range list {
		what := w.What
		if w.Again {
			what = "once more, at another place: " + what
		}
		table.Add(w.Reading, what, w.With, strings.Join(w.For, ", "))
	}
	table.Print(t.Printed, "  ")
	t.line("")
}
