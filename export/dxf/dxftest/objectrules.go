package dxftest

// objectClasses are the subclass markers of the objects that this project
// writes, each the one of its dictionary's entries or of the thing itself.
var objectClasses = map[string][]string{
	"DICTIONARY":          {"AcDbDictionary"},
	"ACDBDICTIONARYWDFLT": {"AcDbDictionary", "AcDbDictionaryWithDefault"},
	"ACDBPLACEHOLDER":     {},
	"LAYOUT":              {"AcDbPlotSettings", "AcDbLayout"},
	"MLINESTYLE":          {"AcDbMlineStyle"},
}

// rootEntries must be in the root dictionary of an R2000 file, or readers make
// them, each with the least that must be in it.
var rootEntries = []struct {
	name string
	has  []string
}{
	{"ACAD_GROUP", nil},
	{"ACAD_LAYOUT", []string{"Model"}},
	{"ACAD_MLINESTYLE", []string{"Standard"}},
	{"ACAD_PLOTSETTINGS", nil},
	{"ACAD_PLOTSTYLENAME", []string{"Normal"}},
}

// dictionaries checks the root dictionary and the kinds of object.
func (c *checker) dictionaries(byHandle map[uint64]object) {
	objects := find(c.sections, "OBJECTS").records
	for _, r := range objects {
		want, ok := objectClasses[r.kind]
		if !ok {
			c.fault(RuleKind, r.line, "%s", r.kind)
			continue
		}
		c.markers(r, want...)
		names := make(map[string]bool)
		for _, e := range entriesOf(r) {
			if names[e.name] {
				c.fault(RuleDictionary, r.line, "%q stands twice", e.name)
			}
			names[e.name] = true
			self, _ := r.first(5)
			if owner, _ := byHandle[e.handle].owner(); owner.handle() != self.handle() {
				c.fault(RuleOwner, r.line, "%q is in dictionary %s and is owned by %q", e.name, self.Value, owner.Value)
			}
		}
	}
	if len(objects) == 0 || objects[0].kind != "DICTIONARY" {
		c.fault(RuleDictionary, 0, "the OBJECTS section does not begin with the root dictionary")
		return
	}
	for _, want := range rootEntries {
		h, ok := lookUp(objects[0], want.name)
		if !ok {
			c.fault(RuleDictionary, objects[0].line, "the root dictionary has no %s", want.name)
			continue
		}
		for _, name := range want.has {
			if _, ok := lookUp(byHandle[h].record, name); !ok {
				c.fault(RuleDictionary, byHandle[h].line, "%s has no %q", want.name, name)
			}
		}
	}
}

// dictEntry is a name in a dictionary and the handle that it leads to.
type dictEntry struct {
	name   string
	handle uint64
}

func entriesOf(r record) []dictEntry {
	if r.kind != "DICTIONARY" && r.kind != "ACDBDICTIONARYWDFLT" {
		return nil
	}
	var all []dictEntry
	name := ""
	for _, t := range r.tags {
		switch t.Code {
		case 3:
			name = t.Value
		case 350, 360:
			all = append(all, dictEntry{name, t.handle()})
		}
	}
	return all
}

func lookUp(r record, name string) (uint64, bool) {
	for _, e := range entriesOf(r) {
		if e.name == name {
			return e.handle, true
		}
	}
	return 0, false
}

// layouts checks that each layout and its block record lead to each other, that
// each block record has its block, and that one of the layouts is of paper.
func (c *checker) layouts(byHandle map[uint64]object) {
	paper := false
	for _, r := range c.tables["BLOCK_RECORD"].records {
		self, _ := r.first(5)
		t, _ := r.first(340)
		layout := byHandle[t.handle()]
		back := Tag{}
		for _, b := range layout.tags {
			if b.Code == 330 {
				back = b // the last is the one of AcDbLayout
			}
		}
		if layout.kind != "LAYOUT" || back.handle() != self.handle() {
			c.fault(RulePointer, r.line, "block record %s and its layout", r.text(2))
		}
		paper = paper || layout.kind == "LAYOUT" && layout.text(1) == "" && key(r.text(2)) != "*MODEL_SPACE"
		blocks := 0
		for _, b := range find(c.sections, "BLOCKS").records {
			if b.kind == "BLOCK" && b.text(2) == r.text(2) {
				blocks++
			}
		}
		if blocks != 1 {
			c.fault(RuleRecord, r.line, "block record %s has %d blocks", r.text(2), blocks)
		}
	}
	if !paper {
		c.fault(RuleDictionary, 0, "no layout of paper")
	}
}
