package files_test

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"io/fs"
	"math"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/record"
)

// folder keeps files in memory.
type folder struct {
	mu    sync.Mutex
	files map[string][]byte
}

func (f *folder) WriteFile(name string, data []byte) error {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.files[name] = append([]byte(nil), data...)
	return nil
}

func (f *folder) Stream(name string, fill func(io.Writer) error) error {
	var data bytes.Buffer
	if err := fill(&data); err != nil {
		return err
	}
	return f.WriteFile(name, data.Bytes())
}

func (f *folder) ReadFile(name string) ([]byte, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	data, ok := f.files[name]
	if !ok {
		return nil, fs.ErrNotExist
	}
	return data, nil
}

func (f *folder) Open(name string) (io.ReadCloser, error) {
	data, err := f.ReadFile(name)
	return io.NopCloser(bytes.NewReader(data)), err
}

// anyJob draws the text of jobs of which most can be built.
func anyJob(t *rapid.T) string {
	number := func(low, high float64, name string) float64 {
		return math.Round(rapid.Float64Range(low, high).Draw(t, name)*100) / 100
	}
	maybe := func(name string) bool { return rapid.Bool().Draw(t, name) }
	word := func(name string, words ...string) string { return rapid.SampledFrom(words).Draw(t, name) }
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	sides := number(9, 20, "sides")
	front := sides
	if maybe("other front") {
		front = number(9, 20, "front")
	}
	readings := func(mean float64, name string) string {
		spread := number(0, 0.15, name)
		return fmt.Sprintf("[%.2f, %.2f, %.2f]", mean, mean-spread, mean+spread)
	}
	say("units: mm\nstock:\n  s: {thickness: %s}\n  f: {thickness: %s}\n  b: {thickness: %s}\n", readings(sides, "spread of sides"), readings(front, "spread of front"), readings(number(3, 14, "bottom"), "spread of bottom"))
	cutter := ""
	if maybe("router") {
		cutter = "_{cutter}"
		var bits []string
		for i := range rapid.IntRange(1, 3).Draw(t, "bits") {
			bits = append(bits, fmt.Sprintf("b%d: {diameter: %s, reach: %s}", i, word("bit", "2", "3", "3.175", "4", "6", "6.35", "8", "10", "12.7"), word("reach", "26", "40")))
		}
		say("cutter: {kind: router, bits: {%s}}\n", strings.Join(bits, ", "))
		say("router: {overcut: %.2f, relief: %s, exact-slots: %s, depth-from: %s, register: {place: %s}",
			number(0, 5, "overcut"), word("relief", "dogbone", "t-bone"),
			word("slots", "widened", "centerline"), word("from", "top", "spoilboard"), word("place", "waste",
				"centerline"))
		if maybe("tabs") {
			say(", tabs: {width: %.1f, height: %.1f, spacing: %.0f}", number(3, 15, "tab width"),
				number(0.5, 2.5, "tab height"), number(50, 300, "spacing"))
		}
		if maybe("skin") {
			say(", onion-skin: %.2f", number(0.1, 0.6, "skin height"))
		}
		say("}\n")
	} else {
		say("cutter: {kind: saw, width: %.2f", front/2+number(0.05, 0.5, "slot"))
		if maybe("cutter for grooves") {
			say(", groove-cutter: %s", word("blade", "2.4", "3.2", "6.35"))
		}
		say("}\n")
	}
	say("joinery: {bottom-fit: %s, faces: %s, glue-space: %s", word("bottom fit", "auto", "grooved-in", "flush",
		"slide-in", "fielded", "applied", "cleats"), word("faces", "any", "one"), word("room", "0", "0.2"))
	if maybe("own fence") {
		say(", fence-distance: %.2f", front/2+number(-1, 1, "fence"))
	}
	if maybe("own height") {
		say(", cutter-height: %.2f", sides/2+number(-2, 2, "height"))
	}
	if maybe("raised") {
		say(", bottom-height: %.2f", number(4, 16, "bottom height"))
	}
	say("}\ndxf: {version: %s, units: %s, layers: \"{operation}_{face}_{depth}%s\"}\n",
		word("version", "R12", "R2000"), word("units", "mm", "in"), cutter)
	width, high := number(80, 900, "width"), number(45, 300, "high")
	say("drawers:\n  - {name: a, outside: %.0f x %.0f x %.0f, sides: s, box-front: f, bottom: b", width,
		high, number(100, 700, "depth"))
	joints := []string{"", "dado-rabbet", "double-rabbet", "rabbet", "butt", "box-joint", "rabbeted-front"}
	if joint := word("joint", joints...); joint != "" {
		say(", joint: %s", joint)
		if joint == "butt" {
			say(", fasteners: %s", word("fasteners", "screws", "dowels", "tenons"))
		}
	}
	if rapid.IntRange(0, 3).Draw(t, "housed") == 0 {
		say(", back-joint: dado, back-setback: %.1f", number(6, 30, "setback"))
	}
	if pull := word("pull", "", "", "hole", "half-round", "slot", "hand-hold"); pull != "" {
		say(", pull: {shape: %s}", pull)
	}
	if maybe("divided") {
		say(", dividers: [")
		for i := range rapid.IntRange(1, 2).Draw(t, "dividers") {
			if i > 0 {
				say(", ")
			}
			say("{direction: %s, at: %d, stock: b, loose: %s}", word("way", "across", "along"),
				rapid.IntRange(1, 3).Draw(t, "count"), word("loose", "yes", "no"))
		}
		say("]")
	}
	if maybe("drawer front") {
		over := number(-4, 20, "over")
		say(", drawer-front: {stock: f, width: %.2f, height: %.2f, overhang-left: %.2f, overhang-below: %.2f, handles: knob}", math.Round(width)+2*over, math.Round(high)+2*over, over, over)
	}
	say("}\n")
	return b.String()
}

