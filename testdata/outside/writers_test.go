package outside

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"math/rand/v2"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"drawerwright/geom/geomtest"
)

// writer makes ready what writes in the folder of a job, and gives what begins it.
type writer func(t *testing.T, dir string) (begin func() *writing)

// writing is a process that writes, until it has ended.
type writing struct {
	process *os.Process
	ended   chan struct{}
	// Once it has ended:
	said string
	exit int
	took time.Duration // until it had written
}

// code waits for its end: 0 where it has written, 1 where it was refused.
func (w *writing) code() int {
	<-w.ended
	return w.exit
}

// runs is a command.
func runs(args ...string) (begin func() *writing) {
	return func() *writing {
		var said bytes.Buffer
		c := exec.Command(command, args...)
		c.Stdout, c.Stderr = &said, &said
		if err := c.Start(); err != nil {
			panic(err) // the program was just built
		}
		w, start := &writing{process: c.Process, ended: make(chan struct{})}, time.Now()
		go func() {
			defer close(w.ended)
			c.Wait()
			w.said, w.exit, w.took = said.String(), c.ProcessState.ExitCode(), time.Since(start)
		}()
		return w
	}
}

// served is the page of a job, at its address, until the process is ended.
func served(t *testing.T, job string) (address string, page *exec.Cmd) {
	t.Helper()
	page = exec.Command(command, "view", job, "--keep")
	out, err := page.StdoutPipe()
	if err == nil {
		err = page.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { page.Process.Kill(); page.Wait() }) // where it has not ended
	address, err = bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimSpace(address), page
}

// saves is a page of a job that is open, where the text of a tab is saved; the page ends then.
func saves(t *testing.T, dir, file, text string) (begin func() *writing) {
	t.Helper()
	address, page := served(t, filepath.Join(dir, file))
	client := &http.Client{Transport: &http.Transport{DisableKeepAlives: true}}
	got, err := client.Get(address + "api/job")
	if err != nil {
		t.Fatal(err)
	}
	defer got.Body.Close()
	var tab struct {
		Version string `json:"version"`
		Text    string `json:"text"`
	}
	if err := json.NewDecoder(got.Body).Decode(&tab); err != nil {
		t.Fatal(err)
	}
	tab.Text = text
	body, err := json.Marshal(tab)
	if err != nil {
		t.Fatal(err)
	}
	return func() *writing {
		w, start := &writing{process: page.Process, ended: make(chan struct{}), exit: -1}, time.Now()
		go func() {
			defer close(w.ended)
			if got, err := client.Post(address+"api/save", "application/json", bytes.NewReader(body)); err == nil {
				said, _ := io.ReadAll(got.Body)
				got.Body.Close()
				w.said, w.exit, w.took = fmt.Sprintf("%d: %s", got.StatusCode, said), 1, time.Since(start)
				if got.StatusCode == http.StatusOK {
					w.exit = 0
				}
			}
			page.Process.Kill()
			page.Wait()
		}()
		return w
	}
}

// sharedJob has sheets, so that it takes offcuts of a shelf.
const sharedJob = `units: mm
stock:
  ply 12: {thickness: [12, 11.96, 12.04], sheet: 1200 x 800}
  ply 6: {thickness: [6, 5.97, 6.03], sheet: 1200 x 800}
cutter: {kind: router, diameter: 6}
drawers:
  - {name: tray, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6}
`

// waited is what a writer says that has waited in vain for one that was held in the midst of it.
const waited = "another drawerwright is writing in"

// These say that a file is there, and that it is not what a tab has read.
const (
	isThere  = "next.yaml is there already"
	conflict = "409"
)

// twoWriters are what writes in one folder at once, and what one of them says that the other keeps
// from it; besides waited.
var twoWriters = map[string]struct {
	one, two writer
	refused  []string
}{
	"two builds of one folder":        {builds("job.yaml"), builds("other.yaml"), []string{"another build into"}},
	"a build beside a shelf put back": {builds("job.yaml", "--shelf"), putsBack, nil},
	"two shelves put back":            {putsBack, putsBack, []string{"nothing is put back: another program has changed"}},
	"two copies of one job":           {adjusts("6.40"), adjusts("6.35"), []string{isThere}},
	"two test cuts into one log":      {logs("2026-03-02"), logs("2026-03-03"), nil},
	"a save beside a copy":            {savesAs("next.yaml"), adjusts("6.35"), []string{isThere, conflict}},
	"a save of what is copied":        {savesAs("job.yaml"), adjusts("6.35"), nil},
	"saves of two pages":              {savesAs("job.yaml"), savesAs("job.yaml", "# the other"), []string{conflict}},
}

