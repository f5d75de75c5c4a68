package job

import (
	"strings"
	"testing"
)

// TestTitles: every entry has a name that a shop uses, no two entries of a section share one, and
// the table names nothing that the job file does not have.
func TestTitles(t *testing.T) {
	used := map[string]bool{}
	sections := map[string]map[string]string{}
	for _, p := range placesBelow(jobKeys, nil) {
		name, section := p.key().name, ""
		if len(p) > 1 {
			section = p[len(p)-2].name
		}
		title := titleOf(section, name)
		if title == "" || title != strings.TrimSpace(title) || strings.HasSuffix(title, ".") {
			t.Errorf("%s is called %q", p.path(), title)
		}
		above := p[:len(p)-1].path()
		if sections[above] == nil {
			sections[above] = map[string]string{}
		}
		if other := sections[above][title]; other != "" {
			t.Errorf("%s and %s of %s are both called %q", other, name, above, title)
		}
		sections[above][title] = name
		if _, own := titles[section+"."+name]; own {
			used[section+"."+name] = true
		} else {
			used[name] = true
		}
	}
	for name := range titles {
		if !used[name] {
			t.Errorf("no entry takes the title of %q", name)
		}
	}
	for _, e := range Entries() {
		if e.Title == "" {
			t.Errorf("%s is explained without a title", e.Path)
		}
	}
}
