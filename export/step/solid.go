package step

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/brep"
)

// solid writes a body as a boundary of faces.
func (f *file) solid(name string, s brep.Solid) ref {
	corners := make([]ref, len(s.Corners))
	for i, c := range s.Corners {
		corners[i] = f.add("VERTEX_POINT('',%s)", f.point(c))
	}
	edges := make([]ref, len(s.Edges))
	for i, e := range s.Edges {
		edges[i] = f.add("EDGE_CURVE('',%s,%s,%s,.T.)", corners[e.From], corners[e.To], f.curve(s, e))
	}
	var faces []ref
	for _, face := range s.Faces {
		var bounds []ref
		for i, loop := range face.Loops {
			var uses []ref
			for _, u := range loop {
				uses = append(uses, f.add("ORIENTED_EDGE('',*,*,%s,%s)", edges[u.Edge], logical(!u.Backward)))
			}
			bound := "FACE_BOUND"
			if i == 0 {
				bound = "FACE_OUTER_BOUND"
			}
			bounds = append(bounds, f.add("%s('',%s,.T.)", bound, f.add("EDGE_LOOP('',%s)", list(uses))))
		}
		faces = append(faces, f.add("ADVANCED_FACE('',%s,%s,%s)", list(bounds), f.surface(face), logical(!face.Hollow)))
	}
	return f.add("MANIFOLD_SOLID_BREP(%s,%s)", text(name), f.add("CLOSED_SHELL('',%s)", list(faces)))
}

func (f *file) curve(s brep.Solid, e brep.Edge) ref {
	if e.Radius > 0 {
		return f.add("CIRCLE('',%s,%s)", f.axes(e.Center, geom.Up, geom.Right), number(e.Radius))
	}
	from := s.Corners[e.From]
	way := s.Corners[e.To].Sub(from)
	return f.add("LINE('',%s,%s)", f.point(from), f.add("VECTOR('',%s,1.)", f.direction(way.Scale(1/way.Norm()))))
}

func (f *file) surface(face brep.Face) ref {
	if face.Radius > 0 {
		return f.add("CYLINDRICAL_SURFACE('',%s,%s)", f.axes(face.At, geom.Up, geom.Right), number(face.Radius))
	}
	across := geom.Right
	if face.Normal.Z == 0 {
		across = geom.Up.Cross(face.Normal)
	}
	return f.add("PLANE('',%s)", f.axes(face.At, face.Normal, across))
}

// axes are a place with the directions of z and x there.
func (f *file) axes(at, z, x geom.Vec3) ref {
	return f.add("AXIS2_PLACEMENT_3D('',%s,%s,%s)", f.point(at), f.direction(z), f.direction(x))
}

func (f *file) point(p geom.Vec3) ref {
	return f.once("CARTESIAN_POINT(''," + triple(p) + ")")
}

func (f *file) direction(d geom.Vec3) ref {
	return f.once("DIRECTION(''," + triple(d) + ")")
}

func triple(v geom.Vec3) string {
	return "(" + number(v.X) + "," + number(v.Y) + "," + number(v.Z) + ")"
}

// number is a real one, in steps that every processor rounds alike.
func number(v float64) string {
	const steps = 1e10
	s := strconv.FormatFloat(math.Round(v*steps)/steps+0, 'f', -1, 64) // no negative zeros
	if !strings.Contains(s, ".") {
		s += "."
	}
	return s
}

func logical(yes bool) string {
	if yes {
		return ".T."
	}
	return ".F."
}

func list(of []ref) string {
	said := make([]string, len(of))
	for i, r := range of {
		said[i] = r.String()
	}
	return "(" + strings.Join(said, ",") + ")"
}

// text is a string of Part 21: quotes and backslashes are doubled, and what ASCII does not
// have is written in hexadecimal digits.
func text(s string) string {
	var out strings.Builder
	out.WriteByte('\'')
	for _, r := range s {
		switch {
		case r == '\'' || r == '\\':
			out.WriteRune(r)
			out.WriteRune(r)
		case r >= ' ' && r <= '~':
			out.WriteRune(r)
		case r <= 0xffff:
			fmt.Fprintf(&out, `\X2\%04X\X0\`, r)
		default:
			fmt.Fprintf(&out, `\X4\%08X\X0\`, r)
		}
	}
	out.WriteByte('\'')
	return out.String()
}
