package main

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// oneBox is a box of 460 x 140 x 500 from boards of 12.2 and 5.9: its fence distance
// and cutter height are 6.1, its plays 0.2.
const oneBox = `units: mm
stock:
  birch: {thickness: 12.2}
  thin ply: {thickness: 5.9}
cutter: {kind: router, diameter: 3}
joinery: {dado-clearance: 0.2}
dxf: {files: "{part}"}
drawers:
  - {name: one, outside: 460 x 140 x 500, sides: birch, bottom: thin ply}
`

// oneBuilt moves the test into an empty folder, with the box in out.
func oneBuilt(t *testing.T) {
	t.Helper()
	inTemp(t)
	if code, _, errs := call(t, oneBox, "build", "-", "-o", "out"); code != exitDone {
		t.Fatal(errs)
	}
}

// provenJSON proves with --json and reads all of it: what it does not know is an error.
func provenJSON(t *testing.T, args ...string) (proven, int) {
	t.Helper()
	code, out, errs := call(t, "", append([]string{"prove", "--json"}, args...)...)
	d := json.NewDecoder(strings.NewReader(out))
	d.DisallowUnknownFields()
	var p proven
	if err := d.Decode(&p); err != nil || errs != "" {
		t.Fatalf("exit %d, %v: %s%s", code, err, out, errs)
	}
	if p.OK != (code == exitDone) || p.Proof == nil || p.Strangers == nil {
		t.Errorf("exit %d with %+v", code, p)
	}
	r, err := record.Read([]byte(out)) // in millimeters
	if err != nil {
		t.Fatal(err)
	}
	p.Proof = r.Proof
	return p, code
}

// TestProveSaysWhatIsTried: boards that were not measured come first, and with them what is out of limits.
func TestProveSaysWhatIsTried(t *testing.T) {
	oneBuilt(t)
	_, asBuilt, _ := call(t, "", "prove", "out")
	_, thick, errs := call(t, "", "prove", "out", "--thickness", "birch=12.5", "--depth-error", "0.1")
	const want = "Tried with birch=12.5 and depth-error 0.1, not with what the job has.\n" +
		"! Proven: 1 drawer goes together as drawn, 1 of them out of limits; "
	if strings.Contains(asBuilt, "Tried") || !strings.HasPrefix(thick, want) {
		t.Errorf("%s\n%s%s", asBuilt, thick, errs)
	}
}

func TestProveExitCodes(t *testing.T) {
	oneBuilt(t)
	if err := os.MkdirAll("empty", 0o755); err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		args []string
		code int
	}{
		"good":                  {[]string{"out"}, exitDone},
		"good, as JSON":         {[]string{"out", "--json"}, exitDone},
		"boards as they are":    {[]string{"out", "--thickness", "birch=12.2", "--thickness", "thin ply=5.9"}, exitDone},
		"boards in inches":      {[]string{"out", "--thickness", "birch=0.482 in"}, exitDone},
		"a fraction":            {[]string{"out", "--thickness", `birch=31/64"`}, exitDone}, // 12.303: 0.1 of play is left
		"thick boards":          {[]string{"out", "--thickness", "birch=12.6"}, exitJob},
		"thick boards, as JSON": {[]string{"out", "--json", "--thickness", "birch=12.6"}, exitJob},
		"all boards alike":      {[]string{"out", "--thickness", "12.2"}, exitJob}, // the bottom too
		"errors":                {[]string{"out", "--flip-error", "0.1,0.1", "--depth-error", "-0.1 mm"}, exitDone},
		"far too deep":          {[]string{"out", "--depth-error", "12"}, exitJob},
		"help":                  {[]string{"--help"}, exitDone},
		"no folder":             {nil, exitUsage},
		"two folders":           {[]string{"out", "out"}, exitUsage},
		"not there":             {[]string{"nowhere"}, exitJob},
		"a file":                {[]string{"out/report.json"}, exitJob},
		"no report in it":       {[]string{"empty"}, exitJob},
		"unknown stock":         {[]string{"out", "--thickness", "oak=12"}, exitUsage},
		"no length":             {[]string{"out", "--thickness", "birch=thick"}, exitUsage},
		"nothing at all":        {[]string{"out", "--thickness", ""}, exitUsage},
		"no stock":              {[]string{"out", "--thickness", "=12x"}, exitUsage},
		"a board of nothing":    {[]string{"out", "--thickness", "birch=0"}, exitUsage},
		"a board below nothing": {[]string{"out", "--thickness", "birch=-12"}, exitUsage},
		"a beam":                {[]string{"out", "--thickness", "birch=1 m"}, exitUsage},
		"flip of words":         {[]string{"out", "--flip-error", "a little"}, exitUsage},
		"half a flip":           {[]string{"out", "--flip-error", "0.3,"}, exitUsage},
		"flip of three":         {[]string{"out", "--flip-error", "0.3,0.1,0.2"}, exitUsage},
		"depth of words":        {[]string{"out", "--depth-error", "deep"}, exitUsage},
		"unknown flag":          {[]string{"out", "--thicknes", "12"}, exitUsage},
	} {
		t.Run(name, func(t *testing.T) {
			code, out, errs := call(t, "", append([]string{"prove"}, c.args...)...)
			if code != c.code {
				t.Errorf("exit %d, want %d:\n%s%s", code, c.code, out, errs)
			}
			if told := out+errs != ""; !told || code == exitUsage && out != "" || code == exitDone && errs != "" {
				t.Errorf("exit %d with standard output %q, standard error %q", code, out, errs)
			}
		})
	}
}

