package record

import "testing"

// TestGrainAlong: a sheet says the side along which its grain runs, which is its length whatever order the job writes
// its size in; one without a grain and one as wide as long say none.
func TestGrainAlong(t *testing.T) {
	size := SheetSize{Length: 1220, Width: 2440}
	for _, across := range []bool{false, true} {
		if side, ok := (SheetStock{Grained: true, GrainAcross: across}).GrainAlong(size); !ok || side != 1220 {
			t.Error(side, ok)
		}
	}
	if _, ok := (SheetStock{}).GrainAlong(size); ok {
		t.Error("a sheet without a grain says one")
	}
	if _, ok := (SheetStock{Grained: true}).GrainAlong(SheetSize{Length: 1525, Width: 1525}); ok {
		t.Error("a square sheet says one")
	}
}
