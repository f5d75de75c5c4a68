package main

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/list"
	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"

	"github.com/spf13/cobra"
)

// shelved is a file of offcuts.
type shelved struct {
	path  string
	put   bool
	shelf list.Shelf
	was   bytes.Buffer // the file that the shelf was read from
}

func (h *shelved) flags(c *cobra.Command) {
	c.Flags().StringVar(&h.path, "shelf", "", "a table of offcuts to use first: stock, name, length, width, batch")
}

// strangers reports stocks on the shelf that the job does not have: perhaps a slip.
func (h *shelved) strangers(b batch.Batch, s streams) error {
	var names []string
	for _, stock := range b.Stocks {
		names = append(names, cmp.Or(b.Sheets.Of[stock.Name].LotOf, stock.Name))
	}
	others := h.shelf.Others(names)
	if len(others) == 0 {
		return nil
	}
	_, err := fmt.Fprintf(s.err, "%s: offcuts of stocks that this job does not have stay on the shelf: %s\n", plain(h.path), plain(words.Some(others)))
	return err
}

// lay lays a job out with the shelf's offcuts first.
func (h *shelved) lay(ctx context.Context, l *loaded, o sheets.Search, s streams) error {
	shelf, err := h.read(l.Batch.Units)
	if err == nil {
		err = h.strangers(l.Batch, s)
	}
	if err == nil {
		s.lay(ctx, l, shelf.Offcuts, o)
	}
	return err
}

// read reads the shelf; a file that is not there yet is an empty one where it is to be
// written.
func (h *shelved) read(u geom.Unit) (list.Shelf, error) {
	if h.path == "" {
		if h.put {
			return list.Shelf{}, errors.New("--put-back needs --shelf FILE")
		}
		return list.Shelf{}, nil
	}
	if h.path == "-" { // which other commands take for standard input, and which is no file to write
		return list.Shelf{}, hinted{"--shelf takes no standard input",
			"write the name of the file; ./- where it is called -"}
	}
	if _, err := os.Lstat(h.path); errors.Is(err, fs.ErrNotExist) && h.put {
		return list.Shelf{}, nil
	}
	f, err := opened("shelf", h.path, "--put-back begins a new one")
	if err != nil {
		return list.Shelf{}, err
	}
	defer f.Close()
	h.shelf, err = list.ReadShelf(plain(h.path), io.TeeReader(f, &h.was), u)
	return h.shelf, err
}

// putBack writes the shelf as it is after a layout has been cut, if that is asked for, and if the shelf
// is what the layout was made with: of two layouts at once only one can have an offcut.
func (h *shelved) putBack(p sheets.Plan, s streams) error {
	if !h.put {
		return nil
	}
	used, left := p.Offcuts()
	after := h.shelf.After(used, left)
	done, err := outdir.ReplaceFileWas(h.path, h.was.Bytes(), after.CSV(p.Units))
	switch {
	case err != nil:
		return fmt.Errorf("cannot write the shelf, which is as it was: %w", err)
	case !done:
		return fmt.Errorf("nothing is put back: another program has changed %s since it was read, and an offcut "+
			"of this layout may be gone; do not cut by it, run this again", plain(h.path))
	}
	_, err = fmt.Fprintf(s.err, "%s: %s taken, %s put back\n", plain(h.path),
		words.Count(len(used), "offcut", "offcuts"), words.Count(len(left), "offcut", "offcuts"))
	return err
}
