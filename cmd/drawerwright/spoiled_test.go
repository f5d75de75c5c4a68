package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"drawerwright/cmd/internal/mutate"
	"drawerwright/geom/geomtest"
)

// commandAlone has the name of a file where the test binary is to be the command, in a process of its own: it notes its
// memory there.
const commandAlone = "DRAWERWRIGHT_ALONE"

// alone is the command. At its end it notes the most memory that it had at once, in KiB, on systems that tell.
func alone(note string) {
	code := run(context.Background(), os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr})
	status, _ := os.ReadFile("/proc/self/status")
	if found := regexp.MustCompile(`VmHWM:\s*(\d+) kB`).FindSubmatch(status); found != nil {
		if err := os.WriteFile(note, found[1], 0o644); err != nil {
			panic(err)
		}
	}
	os.Exit(code)
}

// spoiling is a command and what is spoiled of what it reads.
type spoiling struct {
	args   string
	format *mutate.Format
	files  []mutate.Sample   // of which the command reads one, by the name that it has there
	beside map[string]string // what else is there
	writes []string          // what it may write
	placed *regexp.Regexp    // what a message has that refuses the file
}

// atPlace is the place of a mistake in a file of some names: its line; the column follows where there is one.
func atPlace(names string) *regexp.Regexp {
	return regexp.MustCompile("(" + strings.ReplaceAll(regexp.QuoteMeta(names), `\|`, "|") + `):\d+:`)
}

// as are samples under the name that a command gives them.
func as(name string, list []mutate.Sample) (out []mutate.Sample) {
	for _, s := range list {
		out = append(out, mutate.Sample{Name: name, Text: s.Text})
	}
	return out
}

// spoilings are all commands that read a file.
func spoilings(t *testing.T) (list []spoiling) {
	jobs, slides := mutate.Samples(t, "../../samples/*.yaml"), mutate.Samples(t, "../../samples/slides/*.yaml")
	beside := map[string]string{}
	for _, s := range slides {
		beside["slides/"+s.Name] = s.Text
	}
	for _, args := range jobCommands {
		list = append(list, spoiling{args, &mutate.YAML, as("job.yaml", jobs), beside, []string{"out", "next.yaml"},
			regexp.MustCompile(`job\.yaml:\d+:|"line": [1-9]`)})
	}
	laid := regexp.MustCompile(`(list\.csv|\(standard input\)):\d+:|[Nn]o sheet holds`) // which no one line is to blame for
	rects, shelf := []mutate.Sample{{Text: spoiledList}}, []mutate.Sample{{Text: spoiledShelf}}
	bench := jobs[slices.IndexFunc(jobs, func(s mutate.Sample) bool { return s.Name == "bench-drawers.yaml" })].Text
	list = append(list,
		spoiling{adjustCommand, &mutate.YAML, as("job.yaml", []mutate.Sample{{Text: bench}}), nil, []string{"next.yaml"},
			regexp.MustCompile(`job\.yaml:\d+:|` + ofReadings)},
		spoiling{"check -", &mutate.YAML, as("-", jobs), beside, nil, atPlace("(standard input)")},
		spoiling{"build job.yaml -o out", &mutate.YAML, as("slides.yaml", slides), map[string]string{"job.yaml": slidingJob},
			[]string{"out"}, atPlace("slides.yaml|job.yaml")},
		spoiling{"layout list.csv -o out", &mutate.CSV, as("list.csv", rects), nil, []string{"out"}, laid},
		spoiling{"layout - --csv", &mutate.CSV, as("-", rects), nil, nil, laid},
		spoiling{"sheets job.yaml --shelf shelf.csv --put-back", &mutate.CSV, as("shelf.csv", shelf), map[string]string{"job.yaml": bench},
			[]string{"shelf.csv"}, atPlace("shelf.csv")})
	built := builtFolder(t)
	var drawings, others []mutate.Sample
	for _, name := range slices.Sorted(maps.Keys(built)) {
		switch {
		case path.Ext(name) == ".dxf":
			drawings = append(drawings, mutate.Sample{Name: name, Text: built[name]})
		case strings.HasPrefix(name, "out/") && name != spoiledReport && name != spoiledManifest:
			others = append(others, mutate.Sample{Name: name, Text: built[name]})
		}
	}
	unproven := regexp.MustCompile(`Not proven|does not go|Not as built\. [^:]+: \S`)
	report := []mutate.Sample{{Name: spoiledReport, Text: built[spoiledReport]}}
	manifest := []mutate.Sample{{Name: spoiledManifest, Text: built[spoiledManifest]}}
	return append(list,
		spoiling{"prove out", &mutate.DXF, drawings, built, nil, unproven},
		spoiling{"prove out", &mutate.JSON, report, built, nil, regexp.MustCompile(`report\.json|` + unproven.String())},
		spoiling{"prove out", &mutate.Lines, others, built, nil, unproven},
		spoiling{"build job.yaml -o out", &mutate.Lines, manifest, built, []string{"out"},
			regexp.MustCompile(`manifest is not .*: line \d|out/\S+ was (not written|changed)`)}, // which a lost line had
		spoiling{adjustCommand + " --log shop.csv", &mutate.CSV, as("shop.csv", []mutate.Sample{{Text: spoiledLog}}),
			map[string]string{"job.yaml": bench}, []string{"next.yaml", "shop.csv"}, atPlace("shop.csv")},
		spoiling{"inspect job.yaml first.csv --log shop.csv", &mutate.CSV, as("first.csv", []mutate.Sample{{Text: spoiledForm}}),
			map[string]string{"job.yaml": bench}, []string{"shop.csv"}, regexp.MustCompile(`first\.csv:\d+:|it is not right`)})
}

