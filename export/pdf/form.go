package pdf

import (
	"fmt"
	"strings"
)

// Form is content that pages show before it is written: its number is known, and what it says may be made when
// the last page is out (8.10, form XObjects). So a page can say of how many it is one.
type Form struct{ number int }

// Form reserves one. It has to be written by [File.Fill] before the document is closed.
func (f *File) Form() Form {
	n := f.next()
	f.forms = append(f.forms, n)
	return Form{n}
}

func (o Form) name() string { return fmt.Sprintf("X%d", o.number) }

// Fill writes what a form shows, which is so wide and high, from its own lower left corner. It is drawn over
// whatever state a page is in, so it begins with that of an empty page.
func (f *File) Fill(o Form, wide, high float64, c *Content) {
	data := append([]byte("0 G 0 g [] 0 d\n"), c.data...)
	f.stream(o.number, data, fmt.Sprintf(" /Type /XObject /Subtype /Form /BBox [0 0 %.2f %.2f] "+
		"/Resources <</ProcSet [/PDF /Text] /Font %d 0 R>>", wide, high, fonts))
}

// Form shows a form with its lower left corner at a place.
func (c *Content) Form(o Form, x, y float64) {
	c.data = append(c.data, "q 1 0 0 1 "...)
	c.number(x)
	c.number(y)
	c.data = append(append(append(c.data, "cm /"...), o.name()...), " Do Q\n"...)
}

// xobjects are the names under which pages know the forms; nothing without any.
func (f *File) xobjects() string {
	if len(f.forms) == 0 {
		return ""
	}
	var out strings.Builder
	out.WriteString(" /XObject <<")
	for _, n := range f.forms {
		fmt.Fprintf(&out, "/%s %d 0 R ", Form{n}.name(), n)
	}
	out.WriteString(">>")
	return out.String()
}
