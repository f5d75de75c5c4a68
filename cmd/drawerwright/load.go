package main

import (
	"fmt"
	"os"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// loaded is a job that was read and worked out, which can be shown.
type loaded struct{ load.Loaded }

// loadJob reads a job file, or standard input for "-", and works it out. The error
// is about the file; what is wrong in it is in problems.
func loadJob(path string, s streams) (loaded, error) {
	if path == "-" {
		return loaded{load.Read("(standard input)", s.in, load.Beside(path))}, nil
	}
	f, err := os.Open(path)
	if err != nil {
		return loaded{}, fmt.Errorf("cannot read the job: %w", err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return loaded{}, fmt.Errorf("cannot read the job: %s is a folder", path)
	}
	return loaded{load.Read(path, f, load.Beside(path))}, nil
}

// show prints the problems for a person, with their places.
func (l loaded) show(s streams) error {
	var paint job.Paint
	if colour(s.err) {
		paint = inColour
	}
	return l.Problems.Print(s.err, paint)
}

// counted says how many warnings show lists of a job without errors, with those beyond the
// most that it does, and how many notes where there are any.
func (l loaded) counted() string {
	notes := l.Problems.Count(geom.LevelNote) + l.MoreNotes
	text := words.Count(len(l.Problems)+l.More-notes, "warning", "warnings")
	if notes > 0 {
		text += ", " + words.Count(notes, "note", "notes")
	}
	return text
}

// inColour marks the parts of a message for a terminal (ECMA-48, SGR: 1 bold,
// 31 red, 33 yellow, 36 cyan).
func inColour(part job.Part, text string) string {
	code := map[job.Part]string{job.PartPlace: "1", job.PartError: "1;31", job.PartWarning: "1;33", job.PartNote: "1", job.PartCaret: "1;31", job.PartHint: "36"}[part]
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}
