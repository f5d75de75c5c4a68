// Package batch works out every drawer of a job and gives drawers, parts and
// files their names, once, for the commands that list, report and write them.
package batch

import (
	"context"
	"fmt"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/dxf"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/advice"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
	"drawerwright/geom/setup"
	"drawerwright/geom/shoplog"

	"golang.org/x/sync/errgroup"
)

// Batch is a job worked out.
type Batch struct {
	Title       string
	Units       geom.Unit
	Stocks      []joinery.Stock
	Lumber      []job.Lumber
	Router      mill.Settings // without bits, which are a drawer's
	DXF         router.Options
	Drawers     []Drawer // in the order of the file
	Banks       []Bank
	SharedSizes []SharedSize
	Spacers     []float64 // the shop's
	Paper       job.Paper
	// Templates are nil where the job asks for none.
	Templates *Templates
	Preview   string // what the job asks for; empty where it leaves that to the machines
	Sheets    job.Sheets
	Machines  setup.Machines
	Log       *job.Log // nil where the job names none
	// Code stands on all that is made of the job: another one is of another job, or of another state of it.
	Code    string
	names   fileNames
	milling *milling
}

// Boxes is how many boxes the batch makes.
func (b Batch) Boxes() int {
	n := 0
	for _, d := range b.Drawers {
		n += d.Spec.Count
	}
	return n
}

// Kinds are the drawers whose boxes are alike in size, joint and every part: those of equal rows are one kind, though
// each has a name of its own.
func (b Batch) Kinds() [][]Drawer {
	return setup.Together(b.Drawers, func(d Drawer) string {
		var key strings.Builder
		out := d.Outside // sums that are alike differ in their last bits
		fmt.Fprintf(&key, "%s %d %d %d %d %s", d.Spec.Joint, d.Spec.Count, geom.LengthOf(out.Width),
			geom.LengthOf(out.Height), geom.LengthOf(out.Depth), d.Outcome)
		for _, p := range d.Parts {
			fmt.Fprintf(&key, "; %s %s %d", p.Role, p.Label, p.Number)
		}
		return key.String()
	})
}

// KindsSaid counts the kinds of drawer.
func (b Batch) KindsSaid() string {
	return words.Count(len(b.Kinds()), "kind of drawer", "kinds of drawer")
}

// Milled reports whether the previews of a drawer show what bits leave of its boards. Slots
// that a blade, a fence or a person makes are square and run out as they are designed.
func (b Batch) Milled(d Drawer) bool {
	return b.Preview == job.PreviewMilled || b.Preview == "" && d.Spec.Cutter.Kind.FollowsDrawing()
}

// Drawer is one kind of drawer with its parts. Copies share the box.
type Drawer struct {
	*advice.Box
	Folder   string     // of its previews
	Step     string     // the file of its exact solids; empty where the job asks for none
	Bits     []mill.Bit // none on a saw
	Tool     shoplog.Tool
	Parts    []Part
	Strength Strength
	// Refused are the cuts that its machine cannot make.
	Refused []setup.Step
	// Against is what else is wrong with a box that is right by itself: too much for bottom or slide, or no room.
	Against []geom.Diagnosis
	// Advice is what is said to help each measure of which there is a problem.
	Advice map[joinery.CheckID]string
}

// Part is a panel that a shop cuts some of.
type Part struct {
	*joinery.Part        // of the box
	Name          string // safe for every file system, and different from all others
	Number        int    // of all parts that are alike, from 1 in the order of the cut list
	Drawer        string
	Quantity      int // for all drawers of its kind, spares among them
	Spares        int
	// Banding is the edge banding of a piece, in mm, 0 where its stock has none;
	// BandingThickness its thickness, BandingPrice that of a meter.
	Banding, BandingThickness, BandingPrice float64
	Bits                                    []mill.Bit
	milling                                 *milling        // that tells its Work; nil of no job
	engraving                               *mill.Engraving // nil where it gets none
	Engraved                                *Engraved       // nil where no numbers are asked for
	Drawings                                []Drawing       // one for each face that is cut, in the order of cutting
	STL                                     string          // its file, relative to the output folder
	Step                                    string          // that of its exact solid; empty where the job asks for none
}

// Drawing is the file of one face.
type Drawing struct {
	Face geom.Face
	File string // relative to the output folder
}

// File is the drawing of a face; empty where that face is not cut.
func (p Part) File(f geom.Face) string {
	for _, d := range p.Drawings {
		if d.Face == f {
			return d.File
		}
	}
	return ""
}

// Drawn is the part as the drawings show it, cut with the settings of a job.
func (p Part) Drawn(by mill.Settings) router.Part {
	return router.Part{Name: p.Name, Quantity: p.Quantity, Stock: p.Stock.Name, Panel: p.Panel, Work: p.Work(),
		Bits: p.Bits, FromSpoilboard: by.FromSpoilboard && len(p.Bits) > 0}
}

