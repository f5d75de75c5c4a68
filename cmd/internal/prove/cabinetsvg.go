package prove

import (
	"math"
	"strings"

	"drawerwright/cmd/internal/record"
)

// cabinetSVG holds the picture of a cabinet's side against its rows: a line across the side
// for each slide, with its height in words, and holes on these lines.
func (c *checking) cabinetSVG(k record.Cabinet, name string, read Read) {
	data, ok := c.file(name, read)
	if !ok {
		return
	}
	shapes, line, err := svgShapes(data)
	if err != nil {
		c.fault("unreadable", place{k.Name, name, line}, rebuild, "no SVG that can be read: %v", err)
		return
	}
	bottom, width := c.sideDrawn(k, name, shapes)
	lines := k.Lines()
	drawn, told, holes := make([]bool, len(lines)), make([]bool, len(lines)), 0
	for _, s := range shapes {
		if len(s.points) == 0 {
			continue
		}
		switch at := bottom - s.bounds().Center().Y; {
		case s.kind == "path" && !s.closed && len(s.points) == 2 && s.points[0].Y == s.points[1].Y &&
			s.bounds().Width() > width-1:
			i := screwLineAt(k, at, printed+sameSize)
			if i < 0 {
				c.fault("slide-line", place{k.Name, name, s.line}, rebuild,
					"a slide line is drawn %s over the opening's lower edge, and no row of the report has one there",
					c.text(at))
				continue
			}
			drawn[i] = true
		case s.kind == "circle", s.kind == "path" && s.closed && len(s.points) != sideCorners:
			if holes++; screwLineAt(k, at, printed+sameSize) < 0 {
				c.fault("cabinet-holes", place{k.Name, name, s.line}, rebuild,
					"a hole %s over the opening's lower edge is on no row's slide line", c.text(at))
			}
		case s.kind == "text":
			drawer, height, _ := strings.Cut(s.text, "  ")
			for i, l := range lines {
				if drawer == l.Name && height == c.text(l.At.MM()) {
					told[i] = true
				} else if drawer == l.Name {
					c.fault("slide-line", place{drawer, name, s.line}, rebuild,
						"the slide line of %s is said to be at %s; the report has %s", drawer, height,
						c.text(l.At.MM()))
				}
			}
		}
	}
	for i, l := range lines { // unless another height was given
		if !drawn[i] || !told[i] && len(c.out.Faults) == 0 {
			c.fault("slide-line", place{l.Name, name, 0}, rebuild,
				"the slide line of %s, %s over the opening's lower edge, is not drawn with its height", l.Name,
				c.text(l.At.MM()))
		}
	}
	if holes != k.Holes {
		c.fault("cabinet-holes", place{k.Name, name, 0}, rebuild, "holes that are drawn: %d; the report has %d", holes, k.Holes)
	}
}

// sideCorners is how many corners the outline of a side has; a hole is a round of many.
const sideCorners = 4

// sideDrawn finds the rectangle that is the side, and compares its height.
func (c *checking) sideDrawn(k record.Cabinet, name string, shapes []svgShape) (bottom, width float64) {
	for _, s := range shapes {
		if s.kind != "path" || !s.closed || len(s.points) != sideCorners {
			continue
		}
		b := s.bounds()
		if math.Abs(b.Height()-k.Opening.Height.MM()) > printed+sameSize {
			c.fault("cabinet-size", place{k.Name, name, s.line}, rebuild, "the side is drawn %s high; the opening is %s",
				c.text(b.Height()), c.text(k.Opening.Height.MM()))
		}
		return b.Max.Y, b.Width()
	}
	c.fault("no-outline", place{k.Name, name, 0}, rebuild, "the picture has no outline of the side")
	return math.Inf(1), 0
}
