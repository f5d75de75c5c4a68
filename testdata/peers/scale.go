package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"time"
)

// most is how many drawers a job may have.
const most = 5000

// scale prints how time and memory grow with the job: processor time, which others on the machine change
// least, of one run each, with packet, sheets, labels and pictures.
func scale(dir string) {
	command := built(dir)
	fmt.Println("| different drawers | boxes of each | processor time | times the row above | memory at most |")
	fmt.Println("|---|---|---|---|---|")
	var before time.Duration
	for _, of := range []struct{ kinds, boxes int }{{1, 1}, {100, 1}, {1000, 1}, {most, 1}, {1, 10_000}} {
		job, out := filepath.Join(dir, "scale.yaml"), filepath.Join(dir, "scale")
		check(os.WriteFile(job, laidOut(of.kinds, of.boxes), 0o644))
		check(os.RemoveAll(out))
		run := exec.Command(command, "build", job, "-o", out)
		run.Stdout, run.Stderr = io.Discard, os.Stderr
		check(run.Run())
		took := run.ProcessState.UserTime() + run.ProcessState.SystemTime()
		times := "-"
		if before > 0 && of.kinds > 1 {
			times = fmt.Sprintf("%.1f", float64(took)/float64(before))
		}
		fmt.Printf("| %d | %d | %s | %s | %d MB |\n", of.kinds, of.boxes, short(took), times,
			run.ProcessState.SysUsage().(*syscall.Rusage).Maxrss/1024)
		before = took
	}
}

// laidOut is a job of different drawers, so many boxes of each, with sheets and labels.
func laidOut(kinds, boxes int) []byte {
	text := jobOf(kinds)
	for old, now := range map[string]string{
		"12.24]}": "12.24], sheet: 1525 x 1525}", "5.85]}": "5.85], sheet: 2440 x 1220}",
		"drawers:": "paper: {labels: 3x8}\ndrawers:", "{name: ": fmt.Sprintf("{count: %d, name: ", boxes),
	} {
		text = bytes.ReplaceAll(text, []byte(old), []byte(now))
	}
	return text
}