// Make works out a job. With an error among the problems the batch is not to be built. Where the context
// ends before, nothing comes of it.
func Make(ctx context.Context, j *job.Job) (Batch, []Problem) {
	b := empty(j)
	how := manner{ctx, advice.NewMemory(), true}
	all := advised(j, how, b.workOut(j, how))
	if ctx.Err() != nil {
		return Batch{}, nil
	}
	all = b.finish(j, all)
	b.advise(j, all)
	b.noteLower(all)
	return b, all
}

// Bare is [Make] without trying what would help: its problems name no change, and its drawers have no
// advice.
func Bare(j *job.Job) (Batch, []Problem) {
	b := empty(j)
	var all []Problem
	for i, list := range b.workOut(j, manner{context.Background(), advice.NewMemory(), false}) {
		for _, p := range list {
			all = append(all, Problem{Drawer: i, Diagnosis: p.Diagnosis})
		}
	}
	all = b.finish(j, all)
	return b, all
}

// finish makes of drawers that are worked out what goes beyond each, and adds what is to be said of that.
func (b *Batch) finish(j *job.Job, all []Problem) []Problem {
	b.numberParts()
	b.engrave()
	b.shareLayers()
	for i := range b.Drawers {
		for _, p := range b.draw(&b.Drawers[i]) {
			all = append(all, Problem{Drawer: i, Diagnosis: p})
		}
	}
	all = append(all, unchecked(j)...)
	b.banks(j)
	if !slices.ContainsFunc(all, func(p Problem) bool { return p.IsError() }) {
		all = append(append(all, b.templates(j)...), b.withoutEffect(j)...)
	}
	b.Code = codeOf(b.Drawers)
	b.DXF.Code = b.Code
	return append(all, b.sameNames()...)
}

// advise notes the hints of problems with a measure at their drawers.
func (b Batch) advise(j *job.Job, all []Problem) {
	for _, p := range all {
		d := &b.Drawers[p.Drawer]
		for _, id := range concerned(p.Diagnosis) {
			if d.Advice == nil {
				d.Advice = make(map[joinery.CheckID]string)
			}
			if d.Advice[id] == "" { // the first is the first that is shown
				d.Advice[id] = p.Shown(j).Hint
			}
		}
	}
}

// manner is how drawers are worked out: with what is known of others like them and, where advise is
// set, with what would help, until a context ends.
type manner struct {
	ctx    context.Context
	known  *advice.Memory
	advise bool
}

// workOut works the drawers out, as many entries at a time as there are processors, and gives what is to be
// said of each.
func (b *Batch) workOut(j *job.Job, how manner) [][]proposal {
	found := make([][]proposal, len(j.Drawers))
	b.Drawers = make([]Drawer, len(j.Drawers))
	concluded := fit.NewConcluded()
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	eachEntry(j, func(from, to int) {
		g.Go(func() error {
			if how.ctx.Err() != nil {
				return nil
			}
			drawers, judged := build(j, from, to, how)
			for i, d := range drawers {
				list := plain(judged[i])
				if sound(judged[i]) {
					list = append(list, b.judge(j, from+i, &d)...)
					d.band(j.Bandings)
				} else {
					d.Outcome = fit.Unknown
				}
				d.Conclude(concluded)
				b.Drawers[from+i], found[from+i] = d, list
			}
			return nil
		})
	})
	_ = g.Wait() // no call gives an error
	return found
}

// empty is a batch before its drawers are worked out.
func empty(j *job.Job) Batch {
	b := Batch{Title: j.Title, Units: j.Units, Stocks: j.Stocks, Lumber: j.Lumber, Router: j.Router, Spacers: j.Spacers,
		Paper: j.Paper, Preview: j.Preview, Sheets: j.Sheets, Machines: j.Machines, Log: j.Log,
		DXF: router.Options{Version: dxf.R2000, Unit: j.DXFUnits, Pattern: j.Layers, Order: j.Order, Elevation: j.Elevation, NoNotes: j.NoNotes, Split: j.Split}}
	b.milling = &milling{settings: j.Router, latest: make(map[milled]mill.Operations)}
	if j.DXFVersion == "R12" {
		b.DXF.Version = dxf.R12
	}
	title := j.Title
	if title == "" {
		title = strings.TrimSuffix(filepath.Base(j.File), filepath.Ext(j.File))
	}
	b.names = fileNames{pattern: j.FileNames, job: job.FileName(title), unit: j.DXFUnits}
	return b
}

// eachEntry goes over the entries of a job by the drawers that they make, from one to
// before another.
func eachEntry(j *job.Job, do func(from, to int)) {
	for from := 0; from < len(j.Drawers); {
		to := from
		for to < len(j.Drawers) && j.Drawers[to].Entry() == j.Drawers[from].Entry() {
			to++
		}
		do(from, to)
		from = to
	}
}

