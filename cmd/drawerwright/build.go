package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"time"
	"unicode/utf8"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"

	"github.com/spf13/cobra"
)

func newBuild(s streams) *cobra.Command {
	var b building
	c := &cobra.Command{
		Use:   "build JOB",
		Short: "Write everything that a job is cut from into a folder",
		Long: `build works out a job and writes a folder. At its top stand packet.pdf, to print;
boxes.html, on which to look at the boxes; shop.html, for a phone in the shop; parts.txt,
all of it as text; and report.json.
router/ has what goes to a router: a DXF for each face of a part and of a sheet, and
the bits and depths of their layers; where no router cuts, drawings/ has the parts.
sheets/ and pictures/ are to look at, 3d/ has STL and glTF, tables/ what a spreadsheet
reads. Before that it proves the drawings as prove does:
with a box that does not go together nothing is written.

Every page, label and drawing has a short code of the parts: where two of them have
different codes, one is of another job or of another state of it. No file has a date
unless --date gives one, so that the same job gives the same bytes.

The folder appears whole or not at all; a second build replaces it in one step,
unless it holds something that this tool did not write. JOB may be - for
standard input.`,
		Example: `  $ drawerwright build samples/bench-drawers.yaml -o out
  out: 38 files for 2 kinds of drawer, 6 boxes, no warnings
  look first at
    out/packet.pdf  print it: what goes to the bench
    out/boxes.html  open it in a browser: the boxes to turn and open
    out/parts.txt   cut list, settings and forecasts as text
  next: cut a test piece as the setups of the packet say, measure it, and give
  the readings to drawerwright adjust samples/bench-drawers.yaml`,
		Args:              oneJob,
		ValidArgsFunction: jobFiles,
		RunE:              func(c *cobra.Command, args []string) error { return b.run(c.Context(), args[0], s) },
	}
	b.flags(c)
	return c
}

// building is what the flags of build ask for.
type building struct {
	dir, stl      string
	date          string
	json, noProof bool
	looks         filing.Looks
	stock         shelved
}

func (b *building) flags(c *cobra.Command) {
	c.Flags().StringVarP(&b.dir, "output", "o", "out", "the folder to write")
	wordFlag(c, wordOf{to: &b.stl, name: "stl", usual: "binary", usage: "kind of STL"}, "binary", "ascii")
	c.Flags().BoolVar(&b.noProof, "no-proof", false,
		"do not read the drawings back, cut them virtually and put the boxes together")
	c.Flags().BoolVar(&b.looks.Exploded, "exploded", false,
		"write the exploded box and a corner of each drawer too, as pictures and STL")
	pngFlag(c, &b.looks.PNG)
	c.Flags().StringVar(&b.date, "date", "", "the date on each page, as `YYYY-MM-DD`; without it there is none")
	b.stock.flags(c)
	c.Flags().BoolVar(&b.json, "json", false, "print what was written as JSON")
}

// run builds the job of a file, or of standard input.
func (b *building) run(ctx context.Context, file string, s streams) error {
	if err := oneOf("stl", b.stl, "binary", "ascii"); err != nil {
		return err
	}
	if err := dated(b.date); err != nil {
		return err
	}
	if b.dir == "" {
		return errors.New("-o takes the name of a folder, as in: -o out")
	}
	restore := func() {}
	defer func() { restore() }()
	l, err := readyWith(file, b.json, s, func(drawers int) { restore = limitMemory(drawers, packing) },
		func(l *loaded) error { return b.stock.lay(ctx, l, sheets.Search{}, s) })
	if err != nil {
		if left, _ := os.ReadDir(b.dir); len(left) > 0 && !b.json {
			s.complain("%s stays as it was: it is not of this job as it is now.", plain(b.dir))
		}
		return err
	}
	l.Plan.Looks, l.Job = b.looks, nil // whose problems have their places by now
	// From here on an interrupt stops the work, not the process, so that
	// nothing is left behind.
	ctx, stop := s.interruptible(ctx, stopping)
	defer stop()
	said := present.Screen{Head: l.answer(), All: true}
	kinds, units, look := l.Batch.KindsSaid(), l.Batch.Units, lookFirst(l.Batch, b.dir)
	written, err := build(ctx, &l, b.dir, files.Options{ASCII: b.stl == "ascii", NoProof: b.noProof, Date: b.date, Warnings: l.Warnings}, s)
	var unproven *files.Unproven
	if errors.As(err, &unproven) && !b.json {
		var out present.Printed
		present.Unproven(&out, unproven.Proofs, unproven.Checked, units)
		if _, err := s.err.Write(out.Bytes()); err != nil {
			return jobError{err}
		}
	}
	if err != nil {
		return failure(err, file, b.json, s)
	}
	if b.json {
		return done(writeJSON(s.out, written))
	}
	said.Whole = func(out *present.Printed) {
		fmt.Fprintf(out, "%s: %d files for %s, %s, %s\n%s", plain(b.dir), written.Files, kinds,
			words.Count(written.Boxes, "box", "boxes"), l.counted(), plain(look+nextAfter(written.Answer, file)))
	}
	if err := errors.Join(s.show(said), l.show(s)); err != nil {
		return jobError{fmt.Errorf("%s is written whole; what was to be said of it is not: %w", plain(b.dir), err)}
	}
	return nil
}

