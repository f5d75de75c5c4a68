package prove_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// Drawings of the box that is harmed. Its dados and rabbets are 6.1 deep, its
// dados 6.3 wide, drawn 1.5 + 1 past the edge for a bit of 3; the sides are 500 x
// 140, front and back 447.8 long.
const (
	sideIn   = "router/parts/one-side.inside.dxf"
	frontIn  = "router/parts/one-box-front.inside.dxf"
	frontOut = "router/parts/one-box-front.outside.dxf"
	backIn   = "router/parts/one-back.inside.dxf"
	backOut  = "router/parts/one-back.outside.dxf"
	bottomIn = "router/parts/one-bottom.inside.dxf"
	reported = "report.json"
)

func harmed(version, more string) string {
	return jobOf(oneBit, `dxf: {version: `+version+`, files: "{part}"}`+"\n"+more)
}

// moved is a shift of points.
func moved(dx, dy float64) func(x, y float64) (float64, float64) {
	return func(x, y float64) (float64, float64) { return x + dx, y + dy }
}

// seeded is one thing that goes wrong, and what is to be said of it.
type seeded struct {
	file   string               // the drawing that is harmed
	harm   func(*drawing) int   // gives the line of the fault, 0 for the whole file
	edit   func(*record.Report) // or the report
	more   string               // entries of the job
	folder func(*folder)        // or the files
	code   string               // of the fault
	at     string               // its file, if not the one that is harmed
	also   string               // codes of other faults that come of it
}

// faults are all that are tried, by what is wrong.
func faults() map[string]seeded {
	all := map[string]seeded{}
	for _, some := range []map[string]seeded{handedOn, harmedLines, harmedHoles, harmedLayers, harmedFiles, harmedReport, harmedCode} {
		maps.Copy(all, some)
	}
	return all
}

// bit is another diameter in the legend of a drawing.
func bit(file, operation string, diameter record.Length) func(*record.Report) {
	return func(r *record.Report) {
		for i := range r.Layers {
			if l := &r.Layers[i]; l.File == file && l.Operation == operation {
				l.Diameter = diameter
			}
		}
	}
}

// TestFaults: each mistake is reported by its code with its place, in either version
// of the format, and the same box without it has none.
func TestFaults(t *testing.T) {
	for name, c := range faults() {
		for _, version := range []string{"R2000", "R12"} {
			t.Run(name+", "+version, func(t *testing.T) {
				f := build(t, harmed(version, c.more))
				line := 0
				switch {
				case c.harm != nil:
					d := drawn(t, f.files[c.file])
					line = c.harm(d)
					f.files[c.file] = d.data()
				case c.folder != nil:
					f.t = t
					c.folder(f)
				default:
					f.edit(t, c.edit)
				}
				p := f.proof(t, prove.Options{})
				at := c.at
				if at == "" {
					at = c.file
				}
				want := append(strings.Fields(c.also), c.code)
				slices.Sort(want)
				var codes []string
				found := false
				for _, v := range p.Faults {
					codes = append(codes, v.Code)
					found = found || v.Code == c.code && v.File == at && (c.harm == nil || v.Line == line)
				}
				slices.Sort(codes)
				if codes = slices.Compact(codes); !found || p.Verdict != record.FilesFail || !slices.Equal(codes, want) {
					t.Errorf("%s at %s:%d, and %q in all: %s, %+v", c.code, at, line, want, p.Verdict, p.Faults)
				}
			})
		}
	}
}
