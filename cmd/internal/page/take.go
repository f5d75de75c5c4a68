package page

import (
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/packet"
	"drawerwright/cmd/internal/present"
	"drawerwright/geom"
)

// taking is something to take along from a job. Whatever it is, all of the job is built and proven
// first, so that nothing leaves of a box that does not go together.
type taking struct {
	ending string // of its name
	kind   string // for the browser
	// lacks says why a job has none; empty where it has.
	lacks func(worked) string
	// Either drawn from the job that was worked out, which the build then lets go, or copied from the build.
	draw func(context.Context, worked, io.Writer) error
	copy func(context.Context, *built, io.Writer) error
}

// takings are all of them, by the names that the page has for them.
var takings = map[string]taking{
	"packet": {"-packet.pdf", "application/pdf", nothing, nil, copied(filing.Packet)},
	"shop":   {"-shop.html", "text/html", nothing, nil, copied(filing.Shop)},
	"labels": {"-labels.pdf", "application/pdf", unlabeled, drawLabels, nil},
	"sheets": {"-sheets.pdf", "application/pdf", unlaid, drawSheets, nil},
	"all":    {".zip", "application/zip", nothing, nil, zipped},
}

func nothing(worked) string { return "" }

func unlabeled(w worked) string {
	if w.Batch.Paper.Labels != job.LabelsNone {
		return ""
	}
	return "the job asks for no labels: write `labels: grid` into its entry `paper`"
}

func unlaid(w worked) string {
	if len(w.Plan.Stocks) > 0 {
		return ""
	}
	return "no stock has the size of its sheets: write it as its entry `sheet`"
}

// copied gives a file of the build.
func copied(name string) func(context.Context, *built, io.Writer) error {
	return func(_ context.Context, b *built, w io.Writer) error { return b.copied(name, w) }
}

func drawLabels(ctx context.Context, done worked, w io.Writer) error {
	return packet.WriteLabels(ctx, w, done.Batch, done.Plan)
}

func drawSheets(ctx context.Context, done worked, w io.Writer) error {
	data, err := packet.SheetsPDF(ctx, done.Plan, packet.PaperOf(done.Batch))
	if err == nil {
		_, err = w.Write(data)
	}
	return err
}

// take answers with lines of JSON: how far the build of a text has come, at last the name of what
// was asked for, after which its bytes follow to the end. A line with an error ends the answer
// instead.
func (p *Page) take(w http.ResponseWriter, r *http.Request) {
	var asked struct {
		Text string `json:"text"`
		What string `json:"what"`
	}
	if !read(w, r, &asked) {
		return
	}
	what, known := takings[asked.What]
	if !known {
		refuse(w, http.StatusBadRequest, fmt.Sprintf("there is no %q to take along", asked.What))
		return
	}
	ctx, stop := context.WithTimeout(r.Context(), takeTime)
	defer stop()
	done, ok := p.soundWork(ctx, w, asked.Text)
	if !ok {
		return
	}
	if lacks := what.lacks(done); lacks != "" {
		refuse(w, http.StatusUnprocessableEntity, lacks)
		return
	}
	w.Header().Set("Content-Type", "application/octet-stream")
	p.folder.busy.RLock()
	defer p.folder.busy.RUnlock()
	said, units := &saying{w: w, of: len(done.Batch.Drawers)}, done.Batch.Units
	b, file, err := p.work.made(ctx, what, &done, said.one)
	if err != nil {
		said.line(map[string]any{"error": explained(ctx, err, units)})
		return
	}
	defer b.clear()
	defer file.Close()
	said.line(map[string]any{"name": b.title + what.ending, "kind": what.kind})
	within(w, writeTime)
	if _, err := io.Copy(w, file); err != nil {
		panic(http.ErrAbortHandler) // the browser must not take what there is for the whole
	}
}

// made builds a job, which is let go, and gives what is taken of it as a file beside the build, from its beginning. The
// turn ends with it, so that a browser that does not read holds nobody up.
func (w *work) made(ctx context.Context, what taking, done *worked, each func()) (*built, *os.File, error) {
	if err := begin(ctx, w.build); err != nil {
		return nil, nil, err
	}
	defer end(w.build)
	b, err := roomFor(nameOf(ctx, *done))
	if err != nil {
		return nil, nil, err
	}
	file, err := os.CreateTemp(b.dir, "taken-*")
	if err == nil && what.draw != nil {
		err = what.draw(ctx, *done, file)
	}
	if err == nil {
		err = b.fill(ctx, done, each)
	}
	if err == nil && what.copy != nil {
		err = what.copy(ctx, b, file)
	}
	if err == nil {
		_, err = file.Seek(0, io.SeekStart)
	}
	if err != nil {
		if file != nil {
			file.Close()
		}
		b.clear()
		return nil, nil, err
	}
	return b, file, nil
}

// within ends the connection where what is written next takes longer.
func within(w http.ResponseWriter, d time.Duration) {
	http.NewResponseController(w).SetWriteDeadline(time.Now().Add(d)) // what a test writes into has none
}

// nameOf names what is taken along: its file, or the job's title where it has none yet.
func nameOf(ctx context.Context, done worked) string {
	file := fileOf(ctx).base()
	return job.FileName(cmp.Or(strings.TrimSuffix(file, filepath.Ext(file)), done.Batch.Title, "drawers"))
}

// explained is an error of a build as a person has to know it.
func explained(ctx context.Context, err error, units geom.Unit) string {
	if ctx.Err() != nil {
		return "stopped"
	}
	var unproven *files.Unproven
	if !errors.As(err, &unproven) {
		return err.Error()
	}
	var said present.Printed
	present.Unproven(&said, unproven.Proofs, unproven.Checked, units)
	return err.Error() + "\n" + said.String()
}

// saying tells a browser how far a build has come. It may be called from several goroutines.
type saying struct {
	mu       sync.Mutex
	w        http.ResponseWriter
	done, of int
}

// one more drawer is built.
func (s *saying) one() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.done++
	s.write(map[string]any{"done": s.done, "of": s.of})
}

func (s *saying) line(v map[string]any) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.write(v)
}

func (s *saying) write(v map[string]any) {
	data, err := json.Marshal(v)
	if err != nil {
		panic(err) // texts and numbers alone
	}
	within(s.w, lineTime)
	s.w.Write(append(data, '\n')) // a browser that has gone needs no answer
	http.NewResponseController(s.w).Flush()
}
