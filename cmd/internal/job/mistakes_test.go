package job

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// places lists problems as the cases above do.
func places(problems Problems) []string {
	var all []string
	for _, p := range problems {
		place := fmt.Sprintf("%d:%d %s", p.Line, p.Column, p.Code)
		if p.File != "job.yaml" {
			place = p.File + ":" + place
		}
		all = append(all, place)
	}
	return all
}

func TestReadMistakes(t *testing.T) {
	for _, m := range mistakes {
		t.Run(m.name, func(t *testing.T) {
			text := m.file()
			if m.from != "" && text == base {
				t.Fatal("the case changes nothing")
			}
			job, problems := Read("job.yaml", strings.NewReader(text), Files(openTest))
			if got := places(problems); !slices.Equal(got, m.want) {
				var all strings.Builder
				if err := problems.Print(&all, nil); err != nil {
					t.Fatal(err)
				}
				t.Errorf("got %q, want %q\n%s", got, m.want, &all)
			}
			if job == nil && !problems.Failed() {
				t.Error("no job, and no error")
			}
			if job != nil {
				checkDrawers(t, job) // what is left is sound
			}
			checkProblems(t, text, problems)
		})
	}
}

// TestReadKeepsSoundDrawers: an error in one drawer leaves the others to be
// judged; one in what they share leaves none.
func TestReadKeepsSoundDrawers(t *testing.T) {
	for name, c := range map[string]struct{ from, to, want string }{
		"nothing":                  {"count: 6", "count: 7", "wide narrow"},
		"a size":                   {"460 x 140 x 500", "460 x 140", "narrow"},
		"a stock of one":           {"sides: birch\n    bottom: hardboard\n  - name: narrow", "sides: brich\n    bottom: hardboard\n  - name: narrow", "narrow"},
		"an entry that is not one": {"count: 6", "cuont: 6", "wide narrow"},
		"a shared setting":         {"cutter-height: 6", "cutter-height: six", ""},
		"the cutter":               {"kind: saw", "kind: axe", ""},
		"readings unlike":          {"12.21, 12.16", "12, 21", ""},
		"units":                    {"units: mm", "units: furlong", ""},
	} {
		t.Run(name, func(t *testing.T) {
			job, problems := Read("job.yaml", strings.NewReader(strings.Replace(base, c.from, c.to, 1)))
			var got []string
			for _, d := range job.Drawers {
				got = append(got, d.Name)
			}
			if strings.Join(got, " ") != c.want || problems.Failed() != (name != "nothing") {
				t.Errorf("kept %q, want %q; %v", got, c.want, problems)
			}
		})
	}
}

