package geom

import (
	"encoding"
	"slices"
)

// Level says how grave a diagnosis is.
type Level int

const (
	// LevelNote is a fact or more work, as a second pass is: nothing comes out wrong.
	LevelNote Level = iota
	// LevelWarning is for what can be made and may come out wrong, or hurt.
	LevelWarning
	// LevelError is for what cannot be made as asked.
	LevelError
)

func (l Level) String() string {
	return [...]string{LevelNote: "note", LevelWarning: "warning", LevelError: "error"}[l]
}

// Code names a kind of diagnosis; short and stable, for programs.
type Code string

// Setting names what a shop can set: an entry of a job, whichever way it is written there.
type Setting string

// Subject is what a diagnosis is about. Its zero value is the whole of what was asked.
type Subject struct {
	Part    string  // the role of a part, or its name
	Setting Setting // the setting to change
	Item    int     // of several of them, from 0
	// Check identifies the measure of a finished box, as a joinery.CheckID; nil for others.
	Check encoding.TextMarshaler
}

// Diagnosis is one thing that a shop has to know of what it asked for. It holds data:
// units, and the words in which a shop writes its settings, are put on where it is shown.
type Diagnosis struct {
	Code    Code
	Level   Level
	Subject Subject
	Fact    Sentence
	// Measured misses Limit; both are nil where nothing was measured.
	Measured, Limit Quantity
	// First is what a person does before anything else, where what was measured rests on a figure that
	// nobody has measured: remedies are for what is known.
	First Sentence
	// Reread is the stock of which First asks for readings.
	Reread string
	// Ask is what only a person can do: what is advised where there is no remedy. Asked is the
	// change that it names, where it names one that nothing but work in the shop brings about.
	Ask   Sentence
	Asked Change
	// Remedies are changes of settings, each tried: it ends the diagnosis and brings no
	// other but those that it announces. Eases are those that help and do not end it.
	Remedies, Eases []Remedy
}

// Topic is a code and a part: diagnoses of one topic are counted to see which a change ends
// and which it brings.
type Topic struct {
	Code Code
	Part string
}

// Topic is that of a diagnosis.
func (d Diagnosis) Topic() Topic { return Topic{d.Code, d.Subject.Part} }

// Topics counts diagnoses.
func Topics(list []Diagnosis) map[Topic]int {
	n := make(map[Topic]int)
	for _, d := range list {
		n[d.Topic()]++
	}
	return n
}

// IsError reports whether it cannot be made as asked.
func (d Diagnosis) IsError() bool { return d.Level == LevelError }

// AnyError reports whether one of a list is an error.
func AnyError(list []Diagnosis) bool { return slices.ContainsFunc(list, Diagnosis.IsError) }

// Error is the fact, and what is asked of a person, in millimeters: a diagnosis is the
// error of a function that makes nothing then. Who has a unit prints Fact and Ask in it.
func (d Diagnosis) Error() string {
	if d.Ask.IsEmpty() {
		return d.Fact.In(Millimeter)
	}
	return d.Fact.In(Millimeter) + "; " + d.Ask.In(Millimeter)
}

// Diagnoses gathers what a library finds. Its methods give what they add, to be filled.
type Diagnoses []Diagnosis

// Add adds one about a setting.
func (list *Diagnoses) Add(level Level, code Code, s Setting, fact Sentence) *Diagnosis {
	*list = append(*list, Diagnosis{Code: code, Level: level, Subject: Subject{Setting: s}, Fact: fact})
	return &(*list)[len(*list)-1]
}

// Fail adds an error.
func (list *Diagnoses) Fail(code Code, s Setting, format string, args ...any) *Diagnosis {
	return list.Add(LevelError, code, s, Sentencef(format, args...))
}

// Warn adds a warning.
func (list *Diagnoses) Warn(code Code, s Setting, format string, args ...any) *Diagnosis {
	return list.Add(LevelWarning, code, s, Sentencef(format, args...))
}
