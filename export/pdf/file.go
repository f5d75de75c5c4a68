// Package pdf writes PDF documents page by page (ISO 32000-1:2008): a page is on its way out before
// the next one is made, so that a document takes no more memory for its pages than where they
// begin. Letters are TrueType, cut down to what is used, and can be searched for and copied.
//
// Documents keep to the rules of ISO 19005-2:2011 (PDF/A-2, level U: they look the same and can be read as text for
// good) as long as every letter that is used is in its font, and are tagged (14.8) where pages say what they consist
// of. Numbers in brackets in this package are clauses of ISO 32000-1, those after A-2 of ISO 19005-2 (from memory).
//
// Lengths are in points, 1/72 of an inch, from the lower left corner of the page.
package pdf

import (
	"bufio"
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"encoding/xml"
	"fmt"
	"hash"
	"io"
	"strings"
	"unicode/utf16"
)

// File is a document being written. The first error of its writer ends it, and is given by [File.Close].
type File struct {
	out     *bufio.Writer
	at      int64     // bytes written
	sum     hash.Hash // of them
	objects []place   // by their numbers less 1
	held    held
	pages   []int32 // numbers of their objects
	marks   []mark
	fonts   []*Font
	forms   []int // numbers of their objects
	tags    tags
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

// language is that of all words in a document (14.9.2).
const language = "en-US"

// packing is how hard streams are compressed: a sixth smaller than at best speed, for half as much time again; what is
// harder takes three times as long for little.
const packing = 4

// New begins a document.
func New(w io.Writer) *File {
	f := &File{out: bufio.NewWriter(w), sum: sha256.New(), objects: make([]place, reserved)}
	f.pack, _ = zlib.NewWriterLevel(&f.packed, packing) // which is a level
	f.write("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")            // four bytes above 127 say that it is not text: A-2, 6.1.2
	return f
}

func (f *File) write(s string) {
	if f.err != nil {
		return
	}
	n, err := f.out.WriteString(s)
	io.WriteString(f.sum, s) // which cannot fail
	f.at, f.err = f.at+int64(n), err
}

// Page is what a page of a document is.
type Page struct {
	Wide, High float64
	*Content
	Elements  []Element  // what it consists of, if that is said
	Bookmarks []Bookmark // in the list of contents
}

// Page writes a page.
func (f *File) Page(p Page) {
	content, page := f.next(), f.next()
	f.stream(content, p.data, "")
	f.object(page, "<</Type /Page /Parent %d 0 R /MediaBox [0 0 %.2f %.2f] /Resources %d 0 R /Contents %d 0 R%s>>",
		pageTree, p.Wide, p.High, resources, content, f.structure(page, p.Elements))
	f.pages = append(f.pages, int32(page))
	for _, b := range p.Bookmarks {
		f.marks = append(f.marks, mark{Bookmark: b, page: page, top: p.High})
	}
}

// Close ends the document.
func (f *File) Close(about Info) error {
	outline, structure := f.outline(), f.structureTree()
	f.object(fonts, "<<%s>>", f.letters())
	f.object(resources, "<</ProcSet [/PDF /Text] /Font %d 0 R%s>>", fonts, f.xobjects())
	f.object(pageTree, "<</Type /Pages /Count %d /Kids [%s]>>", len(f.pages), references(f.pages))
	f.object(info, "<</Title %s /Subject %s /Creator %s /Producer %s>>",
		hexText(about.Title), hexText(about.Subject), hexText(about.Creator), hexText(about.Creator))
	metadata := f.next()
	f.raw(metadata, []byte(xmp(about)), " /Type /Metadata /Subtype /XML") // as it is, to be found by any program
	f.object(catalog, "<</Type /Catalog /Pages %d 0 R /Metadata %d 0 R /OutputIntents [%s] /Lang (%s) "+
		"/ViewerPreferences <</DisplayDocTitle true>>%s%s>>", pageTree, metadata, f.outputIntent(), language, outline,
		structure)
	f.packHeld()
	f.crossReferences()
	if f.err != nil {
		return f.err
	}
	return f.out.Flush()
}

// references are those to objects, in an array.
func references(numbers []int32) string {
	var out strings.Builder
	for _, n := range numbers {
		fmt.Fprintf(&out, "%d 0 R ", n)
	}
	return out.String()
}

// outputIntent says what device colors are meant as (14.11.5; A-2, 6.2.3): those of the profile.
func (f *File) outputIntent() string {
	profile := f.next()
	f.stream(profile, standardColors(), " /N 3")
	return fmt.Sprintf("<</Type /OutputIntent /S /GTS_PDFA1 /OutputConditionIdentifier (%s) /Info (%s) "+
		"/DestOutputProfile %d 0 R>>", colors, colors, profile)
}

// xmp is what a document says of itself in the form of ISO 16684-1 (A-2, 6.6), the same as in its information
// dictionary.
func xmp(about Info) string {
	text := func(s string) string {
		var out strings.Builder
		_ = xml.EscapeText(&out, []byte(s)) // which cannot fail
		return `<rdf:Alt><rdf:li xml:lang="x-default">` + out.String() + `</rdf:li></rdf:Alt>`
	}
	return "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" +
		`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">` +
		`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" ` +
		`xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" ` +
		`xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">` +
		`<dc:format>application/pdf</dc:format><dc:title>` + text(about.Title) + `</dc:title>` +
		`<dc:description>` + text(about.Subject) + `</dc:description>` +
		`<dc:language><rdf:Bag><rdf:li>` + language + `</rdf:li></rdf:Bag></dc:language>` +
		`<xmp:CreatorTool>` + about.Creator + `</xmp:CreatorTool><pdf:Producer>` + about.Creator + `</pdf:Producer>` +
		`<pdfaid:part>2</pdfaid:part><pdfaid:conformance>U</pdfaid:conformance>` +
		"</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>"
}

// hexText is a text string in its hexadecimal form (7.9.2.2 and 7.3.4.3), which needs no escapes.
func hexText(s string) string {
	out := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		out = fmt.Appendf(out, "%04X", u)
	}
	return string(append(out, '>'))
}