// TestProveNumbers: what the flags do, in closed form.
func TestProveNumbers(t *testing.T) {
	oneBuilt(t)
	for name, c := range map[string]struct {
		args                []string
		play, width, recess float64
		bottom, depth       float64
		verdict             string
	}{
		"as built":           {nil, 0.2, 460, 0, 0.2, 500, record.Goes},
		"thicker boards":     {[]string{"--thickness", "birch=12.3"}, 0.1, 460.2, 0, 0.2, 500, record.Goes}, // cut down from the outside
		"a thinner bottom":   {[]string{"--thickness", "thin ply=5.8"}, 0.2, 460, 0, 0.3, 500, record.Goes},
		"in inches":          {[]string{"--thickness", `birch=31/64"`}, 0.2 - (12.303125 - 12.2), 460 + 2*(12.303125-12.2), 0, 0.2, 500, record.Goes},
		"the last one holds": {[]string{"--thickness", "12", "--thickness", "birch=12.3", "--thickness", "thin ply=5.8"}, 0.1, 460.2, 0, 0.3, 500, record.Goes},
		"turned off along":   {[]string{"--flip-error", "0.2"}, 0.2, 460.2, 0, 0.2, 500, record.Goes},
		"turned off back":    {[]string{"--flip-error", "-0.2"}, 0.2, 460.2, 0, 0.2, 500, record.Goes},
		"turned off across":  {[]string{"--flip-error", "0,0.5"}, 0.2, 460, 0, 0.2, 500, record.Goes},
		"too deep":           {[]string{"--depth-error", "0.1"}, 0.3, 460, -0.1, 0.2, 500.2, record.Goes},
		"too shallow":        {[]string{"--depth-error", "-0.1 mm"}, 0.1, 460.2, 0.1, 0.2, 500, record.Goes},
		"too shallow to go":  {[]string{"--depth-error", "-0.25"}, -0.05, 0, 0, 0.2, 0, record.GoesNot},
	} {
		t.Run(name, func(t *testing.T) {
			p, _ := provenJSON(t, append([]string{"out"}, c.args...)...)
			if len(p.Proof) != 1 || p.Units != "mm" || len(p.Strangers) != 0 {
				t.Fatalf("%+v", p)
			}
			one := p.Proof[0]
			is := func(what string, got record.Range, want float64) {
				t.Helper()
				if math.Abs(got.Mean.MM()-want) > 2e-6 || got.Min != got.Mean || got.Max != got.Mean {
					t.Errorf("%s %+v, want %g", what, got, want)
				}
			}
			if one.Verdict != c.verdict || one.Drawer != "one" || len(one.Faults) != 0 || len(one.Corners) != 4 || len(one.Cuts) != 9 || len(one.Assembled) != 5 {
				t.Errorf("%+v", one)
			}
			for _, k := range one.Corners {
				is("play", k.Clearance, c.play)
				if c.verdict == record.Goes {
					is("recess", k.Recess, c.recess)
				}
			}
			is("bottom clearance", one.Bottom.Clearance, c.bottom)
			if c.verdict == record.Goes {
				is("width", one.Width, c.width)
				is("depth", one.Depth, c.depth)
			}
		})
	}
}

