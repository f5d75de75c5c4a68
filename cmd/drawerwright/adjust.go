package main

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/shoplog"
	"drawerwright/geom/testcut"
)

func newAdjust(s streams) *cobra.Command {
	var a adjusting
	c := &cobra.Command{
		Use:   "adjust JOB reading=value...",
		Short: "Say from readings of a test cut what to move",
		Long: `adjust takes what was measured on a test cut, any of it, and says what to move, by how
much and which way; what happens if nothing is moved; whether parts that are cut can be
saved; and which reading is missing or contradicts the others.

Readings, in the job's units or with one: slot (width of a dado), depth, edge (end to
dado), tongue, rabbet-depth, tongue-length, clearance (by feeler), recess (below 0: proud),
width (dry fitted), front-length, front-thickness, sides-thickness, diagonals=D1,D2; and of the
coupon tooth, coupon-N (width of slot N), fits=N (the slot that fits as wanted).

With --log the test cut goes into the shop's log, a CSV file that grows line by line; a
reading given twice is of two cuts at one setting.

With --write the measured values go into a copy of the job file, so that parts not yet
cut use them; with --keep it holds the settings as they really are, nothing moved.`,
		Example: `  $ drawerwright adjust drawers.yaml slot=6.40 edge=6.25 tongue=6.25 depth=6.05
  $ drawerwright adjust drawers.yaml --drawer tray recess=-0.3 \
      clearance=0.35 --write next.yaml
  $ drawerwright adjust drawers.yaml slot=6.40 edge=6.12 depth=6.05 \
      --log shop.csv`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) < 2 {
				return errors.New("give the job file and readings, as in slot=6.40 depth=6.05")
			}
			return nil
		},
		ValidArgsFunction: jobFiles,
		RunE:              func(_ *cobra.Command, args []string) error { return a.run(args, s) },
	}
	a.flags(c)
	return c
}

// adjusting is what the flags of adjust ask for.
type adjusting struct {
	drawer, write string
	keep, json    bool
	all           bool
	log           logging
}

func (a *adjusting) flags(c *cobra.Command) {
	c.Flags().StringVar(&a.drawer, "drawer", "", "the drawer whose setting was cut (default: the first of the job)")
	c.Flags().StringVar(&a.write, "write", "", "write the job with the measured values to this new file")
	c.Flags().BoolVar(&a.keep, "keep", false, "write the settings as they really are, nothing moved")
	a.log.flags(c, "test cut")
	allFlag(c, &a.all)
	c.Flags().BoolVar(&a.json, "json", false, "print it as JSON")
}

// run takes a job file and readings.
func (a *adjusting) run(args []string, s streams) error {
	if a.keep && a.write == "" {
		return errors.New("--keep says what --write writes; give both")
	}
	if a.write != "" && args[0] == "-" {
		return errors.New("--write needs a job file to copy, not standard input")
	}
	if err := a.log.check(); err != nil {
		return err
	}
	l, err := ready(args[0], a.json, s)
	if err != nil {
		return err
	}
	at, err := chosen(l.Batch, a.drawer)
	if err != nil {
		return err // usage
	}
	t := trialCut{batch: l.Batch, at: at, drawer: l.Batch.Drawers[at], tool: l.Job.Drawers[at].Tool}
	t.cut = testcut.New(t.drawer.Drawer, t.drawer.Shop.Boards, t.drawer.Shop.Accuracy, t.drawer.Shop.Slide,
		l.Batch.LimitsFor(at))
	for _, arg := range args[1:] {
		if err := t.reading(arg); err != nil {
			return err
		}
	}
	advice := t.cut.Advise(t.readings)
	out := present.AdjustmentOf(present.TestCut{Job: l.Batch.Title, Unit: l.Batch.Units, Drawer: t.drawer.Spec.Name,
		Setup: t.drawer.Setup}, t.cut, advice)
	out.Square, out.Fits = t.square, t.fitsText()
	if a.write != "" {
		if err := t.write(args[0], a, l, advice, &out); err != nil {
			return failure(err, a.write, a.json, s)
		}
	}
	if a.log.path != "" {
		if out.Logged, err = t.log(a.log, advice); err != nil {
			return failure(err, a.log.path, a.json, s)
		}
	}
	if a.json {
		return done(writeJSON(s.out, out))
	}
	head := []present.Line{l.cannotCut(at), present.AdjustmentHead(out)}
	if out.Logged != "" {
		head = append(head, present.Line{Text: out.Logged})
	}
	if text := a.next(args, out); text != "" {
		head = append(head, present.Line{Text: text})
	}
	return done(s.show(present.Screen{
		Head:  head,
		Whole: func(text *present.Printed) { present.PrintAdjustment(text, out, l.Batch.Units) },
		More:  "the same command with --all",
		All:   a.all,
	}))
}

// chosen finds a drawer by its name.
func chosen(b batch.Batch, name string) (int, error) {
	if name == "" {
		return 0, nil
	}
	var names []string
	for i, d := range b.Drawers {
		if d.Spec.Name == name {
			return i, nil
		}
		names = append(names, d.Spec.Name)
	}
	return 0, fmt.Errorf("--drawer %s: the job has %s", name, words.Some(names))
}

// trialCut gathers the readings of a test cut.
type trialCut struct {
	batch    batch.Batch
	at       int // index of the drawer
	drawer   batch.Drawer
	tool     shoplog.Tool
	cut      testcut.Model
	readings []testcut.Reading
	square   string
	fits     float64 // width of the coupon's slot that fits as wanted; 0 without
	fitsSlot int
}

