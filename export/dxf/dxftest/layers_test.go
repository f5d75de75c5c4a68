package dxftest_test

import (
	"errors"
	"slices"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/dxf/dxftest"
)

// The layers of a file come with their colors and line types, layer 0 first.
func TestLayers(t *testing.T) {
	for version, linetype := range map[dxf.Version]string{dxf.R12: "CONTINUOUS", dxf.R2000: "Continuous"} {
		got, err := dxftest.Layers([]byte(file(t, version)))
		if err != nil {
			t.Fatal(err)
		}
		want := []dxftest.Layer{{Name: "0", Color: 7, Linetype: linetype}, {Name: "CUT", Color: 1, Linetype: linetype}, {Name: "LINE", Color: 2, Linetype: linetype}}
		if !slices.Equal(got, want) {
			t.Errorf("version %d: %v, want %v", version, got, want)
		}
	}
	if _, err := dxftest.Layers([]byte("x\ny\n")); !errors.Is(err, dxftest.ErrTags) {
		t.Errorf("not tags: %v", err)
	}
}
