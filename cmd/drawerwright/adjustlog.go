package main

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"time"

	"drawerwright/cmd/internal/list"
	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/present"
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

// file is the log on disk.
func (l logging) file() list.LogFile {
	return list.LogFile{
		Name: plain(l.path),
		Read: func() ([]byte, error) {
			was, err := os.ReadFile(l.path)
			if errors.Is(err, fs.ErrNotExist) {
				return nil, nil
			}
			return was, err
		},
		Replace: func(was, now []byte) (bool, error) { return outdir.ReplaceFileWas(l.path, was, now) },
	}
}

// log adds a test cut to the shop's log, and says what it did.
func (t *trialCut) log(to logging, a testcut.Advice) (said string, err error) {
	cuts := t.cut.Logged(a, to.day(), t.tool)
	if why := present.NotLogged(a, cuts); why != "" {
		return why, nil
	}
	return to.file().Add(cuts, t.batch.Units)
}
