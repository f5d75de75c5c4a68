package job

import (
	"errors"
	"io/fs"

	tables "drawerwright/cmd/internal/list"
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/shoplog"
)

// Log is the shop's log of test cuts, as a job takes it.
type Log struct {
	File string
	Cuts []shoplog.Cut
	Keep shoplog.Keep // which of them count
	// Asked is set where accuracies follow from it.
	Asked bool
}

// fromLog is the word for an accuracy that follows from the log.
const fromLog = "from-log"

var keepKeys = []key{
	{name: fromLog, form: formWord, words: []string{yes, no}, fallback: no, example: yes,
		doc: "yes: as the log shows it, which begins with the lengths that are given here, or with what is usual",
		why: "a log is read where the job asks for it"},
	{name: "keep-days", form: formCount, min: 1, max: maxKept, without: "all count", example: "180",
		doc: "Cuts of the log count that are no older than so many days before the newest one"},
	{name: "keep-cuts", form: formCount, min: fit.EnoughCuts, max: maxKept, without: "all count", example: "30",
		doc: "So many of the newest cuts of each quantity count"},
}

// maxKept is more days and cuts than a log has.
const maxKept = 100_000

// log reads the log that the job names; nil without one, or where it cannot be read. A log that is not there yet has no
// cuts.
func (r *reader) log(named value, accuracy *section) *Log {
	if named.text == "" {
		return nil
	}
	count := func(key string) int { return int(accuracy.values[key].number) }
	l := &Log{File: named.text, Keep: shoplog.Keep{Days: count("keep-days"), Cuts: count("keep-cuts")}}
	if r.open == nil {
		r.fail(CodeFile, named.at, "delete it", "log: no other file can be opened here")
		return nil
	}
	f, err := r.open(named.text)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		r.add(Problem{Level: geom.LevelNote, Code: CodeFile,
			Message: "log: there is no " + quote(named.text) + " yet, so that nothing is known from it",
			Hint:    "give `drawerwright adjust` a test cut with --log and that file, or mend its name"}, named.at)
		return l
	case err != nil:
		r.fail(CodeFile, named.at, "the name begins in the folder of the job file",
			"log: the file cannot be opened: %s", printable(err.Error()))
		return nil
	}
	defer f.Close()
	log, err := tables.ReadLog(named.text, f)
	l.Cuts = log.Cuts
	r.shared = append(r.shared, problemsOf(err, named.text)...)
	return l
}

// problemsOf are the mistakes of a table that a job names.
func problemsOf(err error, file string) (all Problems) {
	var joined interface{ Unwrap() []error }
	if !errors.As(err, &joined) {
		if err != nil {
			all = Problems{{File: file, Line: 1, Column: 1, Level: geom.LevelError, Code: CodeRead,
				Message: printable(err.Error())}}
		}
		return all
	}
	for _, one := range joined.Unwrap() {
		var p tables.Problem
		if errors.As(one, &p) {
			all = append(all, Problem{File: p.File, Line: p.Line, Column: 1, Level: p.Level, Code: CodeLog,
				Message: p.Fact.In(p.Unit), Hint: p.Ask.In(p.Unit)})
		}
	}
	return all
}

// asksLog reports whether accuracies follow from the log.
func (b *builder) asksLog() bool {
	at := b.root.values["accuracy"]
	if own := b.accuracy.values[fromLog]; own.given {
		at = own
	}
	if at.text != fromLog && at.text != yes {
		return false
	}
	if !b.root.values["log"].given && !b.lost {
		b.fail(CodeMissingKey, at.at, "write `log: shop.csv` with the name of the log",
			"accuracy: from-log needs the log, and the job names none")
	}
	if b.log != nil {
		b.log.Asked = true
	}
	return b.log != nil
}

// tooled is a machine with its cutter, and what is known of it before its log.
type tooled struct {
	tool   shoplog.Tool
	stated fit.Accuracy
}

// learn is the accuracy of a drawer that follows from the log, worked out once for each machine and cutter.
func (b *builder) learn(d Drawer) fit.Accuracy {
	by := tooled{d.Tool, d.Accuracy}
	a, known := b.learned[by]
	if !known {
		a = d.Accuracy.From(b.log.Cuts, d.Tool, b.log.Keep)
		b.learned[by] = a
	}
	return a
}