// dated is the error of a date that is none.
func dated(s string) error {
	if day, err := time.Parse(time.DateOnly, s); s != "" && (err != nil || day.Year() < 1) {
		return fmt.Errorf("--date takes a day as YYYY-MM-DD, as in: --date 2026-03-31; got %q", s)
	}
	return nil
}

// lookFirst names the files of a folder that a person wants first.
func lookFirst(b batch.Batch, dir string) string {
	list := [][2]string{
		{filing.Packet, "print it: what goes to the bench"},
		{filing.Page, "open it in a browser: the boxes to turn and open"},
		{filing.PartsText, "cut list, settings and forecasts as text"},
	}
	if slices.ContainsFunc(b.Drawers, func(d batch.Drawer) bool { return d.Spec.Cutter.Kind.FollowsDrawing() }) {
		list[2] = [2]string{filing.Layers, "what to set for the layers of the drawings beside it"}
	}
	var out strings.Builder
	out.WriteString("look first at\n")
	wide := 0
	for i := range list {
		list[i][0] = filepath.Join(dir, filepath.FromSlash(list[i][0]))
		wide = max(wide, utf8.RuneCountInString(list[i][0]))
	}
	for _, f := range list {
		if wide > maxBesideWords { // the words stand below it, so that they are in line
			fmt.Fprintf(&out, "  %s\n    %s\n", f[0], f[1])
		} else {
			fmt.Fprintf(&out, "  %-*s  %s\n", wide, f[0], f[1])
		}
	}
	return out.String()
}

// nextAfter names the command that comes after a build.
func nextAfter(a record.Answer, job string) string {
	switch {
	case job == "-":
		job = "JOB"
	case strings.ContainsAny(job, " '\"$&()*;<>?`|"):
		job = strconv.Quote(job)
	}
	if !a.Cut {
		return fmt.Sprintf("next: drawerwright check %s, which says what would mend it\n", job)
	}
	return fmt.Sprintf("next: cut a test piece as the setups of the packet say, measure it, and give the readings to "+
		"drawerwright adjust %s\n", job)
}

// maxBesideWords is how long the name of a file may be for words to stand beside it on a screen
// of 80 columns.
const maxBesideWords = 24

// built is what build --json prints.
type built struct {
	OK       bool             `json:"ok"`
	Folder   string           `json:"folder"`
	Files    int              `json:"files"`
	Drawers  int              `json:"drawers"`
	Boxes    int              `json:"boxes"`
	Answer   record.Answer    `json:"answer"`
	Warnings []record.Warning `json:"warnings"`
}

// counted is a folder that counts its files.
type counted struct {
	*outdir.Stage
	files atomic.Int64
}

func (c *counted) WriteFile(name string, data []byte) error {
	c.files.Add(1)
	return c.Stage.WriteFile(name, data)
}

func (c *counted) Stream(name string, fill func(io.Writer) error) error {
	c.files.Add(1)
	return c.Stage.Stream(name, fill)
}

// build writes the files of a job that was worked out, of which batch and layouts are let go, so that they end when the
// last file is made of them.
func build(ctx context.Context, l *loaded, dir string, o files.Options, s streams) (built, error) {
	stage, err := outdir.Create(dir)
	if err != nil {
		return built{}, err
	}
	b := l.Batch
	o.Plan = l.Plan
	l.Batch, l.Plan = batch.Batch{}, sheets.Plan{}
	out := built{OK: true, Folder: dir, Drawers: len(b.Drawers), Boxes: b.Boxes(), Answer: record.VerdictOn(b).Answer(),
		Warnings: append([]record.Warning{}, l.Warnings...)}
	done, end := s.building(out.Drawers)
	defer end()
	o.Done = done
	defer limitMemory(out.Drawers, fewCollections)()
	folder := &counted{Stage: stage}
	err = files.Write(ctx, b, folder, o)
	if err == nil {
		err = ctx.Err()
	}
	if err == nil {
		err = stage.Commit()
	}
	if errors.Is(err, outdir.ErrOldLeft) || errors.Is(err, outdir.ErrKept) { // the new folder is in place
		_, err = fmt.Fprintf(s.err, "drawerwright: warning: %s\n", plain(err.Error()))
	}
	if err != nil {
		if errors.Is(err, context.Canceled) {
			err = fmt.Errorf("%w; %s is as it was before", errStopped, dir)
		}
		return built{}, errors.Join(err, stage.Abort())
	}
	out.Files = int(folder.files.Load())
	return out, nil
}
