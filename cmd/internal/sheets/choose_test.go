package sheets

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom/breakdown"
	"drawerwright/geom/nest"
	"drawerwright/geom/sheet"
)

// TestPreferred: what a job prefers is the layout with the best figure of the list, as it is cut then; none costs more
// than the layout in any number of stages, and the same job is laid out alike twice. Each word stands once in the list.
func TestPreferred(t *testing.T) {
	b := read(t, "../../../samples/workshop-bench.yaml")
	settings := make(map[string]int)
	for _, word := range []string{job.PreferSettings, job.PreferTime, job.PreferOffcut, job.PreferSheet} {
		b.Sheets.Prefer = word
		var plans [2]Plan
		for i := range plans {
			var err error
			if plans[i], err = Of(t.Context(), b, nil, Search{}); err != nil {
				t.Fatal(err)
			}
		}
		if !reflect.DeepEqual(plans[0].Stocks, plans[1].Stocks) {
			t.Errorf("%s: two layouts of one job", word)
		}
		for _, s := range plans[0].Stocks {
			least, err := nest.Lay(t.Context(), s.Pieces, s.Sheets, s.Rules, nest.Options{Effort: Effort})
			more := s.Layout.Cost > least.Cost || len(s.Layout.Sheets) > len(least.Sheets)
			if err != nil || more || s.Remaining() > 0 {
				t.Errorf("%s: %s costs %g, the least %g, %v", word, s.Name, s.Layout.Cost, least.Cost, err)
			}
			var words []string
			for _, c := range s.Choices {
				words = append(words, c.Prefer...)
				if c.Taken != slices.Contains(c.Prefer, strings.Replace(word, job.PreferSheet, job.PreferTime, 1)) {
					t.Errorf("%s is taken: %t, where %s is preferred", c.Prefer, c.Taken, word)
				}
				if c.Taken && (c.Settings != breakdown.Settings(s.Cuts) || c.Seconds != s.Times.Seconds(s.Cuts)) {
					t.Errorf("%s: %+v is not what is cut", s.Name, c)
				}
				if c.Taken {
					settings[word] += c.Settings
				}
				area := func(c Choice) int64 { return c.Offcut.Length * c.Offcut.Width }
				for _, d := range s.Choices {
					better := map[string]bool{job.PreferSettings: d.Settings < c.Settings, job.PreferTime: d.Seconds < c.Seconds,
						job.PreferOffcut: area(d) > area(c)}
					if slices.ContainsFunc(c.Prefer, func(word string) bool { return better[word] }) {
						t.Errorf("%s: %+v is better than %+v", s.Name, d, c)
					}
				}
			}
			slices.Sort(words)
			// There is nothing to choose where one is the best by all.
			if len(words) > 0 && fmt.Sprint(words) != "[few-settings large-offcut little-time]" {
				t.Errorf("%s: there is to choose from %s", s.Name, words)
			}
		}
	}
	if settings[job.PreferSettings] >= settings[job.PreferOffcut] {
		t.Errorf("nothing is gained: %v", settings)
	}
}

// TestListed: layouts that are alike are one, a sheet more is worth the minutes that it saves or is none, and of
// layouts that are else as good that with fewer turns of boards is taken.
func TestListed(t *testing.T) {
	one := Choice{Sheets: 1, bought: 1, Cost: 10, Settings: 9, Turns: 5, Seconds: 2000}
	more := func(saved int) Choice {
		return Choice{Sheets: 2, bought: 2, Cost: 20, Settings: 3, Turns: 1, Seconds: 2000 - saved}
	}
	two := more(2 * sheet.WorthSheet)
	two.bought = 3
	turned := one
	turned.Turns = 4
	large := one
	large.Offcut, large.Seconds = nest.Offcut{Length: 9, Width: 9}, 2100
	short := one
	short.missing, short.Settings, short.Cost = 1, 1, 0
	for name, k := range map[string]struct {
		choices []Choice
		want    string
	}{
		"one":               {[]Choice{one}, "0 few-settings little-time large-offcut"},
		"two alike":         {[]Choice{one, one}, "0 few-settings little-time large-offcut"},
		"fewer turns":       {[]Choice{one, turned}, "1 few-settings little-time large-offcut"},
		"not worth a sheet": {[]Choice{one, more(sheet.WorthSheet - 1)}, "0 few-settings little-time large-offcut"},
		"worth a sheet": {[]Choice{one, more(sheet.WorthSheet)},
			"0 few-settings little-time large-offcut, 1 sheet-for-time"},
		"two sheets":    {[]Choice{one, two}, "0 few-settings little-time large-offcut"},
		"pieces left":   {[]Choice{one, short}, "0 few-settings little-time large-offcut"},
		"two to choose": {[]Choice{one, large}, "1 few-settings large-offcut, 0 little-time"},
	} {
		list := listed(k.choices, job.PreferSheet)
		var got []string
		for _, n := range list {
			c := k.choices[n]
			got = append(got, fmt.Sprint(n, " ", strings.Join(c.Prefer, " ")))
			word := job.PreferSheet
			if name != "worth a sheet" { // then it is as if there were none
				word = job.PreferTime
			}
			if c.Taken != slices.Contains(c.Prefer, word) {
				t.Errorf("%s: %d is taken: %t", name, n, c.Taken)
			}
		}
		if strings.Join(got, ", ") != k.want {
			t.Errorf("%s: %s, want %s", name, strings.Join(got, ", "), k.want)
		}
	}
}
