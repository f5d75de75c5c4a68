package prove

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// shown is what the page has of its boxes, as JSON.
type shown struct {
	Parts []struct {
		Name, Role, Stock string
		Quantity          int
		Length, Width     float64
		Thickness         float64
	}
	Boxes []struct {
		Name   string
		Count  int
		Size   [3]float64 // width, height, depth
		Pieces []struct {
			Part         int
			Origin, X, Y [3]float64
		}
	}
}

// errNoBoxes is a page that is not whole.
var errNoBoxes = errors.New("the page has no boxes, or is cut short")

// pageOf reads the boxes of the page, and the line on which they stand, box by box and part by part: the page of
// thousands of drawers is too large to be held.
func pageOf(in io.Reader) (s shown, line int, err error) {
	r := bufio.NewReader(in)
	if line, err = pastScene(r); err != nil {
		return s, line, errNoBoxes
	}
	d := json.NewDecoder(r)
	open := func(sign json.Delim) error {
		t, err := d.Token()
		if err == nil && t != sign {
			err = fmt.Errorf("there is %v where %v has to be", t, sign)
		}
		return err
	}
	if err := open('{'); err != nil {
		return s, line, err
	}
	for d.More() {
		key, err := d.Token()
		if err != nil {
			return s, line, err
		}
		switch key {
		case "parts":
			err = each(d, open, &s.Parts)
		case "boxes":
			err = each(d, open, &s.Boxes)
		case "bytes": // of the solids, and the last
			return s, line, wholeAfter(bufio.NewReader(io.MultiReader(d.Buffered(), r)))
		default:
			err = d.Decode(new(json.RawMessage))
		}
		if err != nil {
			return s, line, err
		}
	}
	return s, line, errNoBoxes
}

// pastScene reads up to the boxes and gives their line.
func pastScene(r *bufio.Reader) (line int, err error) {
	begin := []byte(`<script type="application/json" id="scene">`)
	for line = 1; ; {
		if next, err := r.Peek(len(begin)); err != nil || bytes.Equal(next, begin) {
			_, _ = r.Discard(len(next))
			return line, err
		}
		if c, _ := r.ReadByte(); c == '\n' {
			line++
		}
	}
}

// each reads a list, an element at a time.
func each[T any](d *json.Decoder, open func(json.Delim) error, list *[]T) error {
	if err := open('['); err != nil {
		return err
	}
	for d.More() {
		var one T
		if err := d.Decode(&one); err != nil {
			return err
		}
		*list = append(*list, one)
	}
	return open(']')
}

// wholeAfter reports whether the bytes of the solids and the page end as they have to.
func wholeAfter(r *bufio.Reader) error {
	const begin, end = `:"`, `}</script>`
	for _, want := range []byte(begin) {
		if c, err := r.ReadByte(); err != nil || c != want {
			return errNoBoxes
		}
	}
	for {
		c, err := r.ReadByte()
		if err != nil {
			return errNoBoxes
		}
		if c == '"' {
			break
		}
	}
	rest, err := io.ReadAll(r)
	rest = bytes.TrimSpace(rest)
	if err != nil || !bytes.HasPrefix(rest, []byte(end)) || !bytes.HasSuffix(rest, []byte("</html>")) {
		return errNoBoxes
	}
	return nil
}
