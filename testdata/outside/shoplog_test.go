package outside

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"

	"drawerwright/geom/shoplog"
)

// TestLogAsScipy: what a log tells of a machine is what scipy has: a Student's t where readings have nothing beside the
// machine, and with a caliper's noise in them the same model by other means.
func TestLogAsScipy(t *testing.T) {
	t.Parallel()
	type logCase struct {
		Off      []float64 `json:"off"`
		Sigma    float64   `json:"sigma"`
		Known    float64   `json:"known"`
		Centered bool      `json:"centered"`
	}
	random := rand.New(rand.NewPCG(27, 1))
	var in bytes.Buffer
	var all []logCase
	for i := range 12 {
		c := logCase{Sigma: 0.005 + 0.05*random.Float64(), Centered: i%4 == 3}
		if i%2 == 0 {
			c.Known = 0.03
		}
		bias, times := c.Sigma*random.NormFloat64(), 0.5+2*random.Float64()
		if c.Centered {
			bias = 0
		}
		for range 5 + random.IntN(30) {
			c.Off = append(c.Off, bias+times*c.Sigma*random.NormFloat64()+c.Known*random.NormFloat64())
		}
		all = append(all, c)
		if err := json.NewEncoder(&in).Encode(c); err != nil {
			t.Fatal(err)
		}
	}
	run := exec.Command("/usr/bin/python3", "shoplog.py")
	run.Stdin = &in
	var told bytes.Buffer
	run.Stderr = &told
	out, err := run.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, told.String())
	}
	read := json.NewDecoder(bytes.NewReader(out))
	for i, c := range all {
		var want [6]float64
		if err := read.Decode(&want); err != nil {
			t.Fatal(err)
		}
		l := shoplog.Learn(shoplog.Prior{Sigma: c.Sigma, Known: c.Known, Centered: c.Centered}, c.Off)
		_, bias, _ := l.Bias(0.05)
		variance := 0.0
		for _, n := range l.Nodes {
			variance += n.Weight * n.Sigma * n.Sigma
		}
		got := [6]float64{bias, variance, l.NextAt(0.05), l.NextAt(0.5), l.NextAt(0.95), l.NextAt(0.99865)}
		for k := range got {
			near := 0.002 * c.Sigma // of lengths: nothing that anyone measures
			if k == 1 {
				near = 0.005 * want[k]
			}
			if math.Abs(got[k]-want[k]) > near {
				t.Errorf("case %d, %d cuts, known %g, centered %t: number %d is %g, and by scipy %g",
					i, len(c.Off), c.Known, c.Centered, k, got[k], want[k])
			}
		}
	}
}
