package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"

	"github.com/spf13/cobra"
)

func newProve(s streams) *cobra.Command {
	var a proving
	c := &cobra.Command{
		Use:   "prove DIR",
		Short: "Read a build back, cut its drawings virtually and fit the boxes",
		Long: `prove reads the DXF files of a folder that build wrote, as they are on disk now,
cuts every panel virtually with the round bits that the legend names, turns over what
is cut on both faces, puts every box together and says for each joint whether it goes
in, with how much clearance, where it seats and how it stands; and of the box its size,
diagonals and what overlaps. Then it reads the sheets back: every part's cuts in place and
on the right face, nothing cut of another part or past the sheet, every part held, and
nothing cut of a part that is loose; and every other file, against the report, the
settings of shop.html against the packet. A file whose cuts or figures were changed,
scaled or mirrored is named.

Last it compares every file with the list of their sums that build left in the folder,
.drawerwright-manifest. What was changed since it was built, added or lost is named in the
first lines, as a drawing that was edited on purpose is: the boxes are judged by it as it is now. The
exit code is 0 only where nothing is at fault and all is as it was built. Nothing is
written.

Who changes a file can write that list anew. Then words and pictures, what was added to a
page, and layers that are not cut are compared with nothing, and a setting that was changed
alike in packet and shop.html is not found. To be sure of these build the job again with this
version and the same options: the same job gives the same .drawerwright-manifest, byte by byte.

Other values can be tried: a length takes a unit, or is in the units of the job.`,
		Example: `  $ drawerwright prove out
  $ drawerwright prove out --thickness birch=12.4
  $ drawerwright prove out --flip-error 0.3,0.1 --depth-error "-0.2 mm"`,
		Args: oneFolder,
		RunE: func(c *cobra.Command, args []string) error { return a.run(c.Context(), args[0], s) },
	}
	a.flags(c)
	return c
}

// proving is what the flags of prove ask for, lengths as they are written.
type proving struct {
	thickness   []string
	flip, depth string
	json, all   bool
}

func (a *proving) flags(c *cobra.Command) {
	c.Flags().StringArrayVar(&a.thickness, "thickness", nil,
		"STOCK=LENGTH, or LENGTH for all: the thickness of the boards instead of the readings")
	c.Flags().StringVar(&a.flip, "flip-error", "",
		"ALONG or ALONG,ACROSS: how far the outside cuts of turned parts are off")
	c.Flags().StringVar(&a.depth, "depth-error", "", "by how much every pocket is cut too deep; below 0 too shallow")
	allFlag(c, &a.all)
	c.Flags().BoolVar(&a.json, "json", false, "print the proofs as JSON, with every cut and where every part stands")
}

// run proves a folder.
func (a *proving) run(ctx context.Context, dir string, s streams) error {
	_, shown := s.working("reading what was built")
	p, err := openProof(dir)
	shown()
	if err != nil {
		return failure(err, dir, a.json, s)
	}
	defer limitMemory(p.Drawers(), fewCollections)()
	o := prove.Options{Detail: a.json, Thickness: map[string]float64{}}
	if err := trial(&o, p, a.thickness, a.flip, a.depth); err != nil {
		return err // usage
	}
	ctx, stop := s.interruptible(ctx, "stopping")
	defer stop()
	_, shown = s.working("reading and cutting the drawings")
	proofs, checked, err := proveAll(ctx, p, dir, o)
	var folder record.Checked
	if err == nil {
		folder, err = asBuilt(dir)
	}
	shown()
	if err != nil {
		return failure(err, dir, a.json, s)
	}
	checked = append(checked, folder)
	ok := prove.Sound(checked)
	for _, r := range proofs {
		ok = ok && r.Cuttable()
	}
	if a.json {
		err = writeJSON(s.out, proven{OK: ok, Units: p.Unit().String(), Proof: proofs, Checked: checked, Strangers: strangers(p, dir)})
	} else {
		err = s.show(present.Screen{
			Head: append(a.tried(), present.ProofHead(proofs, checked)),
			Whole: func(out *present.Printed) {
				var text present.Printed // names in it come from files that anyone may have written
				text.Width = out.Width
				present.ProofText(&text, proofs, p.Unit())
				present.CheckedText(&text, checked)
				for _, name := range strangers(p, dir) {
					fmt.Fprintf(&text, "%s is no drawing of this build: it was not looked at\n", name)
				}
				out.WriteString(plain(text.String()))
			},
			More: "drawerwright prove " + plain(dir) + " --all",
			All:  a.all,
		})
	}
	if err != nil {
		return jobError{err}
	}
	if !ok {
		return errShown
	}
	return nil
}

// proven is what prove --json prints.
type proven struct {
	OK    bool           `json:"ok"`
	Units string         `json:"units"`
	Proof []record.Proof `json:"proof"`
	// Checked is what else was read back.
	Checked []record.Checked `json:"checked"`
	// Strangers are drawings in the folder that the report does not know.
	Strangers []string `json:"strangers"`
}

// strangers lists the drawings beside those of the report.
func strangers(p *prove.Prover, dir string) []string {
	list := []string{}
	for _, of := range filing.DrawingFolders() {
		entries, err := os.ReadDir(filepath.Join(dir, filepath.FromSlash(of)))
		if err != nil {
			continue // what the report names and is not there is reported anyway
		}
		for _, e := range entries {
			name := of + e.Name()
			if strings.EqualFold(filepath.Ext(name), ".dxf") && !p.Knows(name) {
				list = append(list, name)
			}
		}
	}
	return list
}

