package dxf

// node is a vertex as it is written.
type node struct {
	x, y  micro
	bulge nano
}

// vertex gives the vertex that a reader will find. Extents are taken of these, so
// that they are the ones of the file and not of the numbers before rounding.
func (n node) vertex() Vertex { return Vertex{n.x.float(), n.y.float(), n.bulge.float()} }

// appendBulge appends group 42, unless the edge is straight.
func (n node) appendBulge(b []byte) []byte {
	if n.bulge == 0 {
		return b
	}
	b = append(b, "42\n"...)
	b = n.bulge.appendTo(b)
	return append(b, '\n')
}

// circle is a circle as it is written.
type circle struct{ x, y, radius micro }

func (c circle) reach() box {
	return box{c.x - c.radius, c.y - c.radius, c.x + c.radius, c.y + c.radius, true}
}

// appendTo appends the thickness, the center and the radius.
func (c circle) appendTo(b []byte, at level) []byte {
	b = at.appendThickness(b)
	b = append(b, "10\n"...)
	b = c.x.appendTo(b)
	b = append(b, "\n20\n"...)
	b = c.y.appendTo(b)
	b = append(b, "\n30\n"...)
	b = at.elevation.appendTo(b)
	b = append(b, "\n40\n"...)
	b = c.radius.appendTo(b)
	return append(b, '\n')
}

// closedFlag is the value of group 70 of a polyline in both versions: 1 closed.
func closedFlag(closed bool) byte {
	if closed {
		return '1'
	}
	return '0'
}
