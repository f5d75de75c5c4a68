package dxf

// The handles of an R2000 file: those of the frame that every file has, in the
// order below, then the layers', then the entities'. So each is known before
// anything is written, and the same drawing has the same ones.
const (
	noOwner handle = iota

	vportTable
	ltypeTable
	layerTable
	styleTable
	viewTable
	ucsTable
	appidTable
	dimstyleTable
	blockTable

	activeVport
	byBlockLtype
	byLayerLtype
	continuousLtype
	standardStyle
	acadAppid
	standardDimstyle
	modelRecord
	paperRecord

	modelBlock
	modelBlockEnd
	paperBlock
	paperBlockEnd

	rootDictionary
	colorDictionary
	groupDictionary
	layoutDictionary
	materialDictionary
	mleaderDictionary
	mlineDictionary
	plotSettingsDictionary
	plotStyleDictionary
	scaleDictionary
	tableStyleDictionary
	visualStyleDictionary
	modelLayout
	paperLayout
	standardMline
	normalPlotStyle

	firstLayer
)

// layerHandle gives the handle of a row of the layer table.
func (f *writing) layerHandle(row int) handle { return firstLayer + handle(row) }

// entityHandle gives the handle of an entity; the one after the last is the
// file's seed, from which a reader goes on counting.
func (f *writing) entityHandle(i int) handle { return f.layerHandle(len(f.rows) + i) }
