package main

import (
	"fmt"

	"drawerwright/cmd/internal/report"

	"github.com/spf13/cobra"
)

func newCheck(s streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "check JOB",
		Short: "Read a job file and say what is wrong in it",
		Long: `check reads a job file, works out every drawer, and lists all that is wrong or
doubtful in it, in one run, each with its line and what would do. It writes no files.
JOB may be - for standard input.`,
		Example: `  $ drawerwright check drawers.yaml
  drawers.yaml: 3 kinds of drawer, 6 boxes, no errors, no warnings`,
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			l, err := load(args[0], s)
			if err != nil {
				return err
			}
			if asJSON {
				err = writeJSON(s, checked{OK: !l.failed(), Problems: found(l)})
			} else if err = l.show(s); err == nil && !l.failed() {
				_, err = fmt.Fprintf(s.out, "%s: %s, %s, no errors, %s\n", args[0], count(len(l.batch.Drawers), "kind of drawer", "kinds of drawer"),
					count(l.batch.Boxes(), "box", "boxes"), count(len(l.warnings), "warning", "warnings"))
			}
			if err != nil {
				return jobError{err}
			}
			if l.failed() {
				return errShown
			}
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the problems as JSON")
	return c
}

// checked is what check --json prints.
type checked struct {
	OK       bool      `json:"ok"`
	Problems []problem `json:"problems"`
}

type problem struct {
	File    string `json:"file"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Level   string `json:"level"` // error or warning
	Code    string `json:"code"`
	Message string `json:"message"`
	Hint    string `json:"hint"`
}

func found(l loaded) []problem {
	list := []problem{}
	for _, p := range l.problems {
		level := "warning"
		if p.Error {
			level = "error"
		}
		list = append(list, problem{p.File, p.Line, p.Column, level, string(p.Code), p.Message, p.Hint})
	}
	return list
}

func writeJSON(s streams, v any) error {
	data, err := report.JSON(v)
	if err == nil {
		_, err = s.out.Write(data)
	}
	return err
}

// count writes a number with its noun.
func count(n int, one, many string) string {
	switch n {
	case 0:
		return "no " + many
	case 1:
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
