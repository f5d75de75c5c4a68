package dxftest

import (
	"bytes"
	"io"

	"drawerwright/export/dxf/dxfread"
)

// ReadBack writes a drawing into memory, judges it by [Strict], and reads it.
func ReadBack(drawing io.WriterTo) (*dxfread.File, error) {
	return readBack(drawing, Strict)
}

// ReadRaised is ReadBack by [Raised].
func ReadRaised(drawing io.WriterTo) (*dxfread.File, error) { return readBack(drawing, Raised) }

func readBack(drawing io.WriterTo, judge func([]byte) error) (*dxfread.File, error) {
	var out bytes.Buffer
	if _, err := drawing.WriteTo(&out); err != nil {
		return nil, err
	}
	if err := judge(out.Bytes()); err != nil {
		return nil, err
	}
	return dxfread.Parse(out.Bytes())
}
