// Command peers measures drawerwright against what others do, in one run on one
// machine, and prints the table of README.md beside this file:
//
//	go run ./testdata/peers
//	go run ./testdata/peers page
//	go run ./testdata/peers scale
//	go run ./testdata/peers zip
//
// the second that of the page in a browser, the third how time and memory grow with a job, the fourth what memory the
// page takes where it gives a whole job as a zip. It needs what
// `.ci/check` installs: Debian's python3-ezdxf, and manifold-3d from npm beside testdata/outside. It runs on
// Linux.
package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"log"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"drawerwright/export/dxf"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/solid"
)

// polylines is the number that both DXF writers write, with four vertices each.
const polylines = 100_000

func main() {
	log.SetFlags(0)
	dir, err := os.MkdirTemp("", "peers")
	check(err)
	defer os.RemoveAll(dir)
	fmt.Printf("%s, %d processors, %s/%s\n\n", runtime.Version(), runtime.NumCPU(), runtime.GOOS, runtime.GOARCH)
	if len(os.Args) > 1 {
		map[string]func(string){"page": pages, "scale": scale, "zip": zips}[os.Args[1]](dir)
		return
	}
	fmt.Println("| what | here | the peer | here is |")
	fmt.Println("|---|---|---|---|")
	drawings(dir)
	solids()
	plans()
	forecasts()
	jobs(dir)
}

func check(err error) {
	if err != nil {
		log.Fatal("peers: ", err)
	}
}

func row(what string, here time.Duration, peer string, verdict string, args ...any) {
	fmt.Printf("| %s | %s | %s | %s |\n", what, short(here), peer, fmt.Sprintf(verdict, args...))
}

// short rounds a time to three digits.
func short(d time.Duration) string {
	if d <= 0 {
		return "0"
	}
	unit := math.Pow(10, math.Floor(math.Log10(float64(d)))-2)
	return d.Round(time.Duration(max(1, unit))).String()
}

// best is the shortest of several runs.
func best(n int, f func()) time.Duration {
	least := time.Duration(math.MaxInt64)
	for range n {
		start := time.Now()
		f()
		least = min(least, time.Since(start))
	}
	return least
}

// seconds runs a script that prints {"seconds"}.
func seconds(name string, args ...string) time.Duration {
	run := exec.Command(name, args...)
	run.Stderr = os.Stderr
	out, err := run.Output()
	check(err)
	var answer struct{ Seconds float64 }
	check(json.Unmarshal(out, &answer))
	return time.Duration(answer.Seconds * float64(time.Second))
}

// drawings compares writing 100,000 closed polylines to a file. The rectangles
// are those of dxf_r12writer.py.
func drawings(dir string) {
	peer := seconds("/usr/bin/python3", "testdata/peers/dxf_r12writer.py")
	path := filepath.Join(dir, "drawing.dxf")
	versionRow(path, dxf.R12, "R12", peer)
	versionRow(path, dxf.R2000, "R2000", peer)
	data, err := os.ReadFile(path)
	check(err)
	raw := best(5, func() { check(os.WriteFile(path, data, 0o644)) })
	d := drawing(dxf.R2000)
	here := best(5, func() { writeDrawing(path, d) })
	row("the same R2000 bytes, against os.WriteFile alone", here, short(raw),
		"%.1f times the plain write", float64(here)/float64(raw))
}

func versionRow(path string, version dxf.Version, name string, peer time.Duration) {
	d := drawing(version)
	here := best(5, func() { writeDrawing(path, d) })
	row(fmt.Sprintf("DXF %s, %d closed polylines to a file", name, polylines), here,
		short(peer)+" ezdxf r12writer", "%.0f times as fast", float64(peer)/float64(here))
}

func drawing(version dxf.Version) *dxf.Drawing {
	d := &dxf.Drawing{Version: version}
	layer := d.Layer("DADO_INSIDE_5-99MM", 30)
	for i := range polylines {
		x, y := float64(i%1000)*12.345678, float64(i/1000)*23.456789
		w, h := x+6.35, y+139.999999
		d.Polyline(layer, dxf.Closed, []dxf.Vertex{{X: x, Y: y}, {X: w, Y: y}, {X: w, Y: h}, {X: x, Y: h}})
	}
	return d
}

func writeDrawing(path string, d *dxf.Drawing) {
	f, err := os.Create(path)
	check(err)
	_, err = d.WriteTo(f)
	check(err)
	check(f.Close())
}

// solids compares making a drawer side.
func solids() {
	here := perRun(geomtest.Side())
	peer := seconds("node", "testdata/peers/manifold_side.mjs")
	row("solid of a side with two dados and a groove", here, short(peer)+" manifold-3d booleans",
		"%.0f times as fast", float64(peer)/float64(here))
	row("solid with 30 overlapping rectangles on both faces", perRun(geomtest.Crowded()), "-", "")
	row("the same with rounded corners", perRun(geomtest.CrowdedRounded()), "-", "")
}

