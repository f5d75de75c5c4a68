package pdf

import (
	"fmt"
	"slices"
	"strings"
)

// Element is a part of what a page says, as programs know it that read it aloud or take it over (14.7).
type Element struct {
	Kind  string // of the standard types: P, H1, Table and so on (14.8.4)
	Alt   string // what a figure shows, in words (14.9.3)
	Marks []int  // the stretches of the page's content that show it, as [Content.Begin] has them
	In    int    // the number, from 1, of an element before it that it is part of; 0 for none
}

// tags are what a document keeps of the structure of its pages.
type tags struct {
	document int     // the number of the object that all is within; 0 without any
	pages    []int32 // those of what each page consists of
	parents  []int32 // by page, those that name the element of each stretch
}

// structure writes what a page consists of, and gives what the page says of it. Elements that nothing shows are left
// out, but cells of a row.
func (f *File) structure(page int, list []Element) string {
	list = slices.Clone(list)
	shown := make([]bool, len(list))
	for i, e := range slices.Backward(list) {
		if shown[i] = shown[i] || len(e.Marks) > 0; shown[i] && e.In > 0 {
			shown[e.In-1] = true
		}
	}
	if !slices.Contains(shown, true) {
		return ""
	}
	t := &f.tags
	if t.document == 0 {
		t.document = f.next()
	}
	whole := f.next()
	numbers, kids, stretches := make([]int32, len(list)), make([][]int32, len(list)+1), 0
	for i, e := range list {
		if shown[i] || e.In > 0 && shown[e.In-1] {
			shown[i] = true
			numbers[i] = int32(f.next())
			kids[e.In] = append(kids[e.In], numbers[i])
		}
		for _, m := range e.Marks {
			stretches = max(stretches, m+1)
		}
	}
	owners := make([]int32, stretches)
	for i, e := range list {
		if !shown[i] {
			continue
		}
		parent := int32(whole)
		if e.In > 0 {
			parent = numbers[e.In-1]
		}
		for _, m := range e.Marks {
			owners[m] = numbers[i]
		}
		f.object(int(numbers[i]), "<</S /%s /P %d 0 R%s>>", e.Kind, parent, e.shows(page, kids[i+1]))
	}
	f.object(whole, "<</S /Div /P %d 0 R /K [%s]>>", t.document, references(kids[0]))
	parents := f.next()
	f.object(parents, "[%s]", references(owners))
	t.pages, t.parents = append(t.pages, int32(whole)), append(t.parents, int32(parents))
	return fmt.Sprintf(" /StructParents %d /Tabs /S", len(t.parents)-1)
}

// shows is what an element has of a page, and of other elements.
func (e Element) shows(page int, kids []int32) string {
	var out strings.Builder
	if e.Alt != "" {
		out.WriteString(" /Alt " + hexText(e.Alt))
	}
	if e.Kind == "TH" {
		out.WriteString(" /A <</O /Table /Scope /Column>>")
	}
	if len(e.Marks) > 0 {
		fmt.Fprintf(&out, " /Pg %d 0 R", page)
	}
	if len(e.Marks)+len(kids) > 0 {
		fmt.Fprintf(&out, " /K %v", e.Marks)
		if len(kids) > 0 {
			return strings.TrimSuffix(out.String(), "]") + " " + references(kids) + "]"
		}
	}
	return out.String()
}

// structureTree writes what names all elements, and gives what the catalogue says of it.
func (f *File) structureTree() string {
	t := &f.tags
	if t.document == 0 {
		return ""
	}
	root, parents := f.next(), f.next()
	f.object(t.document, "<</S /Document /P %d 0 R /K [%s]>>", root, references(t.pages))
	var rows strings.Builder
	for i, n := range t.parents {
		fmt.Fprintf(&rows, "%d %d 0 R ", i, n)
	}
	f.object(parents, "<</Nums [%s]>>", rows.String())
	f.object(root, "<</Type /StructTreeRoot /K %d 0 R /ParentTree %d 0 R /ParentTreeNextKey %d>>", t.document, parents,
		len(t.parents))
	return fmt.Sprintf(" /MarkInfo <</Marked true>> /StructTreeRoot %d 0 R", root)
}

// Begin begins a stretch that shows an element of a kind, by its number on the page, from 0 (14.6).
func (c *Content) Begin(kind string, mark int) {
	c.data = fmt.Appendf(c.data, "/%s <</MCID %d>> BDC\n", kind, mark)
}

// BeginArtifact begins a stretch that belongs to no element, such as lines and page numbers (14.8.2.2).
func (c *Content) BeginArtifact() { c.data = append(c.data, "/Artifact BMC\n"...) }

// End ends the stretch.
func (c *Content) End() { c.data = append(c.data, "EMC\n"...) }
