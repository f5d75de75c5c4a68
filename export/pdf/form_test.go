package pdf

import (
	"bytes"
	"compress/zlib"
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
		f.Page(100, 100, &c)
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

// unpack is a document with its streams as they were before they were compressed.
func unpack(t *testing.T, data []byte) string {
	t.Helper()
	var all bytes.Buffer
	for {
		before, after, found := bytes.Cut(data, []byte("stream\n"))
		all.Write(before)
		if !found {
			return all.String()
		}
		body, rest, _ := bytes.Cut(after, []byte("\nendstream"))
		z, err := zlib.NewReader(bytes.NewReader(body))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := all.ReadFrom(z); err != nil {
			t.Fatal(err)
		}
		data = rest
	}
}
