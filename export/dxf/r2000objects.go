package dxf

// objects writes the OBJECTS section: the root dictionary, which stands first,
// and what it leads to. Readers of today look for dictionaries that came after
// R2000 too and make those that are missing; an empty one harms no older reader.
func (f *writing) objects() {
	f.rootDictionary()
	f.emptyDictionary(colorDictionary)
	f.emptyDictionary(groupDictionary)
	f.dictionary(layoutDictionary, rootDictionary, []entry{{"Model", modelLayout}, {"Layout1", paperLayout}})
	f.emptyDictionary(materialDictionary)
	f.emptyDictionary(mleaderDictionary)
	f.dictionary(mlineDictionary, rootDictionary, []entry{{"Standard", standardMline}})
	f.emptyDictionary(plotSettingsDictionary)
	f.plotStyles()
	f.emptyDictionary(scaleDictionary)
	f.emptyDictionary(tableStyleDictionary)
	f.emptyDictionary(visualStyleDictionary)
	f.layout("Model", modelLayout, modelRecord)
	f.layout("Layout1", paperLayout, paperRecord)
	f.mlineStyle()
}

// entry is a name in a dictionary and what it leads to.
type entry struct {
	name string
	h    handle
}

func (f *writing) rootDictionary() {
	f.dictionary(rootDictionary, noOwner, []entry{
		{"ACAD_COLOR", colorDictionary},
		{"ACAD_GROUP", groupDictionary},
		{"ACAD_LAYOUT", layoutDictionary},
		{"ACAD_MATERIAL", materialDictionary},
		{"ACAD_MLEADERSTYLE", mleaderDictionary},
		{"ACAD_MLINESTYLE", mlineDictionary},
		{"ACAD_PLOTSETTINGS", plotSettingsDictionary},
		{"ACAD_PLOTSTYLENAME", plotStyleDictionary},
		{"ACAD_SCALELIST", scaleDictionary},
		{"ACAD_TABLESTYLE", tableStyleDictionary},
		{"ACAD_VISUALSTYLE", visualStyleDictionary},
	})
}

// object starts an object. One that has an owner also names it as the one to
// describe changes.
func (f *writing) object(kind string, h, owner handle) {
	f.str(0, kind)
	f.handle(5, h)
	if owner != noOwner {
		f.str(102, "{ACAD_REACTORS")
		f.handle(330, owner)
		f.str(102, "}")
	}
	f.handle(330, owner)
}

func (f *writing) dictionary(h, owner handle, entries []entry) {
	f.object("DICTIONARY", h, owner)
	f.entries(entries)
}

func (f *writing) emptyDictionary(h handle) { f.dictionary(h, rootDictionary, nil) }

func (f *writing) entries(entries []entry) {
	f.str(100, "AcDbDictionary")
	f.int(281, 1) // of two records with one name the first is kept
	for _, e := range entries {
		f.str(3, e.name)
		f.handle(350, e.h)
	}
}

// plotStyles writes the dictionary of plot styles, whose default is the one that
// every layer names, and its place-holder.
func (f *writing) plotStyles() {
	f.object("ACDBDICTIONARYWDFLT", plotStyleDictionary, rootDictionary)
	f.entries([]entry{{"Normal", normalPlotStyle}})
	f.str(100, "AcDbDictionaryWithDefault")
	f.handle(340, normalPlotStyle)
	f.object("ACDBPLACEHOLDER", normalPlotStyle, plotStyleDictionary)
}

// mlineStyle writes the style of double lines that $CMLSTYLE names: two lines
// half a unit to each side.
func (f *writing) mlineStyle() {
	f.object("MLINESTYLE", standardMline, mlineDictionary)
	f.str(100, "AcDbMlineStyle")
	f.str(2, "Standard")
	f.int(70, 0)
	f.str(3, "")
	f.int(62, 256)          // fill: by layer
	f.real(51, 90*microOne) // ends square
	f.real(52, 90*microOne)
	f.int(71, 2)
	for _, offset := range []micro{microOne / 2, -microOne / 2} {
		f.real(49, offset)
		f.int(62, 256)
		f.str(6, "BYLAYER")
	}
}
