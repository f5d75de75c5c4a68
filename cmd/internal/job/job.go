// Package job reads the job file of a shop: YAML with the stocks as they were
// measured, the cutter, and the drawers to make. [Read] turns the file into
// specs for the package joinery, or into every mistake in it with line, column
// and what would do. [Schema] describes the same keys to editors.
package job

import (
	"io"
	"slices"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
	"drawerwright/geom/setup"
	"drawerwright/geom/shoplog"
)

// Job is what a job file asks for. Lengths are in millimeters.
type Job struct {
	File        string
	Title       string    // may be empty
	Units       geom.Unit // of bare numbers in the file, and for output
	Stocks      []joinery.Stock
	Bandings    []Banding // of the stocks that have one
	Lumber      []Lumber  // rough ones of the stocks that are bought in them
	Drawers     []Drawer
	Banks       []Bank        // of drawers that share an opening; none when there is an error
	SharedSizes []SharedSize  // openings that one size of box serves, or would serve
	DXFVersion  string        // R2000 or R12
	DXFUnits    geom.Unit     // of the drawings
	Layers      string        // the pattern of their layers' names
	Elevation   bool          // cuts are drawn at the height of their floors
	NoNotes     bool          // nothing is drawn beside the parts
	Split       bool          // each drawing has a file for each of its bits beside it
	Order       []string      // the operations that are cut first
	FileNames   string        // the pattern of their own names
	Router      mill.Settings // without bits, which are a drawer's
	// Spreads are those of the stocks, by name: between which thicknesses their boards
	// are, also where a single reading leaves it to a standard.
	Spreads map[string]fit.Spread
	Preview string    // what its solids show; empty where that is left to each drawer's machine
	Step    bool      // exact solids are written as STEP too
	Log     *Log      // nil without one
	Spacers []float64 // the shop's spacer blocks and shims, in the order of the file
	Paper   Paper
	// Templates are nil where the job asks for none.
	Templates *Templates
	Sheets    Sheets
	Machines  setup.Machines // of the shop, with a fence

	src     *source
	lots    *Sorted                                  // nil for a job as it is written
	cutter  func() string                            // what the file has as cutter, in one line; empty without
	open    func(name string) (io.ReadCloser, error) // other files; nil where none can be
	stockAt map[string]map[string]Position           // of each stock, by its key; "" is its own
	ruleAt  map[string]Position                      // of the sections sheets and router, and of their entries: sheets.trim, router.relief.dado
}

// Drawer is one drawer of a job, as the package joinery takes it. Keys that
// the file leaves out have their defaults; a fence distance or cutter height
// of 0 is left to joinery.
type Drawer struct {
	joinery.Spec
	Bits   []mill.Bit // of a router
	Load   float64    // kg that will lie in it; 0 when not said
	Spares int        // more of each part
	// Accuracy is that of the shop on this drawer's machine.
	Accuracy fit.Accuracy
	// Tool is what the shop's log calls its machine and cutter.
	Tool shoplog.Tool
	at   Position
	// Where its entry is in the list of drawers, the path to the width of its cutter,
	// nil where it has several bits, and the settings of joinery that are its own.
	entry       int
	cutterAt    []string
	ownSettings []geom.Setting
	bitsAt      []bitPlace // of the router's bits
	ownCutter   bool
	sound       bool // every value that joinery takes could be read
	places      map[geom.Setting]Position
}

