// Package advice finds which settings a shop writes anew so that more of its boxes come out
// right: which of them moves a measure and where to, what a change does to the boxes, and what
// is left where no setting helps. Lengths are in millimeters. A setting is named, and not
// written: how a job has it is not known here.
package advice

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"slices"
	"sync"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Shop is what the finished boxes of a drawer depend on beside their sizes.
type Shop struct {
	Boards   fit.Boards
	Accuracy fit.Accuracy
	Slide    *fit.SlideFit // nil without, or where its maker allows anything
}

// Box is a drawer with what its boxes come out as. Outcome is empty for one that cannot be
// made.
type Box struct {
	joinery.Drawer
	Shop    Shop
	Outcome fit.Outcome
	known   *Memory
	key     string
}

// Judged are the measures with the verdicts on them: those of its forecast, or of a drawer that
// cannot be made, and so has none, those on it as it is set.
func (b *Box) Judged() []joinery.Check {
	if len(b.Outcome.Measures) == 0 {
		return b.Fit
	}
	list := make([]joinery.Check, len(b.Outcome.Measures))
	for i, m := range b.Outcome.Measures {
		list[i] = m.Check
	}
	return list
}

// Memory works the outcome of drawers out once for those that are equal but for their names
// and number, and tries a change once on all of these. It may be used by several goroutines at once.
type Memory struct {
	mu    sync.Mutex // guards what follows
	drawn map[string]fit.Outcome
	tried map[string]trial
}

// trial is what a change comes to.
type trial struct {
	outcome fit.Outcome
	holds   bool // nothing is worse
}

// NewMemory is one that knows nothing.
func NewMemory() *Memory {
	return &Memory{drawn: make(map[string]fit.Outcome), tried: make(map[string]trial)}
}

// Box is a drawer that can be made, with its outcome.
func (known *Memory) Box(d joinery.Drawer, s Shop) Box {
	b := Box{Drawer: d, Shop: s, known: known}
	spec := d.Spec
	spec.Name, spec.Count = "", 0
	text, err := json.Marshal([]any{spec, s})
	if err != nil { // a number that JSON does not have
		b.Outcome = b.foresee(d)
		return b
	}
	sum := sha256.Sum256(text) // of thousands of drawers the texts would be the most in memory
	b.key = string(sum[:])
	b.Outcome = recall(&known.mu, known.drawn, b.key, func() fit.Outcome { return b.foresee(d) })
	return b
}

// Conclude ends advice on a drawer: what only that asks for is let go, and what is the same in drawers before it
// shared.
func (d *Box) Conclude(known *fit.Concluded) {
	d.known, d.key = nil, ""
	d.Fit = slices.Clone(d.Fit) // without room for more
	d.Outcome = known.Conclude(d.Outcome)
}

// Like reports whether two drawers are one but for their names and number.
func (d *Box) Like(other *Box) bool { return d.key != "" && d.key == other.key }

// foresee is the outcome of a drawer in this one's shop.
func (d *Box) foresee(one joinery.Drawer) fit.Outcome {
	return fit.Simulate(one, d.Shop.Boards, d.Shop.Accuracy, d.Shop.Slide)
}

// once tries a change on a drawer, unless it was tried on one like it.
func (d *Box) once(what string, r geom.Remedy, lengths []float64, try func() trial) trial {
	if d.key == "" || d.known == nil {
		return try()
	}
	return recall(&d.known.mu, d.known.tried, fmt.Sprint(what, r.Changes, lengths, d.key), try)
}

// remembered is how many drawers a [Memory] knows at once; equal ones stand near each other in a job.
const remembered = 512

// recall is what stands under a key, worked out if nothing does; if two do that at once, both come to the same.
func recall[T any](mu *sync.Mutex, known map[string]T, key string, workOut func() T) T {
	mu.Lock()
	v, done := known[key]
	mu.Unlock()
	if done {
		return v
	}
	v = workOut()
	mu.Lock()
	defer mu.Unlock()
	if len(known) == remembered { // those of thousands of different drawers would be the most in memory
		clear(known)
	}
	known[key] = v
	return v
}
