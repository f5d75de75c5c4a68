package sheets

import (
	"fmt"
	"strings"
	"testing"

	"drawerwright/cmd/internal/list"
	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// TestAllowance: boards that a guide cuts apart and the fence brings to size are larger by the kerf and 3 mm where
// there is wood for both, by 2 mm where there is less, and are cut to size along the guide where there is none.
func TestAllowance(t *testing.T) {
	const narrow, wide = 2*(490+2) + 3, 2*(490+6) + 3
	for length, want := range map[int]string{narrow - 1: "", narrow: "2", wide - 1: "2", wide: "6", 1100: "6"} {
		csv := fmt.Sprintf("kind,name,length,width,count\npart,a,490,600,2\nsheet,s,%d,600,\n", length)
		l, err := list.Read("list", strings.NewReader(csv), geom.Millimeter)
		if err != nil {
			t.Fatal(err)
		}
		c := Cutting{Rules: nest.Rules{Kerf: 3e6}, Capacity: Capacity{600e6, 600e6, 900e6, 900e6}}
		p, err := Listed(t.Context(), "s", l, c, nest.Options{Effort: 20})
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, cut := range p.Stocks[0].Cuts {
			if cut.Rough {
				got = geom.Length(cut.Setting - 490e6).Number(geom.Millimeter)
			}
		}
		if got != want {
			t.Errorf("a sheet of %d mm: a rough cut is %q mm larger, want %q", length, got, want)
		}
	}
}
