package job

// flow reads a list in square brackets or a mapping in curly ones.
func (t *tree) flow(depth int) *node {
	open := t.peek()
	t.next++
	if t.brackets++; t.brackets == 1 {
		// A bracket that begins its line may have its values in any column.
		t.outside = 0
		if indent := t.src.indent(open.at.Line); open.at.Column > indent {
			t.outside = indent
		}
	}
	n := t.inside(open, depth)
	if t.brackets--; t.brackets == 0 {
		t.abandoned = false
	}
	return n
}

func (t *tree) inside(open mark, depth int) *node {
	n, end := &node{kind: list, at: open.at}, byte(']')
	if open.sign == '{' {
		n.kind, end = mapping, '}'
	}
	comma := true // the next value needs no further comma before it
	for {
		switch m := t.peek(); {
		case t.abandoned:
			return &node{at: open.at}
		case m.sign == end:
			t.next++
			return n
		case t.done() || m.sign == ']' || m.sign == '}' || t.outOfBrackets():
			t.abandon(open, m)
		case m.sign == ',':
			if comma {
				t.fail(CodeLayout, m.at, "delete it, or write the missing value", "this comma follows no value")
			}
			comma = true
			t.next++
		case !comma:
			t.fail(CodeLayout, m.at, "write a comma between the values, or close the bracket",
				"a comma is missing before this")
			comma = true
		case n.kind == mapping:
			t.flowEntry(n, depth)
			comma = false
		default:
			n.items = append(n.items, t.flowValue(depth))
			comma = false
		}
	}
}

// flowEntry reads a key and, where a colon follows, its value.
func (t *tree) flowEntry(n *node, depth int) {
	key := t.peek()
	if key.sign != 0 {
		t.node(depth+1, 0) // reports what it is, or is a list without a key
		if key.sign == '[' || key.sign == '{' {
			t.fail(CodeLayout, key.at, "write its key and a colon before it", "a value without a key")
		}
		return
	}
	named := t.scalar()
	value := t.nothing(key.at)
	if m := t.peek(); m.sign == ':' {
		if !t.sameLine() {
			t.fail(CodeLayout, m.at, "write the colon after the key, on its line", "this colon follows no key")
		}
		t.next++
		value = t.nothing(key.at)
		if m := t.peek(); !t.done() && m.sign != ',' && m.sign != '}' && m.sign != ']' {
			value = t.flowValue(depth)
		}
	}
	if named.kind != scalar {
		t.lost = true // a merge key, or reported by scalar
		return
	}
	n.entries = append(n.entries, entry{key: named.text, at: key.at, mark: named.first, value: value})
}

// flowValue reads a value inside brackets and reports a colon after it.
func (t *tree) flowValue(depth int) *node {
	var n *node
	if t.peek().sign == 0 {
		n = t.scalar()
	} else {
		n = t.node(depth+1, 0)
	}
	if m := t.peek(); m.sign == ':' && !t.abandoned {
		t.fail(CodeLayout, m.at, "put entries with keys in curly brackets, and text with a colon in quotes", "this colon follows no key")
		t.next++
		if t.peek().sign == 0 {
			t.next++
		}
	}
	return n
}

// outOfBrackets reports whether the next mark begins a line that is indented no
// further than the line of the outermost bracket, and so lies outside it.
func (t *tree) outOfBrackets() bool {
	return t.peek().at.Column <= t.outside && !t.sameLine()
}

// abandon reports a bracket without its end and leaves it and those around it.
// Where a later line belongs to the block around the brackets, reading goes on
// there: the scanner takes that line for a part of the brackets, and has to
// begin again.
func (t *tree) abandon(open, m mark) {
	t.abandoned = true
	if t.done() || m.last == open.at.Line {
		t.fail(CodeUnclosed, open.at, "close it on the same line", "the bracket %s is not closed",
			quote(string(open.sign)))
		if !t.done() {
			t.skipLine()
		}
		return
	}
	t.fail(CodeUnclosed, open.at, "close it, and look for a missing comma",
		"the bracket %s is not closed before line %d", quote(string(open.sign)), m.last)
	t.marks, t.next = scan(t.src, m.last, &t.budget, t.reporter), 0
}
