// Package readback reads what the program writes for people and programs, and compares
// every quantity, verdict and warning that stands in more than one place: the proof holds
// what people read of a folder against report.json, tests hold all outputs against each other.
//
// [Read] takes the outputs of one job by name and gives their facts, a reader a file;
// [Compare] gives the contradictions among them, [Against] those of one with the record. Readers
// know how outputs are laid out,
// not how their numbers come about, and fail on what they do not know.
package readback

import (
	"fmt"
	"io"
	"strings"

	"drawerwright/cmd/internal/filing"
)

// Fact is what one output says of one thing.
type Fact struct {
	Key
	Value string  // as it is printed
	Step  float64 // what its last digit is worth; 0 for words
	Out   string  // the output
	At    int     // the line of a text, the page of a packet; 0 where that is not known
}

// Key is what a fact is about: a kind of thing, its name, and a measure of it.
type Key struct{ Kind, Of, Measure string }

func (k Key) String() string { return fmt.Sprintf("%s %q: %s", k.Kind, k.Of, k.Measure) }

// Job is what readers have to know of a job.
type Job struct {
	Units   string   // mm or in
	Drawers []string // their names
	Shown   []string // those of which the page was asked to show what their joints do
}

// Outputs of a job by their names.
type Outputs map[string]string

// Names of outputs. Those of a folder have the names of its files.
const (
	CheckText  = "check"
	CheckJSON  = "check --json"
	PartsText  = "parts"
	PartsJSON  = "parts --json"
	PartsCSV   = "parts --csv"
	FitText    = "fit"
	FitJSON    = "fit --json"
	SetupText  = "setup"
	SetupJSON  = "setup --json"
	SheetsText = "sheets"
	SheetsJSON = "sheets --json"
	SheetsCSV  = "sheets --csv"
	Page       = "page" // answers of the page, as PageAnswers
	ReportJSON = filing.Report
	PartsTxt   = filing.PartsText
	PartsList  = filing.Parts
	CutList    = filing.CutList
	BuyList    = filing.Buy
	LayoutList = filing.Layout
	CutsList   = filing.Cuts
	SlideLines = filing.SlideLines
	Packet     = filing.Packet
	ShopPage   = filing.Shop
)

// readers by output.
var readers = map[string]func(r *reading, text string){
	PartsText: partsText, PartsTxt: partsText,
	PartsJSON: reportJSON, ReportJSON: reportJSON,
	PartsCSV: partsCSV, PartsList: partsCSV,
	CutList: cutListCSV, BuyList: buyCSV, SlideLines: slideLinesCSV,
	FitText: fitText, FitJSON: fitJSON,
	SetupText: setupText, SetupJSON: setupJSON,
	SheetsText: sheetsText, SheetsJSON: sheetsJSON, SheetsCSV: layoutCSV, LayoutList: layoutCSV, CutsList: cutsCSV,
	CheckText: checkText, CheckJSON: checkJSON,
	Page: page, Packet: packet, ShopPage: shopPage,
}

// reading takes the facts of one output.
type reading struct {
	out  string
	unit string // mm or in
	job  Job
	take func(Fact)
	at   int // the line or page that is read
}

// Unreadable is why a reader gives up: the output is not laid out as it is written.
type Unreadable struct {
	error
	At int // the line, or page of the packet, up to which it was read; 0 where it is not known
}

func (r *reading) fail(format string, args ...any) {
	panic(Unreadable{fmt.Errorf("%s: %s", r.out, fmt.Sprintf(format, args...)), r.at})
}

func (r *reading) add(kind, of, measure, value string, step float64) {
	r.take(Fact{Key{kind, of, measure}, value, step, r.out, r.at})
}

// words adds a fact in words; count a whole number.
func (r *reading) words(kind, of, measure, value string) { r.add(kind, of, measure, value, 0) }
func (r *reading) count(kind, of, measure string, n int) { r.words(kind, of, measure, fmt.Sprint(n)) }

// fractionStep is what a fraction of an inch leaves open: half a thousandth either way, as a
// decimal does, and what two numbers that are both rounded may be apart.
const fractionStep = 0.0011

// printed adds a length as it is printed: to 0.01 mm, 0.001 in, or as a fraction.
func (r *reading) printed(kind, of, measure, value string) {
	value, _, _ = strings.Cut(value, " (") // the nearest 64th stands beside it
	r.add(kind, of, measure, value, r.step(value))
}

// step is what the last digit of a length as it is printed is worth.
func (r *reading) step(value string) float64 {
	switch {
	case r.unit != "in":
		return 0.01
	case strings.Contains(value, "/"):
		return fractionStep
	}
	return 0.001
}

// weighed adds a weight as it is printed: with tenths, or a whole number, of slides rounded down.
func (r *reading) weighed(drawer, measure, value string) {
	step := 0.1
	switch tenths := strings.Contains(value, "."); {
	case !tenths && strings.HasPrefix(measure, "slides carry"):
		step = 2 // within 1 below
	case !tenths:
		step = 1
	}
	r.add("weight", drawer, measure, value, step)
}

// taped adds a length as a tape has it: 0.01 mm, or a 32nd of an inch.
func (r *reading) taped(kind, of, measure, value string) {
	if r.unit != "in" {
		r.printed(kind, of, measure, value)
		return
	}
	r.add(kind, of, measure, value, 1.0/32)
}

// decimal adds a length of a list for programs: 0.01 mm or 0.0001 in.
func (r *reading) decimal(kind, of, measure, value string) {
	step := 0.01
	if r.unit == "in" {
		step = 0.0001
	}
	r.add(kind, of, measure, value, step)
}

// exact adds a number of a report, which is rounded far below what is printed.
func (r *reading) exact(kind, of, measure string, value float64) {
	r.add(kind, of, measure, fmt.Sprint(value), 1e-6)
}

// money adds a price; an empty one, and a dash, is none.
func (r *reading) money(kind, of, measure, value string) {
	if value != "" && value != "-" {
		r.add(kind, of, measure, value, 0.01)
	}
}

// Read reads the outputs of a job. The error names what could not be read.
func Read(job Job, outputs Outputs) (facts []Fact, err error) {
	for out, text := range outputs {
		if err := readOne(job, out, text, func(f Fact) { facts = append(facts, f) }); err != nil {
			return nil, err
		}
	}
	return facts, nil
}

// readOne hands over the facts of an output, in its order.
func readOne(job Job, out, text string, take func(Fact)) error {
	read, known := readers[out]
	if !known {
		return noReader(out)
	}
	r := &reading{out: out, unit: job.Units, job: job, take: take}
	return r.run(read, text)
}

// readFrom hands over the facts of an output as it comes; those that are texts are not large.
func readFrom(job Job, out string, in io.Reader, take func(Fact)) error {
	if out == Packet {
		r := &reading{out: out, unit: job.Units, job: job, take: take}
		return r.run(func(r *reading, _ string) { r.packet(in) }, "")
	}
	text, err := io.ReadAll(in)
	if err != nil {
		return err
	}
	return readOne(job, out, string(text), take)
}

func noReader(out string) error { return fmt.Errorf("no reader for %q", out) }

func (r *reading) run(read func(*reading, string), text string) (err error) {
	defer func() {
		if p := recover(); p != nil {
			u, ours := p.(Unreadable)
			if !ours {
				panic(p)
			}
			err = u
		}
	}()
	read(r, text)
	return nil
}
