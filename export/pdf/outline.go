package pdf

import "fmt"

// Bookmark is an entry in the list of contents; one of level 1 is within the last one of level 0
// before it.
type Bookmark struct {
	Name  string
	Level int
}

// mark is a bookmark with its place.
type mark struct {
	Bookmark
	page int     // the number of its object
	top  float64 // of the page
	// Numbers of objects; 0 for none.
	self, parent, before, after, first, last int
	within                                   int // how many are in it
}

// outline writes the list of contents (12.3.3), and gives what the catalogue says of it.
func (f *File) outline() string {
	if len(f.marks) == 0 {
		return ""
	}
	root := mark{self: f.next()}
	var above *mark // the last one of level 0
	byNumber := make(map[int]*mark)
	for i := range f.marks {
		m := &f.marks[i]
		m.self = f.next()
		byNumber[m.self] = m
		parent := &root
		if m.Level > 0 && above != nil {
			parent = above
		} else {
			above = m
		}
		m.parent, m.before = parent.self, parent.last
		if m.before != 0 {
			byNumber[m.before].after = m.self
		} else {
			parent.first = m.self
		}
		parent.last = m.self
		parent.within++
	}
	f.object(root.self, "<</Type /Outlines /First %d 0 R /Last %d 0 R /Count %d>>", root.first, root.last, root.within)
	for _, m := range f.marks {
		said := fmt.Sprintf("<</Title %s /Parent %d 0 R /Dest [%d 0 R /XYZ 0 %.2f null]", hexText(m.Name), m.parent,
			m.page, m.top)
		for _, link := range []struct {
			name string
			to   int
		}{{"Prev", m.before}, {"Next", m.after}, {"First", m.first}, {"Last", m.last}} {
			if link.to != 0 {
				said += fmt.Sprintf(" /%s %d 0 R", link.name, link.to)
			}
		}
		if m.within > 0 {
			said += fmt.Sprintf(" /Count -%d", m.within) // closed at first
		}
		f.object(m.self, "%s>>", said)
	}
	return fmt.Sprintf(" /Outlines %d 0 R /PageMode /UseOutlines", root.self)
}
