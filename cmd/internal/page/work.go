package page

import (
	"context"
	"net/http"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
)

// keys are the entries that the form has.
var keys = job.Keys()

// work works texts out. Nothing is kept from one to the next but layouts on sheets, by all
// that they depend on: a file of slides beside the job may have changed.
type work struct {
	folder *folder
	laid   sheets.Memory
	short  chan struct{} // one text at a time: two would not be sooner done
	build  chan struct{} // and one build beside it
	sized  func(drawers int)
}

func newWork(d *folder, sized func(drawers int)) *work {
	return &work{folder: d, sized: sized, short: make(chan struct{}, 1), build: make(chan struct{}, 1)}
}

// task is a text that is to be worked out, after steps that are made of it.
type task struct {
	text  string
	steps []job.Step
	soon  bool // where the whole takes long, the numbers alone will do
}

// worked is a text with what it comes out as.
type worked struct {
	text string
	load.Loaded
	soon   bool   // nothing is said of it yet, and it is not laid out
	beside *noted // the files that it names
}

// manyDrawers is from how many kinds of drawers on what is to be said of them, and their sheets, take so
// long that a person who types sees it. With twelve they do not.
const manyDrawers = 20

// out works a text out, or gives the context's error or that of a step, an unmade. All of it is one turn.
func (w *work) out(ctx context.Context, a task) (worked, error) {
	if err := begin(ctx, w.short); err != nil {
		return worked{}, err
	}
	defer end(w.short)
	text, err := w.edited(ctx, a.text, a.steps)
	if err != nil {
		return worked{}, err
	}
	beside := &noted{in: w.folder, seen: make(map[string]string)}
	out := worked{text: text, beside: beside,
		Loaded: load.Parse(ctx, fileOf(ctx).called(), strings.NewReader(text), beside.open)}
	if out.Job != nil {
		w.sized(len(out.Job.Drawers))
	}
	out.soon = a.soon && out.Job != nil && len(out.Job.Drawers) >= manyDrawers && out.Foresee()
	if !out.soon {
		out.WorkOut(ctx)
	}
	if err := ctx.Err(); err != nil || out.soon {
		return out, err
	}
	out.Lay(ctx, nil, sheets.Search{Memory: &w.laid})
	return out, ctx.Err()
}

// begin waits for a turn; end gives it on.
func begin(ctx context.Context, turn chan struct{}) error {
	select {
	case turn <- struct{}{}:
	case <-ctx.Done():
		return ctx.Err()
	}
	if err := ctx.Err(); err != nil {
		end(turn)
		return err
	}
	return nil
}

func end(turn chan struct{}) { <-turn }

// shownIn is the job with its numbers in a unit; its own where none is named.
func (w worked) shownIn(unit string) worked {
	if u, err := geom.ParseUnit(unit); err == nil {
		w.Batch.Units, w.Plan.Units = u, u
	}
	return w
}

// soundWork works out a job that can be built. Where there is none, it has answered.
func (p *Page) soundWork(ctx context.Context, w http.ResponseWriter, text string) (done worked, ok bool) {
	done, err := p.work.out(ctx, task{text: text})
	switch {
	case err != nil:
		refuse(w, http.StatusServiceUnavailable, "stopped")
	case done.Failed():
		refuse(w, http.StatusUnprocessableEntity, "the job has mistakes")
	default:
		return done, true
	}
	return done, false
}
