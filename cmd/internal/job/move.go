package job

import (
	"fmt"
	"slices"
	"strings"
)

// Move gives an item of a list, or an entry of a mapping, another place among the others, counted
// from 0. The comments on its lines and, below the root, on top of it go with it; every other line
// stays.
func Move(file []byte, to int, path ...string) ([]byte, error) {
	out, err := moved(file, to, path)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be moved: %w", quote(strings.Join(path, " > ")), err)
	}
	return out, nil
}

func moved(file []byte, to int, path []string) ([]byte, error) {
	l, parent, at, err := openAt(file, path)
	if err != nil {
		return nil, err
	}
	if n := max(len(parent.items), len(parent.entries)); to < 0 || to >= n {
		return nil, fmt.Errorf("there are %d, counted from 0, and no place with the number %d", n, to)
	}
	// The pieces of the file that change places, from the first to the last.
	low, high := min(at, to), max(at, to)
	var pieces []stretch
	for i := low; i <= high; i++ {
		one, err := l.pieceOf(parent, i)
		if err != nil {
			return nil, err
		}
		pieces = append(pieces, one)
	}
	out := l.permuted(pieces, at-low, to-low)
	parent.items, parent.entries = shifted(parent.items, at, to), shifted(parent.entries, at, to)
	return out, l.holds(out)
}

// shifted is a list with one of its values at another place.
func shifted[T any](list []T, at, to int) []T {
	if len(list) == 0 {
		return list
	}
	one := list[at]
	return slices.Insert(slices.Delete(slices.Clone(list), at, at+1), to, one)
}

// stretch are bytes of a file, without the newline behind them.
type stretch struct{ from, to int }

// pieceOf are the bytes of an entry or item that move with it: in brackets its own, else its lines
// and those of the comment on top of it.
func (l *layout) pieceOf(parent *node, at int) (stretch, error) {
	first, last := l.marksOf(parent, at)
	if l.inBrackets(parent) {
		// A comment on its lines would swallow what comes to stand behind it.
		if text := l.data[l.begins[first]:l.ends[last]]; strings.ContainsAny(string(text), "\r\n") {
			return stretch{}, errLine
		}
		return stretch{l.begins[first], l.ends[last]}, nil
	}
	if !l.leads(first) {
		return stretch{}, errLine
	}
	line, end := l.marks[first].at.Line, l.marks[last].at.Line
	if behind := l.lastOn(last); behind != last {
		return stretch{}, errLine
	}
	column := l.marks[first].at.Column
	top := line
	for c := l.commentAt(top - 1); c > 0 && c <= column; c = l.commentAt(top - 1) {
		top--
	}
	if parent == l.root { // that comment may be of the whole file
		top = line
	}
	for l.commentAt(end+1) > column {
		end++
	}
	return stretch{l.starts[top-1], l.starts[end-1] + len(l.lines[end-1])}, nil
}

// commentAt is the column of a comment that a line is, from 1; 0 where it is none, or there is no
// such line.
func (l *layout) commentAt(line int) int {
	if line < 1 || line > len(l.lines) {
		return 0
	}
	text := strings.TrimLeft(l.lines[line-1], " ")
	if !strings.HasPrefix(text, "#") {
		return 0
	}
	return len(l.lines[line-1]) - len(text) + 1
}

// permuted writes pieces in another order: the one at comes to stand at to.
func (l *layout) permuted(pieces []stretch, at, to int) []byte {
	order := shifted(pieces, at, to)
	out := slices.Clone(l.data[:pieces[0].from])
	for i, p := range order {
		out = append(out, l.data[p.from:p.to]...)
		if i+1 < len(pieces) {
			out = append(out, l.data[pieces[i].to:pieces[i+1].from]...)
		}
	}
	return append(out, l.data[pieces[len(pieces)-1].to:]...)
}
