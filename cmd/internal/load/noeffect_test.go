package load_test

import (
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
)

// TestNoEffectWaitsForErrors: an entry beside one that cannot be read is not said to have no effect.
func TestNoEffectWaitsForErrors(t *testing.T) {
	const text = "units: mm\ncutter: {kind: router, diameter: 6}\n" +
		"stock: {birch: {thickness: [12.1, 12.1]}, ply: {thickness: [6.1, 6.1]}}\n" +
		"router: {onion-skin: 0.4, tabs: {width: 8, height: 1.5, spacing: 180}}\n" +
		"drawers: [{name: a, outside: 100 x 100 x 100, sides: birch, bottom: ply}]\n"
	told := func(text string) (noEffect bool, failed bool) {
		l := read(text)
		for _, p := range l.Problems {
			noEffect = noEffect || p.Code == job.CodeNoEffect
		}
		return noEffect, l.Failed()
	}
	if noEffect, failed := told(text); !noEffect || failed {
		t.Fatal("the job has no entry without effect, or does not build")
	}
	if noEffect, failed := told(strings.Replace(text, "spacing: 180", "spacing: .nan", 1)); noEffect || !failed {
		t.Errorf("no effect told: %v; failed: %v", noEffect, failed)
	}
}
