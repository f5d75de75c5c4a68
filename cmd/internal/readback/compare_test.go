package readback

import (
	"reflect"
	"testing"
)

// TestAgree: the same digits must be the same number; a number with more digits must round
// to one with fewer.
func TestAgree(t *testing.T) {
	fact := func(value string, step float64) Fact { return Fact{Value: value, Step: step} }
	for _, c := range []struct {
		a, b Fact
		mm   bool // they agree in mm
	}{
		{fact("9.07", 0.01), fact("9.08", 0.01), false},
		{fact("5", 0.01), fact("5.00", 0.01), true},
		{fact("9.074999", 1e-6), fact("9.07", 0.01), true},
		{fact("9.0751", 1e-6), fact("9.07", 0.01), false},
		{fact("9.07498", 1e-6), fact("9.08", 0.01), true}, // within what computing moves of the middle
		{fact("9.0749", 1e-6), fact("9.08", 0.01), false},
		{fact("17 5/8", 0.001), fact("17.625", 1e-6), true},
		{fact("17 5/8", 0.001), fact("17.6256", 1e-6), false},
		{fact("-1/64", 0.001), fact("-0.016", 0.001), true}, // -0.015625 in other digits
		{fact("tight", 0), fact("loose", 0), false},
		{fact("all", 0), fact("all", 0), true},
		{fact("1", 0), fact("1.0", 0), false}, // words
	} {
		if (Job{Units: "mm"}).agree(c.a, c.b) != c.mm || (Job{Units: "mm"}).agree(c.b, c.a) != c.mm {
			t.Errorf("%+v and %+v agree: %t", c.a, c.b, !c.mm)
		}
	}
}

// TestTableOf: columns are where every line has two blanks, however wide a cell is.
func TestTableOf(t *testing.T) {
	got := tableOf([]string{
		"part           pieces  cuts",
		"side of a box       4  inside face",
		"front               2  ",
	})
	want := printedTable{head: []string{"part", "pieces", "cuts"}, rows: [][]string{{"side of a box", "4", "inside face"}, {"front", "2", ""}}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%+v", got)
	}
}

// TestNamed: a line is parted where it begins with drawers of the job, and nowhere else.
func TestNamed(t *testing.T) {
	job := Job{Drawers: []string{"a-1", "a-2", "b"}}
	for line, want := range map[string]int{"a-1, b and 2 more: tight": 4, "b: side: thin": 1, "a: the diagonals differ": 0, "no name": 0} {
		drawers, more, _ := job.named(line)
		if len(drawers)+more != want {
			t.Errorf("%q names %v and %d more", line, drawers, more)
		}
	}
}
