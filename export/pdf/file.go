// Package pdf writes PDF documents page by page (ISO 32000-1:2008): a page is on its way out before
// the next one is made, so that a document takes no more memory for its pages than where they
// begin. Letters are TrueType, cut down to what is used, and can be searched for and copied.
//
// Lengths are in points, 1/72 of an inch, from the lower left corner of the page.
package pdf

import (
	"bufio"
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"strconv"
	"unicode/utf16"
)

// File is a document being written. The first error of its writer ends it, and is given by [File.Close].
type File struct {
	out     *bufio.Writer
	at      int64   // bytes written
	objects []int64 // where each begins, by its number less 1; 0 is not written yet
	pages   []int32 // numbers of their objects
	marks   []mark
	fonts   []*Font
	forms   []int // numbers of their objects
	packed  bytes.Buffer
	pack    *zlib.Writer
	err     error
}

// Info is what a document says of itself. It has no date, so that the same pages give the same bytes.
type Info struct{ Title, Subject, Creator string }

// Numbers of objects that others name before they are written.
const (
	catalog = 1 + iota
	pageTree
	info
	resources
	fonts    // a dictionary: pages and forms share it
	reserved = fonts
)

// New begins a document.
func New(w io.Writer) *File {
	f := &File{out: bufio.NewWriter(w), objects: make([]int64, reserved)}
	f.pack, _ = zlib.NewWriterLevel(&f.packed, zlib.BestSpeed) // which is a level
	f.write("%PDF-1.4\n%\xe2\xe3\xcf\xd3\n")                   // four bytes above 127 say that it is not text: 7.5.2
	return f
}

func (f *File) write(s string) {
	if f.err != nil {
		return
	}
	n, err := f.out.WriteString(s)
	f.at, f.err = f.at+int64(n), err
}

func (f *File) printf(format string, args ...any) { f.write(fmt.Sprintf(format, args...)) }

// next is the number of a new object.
func (f *File) next() int {
	f.objects = append(f.objects, 0)
	return len(f.objects)
}

// object writes one that is no stream.
func (f *File) object(n int, format string, args ...any) {
	f.objects[n-1] = f.at
	f.printf("%d 0 obj\n", n)
	f.printf(format, args...)
	f.write("\nendobj\n")
}

// stream writes one that is, compressed.
func (f *File) stream(n int, data []byte, more string) {
	f.packed.Reset()
	f.pack.Reset(&f.packed)
	f.pack.Write(data) // into memory: neither can fail
	f.pack.Close()
	f.objects[n-1] = f.at
	f.printf("%d 0 obj\n<</Length %d /Filter /FlateDecode%s>>\nstream\n", n, f.packed.Len(), more)
	f.write(f.packed.String())
	f.write("\nendstream\nendobj\n")
}

// Page writes a page that is so wide and high, and says what a list of contents has of it.
func (f *File) Page(wide, high float64, c *Content, bookmarks ...Bookmark) {
	content, page := f.next(), f.next()
	f.stream(content, c.data, "")
	f.object(page, "<</Type /Page /Parent %d 0 R /MediaBox [0 0 %.2f %.2f] /Resources %d 0 R /Contents %d 0 R>>",
		pageTree, wide, high, resources, content)
	f.pages = append(f.pages, int32(page))
	for _, b := range bookmarks {
		f.marks = append(f.marks, mark{Bookmark: b, page: page, top: high})
	}
}

// Close ends the document.
func (f *File) Close(about Info) error {
	outline := f.outline()
	f.object(fonts, "<<%s>>", f.letters())
	f.object(resources, "<</ProcSet [/PDF /Text] /Font %d 0 R%s>>", fonts, f.xobjects())
	f.objects[pageTree-1] = f.at
	f.printf("%d 0 obj\n<</Type /Pages /Count %d /Kids [", pageTree, len(f.pages))
	for _, n := range f.pages {
		f.write(strconv.Itoa(int(n)) + " 0 R\n")
	}
	f.write("]>>\nendobj\n")
	f.object(info, "<</Title %s /Subject %s /Creator %s>>",
		hexText(about.Title), hexText(about.Subject), hexText(about.Creator))
	f.object(catalog, "<</Type /Catalog /Pages %d 0 R%s>>", pageTree, outline)
	start := f.at
	f.printf("xref\n0 %d\n0000000000 65535 f \n", len(f.objects)+1)
	for _, at := range f.objects {
		f.printf("%010d 00000 n \n", at)
	}
	f.printf("trailer\n<</Size %d /Root %d 0 R /Info %d 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(f.objects)+1, catalog,
		info, start)
	if f.err != nil {
		return f.err
	}
	return f.out.Flush()
}

// hexText is a text string in its hexadecimal form (7.9.2.2 and 7.3.4.3), which needs no escapes.
func hexText(s string) string {
	out := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		out = fmt.Appendf(out, "%04X", u)
	}
	return string(append(out, '>'))
}
