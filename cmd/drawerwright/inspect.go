package main

import (
	"errors"
	"fmt"
	"io"

	"drawerwright/cmd/internal/firstbox"
	"drawerwright/cmd/internal/present"
	"drawerwright/geom"

	"github.com/spf13/cobra"
)

func newInspect(s streams) *cobra.Command {
	var a inspecting
	c := &cobra.Command{
		Use:   "inspect JOB [FORM]",
		Short: "Judge the first box by what was read on it",
		Long: `inspect judges the first box of a run. With --form it writes an empty form, a CSV file with
a line for each reading: those of the test piece, of the parts and of the box put together
dry, what is right of each and between what limits, as the packet's form has them. Write
what was read into its last column, in the job's units or with one (17 5/8 and 12 mm work as
well), and give the file to inspect.

It says whether the box is right; of one that is not, what to move first, by how much
and which way, as adjust does. With --log the readings go into the shop's log. FORM may
be - for standard input. The exit code is 0 where no reading is out of its limits.`,
		Example: `  $ drawerwright inspect drawers.yaml --form first.csv
  $ drawerwright inspect drawers.yaml first.csv --log shop.csv`,
		Args: a.args,
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) == 0 {
				return jobFiles(nil, args, "")
			}
			return []string{"csv"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(_ *cobra.Command, args []string) error { return a.run(args, s) },
	}
	a.flags(c)
	return c
}

// inspecting is what the flags of inspect ask for.
type inspecting struct {
	form, drawer string
	json, all    bool
	log          logging
}

func (a *inspecting) flags(c *cobra.Command) {
	c.Flags().StringVar(&a.form, "form", "", "write an empty form to this new file")
	c.Flags().StringVar(&a.drawer, "drawer", "",
		"the drawer that the empty form is for (default: the first of each setting)")
	a.log.flags(c, "readings")
	allFlag(c, &a.all)
	c.Flags().BoolVar(&a.json, "json", false, "print it as JSON")
}

// args refuses what does not go together.
func (a *inspecting) args(_ *cobra.Command, args []string) error {
	switch {
	case a.form == "" && len(args) != 2:
		return errors.New("give the job and the form that was filled in; --form FILE writes an empty one")
	case a.form != "" && (len(args) != 1 || a.log.path != "" || a.log.date != ""):
		return errors.New("--form writes an empty form: give the job alone with it")
	case a.form == "" && a.drawer != "":
		return errors.New("--drawer is for --form; a form that was filled in names its drawers")
	case len(args) == 2 && args[0] == "-" && args[1] == "-":
		return errors.New("only one of job and form can be standard input")
	}
	return nil
}

func (a *inspecting) run(args []string, s streams) error {
	if err := a.log.check(); err != nil {
		return err
	}
	l, err := ready(args[0], a.json, s)
	if err != nil {
		return err
	}
	if a.form != "" {
		return a.write(l, args[0], s)
	}
	records, err := a.read(l, args[1], s)
	if err != nil {
		return failure(err, args[1], a.json, s)
	}
	out := inspected{Tool: "drawerwright", Job: l.Batch.Title, Units: l.Batch.Units.String(), Right: true, Boxes: records}
	for _, r := range records {
		out.Right = out.Right && r.Verdict != firstbox.Out
	}
	if a.log.path != "" {
		if out.Logged, err = firstbox.Log(records, a.log.day(), a.log.file(), l.Batch.Units); err != nil {
			return failure(err, a.log.path, a.json, s)
		}
	}
	if err := a.print(out, l.Batch.Units, s); err != nil {
		return jobError{err}
	}
	if !out.Right {
		return errShown
	}
	return nil
}

// write writes an empty form.
func (a *inspecting) write(l loaded, job string, s streams) error {
	drawers := firstbox.First(l.Batch)
	if a.drawer != "" {
		at, err := chosen(l.Batch, a.drawer)
		if err != nil {
			return err // usage
		}
		drawers = []int{at}
	}
	var forms []firstbox.Form
	for _, at := range drawers {
		forms = append(forms, firstbox.Of(l.Batch, at))
	}
	if err := writeNew(a.form, firstbox.Empty(forms)); err != nil {
		return failure(err, a.form, a.json, s)
	}
	rows := 0
	for _, f := range forms {
		rows += len(f.Rows)
	}
	_, err := fmt.Fprintf(s.err, "%s: %d readings to take. %s\nNext: drawerwright inspect %s %s\n", plain(a.form), rows,
		firstbox.Safely, plain(job), plain(a.form))
	return done(err)
}

// read reads a form that was filled in.
func (a *inspecting) read(l loaded, path string, s streams) ([]firstbox.Record, error) {
	name, in := path, io.Reader(s.in)
	if path == "-" {
		name = "(standard input)"
	} else {
		f, err := opened("form", path, "--form "+plain(path)+" writes an empty one")
		if err != nil {
			return nil, err
		}
		defer f.Close()
		in = f
	}
	return firstbox.Read(l.Batch, plain(name), in)
}

// inspected is what inspect --json prints.
type inspected struct {
	Tool   string            `json:"tool"`
	Job    string            `json:"job"`
	Units  string            `json:"units"`
	Right  bool              `json:"right"` // no reading is out of its limits
	Boxes  []firstbox.Record `json:"boxes"`
	Logged []string          `json:"logged,omitempty"` // what became of it in the shop's log
}

// print prints first boxes, the answer first.
func (a *inspecting) print(out inspected, u geom.Unit, s streams) error {
	if a.json {
		return writeJSON(s.out, out)
	}
	var head []present.Line
	for _, r := range out.Boxes {
		head = append(head, r.Head())
	}
	for _, said := range out.Logged {
		head = append(head, present.Line{Text: said})
	}
	return s.show(present.Screen{
		Head:  head,
		Whole: func(text *present.Printed) { firstbox.Print(text, out.Boxes, u) },
		More:  "the same command with --all",
		All:   a.all,
	})
}
