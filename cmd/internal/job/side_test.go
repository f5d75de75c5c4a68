package job

import (
	"fmt"
	"strings"
	"testing"
)

// One number of a size is written as the size was written; the others stay what they are.
func TestEnterSide(t *testing.T) {
	for _, c := range []struct {
		was   string
		side  int
		typed string
		is    string
	}{
		{"400 x 100 x 450", 0, "480", "480 x 100 x 450"},
		{"400 x 100 x 450", 2, " 500 ", "400 x 100 x 500"},
		{"[400, 100, 450]", 1, "90", "[400, 90, 450]"},
		{"[18, 5, 20 in]", 0, "19 in", "[19 in, 5 in, 20 in]"},
		{"[18, 5, 20 in]", 1, "4", "[18 in, 4 in, 20 in]"},
		{"400 x 100 x 450", 0, "18 in", "18 in x 100 mm x 450 mm"},
		{"17-5/8 x 5 1/2 x 14 in", 0, "18", "18 x 5 1/2 x 14 in"},
		{"17-5/8 x 5 1/2 x 14 in", 2, "15", "17-5/8 x 5 1/2 x 15 in"},
		{"17-5/8 x 5 1/2 x 14 in", 0, "450 mm", "450 mm x 5 1/2 in x 14 in"},
		{`17 5/8" x 4" x 18"`, 1, "5", `17 5/8" x 5" x 18"`},
		{"400mm x 100mm x 450mm", 0, "480", "480 mm x 100mm x 450mm"},
		{"400 x 100 x 450", 2, "5oo", "400 x 100 x 5oo"}, // a slip, and what mends it
		{"400 x 100 x 5oo", 2, "5000", "400 x 100 x 5000"},
		{"4oo x 100 x 450", 0, "400", "400 x 100 x 450"},
		{"17 x 5o x 14 in", 1, "5", "17 x 5 x 14 in"},
		{"400 mm x 100 mm x 5oo", 2, "500", "400 mm x 100 mm x 500 mm"},
		{"[400, 1oo, 450]", 1, "100", "[400, 100, 450]"},
	} {
		file := strings.Replace(formFile, "400 x 100 x 450", c.was, 1)
		want := strings.Replace(formFile, "400 x 100 x 450", c.is, 1)
		got, err := Enter([]byte(file), c.typed, "drawers", "0", "outside", fmt.Sprint(c.side))
		if err != nil || string(got) != want {
			t.Errorf("%q as side %d of %s: %v\n%s", c.typed, c.side, c.was, err, got)
		}
	}
}

// What is no size, no side of it, or no single number is refused and nothing is written.
func TestEnterSideRefuses(t *testing.T) {
	for _, c := range []struct {
		path, typed string
		side        int
	}{
		{"drawers/0/outside", "", 0}, {"drawers/0/outside", "4 x 5", 0}, {"drawers/0/outside", "4, 5", 0},
		{"drawers/0/outside", "4", 3}, {"drawers/0/outside", "4", -1}, {"drawers/0/name", "4", 0},
		{"drawers/7/outside", "4", 0}, {"stock/birch/thickness", "4", 0}, {"", "4", 0},
	} {
		path := append(strings.Split(c.path, "/"), fmt.Sprint(c.side))
		if got, err := Enter([]byte(formFile), c.typed, path...); err == nil {
			t.Errorf("%q as side %d of %s is taken:\n%s", c.typed, c.side, c.path, got)
		}
	}
	broken := strings.Replace(formFile, "400 x 100 x 450", "400 x 100", 1)
	if _, err := Enter([]byte(broken), "4", "drawers", "0", "outside", "0"); err == nil {
		t.Error("a size of two numbers takes one for its first")
	}
}
