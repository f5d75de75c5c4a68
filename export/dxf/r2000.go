package dxf

import "strconv"

// r2000 writes the sections of an R2000 file after its comments, in the order
// that the format asks for.
func (f *writing) r2000() {
	f.header()
	f.section("CLASSES", f.classes)
	f.section("TABLES", f.tables2000)
	f.section("BLOCKS", f.blocks)
	f.section("ENTITIES", f.entities2000)
	f.section("OBJECTS", f.objects)
}

// classes names the kinds of object in the file that are not built into every
// reader.
func (f *writing) classes() {
	for _, c := range [][2]string{
		{"ACDBDICTIONARYWDFLT", "AcDbDictionaryWithDefault"},
		{"ACDBPLACEHOLDER", "AcDbPlaceHolder"},
		{"LAYOUT", "AcDbLayout"},
	} {
		f.str(0, "CLASS")
		f.str(1, c[0])
		f.str(2, c[1])
		f.str(3, "ObjectDBX Classes")
		f.int(90, 0)
		f.int(280, 0)
		f.int(281, 0)
	}
}

// blocks writes the two blocks that stand for the model and the sheet of paper.
// What is drawn in the model stands in the ENTITIES section.
func (f *writing) blocks() {
	f.block("*Model_Space", modelBlock, modelBlockEnd, modelRecord)
	f.block("*Paper_Space", paperBlock, paperBlockEnd, paperRecord)
}

func (f *writing) block(name string, begin, end, record handle) {
	part := func(kind, class string, h handle) {
		f.str(0, kind)
		f.handle(5, h)
		f.handle(330, record)
		f.str(100, "AcDbEntity")
		if record == paperRecord {
			f.int(67, 1) // in the paper
		}
		f.str(8, "0")
		f.str(100, class)
	}
	part("BLOCK", "AcDbBlockBegin", begin)
	f.str(2, name)
	f.int(70, 0)
	f.point3(10, 0, 0, 0)
	f.str(3, name)
	f.str(1, "")
	part("ENDBLK", "AcDbBlockEnd", end)
}

// entities2000 writes polylines and circles. What does not change within a layer
// is put together once for each.
func (f *writing) entities2000() {
	type parts struct{ polyline, circle string }
	byLayer := make([]parts, len(f.d.layers))
	for i, l := range f.d.layers {
		head := "\n330\n" + string(appendHandle(nil, modelRecord)) + "\n100\nAcDbEntity\n8\n" + l.name + "\n100\n"
		byLayer[i] = parts{
			polyline: head + "AcDbPolyline\n90\n",
			circle:   head + "AcDbCircle\n",
		}
	}
	for i, e := range f.d.entities {
		if f.err != nil {
			return
		}
		part, at := &byLayer[e.layer-1], f.d.of(e)
		if e.count == 0 {
			f.buf = append(f.buf, "0\nCIRCLE\n5\n"...)
			f.buf = appendHandle(f.buf, f.entityHandle(i))
			f.buf = append(f.buf, part.circle...)
			f.buf = f.d.circles[e.first].appendTo(f.buf, at)
			f.spill()
			continue
		}
		b := append(f.buf, "0\nLWPOLYLINE\n5\n"...)
		b = appendHandle(b, f.entityHandle(i))
		b = append(b, part.polyline...)
		b = strconv.AppendInt(b, int64(e.count), 10)
		b = append(b, "\n70\n"...)
		b = append(b, closedFlag(e.closed))
		b = append(b, "\n43\n0.0\n"...)
		if at.elevation != 0 {
			b = append(b, "38\n"...)
			b = at.elevation.appendTo(b)
			b = append(b, '\n')
		}
		f.buf = at.appendThickness(b)
		for _, n := range f.d.nodes[e.first : e.first+e.count] {
			b := append(f.buf, "10\n"...)
			b = n.x.appendTo(b)
			b = append(b, "\n20\n"...)
			b = n.y.appendTo(b)
			b = append(b, '\n')
			f.buf = n.appendBulge(b)
			f.spill()
		}
	}
}
