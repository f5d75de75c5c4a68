package main

import (
	"os"
	"strings"
	"testing"
)

// TestInitFlags: flags give the answers; what is missing, wrong or does not go together is
// said, and then no file is there.
func TestInitFlags(t *testing.T) {
	inTemp(t)
	all := strings.Fields(`--units in --slide side-mount --thickness 0.48,0.482 --bottom-thickness 0.228,0.23
		--machine saw --cutter 1/4 --count 3`)
	opening := []string{"--opening", "22 3/16 x 6 x 21"}
	for name, c := range map[string]struct {
		args []string
		code int
		said string
	}{
		"all":   {append(opening, all...), exitDone, "next: drawerwright check job.yaml"},
		"a box": {[]string{"--box", "400 x 120 x 450", "--yes"}, exitDone, "wrote job.yaml"},
		"nothing": {nil, exitUsage,
			"give --opening or --box, --slide, --thickness, --bottom-thickness, --machine, --cutter; or --yes"},
		"no size":        {all, exitUsage, "give --opening or --box; or --yes"},
		"both":           {append([]string{"--box", "400 x 120 x 450"}, opening...), exitUsage, "not both"},
		"slide of a box": {[]string{"--box", "400 x 120 x 450", "--slide", "none"}, exitUsage, "--slide goes with --opening"},
		"wrong size":     {[]string{"--opening", "400 x 120", "--yes"}, exitUsage, "--opening 400 x 120: 3 numbers"},
		"one reading":    {[]string{"--thickness", "12", "--yes"}, exitUsage, "--thickness 12: one reading"},
		"wrong machine":  {[]string{"--machine", "laser", "--yes"}, exitUsage, "--machine laser"},
		"racking":        {[]string{"--opening", "900 x 150 x 545", "--yes"}, exitJob, "do not go together: the boxes are"},
		"a script":       {[]string{"--thickness", "12]\ncutter: {}#,1", "--yes"}, exitUsage, "write numbers"},
	} {
		code, out, errs := call(t, "mm\n", append([]string{"init", "job.yaml"}, c.args...)...)
		if code != c.code || !strings.Contains(out+errs, c.said) {
			t.Errorf("%s: exit %d, want %d with %q:\n%s%s", name, code, c.code, c.said, out, errs)
		}
		if _, err := os.Stat("job.yaml"); (err == nil) != (c.code == exitDone) {
			t.Errorf("%s: a file: %t", name, err == nil)
		}
		if c.code == exitDone {
			code, out, errs := call(t, "", "check", "job.yaml")
			if code != exitDone || strings.Contains(errs, "warning") {
				t.Errorf("%s: check: exit %d\n%s%s", name, code, out, errs)
			}
			code, _, errs = call(t, "", "init", "job.yaml", "--yes")
			if code != exitJob || !strings.Contains(errs, "there already") {
				t.Errorf("%s: over a file: exit %d\n%s", name, code, errs)
			}
			os.Remove("job.yaml")
		}
	}
}
