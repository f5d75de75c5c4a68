// Package files writes every file of a batch into a folder.
package files

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/dxf"
	"drawerwright/export/router"
	"drawerwright/geom/milled"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
)

// Folder takes files by their slash-separated names. It is used from several
// goroutines at once.
type Folder interface {
	WriteFile(name string, data []byte) error
	// Stream writes a file as fill makes it.
	Stream(name string, fill func(io.Writer) error) error
	// ReadFile reads a file back that was written.
	ReadFile(name string) ([]byte, error)
	// Open is ReadFile, read as it is wanted.
	Open(name string) (io.ReadCloser, error)
}

// Options of the files.
type Options struct {
	ASCII    bool // STL as text
	NoProof  bool
	Date     string // of issue, on paper and in the report; none without
	Warnings []record.Warning
	// Done, if there is one, is called after each drawer, from several goroutines
	// at once.
	Done func()
	Plan sheets.Plan // the parts on sheets
}

// Write writes the files of a batch. What is in each depends on the batch and
// the options alone. The error is that of the first drawer that failed, in the
// batch's order, or the context's.
func Write(ctx context.Context, b batch.Batch, to Folder, o Options) error {
	r := record.MakeKept(b, o.Plan, o.Warnings)
	r.Date = o.Date
	reader, err := prove.New(r)
	if err != nil {
		return err
	}
	var prover *prove.Prover
	var checked []record.Checked
	if !o.NoProof {
		prover, reader.Open = reader, to.Open
		r.Proof.Grow(len(b.Drawers))
		checked = make([]record.Checked, prover.Checks()-prover.Lasts())
	}
	if err := writeLists(b, r, to); err != nil { // the packet is compared with the cut list
		return err
	}
	ctx, stop := context.WithCancel(ctx)
	paper := papers{batch: b, plan: o.Plan, to: to}
	packet := paper.packet(ctx, r)
	defer packet()
	defer stop() // before it is waited for: without the rest nobody wants it
	scenes := make([]scene.Scene, len(b.Drawers))
	boxes := drawers{batch: b, to: to, o: o, reader: reader, proofs: r.Proof, checked: checked, scenes: scenes}
	if err := boxes.write(ctx); err != nil {
		return err
	}
	if bad := refused(r); len(bad) > 0 {
		return &Unproven{Proofs: bad}
	}
	for _, write := range []func() error{
		func() error { return WriteSheets(ctx, o.Plan, to) },
		func() error { return writeCabinets(b, r, to) },
		func() error { return writePreviews(b, scenes, to) },
		func() error { return writeTemplates(ctx, b, to) },
	} {
		if err := write(); err != nil {
			return err
		}
	}
	if prover != nil {
		if err := readBack(ctx, prover, checked, to); err != nil {
			return err
		}
		if !prove.Sound(checked) {
			return &Unproven{Checked: checked}
		}
		r.Checked = append(checked, prover.Promised()...)
	}
	if err := paper.last(r, packet); err != nil {
		return err
	}
	// From here on nothing holds the drawers that are worked out: what follows takes as much room again.
	if err := writeRecord(ctx, r, to); err != nil || prover == nil {
		return err
	}
	return readPapers(ctx, prover, to)
}

// refused are the proofs of drawers that are not to be cut.
func refused(r record.Kept) (bad []record.Proof) {
	for _, p := range r.Proof.All() {
		if !p.Cuttable() {
			bad = append(bad, p)
		}
	}
	return bad
}

// writeLists writes the lists for programs.
func writeLists(b batch.Batch, r record.Kept, to Folder) error {
	type list struct {
		name string
		data []byte
	}
	lists := []list{
		{filing.Parts, present.PartsCSV(r)},
		{filing.CutList, present.CutListCSV(r)},
		{filing.Buy, present.BuyCSV(r.Buy)},
	}
	if r.ForRouter() {
		lists = append(lists, list{filing.Layers, present.LayersCSV(r, b.DXF.Unit)})
	}
	for _, f := range lists {
		if err := to.WriteFile(f.name, f.data); err != nil {
			return err
		}
	}
	return nil
}

// readBack reads what no drawer shows alone back, as it is on disk, but for what people read.
func readBack(ctx context.Context, prover *prove.Prover, checked []record.Checked, to Folder) error {
	rest := prover.Rest()
	return Each(ctx, len(rest)-prover.Lasts(), func() func(int) error {
		w := prover.Worker()
		return func(i int) error {
			checked[rest[i]] = w.Check(rest[i], to.ReadFile)
			return nil
		}
	})
}

