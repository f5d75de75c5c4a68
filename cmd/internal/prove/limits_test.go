package prove_test

import (
	"fmt"
	"math"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// TestTooMuch: a drawing that nobody drew is given up, with the line from which on
// it is too much.
func TestTooMuch(t *testing.T) {
	for name, harm := range map[string]func(*drawing){
		"many pockets": func(d *drawing) {
			e := d.first("DADO")
			tags := d.tagsOf(e)
			for i := range 300 {
				d.insert(e, tags)
				x := 20 + float64(i)
				d.reshape(d.first("DADO"), [][2]float64{{x, 20}, {x + 5, 20}, {x + 5, 30}, {x, 30}})
			}
		},
		"many corners": func(d *drawing) {
			corners := make([][2]float64, 9000)
			for i := range corners {
				a := 2 * math.Pi * float64(i) / float64(len(corners))
				corners[i] = [2]float64{250 + 50*math.Cos(a), 70 + 50*math.Sin(a)}
			}
			d.reshape(d.first("DADO"), corners)
		},
		"many circles": func(d *drawing) {
			for i := range 200 { // each of some 270 chords
				d.insert(d.first("DADO"), []tag{{"0", "CIRCLE"}, {"8", "DADO_INSIDE_6-10MM"}, {"10", fmt.Sprint(i)}, {"20", "70"}, {"40", "60"}})
			}
		},
		"arcs without end": func(d *drawing) {
			for range 20 {
				d.insert(d.first("DADO"), []tag{{"0", "CIRCLE"}, {"8", "DADO_INSIDE_6-10MM"}, {"10", "0"}, {"20", "0"}, {"40", "1e300"}})
			}
		},
		"many texts": func(d *drawing) {
			e := d.first("DADO")
			var tags []tag
			for range 10_000 {
				tags = append(tags, tag{"0", "TEXT"}, tag{"8", e.layer})
			}
			d.insert(e, tags)
		},
	} {
		t.Run(name, func(t *testing.T) {
			f := build(t, harmed("R2000", ""))
			d := drawn(t, f.files[sideIn])
			harm(d)
			f.files[sideIn] = d.data()
			p := f.proof(t, prove.Options{})
			found := false
			for _, v := range p.Faults {
				found = found || v.Code == "too-many" && v.File == sideIn && v.Line > 0
			}
			// Of the texts each is a fault, before they are too many.
			if found == (name == "many texts") || p.Verdict != record.FilesFail || len(p.Faults) > 100 {
				t.Errorf("%s, %d faults, %+v", p.Verdict, len(p.Faults), p.Faults)
			}
		})
	}
}

// TestOutlineBeyondAll: an outline of more corners than any is none.
func TestOutlineBeyondAll(t *testing.T) {
	for _, layer := range []string{"PROFILE", "OUTLINE"} {
		file := map[string]string{"PROFILE": sideIn, "OUTLINE": frontOut}[layer]
		f := build(t, harmed("R2000", ""))
		d := drawn(t, f.files[file])
		corners := make([][2]float64, 9000)
		for i := range corners {
			a := 2 * math.Pi * float64(i) / float64(len(corners))
			corners[i] = [2]float64{250 + 250*math.Cos(a), 70 + 70*math.Sin(a)}
		}
		d.reshape(d.first(layer), corners)
		f.files[file] = d.data()
		p := f.proof(t, prove.Options{})
		if len(p.Faults) == 0 || p.Faults[0].Code != "no-outline" || p.Faults[0].File != file {
			t.Errorf("%s: %s, %+v", layer, p.Verdict, p.Faults)
		}
	}
}
