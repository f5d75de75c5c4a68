package prove_test

import (
	"reflect"
	"sync"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// TestWorkersAtOnce: workers of one prover share nothing that they change, and a
// drawer's proof does not hang on what was proven before.
func TestWorkersAtOnce(t *testing.T) {
	f := build(t, sample(t, "router-boxes.yaml"))
	want := f.proofs(t, prove.Options{})
	p, err := prove.New(record.Keep(f.report(t)))
	if err != nil {
		t.Fatal(err)
	}
	got := make([][]record.Proof, 4)
	var wait sync.WaitGroup
	for k := range got {
		wait.Go(func() {
			w := p.Worker()
			for i := range p.Drawers() {
				i = (i + k) % p.Drawers()
				got[k] = append(got[k], w.Drawer(i, f.ReadFile, prove.Options{}))
			}
		})
	}
	wait.Wait()
	for k := range got {
		for i, proof := range got[k] {
			if j := (i + k) % p.Drawers(); !reflect.DeepEqual(proof, want[j]) {
				t.Errorf("%s: %+v, want %+v", proof.Drawer, proof, want[j])
			}
		}
	}
}
