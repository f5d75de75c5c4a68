package prove

import (
	"slices"

	"drawerwright/export/dxf/dxfread"
	"drawerwright/export/stroke"
	"drawerwright/geom"
)

// labelLetters is how high the letters of a label are, as part of the side of the square on SCALE.
const labelLetters = 0.1

// labeled reads the code of the job, which drawings without notes do not have.
func (s *sheet) labeled() {
	if !s.report.DXF.Notes || s.report.Code == "" {
		return
	}
	if m := s.coded(s.file, s.scale); m != nil {
		s.fault("code", s.place(s.name, m.line), m.hint, "%s", m.message)
	}
}

// coded looks for the code of the job among the letters on LABEL of a drawing whose unit is scale mm long, wherever
// they stand; nil where it is there, and where a program in between has left all letters out.
func (p *Prover) coded(f *dxfread.File, scale float64) *misfit {
	side := squareSide
	if p.report.DXF.Units == "in" {
		side = squareInch
	}
	var drawn []segment
	first := 0
	for _, e := range f.Entities {
		if !same(e.Layer, "LABEL") || len(e.Vertices) == 0 {
			continue
		}
		if first == 0 {
			first = e.Line
		}
		line := make([]geom.Point, len(e.Vertices))
		for i, v := range e.Vertices {
			line[i] = geom.Point{X: v.X * scale, Y: v.Y * scale}
		}
		drawn = append(drawn, segmentsOf(line, e.Closed)...)
	}
	var want []segment
	stroke.Set(p.report.Code, labelLetters*side, 0, 0, func(letter []stroke.Point, closed bool) {
		line := make([]geom.Point, len(letter))
		for i, q := range letter {
			line[i] = geom.Point{X: q.X, Y: q.Y}
		}
		want = append(want, segmentsOf(line, closed)...)
	})
	if len(drawn) == 0 {
		return nil
	}
	for _, d := range drawn {
		if by := d[0].Sub(want[0][0]); want[0].at(by, d) && standTogether(want, drawn, by) {
			return nil
		}
	}
	return &misfit{first, rebuild, "the label does not say " + p.report.Code + ", the code of this job: " +
		"the drawing is of another job, or of another state of it"}
}

// segment is a straight stretch of a letter. Letters are compared by them, so that a program in between may join
// and part their lines.
type segment [2]geom.Point

func segmentsOf(line []geom.Point, closed bool) (list []segment) {
	for i := 1; i < len(line); i++ {
		list = append(list, segment{line[i-1], line[i]})
	}
	if closed && len(line) > 2 {
		list = append(list, segment{line[len(line)-1], line[0]})
	}
	return list
}

// at reports whether a segment, moved, is drawn.
func (s segment) at(by geom.Point, drawn segment) bool {
	a, b := s[0].Add(by), s[1].Add(by)
	return a.To(drawn[0]) <= tick && b.To(drawn[1]) <= tick || a.To(drawn[1]) <= tick && b.To(drawn[0]) <= tick
}

// standTogether reports whether all segments are drawn, moved by the same.
func standTogether(want, drawn []segment, by geom.Point) bool {
	for _, w := range want {
		if !slices.ContainsFunc(drawn, func(d segment) bool { return w.at(by, d) }) {
			return false
		}
	}
	return true
}