// build works the boxes of an entry out and judges them together, with advice or without.
func build(j *job.Job, from, to int, how manner) (drawers []Drawer, problems [][]geom.Diagnosis) {
	var rows []joinery.Spec
	for i := from; i < to; i++ {
		asked := j.Drawers[i]
		spec := asked.Spec
		spec.Units = j.Units
		box, _, sound := joinery.LayOut(spec)
		d := name(box, asked.Bits, asked.Spares)
		d.Tool = asked.Tool
		if j.Step {
			d.exact()
		}
		if sound {
			*d.Box = how.known.Box(d.Drawer, shopOf(j, i))
			spec.Spreads = d.Outcome.Spreads()
		}
		drawers, rows = append(drawers, d), append(rows, spec)
	}
	judge := layOutRows
	if how.advise {
		judge = joinery.BuildRows
	}
	_, found := judge(rows)
	for i := range rows {
		like := slices.IndexFunc(drawers[:i], func(d Drawer) bool { return d.Like(drawers[i].Box) })
		if like >= 0 { // but for their names they are one drawer
			problems = append(problems, slices.Clone(problems[like]))
			continue
		}
		t := teller{drawers, i, how.advise && how.ctx.Err() == nil, j.Sheets}
		problems = append(problems, t.told(found[i]))
	}
	return drawers, problems
}

// judge judges a box that can be made by its router, its load and its machine.
func (b Batch) judge(j *job.Job, i int, d *Drawer) []proposal {
	return slices.Concat(b.mill(j, i, d), d.strengthen(j, i), b.beyond(j, i, d))
}

func name(d joinery.Drawer, bits []mill.Bit, spares int) Drawer {
	out := Drawer{Box: &advice.Box{Drawer: d}, Folder: job.FileName(d.Spec.Name), Bits: bits}
	for i := range d.Parts {
		p := &d.Parts[i]
		part := Part{Part: p, Name: partName(out.Folder, p), Drawer: d.Spec.Name, Quantity: d.Spec.Count*len(p.Placements) + spares, Spares: spares, Bits: bits}
		part.STL = filing.PartSolid(out.Folder, part.Name)
		out.Parts = append(out.Parts, part)
	}
	return out
}

// exact names the files of its exact solids.
func (d *Drawer) exact() {
	d.Step = filing.BoxStep(d.Folder)
	for i, p := range d.Parts {
		d.Parts[i].Step = filing.PartStep(d.Folder, p.Name)
	}
}

// sameNames finds drawers that have a part with one name: a drawer's name can end as
// another's part does. Two drawers of one name were reported when the job was read.
func (b Batch) sameNames() (problems []Problem) {
	first := make(map[string]Drawer)
	for i, d := range b.Drawers {
		told := false
		for _, p := range d.Parts {
			if other, taken := first[p.Name]; taken {
				if told || other.Folder == d.Folder {
					continue
				}
				told = true
				problems = append(problems, Problem{Drawer: i, Diagnosis: geom.Diagnosis{
					Code: "same-name", Level: geom.LevelError, Subject: geom.Subject{Setting: joinery.SettingName, Part: string(p.Role)},
					Fact: geom.Sentencef("its %s would have the same files as a part of %q: %s", p.Role, other.Spec.Name, p.Name),
					Ask:  geom.Sentencef("give one of the two drawers another name"),
				}})
				continue
			}
			first[p.Name] = d
		}
	}
	return problems
}

// partName is a drawer's own name, the part's role, and what tells it from others
// of that role.
func partName(folder string, p *joinery.Part) string {
	name := folder + "-" + string(p.Role)
	if p.Label != "" {
		name += "-" + p.Label
	}
	return name
}

// mill works out how the parts of a drawer are cut.
func (b Batch) mill(j *job.Job, drawer int, d *Drawer) []proposal {
	var problems []proposal
	told := make(map[string]bool) // a back is often the front's twin
	for i := range d.Parts {
		p := &d.Parts[i]
		p.milling = b.milling
		_, found := p.milling.prepare(milled{part: p.Part}, p.Bits)
		for _, d := range found {
			fact := d.Fact.In(b.Units)
			if key := string(d.Code) + fact; told[key] {
				continue
			} else {
				told[key] = true
			}
			ask := d.Ask
			d.Ask = geom.Sentencef("%s", job.Advice(d, b.Units)) // where none of its remedies holds
			d.Fact = geom.Sentencef("%s: %s", p.Role, d.Fact)
			d.Subject.Part = string(p.Role)
			ways := families(j.RouterWays(drawer, d)...)
			d.Remedies = nil
			problems = append(problems, proposal{Diagnosis: d, ways: ways, also: ask})
		}
	}
	if len(d.Bits) == 1 {
		return longest(problems)
	}
	return problems
}

// longest leaves of what a longer bit ends the one that asks for the longest: a drawer has one bit.
func longest(problems []proposal) []proposal {
	reach := func(p proposal) geom.Millimeters { mm, _ := p.Measured.(geom.Millimeters); return mm }
	most := geom.Millimeters(0)
	for _, p := range problems {
		if p.Code == mill.CodeBitReach {
			most = max(most, reach(p))
		}
	}
	told := false
	return slices.DeleteFunc(problems, func(p proposal) bool {
		if p.Code != mill.CodeBitReach {
			return false
		}
		drop := told || reach(p) < most
		told = told || !drop
		return drop
	})
}
