package page

import (
	"net/http"
	"strings"
	"testing"
)

// A load that is carried is told, and so is each change of it, without any warning.
func TestLoadIsTold(t *testing.T) {
	// Birch plywood, so that its stiffness is known.
	material := strings.NewReplacer("grain: length}", "grain: length, material: birch-plywood}",
		"hard: {thickness: 5.9,", "hard: {thickness: 5.9, material: birch-plywood,").Replace(jobText)
	p, _ := open(t, material)
	told := map[string]string{}
	for load, says := range map[string]string{"": "The box weighs", "1 kg": "Under 1 kg the bottom sags by",
		"2 kg": "Under 2 kg the bottom sags by"} {
		text := material
		if load != "" {
			text = strings.Replace(material, "    count: 2\n", "    count: 2\n    load: "+load+"\n", 1)
		}
		got := answer[looked](t, p, "/api/look", asked{text, view{Show: "fit"}}, http.StatusOK)
		for _, q := range got.Problems {
			if q.Code == "sag" || q.Code == "weight" || q.Level == "error" {
				t.Errorf("load %q: %s", load, q.Message)
			}
		}
		if told[got.Bears] != "" || !strings.Contains(got.Bears, says) {
			t.Errorf("load %q: %q, as of %q", load, got.Bears, told[got.Bears])
		}
		told[got.Bears] = load + " "
	}
}
