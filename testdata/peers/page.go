package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// keys is how many keys are pressed for each row.
const keys = "120"

// pages prints how quick the page of `drawerwright view` is, in Chromium on this machine.
func pages(dir string) {
	command, err := filepath.Abs(built(dir))
	check(err)
	run := exec.Command("node", "testdata/outside/page_speed.mjs", command, filepath.Join(dir, "page"), keys)
	run.Stderr = os.Stderr
	out, err := run.Output()
	check(err)
	fmt.Println("| drawers | a key to its numbers, middle | 19 of 20 | to its picture, 19 of 20 | first paint | page |")
	fmt.Println("|---|---|---|---|---|---|")
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var r struct {
			Drawers, Bytes           int
			P50, P95, Picture, Paint float64
		}
		err := d.Decode(&r)
		if errors.Is(err, io.EOF) {
			return
		}
		check(err)
		fmt.Printf("| %d | %.0f ms | %.0f ms | %.0f ms | %.0f ms | %d kB |\n", r.Drawers, r.P50, r.P95, r.Picture,
			r.Paint, r.Bytes/1000)
	}
}

// zips prints how much memory the program takes at most while the page takes whole jobs along.
func zips(dir string) {
	command := built(dir)
	fmt.Println("| different drawers | when the page is there | with the zip taken | zip | time |")
	fmt.Println("|---|---|---|---|---|")
	for _, kinds := range []int{100, 1000} {
		job := filepath.Join(dir, "zip.yaml")
		check(os.WriteFile(job, laidOut(kinds, 1), 0o644))
		run := exec.Command(command, "view", job, "--keep")
		run.Stderr = io.Discard
		out, err := run.StdoutPipe()
		check(err)
		check(run.Start())
		line, err := bufio.NewReader(out).ReadString('\n')
		check(err)
		before, start := peak(run.Process.Pid), time.Now()
		n := taken(strings.TrimSpace(line), job)
		fmt.Printf("| %d | %s | %s | %d MB | %s |\n", kinds, before, peak(run.Process.Pid), n>>20, short(time.Since(start)))
		check(run.Process.Signal(os.Interrupt))
		check(run.Wait())
	}
}

// taken is how many bytes the page at an address gives for the zip of a job.
func taken(address, job string) int64 {
	text, err := os.ReadFile(job)
	check(err)
	asked, err := json.Marshal(map[string]string{"text": string(text), "what": "all"})
	check(err)
	got, err := http.Post(address+"api/take", "application/json", bytes.NewReader(asked))
	check(err)
	n, err := io.Copy(io.Discard, got.Body)
	check(errors.Join(err, got.Body.Close()))
	if n < 1<<20 {
		check(errors.New("the page gives no zip; it may have taken longer than the page allows"))
	}
	return n
}

// peak is the most memory that a process has had.
func peak(pid int) string {
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	check(err)
	_, after, _ := strings.Cut(string(status), "VmHWM:")
	var kB int
	_, err = fmt.Sscan(after, &kB)
	check(err)
	return fmt.Sprint(kB/1024, " MB")
}
