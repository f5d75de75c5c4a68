package prove

import (
	"errors"
	"io"
	"strings"

	"drawerwright/cmd/internal/readback"
	"drawerwright/cmd/internal/record"
)

// Printed are what people read of a build, written when all else is done.
var Printed = []string{readback.PartsTxt, readback.Packet, readback.ShopPage}

// lasts lists what is read back of the files that are written last.
func (p *Prover) lasts() {
	for _, file := range Printed {
		p.checks = append(p.checks, func(w *Worker, read Read) record.Checked {
			c := w.Document(file, read)
			if file == readback.ShopPage && len(c.Faults) == 0 {
				c.Faults = append(c.Faults, w.settings(file, readback.Packet, read)...)
			}
			return c
		})
	}
}

// Lasts is how many of the checks, the last ones, read files that say how the others went.
func (p *Prover) Lasts() int { return len(Printed) }

// Promised is what these files say of them: a build in which they are not sound is
// not written.
func (p *Prover) Promised() (list []record.Checked) {
	for _, file := range Printed {
		list = append(list, record.Checked{Kind: record.CheckedDocument, Name: file, Faults: []record.Fault{}})
	}
	return list
}

// recorded is what the report says, for those who compare what is printed.
type recorded struct {
	job    readback.Job
	record *readback.Record
	err    error
}

// recordOf reads the report, and the cut list, in which equal parts are together, if it can
// be read.
func (p *Prover) recordOf(read Read) (r recorded) {
	r.job.Units = p.report.Units
	for _, d := range p.report.Drawers {
		r.job.Drawers = append(r.job.Drawers, d.Name)
	}
	bare := p.report
	bare.Proof, bare.Checked = record.List[record.Proof]{}, nil // which are made anew
	list, err := read(cutList)
	if err == nil {
		r.record, r.err = recordFrom(r.job, bare, string(list))
	}
	if err != nil || r.err != nil { // which is told of where the list is read
		r.record, r.err = recordFrom(r.job, bare, "")
	}
	return r
}

// recordFrom reads a report as it is written.
func recordFrom(j readback.Job, r record.Kept, list string) (*readback.Record, error) {
	text, to := io.Pipe()
	defer text.Close() // so that the writer ends where the reader gave up
	go func() { to.CloseWithError(record.Write(to, r)) }()
	return readback.RecordOf(j, text, list)
}

// Document holds a file that people read against the report and the cut list: every number, quantity,
// verdict and warning that both have. It asks for no proof of the drawers.
func (w *Worker) Document(file string, read Read) record.Checked {
	c := checking{Prover: w.Prover, out: record.Checked{Kind: record.CheckedDocument, Name: file,
		Faults: []record.Fault{}}}
	in, err := w.opened(file, read)
	if err != nil {
		c.missing(file, err)
		return c.out
	}
	defer in.Close()
	w.recording.Do(func() { w.recorded = w.recordOf(read) })
	r := w.recorded
	if r.err != nil {
		c.fault("unreadable", place{file, "report.json", 0}, rebuild, "the report cannot be compared: %v", r.err)
		return c.out
	}
	found, err := readback.Against(r.job, r.record, file, in)
	if err != nil {
		c.fault("unreadable", place{file, file, 0}, rebuild, "it is not laid out as build lays it out: %v", err)
		var u readback.Unreadable
		if errors.As(err, &u) {
			c.on(len(c.out.Faults)-1, u.At)
		}
		return c.out
	}
	for _, k := range found {
		if len(k.Not) > 0 {
			c.fault("said-not", place{k.Of, file, 0}, rebuild,
				"it does not say the %s of the %s %q, which is %s in the report", k.Measure, k.Kind, k.Of,
				k.Says[0].Value)
			continue
		}
		n := len(c.out.Faults)
		c.fault("said", place{k.Of, file, 0}, rebuild, "it says %q for the %s of the %s %q; the report has %q",
			k.Says[1].Value, k.Measure, k.Kind, k.Of, k.Says[0].Value)
		c.on(n, k.Says[1].At)
	}
	return c.out
}

// settings holds what a file that people read says of the settings of machines against another one, for the report
// does not have them. That one is told of by itself where it cannot be read.
func (w *Worker) settings(file, other string, read Read) []record.Fault {
	c := checking{Prover: w.Prover}
	names, texts := [2]string{other, file}, [2]io.Reader{}
	for i, name := range names {
		in, err := w.opened(name, read)
		if err != nil {
			return nil
		}
		defer in.Close()
		texts[i] = in
	}
	found, err := readback.Settings(w.recorded.job, names, texts)
	if err != nil {
		return nil
	}
	for _, k := range found {
		n, last := len(c.out.Faults), k.Says[len(k.Says)-1]
		switch {
		case len(k.Not) == 0:
			c.fault("said", place{k.Of, file, 0}, rebuild, "it says %q for the %s of %s, %s; %s has %q", last.Value,
				k.Measure, k.Kind, k.Of, other, k.Says[0].Value)
		case k.Not[0] == file:
			c.fault("said-not", place{k.Of, file, 0}, rebuild, "it does not say the %s of %s, %s, which is %s in %s",
				k.Measure, k.Kind, k.Of, last.Value, other)
			continue
		default:
			c.fault("said", place{k.Of, file, 0}, rebuild, "it says %q for the %s of %s, %s; %s has none", last.Value,
				k.Measure, k.Kind, k.Of, other)
		}
		c.on(n, last.At)
	}
	return c.out.Faults
}

// on sets the line of a fault in a file that people read, or its page; there is none where there were faults enough.
func (c *checking) on(fault, at int) {
	if fault >= len(c.out.Faults) {
		return
	}
	if f := &c.out.Faults[fault]; strings.HasSuffix(f.File, ".pdf") {
		f.Page = at
	} else {
		f.Line = at
	}
}
