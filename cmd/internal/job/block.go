package job

import "strings"

// A block is a list or a mapping made by columns. It ends at the first line
// that begins in the column floor or left of it.

// blockList reads entries with dashes in one column.
func (t *tree) blockList(depth, floor int) *node {
	first := t.peek()
	n := &node{kind: list, at: first.at}
	for strays := t.strays(); ; {
		switch m := t.peek(); {
		case m.at.Column <= floor:
			return n
		case t.sameLine() && len(n.items) > 0:
			t.leftover(n.items[len(n.items)-1])
		case m.at.Column == first.at.Column && m.sign == '-':
			n.items = append(n.items, t.item(depth))
		case m.at.Column == first.at.Column && floor == first.at.Column-1:
			return n // the next key of a mapping in the same column
		default:
			strays(m)
			if last := n.items[len(n.items)-1]; t.atKey() && last.kind == mapping {
				t.entry(last, depth)
			} else {
				t.dropped(depth, floor)
			}
		}
	}
}

// item reads what follows a dash.
func (t *tree) item(depth int) *node {
	dash := t.peek()
	t.next++
	if !t.sameLine() && t.peek().at.Column <= dash.at.Column {
		return t.nothing(dash.at)
	}
	return t.node(depth+1, dash.at.Column)
}

// blockMapping reads keys in one column.
func (t *tree) blockMapping(depth, floor int) *node {
	first := t.peek()
	n := &node{kind: mapping, at: first.at}
	for strays := t.strays(); ; {
		switch m := t.peek(); {
		case m.at.Column <= floor:
			return n
		case t.sameLine() && len(n.entries) > 0:
			t.leftover(n.entries[len(n.entries)-1].value)
		case t.atKey():
			if m.at.Column != first.at.Column {
				strays(m)
			}
			t.entry(n, depth)
		case m.sign == 0 && !m.bad:
			t.fail(CodeLayout, m.at, "write a colon and a space between the entry and its value",
				"%s is no entry with a value", quote(m.text))
			t.skipLine()
			if t.peek().at.Column > m.at.Column {
				t.dropped(depth, m.at.Column) // the lines that belong to it
			}
		case m.sign == '-' || m.sign == '[' || m.sign == '{':
			t.fail(CodeLayout, m.at, "indent it below the key that it belongs to",
				"this is no entry with a key, as the lines around it are")
			t.dropped(depth, m.at.Column-1)
		case m.bad:
			t.scalar()
		default:
			t.node(depth, floor) // reports the sign
		}
	}
}

// strays gives a function that reports lines in other columns than those
// around them, once for each column.
func (t *tree) strays() func(m mark) {
	column := 0
	return func(m mark) {
		if m.at.Column != column {
			t.fail(CodeLayout, m.at, "begin it in the column of the entries that it belongs to",
				"this line is indented differently from those above it")
		}
		column = m.at.Column
	}
}

// entry reads a key, its colon and its value into the mapping n.
func (t *tree) entry(n *node, depth int) {
	key, number := t.peek(), t.next
	t.next += 2 // and its colon
	value := t.entryValue(key, depth)
	switch {
	case key.bad:
		t.lost = true // reported before
		return
	case strings.ContainsAny(key.text, "{}[]"):
		t.fail(CodeLayout, key.at, "write a colon and a space before the bracket", "%s cannot be a key",
			quote(key.text))
		return
	}
	n.entries = append(n.entries, entry{key: key.text, at: key.at, mark: number, value: value})
}

func (t *tree) entryValue(key mark, depth int) *node {
	floor := key.at.Column
	switch m := t.peek(); {
	case !t.sameLine() && m.at.Column > floor:
		return t.node(depth+1, floor)
	case !t.sameLine() && m.at.Column == floor && m.sign == '-':
		return t.node(depth+1, floor-1)
	case !t.sameLine():
		return t.nothing(key.at)
	case m.sign == '-':
		t.fail(CodeLayout, m.at, "put the dash at the beginning of the next line",
			"a list cannot begin on the line of its key")
		return t.dropped(depth, floor)
	case t.atKey():
		t.fail(CodeLayout, t.marks[t.next+1].at, "put text with a colon in quotes",
			"this is the second colon in one entry")
		t.skipLine()
		return &node{at: m.at}
	}
	return t.node(depth+1, floor)
}

// dropped reads a value that stands in the wrong place, so that its own
// mistakes are reported, and leaves it out.
func (t *tree) dropped(depth, floor int) *node {
	at := t.peek().at
	t.node(depth+1, floor)
	return &node{at: at}
}

// leftover reports what follows a value on its line, and drops the value: both
// may have been meant as one.
func (t *tree) leftover(value *node) {
	m := t.peek()
	found := string(m.sign)
	if m.sign == 0 {
		found = m.text
	}
	if !m.bad && !t.marks[t.next-1].bad {
		t.fail(CodeLayout, m.at, "put it on a line of its own, or the whole value in quotes",
			"%s follows a value that has ended", quote(found))
	}
	value.kind = broken
	t.skipLine()
}
