package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
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
