package prove

import (
	"bytes"
	"encoding/binary"
	"math"
	"path"
	"regexp"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// pictureSet is the pictures of a box, or of the sheets of a stock: what they show and their
// names without endings.
type pictureSet struct {
	of    string
	names []string
	dots  map[string]bool // those that are in dots too
}

// picturesOf are the pictures of a build, of drawers and of sheets.
func (p *Prover) picturesOf() (list []pictureSet) {
	add := func(of string, files []string) {
		s := pictureSet{of: of, dots: map[string]bool{}}
		for _, name := range files {
			if base, is := strings.CutSuffix(name, ".svg"); is {
				s.names = append(s.names, base)
			} else if base, is := strings.CutSuffix(name, ".png"); is {
				s.dots[base] = true
			}
		}
		if len(s.names) > 0 {
			list = append(list, s)
		}
	}
	for _, d := range p.report.Drawers {
		add(d.Name, d.Pictures)
	}
	for _, k := range p.report.Sheets {
		var files []string
		for _, s := range k.Sheets {
			files = append(files, s.Files...)
		}
		add(k.Stock, files)
	}
	return list
}

// picturesCheck looks whether pictures are there and whole: one for any size, which says how
// large it is, and one in dots, if there is one, that is as large.
func (w *Worker) picturesCheck(set pictureSet, read Read) record.Checked {
	c := checking{Prover: w.Prover, out: record.Checked{Kind: record.CheckedPictures, Name: set.of,
		Faults: []record.Fault{}}}
	for _, name := range set.names {
		size, sized := c.inLines(name, read)
		if set.dots[name] {
			c.inDots(name, size, sized, read)
		}
	}
	return c.out
}

// inLines looks at a picture for any size, and gives that at which it is true, in mm.
func (c *checking) inLines(name string, read Read) (size geom.Point, ok bool) {
	data, ok := c.file(name+".svg", read)
	if !ok {
		return size, false
	}
	if size.X, size.Y, ok = svgSize(data); !ok {
		c.fault("unreadable", place{path.Base(name), name + ".svg", 1}, rebuild,
			"no SVG that is whole and says its size in millimeters at its true scale")
	} else if !bytes.Contains(data, []byte("<path")) {
		c.fault("picture-empty", place{path.Base(name), name + ".svg", 0}, rebuild, "nothing is drawn in the picture")
	}
	return size, ok
}

// inDots looks at a picture in dots. sized says that its size in mm is known.
func (c *checking) inDots(name string, size geom.Point, sized bool, read Read) {
	data, there := c.file(name+".png", read)
	if !there {
		return
	}
	x, y, whole := pngSize(data)
	switch {
	case !whole:
		c.fault("unreadable", place{path.Base(name), name + ".png", 0}, rebuild, "no PNG that is whole")
	case sized && math.Abs(x*size.Y-y*size.X) > x+y+size.X+size.Y: // a dot, and the size in whole millimeters
		c.fault("picture-size", place{path.Base(name), name + ".png", 0}, rebuild,
			"the picture is %.0f x %.0f dots; in the SVG it is %.0f x %.0f mm, of another shape", x, y, size.X, size.Y)
	}
}

var svgHead = regexp.MustCompile(`^<svg [^>]*\bwidth="([0-9.]+)mm" height="([0-9.]+)mm" viewBox="0 0 ([0-9.]+) ([0-9.]+)"`)

// svgSize is how large an SVG is, in millimeters. ok is false where it is cut short, or not
// at its true size.
func svgSize(data []byte) (wide, high float64, ok bool) {
	m := svgHead.FindSubmatch(data[:min(len(data), 400)])
	if m == nil || !bytes.HasSuffix(bytes.TrimRight(data, "\r\n"), []byte("</svg>")) {
		return 0, 0, false
	}
	var n [4]float64
	for i := range n {
		n[i], _ = strconv.ParseFloat(string(m[1+i]), 64)
	}
	return n[0], n[1], n[0] > 0 && n[1] > 0 && n[0] == n[2] && n[1] == n[3]
}

// pngSize is how large a PNG is, in dots, by its published layout (W3C, "Portable Network
// Graphics", sections 5 and 11). whole is false where it is cut short.
func pngSize(data []byte) (x, y float64, whole bool) {
	const signature, end = "\x89PNG\r\n\x1a\n", "\x00\x00\x00\x00IEND\xaeB`\x82"
	if len(data) < 33 || string(data[:8]) != signature || string(data[12:16]) != "IHDR" ||
		!bytes.HasSuffix(data, []byte(end)) {
		return 0, 0, false
	}
	return float64(binary.BigEndian.Uint32(data[16:])), float64(binary.BigEndian.Uint32(data[20:])), true
}
