package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/list"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/nest"
	"drawerwright/geom/setup"
	"drawerwright/geom/sheet"

	"github.com/spf13/cobra"
)

// Limits of the flags, as those of a job's sheets section.
const (
	maxStages         = 9
	maxKerf, maxTrims = 100, 200 // mm
	maxKept           = 4000
)

func newLayout(s streams) *cobra.Command {
	var o listLayout
	c := &cobra.Command{
		Use:   "layout LIST",
		Short: "Lay a list of rectangles out on sheets, without drawers",
		Long: `layout reads a table as CSV, with column headings: kind (part, sheet or offcut; part
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
		RunE: func(c *cobra.Command, args []string) error { return o.run(c.Context(), args[0], s) },
	}
	o.flags(c)
	return c
}

// listLayout is what the flags of layout ask for, lengths as they are written.
type listLayout struct {
	print                                                                    layoutPrint
	search                                                                   searching
	units, method, first                                                     string
	stages                                                                   int
	kerf, trim, minOffcut, ripCapacity, crosscutCapacity, maxOnSled, maxStop string
}

func (o *listLayout) flags(c *cobra.Command) {
	o.print.flags(c)
	wordFlag(c, wordOf{to: &o.units, name: "units", usual: "mm", usage: "what bare numbers are in"}, "mm", "in")
	wordFlag(c, wordOf{to: &o.method, name: "method", usual: job.MethodGuillotine, usage: "cuts from edge to edge, or each part by itself"},
		job.MethodGuillotine, job.MethodFree)
	c.Flags().StringVar(&o.first, "first-cuts", "",
		"first cuts along the longer side of a sheet, or across it: "+job.FirstRip+" or "+job.FirstCrosscut)
	c.Flags().IntVar(&o.stages, "stages", 0, "in how many stages a saw takes a sheet apart; 0 for as many as it takes")
	c.Flags().StringVar(&o.kerf, "kerf", "", "what is lost between parts"+either(sheet.UsualKerf))
	c.Flags().StringVar(&o.trim, "trim", "0", "what is cut off each edge of a sheet first")
	c.Flags().StringVar(&o.minOffcut, "min-offcut", "", "the smallest offcut that is kept (else "+
		keptText(geom.Millimeter)+"; of lists in inches "+keptText(geom.Inch)+")")
	c.Flags().StringVar(&o.ripCapacity, "rip-capacity", "",
		"how wide a board the fence takes: the saw's rip capacity"+either(ripCapacity))
	c.Flags().StringVar(&o.crosscutCapacity, "crosscut-capacity", "",
		"the longest crosscut on a sled"+either(crosscutCapacity))
	c.Flags().StringVar(&o.maxOnSled, "max-length-on-sled", "",
		"the longest board that lies across the sled"+either(maxOnSled))
	c.Flags().StringVar(&o.maxStop, "max-stop", "",
		"how far the stop on the sled is from the blade at most"+either(maxStop))
	o.search.flags(c, nest.DefaultEffort)
}

// Limits of the usual saw of a shop that measures in a unit, in mm.
func ripCapacity(u geom.Unit) float64 { return setup.DefaultMachine(joinery.Saw, u).RipCapacity }
func crosscutCapacity(u geom.Unit) float64 {
	return setup.DefaultMachine(joinery.Saw, u).CrosscutCapacity
}
func maxOnSled(u geom.Unit) float64 { return setup.DefaultMachine(joinery.Saw, u).MaxOnSled }
func maxStop(u geom.Unit) float64   { return setup.DefaultMachine(joinery.Saw, u).MaxStop }

// either says in the help of a flag what it is without it, which goes by the unit.
func either(usual func(geom.Unit) float64) string {
	in := func(u geom.Unit) string { return geom.LengthOf(usual(u)).Text(u) }
	return " (else " + in(geom.Millimeter) + "; of lists in inches " + in(geom.Inch) + ")"
}

// keptText is the smallest offcut that is usually kept in a unit, as it is written.
func keptText(u geom.Unit) string {
	kept := sheet.UsualKept(u)
	return geom.LengthOf(kept[0]).Number(u) + " x " + geom.LengthOf(kept[1]).Text(u)
}

// unlessEmpty is what a flag says, or what is usual in a unit.
func unlessEmpty(text string, usual func(geom.Unit) float64, u geom.Unit) string {
	if text == "" {
		return geom.LengthOf(usual(u)).Text(u)
	}
	return text
}

// check refuses words that the flags do not take.
func (o *listLayout) check() error {
	if err := oneOf("units", o.units, "mm", "in"); err != nil {
		return err
	}
	if err := oneOf("method", o.method, job.MethodGuillotine, job.MethodFree); err != nil {
		return err
	}
	return errors.Join(o.search.check(), o.print.check())
}

// cutting is how the sheets are cut, bare numbers in a unit.
func (o *listLayout) cutting(u geom.Unit) (sheets.Cutting, error) {
	kerf, err := flagLength("kerf", unlessEmpty(o.kerf, sheet.UsualKerf, u), u, maxKerf)
	if err != nil {
		return sheets.Cutting{}, err
	}
	trim, err := flagLength("trim", o.trim, u, maxTrims)
	if err != nil {
		return sheets.Cutting{}, err
	}
	if o.minOffcut == "" {
		o.minOffcut = keptText(u)
	}
	keep, err := keptSize(o.minOffcut, u)
	if err != nil {
		return sheets.Cutting{}, err
	}
	if o.stages != 0 && (o.method != job.MethodGuillotine || o.stages < 2 || o.stages > maxStages) {
		return sheets.Cutting{}, fmt.Errorf("--stages %d: it is from 2 to %d, for guillotine layouts", o.stages, maxStages)
	}
	if o.first != "" {
		if err := oneOf("first-cuts", o.first, job.FirstRip, job.FirstCrosscut); err != nil {
			return sheets.Cutting{}, err
		}
		if o.method != job.MethodGuillotine {
			return sheets.Cutting{}, fmt.Errorf("--first-cuts %s: it is for guillotine layouts", o.first)
		}
	}
	c := sheets.Cutting{FirstCuts: o.first, Rules: nest.Rules{Stages: o.stages, Kerf: int64(kerf)}, Trim: trim,
		MinOffcut: keep, Units: u}
	if o.method == job.MethodFree {
		c.Method = nest.Free
	}
	for _, reach := range []struct {
		name, text string
		usual      func(geom.Unit) float64
		to         *geom.Length
	}{
		{"rip-capacity", o.ripCapacity, ripCapacity, &c.Capacity.Rip},
		{"crosscut-capacity", o.crosscutCapacity, crosscutCapacity, &c.Capacity.Crosscut},
		{"max-length-on-sled", o.maxOnSled, maxOnSled, &c.Capacity.MaxOnSled},
		{"max-stop", o.maxStop, maxStop, &c.Capacity.MaxStop},
	} {
		text := unlessEmpty(reach.text, reach.usual, u)
		if *reach.to, err = flagLength(reach.name, text, u, maxKept); err != nil {
			return sheets.Cutting{}, err
		}
	}
	return c, nil
}

// run lays out the list of a path, or of standard input.
func (o *listLayout) run(ctx context.Context, path string, s streams) error {
	if err := o.check(); err != nil {
		return err
	}
	u, _ := geom.ParseUnit(o.units)
	cutting, err := o.cutting(u)
	if err != nil {
		return err
	}
	l, err := readList(path, u, s)
	if err != nil {
		return failure(err, path, o.print.json, s)
	}
	title := "list"
	if path != "-" {
		title = plain(strings.TrimSuffix(filepath.Base(path), ".csv"))
	}
	search, searched, end := o.search.start(ctx, s)
	plan, err := sheets.Listed(searched, title, l, cutting, search)
	end()
	if err != nil {
		return failure(l.At(err), path, o.print.json, s)
	}
	o.print.more = "drawerwright layout " + plain(path) + " --all"
	return o.print.plan(ctx, plan, paperFor(u), s)
}

// keptSize reads two lengths with x between them, the longer first.
func keptSize(text string, u geom.Unit) (size [2]geom.Length, err error) {
	sides := strings.Split(text, "x")
	if len(sides) != 2 {
		return size, fmt.Errorf("--min-offcut %s: write two lengths, as 300 x 100", text)
	}
	for i, side := range sides {
		if size[i], err = flagLength("min-offcut", strings.TrimSpace(side), u, maxKept); err != nil {
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
		f, err := opened("list", path, "")
		if err != nil {
			return list.List{}, err
		}
		defer f.Close()
		in = f
	}
	return list.Read(plain(name), in, u)
}