// jobCommands are the commands that read a job.
var jobCommands = []string{"check job.yaml", "check job.yaml --json", "build job.yaml -o out", "parts job.yaml --all", "fit job.yaml --all",
	"setup job.yaml --all", "sheets job.yaml --all", "coupon job.yaml -o out"}

// adjustCommand is the command that takes readings, ofReadings what it says where those do not go with a job.
const (
	adjustCommand = "adjust job.yaml slot=6.40 edge=6.25 --write next.yaml"
	ofReadings    = "(slot=6.40|edge=6.25|nothing is written): "
)

// Files that are spoiled, and jobs that go with them.
const (
	slidingJob = "units: mm\nstock: {a: {thickness: 12.2}, b: {thickness: 5.9}}\ncutter: {kind: saw, width: 6.35}\n" +
		"slides-file: slides.yaml\n" +
		"openings: {o: {width: 400, height: 400, depth: 560, cabinet: frameless, fronts: none}}\n" +
		"drawers: [{name: d, opening: o, slide: ball bearing, rows: 2, sides: a, bottom: b}]\n"
	spoiledList = "kind,name,length,width,count,price,turn\nsheet,birch,2440,1220,,58.50,\n" +
		"part,\"side, left\",500,140,12,,\npart,top,19 5/8 in,100 mm,1,,yes\n"
	spoiledShelf = "stock,name,length,width,batch\nbirch ply,old,900 mm,700,A\nply 6,\"x, y\",19 5/8 in,200,\n"
	spoiledForm  = "drawer,what,right,least,most,reading\n" +
		"bench-wide,width of a dado,6.35,6.29,6.44,6.38\nbench-wide,\"bottom, from side to side\",445.80,,,17 9/16 in\n"
	spoiledLog = "date,machine,cutter,what,aimed,measured,units,then\n" +
		"2026-03-02,saw,stack,fence,6.1,6.14,mm,kept\n2026-03-03,saw,,cut,1/4,0.252,in,moved\n"
	builtJob = "job: One\nunits: mm\n" +
		"stock: {birch: {thickness: 12.2, sheet: 1525 x 1525}, ply: {thickness: 5.9}}\n" +
		"cutter: {kind: router, diameter: 6.35}\n" +
		"drawers: [{name: one, outside: 460 x 140 x 500, sides: birch, bottom: ply}]\n"
	spoiledReport, spoiledManifest = "out/report.json", "out/.drawerwright-manifest"
)

// builtFolder is a job of one box and what is built of it.
func builtFolder(t *testing.T) map[string]string {
	t.Helper()
	dir := t.TempDir()
	job := filepath.Join(dir, "job.yaml")
	if err := os.WriteFile(job, []byte(builtJob), 0o644); err != nil {
		t.Fatal(err)
	}
	if code, _, errs := call(t, "", "build", job, "-o", filepath.Join(dir, "out")); code != 0 {
		t.Fatal(errs)
	}
	return tree(t, dir)
}

