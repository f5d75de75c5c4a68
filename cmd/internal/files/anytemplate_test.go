package files

import (
	"cmp"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/export/stroke"
	"drawerwright/export/template"
	"drawerwright/geom"
)

// templateJobs are all samples with templates: with dowels and with strips, of a known kerf and of none, cut by a bit
// that takes away as much as a dowel, on a small bed, and on paper from a roll.
func templateJobs(t *testing.T, check func(t *testing.T, b batch.Batch)) {
	samples, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(samples) < 10 {
		t.Fatal(samples, err)
	}
	own := regexp.MustCompile(`(?m)^templates:.*\n(?:  .*\n)*`)
	const mean = "thickness: [3.1 mm, 3.15 mm, 3.15 mm], "
	for _, file := range samples {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for name, c := range map[string]struct{ plates, templates string }{
			"dowels":  {mean + "kerf: 0.18 mm", "pin-diameter: 6 mm"},
			"no kerf": {"thickness: 3.05 mm", "pin-diameter: 5 mm"},
			"strips":  {mean + "kerf: 0.18 mm", "register: lip"},
			"a bit":   {mean + "kerf: 3.175 mm", "pin-diameter: 3 mm, slot-width: 4 mm"},
			"small":   {mean + "kerf: 0.18 mm", "bed: 300 mm x 200 mm"},
			"a roll":  {mean + "kerf: 0.18 mm", "roll-width: 1200 mm"},
		} {
			text := own.ReplaceAllString(string(data), "")
			text = strings.Replace(text, "\nstock:\n", "\nstock:\n  plates: {"+c.plates+"}\n", 1) +
				"\ntemplates: {stock: plates, " + c.templates + "}\n"
			t.Run(filepath.Base(file)+" with "+name, func(t *testing.T) {
				j, problems := job.Read(file, strings.NewReader(text), job.Files(load.Beside(file)))
				if problems.Failed() {
					t.Fatal(problems)
				}
				b, found := batch.Make(t.Context(), j)
				for _, p := range found {
					if p.IsError() && p.Code == "template" {
						t.Fatal(p.Fact.In(b.Units))
					}
				}
				check(t, b)
			})
		}
	}
}

