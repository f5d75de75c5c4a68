package readback

import (
	"bytes"
	"cmp"
	"compress/zlib"
	"io"
	"iter"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"
)

// pdfText is a piece of text on a page; y runs up.
type pdfText struct {
	x, y float64
	text string
	size float64 // of its letters, in points
}

// pdfPages reads the text of the pages of a PDF as this program's library writes it: a
// compressed stream a page (ISO 32000-1, 7.3.8 and 9.4.3), letters as UTF-16. Texts that
// are turned stand elsewhere than they are said to. What pages share, their forms (8.10), follows them: of it
// the texts are handed to shared, if there is one.
func pdfPages(r *reading, in io.Reader, shared func([]pdfText)) iter.Seq[[]pdfText] {
	return func(yield func([]pdfText) bool) {
		var content bytes.Buffer
		var unpack io.ReadCloser
		pages := 0
		for data := (marked{in: in}); ; {
			before, found := data.until(r, "stream\n")
			if !found {
				break
			}
			form := bytes.Contains(before[max(0, bytes.LastIndex(before, []byte(" obj\n"))):], []byte("/Subtype /Form"))
			body, whole := data.until(r, "\nendstream")
			if !whole {
				r.fail("a stream does not end")
			}
			content.Reset()
			if unpacked(&content, &unpack, body) != nil || !bytes.Contains(content.Bytes(), []byte(" Tj ET")) {
				continue // letters, pictures
			}
			if form {
				if shared != nil {
					shared(shown(content.Bytes()))
				}
				continue
			}
			if pages++; !yield(shown(content.Bytes())) {
				return
			}
		}
		if pages == 0 {
			r.fail("no pages")
		}
	}
}

// marked is what stands between marks of a file, which is read as they are asked for: a packet is large.
type marked struct {
	in    io.Reader
	data  []byte // what was read, and not taken
	taken int
	end   bool
}

// until takes what comes before a mark, and the mark, if there is one; it is there until the next call.
func (p *marked) until(r *reading, mark string) (before []byte, found bool) {
	p.data = append(p.data[:0], p.data[p.taken:]...)
	for p.taken = 0; ; {
		if i := bytes.Index(p.data[p.taken:], []byte(mark)); i >= 0 {
			before = p.data[:p.taken+i]
			p.taken += i + len(mark)
			return before, true
		}
		if p.end {
			return nil, false
		}
		p.taken = max(0, len(p.data)-len(mark)) // it may stand there in part
		p.data = slices.Grow(p.data, max(len(p.data), 1<<16))
		n, err := p.in.Read(p.data[len(p.data):cap(p.data)])
		p.data = p.data[:len(p.data)+n]
		if p.end = err == io.EOF; err != nil && !p.end {
			r.fail("%v", err)
		}
	}
}

// unpacked appends what a compressed stream holds, by a reader that the first call makes.
func unpacked(to *bytes.Buffer, by *io.ReadCloser, stream []byte) (err error) {
	if *by == nil {
		*by, err = zlib.NewReader(bytes.NewReader(stream))
	} else {
		err = (*by).(zlib.Resetter).Reset(bytes.NewReader(stream), nil)
	}
	if err != nil {
		return err
	}
	_, err = to.ReadFrom(*by)
	return err
}

// shown are the texts of a page's stream, each `BT x y Td (text) Tj ET`, in letters of the last `/name size Tf`.
func shown(content []byte) (page []pdfText) {
	size := 0.0
	for {
		before, rest, found := bytes.Cut(content, []byte("BT "))
		if !found {
			return page
		}
		size = cmp.Or(sizeSet(before), size)
		content = rest
		at, words, found := bytes.Cut(rest, []byte(" Td ("))
		x, y, pair := strings.Cut(string(at[:min(len(at), 40)]), " ")
		across, e1 := strconv.ParseFloat(x, 64)
		up, e2 := strconv.ParseFloat(y, 64)
		if !found || !pair || e1 != nil || e2 != nil {
			continue
		}
		end := 0 // of the string: the first bracket that is not escaped
		for end < len(words) && words[end] != ')' {
			if words[end] == '\\' {
				end++
			}
			end++
		}
		if end < len(words) && bytes.HasPrefix(words[end:], []byte(") Tj ET")) {
			page = append(page, pdfText{across, up, decoded(words[:end]), size})
			content = words[end:]
		}
	}
}

// sizeSet is the size that a font is set in last; 0 where none is.
func sizeSet(content []byte) float64 {
	i := bytes.LastIndex(content, []byte(" Tf"))
	if i < 0 {
		return 0
	}
	_, size, _ := bytes.Cut(content[bytes.LastIndexByte(content[:i], '/')+1:i], []byte(" "))
	points, _ := strconv.ParseFloat(string(size), 64) // 0 of what is no size
	return points
}

// decoded takes away the escapes of a string and reads it as UTF-16, high bytes first.
func decoded(s []byte) string {
	var raw []byte
	for i := 0; i < len(s); i++ {
		if s[i] == '\\' && i+1 < len(s) {
			i++
			if s[i] == 'r' {
				raw = append(raw, '\r')
				continue
			}
		}
		raw = append(raw, s[i])
	}
	units := make([]uint16, len(raw)/2)
	for i := range units {
		units[i] = uint16(raw[2*i])<<8 | uint16(raw[2*i+1])
	}
	return string(utf16.Decode(units))
}

// pdfLines are the texts of a page line by line, as they are written, each from the left: a column comes after the
// one before it.
func pdfLines(page []pdfText) (lines [][]pdfText) {
	for _, t := range page {
		if n := len(lines); n > 0 && math.Abs(lines[n-1][0].y-t.y) < 0.5 {
			lines[n-1] = append(lines[n-1], t)
			continue
		}
		lines = append(lines, []pdfText{t})
	}
	for _, l := range lines {
		slices.SortStableFunc(l, func(a, b pdfText) int { return cmp.Compare(a.x, b.x) })
	}
	return lines
}

// cells are the texts of a line.
func cells(line []pdfText) (list []string) {
	for _, t := range line {
		list = append(list, strings.TrimSpace(t.text))
	}
	return list
}