func perRun(p geom.Panel) time.Duration {
	r := testing.Benchmark(func(b *testing.B) {
		for b.Loop() {
			_, err := solid.Build(p, solid.Options{})
			check(err)
		}
	})
	return time.Duration(r.NsPerOp())
}

// built is the command, built into a folder.
func built(dir string) string {
	command := filepath.Join(dir, "drawerwright")
	out, err := exec.Command("go", "build", "-o", command, "./cmd/drawerwright").CombinedOutput()
	if err != nil {
		log.Fatalf("peers: %v\n%s", err, out)
	}
	return command
}

// jobs measures the built command on jobs of 1, 100 and 1,000 different drawers.
func jobs(dir string) {
	command := built(dir)
	// timed is the median of five runs, and the most memory that one took.
	timed := func(args func(i int) []string) (time.Duration, int64) {
		var times []time.Duration
		var peak int64
		for i := range 5 {
			c := exec.Command(command, args(i)...)
			syscall.Sync() // what others left to write is not this run's
			start := time.Now()
			c.Stdout, c.Stderr = io.Discard, os.Stderr
			check(c.Run())
			times = append(times, time.Since(start))
			peak = max(peak, c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss/1024)
		}
		slices.Sort(times)
		return times[len(times)/2], peak
	}
	job := func(n int) string {
		path := filepath.Join(dir, fmt.Sprintf("job%d.yaml", n))
		check(os.WriteFile(path, jobOf(n), 0o644))
		return path
	}
	target := func(n, i int) string { return filepath.Join(dir, fmt.Sprintf("out%d-%d", n, i)) }
	build := func(n int, old bool, more ...string) (time.Duration, int64) {
		return timed(func(i int) []string {
			to := target(n, 0)
			if !old {
				to = target(n, i)
				check(os.RemoveAll(to))
			}
			return append([]string{"build", job(n), "-o", to}, more...)
		})
	}
	one, peak := build(1, false)
	row("one drawer, all files and proof, from the built command", one, "-", "%d MB", peak)
	hundred, peak := build(100, false)
	row("100 different drawers", hundred, "-", "%d MB", peak)
	row("of it the packet alone", bench("./cmd/internal/packet", "BenchmarkHundred"), "-", "the goal is 3 s")
	row("templates of 100 layouts as DXF", bench("./export/template", "BenchmarkHundredLayouts"), "-", "the goal is 1 s")
	marked := filepath.Join(dir, "marked.yaml")
	check(os.WriteFile(marked, bytes.Replace(jobOf(layouts), []byte("drawers:"), []byte("templates: {stock: plate}\ndrawers:"), 1), 0o644))
	without, _ := build(layouts, false)
	with, peak := timed(func(i int) []string {
		return []string{"build", marked, "-o", filepath.Join(dir, fmt.Sprintf("marked%d", i))}
	})
	row("those of 102 layouts in all formats, more than without", with-without, "-", "the goal is 1 s; %d MB", peak)
	bare, peak := build(1000, false, "--no-proof")
	row("1,000 different drawers without proof", bare, "-", "%d MB", peak)
	thousand, peak := build(1000, false)
	row("1,000 different drawers with proof", thousand, "-", "%.1f times 100 drawers, %d MB; the proof takes %.1f of the build", float64(thousand)/float64(hundred), peak, float64(thousand-bare)/float64(bare))
	again, peak := build(1000, true)
	row("1,000 different drawers over an old folder", again, "-", "%d MB", peak)
	proof, peak := timed(func(int) []string { return []string{"prove", target(1000, 0)} })
	row("prove 1,000 drawers", proof, "-", "%.1f ms each, %d MB", float64(proof.Microseconds())/1e6, peak)
}

// bench is what a run of a benchmark takes, of those in packages that are hidden from
// this one.
func bench(where, name string) time.Duration {
	run := exec.Command("go", "test", "-run", "^$", "-bench", "^"+name+"$", where)
	run.Stderr = os.Stderr
	out, err := run.Output()
	check(err)
	_, after, _ := strings.Cut(string(out), "\n"+name)
	fields := strings.Fields(after)
	if len(fields) < 4 || fields[3] != "ns/op" {
		log.Fatalf("peers: %s in %s says no time:\n%s", name, where, out)
	}
	took, err := time.ParseDuration(fields[2] + "ns")
	check(err)
	return took
}

// layouts is how many drawers have 102 different faces to mark.
const layouts = 34

func jobOf(n int) []byte {
	var b bytes.Buffer
	b.WriteString(strings.Join([]string{
		"units: mm", "stock:", "  birch: {thickness: [12.21, 12.16, 12.24]}", "  hardboard: {thickness: [5.9, 5.85]}", "  plate: {thickness: 3.1, kerf: 0.18}",
		"cutter: {kind: router, diameter: 6}", "router: {small-part: 50}", "drawers:", ""}, "\n"))
	for i := range n {
		fmt.Fprintf(&b, "  - {name: d%d, outside: %d x %d x %d, sides: birch, bottom: hardboard}\n", i,
			250+i%500, 80+i%160, 400+i/10)
	}
	return b.Bytes()
}
