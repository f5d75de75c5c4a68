package pdf

import (
	"bytes"
	"strings"
	"testing"
)

// TestForm: pages show what is written after them, under a number that they know before, and a form begins black
// whatever the page has set.
func TestForm(t *testing.T) {
	letters, _ := regular(t)
	var out bytes.Buffer
	f := New(&out)
	font := f.Font(letters)
	form := f.Form()
	for range 2 {
		var c Content
		c.Fill(1)
		c.Form(form, 10, 20.5)
		f.Page(Page{Wide: 100, High: 100, Content: &c})
	}
	var c Content
	c.Text(font, 10, [2]float64{0, 2}, 0, "of 2")
	f.Fill(form, 30, 12, &c)
	if err := f.Close(Info{}); err != nil {
		t.Fatal(err)
	}
	all := unpack(t, out.Bytes())
	for _, want := range []string{"q 1 0 0 1 10 20.5 cm /" + form.name() + " Do Q", "0 G 0 g [] 0 d\n",
		"/Subtype /Form /BBox [0 0 30.00 12.00]", "/XObject <</" + form.name() + " "} {
		if !strings.Contains(all, want) {
			t.Errorf("no %q", want)
		}
	}
	if n := strings.Count(all, " Do Q"); n != 2 {
		t.Errorf("%d pages show it", n)
	}
}

// unpack is all objects of a document, with their streams as they were before they were compressed.
func unpack(t *testing.T, data []byte) (all string) {
	t.Helper()
	for _, o := range objectsOf(t, data) {
		head, _, stream := strings.Cut(o, "stream\n")
		if all += head + "\n"; stream {
			all += contentOf(t, o) + "\n"
		}
	}
	return all
}
