package shoplog

import "fmt"

// further says what a quantity is that is more than before, and less.
var further = map[What][2]string{
	Cutter: {"wider", "narrower"}, Again: {"larger", "smaller"}, Fence: {"further out", "further in"},
	Height: {"deeper", "less deep"}, Length: {"longer", "shorter"},
}

// Text says in words what a chart tells of the newest cut.
func (s Signal) Text(w What) string {
	way := further[w][0]
	if !s.Up {
		way = further[w][1]
	}
	switch s.Rule {
	case Beyond:
		return fmt.Sprintf("the newest cut is %s than chance makes one", way)
	case TwoOf3:
		return fmt.Sprintf("two of the last three cuts are much %s than the mean", way)
	case FourOf5:
		return fmt.Sprintf("four of the last five cuts are %s than the mean", way)
	case EightSide:
		return fmt.Sprintf("the last eight cuts are all %s than the mean", way)
	}
	said := fmt.Sprintf("each of the last six cuts is %s than the one before", way)
	if w == Cutter && !s.Up {
		said += ", as of a cutter that is sharpened"
	}
	return said
}
