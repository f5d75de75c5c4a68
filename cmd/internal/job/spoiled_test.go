package job

import (
	"fmt"
	"io"
	"strings"
	"testing"

	"drawerwright/cmd/internal/mutate"
)

// TestSpoiledJobs: a spoiled job is read, or refused with the places of what is wrong.
func TestSpoiledJobs(t *testing.T) {
	built := 0
	mutate.YAML.Each(t, mutate.Samples(t, "../../../samples/*.yaml"), func(spoiled mutate.Sample) error {
		if checkText(t, spoiled.Text) {
			built++
		}
		return failed(t)
	})
	t.Logf("%d of them can be built", built)
}

// TestSpoiledSlides: what is wrong in a spoiled file of slides is said with its place there.
func TestSpoiledSlides(t *testing.T) {
	const text = "units: mm\nstock: {a: {thickness: 12}}\ncutter: {kind: saw, width: 6}\nslides-file: slides.yaml\n" +
		"openings: {o: {width: 400, height: 400, depth: 560, cabinet: frameless, fronts: none}}\n" +
		"drawers: [{name: d, opening: o, slide: heavy ball bearing, rows: 2, sides: a, bottom: a}]\n"
	mutate.YAML.Each(t, mutate.Samples(t, "../../../samples/slides/*.yaml"), func(slides mutate.Sample) error {
		job, problems := Read("job.yaml", strings.NewReader(text), Files(func(string) (io.ReadCloser, error) {
			return io.NopCloser(strings.NewReader(slides.Text)), nil
		}))
		if job == nil && !problems.Failed() {
			t.Errorf("no job, and no error among %v", problems)
		}
		lines := strings.Count(slides.Text, "\n") + 1
		for _, p := range problems {
			if p.File == "slides.yaml" && (p.Line < 1 || p.Line > lines || p.Column < 1 || p.Message == "") {
				t.Errorf("of %d lines: %s", lines, p)
			}
		}
		checkProblems(t, text, problems)
		return failed(t)
	})
}

// failed stops at the first file that a check has reported something of.
func failed(t *testing.T) error {
	if t.Failed() {
		return fmt.Errorf("see above")
	}
	return nil
}
