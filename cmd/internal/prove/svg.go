package prove

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"drawerwright/geom"
)

// svgShape is a line, a rectangle, a circle or words of an SVG, in millimeters with y down,
// and where it is in the file.
type svgShape struct {
	kind   string // path, rect, circle or text
	group  string // the name of the group that it is in
	points []geom.Point
	closed bool
	radius float64
	text   string
	line   int
}

var errSVG = errors.New("no SVG as templates and cabinets have it")

// svgShapes reads an SVG whose sizes are in millimeters at their true scale (W3C, "Scalable
// Vector Graphics 1.1", sections 8 and 9): paths of straight lines and cubic curves,
// rectangles, circles, words.
func svgShapes(data []byte) (list []svgShape, line int, err error) {
	if _, _, ok := svgSize(data); !ok {
		return nil, 1, errSVG
	}
	d := xml.NewDecoder(bytes.NewReader(data))
	var groups []string
	for {
		at := d.InputOffset()
		token, err := d.Token()
		line = 1 + bytes.Count(data[:at], []byte("\n"))
		if errors.Is(err, io.EOF) {
			return list, 0, nil
		}
		if err != nil {
			return nil, line, err
		}
		switch t := token.(type) {
		case xml.StartElement:
			of := make(map[string]string)
			for _, a := range t.Attr {
				of[a.Name.Local] = a.Value
			}
			s := svgShape{kind: t.Name.Local, line: line}
			for _, g := range groups {
				if g != "" {
					s.group = g
				}
			}
			switch s.kind {
			case "g":
				groups = append(groups, of["id"])
				continue
			case "path":
				s.points, s.closed, err = svgPath(of["d"])
			case "rect", "circle", "text":
				err = s.placed(of)
			default:
				continue
			}
			if err != nil {
				return nil, line, err
			}
			list = append(list, s)
		case xml.CharData:
			if n := len(list); n > 0 && list[n-1].kind == "text" {
				list[n-1].text += strings.TrimSpace(string(t))
			}
		case xml.EndElement:
			if t.Name.Local == "g" && len(groups) > 0 {
				groups = groups[:len(groups)-1]
			}
		}
	}
}

// placed takes where a rectangle, a circle or words are; a size that is a share of the
// whole is that of the paper, and is no shape.
func (s *svgShape) placed(of map[string]string) error {
	if strings.HasSuffix(of["width"], "%") {
		return nil
	}
	n := func(name string) float64 {
		v, _ := strconv.ParseFloat(of[name], 64)
		return v
	}
	switch s.kind {
	case "circle":
		s.points, s.radius = []geom.Point{{X: n("cx"), Y: n("cy")}}, n("r")
	case "text":
		s.points = []geom.Point{{X: n("x"), Y: n("y")}}
	default:
		x, y := n("x"), n("y")
		s.points, s.closed = geom.Rect{Min: geom.Point{X: x, Y: y}, Max: geom.Point{X: x + n("width"), Y: y + n("height")}}.Corners(), true
	}
	return nil
}

// svgPath reads a path of straight lines and cubic curves, these as chords.
func svgPath(d string) (list []geom.Point, closed bool, err error) {
	words := strings.Fields(strings.NewReplacer("M", " M ", "L", " L ", "C", " C ", "Z", " Z ", ",", " ").Replace(d))
	for i := 0; i < len(words); {
		if words[i] == "Z" {
			closed = true
			i++
			continue
		}
		points, known := map[string]int{"M": 1, "L": 1, "C": 3}[words[i]]
		if !known || closed || (words[i] == "M") != (i == 0) || i+2*points >= len(words) {
			return nil, false, fmt.Errorf("%w: a path with %q", errSVG, words[i])
		}
		var to [3]geom.Point
		for k := range to[:points] {
			x, e1 := strconv.ParseFloat(words[i+1+2*k], 64)
			y, e2 := strconv.ParseFloat(words[i+2+2*k], 64)
			if e1 != nil || e2 != nil {
				return nil, false, fmt.Errorf("%w: half a place in a path", errSVG)
			}
			to[k] = geom.Point{X: x, Y: y}
		}
		if points == 1 {
			list = append(list, to[0])
		} else {
			list = append(list, cubic(list[len(list)-1], to)...)
		}
		i += 1 + 2*points
	}
	if len(list) == 0 {
		return nil, false, errSVG
	}
	return list, closed, nil
}

// cubic is a curve from a point by two to a third, in chords.
func cubic(from geom.Point, to [3]geom.Point) (list []geom.Point) {
	const chords = 8
	for i := 1; i <= chords; i++ {
		t := float64(i) / chords
		u := 1 - t
		a, b, c, d := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		list = append(list, geom.Point{
			X: float64(a*from.X) + float64(b*to[0].X) + float64(c*to[1].X) + float64(d*to[2].X),
			Y: float64(a*from.Y) + float64(b*to[0].Y) + float64(c*to[1].Y) + float64(d*to[2].Y),
		})
	}
	return list
}

// bounds is the box about a shape, y down.
func (s svgShape) bounds() geom.Rect {
	return geom.Around(s.points...).Grow(s.radius)
}
