package main

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/report"
	"drawerwright/geom/joinery"
)

// loaded is a job that was read and worked out, with everything to be said of it.
type loaded struct {
	job      *job.Job // nil when it could not be read
	batch    batch.Batch
	problems job.Problems // up to job.MaxProblems
	more     int          // beyond those
	warnings []report.Warning
}

// load reads a job file, or standard input for "-", and works it out. The error
// is about the file; what is wrong in it is in problems.
func load(path string, s streams) (loaded, error) {
	name, in := path, s.in
	if path == "-" {
		name = "(standard input)"
	} else {
		f, err := os.Open(path)
		if err != nil {
			return loaded{}, fmt.Errorf("cannot read the job: %w", err)
		}
		defer f.Close()
		if info, err := f.Stat(); err == nil && info.IsDir() {
			return loaded{}, fmt.Errorf("cannot read the job: %s is a folder", path)
		}
		in = f
	}
	var l loaded
	l.job, l.problems = job.Read(name, in, job.Files(beside(path)))
	if l.job == nil {
		return l, nil
	}
	for _, p := range l.problems {
		if !p.Error { // about the drawers of an opening, which the message names
			l.warnings = append(l.warnings, report.Warning{Code: string(p.Code), Message: p.Message})
		}
	}
	var found []batch.Problem
	l.batch, found = batch.Make(l.job)
	// Errors first: a job with warnings without number must still say what stops it.
	slices.SortStableFunc(found, func(a, b batch.Problem) int { return cmp.Compare(rank(a.Error), rank(b.Error)) })
	for _, g := range alike(l.job, found) {
		if len(l.problems) < job.MaxProblems {
			shown := g.Problem.Problem
			shown.Message = report.Some(g.names) + ": " + shown.Message
			l.problems = append(l.problems, l.job.Problem(g.Drawer, shown))
		} else {
			l.more++
		}
	}
	for _, p := range found {
		if !p.Error {
			l.warnings = append(l.warnings, report.Warning{
				Code: p.Code, Drawer: l.job.Drawers[p.Drawer].Spec.Name, Part: p.Part, Message: p.Message,
			})
		}
	}
	slices.SortStableFunc(l.problems, func(a, b job.Problem) int {
		return cmp.Or(cmp.Compare(rank(a.Error), rank(b.Error)), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return l, nil
}

// group is a problem that several drawers have at one place of the file.
type group struct {
	batch.Problem
	names []string
}

// alike gathers what would be said in the same words of the same place, as of the
// drawers that share an opening.
func alike(j *job.Job, found []batch.Problem) []*group {
	type key struct {
		at job.Position
		joinery.Problem
	}
	var list []*group
	at := make(map[key]*group)
	for _, p := range found {
		k := key{j.Where(p.Drawer, p.Field), p.Problem}
		g, known := at[k]
		if !known {
			g = &group{Problem: p}
			at[k] = g
			list = append(list, g)
		}
		g.names = append(g.names, j.Drawers[p.Drawer].Name)
	}
	return list
}

// beside opens the files that a job names, from the folder of the job file; that
// of standard input is the folder in which the program runs.
func beside(path string) func(name string) (io.ReadCloser, error) {
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

// rank puts errors before warnings, since they come first in what is shown.
func rank(isError bool) int {
	if isError {
		return 0
	}
	return 1
}

// failed tells whether the job cannot be built.
func (l loaded) failed() bool { return l.problems.Failed() }

// show prints the problems for a person, with their places.
func (l loaded) show(s streams) error {
	var paint job.Paint
	if colour(s.err) {
		paint = inColour
	}
	return l.problems.Print(s.err, paint)
}

// inColour marks the parts of a message for a terminal (ECMA-48, SGR: 1 bold,
// 31 red, 33 yellow, 36 cyan).
func inColour(part job.Part, text string) string {
	code := map[job.Part]string{job.PartPlace: "1", job.PartError: "1;31", job.PartWarning: "1;33", job.PartCaret: "1;31", job.PartHint: "36"}[part]
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}
