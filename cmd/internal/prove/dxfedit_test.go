package prove_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// tag is a group code and its value, both as they are written.
type tag struct{ code, value string }

// drawing is a DXF file by its tags, so that a test can do to it what other
// programs and people do.
type drawing struct {
	t    testing.TB
	tags []tag
}

// drawn takes a drawing apart.
func drawn(t testing.TB, data []byte) *drawing {
	t.Helper()
	lines := strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")
	if len(lines)%2 != 0 {
		t.Fatalf("%d lines", len(lines))
	}
	d := &drawing{t: t}
	for i := 0; i < len(lines); i += 2 {
		d.tags = append(d.tags, tag{strings.TrimSpace(lines[i]), strings.TrimSuffix(lines[i+1], "\r")})
	}
	return d
}

// data puts it together again.
func (d *drawing) data() []byte {
	var b strings.Builder
	for _, t := range d.tags {
		fmt.Fprintf(&b, "%s\n%s\n", t.code, t.value)
	}
	return []byte(b.String())
}

// entity is a stretch of tags: an entity with all records that belong to it.
type entity struct {
	kind, layer string
	from, to    int
	d           *drawing
}

// line is where the entity begins in the file, counted from 1.
func (e entity) line() int { return 2*e.from + 1 }

// entities lists those of the ENTITIES section.
func (d *drawing) entities() []entity {
	d.t.Helper()
	start := slices.Index(d.tags, tag{"2", "ENTITIES"})
	if start < 0 {
		d.t.Fatal("no ENTITIES")
	}
	var list []entity
	for i := start + 1; i < len(d.tags); i++ {
		switch t := d.tags[i]; {
		case t.code == "0" && t.value == "ENDSEC":
			return list
		case t.code == "0" && (t.value == "VERTEX" || t.value == "SEQEND"):
			list[len(list)-1].to = i + 1
		case t.code == "0":
			list = append(list, entity{kind: t.value, from: i, to: i + 1, d: d})
		default:
			e := &list[len(list)-1]
			if e.to = i + 1; t.code == "8" && e.layer == "" {
				e.layer = t.value
			}
		}
	}
	d.t.Fatal("ENTITIES does not end")
	return nil
}

// on gives the entities of layers whose names begin so; there is at least one.
func (d *drawing) on(layer string) []entity {
	d.t.Helper()
	list := slices.DeleteFunc(d.entities(), func(e entity) bool { return !strings.HasPrefix(e.layer, layer) })
	if len(list) == 0 {
		d.t.Fatalf("nothing on %s", layer)
	}
	return list
}

// first is the first entity of a layer.
func (d *drawing) first(layer string) entity {
	d.t.Helper()
	return d.on(layer)[0]
}

func (d *drawing) number(i int) float64 {
	d.t.Helper()
	v, err := strconv.ParseFloat(d.tags[i].value, 64)
	if err != nil {
		d.t.Fatal(err)
	}
	return v
}

func (d *drawing) set(i int, v float64) {
	d.tags[i].value = strconv.FormatFloat(v, 'f', 6, 64)
}

// points calls f for each corner or center of the entity and writes what it gives.
func (e entity) points(f func(x, y float64) (float64, float64)) {
	d := e.d
	header := e.kind == "POLYLINE" // whose own 10 and 20 are no place
	for i := e.from + 1; i < e.to; i++ {
		switch {
		case d.tags[i].code == "0":
			header = false
		case d.tags[i].code == "10" && !header:
			x, y := f(d.number(i), d.number(i+1))
			d.set(i, x)
			d.set(i+1, y)
		}
	}
}

// numbers changes the numbers of a group code.
func (e entity) numbers(code string, f func(float64) float64) {
	for i := e.from + 1; i < e.to; i++ {
		if e.d.tags[i].code == code {
			e.d.set(i, f(e.d.number(i)))
		}
	}
}

// put sets the values of a group code; there is at least one.
func (e entity) put(code, value string) {
	e.d.t.Helper()
	found := false
	for i := e.from + 1; i < e.to; i++ {
		if e.d.tags[i].code == code {
			e.d.tags[i].value, found = value, true
		}
	}
	if !found {
		e.d.t.Fatalf("no group %s", code)
	}
}

// all changes every corner and center of the drawing, as other programs move,
// scale and mirror; bulges turn round where f mirrors.
func (d *drawing) all(mirrored bool, radius float64, f func(x, y float64) (float64, float64)) {
	for _, e := range d.entities() {
		e.points(f)
		e.numbers("40", func(v float64) float64 { return v * radius })
		if mirrored {
			e.numbers("42", func(v float64) float64 { return -v })
		}
	}
}

// tagsOf are a copy of an entity's own.
func (d *drawing) tagsOf(e entity) []tag { return slices.Clone(d.tags[e.from:e.to]) }

