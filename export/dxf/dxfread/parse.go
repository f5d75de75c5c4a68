package dxfread

import (
	"bytes"
	"strconv"
)

// reader reads a file from its first pair to its EOF. A method that reads a
// record leaves the group 0 after it as the last pair read.
type reader struct {
	tags
	file   File
	layers names
	words  names    // the capitals of each word of a group 0, for look-up alone
	path   []Vertex // of the polyline that is being read
	room   []Vertex // for those that were
	begun  int      // offset of the ENTITIES section, 0 before it
}

// binaryTail ends the 22 bytes at the head of a binary DXF, and binaryTailAt is
// where it stands. No text file has it there: a line cannot begin with it.
const (
	binaryTail   = "\r\n\x1a\x00"
	binaryTailAt = 18
)

// byteOrderMark is what some programs put in front of UTF-8.
const byteOrderMark = "\xef\xbb\xbf"

// Parse reads a DXF text file, of any version, with line ends \n or \r\n. It
// copies what it keeps of data, and its memory grows in proportion to data.
// Names and comments are the bytes of the file, whatever their encoding.
// Every error is an [*Error]; its rule is [ErrTags], also for a binary DXF,
// [ErrNumber], [ErrSections] or [ErrIncomplete].
func Parse(data []byte) (*File, error) {
	data = bytes.TrimPrefix(data, []byte(byteOrderMark))
	if len(data) >= binaryTailAt && bytes.HasPrefix(data[binaryTailAt:], []byte(binaryTail)) {
		return nil, &Error{Rule: ErrTags, Line: 1, Found: "a binary DXF, which is not read"}
	}
	r := reader{tags: newTags(data), layers: names{}, words: names{}}
	insunits := 0
	for r.next() && !r.atEnd() {
		if r.code != 0 || r.word() != "SECTION" {
			r.failHere(ErrSections, "outside of any section")
			break
		}
		switch name := r.sectionName(); name {
		case "HEADER":
			insunits = r.header()
		case "TABLES":
			r.tables()
		case "ENTITIES":
			r.entities()
		default:
			r.passOver()
			for r.record(name) != "" {
				r.passOver()
			}
		}
	}
	if r.err != nil {
		return nil, r.err
	}
	r.file.Comments = r.comments
	r.file.Unit = unitOf(insunits, r.comments)
	return &r.file, nil
}

// atEnd says whether the last pair is EOF. After it only white space may follow,
// and the character that once ended a text file: a shorter file written over a
// longer one has more.
func (r *reader) atEnd() bool {
	if r.code != 0 || r.word() != "EOF" {
		return false
	}
	if rest := trim(r.data[r.at:]); len(rest) > 0 && string(rest) != "\x1a" {
		r.fail(ErrSections, 2, strconv.Itoa(len(rest))+" bytes after EOF")
	}
	if r.begun == 0 {
		r.fail(ErrSections, 0, "no ENTITIES section before EOF")
	}
	return true
}

// failHere keeps an error of the last pair.
func (r *reader) failHere(rule error, why string) {
	r.fail(rule, 0, "group "+strconv.Itoa(r.code)+", "+shown(r.value)+", "+why)
}

// sectionName reads the name that follows SECTION.
func (r *reader) sectionName() string {
	if !r.next() {
		return ""
	}
	if r.code != 2 {
		r.failHere(ErrSections, "where the name of a section belongs")
		return ""
	}
	return r.word()
}

// passOver reads on to the next group 0.
func (r *reader) passOver() {
	for r.nextGroup() {
	}
}

// record gives the word that begins a record of the section. It is empty at the
// section's end, and after an error.
func (r *reader) record(section string) string {
	if r.err != nil {
		return ""
	}
	switch word := r.word(); word {
	case "ENDSEC":
		return ""
	case "SECTION", "EOF":
		r.fail(ErrSections, 0, word+" before the ENDSEC of section "+shown([]byte(section)))
		return ""
	case "":
		r.fail(ErrIncomplete, 1, "group 0 without a name")
		return ""
	default:
		return word
	}
}
