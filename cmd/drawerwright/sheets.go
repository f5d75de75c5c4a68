package main

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/list"
	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/packet"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/nest"

	"github.com/spf13/cobra"
)

func newSheets(s streams) *cobra.Command {
	var search searching
	var stock shelved
	var print layoutPrint
	c := &cobra.Command{
		Use:   "sheets JOB",
		Short: "Lay the parts out on sheets, and say how near to the best that is",
		Long: `sheets lays out the parts of every stock that has the size of its sheets, and prints
for each how many sheets it takes, what they cost, how much of them is parts, and a
bound: "best possible" where no layout needs less, else how far it may be from it. For
saws it goes on with the cuts that take the sheets apart, in order.

The job's sheets section has the kerf, what is trimmed off, and whether parts are cut
from edge to edge (a saw) or each by itself (a router). Offcuts of a shelf are used
before any sheet. Ctrl-C prints the best so far. The same effort gives the same layout
on any machine; as long as it is left alone that is the one that parts, build and the
packet have. With more effort it may take less, which is said. JOB may be - for
standard input.`,
		Example: `  $ drawerwright sheets drawers.yaml
  $ drawerwright sheets drawers.yaml --shelf offcuts.csv --put-back
  $ drawerwright sheets drawers.yaml --effort 20000 -o sheets`,
		Args:              oneJob,
		ValidArgsFunction: jobFiles,
		RunE: func(c *cobra.Command, args []string) error {
			if err := errors.Join(search.check(), print.check()); err != nil {
				return err
			}
			l, err := readyWith(args[0], print.json, s, func(int) {}, func(l *loaded) error {
				o, ctx, end := search.start(c.Context(), s)
				defer end()
				return stock.lay(ctx, l, sheets.Search{Options: o}, s)
			})
			if err != nil {
				return err
			}
			if search.effort != sheets.Effort {
				if err := compare(c.Context(), l, stock.shelf.Offcuts, s); err != nil {
					return jobError{err}
				}
			}
			print.more = "drawerwright sheets " + plain(args[0]) + " --all"
			if said := l.answer(); said[0].Level == present.Bad {
				print.before = said[:1]
			}
			if err := print.plan(c.Context(), l.Plan, l.Batch.Paper.Size, s); err != nil {
				return err
			}
			return done(stock.putBack(l.Plan, s))
		},
	}
	search.flags(c, sheets.Effort)
	stock.flags(c)
	c.Flags().BoolVar(&stock.put, "put-back", false,
		"write the shelf anew: without what was used, with the offcuts of this layout")
	print.flags(c)
	return c
}

// compare says where a layout that was searched for in another way than the usual one takes
// another number of sheets: all other commands show the usual one.
func compare(ctx context.Context, l loaded, shelf []list.Offcut, s streams) error {
	usual, err := sheets.Of(ctx, l.Batch, shelf, sheets.Search{})
	if err != nil {
		return nil // then there is nothing to compare with, and the other commands say why
	}
	for i, k := range usual.Stocks {
		here := l.Plan.Stocks[i].Layout
		if here.Count == k.Layout.Count && here.Cost == k.Layout.Cost && k.Remaining() == 0 {
			continue
		}
		said := words.Count(k.Layout.Count, "sheet", "sheets")
		if k.Remaining() > 0 {
			said = "more sheets than there are"
		}
		if _, err := fmt.Fprintf(s.err, "%s: %s here; with the usual effort, %d, as parts, build and the packet have it, %s: cut by this layout, and buy for it\n",
			plain(k.Name), words.Count(here.Count, "sheet", "sheets"), sheets.Effort, said); err != nil {
			return err
		}
	}
	return nil
}

// layoutPrint is how layouts are given.
type layoutPrint struct {
	json, csv, all bool
	dir            string
	more           string         // the command that prints all
	before         []present.Line // what is said before the sheets: that nothing is to be cut
	png            bool
}

// pngFlag asks for pictures in dots.
func pngFlag(c *cobra.Command, to *bool) {
	c.Flags().BoolVar(to, "png", false, "write pictures as PNG too, beside SVG")
}