// TestDetailIsNoVerdict: with all its numbers prove finds what it finds without, at a round
// pull with slots between tabs too, which is chords here and there.
func TestDetailIsNoVerdict(t *testing.T) {
	inTemp(t)
	const job = "units: mm\nstock: {b: {thickness: 12}, c: {thickness: 6}}\ncutter: {kind: router, diameter: 6, reach: 25}\njoinery: {faces: one}\nrouter: {tabs: {}}\n" +
		"drawers: [{name: t, outside: 400 x 150 x 400, sides: b, bottom: c, pull: {shape: half-round}}]\n"
	if code, _, errs := call(t, job, "build", "-", "-o", "out"); code != exitDone {
		t.Fatal(errs)
	}
	if code, out, _ := call(t, "", "prove", "out"); code != exitDone {
		t.Fatal(out)
	}
	if p, code := provenJSON(t, "out"); code != exitDone {
		t.Errorf("%+v", p.Proof)
	}
}

// TestProveInInches: lengths without a unit are in the job's.
func TestProveInInches(t *testing.T) {
	samples := inTemp(t)
	if code, _, errs := call(t, "", "build", filepath.Join(samples, "inch-chest.yaml"), "-o", "out"); code != exitDone {
		t.Fatal(errs)
	}
	p, _ := provenJSON(t, "out", "--thickness", "quarter ply=0.230")
	same, _ := provenJSON(t, "out", "--thickness", "quarter ply=5.842 mm")
	if p.Units != "in" || !reflect.DeepEqual(p, same) {
		t.Errorf("0.230 is not 5.842 mm: %+v", p)
	}
	for _, one := range p.Proof { // a slot of 0.246 less 0.230
		if got := one.Bottom.Clearance.Mean.In(geom.Inch); math.Abs(got-0.016) > 1e-6 {
			t.Errorf("%s: bottom clearance %g in, want 0.016", one.Drawer, got)
		}
	}
}

// provenAsBuilt holds what prove says of a folder against what its report says.
func provenAsBuilt(t *testing.T, dir string, r record.Report) {
	t.Helper()
	p, code := provenJSON(t, dir)
	if code != exitDone || len(p.Proof) != len(r.Drawers) || len(r.Proof) != len(r.Drawers) {
		t.Fatalf("exit %d, %d proofs", code, len(p.Proof))
	}
	for i := range p.Proof {
		pieces := 0
		for _, part := range r.Parts {
			if part.Drawer == p.Proof[i].Drawer {
				pieces += len(part.Placements)
			}
		}
		if len(p.Proof[i].Cuts) == 0 || len(p.Proof[i].Assembled) != pieces {
			t.Errorf("%s: %d cuts, %d pieces, not %d", p.Proof[i].Drawer, len(p.Proof[i].Cuts),
				len(p.Proof[i].Assembled), pieces)
		}
		p.Proof[i].Cuts, p.Proof[i].Assembled = nil, nil
		if !reflect.DeepEqual(p.Proof[i], r.Proof[i]) {
			t.Errorf("proven %+v\nbuilt %+v", p.Proof[i], r.Proof[i])
		}
	}
}

