package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"drawerwright/cmd/internal/list"
	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/shoplog"
	"drawerwright/geom/testcut"

	"github.com/spf13/cobra"
)

// logging is the file of a shop's log, and the day of what goes into it.
type logging struct{ path, date string }

// flags adds those of a log of what was measured.
func (l *logging) flags(c *cobra.Command, of string) {
	c.Flags().StringVar(&l.path, "log", "", "add the "+of+" to this log of the shop, a CSV file")
	c.Flags().StringVar(&l.date, "date", "", "the day of the "+of+", as `YYYY-MM-DD` (default: today)")
}

// check refuses flags that do not go together, before anything is worked out.
func (l logging) check() error {
	switch {
	case l.path == "-":
		return hinted{"--log takes no standard input", "write the name of the file; ./- where it is called -"}
	case l.date != "" && l.path == "":
		return errors.New("--date is the day of what --log takes in; give both")
	}
	return dated(l.date)
}

// day is that of a test cut: today, unless a flag says another.
func (l logging) day() time.Time {
	day, err := time.Parse(time.DateOnly, cmp.Or(l.date, time.Now().Format(time.DateOnly)))
	if err != nil {
		panic(err) // it was checked
	}
	return day
}

// tries is how often a log is written anew that others write too.
const tries = 20

// add adds cuts to the log, whole or not at all; what others add meanwhile stays.
func (l logging) add(cuts []shoplog.Cut, u geom.Unit) (said string, err error) {
	for range tries {
		was, err := os.ReadFile(l.path)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return "", err
		}
		log, err := list.ReadLog(plain(l.path), bytes.NewReader(was))
		if err != nil {
			return "", err
		}
		done, err := outdir.ReplaceFileWas(l.path, was, log.With(cuts, u))
		switch {
		case err != nil:
			return "", fmt.Errorf("cannot write the log, which is as it was: %w", err)
		case done:
			return fmt.Sprintf("%s added to %s.", words.Count(len(cuts), "line", "lines"), plain(l.path)), nil
		}
	}
	return "", fmt.Errorf("nothing is added: other programs write %s all the time; run this again", plain(l.path))
}

// log adds a test cut to the shop's log, and says what it did.
func (t *trialCut) log(to logging, a testcut.Advice) (said string, err error) {
	cuts := t.cut.Logged(a, to.day(), t.tool)
	if why := present.NotLogged(a, cuts); why != "" {
		return why, nil
	}
	return to.add(cuts, t.batch.Units)
}