func (p *layoutPrint) flags(c *cobra.Command) {
	allFlag(c, &p.all)
	c.Flags().BoolVar(&p.json, "json", false, "print them as JSON, with the place of every part")
	c.Flags().BoolVar(&p.csv, "csv", false, "print the place of every part as CSV")
	c.Flags().StringVarP(&p.dir, "output", "o", "",
		"write drawings, pictures and tables of the sheets into a folder too")
	pngFlag(c, &p.png)
}

func (p *layoutPrint) check() error {
	if p.json && p.csv {
		return errors.New("--json and --csv exclude each other")
	}
	return nil
}

// plan prints layouts, and writes their files first if a folder is given.
func (p *layoutPrint) plan(ctx context.Context, plan sheets.Plan, size string, s streams) error {
	plan.Looks.PNG = p.png
	if p.dir != "" {
		if err := p.write(ctx, plan, size, s); err != nil {
			return failure(err, "", p.json, s)
		}
	}
	_, shown := s.working("putting the cuts in order")
	laid := record.SheetsOf(plan)
	shown()
	var err error
	switch {
	case p.json:
		err = writeJSON(s.out, laid)
	case p.csv:
		_, err = s.out.Write(present.SheetsCSV(laid))
	default:
		err = s.show(present.Screen{
			Head:  append(p.before, present.SheetsHead(laid)),
			Brief: func(out *present.Printed) { present.SheetsBrief(out, laid, plan.Units) },
			Whole: func(out *present.Printed) { present.PrintSheets(out, laid, plan.Units) },
			More:  p.more,
			All:   p.all,
		})
	}
	if err == nil && slices.ContainsFunc(laid.Stocks, func(k record.SheetStock) bool { return len(k.Unplaced) > 0 }) {
		if p.csv { // in which they have no row
			s.complain("%s", plain(present.SheetsHead(laid).Text))
		}
		return errShown // pieces without a sheet are named in what was printed
	}
	return done(err)
}

// write writes the folder, whole or not at all.
func (p *layoutPrint) write(ctx context.Context, plan sheets.Plan, size string, s streams) error {
	ctx, stop := s.interruptible(ctx, stopping)
	defer stop()
	_, end := s.working("writing the folder")
	defer end()
	stage, err := outdir.Create(p.dir)
	if err != nil {
		return err
	}
	err = files.WriteSheets(ctx, plan, stage)
	if err == nil {
		of, known := paper.SizeOf(size)
		if !known {
			of = paper.A4
		}
		var pdf []byte
		if pdf, err = packet.SheetsPDF(ctx, plan, of); err == nil {
			err = stage.WriteFile("sheets.pdf", pdf)
		}
	}
	if err == nil {
		err = stage.Commit()
	}
	if errors.Is(err, context.Canceled) {
		err = fmt.Errorf("%w; %s is as it was before", errStopped, p.dir)
	}
	return errors.Join(err, stage.Abort())
}

// searching is how long to search for a layout.
type searching struct{ effort int }

// maxEffort is a search of hours.
const maxEffort = 10_000_000

func (q *searching) flags(c *cobra.Command, effort int) {
	c.Flags().IntVar(&q.effort, "effort", effort, "how long to search for layouts: 1000 are some seconds")
}

func (q *searching) check() error {
	if q.effort < 1 || q.effort > maxEffort {
		return fmt.Errorf("--effort %d: it is from 1 to %d", q.effort, maxEffort)
	}
	return nil
}

// options are those of a search without a screen.
func (q *searching) options() nest.Options { return nest.Options{Effort: q.effort} }

// start gives the options of a search that shows how far it is on a terminal, and a
// context that Ctrl-C ends.
func (q *searching) start(parent context.Context, s streams) (o nest.Options, ctx context.Context, end func()) {
	o = q.options()
	ctx, stop := s.interruptible(parent,
		"the search stops: the best layout so far is taken; Ctrl-C again ends the command")
	told, hide := s.searching()
	o.Progress = told
	return o, ctx, func() {
		hide()
		stop()
	}
}

// paperFor is the paper of a shop when only its unit is known.
func paperFor(u geom.Unit) string {
	if u == geom.Inch {
		return paper.Letter.Name
	}
	return paper.A4.Name
}