// TestBlocksSetWhatTheSheetSays: every setup block is as high, with its feeler, as a fence or height that the setup
// sheet says, as printed there; the corner's have one each, but where one plate is higher. Without a fence to set
// there is none.
func TestBlocksSetWhatTheSheetSays(t *testing.T) {
	said := regexp.MustCompile(`^For an? .* of ([\d.]+) (?:mm|in): .* = ([\d.]+) (?:mm|in)(?:, plus feeler ([\d.]+) (?:mm|in))?\. Measure`)
	number := func(t *testing.T, s string, u geom.Unit) geom.Length {
		l, err := geom.ParseLength(cmp.Or(s, "0"), u)
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	count := map[bool]int{}
	templateJobs(t, func(t *testing.T, b batch.Batch) {
		settings := make(map[geom.Length]bool)
		for _, m := range present.SetupsOf(record.WorkOf(b)).Machines {
			for _, s := range m.Settings {
				for _, l := range []record.Length{s.Fence, s.Height} {
					settings[number(t, geom.LengthOf(l.MM()).Fixed(b.Units), b.Units)] = true
				}
			}
		}
		blocks := make(map[geom.Length]bool)
		for _, p := range b.Templates.Plates {
			if !strings.HasPrefix(p.Drawn.Name, "block-") {
				continue
			}
			m := said.FindStringSubmatch(p.Drawn.Notes[0])
			if m == nil {
				t.Fatal(p.Drawn.Notes)
			}
			of := number(t, m[1], b.Units)
			if with := number(t, m[2], b.Units) + number(t, m[3], b.Units); with != of || !settings[of] {
				t.Errorf("%s: with the feeler %g mm; the settings are %v", p.Drawn.Notes[0], with.MM(), settings)
			}
			blocks[of] = true
			count[m[3] != ""]++
		}
		for _, d := range b.Drawers {
			for _, mm := range []float64{d.Setup.FenceDistance, d.Setup.CutterHeight} {
				of := number(t, geom.LengthOf(mm).Fixed(b.Units), b.Units)
				if settings[of] && of.MM() > b.Templates.Thickness+0.02 && !blocks[of] {
					t.Errorf("%s: %g mm has no block: %v", d.Spec.Name, mm, blocks)
				}
			}
		}
	})
	if count[true] == 0 || count[false] == 0 {
		t.Errorf("blocks with a feeler, and without: %v", count)
	}
}

// TestDowelsOfTemplates: a plate's notes tell of dowels where holes are cut out of it that touch the part's edges from
// outside, and by the name that such dowels are sold by: in a job in inches metric ones are in millimeters.
func TestDowelsOfTemplates(t *testing.T) {
	count := map[bool]int{}
	templateJobs(t, func(t *testing.T, b batch.Batch) {
		for _, p := range b.Templates.Plates {
			r, o := b.Templates.PinDiameter/2, p.Drawn.Origin
			holes := slices.ContainsFunc(p.Drawn.Paths.Openings, func(l geom.Loop) bool {
				c, radius, round := l.AsCircle()
				return round && math.Abs(radius-r) < 1e-6 && (math.Abs(o.X-r-c.X) < 1e-6 || math.Abs(o.Y-r-c.Y) < 1e-6)
			})
			text := strings.Join(p.Drawn.Notes, " ")
			if said := strings.Contains(strings.ToLower(text), "dowel"); said != holes {
				t.Errorf("%s has holes for dowels: %v, and says: %s", p.Drawn.Name, holes, text)
			}
			if inch := strings.Contains(text, " mm ("); holes && inch != (b.Units == geom.Inch) {
				t.Errorf("%s: %s", p.Drawn.Name, text)
			}
			count[holes]++
		}
	})
	if count[true] == 0 || count[false] == 0 {
		t.Errorf("plates with holes, and without: %v", count)
	}
}

// TestWordsOfTemplates: what a print says has no word of plates, of what cuts them or of what holds them; what plates
// and their files say has none of paper; neither says to sand anything, and no setup sheet does.
func TestWordsOfTemplates(t *testing.T) {
	word := func(list string) *regexp.Regexp { return regexp.MustCompile(`(?i)\b(` + list + `)\b`) }
	ofPlates := word(`plates?|laser\w*|kerf|hardboard|beds?|bits?|router|dowels?|pins?|strips?|lip|glu\w*|hang\w*|home|` +
		`pieces?|keys?|as drawn|scor\w*|engrav\w*|slots?|sand\w*`)
	ofPaper := word(`papers?|print\w*|sheets?|tap(e|ed|ing)|past(e|ed)|fold\w*|prick\w*|scaling|dash\w*|sand\w*`)
	sand := word(`sand\w*`)
	texts := func(d drawing.Drawing) (list []string) {
		for _, s := range d.Texts {
			list = append(list, s.String)
		}
		return list
	}
	templateJobs(t, func(t *testing.T, b batch.Batch) {
		names := []string{b.Title} // the shop's own words
		for _, d := range b.Drawers {
			for _, p := range d.Parts {
				names = append(names, p.Name, p.Stock.Name)
			}
		}
		slices.SortFunc(names, func(a, b string) int { return len(b) - len(a) })
		check := func(what string, list []string, not *regexp.Regexp) {
			for _, s := range list {
				said := s
				for _, n := range names {
					said = strings.ReplaceAll(said, n, "")
				}
				if found := not.FindString(said); found != "" {
					t.Errorf("%s says %q: %s", what, found, s)
				}
			}
		}
		words := func(p template.Plate) (list []string) {
			for _, w := range p.Words {
				list = append(list, w.Text)
			}
			return list
		}
		for _, p := range b.Templates.Prints {
			said := words(p)
			for _, page := range printed(b, p) {
				said = append(said, texts(page.Drawing)...)
			}
			if len(said) < 5 {
				t.Errorf("the print of %s says %q alone", p.Name, said)
			}
			check("the print of "+p.Name, said, ofPlates)
		}
		for _, p := range b.Templates.Plates {
			for _, c := range []template.Cut{p.Drawn, p.Made} {
				said := slices.Concat(words(c.Plate), c.Notes, []string{c.Title, c.Stamp()},
					texts(paper.WithSquare(c.Picture(), c.Title, c.Unit)),
					template.Draw(c, b.DXF.Version, b.DXF.Unit).Comments)
				check(c.Name, said, ofPaper)
			}
		}
		sheet, err := json.Marshal(present.SetupsOf(record.WorkOf(b)))
		if err != nil {
			t.Fatal(err)
		}
		check("the setup sheet", []string{string(sheet)}, sand)
	})
}

// TestPrintsHaveNoHoles: a print has what a plate marks with and its outline, and nothing of what holds it, of strips
// or of the words on the kerf; it is whole where the plate is in pieces.
func TestPrintsHaveNoHoles(t *testing.T) {
	whole := 0
	templateJobs(t, func(t *testing.T, b batch.Batch) {
		for _, p := range b.Templates.Prints {
			count := make(map[string]int)
			d, _ := p.OnPaper()
			for _, s := range d.Shapes {
				count[s.Group]++
			}
			letters := 0
			for _, w := range p.Words {
				letters += len(stroke.Text(w.Text, w.Height))
			}
			want := map[string]int{template.ProfileLayer: 1, template.CutoutLayer: len(p.Openings), template.EngraveLayer: len(p.Engrave) + letters}
			for group, n := range want {
				if count[group] != n {
					t.Errorf("%s: %d lines of %s for %d", p.Name, count[group], group, n)
				}
			}
			same := func(q batch.TemplatePlate) bool { return q.Drawn.Title == p.Title }
			if !slices.ContainsFunc(b.Templates.Plates, same) {
				whole++
			}
		}
	})
	if whole == 0 {
		t.Error("no plate is in pieces")
	}
}