// Read reads a job file. The problems are those of the whole file in the order
// of their places. When one of them is an error, the job holds no more than the
// drawers that are sound by themselves, so that their joints can be judged in
// the same run, and is not to be built; it is nil when the file is no YAML. Of a file over
// 1 MiB no more than that is read. The name of the file is only for the
// problems. A job that takes its slides from another file needs the option
// [Files]; the problems of that file, which carry its name, stand after the others.
//
// A job uses a part of YAML: mappings and lists in either style, text on one
// line, plain or in quotes, and comments. Anything else is an error, and so is
// a key that does not exist.
func Read(file string, from io.Reader, options ...Option) (*Job, Problems) {
	r := &reader{reporter: &reporter{}}
	for _, set := range options {
		set(r)
	}
	src, ok := readSource(file, from, r.reporter)
	if !ok {
		return nil, r.sorted()
	}
	root, _ := parse(src, r.reporter)
	if root.kind == nothing {
		if len(r.problems) == 0 {
			r.fail(CodeEmpty, Position{1, 1}, "a job begins with `units: mm` and lists `stock:` and `drawers:`", "the file holds no job")
		}
		return nil, r.sorted()
	}
	r.readUnits(root)
	job := r.job(r.section(root, jobKeys, "the file"))
	problems := append(r.sorted(), r.shared...)
	problems = problems[:min(len(problems), MaxProblems)]
	if problems.Failed() {
		job.Banks, job.SharedSizes = nil, nil
		job.Drawers = slices.DeleteFunc(job.Drawers, func(d Drawer) bool { return !d.sound })
	}
	return job, problems
}

// readUnits finds the units of a file, which everything else in it needs.
func (r *reader) readUnits(root *node) {
	if i := slices.IndexFunc(root.entries, func(e entry) bool { return e.key == "units" }); i >= 0 {
		units, err := geom.ParseUnit(root.entries[i].value.text)
		r.units, r.unitsKnown = units, err == nil
	}
}

// Where is the place that decided a field of a drawer: its own entry, or the
// entry for the whole file, or the entry of the front that holds for the back,
// and where there is none the drawer itself. The drawer counts from 0.
func (j *Job) Where(drawer int, f geom.Setting) Position {
	d := j.Drawers[drawer]
	if at, ok := d.places[f]; ok {
		return at
	}
	if at, ok := j.ruleAt[string(f)]; ok {
		return at
	}
	return d.at
}

// Says reports whether the file has an entry of the sections sheets and router, as sheets.trim.
func (j *Job) Says(entry string) bool {
	_, says := j.ruleAt[entry]
	return says
}

// Problem shows a diagnosis of a drawer in the job file, in its words and its unit. The drawer
// counts from 0; others are ways beside the remedies.
func (j *Job) Problem(drawer int, d geom.Diagnosis, others ...string) Problem {
	spec := j.Drawers[drawer].Spec
	spec.Units = j.Units
	return j.src.place(Problem{Level: d.Level, Code: Code(d.Code), Message: d.Fact.In(j.Units), Hint: Hint(d, spec, others...)}, j.placeOf(drawer, d))
}

// placeOf is the place of what a diagnosis of a drawer is about; of a bit its own, or that of its reach where it is
// too short.
func (j *Job) placeOf(drawer int, d geom.Diagnosis) Position {
	if d.Subject.Setting != mill.SettingBits {
		return j.Where(drawer, d.Subject.Setting)
	}
	bits := j.Drawers[drawer].bitsAt
	if d.Subject.Item >= len(bits) {
		return j.Where(drawer, joinery.SettingCutter)
	}
	at := bits[d.Subject.Item]
	if d.Code == mill.CodeBitReach && at.reach != (Position{}) {
		return at.reach
	}
	return at.bit
}

// StockProblem shows a problem of a stock in the job file, at one of its keys where the
// file has it, or at one of the sections sheets and router, as sheets.trim.
func (j *Job) StockProblem(stock, key string, d geom.Diagnosis) Problem {
	at, known := j.stockAt[stock][key]
	if section, _, dotted := strings.Cut(key, "."); dotted {
		if at, known = j.ruleAt[key]; !known {
			at, known = j.ruleAt[section]
		}
	}
	if !known {
		at = j.stockAt[stock][""]
	}
	return j.src.place(Problem{Level: d.Level, Code: Code(d.Code), Message: d.Fact.In(j.Units), Hint: d.Ask.In(j.Units)}, at)
}

// Entry is the number of a drawer's entry in the list of the file, from 0: the drawers
// of an opening share one.
func (d Drawer) Entry() int { return d.entry }
