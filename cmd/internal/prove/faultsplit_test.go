package prove_test

import (
	"strings"
	"testing"

	"drawerwright/cmd/internal/prove"
)

// TestFaultsOfBitFiles: a file of one bit that is not what the whole drawing has for it is
// named, with its line.
func TestFaultsOfBitFiles(t *testing.T) {
	job := jobOf(manyBits, "dxf: {split: cutter}")
	f := build(t, job)
	var name string
	for _, l := range f.report(t).Layers {
		if l.Operation == "dado" {
			name = l.BitFile
			break
		}
	}
	if name == "" {
		t.Fatal("no file of a bit")
	}
	for what, c := range map[string]struct {
		code string
		harm func(*folder)
	}{
		"lost":       {"missing-file", func(f *folder) { delete(f.files, name) }},
		"no drawing": {"unreadable", func(f *folder) { f.files[name] = []byte("0\nEOF") }},
		"a line moved": {"moved", func(f *folder) {
			d := drawn(t, f.files[name])
			d.first("DADO").points(func(x, y float64) (float64, float64) { return x + 0.01, y })
			f.files[name] = d.data()
		}},
		"a line lost": {"count", func(f *folder) { d := drawn(t, f.files[name]); d.remove(d.first("DADO")); f.files[name] = d.data() }},
		"another layer": {"unlisted-layer", func(f *folder) {
			f.files[name] = []byte(strings.ReplaceAll(string(f.files[name]), "DADO_INSIDE", "DADO_INNER"))
		}},
	} {
		t.Run(what, func(t *testing.T) {
			f := build(t, job)
			c.harm(f)
			found := false
			for _, p := range f.proofs(t, prove.Options{}) {
				for _, fault := range p.Faults {
					found = found || fault.Code == c.code && fault.File == name
				}
			}
			if !found {
				t.Errorf("no %s at %s", c.code, name)
			}
		})
	}
}
