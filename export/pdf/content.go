package pdf

import (
	"math"
	"slices"
	"strconv"
	"unicode/utf16"
)

// Content is what a page shows, in the order of drawing. The zero value is an empty page. Shades
// are from 0, black, to 1, white.
type Content struct {
	data         []byte
	begun        bool
	stroke, fill float64
	width        float64
	dash         []float64
	font         *Font
	size         float64
}

// Reset makes it an empty page, and keeps its memory.
func (c *Content) Reset() { *c = Content{data: c.data[:0]} }

// begin sets round ends and corners of lines (8.4.3.3 and 8.4.3.4), once.
func (c *Content) begin() {
	if !c.begun {
		c.begun = true
		c.data = append(c.data, "1 J 1 j\n"...)
	}
}

// number appends one with two decimals, which are 0.0035 mm.
func (c *Content) number(v float64) {
	n := int64(math.Round(v * 100))
	if n < 0 {
		c.data, n = append(c.data, '-'), -n
	}
	c.data = strconv.AppendInt(c.data, n/100, 10)
	if n %= 100; n > 0 {
		c.data = append(c.data, '.', byte('0'+n/10))
		if n%10 > 0 {
			c.data = append(c.data, byte('0'+n%10))
		}
	}
	c.data = append(c.data, ' ')
}

// operator appends one with its numbers.
func (c *Content) operator(name string, numbers ...float64) {
	for _, v := range numbers {
		c.number(v)
	}
	c.data = append(append(c.data, name...), '\n')
}

// shade appends an operator with a shade of gray.
func (c *Content) shade(name string, shade float64) {
	c.data = append(strconv.AppendFloat(c.data, shade, 'f', 3, 64), ' ')
	c.operator(name)
}

// Pen sets how lines are drawn from here on. Dash says how long the pen is down and up in turn.
func (c *Content) Pen(width, shade float64, dash []float64) {
	c.begin()
	if shade != c.stroke {
		c.stroke = shade
		c.shade("G", shade)
	}
	if width != c.width {
		c.width = width
		c.operator("w", width)
	}
	if !slices.Equal(dash, c.dash) {
		c.dash = slices.Clone(dash)
		c.data = append(c.data, '[')
		for _, v := range dash {
			c.number(v)
		}
		c.data = append(c.data, "] 0 d\n"...)
	}
}

// Fill sets the shade of areas and letters from here on.
func (c *Content) Fill(shade float64) {
	c.begin()
	if shade != c.fill {
		c.fill = shade
		c.shade("g", shade)
	}
}

// FillColor sets a color of areas in sRGB, 8 bits each, as device color.
func (c *Content) FillColor(rgb [3]uint8) {
	c.begin()
	for _, v := range rgb {
		c.data = append(strconv.AppendFloat(c.data, float64(v)/255, 'f', 3, 64), ' ')
	}
	c.fill = -1 // no shade
	c.operator("rg")
}

// Move begins a chain of lines, Line and Curve go on with it, Close joins its ends.
func (c *Content) Move(x, y float64) { c.operator("m", x, y) }

// Line goes on with a straight line.
func (c *Content) Line(x, y float64) { c.operator("l", x, y) }

// Curve goes on with a cubic, by its two controls and its end, x and y of each.
func (c *Content) Curve(by [6]float64) { c.operator("c", by[:]...) }

// Close joins the ends of a chain.
func (c *Content) Close() { c.operator("h") }

// Rectangle is a whole chain.
func (c *Content) Rectangle(x, y, wide, high float64) { c.operator("re", x, y, wide, high) }

// Paint is what is done with the chains since the last one.
type Paint string

// Areas are what an odd number of chains go round.
const (
	Stroke        Paint = "S"
	Area          Paint = "f*"
	AreaAndStroke Paint = "B*"
)

// Paint paints them.
func (c *Content) Paint(p Paint) { c.operator(string(p)) }

// Text writes a line of letters from a place on, their body so high, turned by quarters to the left
// about that place.
func (c *Content) Text(f *Font, size float64, at [2]float64, quarter int, s string) {
	c.begin()
	if f != c.font || size != c.size {
		c.font, c.size = f, size
		c.data = append(append(append(c.data, '/'), f.name...), ' ')
		c.operator("Tf", size)
	}
	x, y := at[0], at[1]
	if quarter &= 3; quarter != 0 {
		cos, sin := [4]float64{1, 0, -1, 0}[quarter], [4]float64{0, 1, 0, -1}[quarter]
		c.data = append(c.data, "q "...)
		c.operator("cm", cos, sin, -sin, cos, x-float64(cos*x)+float64(sin*y), y-float64(sin*x)-float64(cos*y))
	}
	c.data = append(c.data, "BT "...)
	c.number(x)
	c.number(y)
	c.data = append(c.data, "Td ("...)
	for _, u := range utf16.Encode([]rune(s)) {
		f.use(u)
		c.byte(byte(u >> 8))
		c.byte(byte(u))
	}
	c.data = append(c.data, ") Tj ET\n"...)
	if quarter != 0 {
		c.data = append(c.data, "Q\n"...)
	}
}

// byte appends one of a string (7.3.4.2).
func (c *Content) byte(b byte) {
	switch b {
	case '(', ')', '\\':
		c.data = append(c.data, '\\', b)
	case '\r':
		c.data = append(c.data, '\\', 'r')
	default:
		c.data = append(c.data, b)
	}
}
