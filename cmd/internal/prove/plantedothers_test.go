package prove_test

import (
	"bytes"
	"encoding/binary"
	"math"
	"strings"

	"drawerwright/cmd/internal/record"
)

const (
	leftSide, rightSide = "cabinet/base.left.dxf", "cabinet/base.right.dxf"
	frontSTL            = "3d/base-1/base-1-box-front.stl"
	drawerGLB           = "3d/base-1/drawer.glb"
)

// slideLine is the n-th line that runs across the side of the cabinet.
func slideLine(d *drawing, n int) entity {
	for _, e := range d.on("LABEL") {
		if x0, y0, x1, y1 := e.box(); x0 == 0 && x1 > 300 && y0 == y1 {
			if n == 0 {
				return e
			}
			n--
		}
	}
	d.t.Fatal("no slide line")
	return entity{}
}

var plantedCabinets = map[string]planted{
	"a slide line 1 higher":             {file: leftSide, code: "slide-line", harm: func(d *drawing) int { e := slideLine(d, 0); e.points(moved(0, 1)); return e.line() }},
	"a slide line lost":                 {file: rightSide, code: "slide-line", harm: func(d *drawing) int { d.remove(slideLine(d, 1)); return 0 }},
	"a hole off its line":               {file: leftSide, code: "cabinet-holes", harm: shift("DRILL", 1, 0, 0.5)},
	"a hole without one across from it": {file: rightSide, code: "cabinet-holes", harm: shift("DRILL", 0, 2, 0)},
	"a hole too few":                    {file: leftSide, code: "cabinet-holes", harm: lost("DRILL", 0)},
	"a hole beside the side":            {file: leftSide, code: "cabinet-holes", harm: shift("DRILL", 0, -400, 0)},
	"a hole of another size": {file: rightSide, code: "cabinet-holes", harm: func(d *drawing) int {
		e := d.on("DRILL")[1]
		e.numbers("40", func(v float64) float64 { return v + 1 })
		return e.line()
	}},
	"the right side as the left": {file: rightSide, code: "cabinet-holes", harm: func(d *drawing) int { return mirroredHoles(d) }},
	"a side too high": {file: leftSide, code: "cabinet-size", harm: func(d *drawing) int {
		e := d.first("BLANK")
		e.points(func(x, y float64) (float64, float64) { return x, y * 1.01 })
		return e.line()
	}},
	"a side's outline lost": {file: leftSide, code: "no-outline", harm: lost("BLANK", 0)},
	"a side in inches":      {file: leftSide, code: "units", harm: func(d *drawing) int { d.unit("1", "Units: inches"); return 0 }},
	"a side larger":         {file: rightSide, code: "scale", harm: grown(1.001)},
	"a side's drawing lost": {file: rightSide, code: "missing-file", gone: true},
	"a row of the report 2 lower": {code: "slide-line", at: leftSide,
		edit: func(r *record.Report) { r.Cabinets[0].Rows[0].SlideLine -= 2 }},
}

// mirroredHoles turns a side's holes over.
func mirroredHoles(d *drawing) int {
	_, _, depth, _ := d.first("BLANK").box()
	for _, e := range d.on("DRILL") {
		e.points(func(x, y float64) (float64, float64) { return depth - x, y })
	}
	return 0
}

// cornersOf changes the coordinates of all corners of a binary STL.
func cornersOf(f func(x, y, z float32) (float32, float32, float32)) func([]byte) ([]byte, int) {
	return func(data []byte) ([]byte, int) {
		data = bytes.Clone(data)
		for i := 84; i+50 <= len(data); i += 50 {
			for k := range 3 {
				at := data[i+12+12*k:]
				n := func(j int) float32 { return math.Float32frombits(binary.LittleEndian.Uint32(at[4*j:])) }
				x, y, z := f(n(0), n(1), n(2))
				for j, v := range [3]float32{x, y, z} {
					binary.LittleEndian.PutUint32(at[4*j:], math.Float32bits(v))
				}
			}
		}
		return data, 0
	}
}