func oneFolder(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return errors.New("give the folder that build wrote, as in: prove out")
	}
	return nil
}

// maxReport and maxDrawing bound what is read into memory, in bytes: the report of
// 5,000 drawers, and a drawing of a few hundred thousand lines.
const (
	maxReport  = 256 << 20
	maxDrawing = 64 << 20
)

// openProof reads a folder's report.
func openProof(dir string) (*prove.Prover, error) {
	f, err := openLimited(filepath.Join(dir, filing.Report), maxReport)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, hinted{fmt.Sprintf("%s is no folder that build wrote: there is no %s in it", plain(dir), filing.Report), "drawerwright build JOB -o " + plain(dir) + " writes one"}
	}
	if err != nil {
		return nil, fmt.Errorf("cannot read what was built: %w", err)
	}
	defer f.Close()
	r, err := record.ReadKept(f)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be understood: %w; build the job into a new folder",
			filepath.Join(dir, filing.Report), err)
	}
	return prove.New(r)
}

var errTooLarge = errors.New("the file is larger than any that build writes")

func openLimited(path string, limit int64) (*os.File, error) {
	info, err := os.Stat(path) // before it is opened, for a pipe would wait for a writer
	switch {
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s is no file", path)
	case info.Size() > limit:
		return nil, fmt.Errorf("%s: %w", path, errTooLarge)
	}
	return os.Open(path)
}

// tried says what the proof is of, where that is not the folder as it is.
func (a *proving) tried() []present.Line {
	list := slices.Clone(a.thickness)
	for _, t := range [][2]string{{"flip-error", a.flip}, {"depth-error", a.depth}} {
		if t[1] != "" {
			list = append(list, t[0]+" "+t[1])
		}
	}
	if len(list) == 0 {
		return nil
	}
	return []present.Line{{Text: "Tried with " + plain(words.And(list)) + ", not with what the job has."}}
}

// trial reads the values to try.
func trial(o *prove.Options, p *prove.Prover, thickness []string, flip, depth string) error {
	length := func(flag, text string) (float64, error) {
		digits, negative := strings.CutPrefix(strings.TrimSpace(text), "-")
		l, err := geom.ParseLength(digits, p.Unit())
		if err != nil || strings.HasPrefix(digits, "-") {
			return 0, fmt.Errorf("--%s: %q is no length", flag, text)
		}
		if negative {
			return -l.MM(), nil
		}
		return l.MM(), nil
	}
	for _, t := range thickness {
		name, text, named := strings.Cut(t, "=")
		name = strings.TrimSpace(name)
		if !named {
			name, text = "", t
		}
		mm, err := length("thickness", text)
		if err == nil && (mm < 0.5 || mm > 200) {
			err = fmt.Errorf("--thickness: %q is no thickness of a board", text)
		}
		if err != nil {
			return err
		}
		known := false
		for _, s := range p.Stocks() {
			if name == "" || name == s {
				o.Thickness[s], known = mm, true
			}
		}
		if !known {
			return fmt.Errorf("--thickness: no stock is called %q; the stocks are %s",
				name, strings.Join(p.Stocks(), ", "))
		}
	}
	var err error
	if flip != "" {
		along, across, both := strings.Cut(flip, ",")
		if both && !strings.ContainsAny(flip, ". /") && p.Unit() == geom.Millimeter && along == "0" && len(across) > 1 {
			return fmt.Errorf("--flip-error: write %q with a decimal point, "+
				"or a space after the comma that divides along from across", flip)
		}
		if o.FlipAlong, err = length("flip-error", along); err != nil {
			return err
		}
		if both {
			if o.FlipAcross, err = length("flip-error", across); err != nil {
				return err
			}
		}
	}
	if depth != "" {
		o.Depth, err = length("depth-error", depth)
	}
	return err
}

// proveAll proves as many drawers at a time as there are processors, then all that is
// read back besides.
func proveAll(ctx context.Context, p *prove.Prover, dir string, o prove.Options) ([]record.Proof, []record.Checked, error) {
	root, err := os.OpenRoot(dir) // a report names no file outside the folder
	if err != nil {
		return nil, nil, err
	}
	defer root.Close()
	p.Open = func(name string) (io.ReadCloser, error) {
		switch info, err := root.Stat(filepath.FromSlash(name)); { // before it is opened: a pipe would be waited for
		case err != nil:
			return nil, err
		case !info.Mode().IsRegular():
			return nil, errors.New("it is no file")
		}
		return root.Open(filepath.FromSlash(name))
	}
	read := func(name string) ([]byte, error) {
		f, err := p.Open(name)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		info, err := f.(fs.File).Stat()
		switch {
		case err != nil:
			return nil, err
		case info.Size() > maxDrawing:
			return nil, errTooLarge
		}
		data := make([]byte, info.Size())
		_, err = io.ReadFull(f, data)
		return data, err
	}
	proofs, checked, rest := make([]record.Proof, p.Drawers()), make([]record.Checked, p.Checks()), p.Rest()
	err = cmp.Or(
		files.Each(ctx, len(proofs), func() func(int) error {
			w := p.Worker()
			return func(i int) error {
				proofs[i] = w.Drawer(i, read, o)
				for _, own := range p.Own(i) {
					checked[own] = w.Check(own, read)
				}
				return nil
			}
		}),
		files.Each(ctx, len(rest), func() func(int) error {
			w := p.Worker()
			return func(i int) error {
				checked[rest[i]] = w.Check(rest[i], read)
				return nil
			}
		}))
	if err != nil { // a proof that fails is no error
		return nil, nil, errStopped
	}
	return proofs, checked, nil
}
