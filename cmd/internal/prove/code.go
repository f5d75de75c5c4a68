package prove

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/export/stroke"
	"drawerwright/geom"
)

// labelLetters is how high the letters of a label are, as part of the side of the square on SCALE.
const labelLetters = 0.1

// labeled reads the code of the job, which drawings without notes do not have.
func (s *sheet) labeled() {
	if !s.report.DXF.Notes || len(s.code) == 0 {
		return
	}
	if m := s.coded(s.file, s.scale); m != nil {
		s.fault("code", s.place(s.name, m.line), m.hint, "%s", m.message)
	}
}

// coded looks for the code of the job among the letters on LABEL of a drawing whose unit is scale mm long, wherever
// they stand; nil where it is there, and where a program in between has left all letters out.
func (p *Prover) coded(f *dxfread.File, scale float64) *misfit {
	letters := lettersOn(f)
	if len(letters) == 0 {
		return nil
	}
	drawn := segmentsOf(letters, scale)
	for _, d := range drawn {
		if by := d[0].Sub(p.code[0][0]); p.code[0].at(by, d) && standTogether(p.code, drawn, by) {
			return nil
		}
	}
	return &misfit{letters[0].Line, rebuild, "the label does not say " + p.report.Code + ", the code of this job: " +
		"the drawing is of another job, or of another state of it"}
}

// lettersOn are the strokes on LABEL.
func lettersOn(f *dxfread.File) (list []*dxfread.Entity) {
	for i := range f.Entities {
		if e := &f.Entities[i]; same(e.Layer, "LABEL") && len(e.Vertices) > 0 {
			list = append(list, e)
		}
	}
	return list
}

// codeSegments are what the code of a job is written of on the drawings of a report, in mm from its lower left.
func codeSegments(r record.Kept) (list []segment) {
	side := squareSide
	if r.DXF.Units == "in" {
		side = squareInch
	}
	stroke.Set(r.Code, labelLetters*side, 0, 0, func(letter []stroke.Point, closed bool) {
		for i, q := range letter[1:] {
			list = append(list, segment{geom.Point(letter[i]), geom.Point(q)})
		}
		if closed {
			list = append(list, segment{geom.Point(letter[len(letter)-1]), geom.Point(letter[0])})
		}
	})
	return list
}

// segment is a straight stretch of a letter. Letters are compared by them, so that a program in between may join
// and part their lines.
type segment [2]geom.Point

// left is the lesser x of a segment.
func (s segment) left() float64 { return math.Min(s[0].X, s[1].X) }

// segmentsOf are those of strokes in a drawing whose unit is scale mm long, from left to right.
func segmentsOf(strokes []*dxfread.Entity, scale float64) (list []segment) {
	for _, e := range strokes {
		at := func(i int) geom.Point {
			v := e.Vertices[i%len(e.Vertices)]
			return geom.Point{X: v.X * scale, Y: v.Y * scale}
		}
		last := len(e.Vertices) - 1
		if e.Closed && last > 1 {
			last++
		}
		for i := range last {
			list = append(list, segment{at(i), at(i + 1)})
		}
	}
	slices.SortFunc(list, func(a, b segment) int { return cmp.Compare(a.left(), b.left()) })
	return list
}

// at reports whether a segment, moved, is drawn.
func (s segment) at(by geom.Point, drawn segment) bool {
	a, b := s[0].Add(by), s[1].Add(by)
	return on(a, drawn[0]) && on(b, drawn[1]) || on(a, drawn[1]) && on(b, drawn[0])
}

// on reports whether two places are the same to within a tick. Most are far from each other, which is seen sooner
// than how far.
func on(a, b geom.Point) bool {
	return math.Abs(a.X-b.X) <= tick && math.Abs(a.Y-b.Y) <= tick && a.To(b) <= tick
}

// standTogether reports whether all segments are drawn, moved by the same.
func standTogether(want, drawn []segment, by geom.Point) bool {
	for _, w := range want {
		left := w.left() + by.X
		from, _ := slices.BinarySearchFunc(drawn, left-tick,
			func(d segment, x float64) int { return cmp.Compare(d.left(), x) })
		there := false
		for _, d := range drawn[from:] {
			if there = w.at(by, d); there || d.left() > left+tick {
				break
			}
		}
		if !there {
			return false
		}
	}
	return true
}
