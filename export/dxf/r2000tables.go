package dxf

// tables2000 writes the nine tables of an R2000 file. Each record is owned by
// its table, each table by none.
func (f *writing) tables2000() {
	f.table("VPORT", vportTable, 1, f.vport)
	f.table("LTYPE", ltypeTable, 3, f.ltypes)
	f.table("LAYER", layerTable, len(f.rows), f.layerRecords)
	f.table("STYLE", styleTable, 1, f.style)
	f.table("VIEW", viewTable, 0, func() {})
	f.table("UCS", ucsTable, 0, func() {})
	f.table("APPID", appidTable, 1, func() {
		f.record("APPID", "AcDbRegAppTableRecord", "ACAD", acadAppid, appidTable)
	})
	f.table("DIMSTYLE", dimstyleTable, 1, f.dimstyle)
	f.table("BLOCK_RECORD", blockTable, 2, f.blockRecords)
}

// table writes a table of count records.
func (f *writing) table(name string, h handle, count int, records func()) {
	f.str(0, "TABLE")
	f.str(2, name)
	f.handle(5, h)
	f.handle(330, noOwner)
	f.str(100, "AcDbSymbolTable")
	f.int(70, count)
	records()
	f.str(0, "ENDTAB")
}

// record starts a record. The handle of a dimension style alone stands in group
// 105, since group 5 had another meaning there. A block record has no flags.
func (f *writing) record(table, class, name string, h, owner handle) {
	f.str(0, table)
	if table == "DIMSTYLE" {
		f.handle(105, h)
	} else {
		f.handle(5, h)
	}
	f.handle(330, owner)
	f.str(100, "AcDbSymbolTableRecord")
	f.str(100, class)
	f.str(2, name)
	if table != "BLOCK_RECORD" {
		f.int(70, 0)
	}
}

func (f *writing) vport() {
	f.record("VPORT", "AcDbViewportTableRecord", "*Active", activeVport, vportTable)
	f.viewport()
}

func (f *writing) ltypes() {
	for _, t := range []struct {
		name, description string
		h                 handle
	}{
		{"ByBlock", "", byBlockLtype},
		{"ByLayer", "", byLayerLtype},
		{"Continuous", "Solid line", continuousLtype},
	} {
		f.record("LTYPE", "AcDbLinetypeTableRecord", t.name, t.h, ltypeTable)
		f.linePattern(t.description)
	}
}

func (f *writing) layerRecords() {
	for i, l := range f.rows {
		f.record("LAYER", "AcDbLayerTableRecord", l.name, f.layerHandle(i), layerTable)
		f.int(62, l.color)
		f.str(6, "Continuous")
		f.int(370, -3) // line weight: the default
		f.handle(390, normalPlotStyle)
	}
}

func (f *writing) style() {
	f.record("STYLE", "AcDbTextStyleTableRecord", "Standard", standardStyle, styleTable)
	f.textStyle()
}

// dimstyle writes the one dimension style, with the format's defaults for all
// that it leaves out.
func (f *writing) dimstyle() {
	f.str(100, "AcDbDimStyleTable")
	f.int(71, 0)
	f.record("DIMSTYLE", "AcDbDimStyleTableRecord", "Standard", standardDimstyle, dimstyleTable)
	f.handle(340, standardStyle)
}

func (f *writing) blockRecords() {
	f.record("BLOCK_RECORD", "AcDbBlockTableRecord", "*Model_Space", modelRecord, blockTable)
	f.handle(340, modelLayout)
	f.record("BLOCK_RECORD", "AcDbBlockTableRecord", "*Paper_Space", paperRecord, blockTable)
	f.handle(340, paperLayout)
}