// TestAnyJobIsProven: whatever job is not refused makes drawings that, read back
// and cut virtually, make a box that goes together, with the plays that the joint
// was worked out with. A depth in a layer's name is rounded to 0.0001 in at worst,
// and a slot drawn up to 0.05 mm wider.
func TestAnyJobIsProven(t *testing.T) {
	const most = 0.05 + 2*0.00127
	proven := 0
	rapid.Check(t, func(t *rapid.T) {
		text := anyJob(t)
		j, problems := job.Read("job.yaml", strings.NewReader(text))
		if problems.Failed() {
			t.Fatalf("%v\n%s", problems, text)
		}
		b, found := batch.Make(t.Context(), j)
		for _, p := range found {
			if p.IsError() {
				return
			}
		}
		to := &folder{files: map[string][]byte{}}
		if err := files.Write(context.Background(), b, to, files.Options{}); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		proven++
		r, err := record.Read(to.files["report.json"])
		if err != nil {
			t.Fatal(err)
		}
		proof := r.Proof[0]
		for _, f := range r.Fit {
			compare := func(what string, got record.Length) {
				if math.Abs((got - f.Nominal).MM()) > most {
					t.Fatalf("%s: %g in the proof, %g by the joint\n%s", what, got, f.Nominal, text)
				}
			}
			switch f.Check {
			case "groove-clearance":
				if proof.Bottom == nil {
					t.Fatalf("no bottom\n%s", text)
				}
				compare("bottom clearance", proof.Bottom.Clearance.Mean)
			case "outside-width":
				compare("width", proof.Width.Mean)
			case "tongue-clearance":
				for _, c := range proof.Corners {
					if c.End == f.Part {
						compare("clearance of the "+c.End, c.Clearance.Mean)
					}
				}
			}
		}
	})
	if proven == 0 {
		t.Error("every job was refused")
	}
}
