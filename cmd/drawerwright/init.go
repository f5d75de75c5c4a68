package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/starter"

	"github.com/spf13/cobra"
)

func newInit(s streams) *cobra.Command {
	var given starting
	c := &cobra.Command{
		Use:   "init [FILE]",
		Short: "Ask six questions and write a job file",
		Long: `init makes a first job file: drawers.yaml, or FILE, or standard output for -. On a
terminal it asks for what no flag gives: the unit; what you measured, an opening or
the box itself; the slide; readings of the boards' thickness; the machine; how many.
Elsewhere flags give all of it, and --yes takes what is usual for the rest. Where a
plain dado-rabbet box does not fit the answers, the file says what it has instead.
check then has nothing to warn of. init never overwrites a file.`,
		Example: `  $ drawerwright init
  $ drawerwright init kitchen.yaml --units in --opening "22 3/16 x 6 x 21" \
      --slide side-mount --thickness 0.474,0.470,0.478 \
      --bottom-thickness 0.228,0.23 --machine saw --cutter 1/4 --count 3`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			name := "drawers.yaml"
			if len(args) == 1 {
				name = args[0]
			}
			return given.run(name, s)
		},
	}
	given.flags(c)
	return c
}

// starting is what the flags of init give.
type starting struct {
	answers      starter.Answers
	opening, box string
	yes          bool
}

func (g *starting) flags(c *cobra.Command) {
	f, a := c.Flags(), &g.answers
	wordFlag(c, wordOf{to: &a[starter.Units], name: "units", usage: "unit of the file"}, starter.Units.Words()...)
	f.StringVar(&g.opening, "opening", "", "the opening: width x height x depth")
	f.StringVar(&g.box, "box", "", "the box instead: width x height x depth")
	wordFlag(c, wordOf{to: &a[starter.Slide], name: "slide", usage: "what it runs on"}, starter.Slide.Words()...)
	f.StringVar(&a[starter.SlideLength], "slide-length", "", "its length; else the longest that fits")
	f.StringVar(&a[starter.Rows], "rows", "", "how many drawers stand above each other in the opening")
	f.StringVar(&a[starter.Sides], "thickness", "", "caliper readings of the sides, with commas between them")
	f.StringVar(&a[starter.Bottom], "bottom-thickness", "", "caliper readings of the bottom")
	wordFlag(c, wordOf{to: &a[starter.Machine], name: "machine", usage: "what cuts the joints"},
		starter.Machine.Words()...)
	f.StringVar(&a[starter.Cutter], "cutter", "", "width of its slot, or diameter of its bit")
	f.StringVar(&a[starter.Count], "count", "", "how many boxes; with an opening, how many openings like it")
	f.BoolVar(&g.yes, "yes", false, "ask nothing: take what is usual for what is not given")
}

// run makes the job file of a name.
func (g *starting) run(name string, s streams) error {
	a, err := g.given()
	if err != nil {
		return err
	}
	if _, err := os.Lstat(name); err == nil && name != "-" {
		return jobError{there(name)}
	}
	text, err := g.text(a, s)
	if err != nil {
		return err
	}
	if name == "-" {
		_, err := s.out.Write([]byte(text))
		return done(err)
	}
	if err := writeNew(name, []byte(text)); err != nil {
		return jobError{err}
	}
	_, err = fmt.Fprintf(s.out, "wrote %s; its comments say what is usual and may be different in your shop\n"+
		"next: drawerwright check %[1]s\n", plain(name))
	return done(err)
}

// given are the answers of the flags, each right by itself.
func (g *starting) given() (a starter.Answers, err error) {
	a = g.answers
	switch {
	case g.opening != "" && g.box != "":
		return a, errors.New("give --opening or --box, not both: a box in an opening follows from it")
	case g.box != "" && a[starter.Slide] != "":
		return a, errors.New("--slide goes with --opening: the size of a box by --box is what it is")
	case g.opening != "":
		a[starter.Measured], a[starter.Size] = starter.Opening, g.opening
	case g.box != "":
		a[starter.Measured], a[starter.Size] = starter.Box, g.box
	case a[starter.Slide] != "":
		a[starter.Measured] = starter.Opening
	}
	for f := range starter.Fields {
		if a[f] == "" {
			continue
		}
		a[f] = f.Full(a[f])
		if wrong := a.Wrong(f); wrong != "" {
			return a, fmt.Errorf("%s %s: %s", f.Flag(a), a[f], wrong)
		}
	}
	return a, nil
}

// text is the job of answers, of which a person is asked for those that are not given.
func (g *starting) text(a starter.Answers, s streams) (string, error) {
	switch missing := a.Missing(); {
	case g.yes || len(missing) == 0:
	case terminal(s.in) && terminal(s.err):
		text, err := starter.Ask(s.in, s.err, a)
		return text, done(err)
	default:
		return "", fmt.Errorf("standard input is no terminal, so nobody can be asked: give %s; or --yes takes "+
			"what is usual", strings.Join(missing, ", "))
	}
	text, wrong := starter.Make(a.Filled())
	if wrong != nil {
		return "", jobError{fmt.Errorf("these answers do not go together: %s", wrong)}
	}
	return text, nil
}

func there(name string) error {
	return fmt.Errorf("%s is there already; move it or give another name", name)
}

// writeNew makes a file that was not there, whole or not at all.
func writeNew(name string, data []byte) error {
	if done, err := outdir.NewFile(name, data); err != nil || done {
		return err
	}
	return there(name)
}
