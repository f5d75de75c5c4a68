package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"
)

//go:embed starter-mm.yaml
var starterMM []byte

//go:embed starter-in.yaml
var starterIn []byte

func newInit(s streams) *cobra.Command {
	var units string
	c := &cobra.Command{
		Use:   "init [FILE]",
		Short: "Write a job file to start from",
		Long: `init writes a small job file with comments, ready to build, to change to your own
measures: drawers.yaml, or FILE, or standard output for -. It never overwrites a
file.`,
		Example: `  $ drawerwright init
  wrote drawers.yaml; change it to your measures, then: drawerwright check drawers.yaml`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			if err := oneOf("units", units, "mm", "in"); err != nil {
				return err
			}
			text := starterMM
			if units == "in" {
				text = starterIn
			}
			name := "drawers.yaml"
			if len(args) == 1 {
				name = args[0]
			}
			if name == "-" {
				_, err := s.out.Write(text)
				return done(err)
			}
			if err := writeNew(name, text); err != nil {
				return jobError{err}
			}
			_, err := fmt.Fprintf(s.out, "wrote %s; change it to your measures, then: drawerwright check %s\n", plain(name), plain(name))
			return done(err)
		},
	}
	wordFlag(c, wordOf{to: &units, name: "units", usual: "mm", usage: "unit of the file"}, "mm", "in")
	return c
}

// writeNew makes a file that was not there, whole or not at all.
func writeNew(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s is there already; move it or give another name", name)
	}
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Close()); err != nil {
		err = errors.Join(err, os.Remove(name))
	}
	return err
}
