package outside

import (
	"encoding/json"
	"errors"
	"fmt"
	"os/exec"
	"testing"
)

// proven is what prove --json prints, as far as these tests read it.
type proven struct {
	OK    bool
	Units string
	Proof []proof
}

// piece is a part as it stands in the box that was put together.
type piece struct {
	Name, Part string
	Placement  stand
}

type proof struct {
	Drawer, Verdict string
	Faults          []struct{ Code, File, Message string }
	Width           span
	Depth           span
	Height          span
	Overlaps        []struct {
		A, B   string
		Volume float64 `json:"volume_mm3"`
	}
	Cuts []struct {
		File, Layer string
		Line        int
		Bit         float64
		Drawn       float64 `json:"drawn_mm2"`
		Reached     float64 `json:"reached_mm2"`
		Swept       float64 `json:"swept_mm2"`
		Beyond      float64
	}
	Assembled []piece
}

type span struct{ Mean, Min, Max float64 }

// The verdicts of a proof.
const (
	goes     = "goes together"
	goesBut  = "goes together, out of limits"
	goesSome = "goes together, not with every board"
	goesNot  = "does not go together"
)

var proofs onces[proven]

// prove runs the command on a folder, once for all tests; a box that does not go is no
// failure here.
func prove(t *testing.T, dir string, options ...string) proven {
	t.Helper()
	p, err := proofs.get(fmt.Sprintf("%q %q", dir, options), func() (p proven, err error) {
		out, failed := exec.Command(command, append([]string{"prove", dir, "--json"}, options...)...).Output()
		var exit *exec.ExitError
		if failed != nil && !(errors.As(failed, &exit) && exit.ExitCode() == 1) {
			return p, failed
		}
		if err := json.Unmarshal(out, &p); err != nil {
			return p, fmt.Errorf("%w\n%s", err, out)
		}
		if p.OK != (failed == nil) {
			return p, fmt.Errorf("ok is %v, and it ends with %v", p.OK, failed)
		}
		return p, nil
	})
	if err != nil {
		t.Fatalf("prove %q: %v", options, err)
	}
	return p
}

func (p proven) mm() float64 { return report{Units: p.Units}.mm() }
