package router

import (
	"fmt"
	"slices"
	"testing"

	"drawerwright/geom/mill"

	"pgregory.net/rapid"
)

var split = Options{Split: true}

// TestRuns: a bit that comes up again has another file, behind what is cut between.
func TestRuns(t *testing.T) {
	bits := []mill.Bit{{Name: "big", Tool: 1}, {Name: "small", Tool: 2}, {Name: "no number"}}
	layers := func(bits ...int) (list []Layer) {
		for i, b := range bits {
			list = append(list, Layer{Name: fmt.Sprint(i), Bit: b})
		}
		return list
	}
	for _, c := range []struct {
		layers []Layer
		want   []string // the file and its layers
	}{
		{layers(0, 0, 1, 1, 0),
			[]string{"a.inside.1.t1-big.dxf 0 1", "a.inside.2.t2-small.dxf 2 3", "a.inside.3.t1-big.dxf 4"}},
		{layers(2), []string{"a.inside.1.no-number.dxf 0"}},
		{layers(0, -1, 0, 1), []string{"a.inside.1.t1-big.dxf 0 2", "a.inside.2.t2-small.dxf 3"}},
		{layers(-1), nil},
		{nil, nil},
	} {
		if list := (Options{}).Runs("a.inside.dxf", c.layers, bits); list != nil {
			t.Errorf("%v, though none is asked for", list)
		}
		var got []string
		for _, r := range split.Runs("a.inside.dxf", c.layers, bits) {
			text := r.File
			for _, l := range r.Layers {
				text += " " + l.Name
			}
			got = append(got, text)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v, want %v", got, c.want)
		}
	}
}

// TestRunsAreTheWhole: one after the other, in the order in which a folder lists their files,
// runs are the layers of the drawing in its order; each has one bit, and the next another.
func TestRunsAreTheWhole(t *testing.T) {
	bits := []mill.Bit{{Name: "a"}, {Name: "b", Tool: 7}, {Name: "c"}}
	rapid.Check(t, func(t *rapid.T) {
		var layers []Layer
		for i, b := range rapid.SliceOfN(rapid.IntRange(0, 2), 0, 40).Draw(t, "bits") {
			layers = append(layers, Layer{Name: fmt.Sprint(i), Bit: b})
		}
		list := split.Runs("x.dxf", layers, bits)
		files := make(map[string]ToolRun)
		var names []string
		for i, r := range list {
			if names = append(names, r.File); i > 0 && r.Bit == list[i-1].Bit {
				t.Fatalf("the bit is not changed before %s", r.File)
			}
			files[r.File] = r
		}
		slices.Sort(names)
		var got []string
		for _, n := range names {
			for _, l := range files[n].Layers {
				if got = append(got, l.Name); bits[l.Bit] != files[n].Bit {
					t.Fatalf("%s has a layer of another bit", n)
				}
			}
		}
		var want []string
		for _, l := range layers {
			want = append(want, l.Name)
		}
		if !slices.Equal(got, want) {
			t.Fatalf("%v, want %v", got, want)
		}
	})
}
