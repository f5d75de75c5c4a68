package list

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"drawerwright/cmd/internal/mutate"
	"drawerwright/geom"
)

// TestSpoiledLists: a spoiled list is read, or refused with the lines of what is wrong.
func TestSpoiledLists(t *testing.T) {
	mutate.CSV.Each(t, []mutate.Sample{
		{Name: "prices", Text: head + "sheet,birch,2440,1220,,58.50,\noffcut,birch,900,600,2,,\npart,\"side, left\",500,140,12,,\npart,top,19 5/8 in,100 mm,1,,yes\n"},
		{Name: "matching", Text: "name,length,width,count,match,set,kind,batch\r\ndoor,715,396,2,kitchen,pair,,\r\ndoor,715,297,1,kitchen,,part,\r\noak,2800,2070,3,,,sheet,A12\r\n"},
	}, func(spoiled mutate.Sample) error { return readable(spoiled.Text) })
}

// TestSpoiledShelves: a spoiled shelf is read, or refused with the lines of what is wrong; what is read
// can be put back, and read again.
func TestSpoiledShelves(t *testing.T) {
	mutate.CSV.Each(t, []mutate.Sample{
		{Name: "with batches", Text: "stock,name,length,width,batch\r\nbirch,offcut 1,610 mm,24 in,\r\nbirch,offcut 3,500,200,A\r\n\"ply 1/2\",\"Bench, wide\",300,200.5,\r\n"},
		{Name: "with a formula", Text: "name,stock,width,length\n'=old,birch 12,20 mm,300 mm\n(2),birch 12,19 5/8 in,1/2 in\n"},
	}, func(spoiled mutate.Sample) error {
		s, err := ReadShelf("l.csv", strings.NewReader(spoiled.Text), geom.Millimeter)
		if err != nil {
			return placed(spoiled.Text, err)
		}
		put := s.CSV(geom.Millimeter)
		again, err := ReadShelf("l.csv", bytes.NewReader(put), geom.Inch)
		if err != nil || len(again.Offcuts) != len(s.Offcuts) || !bytes.Equal(again.CSV(geom.Millimeter), put) {
			return fmt.Errorf("%+v was put back as %q and read as %+v: %w", s, put, again, err)
		}
		return nil
	})
}
