package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"drawerwright/cmd/internal/present"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// TestCouponOfEveryJob: each sample and each job of the README has its coupon, or says at its
// cutter why not. A router's has a drawing in which one bit cuts all slots, the one that
// cuts them in the run, and every layer is told with its bit.
func TestCouponOfEveryJob(t *testing.T) {
	jobs, err := filepath.Glob("../../samples/*.yaml")
	if err != nil || len(jobs) == 0 {
		t.Fatal(jobs, err)
	}
	var texts []string
	for _, m := range codeBlock.FindAllStringSubmatch(readme(t), -1) {
		texts = append(texts, m[1])
	}
	// Into its slots from 6.40 on a bit of 6.35 would get too.
	const six = "    six:   {diameter: 6, reach: 28, tool: 1}\n"
	texts = append(texts, strings.Replace(texts[2], six, six+"    wider: {diameter: 6.35, reach: 28}\n", 1))
	for i, text := range texts {
		name := filepath.Join(t.TempDir(), fmt.Sprintf("readme-%d.yaml", i))
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs, name)
	}
	refused := regexp.MustCompile(`\.yaml:\d+:\d+: error: .+\n +cutter: .+\n +\^\n +hint: `)
	routed := 0
	for _, name := range jobs {
		l, err := loadJob(name, streams{})
		if err != nil || l.Failed() {
			t.Fatal(name, err)
		}
		drawn, d := filepath.Join(t.TempDir(), "coupon"), l.Batch.Drawers[0]
		switch kind := d.Spec.Cutter.Kind; {
		case kind == joinery.Hand:
			if said := ran(t, exitJob, "coupon", name); !refused.MatchString(said) {
				t.Errorf("%s: %s", name, said)
			}
			continue
		case !kind.FollowsDrawing():
			ran(t, exitDone, "coupon", name)
			if said := ran(t, exitJob, "coupon", name, "-o", drawn); !refused.MatchString(said) {
				t.Errorf("%s: %s", name, said)
			}
			continue
		}
		routed++
		var c present.Coupon
		if err := json.Unmarshal([]byte(ranOut(t, "coupon", name, "-o", drawn, "--json")), &c); err != nil {
			t.Fatal(err)
		}
		dxf, err := os.ReadFile(c.File)
		if err != nil {
			t.Fatal(err)
		}
		want, slot := "", geom.Dado.String()
		if d.Spec.Joint != joinery.DadoRabbet {
			slot = geom.Groove.String()
		}
		for _, p := range d.Parts {
			for _, drawing := range p.Drawings {
				for _, of := range l.Batch.Layers(p, drawing) {
					if p.Role == joinery.Side && of.Operation == slot {
						want = p.Bits[of.Bit].Name
					}
				}
			}
		}
		text, slots := ran(t, exitDone, "coupon", name, "-o", filepath.Join(drawn, "again"), "--all"), 0
		for _, of := range c.Layers {
			if of.Operation == geom.Dado.String() {
				slots++
				if of.Bit != want || of.Cuts != 15 { // 9 slots, 6 slits
					t.Errorf("%s: bit %s makes %d slots, and in the run %s", name, of.Bit, of.Cuts, want)
				}
			}
			told := regexp.MustCompile(regexp.QuoteMeta(of.Layer[:min(len(of.Layer), 20)]) + `.* bit`)
			if !strings.Contains(string(dxf), "\n"+of.Layer+"\n") || !told.MatchString(text) {
				t.Errorf("%s: layer %s is not drawn, or not told with its bit:\n%s", name, of.Layer, text)
			}
		}
		if slots != 1 || want == "" {
			t.Errorf("%s: %d layers with slots of bit %q", name, slots, want)
		}
	}
	if routed < 6 {
		t.Errorf("only %d jobs are routed", routed)
	}
}
