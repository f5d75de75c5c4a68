package outside

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
)

// occt compiles the reader of STEP files.
func occt(t *testing.T) (program string) {
	t.Helper()
	program = filepath.Join(t.TempDir(), "solids")
	args := []string{"-Wall", "-Wextra", "-Werror", "-isystem", "/usr/include/opencascade", "-o", program, "occt/solids.cpp"}
	for _, library := range []string{"KXDESTEP", "KXCAF", "KLCAF", "KCAF", "KXSBase", "KTopAlgo", "KBRep", "KG3d", "KMath", "Kernel"} {
		args = append(args, "-lT"+library)
	}
	if out, err := exec.Command("g++", args...).CombinedOutput(); err != nil {
		t.Fatalf("g++: %v\n%s", err, out)
	}
	return program
}

// exactSolid is what occt/solids.cpp reports of a solid.
type exactSolid struct {
	File, Part, Piece               string
	Valid                           bool
	Volume                          float64
	Bounds                          [6]float64
	Planes, Cylinders, Others, Open int
}

// held is the volume of a part, and how far an exact solid may be off: as milled by what shapely
// makes of its drawings, else in closed form by the outlines of the report.
func (r report) held(t *testing.T, dir string, p part) (volume, within float64) {
	t.Helper()
	if r.solidAsCut(p) {
		volume = partsMilled(t, dir)[p.Name].Trimmed
	} else {
		panel := geom.Panel{Outline: loopIn(p.Outline, r.mm()), Thickness: p.Thickness * r.mm()}
		for _, op := range p.Operations {
			k := geom.Pocket{Depth: op.Depth * r.mm(), Outline: loopIn(op.Outline, r.mm())}
			if op.Face == "outside" {
				k.Face = geom.Outside
			}
			if op.Kind == "flank" { // half of it, since its floor leans
				k.Depth /= 2
			}
			panel.Pockets = append(panel.Pockets, k)
		}
		volume = geomtest.Volume(panel)
	}
	return volume, sameMilled * volume
}

// loopIn is an outline of the report in mm.
func loopIn(of [][]float64, mm float64) (l geom.Loop) {
	for _, v := range of {
		at := geom.Vertex{Point: geom.Point{X: v[0] * mm, Y: v[1] * mm}}
		if len(v) > 2 {
			at.Bulge = v[2]
		}
		l = append(l, at)
	}
	return l
}

// stepDiffers holds the STEP files of a folder against its report.
func stepDiffers(t *testing.T, program, dir string, r report) error {
	t.Helper()
	files := glob(t, dir, ".step")
	if len(files) != len(r.Parts)+len(r.Drawers) {
		return fmt.Errorf("%d STEP files of %d parts and %d boxes", len(files), len(r.Parts), len(r.Drawers))
	}
	solids := lines[exactSolid](t, "", program, files...)
	want, within := map[string]float64{}, map[string]float64{}
	for _, p := range r.Parts {
		want[p.Name], within[p.Name] = r.held(t, dir, p)
	}
	alone := map[string]exactSolid{}
	for _, s := range solids {
		if !s.Valid || s.Open != 0 || s.Others != 0 {
			return fmt.Errorf("%s: %s %s: valid %t, %d open edges, %d other faces", s.File, s.Part, s.Piece, s.Valid,
				s.Open, s.Others)
		}
		if off := math.Abs(s.Volume - want[s.Part]); !(off <= within[s.Part]) {
			return fmt.Errorf("%s: %s holds %.4f mm3, want %.4f within %.4f", s.File, s.Part, s.Volume, want[s.Part],
				within[s.Part])
		}
		if s.Piece == "" {
			alone[s.Part] = s
		}
	}
	for _, p := range r.Parts {
		own, read := alone[p.Name]
		if !read {
			return fmt.Errorf("%s: no solid", p.Name)
		}
		box := filepath.Join(dir, filepath.Dir(p.Files.STL), "assembled.step")
		var stand []exactSolid
		for _, s := range solids {
			if s.File == box && s.Part == p.Name {
				stand = append(stand, s)
			}
		}
		for _, at := range p.Placements {
			bounds := at.bounds(own.Bounds, r.mm())
			if !slices.ContainsFunc(stand, func(s exactSolid) bool { return exactBounds(s.Bounds, bounds) }) {
				return fmt.Errorf("%s: no %s within %.3f, of %d", box, p.Name, bounds, len(stand))
			}
		}
		if len(stand) != len(p.Placements) {
			return fmt.Errorf("%s: %d pieces of %s, want %d", box, len(stand), p.Name, len(p.Placements))
		}
	}
	return nil
}

