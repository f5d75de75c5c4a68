package prove_test

import (
	"slices"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// stripped is a drawing without its label, so that there is less to go through.
func stripped(t testing.TB, data []byte) []byte {
	d := drawn(t, data)
	all := slices.DeleteFunc(d.entities(), func(e entity) bool { return e.layer != "LABEL" })
	for _, e := range slices.Backward(all) {
		d.remove(e)
	}
	return d.data()
}

// maxFuzzed bounds the inputs, in bytes: a report and a drawing of one box.
const maxFuzzed = 64 << 10

// FuzzProve: no report and no drawing panics, what comes of them can be written as
// JSON, and only a box with all its corners goes together.
func FuzzProve(f *testing.F) {
	for _, text := range []string{harmed("R2000", ""), harmed("R12", ""), jobOf(sameBit, "router: {exact-slots: centerline, depth-from: spoilboard}\ndxf: {units: in, files: \"{part}\"}"),
		jobOf(oneBit, "joinery: {faces: one}\nrouter: {tabs: {}}\ndxf: {files: \"{part}\"}")} {
		made := build(f, text)
		for i, name := range []string{sideIn, frontIn, frontOut} { // in the order in which they are asked for
			data, ok := made.files[name]
			if !ok {
				continue
			}
			f.Add(made.files["report.json"], stripped(f, data), uint8(i))
		}
	}
	f.Add([]byte(`{"tool":"drawerwright","format":4,"units":"mm","drawers":[{"name":"a","parts":[]}]}`),
		[]byte("0\nEOF\n"), uint8(0))
	base := build(f, harmed("R2000", ""))
	f.Fuzz(func(t *testing.T, reported, drawing []byte, which uint8) {
		if len(reported) > maxFuzzed || len(drawing) > maxFuzzed {
			return
		}
		r, err := record.Read(reported)
		if err != nil {
			return
		}
		p, err := prove.New(record.Keep(r))
		if err != nil {
			return
		}
		asked := 0
		read := func(name string) ([]byte, error) {
			if asked++; asked == int(which)+1 {
				return drawing, nil
			}
			return base.ReadFile(name)
		}
		w := p.Worker()
		for i := range min(2, p.Drawers()) {
			out := w.Drawer(i, read, prove.Options{Detail: true, FlipAlong: 0.1, Depth: -0.05})
			if err := sensible(out); err != nil {
				t.Fatal(err)
			}
		}
	})
}
