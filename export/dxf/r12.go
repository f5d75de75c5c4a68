package dxf

// r12 writes the sections of an R12 file after its comments: tables for the
// readers that want them, no blocks, and entities without handles, which R12
// leaves free. (Layout of tables and entities: values from memory.)
func (f *writing) r12() {
	f.header()
	f.section("TABLES", f.tables12)
	f.section("BLOCKS", func() {})
	f.section("ENTITIES", f.entities12)
}

// tables12 writes the tables. R12 knows the line types BYLAYER and BYBLOCK
// without a record.
func (f *writing) tables12() {
	f.table12("VPORT", 1, f.vport12)
	f.table12("LTYPE", 1, func() {
		f.record12("LTYPE", "CONTINUOUS")
		f.linePattern("Solid line")
	})
	f.table12("LAYER", len(f.rows), func() {
		for _, l := range f.rows {
			f.record12("LAYER", l.name)
			f.int(62, l.color)
			f.str(6, "CONTINUOUS")
		}
	})
	f.table12("STYLE", 1, func() {
		f.record12("STYLE", "STANDARD")
		f.textStyle()
	})
	f.table12("VIEW", 0, func() {})
	f.table12("UCS", 0, func() {})
	f.table12("APPID", 1, func() { f.record12("APPID", "ACAD") })
	f.table12("DIMSTYLE", 1, func() { f.record12("DIMSTYLE", "STANDARD") })
}

func (f *writing) vport12() {
	f.record12("VPORT", "*ACTIVE")
	f.viewport()
}

// table12 writes a table of count records.
func (f *writing) table12(name string, count int, records func()) {
	f.str(0, "TABLE")
	f.str(2, name)
	f.int(70, count)
	records()
	f.str(0, "ENDTAB")
}

// record12 starts a record of a table.
func (f *writing) record12(table, name string) {
	f.str(0, table)
	f.str(2, name)
	f.int(70, 0)
}

// entities12 writes polylines and circles. What does not change within a layer
// is put together once for each.
func (f *writing) entities12() {
	type parts struct{ polyline, vertex, seqend, circle string }
	byLayer := make([]parts, len(f.d.layers))
	for i, l := range f.d.layers {
		byLayer[i] = parts{
			polyline: "0\nPOLYLINE\n8\n" + l.name + "\n66\n1\n10\n0.0\n20\n0.0\n30\n",
			vertex:   "0\nVERTEX\n8\n" + l.name + "\n10\n",
			seqend:   "0\nSEQEND\n8\n" + l.name + "\n",
			circle:   "0\nCIRCLE\n8\n" + l.name + "\n",
		}
	}
	for _, e := range f.d.entities {
		if f.err != nil {
			return
		}
		part, at := &byLayer[e.layer-1], f.d.of(e)
		if e.count == 0 {
			f.buf = append(f.buf, part.circle...)
			f.buf = f.d.circles[e.first].appendTo(f.buf, at)
			f.spill()
			continue
		}
		f.buf = append(f.buf, part.polyline...)
		f.buf = at.elevation.appendTo(f.buf)
		f.buf = append(f.buf, '\n')
		f.buf = at.appendThickness(f.buf)
		f.buf = append(f.buf, "70\n"...)
		f.buf = append(f.buf, closedFlag(e.closed), '\n')
		for _, n := range f.d.nodes[e.first : e.first+e.count] {
			b := append(f.buf, part.vertex...)
			b = n.x.appendTo(b)
			b = append(b, "\n20\n"...)
			b = n.y.appendTo(b)
			b = append(b, "\n30\n"...)
			b = at.elevation.appendTo(b)
			b = append(b, '\n')
			f.buf = n.appendBulge(b)
			f.spill()
		}
		f.buf = append(f.buf, part.seqend...)
		f.spill()
	}
}
