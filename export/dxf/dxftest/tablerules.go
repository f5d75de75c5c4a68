package dxftest

// requiredRecords are the records without which a reader turns a file away, by
// table. R12 knows BYLAYER and BYBLOCK without a record.
var requiredRecords = []struct {
	table, name string
	r12         bool
}{
	{"VPORT", "*ACTIVE", true},
	{"LTYPE", "BYBLOCK", false},
	{"LTYPE", "BYLAYER", false},
	{"LTYPE", "CONTINUOUS", true},
	{"LAYER", "0", true},
	{"STYLE", "STANDARD", true},
	{"APPID", "ACAD", true},
	{"DIMSTYLE", "STANDARD", true},
	{"BLOCK_RECORD", "*MODEL_SPACE", false},
	{"BLOCK_RECORD", "*PAPER_SPACE", false},
}

// recordClass is the subclass marker of each table's records.
var recordClass = map[string]string{
	"VPORT":        "AcDbViewportTableRecord",
	"LTYPE":        "AcDbLinetypeTableRecord",
	"LAYER":        "AcDbLayerTableRecord",
	"STYLE":        "AcDbTextStyleTableRecord",
	"VIEW":         "AcDbViewTableRecord",
	"UCS":          "AcDbUCSTableRecord",
	"APPID":        "AcDbRegAppTableRecord",
	"DIMSTYLE":     "AcDbDimStyleTableRecord",
	"BLOCK_RECORD": "AcDbBlockTableRecord",
}

func (c *checker) checkTables() {
	inTables := 0
	for _, t := range tables(find(c.sections, "TABLES")) {
		if _, ok := recordClass[t.name]; !ok || c.r12 && t.name == "BLOCK_RECORD" {
			c.fault(RuleTable, t.head.line, "table %q", t.name)
		}
		if _, ok := c.tables[t.name]; ok {
			c.fault(RuleTable, t.head.line, "table %s stands twice", t.name)
		}
		if !t.ended {
			c.fault(RuleTable, t.head.line, "table %s does not end", t.name)
		}
		c.tables[t.name] = t
		c.table(t)
		inTables += len(t.records) + 2
	}
	if s := find(c.sections, "TABLES"); len(s.records) != inTables {
		c.fault(RuleTable, s.line, "%d records outside of tables", len(s.records)-inTables)
	}
	for _, want := range requiredRecords {
		if c.r12 && !want.r12 {
			continue
		}
		if _, ok := c.recordOf(want.table, want.name); !ok {
			c.fault(RuleRecord, 0, "table %s has no %s", want.table, want.name)
		}
	}
	for _, name := range []string{"VIEW", "UCS"} {
		if _, ok := c.tables[name]; !ok {
			c.fault(RuleTable, 0, "table %s is missing", name)
		}
	}
	c.checkLayers()
}

// table checks one table's count, names and markers.
func (c *checker) table(t table) {
	if n := t.head.number(70, -1); n != len(t.records) {
		c.fault(RuleTableCount, t.head.line, "table %s states %d records and has %d", t.name, n, len(t.records))
	}
	if !c.r12 && t.head.text(100) != "AcDbSymbolTable" {
		c.fault(RuleSubclass, t.head.line, "table %s", t.name)
	}
	seen := make(map[string]bool)
	for _, r := range t.records {
		name := key(r.text(2))
		if r.kind != t.name {
			c.fault(RuleTable, r.line, "%s in table %s", r.kind, t.name)
		}
		if name == "" || seen[name] {
			c.fault(RuleRecord, r.line, "%s %q without a name of its own", r.kind, name)
		}
		seen[name] = true
		if !c.r12 {
			c.markers(r, "AcDbSymbolTableRecord", recordClass[t.name])
		}
	}
}

// markers checks the subclass markers of a record.
func (c *checker) markers(r record, want ...string) {
	var got []string
	for _, t := range r.tags {
		if t.Code == 100 {
			got = append(got, t.Value)
		}
	}
	same := len(got) == len(want)
	for i := range min(len(got), len(want)) {
		same = same && got[i] == want[i]
	}
	if !same {
		c.fault(RuleSubclass, r.line, "%s: %v", r.kind, got)
	}
}

// recordOf finds a record by table and name.
func (c *checker) recordOf(table, name string) (record, bool) {
	for _, r := range c.tables[table].records {
		if key(r.text(2)) == key(name) {
			return r, true
		}
	}
	return record{}, false
}

// longest names of layers, in characters.
const (
	longestR12   = 31
	longestR2000 = 255
)

func (c *checker) checkLayers() {
	longest := longestR2000
	if c.r12 {
		longest = longestR12
	}
	for _, r := range c.tables["LAYER"].records {
		name := r.text(2)
		if len(name) > longest {
			c.fault(RuleLayerName, r.line, "%d characters", len(name))
		}
		for _, ch := range name {
			if (ch < 'A' || ch > 'Z') && (ch < '0' || ch > '9') && ch != '_' && ch != '-' {
				c.fault(RuleLayerName, r.line, "%q", name)
				break
			}
		}
		if color := r.number(62, 0); color < 1 || color > 255 {
			c.fault(RuleColor, r.line, "layer %s: %d", name, color)
		}
		if _, ok := c.recordOf("LTYPE", r.text(6)); !ok {
			c.fault(RuleLinetype, r.line, "layer %s: %q", name, r.text(6))
		}
	}
}

func (c *checker) hasLayer(name string) bool {
	for _, l := range c.layers {
		if l.Name == name {
			return true
		}
	}
	return false
}
