package dxftest

import "slices"

// object is a record with the place that its owner follows from.
type object struct {
	record
	handle  uint64
	section string
	table   table // for what stands in one
}

// owner gives the handle of a record's owner: its first group 330 before any
// subclass marker and outside of the groups in braces.
func (r record) owner() (Tag, bool) {
	braced := false
	for _, t := range r.tags {
		switch {
		case t.Code == 102:
			braced = !braced
		case t.Code == 100:
			return Tag{}, false
		case t.Code == 330 && !braced:
			return t, true
		}
	}
	return Tag{}, false
}

// objects lists every record that has a handle in R2000.
func (c *checker) objects() []object {
	var all []object
	for _, t := range tables(find(c.sections, "TABLES")) {
		all = append(all, object{record: t.head, section: "TABLES"})
		for _, r := range t.records {
			all = append(all, object{record: r, section: "TABLES", table: t})
		}
	}
	for _, name := range []string{"BLOCKS", "ENTITIES", "OBJECTS"} {
		for _, r := range find(c.sections, name).records {
			all = append(all, object{record: r, section: name})
		}
	}
	return all
}

// checkHandles checks handles, owners and references. R12 leaves handles free,
// but those that there are must be unique.
func (c *checker) checkHandles() {
	byHandle := make(map[uint64]object)
	seed := uint64(0)
	if v := c.header["$HANDSEED"]; len(v) > 0 {
		seed = v[0].handle()
	}
	all := c.objects()
	for i := range all {
		o := &all[i]
		code := 5
		if o.kind == "DIMSTYLE" {
			code = 105
		}
		t, ok := o.first(code)
		o.handle = t.handle()
		if !ok && c.r12 {
			continue
		}
		if other, taken := byHandle[o.handle]; !ok || o.handle == 0 || taken {
			c.fault(RuleHandle, o.line, "%s: handle %X, also that of a %q", o.kind, o.handle, other.kind)
		}
		byHandle[o.handle] = *o
		if o.handle >= seed {
			c.fault(RuleSeed, t.Line, "%s: handle %X, seed %X", o.kind, o.handle, seed)
		}
	}
	if c.r12 {
		return
	}
	for _, o := range all {
		c.owners(o, byHandle)
		for _, t := range o.tags {
			if kindOf(t.Code) != handle || t.Code == 5 || t.Code == 105 || t.handle() == 0 {
				continue
			}
			if target, ok := byHandle[t.handle()]; !ok {
				c.fault(RulePointer, t.Line, "%s, group %d: nothing has the handle %s", o.kind, t.Code, t.Value)
			} else if t.Code == 390 && target.kind != "ACDBPLACEHOLDER" {
				c.fault(RulePointer, t.Line, "%s: plot style %s is a %s", o.kind, t.Value, target.kind)
			}
		}
	}
	c.dictionaries(byHandle)
	c.layouts(byHandle)
}

// owners checks that an object's owner is what its place asks for.
func (c *checker) owners(o object, byHandle map[uint64]object) {
	t, ok := o.owner()
	if !ok {
		c.fault(RuleOwner, o.line, "%s has no owner", o.kind)
		return
	}
	var want uint64
	switch {
	case o.kind == "TABLE":
	case o.section == "TABLES":
		h, _ := o.table.head.first(5)
		want = h.handle()
	case o.section == "BLOCKS":
		want = c.blockRecord(o.text(2))
		if o.kind == "ENDBLK" {
			want = c.blockRecordBefore(o.line)
		}
	case o.section == "ENTITIES" && o.number(67, 0) == 1:
		want = c.blockRecord("*PAPER_SPACE")
	case o.section == "ENTITIES":
		want = c.blockRecord("*MODEL_SPACE")
	default:
		c.objectOwner(o, t, byHandle)
		return
	}
	if t.handle() != want {
		c.fault(RuleOwner, t.Line, "%s: owner %s, should be %X", o.kind, t.Value, want)
	}
}

// blockRecord gives the handle of a block record.
func (c *checker) blockRecord(name string) uint64 {
	r, _ := c.recordOf("BLOCK_RECORD", name)
	t, _ := r.first(5)
	return t.handle()
}

// blockRecordBefore gives the handle of the record of the last block that begins
// before a line.
func (c *checker) blockRecordBefore(line int) uint64 {
	name := ""
	for _, r := range find(c.sections, "BLOCKS").records {
		if r.kind == "BLOCK" && r.line < line {
			name = r.text(2)
		}
	}
	return c.blockRecord(name)
}

// objectOwner checks that an object is owned by a dictionary that lists it; the
// root dictionary is owned by nothing.
func (c *checker) objectOwner(o object, t Tag, byHandle map[uint64]object) {
	if root := find(c.sections, "OBJECTS").records[0]; o.line == root.line {
		if t.handle() != 0 {
			c.fault(RuleOwner, t.Line, "the root dictionary is owned by %s", t.Value)
		}
		return
	}
	owner := byHandle[t.handle()]
	if !slices.Contains(listed(owner.record), o.handle) {
		c.fault(RuleOwner, t.Line, "%s %X is not in the %q that owns it", o.kind, o.handle, owner.kind)
	}
}

// listed gives the handles that a dictionary leads to.
func listed(r record) []uint64 {
	var all []uint64
	for _, t := range r.tags {
		if t.Code == 350 || t.Code == 360 {
			all = append(all, t.handle())
		}
	}
	return all
}