// drawers are those of a batch on their way to a folder, and what became of each.
type drawers struct {
	batch  batch.Batch
	to     Folder
	o      Options
	reader *prove.Prover
	proofs record.List[record.Proof]
	// checked is what was read back of all solids and other files; the places of those of drawers are filled in.
	checked []record.Checked
	scenes  []scene.Scene
}

// write works on as many drawers at a time as there are processors.
func (d drawers) write(ctx context.Context) error {
	return Each(ctx, len(d.batch.Drawers), func() func(int) error {
		w := writer{to: d.to, o: d.o, batch: d.batch, reader: d.reader.Worker()}
		return func(i int) error {
			var err error
			if d.scenes[i], err = w.drawer(d.batch.Drawers[i], d.batch.Milled(d.batch.Drawers[i])); err != nil {
				return err
			}
			if !d.o.NoProof {
				d.proofs.Put(i, w.reader.Drawer(i, d.to.ReadFile, prove.Options{})) // as it is on disk
				for _, own := range d.reader.Own(i) {
					d.checked[own] = w.reader.Check(own, d.to.ReadFile)
				}
			}
			if d.o.Done != nil {
				d.o.Done()
			}
			return nil
		}
	})
}

// writer writes one drawer at a time, with a buffer of its own.
type writer struct {
	to     Folder
	o      Options
	batch  batch.Batch
	out    bytes.Buffer
	reader *prove.Worker // of what is written
}

// Unproven is the error of a build whose drawings make no box, or whose other files are
// at fault.
type Unproven struct {
	Proofs  []record.Proof
	Checked []record.Checked
}

// unwritten says what a failed proof comes to.
const unwritten = "nothing was written (build --no-proof writes all the same)"

func (u *Unproven) Error() string {
	if len(u.Proofs) == 0 {
		var names []string
		for _, c := range u.Checked {
			if len(c.Faults) > 0 {
				names = append(names, c.Kind+" "+c.Name)
			}
		}
		return fmt.Sprintf("read back, these files are at fault: %s; %s", words.Some(names), unwritten)
	}
	names := make([]string, len(u.Proofs))
	for i, p := range u.Proofs {
		names[i] = p.Drawer
	}
	const most = 4
	if len(names) > most {
		names = append(names[:most], fmt.Sprintf("%d more", len(u.Proofs)-most))
	}
	return fmt.Sprintf("cut virtually, the drawings make no box that goes together: %s; %s", strings.Join(names, ", "),
		unwritten)
}

// drawer writes what belongs to one drawer alone, its solids as milled where that is asked for.
func (w *writer) drawer(d batch.Drawer, asMilled bool) (scene.Scene, error) {
	for _, p := range d.Parts {
		if err := w.drawings(p); err != nil {
			return scene.Scene{}, fmt.Errorf("%s: %w", p.Name, err)
		}
	}
	var cut []milled.Board // as it is on disk
	if asMilled {
		cut = boards(w.reader, d, w.to.ReadFile)
	}
	solidOf := func(i int) (solid.Mesh, error) { return solid.Build(d.Parts[i].Panel, solid.Options{}) }
	if len(cut) > 0 {
		solidOf = func(i int) (solid.Mesh, error) { return milled.Solid(cut[i].FromSheet(), 0) }
	}
	for i, p := range d.Parts {
		m, err := solidOf(i)
		if err == nil {
			err = w.stl(p.STL, p.Name, m)
		}
		if err != nil {
			return scene.Scene{}, fmt.Errorf("%s: %w", p.Name, err)
		}
	}
	if err := w.exact(d, trimmed(cut)); err != nil {
		return scene.Scene{}, err
	}
	return w.preview(d, trimmed(cut))
}

// drawings writes those of a part.
func (w *writer) drawings(p batch.Part) error {
	for _, d := range p.Drawings {
		drawn := sheets.Drawing{Face: d.Face, File: d.File, Part: p.Drawn(w.batch.Router),
			Layers: w.batch.Layers(p, d), DXF: w.batch.DXF}
		if err := writeDrawing(drawn, w.drawing); err != nil {
			return err
		}
	}
	return nil
}

// writeDrawing writes a drawing, and a file for each change of its bit where that is asked for.
func writeDrawing(d sheets.Drawing, write func(string, *dxf.Drawing) error) error {
	if err := write(d.File, router.Draw(d.Part, d.Face, d.Layers, d.DXF)); err != nil {
		return err
	}
	for _, run := range d.DXF.Runs(d.File, d.Layers, d.Part.Bits) {
		if err := write(run.File, router.Draw(d.Part, d.Face, run.Layers, d.DXF)); err != nil {
			return err
		}
	}
	return nil
}

func (w *writer) drawing(name string, d *dxf.Drawing) error {
	w.out.Reset()
	if _, err := d.WriteTo(&w.out); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return w.to.WriteFile(name, w.out.Bytes())
}