var plantedSolids = map[string]planted{
	"a solid 1 longer": {file: frontSTL, code: "solid-size", bytes: cornersOf(func(x, y, z float32) (float32, float32, float32) {
		if x > 200 {
			x++
		}
		return x, y, z
	})},
	"a solid in meters":   {file: frontSTL, code: "solid-size", bytes: cornersOf(func(x, y, z float32) (float32, float32, float32) { return x / 1000, y / 1000, z / 1000 })},
	"a solid on its edge": {file: frontSTL, code: "solid-size", bytes: cornersOf(func(x, y, z float32) (float32, float32, float32) { return x, z, y })},
	"a solid upside down": {file: frontSTL, code: "solid-face", bytes: cornersOf(func(x, y, z float32) (float32, float32, float32) { return x, y, 12.2 - z })},
	"a solid's groove higher": {file: frontSTL, code: "solid-place", bytes: cornersOf(func(x, y, z float32) (float32, float32, float32) {
		if y > 3 && y < 60 {
			y += 4
		}
		return x, y, z
	})},
	"a solid's groove deeper": {file: frontSTL, code: "solid-face", bytes: cornersOf(func(x, y, z float32) (float32, float32, float32) {
		if z > 2 && z < 12 {
			z -= 0.5
		}
		return x, y, z
	})},
	"a solid with walls lost": {file: frontSTL, code: "solid-open", bytes: func(b []byte) ([]byte, int) {
		b = bytes.Clone(b[:len(b)-50*8])
		binary.LittleEndian.PutUint32(b[80:], uint32((len(b)-84)/50))
		return b, 0
	}},
	"a solid cut short": {file: frontSTL, code: "unreadable",
		bytes: func(b []byte) ([]byte, int) { return b[:len(b)-20], 0 }},
	"a solid lost": {file: frontSTL, code: "missing-file", gone: true},
	"a solid of another thickness": {code: "solid-size", at: frontSTL,
		edit: func(r *record.Report) { r.Parts[1].Thickness += 1 }},
	"a solid to be as designed": {code: "solid-size", at: frontSTL,
		edit: func(r *record.Report) { r.Drawers[0].Preview = "" }},
}

// plantedDesigned are harms to solids that are as designed.
var plantedDesigned = map[string]planted{
	"a solid without a pocket of the report": {code: "solid-face", at: "3d/wall-1/wall-1-side.stl",
		edit: func(r *record.Report) { r.Parts[0].Operations = r.Parts[0].Operations[1:] }},
}

// inScene replaces text in the JSON of a scene by some of the same length.
func inScene(old, new string) func([]byte) ([]byte, int) {
	return func(b []byte) ([]byte, int) { return bytes.Replace(b, []byte(old), []byte(new), 1), 0 }
}

// inMesh changes the numbers of a scene's meshes.
func inMesh(f func(i int, v float32) float32) func([]byte) ([]byte, int) {
	return func(b []byte) ([]byte, int) {
		b = bytes.Clone(b)
		n := int(binary.LittleEndian.Uint32(b[12:]))
		text := string(b[20 : 20+n])
		// The first view of the buffer holds positions: three numbers each.
		_, after, _ := strings.Cut(text, `"count":`)
		count := 0
		for _, c := range after {
			if c < '0' || c > '9' {
				break
			}
			count = count*10 + int(c-'0')
		}
		bin := b[28+n:]
		for i := range 3 * count {
			v := math.Float32frombits(binary.LittleEndian.Uint32(bin[4*i:]))
			binary.LittleEndian.PutUint32(bin[4*i:], math.Float32bits(f(i, v)))
		}
		return b, 0
	}
}

var plantedScenes = map[string]planted{
	"a preview's part larger":       {file: drawerGLB, code: "solid-size", bytes: inMesh(func(_ int, v float32) float32 { return v * 1.01 })},
	"a preview's part turned about": {file: drawerGLB, code: "solid-size", bytes: inMesh(func(i int, v float32) float32 { return v * float32(1+i%3) })},
	"a preview's part mirrored": {file: drawerGLB, code: "solid-face", bytes: inMesh(func(i int, v float32) float32 {
		if i%3 == 2 {
			return -v
		}
		return v
	})},
	"a preview's part of another name": {file: drawerGLB, code: "scene-place", bytes: inScene(`"part":"base-1-box-front"`, `"part":"base-2-box-front"`)},
	"a preview's part unknown":         {file: drawerGLB, code: "scene-count", bytes: inScene(`"part":"base-1-box-front"`, `"part":"base-9-box-front"`)},
	"a preview cut short":              {file: drawerGLB, code: "unreadable", bytes: func(b []byte) ([]byte, int) { return b[:len(b)-4], 0 }},
	"a preview lost":                   {file: drawerGLB, code: "missing-file", gone: true},
	"a preview with a part moved":      {code: "scene-place", at: drawerGLB, edit: func(r *record.Report) { r.Parts[1].Placements[0].Origin[1] += 1 }},
	"a preview with a part turned":     {code: "scene-place", at: drawerGLB, edit: func(r *record.Report) { s := &r.Parts[1].Placements[0]; s.X, s.Y = s.Y, s.X }},
	"a preview with a part too few": {code: "scene-count", at: drawerGLB, edit: func(r *record.Report) {
		r.Parts[0].Placements = append(r.Parts[0].Placements, r.Parts[0].Placements[0])
	}},
}

// row replaces text in a table and gives the line where it stood.
func row(old, new string) func([]byte) ([]byte, int) {
	return func(b []byte) ([]byte, int) {
		at := bytes.Index(b, []byte(old))
		if at < 0 {
			return b, -1
		}
		return bytes.Replace(b, []byte(old), []byte(new), 1), 1 + bytes.Count(b[:at], []byte("\n"))
	}
}

