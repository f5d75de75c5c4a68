package list

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Offcut is a piece of a stock that a shop has kept; its length is along the grain.
type Offcut struct {
	Stock, Name   string
	Length, Width int64 // nm
	Batch         string
}

// Shelf is the offcuts of a shop. The zero value is an empty one.
type Shelf struct{ Offcuts []Offcut }

// shelfHeads are those of a shelf's table; batch may be left out.
var shelfHeads = []string{"stock", "name", "length", "width", "batch"}

// maxOffcut is how long the name of an offcut can be: a job's title and a stock's name, a
// space between them, and its numbers.
const maxOffcut = 2*maxName + 40

// ReadShelf reads a shelf as a table; bare numbers are in a unit. An empty file is an
// empty shelf.
func ReadShelf(file string, from io.Reader, unit geom.Unit) (Shelf, error) {
	r := &reader{file: file, unit: unit, heads: shelfHeads, needed: shelfHeads[:4]}
	var out Shelf
	names := make(map[[2]string]bool)
	err := r.table(from, func(row []string) {
		o := Offcut{Stock: r.name(r.get(row, "stock")), Name: r.upTo(maxOffcut, r.get(row, "name")),
			Batch: r.name(r.get(row, "batch"))}
		if o.Stock == "" || o.Name == "" {
			r.fail("write both", "the offcut has no stock or no name")
		}
		o.Length, o.Width = r.length("length", r.get(row, "length")), r.length("width", r.get(row, "width"))
		if key := [2]string{o.Stock, o.Name}; names[key] {
			r.fail("give one of them another name", "the shelf has two offcuts of %s named %s",
				quoted(o.Stock), quoted(o.Name))
		} else {
			names[key] = true
		}
		out.Offcuts = append(out.Offcuts, o)
	})
	if err != nil {
		return Shelf{}, err
	}
	if err := errors.Join(r.problems...); err != nil {
		return Shelf{}, err
	}
	return out, nil
}

// After is the shelf without the offcuts that were used and with new ones; one whose name
// is taken gets a number behind it.
func (s Shelf) After(used, left []Offcut) Shelf {
	var out Shelf
	names := make(map[[2]string]bool)
	for _, o := range s.Offcuts {
		if !slices.Contains(used, o) {
			out.Offcuts = append(out.Offcuts, o)
		}
		names[[2]string{o.Stock, o.Name}] = true // one that was used may still have its label
	}
	for _, o := range left {
		name := o.Name
		for n := 2; names[[2]string{o.Stock, o.Name}]; n++ {
			o.Name = fmt.Sprintf("%s (%d)", name, n)
		}
		names[[2]string{o.Stock, o.Name}] = true
		out.Offcuts = append(out.Offcuts, o)
	}
	return out
}

// Others are the stocks of a shelf that are not among those of a job.
func (s Shelf) Others(stocks []string) (list []string) {
	for _, o := range s.Offcuts {
		if !slices.Contains(stocks, o.Stock) && !slices.Contains(list, o.Stock) {
			list = append(list, o.Stock)
		}
	}
	return list
}

// CSV is the shelf as a table, lengths with their unit.
func (s Shelf) CSV(unit geom.Unit) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true // RFC 4180
	w.Write(shelfHeads)
	size := func(l int64) string { return geom.Length(l).Text(unit) }
	for _, o := range s.Offcuts {
		w.Write([]string{words.Cell(o.Stock), words.Cell(o.Name), size(o.Length), size(o.Width), words.Cell(o.Batch)})
	}
	w.Flush() // into memory: it cannot fail
	return out.Bytes()
}
