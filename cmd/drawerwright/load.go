package main

import (
	"context"
	"fmt"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// loaded is a job that was read and worked out, which can be shown.
type loaded struct{ load.Loaded }

// loadJob reads a job file, or standard input for "-", and works it out. The error
// is about the file; what is wrong in it is in problems.
func loadJob(path string, s streams) (loaded, error) {
	l, err := parseJob(path, s)
	if err == nil {
		l.startWith(func(int) {})
	}
	return l, err
}

// startWith works a job out, if it could be read, after begin was told how many drawers there are.
func (l *loaded) startWith(begin func(drawers int)) {
	if l.Job != nil {
		begin(len(l.Job.Drawers))
		l.WorkOut(context.Background())
	}
}

// parseJob reads a job file, or standard input for "-", which is then to be worked out.
func parseJob(path string, s streams) (loaded, error) {
	if path == "-" {
		return loaded{load.Parse(context.Background(), "(standard input)", s.in, load.Beside(path))}, nil
	}
	f, err := opened("job", path, "drawerwright init "+plain(path)+" asks six questions and writes one")
	if err != nil {
		return loaded{}, err
	}
	defer f.Close()
	return loaded{load.Parse(context.Background(), path, f, load.Beside(path))}, nil
}

// show prints the problems for a person, with their places; notes stand apart.
func (l loaded) show(s streams) error {
	var paint job.Paint
	if color(s.err) {
		paint = inColor
	}
	var notes, others job.Problems
	for _, p := range l.Problems {
		if p.Level == geom.LevelNote {
			notes = append(notes, p)
		} else {
			others = append(others, p)
		}
	}
	out := present.Printed{Width: wrapped(s.err)}
	if err := others.Print(&out, paint); err != nil {
		return err
	}
	if len(notes) > 0 && !l.Failed() {
		out.WriteString("\nnotes: more work, or a thing to know; nothing comes out wrong:\n")
	}
	if err := notes.Print(&out, paint); err != nil {
		return err
	}
	_, err := s.err.Write(out.Wrapped())
	return err
}

// failed says that a job cannot be built, before what is wrong with it.
func (l loaded) failed(s streams) error {
	errors := words.Count(l.Problems.Count(geom.LevelError), "error", "errors")
	_, err := fmt.Fprintf(s.err, "This job cannot be built: %s. Mend the file and check it again.\n", errors)
	return err
}

// answer is what a command begins with that lists the warnings itself: the verdict on the job,
// and what to watch.
func (l loaded) answer() []present.Line {
	v := record.VerdictOn(l.Batch)
	level := present.Bad
	if v.Fits {
		level = present.Good
	}
	said := l.counted()
	watch := strings.TrimSpace(v.Watch + " " + strings.ToUpper(said[:1]) + said[1:] + ".")
	list := []present.Line{{Level: level, Text: v.Text}, {Text: watch}}
	for _, said := range l.Saved {
		list = append(list, present.Line{Text: said})
	}
	return list
}

// head is what other commands begin with: the answer, and what to do next.
func (l loaded) head(path, next string) []present.Line {
	list := l.answer()
	if list[0].Level == present.Bad {
		next = "check" // it says what would do
	} else if l.counted() != noWarnings {
		list[1].Text = strings.TrimSuffix(list[1].Text, ".") + ": drawerwright check " + plain(path) + "."
	}
	return append(list, nextLine(next, path))
}

// cannotCut is what is said first of cuts that the machine of a drawer does not make: a test cut at
// its setting cannot be made either.
func (l loaded) cannotCut(drawer int) present.Line {
	return present.Line{Level: present.Bad, Text: record.CannotCut(l.Batch.Drawers[drawer:drawer+1], l.Batch.Units)}
}

// nextLine names the command to go on with.
func nextLine(command, path string) present.Line {
	return present.Line{Text: fmt.Sprintf("Next: drawerwright %s %s", command, plain(path))}
}

// noWarnings is what counted says of a job without warnings and notes.
const noWarnings = "no warnings"

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

// inColor marks the parts of a message for a terminal (ECMA-48, SGR: 1 bold,
// 31 red, 33 yellow, 36 cyan).
func inColor(part job.Part, text string) string {
	code := map[job.Part]string{job.PartPlace: "1", job.PartError: "1;31", job.PartWarning: "1;33", job.PartNote: "1", job.PartCaret: "1;31", job.PartHint: "36"}[part]
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}
