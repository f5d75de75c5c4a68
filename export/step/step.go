// Package step writes panels as exact solids in STEP: ISO 10303-21 text with the schema of
// AP242 (ISO 10303-242), in millimeters.
//
// Faces are planes, and cylinders where a wall is round: designed parts and milled ones
// alike, nothing is faceted. A box is an assembly: each part is there once, as a product of
// its own, and each piece stands in its place under its name. So a part that is changed in
// CAD changes everywhere, and no solid is there twice.
//
// The text depends on what is written alone: it names no date.
package step

import (
	"bufio"
	"fmt"
	"io"

	"drawerwright/geom"
	"drawerwright/geom/brep"
)

// Part is a panel with its name.
type Part struct {
	Name  string
	Panel geom.Panel
}

// Piece is a part, by index, in its place in a box.
type Piece struct {
	Name  string
	Part  int
	Place geom.Placement
}

// schema is the long form of AP242 with its object identifier.
const schema = "AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }"

// WritePart writes a part alone. Errors are those of [brep.Build].
func WritePart(w io.Writer, p Part) error {
	return write(w, p.Name, func(f *file) error {
		_, err := f.part(p)
		return err
	})
}

// WriteBox writes a box of pieces. Errors are those of [brep.Build].
func WriteBox(w io.Writer, name string, parts []Part, pieces []Piece) error {
	return write(w, name, func(f *file) error {
		made := make([]product, len(parts))
		for i, p := range parts {
			var err error
			if made[i], err = f.part(p); err != nil {
				return err
			}
		}
		f.box(name, made, pieces)
		return nil
	})
}

func write(w io.Writer, name string, fill func(*file) error) error {
	out := bufio.NewWriter(w)
	f := &file{out: out, known: map[string]ref{}}
	fmt.Fprintf(out, "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(('solids of panels'),'2;1');\n"+
		"FILE_NAME(%s,'',(''),(''),'drawerwright','drawerwright','');\nFILE_SCHEMA(('%s'));\nENDSEC;\nDATA;\n",
		text(name), schema)
	f.begin()
	if err := fill(f); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	fmt.Fprint(out, "ENDSEC;\nEND-ISO-10303-21;\n")
	return out.Flush()
}

// file is one on its way out. What all of it shares is named once.
type file struct {
	out   *bufio.Writer
	last  ref
	known map[string]ref // points and directions by their text

	application, mechanical, design, units, origin ref
}

// ref is the number of an entity.
type ref int

func (r ref) String() string { return fmt.Sprintf("#%d", int(r)) }

// add writes an entity: its name and what it is made of, of which lengths and names are
// texts already.
func (f *file) add(format string, of ...any) ref {
	f.last++
	fmt.Fprintf(f.out, "%s="+format+";\n", append([]any{f.last}, of...)...)
	return f.last
}

// once writes an entity that may be there already.
func (f *file) once(what string) ref {
	if r, ok := f.known[what]; ok {
		return r
	}
	r := f.add("%s", what)
	f.known[what] = r
	return r
}

// begin writes what all products share.
func (f *file) begin() {
	f.application = f.add("APPLICATION_CONTEXT('managed model based 3d engineering')")
	f.add("APPLICATION_PROTOCOL_DEFINITION('international standard',"+
		"'ap242_managed_model_based_3d_engineering',2014,%s)", f.application)
	f.mechanical = f.add("PRODUCT_CONTEXT('',%s,'mechanical')", f.application)
	f.design = f.add("PRODUCT_DEFINITION_CONTEXT('part definition',%s,'design')", f.application)
	mm := f.add(unitLength)
	rad := f.add(unitAngle)
	sr := f.add(unitSolid)
	near := f.add("UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(%s),%s,'distance_accuracy_value','')",
		number(brep.Same), mm)
	f.units = f.add("(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((%s))"+
		"GLOBAL_UNIT_ASSIGNED_CONTEXT((%s,%s,%s))REPRESENTATION_CONTEXT('',''))", near, mm, rad, sr)
	f.origin = f.axes(geom.Vec3{}, geom.Up, geom.Right)
}

// product is what a part or a box is in a file.
type product struct{ definition, shape ref }

// product writes the entities about a shape.
func (f *file) product(name string, shape ref) product {
	said := text(name)
	p := f.add("PRODUCT(%s,%s,'',(%s))", said, said, f.mechanical)
	f.add("PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(%s))", p)
	formation := f.add("PRODUCT_DEFINITION_FORMATION('','',%s)", p)
	definition := f.add("PRODUCT_DEFINITION('design','',%s,%s)", formation, f.design)
	of := f.add("PRODUCT_DEFINITION_SHAPE('','',%s)", definition)
	f.add("SHAPE_DEFINITION_REPRESENTATION(%s,%s)", of, shape)
	return product{definition, shape}
}

// part writes a part with its solids.
func (f *file) part(p Part) (product, error) {
	bodies, err := brep.Build(p.Panel)
	if err != nil {
		return product{}, err
	}
	items := []ref{f.origin}
	for _, b := range bodies {
		items = append(items, f.solid(p.Name, b))
	}
	shape := f.add("ADVANCED_BREP_SHAPE_REPRESENTATION(%s,%s,%s)", text(p.Name), list(items), f.units)
	return f.product(p.Name, shape), nil
}

// box writes the assembly of pieces.
func (f *file) box(name string, parts []product, pieces []Piece) {
	items := []ref{f.origin}
	for _, p := range pieces {
		items = append(items, f.axes(p.Place.Origin, p.Place.Normal(), p.Place.X))
	}
	box := f.product(name, f.add("SHAPE_REPRESENTATION(%s,%s,%s)", text(name), list(items), f.units))
	for i, p := range pieces {
		part := parts[p.Part]
		use := f.add("NEXT_ASSEMBLY_USAGE_OCCURRENCE('%d',%s,'',%s,%s,$)", i+1, text(p.Name), box.definition,
			part.definition)
		of := f.add("PRODUCT_DEFINITION_SHAPE('','',%s)", use)
		to := f.add("ITEM_DEFINED_TRANSFORMATION('','',%s,%s)", f.origin, items[i+1])
		stands := f.add("(REPRESENTATION_RELATIONSHIP('','',%s,%s)REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION(%s)"+
			"SHAPE_REPRESENTATION_RELATIONSHIP())", part.shape, box.shape, to)
		f.add("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION(%s,%s)", stands, of)
	}
}
