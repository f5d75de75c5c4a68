package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/list"
	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
)

// checked is what check --json prints, and what every command with --json
// prints when it fails.
type checked struct {
	OK       bool      `json:"ok"`
	Problems []problem `json:"problems"`
	More     int       `json:"more"` // problems beyond those listed, warnings and notes unless every one listed is an error
	// Verdicts are those on the drawers of a job without errors.
	Verdicts []record.Judged `json:"verdicts,omitempty"`
}

// problem is a problem for programs. Line and column are 0 where it is not
// about a place in the job file.
type problem struct {
	File    string `json:"file"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Level   string `json:"level"` // error, warning or note
	Code    string `json:"code"`
	Message string `json:"message"`
	Hint    string `json:"hint"`
}

func found(l loaded) []problem {
	list := []problem{}
	for _, p := range l.Problems {
		list = append(list, problem{p.File, p.Line, p.Column, p.Level.String(), string(p.Code), p.Message, p.Hint})
	}
	return list
}

// ready loads a job that is to be built and lays it out on sheets. It shows the problems of a
// job that cannot be built: on standard error, or, for programs, as JSON on standard output.
func ready(path string, asJSON bool, s streams) (loaded, error) {
	return readyWith(path, asJSON, s, func(int) {}, func(l *loaded) error {
		s.lay(context.Background(), l, nil, sheets.Search{})
		return nil
	})
}

// readyWith is ready with what lays out. Begin is told how many drawers there are before they are worked out.
func readyWith(path string, asJSON bool, s streams, begin func(drawers int), lay func(*loaded) error) (loaded, error) {
	l, err := parseJob(path, s)
	if err == nil {
		_, end := s.working("working out the job")
		l.startWith(begin)
		end()
	}
	if err == nil && !l.Failed() {
		err = lay(&l)
	}
	switch {
	case err != nil:
		return l, failure(err, path, asJSON, s)
	case asJSON && l.Failed():
		if err := writeJSON(s.out, checked{Problems: found(l), More: l.More}); err != nil {
			return l, jobError{err}
		}
		return l, errShown
	case l.Failed():
		if err := errors.Join(l.failed(s), l.show(s)); err != nil {
			return l, jobError{err}
		}
		return l, errShown
	}
	return l, nil
}

// refuse shows why a command cannot do something for a drawer of a job that can be built: a
// diagnosis with its place in the job file.
func (l loaded) refuse(drawer int, err error, asJSON bool, s streams) error {
	var d diagnosed
	if !errors.As(err, &d) {
		return failure(err, l.Job.File, asJSON, s)
	}
	l.Problems, l.More = job.Problems{l.Job.Problem(drawer, d.Diagnosis)}, 0
	if asJSON {
		err = writeJSON(s.out, checked{Problems: found(l)})
	} else {
		err = l.show(s)
	}
	if err != nil {
		return jobError{err}
	}
	return errShown
}

// errStopped is the end of a build that a person stopped.
var errStopped = errors.New("stopped")

// failure marks an error as the job's; with asJSON, programs get it as they get
// the job's own problems.
func failure(err error, path string, asJSON bool, s streams) error {
	if !asJSON {
		return jobError{err}
	}
	p := problem{File: path, Level: "error", Code: "files", Message: err.Error()}
	var folder *outdir.Error
	var unproven *files.Unproven
	var said diagnosed
	var plainly hinted
	switch {
	case errors.As(err, &plainly):
		p.Message, p.Hint = plainly.fact, plainly.hint
	case errors.As(err, &folder):
		fact, _, _ := strings.Cut(folder.Error(), "\n  hint:")
		p.File, p.Code, p.Message, p.Hint = folder.Path, "folder", strings.ReplaceAll(fact, "\n  ", "; "), folder.Hint
	case errors.As(err, &unproven):
		p.Code = "proof"
		if err := writeJSON(s.out, checked{Problems: append([]problem{p}, unproved(unproven.Proofs, unproven.Checked)...)}); err != nil {
			return jobError{err}
		}
		return errShown
	case listed(err) != nil:
		if err := writeJSON(s.out, checked{Problems: listed(err)}); err != nil {
			return jobError{err}
		}
		return errShown
	case errors.As(err, &said):
		p.Code, p.Message, p.Hint = string(said.Code), said.Fact.In(said.unit), said.hint()
	case errors.Is(err, errStopped):
		p.Code = "stopped"
	}
	if err := writeJSON(s.out, checked{Problems: []problem{p}}); err != nil {
		return jobError{err}
	}
	return errShown
}

// diagnosed is a diagnosis that ends a command, in the words and the unit of its job.
type diagnosed struct {
	geom.Diagnosis
	unit geom.Unit
}

func (d diagnosed) Error() string { return d.Fact.In(d.unit) + "; " + d.hint() }

func (d diagnosed) hint() string { return job.Advice(d.Diagnosis, d.unit) }

// inUnit is an error that speaks in a unit, where it is a diagnosis.
func inUnit(err error, u geom.Unit) error {
	var d geom.Diagnosis
	if errors.As(err, &d) {
		return diagnosed{d, u}
	}
	return err
}

// listed are the problems of a list of rectangles, if an error is of one.
func listed(err error) (problems []problem) {
	all, joined := err.(interface{ Unwrap() []error })
	if !joined {
		return nil
	}
	for _, e := range all.Unwrap() {
		var p list.Problem
		if errors.As(e, &p) {
			problems = append(problems, problem{File: p.File, Line: p.Line, Level: p.Level.String(), Code: string(p.Code), Message: p.Fact.In(p.Unit), Hint: p.Ask.In(p.Unit)})
		}
	}
	return problems
}

// unproved lists what is wrong with drawings that make no box.
func unproved(proofs []record.Proof, checked []record.Checked) []problem {
	var list []problem
	for _, c := range checked {
		for _, f := range c.Faults {
			list = append(list, problem{File: f.File, Line: f.Line, Level: "error", Code: f.Code, Message: f.Part + ": " + f.Message, Hint: f.Hint})
		}
	}
	for _, p := range proofs {
		for _, f := range p.Faults {
			list = append(list, problem{File: f.File, Line: f.Line, Level: "error", Code: f.Code, Message: p.Drawer + ": " + f.Message, Hint: f.Hint})
		}
		for _, c := range p.Corners {
			if !c.Fits {
				list = append(list, problem{Level: "error", Code: "corner", Message: fmt.Sprintf("%s: the %s does not go into the %s", p.Drawer, c.End, c.Side)})
			}
		}
		if p.Bottom != nil && !p.Bottom.Fits {
			list = append(list, problem{Level: "error", Code: "bottom", Message: p.Drawer + ": the bottom does not go in"})
		}
		for _, r := range p.Remarks {
			list = append(list, problem{Level: "error", Code: "remark", Message: p.Drawer + ": " + r})
		}
	}
	return list
}

// done marks the failure of the last write, if it failed.
func done(err error) error {
	if err != nil {
		return jobError{err}
	}
	return nil
}

func writeJSON(w io.Writer, v any) error {
	data, err := record.JSON(v)
	if err == nil {
		_, err = w.Write(data)
	}
	return err
}