// patience is how long a command may take on a machine that does other work as well; of its own time it may take
// mutate.MaxTime.
const patience = 2 * time.Minute

// TestSpoiledFiles: whatever has become of a file, a command that reads it ends well or refuses it with the place, does
// not panic, takes no more time and memory than it should, and writes nothing but what was asked for, that whole.
func TestSpoiledFiles(t *testing.T) {
	for i, c := range spoilings(t) {
		t.Run(c.args+" "+filepath.Ext(c.files[0].Name), func(t *testing.T) {
			codes := map[int]int{}
			for n := range geomtest.Cases(2, 500) {
				number := 1_000_000*(i+1) + n // another one for each command
				spoiled := c.format.Spoil(number, c.files)
				code, err := c.try(t, spoiled)
				if err != nil {
					t.Errorf("case %d, of %s: %v\nkept as %s", number, spoiled.Name, err, mutate.Kept(spoiled.Text))
				}
				codes[code]++
			}
			t.Logf("exit codes: %v", codes)
		})
	}
}

// try runs the command on a spoiled file and says what is wrong with how it ended.
func (c spoiling) try(t *testing.T, spoiled mutate.Sample) (code int, err error) {
	dir := t.TempDir()
	defer os.RemoveAll(dir)
	note := filepath.Join(dir, "memory")
	ctx, stop := context.WithTimeout(t.Context(), patience)
	defer stop()
	files := maps.Clone(c.beside)
	if files == nil {
		files = map[string]string{}
	}
	command := exec.CommandContext(ctx, os.Args[0], strings.Fields(c.args)...)
	if err := os.Mkdir(filepath.Join(dir, "work"), 0o755); err != nil {
		return 0, err
	}
	if spoiled.Name == "-" {
		command.Stdin = strings.NewReader(spoiled.Text)
	} else {
		files[spoiled.Name] = spoiled.Text
	}
	for name, text := range files {
		path := filepath.Join(dir, "work", filepath.FromSlash(name))
		err := os.MkdirAll(filepath.Dir(path), 0o755)
		if err == nil {
			err = os.WriteFile(path, []byte(text), 0o644)
		}
		if err != nil {
			return 0, err
		}
	}
	command.Dir = filepath.Join(dir, "work")
	command.Env = append(os.Environ(), commandAlone+"="+note)
	var out, errs bytes.Buffer
	command.Stdout, command.Stderr = &out, &errs
	if err := command.Run(); command.ProcessState == nil || ctx.Err() != nil {
		return 0, fmt.Errorf("it does not end: %w", errors.Join(err, ctx.Err()))
	}
	code = command.ProcessState.ExitCode()
	used := command.ProcessState.UserTime() + command.ProcessState.SystemTime()
	kib, _ := os.ReadFile(note)
	memory, _ := strconv.Atoi(string(kib))
	os.Remove(note)
	said := out.String() + errs.String()
	switch {
	case code == 2 && regexp.MustCompile(ofReadings).MatchString(errs.String()): // readings are of the command line
	case code != 0 && code != 1:
		return code, fmt.Errorf("it ends with %d: %.2000s", code, errs.String())
	case used > mutate.MaxTime && !mutate.UnderRace:
		return code, fmt.Errorf("it takes %v", used)
	case memory > mutate.MaxMemory>>10 && !mutate.UnderRace:
		return code, fmt.Errorf("it takes %d MiB", memory>>10)
	case code == 1 && !c.placed.MatchString(said):
		return code, fmt.Errorf("no place: %.2000s", said)
	}
	after := tree(t, dir)
	done := code == 0 || strings.Contains(said, "o sheet holds") // what sheets hold is laid out
	for name, text := range files {
		if now, there := after["work/"+name]; (!done || !c.mayWrite(name)) && (!there || now != text) {
			return code, fmt.Errorf("it changed %s and ended with %d", name, code)
		}
	}
	for name := range after {
		own, inside := strings.CutPrefix(name, "work/")
		if _, before := files[own]; !inside || !before && (!done || !c.mayWrite(own)) {
			return code, fmt.Errorf("it left %s and ended with %d: %s", name, code, errs.String())
		}
	}
	return code, nil
}

// mayWrite reports whether a file is what the command was asked for.
func (c spoiling) mayWrite(name string) bool {
	return slices.ContainsFunc(c.writes, func(w string) bool { return name == w || strings.HasPrefix(name, w+"/") })
}
