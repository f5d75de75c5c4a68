package present

import (
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// TestKerfNote: pieces are cut off a board of 1000 with a kerf of 3. Of 331.2 the third is what two cuts leave, 331.6:
// 0.4 over, 0.2 for each. Of 330.2 three cuts leave a waste of 0.4. With 0.5 for each cut and more nothing is said.
func TestKerfNote(t *testing.T) {
	for piece, want := range map[float64]string{331.2: "more than 3.2 mm cut 3 has", 330.9: "", 300: "",
		330.2: "more than 3.13 mm cut 3 has"} {
		k := record.SheetStock{Kerf: 3}
		for left := 1000.0; left >= piece; {
			c := record.SawCut{Kind: sledCut,
				Workpiece: record.Workpiece{Name: "1A", Length: record.Length(left), Width: 50},
				Yields:    &record.Workpiece{Length: record.Length(piece), Width: 50}}
			if left -= piece + 3; left > 0 {
				c.Remainder = &record.Workpiece{Name: "1A", Length: record.Length(left), Width: 50, Waste: left < piece}
			}
			k.Cuts = append(k.Cuts, c)
		}
		if said := kerfNote(k, geom.Millimeter); want == "" && said != "" || !strings.Contains(said, want) {
			t.Errorf("%g: %q", piece, said)
		}
	}
}
