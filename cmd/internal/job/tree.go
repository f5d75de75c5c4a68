package job

// nodeKind is the form of a value in a job file.
type nodeKind int

const (
	broken  nodeKind = iota // could not be read, and that has been reported
	nothing                 // a key or a dash with nothing after it
	scalar                  // a word, a number, a text
	mapping                 // entries with keys
	list                    // entries with dashes or in square brackets
)

// node is a value in a job file: the tree that YAML makes of the lines.
type node struct {
	kind    nodeKind
	at      Position
	text    string  // of a scalar
	inset   int     // of a scalar: as of its mark
	entries []entry // of a mapping, in file order, duplicates too
	items   []*node // of a list

	// The numbers of its marks, right where the layout has no mistake. Nothing has those
	// of what it should stand behind: a colon, a dash, a key in braces without its colon.
	first, last int
}

// entry is a key with its value.
type entry struct {
	key   string
	at    Position
	mark  int // the number of the key's
	value *node
}

// tree builds the nodes of a file. It reports every line that does not fit and
// reads on after it. Columns decide in block style, brackets in flow style.
// Each step takes at least one mark, so that time grows with the marks.
type tree struct {
	*reporter
	marks []mark
	next  int

	budget int // signs that may still be scanned

	// Brackets inside each other; the last column for lines outside of them;
	// whether all are being left because one is not closed.
	brackets  int
	outside   int
	abandoned bool
}

// parse builds the tree of a whole file. The marks are all of its text where its layout has
// no mistake.
func parse(src *source, r *reporter) (root *node, marks []mark) {
	t := tree{reporter: r, budget: maxMarks}
	t.marks = scan(src, 1, &t.budget, r)
	if t.done() {
		return &node{kind: nothing, at: Position{1, 1}}, nil
	}
	root = t.node(0, 0)
	if !t.done() {
		t.fail(CodeLayout, t.peek().at, "write `key: value` entries in the first column", "this line belongs to nothing above it")
	}
	return root, t.marks
}

func (t *tree) done() bool { return t.next >= len(t.marks) }

// fail reports a line or a part of one that is left out of the tree.
func (t *tree) fail(code Code, at Position, hint, format string, args ...any) {
	t.lost = true
	t.reporter.fail(code, at, hint, format, args...)
}

// peek is the next mark; past the end, one that belongs to no block.
func (t *tree) peek() mark {
	if t.done() {
		return mark{sign: '$'}
	}
	return t.marks[t.next]
}

// atKey reports whether a key with its colon comes next.
func (t *tree) atKey() bool {
	return t.peek().sign == 0 && t.next+1 < len(t.marks) &&
		t.marks[t.next+1].sign == ':' && t.marks[t.next+1].at.Line == t.peek().last
}

// keyBelow reports whether the next mark is text with more text below it in the
// same column: the first key of a mapping, without its colon.
func (t *tree) keyBelow() bool {
	if t.peek().sign != 0 || t.peek().bad || t.next+1 >= len(t.marks) {
		return false
	}
	below := t.marks[t.next+1]
	return below.sign == 0 && below.at.Line > t.peek().last && below.at.Column == t.peek().at.Column
}

// sameLine reports whether the next mark stands on the line that the mark before
// it ended on.
func (t *tree) sameLine() bool {
	return !t.done() && t.next > 0 && t.peek().at.Line == t.marks[t.next-1].last
}

// skipLine leaves out the next mark and the rest of the line that it ends on.
func (t *tree) skipLine() {
	t.next++
	for t.sameLine() {
		t.next++
	}
}

// node reads the value that begins at the next mark, inside depth others.
// A block among it ends at the column floor.
func (t *tree) node(depth, floor int) *node {
	first := t.next
	n := t.anyNode(depth, floor)
	n.first, n.last = first, t.next-1
	return n
}

func (t *tree) anyNode(depth, floor int) *node {
	m := t.peek()
	switch {
	case depth > maxDepth:
		t.fail(CodeTooLarge, m.at, "a job needs no more than five",
			"more than %d lists or mappings inside each other", maxDepth)
		t.next = len(t.marks)
		t.abandoned = t.brackets > 0
		return &node{at: m.at}
	case m.sign == '-':
		return t.blockList(depth, floor)
	case m.sign == '[' || m.sign == '{':
		return t.flow(depth)
	case t.atKey() || t.brackets == 0 && t.keyBelow():
		return t.blockMapping(depth, floor)
	case m.sign == 0:
		return t.scalar()
	}
	t.fail(CodeLayout, m.at, "put text that begins with a sign in quotes", "%s cannot stand here",
		quote(string(m.sign)))
	t.skipLine()
	return &node{at: m.at}
}

func (t *tree) scalar() *node {
	m := t.peek()
	t.next++
	if m.bad {
		return &node{at: m.at}
	}
	return &node{kind: scalar, at: m.at, text: m.text, inset: m.inset, first: t.next - 1, last: t.next - 1}
}

// nothing is what stands behind the mark that was read last.
func (t *tree) nothing(at Position) *node {
	return &node{kind: nothing, at: at, first: t.next - 1, last: t.next - 1}
}
