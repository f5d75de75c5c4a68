package job

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
)

// Usual lengths are told in inches where the job is in inches, and no length stays in mm alone.
func TestUsualInInches(t *testing.T) {
	var look func(keys []Key, path string)
	look = func(keys []Key, path string) {
		for _, k := range keys {
			in := k.Told
			if k.Inches != nil {
				in = *k.Inches
			}
			for _, text := range []string{in.Doc, in.Default, in.Without, in.Why, in.Example} {
				if rest := strings.ReplaceAll(text, "mm/min", ""); regexp.MustCompile(`\bmm\b`).MatchString(rest) && k.Kind != "word" && k.Kind != "section" {
					t.Errorf("%s%s in inches: %q", path, k.Name, text)
				}
			}
			for _, text := range []string{k.Doc, k.Default, k.Without, k.Why, k.Example} {
				if regexp.MustCompile(`\d in\b`).MatchString(text) {
					t.Errorf("%s%s in mm: %q", path, k.Name, text)
				}
			}
			look(k.Keys, path+k.Name+".")
		}
	}
	look(Keys(), "")
	for text, want := range map[string]string{"3 mm": "0.118 in", "0 mm": "0 in", "600 mm x 400 mm": "23.622 in x 15.748 in",
		"12.7 mm less": "1/2 in less", "3 mm, with units: in 1/8 in, or so": "1/8 in or so", "20 C": "20 C", "no": "no",
		"3 to 6 mm thick": "0.118 to 0.236 in thick", "70 x 42 mm": "2.756 x 1.654 in", "80 mm/min": "80 mm/min"} {
		if got := inUnit(text, geom.Inch); got != want {
			t.Errorf("%q is %q", text, got)
		}
	}
	if got := inUnit("3 mm, or with units: in 1/8 in", geom.Millimeter); got != "3 mm" {
		t.Errorf("a text for both units is %q", got)
	}
	// Half of an inch is near enough for a box, a thousandth for a caliper: 12.21 / 25.4 = 0.4807, 460 / 25.4 = 18.1.
	for _, c := range []struct{ path, want string }{{"stock/thickness", "0.481, 0.479, 0.482"}, {"drawers/outside", "18 x 5 1/2 x 19 1/2"},
		{"drawers/rows", "5 1/2, free, free, free"}, {"cutter/width", "1/4"}, {"limits/flush", "0.010"}} {
		section, name, _ := strings.Cut(c.path, "/")
		all := Keys()
		of := all[slices.IndexFunc(all, func(k Key) bool { return k.Name == section })].Keys
		k := of[slices.IndexFunc(of, func(k Key) bool { return k.Name == name })]
		if k.Inches == nil || k.Inches.Example != c.want {
			t.Errorf("%s: %+v; want %s", c.path, k.Inches, c.want)
		}
	}
	at := slices.IndexFunc(Keys(), func(k Key) bool { return k.Name == "joinery" })
	for _, k := range Keys()[at].Keys {
		if k.Name == "glue-space" && (k.Inches == nil || k.Inches.Default != "0 in") {
			t.Errorf("%+v", k.Inches)
		}
	}
}