// TestReadEveryMistake puts one mistake of each kind that leaves the others
// readable into a file, and expects all of them from one run.
func TestReadEveryMistake(t *testing.T) {
	_, problems := Read("job.yaml", strings.NewReader(`jobb: bench
units: mm
units: in
stock:
  birch: {thickness: [12.2, 15.2], grain: lenght}
  thin: {thickness: 12 furlongs, sheet: 1525}
  thick: {thickness: [5, many]}
  none:
cutter: {kind: saw}
joinery: [1]
dxf: {version: 1e-3}
drawers:
  - name: a/b
    count: six
    outside: 460 x 0 x 500
    sides: brich
    bottom: {thin}
    joinery: {dado-clearance: 0.2}
  - name: Left
    outside: 460 mm x 140 x 500
    sides: birch
  - name: left
    sides: birch
    bottom: &b thin
`))
	want := []string{
		"1:1 unknown-key", "3:1 duplicate-key", "5:22 mixed-readings", "5:43 unknown-word",
		"6:21 unknown-unit", "6:41 not-a-size", "7:26 not-a-length", "8:3 no-value",
		"9:9 missing-key", "10:10 wrong-kind", "11:16 unknown-word",
		"13:11 bad-name", "14:12 not-a-number", "15:20 out-of-range", "16:12 unknown-stock", "17:13 wrong-kind", "18:31 not-for-a-saw",
		"19:5 missing-key", "20:14 not-a-size", "22:5 missing-key", "22:11 same-name", "24:13 unsupported",
	}
	if got := places(problems); !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

func TestReadTooMany(t *testing.T) {
	stocks, drawers := strings.Builder{}, strings.Builder{}
	for i := range maxStocks {
		fmt.Fprintf(&stocks, "  s%d: {thickness: 12}\n", i)
	}
	for i := range maxDrawers {
		fmt.Fprintf(&drawers, "  - name: d%d\n    outside: 460 x 140 x 500\n    sides: s0\n    bottom: s1\n    joinery: {fence-distance: 6, bottom-clearance: 1}\n", i)
	}
	file := func(stocks, drawers string) string {
		return "units: mm\ncutter: {kind: saw, width: 6}\nstock:\n" + stocks + "drawers:\n" + drawers
	}
	if j := read(t, file(stocks.String(), drawers.String())); len(j.Stocks) != maxStocks || len(j.Drawers) != maxDrawers {
		t.Errorf("%d stocks, %d drawers", len(j.Stocks), len(j.Drawers))
	}
	for _, c := range []struct {
		text string
		line int
	}{
		{file(stocks.String()+"  other-sheets: {thickness: 12}\n  again: {thickness: 12}\n", drawers.String()), 3 + maxStocks + 1},
		{file(stocks.String(), drawers.String()+"  - name: more\n  - name: again\n"), 3 + maxStocks + 1 + 5*maxDrawers + 1},
	} {
		_, problems := Read("job.yaml", strings.NewReader(c.text))
		if want := []string{fmt.Sprintf("%d:3 too-many", c.line)}; c.line > 1000 {
			want[0] = fmt.Sprintf("%d:5 too-many", c.line)
			if got := places(problems); !slices.Equal(got, want) {
				t.Errorf("got %q, want %q", got, want)
			}
		} else if got := places(problems); !slices.Equal(got, want) {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestReadStopsAtBadSigns(t *testing.T) {
	_, problems := Read("job.yaml", strings.NewReader(strings.Repeat("- @\n", 2*maxInvalid)))
	n := 0
	for _, p := range problems {
		if p.Code == CodeLayout {
			n++
		}
	}
	if n != maxInvalid {
		t.Errorf("%d of the signs are reported, want %d", n, maxInvalid)
	}
}

// TestHints takes the hints that guess what was meant.
func TestHints(t *testing.T) {
	inches := strings.NewReplacer("units: mm", "units: in", "5.9}", "12}").Replace(base)
	for _, c := range []struct {
		name, text, hint string
		want             bool
	}{
		{"key", strings.Replace(base, "count", "cuont", 1), "did you mean `count`?", true},
		{"key that is there", strings.Replace(base, "count: 6", "count: 6\n    cuont: 7", 1), "did you mean `count`?", false},
		{"capital", strings.Replace(base, "kind: saw", "kind: Saw", 1), "did you mean `saw`?", true},
		{"word", strings.Replace(base, "kind: saw", "kind: laser", 1), "write `saw`, `router-table`, `router` or `hand`", true},
		{"stock", strings.Replace(base, "sides: birch", "sides: brich", 1), "did you mean `birch`?", true},
		{"stocks", strings.Replace(base, "sides: birch", "sides: oak", 1), "`birch` or `hardboard`", true},
		{"inches in a file of millimeters", strings.Replace(base, "5.9}", "0.47}", 1), "did you mean 0.47 in?", true},
		{"millimeters in a file of inches", inches, "did you mean 12 mm?", true},
		{"the wrong unit given", strings.Replace(base, "5.9}", "0.47 mm}", 1), "did you mean 0.47 in?", true},
		{"neither unit", strings.Replace(base, "5.9}", "0.01}", 1), "did you mean", false},
		{"colon", strings.Replace(base, "count: 6", "count:6: 3", 1), "space after the colon", true},
		{"comma", strings.Replace(base, "5.9}", `"5,9"}`, 1), "decimal point", true},
	} {
		_, problems := Read("job.yaml", strings.NewReader(c.text))
		if got := slices.ContainsFunc(problems, func(p Problem) bool { return strings.Contains(p.Hint, c.hint) }); got != c.want || len(problems) == 0 {
			t.Errorf("%s: the hint %q is there: %v\n%v", c.name, c.hint, got, problems)
		}
	}
}
