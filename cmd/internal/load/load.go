// Package load reads a job and works it out, with everything that is to be said of
// it, for commands and for the page.
package load

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/list"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Loaded is a job that was read and worked out.
type Loaded struct {
	Job      *job.Job // nil when it could not be read
	Batch    batch.Batch
	Plan     sheets.Plan  // once it is laid out
	Problems job.Problems // up to job.MaxProblems
	More     int          // beyond those
	// MoreNotes is how many of those beyond are notes.
	MoreNotes int
	Warnings  []record.Warning
	// Saved says of each stock of which the sheets are in lots what that saves.
	Saved []string
}

// Failed reports whether the job cannot be built.
func (l Loaded) Failed() bool { return l.Problems.Failed() }

// Read reads a job file and works it out. open opens the files that the job names.
func Read(name string, in io.Reader, open func(name string) (io.ReadCloser, error)) Loaded {
	l := Parse(context.Background(), name, in, open)
	l.WorkOut(context.Background())
	return l
}

// Parse reads a job file, which is then to be worked out. open opens the files that the job names. Where the
// context ends before, sheets are taken as they come.
func Parse(ctx context.Context, name string, in io.Reader, open func(name string) (io.ReadCloser, error)) (l Loaded) {
	l.Job, l.Problems = job.Read(name, in, job.Files(open))
	l.sortSheets(ctx)
	return l
}

// Foresee works out what the boxes of a job come out as, and tries nothing that would help. It reports
// whether they can be built: then the batch is there, and no more is said of it than before. Of one that
// cannot, [Loaded.WorkOut] tells why.
func (l *Loaded) Foresee() (sound bool) {
	if l.Job == nil || l.Failed() {
		return false
	}
	made, found := batch.Bare(l.Job)
	l.Batch = made
	return !slices.ContainsFunc(found, func(p batch.Problem) bool { return p.IsError() })
}

// WorkOut works a job out. Where the context ends before, nothing is to be told of it.
func (l *Loaded) WorkOut(ctx context.Context) {
	if l.Job == nil {
		return
	}
	for _, p := range l.Problems {
		if !p.IsError() { // about the drawers of an opening, which the message names
			l.Warnings = append(l.Warnings, record.Warning{Code: string(p.Code), Level: p.Level.String(),
				Message: p.Message, Hint: p.Hint})
		}
	}
	var found []batch.Problem
	l.Batch, found = batch.Make(ctx, l.Job)
	if l.Failed() { // what has no effect may have one when what could not be read is mended
		found = slices.DeleteFunc(found, func(p batch.Problem) bool { return p.Code == geom.Code(job.CodeNoEffect) })
	}
	// Errors first: a job with warnings without number must still say what stops it.
	slices.SortStableFunc(found, func(a, b batch.Problem) int { return cmp.Compare(b.Level, a.Level) })
	for _, g := range alike(l.Job, found) {
		if len(l.Problems) < job.MaxProblems {
			if len(g.names) > 0 {
				g.Message = words.Some(g.names) + ": " + g.Message
			}
			l.Problems = append(l.Problems, g.Problem)
		} else {
			l.More++
			if g.Level == geom.LevelNote {
				l.MoreNotes++
			}
		}
	}
	for _, p := range found {
		if !p.IsError() {
			w := record.Warning{Code: string(p.Code), Level: p.Level.String(), Part: p.Subject.Part,
				Message: p.Fact.In(l.Job.Units), Hint: p.Shown(l.Job).Hint}
			if !p.OfJob {
				w.Drawer = l.Job.Drawers[p.Drawer].Spec.Name
			}
			l.Warnings = append(l.Warnings, w)
		}
	}
	l.sort()
}

// Lay lays the parts of a job without mistakes out on sheets, with the offcuts of a shelf
// first. What has no sheet is a mistake, and then the job is not to be built.
func (l *Loaded) Lay(ctx context.Context, shelf []list.Offcut, o sheets.Search) {
	if l.Job == nil || l.Failed() {
		return
	}
	plan, err := sheets.Of(ctx, l.Batch, shelf, o)
	l.Plan = plan
	problems := plan.Short(ctx, o)
	if p := (*sheets.Problem)(nil); errors.As(err, &p) {
		problems = append(problems, p)
	}
	for _, p := range problems {
		shown := l.Job.StockProblem(p.Stock, p.Key, p.Diagnosis)
		shown.Ways = job.WaysOfEdits(p.Edits)
		l.Problems = append(l.Problems, shown)
	}
	l.sort()
}

// sort puts problems into the order in which they are shown.
func (l *Loaded) sort() {
	slices.SortStableFunc(l.Problems, func(a, b job.Problem) int {
		return cmp.Or(cmp.Compare(b.Level, a.Level), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
}

// group is a problem that several drawers have; it stands at the place of the first.
type group struct {
	job.Problem
	names []string
}

// alike gathers what would be said of several drawers in the same words: a board that serves twenty of them is one
// mistake.
func alike(j *job.Job, found []batch.Problem) []*group {
	type key struct {
		part, message, hint string
		code                job.Code
		level               geom.Level
	}
	var list []*group
	at := make(map[key]*group)
	for _, p := range found {
		shown := p.Shown(j)
		k := key{p.Subject.Part, shown.Message, shown.Hint, shown.Code, shown.Level}
		g, known := at[k]
		if !known {
			g = &group{Problem: shown}
			at[k] = g
			list = append(list, g)
		} else {
			g.Ways = job.Together(g.Ways, shown.Ways)
		}
		if name := j.Drawers[max(0, p.Drawer)].Name; !p.OfJob && !slices.Contains(g.names, name) { // two of its cuts
			g.names = append(g.names, name)
		}
	}
	return list
}

// Beside opens the files that a job names, from the folder of the job file; that
// of standard input is the folder in which the program runs.
func Beside(path string) func(name string) (io.ReadCloser, error) {
	folder := filepath.Dir(path) // of "-" it is "."
	return func(name string) (io.ReadCloser, error) {
		full := filepath.Join(folder, filepath.FromSlash(name))
		info, err := os.Stat(full)
		if err != nil {
			return nil, err
		}
		if !info.Mode().IsRegular() { // a pipe would be waited for
			return nil, fmt.Errorf("%s is no regular file", full)
		}
		return os.Open(full)
	}
}
