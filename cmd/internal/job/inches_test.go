package job

import (
	"slices"
	"strings"
	"testing"
)

// Usual lengths are told in inches where the job is in inches, and no length stays in mm alone.
func TestUsualInInches(t *testing.T) {
	var look func(keys []Key, path string)
	look = func(keys []Key, path string) {
		for _, k := range keys {
			for _, text := range []string{k.Default, k.Without} {
				if mmInText.MatchString(text) && !inchInText.MatchString(text) && k.Inches == nil {
					t.Errorf("%s%s: %q has no words in inches", path, k.Name, text)
				}
			}
			if in := k.Inches; in != nil && strings.Contains(in.Default, " mm") {
				t.Errorf("%s%s: %q", path, k.Name, in.Default)
			}
			look(k.Keys, path+k.Name+".")
		}
	}
	look(Keys(), "")
	for text, want := range map[string]string{"3 mm": "0.118 in", "0 mm": "0 in", "600 mm x 400 mm": "23.622 in x 15.748 in",
		"12.7 mm less": "1/2 in less", "3 mm, with units: in 1/8 in,": "3 mm, with units: in 1/8 in,", "20 C": "20 C", "no": "no"} {
		if got := textInInches(text); got != want {
			t.Errorf("%q is %q", text, got)
		}
	}
	at := slices.IndexFunc(Keys(), func(k Key) bool { return k.Name == "joinery" })
	for _, k := range Keys()[at].Keys {
		if k.Name == "glue-space" && (k.Inches == nil || k.Inches.Default != "0 in") {
			t.Errorf("%+v", k.Inches)
		}
	}
}
