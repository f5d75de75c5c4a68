package files_test

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/job"
	"drawerwright/preview/glb"
)

// madeOf is a job worked out.
func madeOf(t testing.TB, text string) batch.Batch {
	t.Helper()
	j, problems := job.Read("job.yaml", strings.NewReader(text))
	if problems.Failed() {
		t.Fatal(problems)
	}
	b, _ := batch.Bare(j)
	return b
}

// TestMilledOf: what the page shows of milled parts is what a build writes, byte for byte, where
// the job has them milled; and only there.
func TestMilledOf(t *testing.T) {
	data, err := os.ReadFile("../../../samples/router-boxes.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	wrote, _ := written(t, text)
	b := madeOf(t, text)
	for i, d := range b.Drawers {
		boxed, err := files.BoxOf(d, files.MilledOf(b, i))
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := glb.Write(&out, boxed.Scene, boxed.Scene.Groups[0]); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(out.Bytes(), wrote[filing.BoxScene(d.Folder)]) {
			t.Errorf("%s is another on the page than in its file", d.Spec.Name)
		}
	}
	for _, designed := range []string{text + "\npreview: designed\n", sawn} {
		b, cut := madeOf(t, designed), 0
		for i := range b.Drawers {
			cut += len(files.MilledOf(b, i))
		}
		if cut > 0 || len(b.Drawers) == 0 {
			t.Errorf("%d parts of %d drawers are milled where the design is shown", cut, len(b.Drawers))
		}
	}
}

// sawn is a job of a table saw.
const sawn = `units: mm
stock: {ply 12: {thickness: 12}, ply 6: {thickness: 6}}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: a, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6}
`

// sixty is a job of so many routed drawers, each of another size.
func sixty() string {
	var b strings.Builder
	b.WriteString("units: mm\nstock:\n  birch: {thickness: [12.2, 12.15, 12.25]}\n  ply: {thickness: [5.9, 5.85, 5.95]}\n" +
		"cutter: {kind: router, diameter: 6}\nrouter: {tabs: {}, onion-skin: 0.4}\ndrawers:\n")
	for i := range 60 {
		fmt.Fprintf(&b, "  - {name: d%d, outside: %d x %d x %d, sides: birch, bottom: ply}\n", i, 350+7*i, 90+13*i%150,
			400+11*i%200)
	}
	return b.String()
}

// BenchmarkScene is what the milled scenes of 60 drawers cost, from drawings made and read back.
func BenchmarkScene(b *testing.B) {
	all := madeOf(b, sixty())
	for b.Loop() {
		for i, d := range all.Drawers {
			if _, err := files.BoxOf(d, files.MilledOf(all, i)); err != nil {
				b.Fatal(err)
			}
		}
	}
}