// remove takes an entity out.
func (d *drawing) remove(e entity) { d.tags = slices.Delete(d.tags, e.from, e.to) }

// insert puts an entity's tags in before another and gives the line that it begins
// on. Handles of R2000 are left as they are; nothing here reads them.
func (d *drawing) insert(before entity, tags []tag) (line int) {
	d.tags = slices.Insert(d.tags, before.from, tags...)
	return before.line()
}

// rename gives entities and layer table another name of a layer.
func (d *drawing) rename(from, to string) {
	for i, t := range d.tags {
		if t.value == from && (t.code == "8" || t.code == "2") {
			d.tags[i].value = to
		}
	}
}

// box is the extent of an entity's corners.
func (e entity) box() (x0, y0, x1, y1 float64) {
	first := true
	e.points(func(x, y float64) (float64, float64) {
		if first {
			x0, y0, x1, y1, first = x, y, x, y, false
		}
		x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
		return x, y
	})
	return x0, y0, x1, y1
}

// mark is the triangle in the panel's first corner.
func (d *drawing) mark() entity {
	d.t.Helper()
	for _, e := range d.on("BLANK") {
		corners := 0
		e.points(func(x, y float64) (float64, float64) { corners++; return x, y })
		if corners == 3 {
			return e
		}
	}
	d.t.Fatal("no mark")
	return entity{}
}

// holes are the two to register by, or the pins in them.
func (d *drawing) holes() []entity {
	d.t.Helper()
	list := slices.DeleteFunc(d.entities(), func(e entity) bool { return e.kind != "CIRCLE" })
	if len(list) != 2 {
		d.t.Fatalf("%d circles", len(list))
	}
	return list
}

// open takes the flag off that closes a polyline.
func (e entity) open() {
	for i := e.from + 1; i < e.to; i++ {
		if e.d.tags[i].code == "70" {
			e.d.tags[i].value = "0"
			return
		}
	}
	e.d.t.Fatal("no flags")
}

// raise lifts a polyline to a height.
func (e entity) raise(z string) {
	if e.kind == "POLYLINE" {
		e.put("30", z)
		return
	}
	at := e.from + slices.IndexFunc(e.d.tags[e.from:e.to], func(t tag) bool { return t.code == "43" })
	e.d.tags = slices.Insert(e.d.tags, at, tag{"38", z})
}

// shorten leaves the first corners of a polyline.
func (e entity) shorten(n int) {
	d, seen, header := e.d, 0, e.kind == "POLYLINE"
	for i := e.from + 1; i < e.to; i++ {
		switch {
		case d.tags[i] == tag{"0", "SEQEND"}:
			return
		case d.tags[i].code == "0":
			header = false
			if seen++; seen > n {
				end := i + slices.Index(d.tags[i:], tag{"0", "SEQEND"})
				d.tags = slices.Delete(d.tags, i, end)
				return
			}
		case d.tags[i].code == "90":
			d.tags[i].value = strconv.Itoa(n)
		case d.tags[i].code == "10" && !header && e.kind == "LWPOLYLINE":
			if seen++; seen > n {
				d.tags = slices.Delete(d.tags, i, e.to)
				return
			}
		}
	}
}

// unit changes how the drawing says its unit: in a header's field, or, where the
// format has none, in a comment.
func (d *drawing) unit(field, comment string) {
	done := false
	for i, t := range d.tags {
		switch {
		case t == tag{"9", "$INSUNITS"}:
			d.tags[i+1].value, done = field, true
		case t.code == "999" && strings.HasPrefix(t.value, "Units:"):
			d.tags[i].value, done = comment, true
		}
	}
	if !done {
		d.t.Fatal("no unit")
	}
}

// reshape gives a closed polyline other corners; all sides become straight.
func (d *drawing) reshape(e entity, corners [][2]float64) {
	d.t.Helper()
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', 6, 64) }
	tags := []tag{{"0", e.kind}, {"8", e.layer}}
	switch e.kind {
	case "LWPOLYLINE":
		tags = append(tags, tag{"90", strconv.Itoa(len(corners))}, tag{"70", "1"})
		for _, c := range corners {
			tags = append(tags, tag{"10", number(c[0])}, tag{"20", number(c[1])})
		}
	case "POLYLINE":
		tags = append(tags, tag{"66", "1"}, tag{"70", "1"}, tag{"10", "0.0"}, tag{"20", "0.0"}, tag{"30", "0.0"})
		for _, c := range corners {
			tags = append(tags, tag{"0", "VERTEX"}, tag{"8", e.layer}, tag{"10", number(c[0])}, tag{"20", number(c[1])}, tag{"30", "0.0"})
		}
		tags = append(tags, tag{"0", "SEQEND"}, tag{"8", e.layer})
	default:
		d.t.Fatalf("a %s has no corners", e.kind)
	}
	d.tags = slices.Replace(d.tags, e.from, e.to, tags...)
}
