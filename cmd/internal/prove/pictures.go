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
)

// picturesOf are the pictures of a build, without the endings of their names: those of
// drawers beside their solids, and those of sheets and offcuts.
func (p *Prover) picturesOf() (list []string) {
	for _, d := range p.report.Drawers {
		if stl := p.stlOf(d); stl != "" {
			for _, view := range []string{"assembled", "exploded", "corner"} {
				list = append(list, path.Dir(stl)+"/"+view)
			}
		}
	}
	for _, k := range p.report.Sheets {
		for _, s := range k.Sheets {
			for _, name := range s.Files {
				if base, is := strings.CutSuffix(name, ".svg"); is {
					list = append(list, base)
				}
			}
		}
	}
	return list
}

// picturesCheck looks whether pictures are there and whole: one for any size, which says how
// large it is, and one in dots that is as large.
func (w *Worker) picturesCheck(names []string, read Read) record.Checked {
	c := checking{Prover: w.Prover, out: record.Checked{What: record.CheckedPictures, Name: path.Dir(names[0]),
		Faults: []record.Fault{}}}
	for _, name := range names {
		var wide, high float64
		lines, ok := c.file(name+".svg", read)
		if ok {
			if wide, high, ok = svgSize(lines); !ok {
				c.fault("unreadable", place{path.Base(name), name + ".svg", 1}, rebuild,
					"no SVG that is whole and says its size in millimetres at its true scale")
			} else if !bytes.Contains(lines, []byte("<path")) {
				c.fault("picture-empty", place{path.Base(name), name + ".svg", 0}, rebuild, "nothing is drawn in the picture")
			}
		}
		dots, there := c.file(name+".png", read)
		if !there {
			continue
		}
		x, y, whole := pngSize(dots)
		switch {
		case !whole:
			c.fault("unreadable", place{path.Base(name), name + ".png", 0}, rebuild, "no PNG that is whole")
		case ok && math.Abs(x*high-y*wide) > x+y+wide+high: // a dot, and the size in whole millimetres
			c.fault("picture-size", place{path.Base(name), name + ".png", 0}, rebuild,
				"the picture is %.0f x %.0f dots; in the SVG it is %.0f x %.0f mm, of another shape", x, y, wide, high)
		}
	}
	return c.out
}

var svgHead = regexp.MustCompile(`^<svg [^>]*\bwidth="([0-9.]+)mm" height="([0-9.]+)mm" viewBox="0 0 ([0-9.]+) ([0-9.]+)"`)

// svgSize is how large an SVG is, in millimetres. ok is false where it is cut short, or not
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

// byFolder groups names by their folders; those of one folder come together.
func byFolder(names []string) (groups [][]string) {
	for _, n := range names {
		if k := len(groups); k > 0 && path.Dir(groups[k-1][0]) == path.Dir(n) {
			groups[k-1] = append(groups[k-1], n)
			continue
		}
		groups = append(groups, []string{n})
	}
	return groups
}