func (t *trialCut) text(mm float64) string { return geom.LengthOf(mm).Text(t.batch.Units) }

// reading takes one argument.
func (t *trialCut) reading(arg string) error {
	name, value, found := strings.Cut(arg, "=")
	if !found {
		return fmt.Errorf("%q: write a reading and its value, as in slot=6.40", arg)
	}
	switch {
	case name == "diagonals":
		return t.diagonals(value)
	case name == "fits":
		return t.slotThatFits(value)
	}
	v, err := signed(value, t.batch.Units)
	if err != nil {
		return fmt.Errorf("%s: %w", arg, err)
	}
	r := testcut.Reading{Kind: testcut.Kind(name), Value: v, Name: name}
	if number, ok := strings.CutPrefix(name, "coupon-"); ok || name == string(testcut.Tooth) {
		c, err := couponOf(t.batch, t.drawer)
		if err != nil {
			return err
		}
		r.Meant = c.Comb.Tooth()
		if ok {
			r.Kind = testcut.Coupon
			n, err := strconv.Atoi(number)
			if err != nil || n < 1 || n > len(c.Slots) {
				return fmt.Errorf("%s: the coupon's slots are coupon-1 to coupon-%d", arg, len(c.Slots))
			}
			r.Meant = c.Slots[n-1].Width
		}
	}
	takes := t.cut.ReadingKinds()
	if !slices.Contains(takes, r.Kind) || name == string(testcut.Coupon) {
		var names []string
		for _, k := range takes {
			if k == testcut.Coupon {
				k = "coupon-1"
			}
			names = append(names, string(k))
		}
		names = append(names, "fits", "diagonals")
		return fmt.Errorf("%s: a test cut of a %s corner has no reading %q: %s",
			arg, t.drawer.Spec.Joint, name, job.DidYouMean(name, names))
	}
	if meant, ok := t.cut.Plausible(r); !ok {
		return fmt.Errorf("%s: meant to be %s, and %s is too far from it to be of this cut; "+
			"check the drawer, the unit and the decimal point", arg, t.text(meant), t.text(v))
	}
	t.readings = append(t.readings, r)
	return nil
}

// signed reads a length that may be below 0.
func signed(s string, u geom.Unit) (float64, error) {
	rest, below := strings.CutPrefix(strings.TrimSpace(s), "-")
	l, err := geom.ParseLength(rest, u)
	if err != nil {
		return 0, err
	}
	if below {
		return -l.MM(), nil
	}
	return l.MM(), nil
}

func (t *trialCut) diagonals(value string) error {
	first, second, found := strings.Cut(value, ",")
	a, err1 := signed(first, t.batch.Units)
	b, err2 := signed(second, t.batch.Units)
	d := t.drawer
	meant := testcut.Diagonals(joinery.Size{Width: d.Outside.Width, Depth: d.DiagonalDepth()})
	most := testcut.MaxDiagonalOff(meant)
	if !found || err1 != nil || err2 != nil || math.Abs(a-meant) > most || math.Abs(b-meant) > most {
		return fmt.Errorf("diagonals=%s: write both with a comma, as in diagonals=%s,%s, where they should be",
			value, t.text(meant), t.text(meant))
	}
	apart := t.text(math.Abs(a - b))
	switch {
	case math.Abs(a-b) <= d.Spec.Limits.Diagonal:
		t.square = fmt.Sprintf("The diagonals are %s apart, square within %s.", apart, t.text(d.Spec.Limits.Diagonal))
	case a > b:
		t.square = fmt.Sprintf("The first diagonal is %s longer: clamp across it until the two are equal.", apart)
	default:
		t.square = fmt.Sprintf("The second diagonal is %s longer: clamp across it until the two are equal.", apart)
	}
	return nil
}

func (t *trialCut) slotThatFits(value string) error {
	c, err := couponOf(t.batch, t.drawer)
	if err != nil {
		return err
	}
	n, err := strconv.Atoi(value)
	if err != nil || n < 1 || n > len(c.Slots) {
		return fmt.Errorf("fits=%s: write the number of a slot of the coupon, 1 to %d", value, len(c.Slots))
	}
	t.fits, t.fitsSlot = c.Slots[n-1].Width, n
	return nil
}

// playWanted is the play that the coupon's slot has over what was pushed into it.
func (t *trialCut) clearanceWanted() float64 { return t.fits - couponTongue(t.drawer) }

func (t *trialCut) fitsText() string {
	if t.fits == 0 {
		return ""
	}
	said := fmt.Sprintf("Slot %d is meant to be %s wide, a clearance of %s.", t.fitsSlot, t.text(t.fits),
		t.text(t.clearanceWanted()))
	switch k := t.drawer.Setup.Cutter.Kind; {
	case k.FollowsDrawing():
		return said + " The router makes it with that dado-clearance."
	case k.MadeToFit():
		return said + " Write that dado-clearance, and pare the dados until the tongue goes in as it did there."
	}
	l := t.drawer.Spec.Limits.TongueClearance
	return said + fmt.Sprintf(" The slot is as wide as the cutter: one of %s makes it at this fence distance. "+
		"The job's limits are %s to %s.", t.text(t.fits), t.text(l.Min), t.text(l.Max))
}