func builds(file string, options ...string) writer {
	return func(_ *testing.T, dir string) func() *writing {
		args := []string{"build", filepath.Join(dir, file), "-o", filepath.Join(dir, "out")}
		for _, o := range options {
			args = append(args, o, filepath.Join(dir, "offcuts.csv"))
		}
		return runs(args...)
	}
}

func putsBack(_ *testing.T, dir string) func() *writing {
	return runs("sheets", filepath.Join(dir, "job.yaml"), "--shelf", filepath.Join(dir, "offcuts.csv"), "--put-back")
}

func adjusts(slot string) writer {
	return func(_ *testing.T, dir string) func() *writing {
		return runs("adjust", filepath.Join(dir, "job.yaml"), "slot="+slot, "edge=6.25",
			"--write", filepath.Join(dir, "next.yaml"))
	}
}

func logs(day string) writer {
	return func(_ *testing.T, dir string) func() *writing {
		return runs("adjust", filepath.Join(dir, "job.yaml"), "slot=6.25", "edge=6", "tongue=6", "depth=6",
			"rabbet-depth=6", "tongue-length=6", "recess=0", "clearance=0.25",
			"--log", filepath.Join(dir, "shop.csv"), "--date", day)
	}
}

func savesAs(file string, more ...string) writer {
	return func(t *testing.T, dir string) func() *writing {
		return saves(t, dir, file, sharedJob+"# saved\n"+strings.Join(more, "\n"))
	}
}

// TestTwoWriters: of two that write at once, both have written, one after the other, or one has and
// the other says why it has not. The folder is then as if only these had run, one by one, and nothing
// is left beside what they write.
func TestTwoWriters(t *testing.T) {
	t.Parallel()
	for name, c := range twoWriters {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			place := func() string {
				dir := t.TempDir()
				shelfOf(t, dir)
				other := strings.Replace(sharedJob, "400 x", "420 x", 1)
				for file, text := range map[string]string{"job.yaml": sharedJob, "other.yaml": other} {
					if err := os.WriteFile(filepath.Join(dir, file), []byte(text), 0o644); err != nil {
						t.Fatal(err)
					}
				}
				return dir
			}
			// What may be there, by which of the two have written.
			may := map[[2]bool][]map[string][32]byte{}
			var took [2]time.Duration
			for i, order := range [][]writer{{c.one}, {c.two}, {c.one, c.two}, {c.two, c.one}} {
				dir, all := place(), true
				for _, each := range order {
					w := each(t, dir)()
					all = all && w.code() == 0
					if len(order) == 1 {
						took[i] = w.took
					}
				}
				if all {
					wrote := [2]bool{i != 1, i != 0}
					may[wrote] = append(may[wrote], contents(t, dir))
				}
			}
			random, seen, times := rand.New(rand.NewPCG(1, 2)), map[[2]bool]int{}, geomtest.Cases(4, 200)
			for round := range times {
				dir := place()
				begins := [2]func() *writing{c.one(t, dir), c.two(t, dir)}
				// Both at once, or one while the other is held at any moment of its way.
				first, held := random.IntN(2), round%2 > 0
				var w [2]*writing
				w[first] = begins[first]()
				if held {
					time.Sleep(time.Duration(random.Float64() * float64(took[first])))
					w[first].process.Signal(syscall.SIGSTOP) // it may have ended
				}
				w[1-first] = begins[1-first]()
				if held {
					w[1-first].code()
					w[first].process.Signal(syscall.SIGCONT)
				}
				wrote := [2]bool{w[0].code() == 0, w[1].code() == 0}
				for i, one := range w {
					says := func(why string) bool { return strings.Contains(one.said, why) }
					if !wrote[i] && (one.exit != 1 || !slices.ContainsFunc(append(c.refused, waited), says)) {
						t.Fatalf("number %d of them ends with %d: %s", i+1, one.exit, one.said)
					}
				}
				left := contents(t, dir)
				same := func(one map[string][32]byte) bool { return maps.Equal(one, left) }
				if !slices.ContainsFunc(may[wrote], same) {
					t.Fatalf("%v have written, and the folder is as neither order leaves it: %q", wrote, names(t, dir))
				}
				seen[wrote]++
				os.RemoveAll(dir)
			}
			t.Logf("of %d times, which of the two wrote: %v", times, seen)
		})
	}
}
