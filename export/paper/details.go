package paper

import (
	"fmt"
	"strings"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Details are what sections of parts show enlarged: each different stretch once, however many parts have it.
type Details struct {
	Number Number
	list   []Detail
	at     map[string]int // in the list, by what is drawn
}

// Detail is a stretch with its name, and the numbers of the parts that have it.
type Detail struct {
	drawing.Drawing
	Name  string
	Scale float64
	Of    []int
}

// List are the details in the order of their names.
func (d *Details) List() []Detail { return d.list }

// detailLetters are those of details, from the end of the alphabet as planes are from its beginning; no I, O and Q,
// which are taken for others, and no L and W, which stand for lengths and widths.
const detailLetters = "ZYXVUTSRPNMKJHGFEDC"

// detailName is the name of the detail of an index: Z, Y, X and so on, then Z2.
func detailName(i int) string {
	name := string(detailLetters[i%len(detailLetters)])
	if again := i / len(detailLetters); again > 0 {
		name += fmt.Sprint(again + 1)
	}
	return name
}

// Sectioned is the part, or parts of such numbers, with the planes that show the most of what is cut into it; what they
// show of the thickness is among the details then.
func (p Part) Sectioned(to *Details, of ...int) Part {
	v := p.onFace(Faces(p.Panel)[0], to.Number)
	v.cutPlanes()
	for i := range v.planes {
		for k := range v.planes[i].details {
			d := &v.planes[i].details[k]
			one := to.add(&v, *d, v.planes[i].along)
			d.name, one.Of = one.Name, append(one.Of, of...)
		}
	}
	p.planes = v.planes
	return p
}

// Plain reports whether nothing of the part is cut in part of its thickness, so that it has no sections.
func (p Part) Plain() bool { return len(p.planes) == 0 }

// add takes a detail of a view, and gives it or the one that is drawn just so.
func (d *Details) add(v *view, s detail, along geom.Axis) *Detail {
	key := v.drawnAs(s, along)
	i, known := d.at[key]
	if !known {
		if d.at == nil {
			d.at = make(map[string]int)
		}
		i = len(d.list)
		d.at[key] = i
		s.name = detailName(i)
		scale := enlarged(v.Thickness)
		d.list = append(d.list, Detail{Drawing: v.detail(s, along, scale), Name: s.name, Scale: scale})
	}
	return &d.list[i]
}

// drawnAs is alike for details that are drawn alike, with the same numbers.
func (v *view) drawnAs(s detail, along geom.Axis) string {
	var key strings.Builder
	fmt.Fprintf(&key, "%d %.2f %s", along, v.Thickness, s.signature())
	places, faces := v.measured(s, along)
	for _, m := range append(places, faces...) {
		key.WriteString(" " + m.Text)
	}
	return key.String()
}