// bounds are those of a part that stands there, by its own, in mm.
func (s stand) bounds(own [6]float64, mm float64) (b [6]float64) {
	vec := func(v [3]float64, k float64) geom.Vec3 { return geom.Vec3{X: v[0] * k, Y: v[1] * k, Z: v[2] * k} }
	at := geom.Placement{Origin: vec(s.Origin, mm), X: vec(s.X, 1), Y: vec(s.Y, 1)}
	p, q := at.Apply(geom.Vec3{X: own[0], Y: own[1], Z: own[2]}), at.Apply(geom.Vec3{X: own[3], Y: own[4], Z: own[5]})
	return [6]float64{min(p.X, q.X), min(p.Y, q.Y), min(p.Z, q.Z), max(p.X, q.X), max(p.Y, q.Y), max(p.Z, q.Z)}
}

func exactBounds(a, b [6]float64) bool {
	for i := range a {
		if math.Abs(a[i]-b[i]) > 1e-3 {
			return false
		}
	}
	return true
}

func withStep(job string) string {
	if strings.Contains(job, "\ncad: ") {
		return job
	}
	return strings.TrimRight(job, "\n") + "\ncad: step\n"
}

// TestSTEP: Open CASCADE Technology reads every STEP file of every sample, and of jobs that have
// what the samples do not, as they are milled: valid closed solids of planes and cylinders by
// their names, with the volume that is known of them to 1e-6, in the places of the report.
func TestSTEP(t *testing.T) {
	t.Parallel()
	program := occt(t)
	jobs := []extraJob{}
	for _, f := range sampleFiles(t) {
		jobs = append(jobs, extraJob{name: filepath.Base(f), text: textOf(t, f)})
	}
	for _, j := range extraJobs {
		if slices.Contains(oftenMilled, j.name) {
			jobs = append(jobs, extraJob{name: j.name, text: asMilled(j.text)})
		}
	}
	for _, j := range jobs {
		t.Run(j.name, func(t *testing.T) {
			dir, r := build(t, withStep(j.text))
			if err := stepDiffers(t, program, dir, r); err != nil {
				t.Error(err)
			}
		})
	}
}

// TestSTEPFinds: a solid that is open, thicker, elsewhere or of another name is seen. Faces that
// look the wrong way the library mends; ours finds them.
func TestSTEPFinds(t *testing.T) {
	t.Parallel()
	program := occt(t)
	dir, r := build(t, withStep(textOf(t, "../../samples/study-desk.yaml")))
	if err := stepDiffers(t, program, dir, r); err != nil {
		t.Fatal(err)
	}
	for what, c := range map[string]struct{ old, now string }{
		"a face lost":     {`CLOSED_SHELL\('',\(#\d+,`, "CLOSED_SHELL('',("},
		"a solid thicker": {`(CARTESIAN_POINT\('',\([^,]*,[^,]*),12\.454\d*\)`, "$1,12.47)"},
		"a piece aside":   {`(ITEM_DEFINED_TRANSFORMATION\('','',)(#\d+),#\d+`, "$1$2,$2"},
		"a name":          {`'pedestal-1-side'`, "'pedestal-1-slide'"},
	} {
		spoilt := t.TempDir()
		if err := os.CopyFS(spoilt, os.DirFS(dir)); err != nil {
			t.Fatal(err)
		}
		planted := false
		for _, file := range glob(t, spoilt, ".step") {
			text := textOf(t, file)
			changed := regexp.MustCompile(c.old).ReplaceAllString(text, c.now)
			planted = planted || changed != text
			if err := os.WriteFile(file, []byte(changed), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if !planted {
			t.Fatalf("%s is planted nowhere", what)
		}
		if err := stepDiffers(t, program, spoilt, r); err == nil {
			t.Errorf("%s is not seen", what)
		} else {
			t.Logf("%s: %v", what, err)
		}
	}
}