// harm changes a file of the folder.
func harm(t *testing.T, name string, change func([]byte) []byte) {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, change(data), 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestProveFaults: what was done to the files since is reported, on standard output,
// and the exit code is 1.
func TestProveFaults(t *testing.T) {
	const side = "out/router/parts/one-side.inside.dxf"
	for name, c := range map[string]struct {
		change func(t *testing.T)
		code   string
	}{
		"cut off":  {func(t *testing.T) { harm(t, side, func(b []byte) []byte { return b[:len(b)/2] }) }, "unreadable"},
		"lost":     {func(t *testing.T) { os.Remove(side) }, "missing-file"},
		"a folder": {func(t *testing.T) { os.Remove(side); os.Mkdir(side, 0o755) }, "missing-file"},
		"too large": {func(t *testing.T) {
			if err := os.Truncate(side, maxDrawing+1); err != nil {
				t.Fatal(err)
			}
		}, "missing-file"},
		"no unit": {func(t *testing.T) {
			harm(t, side, func(b []byte) []byte {
				b = bytes.Replace(b, []byte("$INSUNITS\n70\n4\n"), []byte("$INSUNITS\n70\n0\n"), 1)
				return bytes.Replace(b, []byte("Units: millimeters"), []byte("Exported"), 1)
			})
		}, "units"},
		"line endings": {func(t *testing.T) {
			harm(t, side, func(b []byte) []byte { return bytes.ReplaceAll(b, []byte("\n"), []byte("\r\n")) })
		}, ""},
		"the other side": {func(t *testing.T) {
			in, err := os.ReadFile("out/router/parts/one-box-front.inside.dxf")
			if err != nil {
				t.Fatal(err)
			}
			harm(t, side, func([]byte) []byte { return in })
		}, "size"},
	} {
		t.Run(name, func(t *testing.T) {
			oneBuilt(t)
			c.change(t)
			p, code := provenJSON(t, "out")
			codes := []string{}
			for _, f := range p.Proof[0].Faults {
				codes = append(codes, f.Code)
			}
			found := p.Proof[0].Verdict == record.FilesFail && slices.Contains(codes, c.code)
			if c.code == "" { // no cut is another
				found = p.Proof[0].Verdict == record.Goes && len(codes) == 0
			}
			if code != exitJob || !found {
				t.Errorf("exit %d, %s: %q", code, p.Proof[0].Verdict, codes)
			}
			if code, out, errs := call(t, "", "prove", "out"); code != exitJob || !strings.Contains(strings.Join(strings.Fields(out), " "), strings.TrimPrefix(side, "out/")) || errs != "" {
				t.Errorf("exit %d with standard output %q, standard error %q", code, out, errs)
			}
		})
	}
}

// TestProveStrangers: drawings that the report does not know are named, and change nothing of the boxes.
func TestProveStrangers(t *testing.T) {
	oneBuilt(t)
	for _, name := range []string{"out/router/parts/old-side.inside.dxf", "out/router/parts/ONE.DXF",
		"out/router/sheets/old-1.inside.t1-big.dxf", "out/router/parts/notes.txt"} {
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	p, code := provenJSON(t, "out")
	want := []string{"router/parts/ONE.DXF", "router/parts/old-side.inside.dxf", "router/sheets/old-1.inside.t1-big.dxf"}
	if code != exitJob || p.Proof[0].Verdict != record.Goes || !slices.Equal(p.Strangers, want) {
		t.Errorf("exit %d, %s, %q, want %q", code, p.Proof[0].Verdict, p.Strangers, want)
	}
}

// TestProveStaysInside: a report that names files outside its folder gets nothing of
// them, though they are good drawings.
func TestProveStaysInside(t *testing.T) {
	oneBuilt(t)
	const side = "out/router/parts/one-side.inside.dxf"
	if err := os.Rename(side, "secret.dxf"); err != nil {
		t.Fatal(err)
	}
	here, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	if runtime.GOOS != "windows" { // where links take a right of their own
		if err := os.Symlink(filepath.Join(here, "secret.dxf"), "out/router/parts/link.dxf"); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"../secret.dxf", "router/../../secret.dxf", filepath.ToSlash(filepath.Join(here, "secret.dxf")), "router/parts/link.dxf", "", ".", "router", "/dev/zero", "con", "a\x00b", strings.Repeat("a/", 5000)} {
		harm(t, "out/report.json", func(data []byte) []byte {
			r, err := record.Read(data)
			if err != nil {
				t.Fatal(err)
			}
			r.Parts[0].Files.Inside = name
			for i := range r.Layers {
				if i < 3 { // the side's
					r.Layers[i].File = name
				}
			}
			out, err := record.JSON(r)
			if err != nil {
				t.Fatal(err)
			}
			return out
		})
		p, code := provenJSON(t, "out")
		if code != exitJob || p.Proof[0].Verdict != record.FilesFail || len(p.Proof[0].Cuts) > 6 { // those of front and back
			t.Errorf("%.40q: exit %d, %s, %d cuts", name, code, p.Proof[0].Verdict, len(p.Proof[0].Cuts))
		}
	}
	// The comparator: the same file in the folder is read.
	if err := os.Rename("secret.dxf", side); err != nil {
		t.Fatal(err)
	}
	harm(t, "out/report.json", func(data []byte) []byte {
		return bytes.ReplaceAll(data, []byte(strings.Repeat("a/", 5000)), []byte("router/parts/one-side.inside.dxf"))
	})
	if p, _ := provenJSON(t, "out"); p.Proof[0].Verdict != record.Goes {
		t.Errorf("%s: %+v", p.Proof[0].Verdict, p.Proof[0].Faults)
	}
}

// TestProveHostileReports: whatever stands in report.json, there is an end with
// exit code 1.
func TestProveHostileReports(t *testing.T) {
	oneBuilt(t)
	good, err := os.ReadFile("out/report.json")
	if err != nil {
		t.Fatal(err)
	}
	swap := func(old, other string) string {
		out := strings.Replace(string(good), old, other, 1)
		if out == string(good) {
			t.Fatalf("no %s in the report", old)
		}
		return out
	}
	for name, text := range map[string]string{
		"nothing":            "",
		"no JSON":            "out: 27 files",
		"null":               "null",
		"a list":             "[]",
		"a number":           "1",
		"nothing in it":      "{}",
		"cut off":            string(good[:len(good)/2]),
		"twice":              string(good) + string(good),
		"deep":               strings.Repeat("[", 1_000_000),
		"deep inside":        swap(`"drawers": [`, `"drawers": `+strings.Repeat(`[`, 100_000)+`1`+strings.Repeat(`]`, 100_000)+`, "x": [`),
		"another format":     swap(`"format": 6`, `"format": 1`),
		"another tool":       swap(`"tool": "drawerwright"`, `"tool": "some other"`),
		"no numbers":         swap(`"length": 500`, `"length": "500"`),
		"beyond all numbers": swap(`"length": 500`, `"length": 1e400`),
		"beyond all lengths": swap(`"length": 500`, `"length": 1e308`),
		"below nothing":      swap(`"length": 500`, `"length": -500`),
		"a huge count":       swap(`"format": 6`, `"format": 99999999999999999999`),
		"no drawers":         swap(`"drawers": [`, `"drawers": [], "x": [`),
		"no parts":           swap(`"parts": [`, `"parts": [], "x": [`),
		"no placements":      swap(`"placements": [`, `"placements": [], "x": [`),
		"no files":           swap(`"files": {`, `"files": {}, "x": {`),
		"no layers":          swap(`"layers": [`, `"layers": [], "x": [`),
		"no stocks":          swap(`"stocks": [`, `"stocks": [], "x": [`),
		"no operations":      swap(`"operations": [`, `"operations": [], "x": [`),
	} {
		t.Run(name, func(t *testing.T) {
			if err := os.WriteFile("out/report.json", []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
			code, out, errs := call(t, "", "prove", "out")
			if code != exitJob || out+errs == "" {
				t.Errorf("exit %d: %s%s", code, out, errs)
			}
			code, out, errs = call(t, "", "prove", "--json", "out")
			var anything struct {
				OK *bool `json:"ok"`
			}
			if err := json.Unmarshal([]byte(out), &anything); err != nil || code != exitJob || anything.OK == nil || *anything.OK || errs != "" {
				t.Errorf("as JSON: exit %d, %v: %.300s%s", code, err, out, errs)
			}
		})
	}
	t.Run("too large", func(t *testing.T) {
		if err := os.Truncate("out/report.json", maxReport+1); err != nil {
			t.Fatal(err)
		}
		if code, _, errs := call(t, "", "prove", "out"); code != exitJob || errs == "" {
			t.Errorf("exit %d: %s", code, errs)
		}
	})
	t.Run("a folder", func(t *testing.T) {
		if err := os.Remove("out/report.json"); err != nil {
			t.Fatal(err)
		}
		if err := os.Mkdir("out/report.json", 0o755); err != nil {
			t.Fatal(err)
		}
		if code, _, errs := call(t, "", "prove", "out"); code != exitJob || errs == "" {
			t.Errorf("exit %d: %s", code, errs)
		}
	})
}

// TestProveStopped: an interrupt ends it with exit code 1.
func TestProveStopped(t *testing.T) {
	oneBuilt(t)
	stopped, cancel := context.WithCancel(context.Background())
	cancel()
	var out, errs bytes.Buffer
	if code := run(stopped, []string{"prove", "out"}, streams{nil, &out, &errs}); code != exitJob || out.Len() != 0 || errs.Len() == 0 {
		t.Errorf("exit %d: %s%s", code, &out, &errs)
	}
}

// TestProveFullOutput: a screen that takes nothing is a failure.
func TestProveFullOutput(t *testing.T) {
	oneBuilt(t)
	for _, args := range [][]string{{"prove", "out"}, {"prove", "--json", "out"}} {
		var errs bytes.Buffer
		if code := run(context.Background(), args, streams{nil, full{}, &errs}); code != exitJob {
			t.Errorf("%q: exit %d", args, code)
		}
	}
}
