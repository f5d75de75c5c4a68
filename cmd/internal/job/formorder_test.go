package job

import "testing"

// TestShownFirst: what a form shows at once is in the file, everything without which a section
// cannot be is among it, and the order is the one in which a shop thinks.
func TestShownFirst(t *testing.T) {
	check := func(section string, keys []Key) {
		have, places := map[string]bool{}, map[int]string{}
		for _, k := range keys {
			have[k.Name] = true
			if k.Required && k.First == 0 {
				t.Errorf("%s has to be written in %q, and a form folds it away", k.Name, section)
			}
			if other := places[k.First]; other != "" && k.First > 0 {
				t.Errorf("%s and %s have the same place in %q", other, k.Name, section)
			}
			places[k.First] = k.Name
		}
		for _, name := range shownFirst[section] {
			if !have[name] {
				t.Errorf("%q has no entry %s", section, name)
			}
		}
	}
	all := Keys()
	check("", all)
	seen := map[string]bool{"": true}
	for _, k := range all {
		seen[k.Name] = true
		check(k.Name, k.Keys)
	}
	for section := range shownFirst {
		if !seen[section] {
			t.Errorf("there is no section %q", section)
		}
	}
	drawer := all[len(all)-1].Keys
	order := map[string]int{}
	for _, k := range drawer {
		order[k.Name] = k.First
	}
	for _, pair := range [][2]string{{"count", "outside"}, {"count", "opening"}, {"opening", "sides"}, {"outside", "sides"},
		{"bottom", "slide"}, {"slide", "joint"}} {
		if order[pair[0]] >= order[pair[1]] {
			t.Errorf("%s stands after %s", pair[0], pair[1])
		}
	}
	if order["spares"] != 0 || order["finger-width"] != 0 {
		t.Error("what few jobs need is asked for first")
	}
}