var plantedTables = map[string]planted{
	"quotes that are not closed":     {file: "tables/parts.csv", code: "unreadable", bytes: row("base-1-side,base-1,side,2,550", "\"base-1-side,base-1,side,2,550")},
	"a length of the list":           {file: "tables/parts.csv", code: "table-number", part: "base-1-side", bytes: row("base-1-side,base-1,side,2,550", "base-1-side,base-1,side,2,560")},
	"a quantity of the list":         {file: "tables/parts.csv", code: "table-number", part: "base-1-side", bytes: row("base-1-side,base-1,side,2", "base-1-side,base-1,side,3")},
	"a name of the list":             {file: "tables/parts.csv", code: "table-row", bytes: row("base-1-back,", "base-1-rear,")},
	"a column of the list":           {file: "tables/parts.csv", code: "table-column", bytes: row("thickness", "thick")},
	"the list lost":                  {file: "tables/parts.csv", code: "missing-file", gone: true},
	"a slide line of the table":      {file: "tables/slide-lines.csv", code: "table-number", bytes: row("base,base-2,", "base,base-2,9")},
	"a row of the table of lines":    {file: "tables/slide-lines.csv", code: "table-row", bytes: row("base,base-1,", "base,base-7,")},
	"a place of the layout":          {file: "tables/layout.csv", code: "table-number", bytes: row("part,base-1-side,", "part,base-1-side,1")},
	"a part of the layout":           {file: "tables/layout.csv", code: "table-row", bytes: row("part,base-1-box-front,", "part,base-1-side,")},
	"a part of the layout turned":    {file: "tables/layout.csv", code: "table-row", bytes: row(",yes", ",no")},
	"a report with other quantities": {code: "table-number", at: "tables/parts.csv", edit: func(r *record.Report) { r.Parts[0].Quantity++ }},
}

// Drawings of templates: a stick with openings, as drawn and with its kerf made up for.
const (
	stickDrawn = "templates/stick-wall.as-drawn.dxf"
	stickMade  = "templates/stick-wall.kerf-0-18mm.dxf"
	plateDrawn = "templates/wall-1-side-inside.as-drawn.dxf"
)

var plantedTemplates = map[string]planted{
	"a template's opening at its edge": {file: plateDrawn, code: "template-wall", harm: toEdge("CUTOUT", 5)},
	"a template's opening on another": {file: plateDrawn, code: "template-wall", harm: func(d *drawing) int {
		list := d.on("CUTOUT")
		x0, y0, _, _ := list[4].box()
		a, b, _, _ := list[7].box()
		list[7].points(moved(x0-a+0.2, y0-b+0.2))
		return list[7].line()
	}},
	"a template's opening beside it":  {file: plateDrawn, code: "template-wall", harm: shift("CUTOUT", 3, -2000, 0)},
	"a template's opening moved":      {file: stickDrawn, code: "template-kerf", harm: shift("CUTOUT", 1, 0.4, 0)},
	"a template's opening open":       {file: plateDrawn, code: "open", harm: opened("CUTOUT", 6)},
	"a template's outline shorter":    {file: stickDrawn, code: "template-size", harm: boxed("PROFILE", 0, 0, 0, -1, 0)},
	"a template's outline lost":       {file: stickDrawn, code: "no-outline", harm: lost("PROFILE", 0)},
	"a template larger":               {file: stickDrawn, code: "scale", harm: grown(1.001)},
	"a template in inches":            {file: stickDrawn, code: "units", harm: func(d *drawing) int { d.unit("1", "Units: inches"); return 0 }},
	"a template lost":                 {file: stickDrawn, code: "missing-file", gone: true},
	"a kerf's outline as drawn":       {file: stickMade, code: "template-kerf", harm: boxed("PROFILE", 0, 0.09, 0.09, -0.09, -0.09)},
	"a kerf's opening moved":          {file: stickMade, code: "template-kerf", harm: shift("CUTOUT", 0, 0.3, 0)},
	"a kerf's opening lost":           {file: stickMade, code: "template-kerf", harm: lost("CUTOUT", 0)},
	"a kerf's opening twice as small": {file: stickMade, code: "template-kerf", harm: boxed("CUTOUT", 0, 0.1, 0.1, -0.1, -0.1)},
	"a kerf of the report":            {code: "template-kerf", at: stickMade, edit: func(r *record.Report) { r.Templates[stickOf(r)].Kerf = 0.3 }},
	"a template's size of the report": {code: "template-size", at: stickDrawn, edit: func(r *record.Report) { r.Templates[stickOf(r)].Size[0] += 1 }},
	"a kerf's drawing cut short":      {file: stickMade, code: "unreadable", bytes: func(b []byte) ([]byte, int) { return b[:len(b)/3], 0 }},
}

func stickOf(r *record.Report) int {
	for i, t := range r.Templates {
		if t.Name == "stick-wall" {
			return i
		}
	}
	return 0
}

// toEdge moves a line of a template to half a millimeter from the lower edge.
func toEdge(layer string, n int) func(*drawing) int {
	return func(d *drawing) int {
		e := d.on(layer)[n]
		_, low, _, _ := d.first("PROFILE").box()
		_, y, _, _ := e.box()
		e.points(moved(0, low-y+0.5))
		return e.line()
	}
}
