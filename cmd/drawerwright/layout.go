package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/list"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/nest"
	"drawerwright/geom/setup"

	"github.com/spf13/cobra"
)

// Limits of the flags, as those of a job's sheets section.
const (
	mostStages          = 9
	mostKerf, mostTrims = 100, 200 // mm
	mostKept            = 4000
)

func newLayout(s streams) *cobra.Command {
	var print layoutPrint
	var search searching
	var units, way, kerf, trim, keep, fence, sled, onSled string
	var stages int
	c := &cobra.Command{
		Use:   "layout LIST",
		Short: "Lay a list of rectangles out on sheets, without drawers",
		Long: `layout reads a table as CSV, with a line of heads: kind (part, sheet or offcut; part
where there is none), name, length, width, and where they are needed count, price and
turn (yes where a part may lie the other way round), batch (of a sheet), match (parts of
one name come from sheets of one batch) and set (parts of one name lie side by side in
their order). A sheet without a count is one of as many as it takes; offcuts are used
before any sheet and cost nothing. It prints what the command sheets prints. LIST may be
- for standard input.`,
		Example: `  $ printf 'kind,name,length,width,count,price
  sheet,birch,2440,1220,,60
  part,side,500,140,12,
  part,front,450,140,12,
  ' | drawerwright layout - --kerf 3.2`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("give one list, or - for standard input; here are %d", len(args))
			}
			return nil
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"csv"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(c *cobra.Command, args []string) error {
			if err := oneOf("units", units, "mm", "in"); err != nil {
				return err
			}
			if err := oneOf("way", way, job.SheetsGuillotine, job.SheetsFree); err != nil {
				return err
			}
			if err := errors.Join(search.check(), print.check()); err != nil {
				return err
			}
			u, _ := geom.ParseUnit(units)
			between, err := flagLength("kerf", kerf, u, mostKerf)
			if err != nil {
				return err
			}
			edges, err := flagLength("trim", trim, u, mostTrims)
			if err != nil {
				return err
			}
			least, err := keptSize(keep, u)
			if err != nil {
				return err
			}
			if stages != 0 && (way != job.SheetsGuillotine || stages < 2 || stages > mostStages) {
				return fmt.Errorf("--stages %d: it is from 2 to %d, for guillotine layouts", stages, mostStages)
			}
			cutting := sheets.Cutting{Rules: nest.Rules{Stages: stages, Kerf: int64(between)}, Trim: edges, Keep: least}
			if way == job.SheetsFree {
				cutting.Way = nest.Free
			}
			for _, reach := range []struct {
				name, text string
				to         *geom.Length
			}{{"fence-reach", fence, &cutting.Reach.Fence}, {"sled-reach", sled, &cutting.Reach.Sled}, {"longest-on-sled", onSled, &cutting.Reach.OnSled}} {
				if *reach.to, err = flagLength(reach.name, reach.text, u, mostKept); err != nil {
					return err
				}
			}
			l, err := readList(args[0], u, s)
			if err != nil {
				return failure(err, args[0], print.json, s)
			}
			title := "list"
			if args[0] != "-" {
				title = plain(strings.TrimSuffix(filepath.Base(args[0]), ".csv"))
			}
			o, ctx, end := search.start(c.Context(), s)
			plan, err := sheets.Listed(ctx, title, l, cutting, u, o)
			end()
			if err != nil {
				return failure(l.At(err), args[0], print.json, s)
			}
			return print.plan(c.Context(), plan, paperFor(u), s)
		},
	}
	saw := setup.DefaultMachine(joinery.Saw, geom.Millimetre)
	mmText := func(mm float64) string { return geom.LengthOf(mm).Text(geom.Millimetre) }
	print.flags(c)
	wordFlag(c, &units, "units", "mm", "what bare numbers are in", "mm", "in")
	wordFlag(c, &way, "way", job.SheetsGuillotine, "cuts from edge to edge, or each part by itself", job.SheetsGuillotine, job.SheetsFree)
	c.Flags().IntVar(&stages, "stages", 0, "in how many stages a saw takes a sheet apart; 0 for as many as it takes")
	c.Flags().StringVar(&kerf, "kerf", "3.2 mm", "what is lost between parts")
	c.Flags().StringVar(&trim, "trim", "0", "what is cut off each edge of a sheet first")
	c.Flags().StringVar(&keep, "keep", "300 mm x 100 mm", "the smallest offcut that is kept")
	c.Flags().StringVar(&fence, "fence-reach", mmText(saw.FenceReach), "how far the saw's fence opens")
	c.Flags().StringVar(&sled, "sled-reach", mmText(saw.SledReach), "the longest crosscut on a sled")
	c.Flags().StringVar(&onSled, "longest-on-sled", mmText(saw.OnSled), "the longest board that lies across the sled")
	search.flags(c, nest.DefaultEffort)
	return c
}

// keptSize reads two lengths with x between them, the longer first.
func keptSize(text string, u geom.Unit) (size [2]geom.Length, err error) {
	sides := strings.Split(text, "x")
	if len(sides) != 2 {
		return size, fmt.Errorf("--keep %s: write two lengths, as 300 x 100", text)
	}
	for i, side := range sides {
		if size[i], err = flagLength("keep", strings.TrimSpace(side), u, mostKept); err != nil {
			return size, err
		}
	}
	if size[0] < size[1] {
		size[0], size[1] = size[1], size[0]
	}
	return size, nil
}

// flagLength reads a length of a flag, from 0 to a number of mm.
func flagLength(name, text string, u geom.Unit, most float64) (geom.Length, error) {
	l, err := geom.ParseLength(text, u)
	if err != nil || l < 0 || l.MM() > most {
		return 0, fmt.Errorf("--%s %s: write a length from 0 to %s", name, text, geom.LengthOf(most).Text(u))
	}
	return l, nil
}

func readList(path string, u geom.Unit, s streams) (list.List, error) {
	name, in := path, io.Reader(s.in)
	if path == "-" {
		name = "(standard input)"
	} else {
		f, err := os.Open(path)
		if err != nil {
			return list.List{}, fmt.Errorf("cannot read the list: %w", err)
		}
		defer f.Close()
		in = f
	}
	return list.Read(plain(name), in, u)
}
