package dxf

import (
	"io"
	"strconv"
	"sync"
)

// blockSize is how many bytes are gathered before they are handed on. Larger
// blocks gained nothing where it was measured, and this one stays in the cache.
const blockSize = 64 << 10

// blockSlack is room behind a block for the tags that fill it up: more than the
// longest layer name and the widest vertex.
const blockSlack = 4 << 10

// handle is the number by which one object of a file refers to another.
type handle uint64

// tags writes the pairs that a DXF file is made of, a group code on one line and
// its value on the next. The first error of the writer below is kept, and
// everything after it is dropped.
type tags struct {
	w       io.Writer
	buf     []byte
	written int64
	err     error
}

// blocks are the rooms of files that are written: a drawing of one part is a tenth of one.
var blocks = sync.Pool{New: func() any { return new([blockSize + blockSlack]byte) }}

// newTags begins a file; done gives its room back.
func newTags(w io.Writer) (t *tags, done func()) {
	block := blocks.Get().(*[blockSize + blockSlack]byte)
	return &tags{w: w, buf: block[:0]}, func() { blocks.Put(block) }
}

func (t *tags) str(code int, v string) {
	t.code(code)
	t.buf = append(t.buf, v...)
	t.end()
}

func (t *tags) int(code, v int) {
	t.code(code)
	t.buf = strconv.AppendInt(t.buf, int64(v), 10)
	t.end()
}

func (t *tags) real(code int, v micro) {
	t.code(code)
	t.buf = v.appendTo(t.buf)
	t.end()
}

func (t *tags) handle(code int, h handle) {
	t.code(code)
	t.buf = appendHandle(t.buf, h)
	t.end()
}

// point writes x and y, whose group codes are ten apart.
func (t *tags) point(code int, x, y micro) {
	t.real(code, x)
	t.real(code+10, y)
}

// point3 writes x, y and z.
func (t *tags) point3(code int, x, y, z micro) {
	t.point(code, x, y)
	t.real(code+20, z)
}

func (t *tags) code(code int) {
	t.buf = strconv.AppendInt(t.buf, int64(code), 10)
	t.buf = append(t.buf, '\n')
}

func (t *tags) end() {
	t.buf = append(t.buf, '\n')
	t.spill()
}

// spill hands one block on when it is full, and keeps what is beyond it: blocks
// that lie on the file's own pages are written a tenth faster.
func (t *tags) spill() {
	if len(t.buf) >= blockSize {
		t.write(t.buf[:blockSize])
		t.buf = t.buf[:copy(t.buf, t.buf[blockSize:])]
	}
}

// flush hands on what is left.
func (t *tags) flush() {
	t.write(t.buf)
	t.buf = t.buf[:0]
}

func (t *tags) write(b []byte) {
	if t.err != nil || len(b) == 0 {
		return
	}
	n, err := t.w.Write(b)
	if err == nil && n < len(b) {
		err = io.ErrShortWrite
	}
	t.written += int64(n)
	t.err = err
}

// appendHandle appends a handle as the format has it: capital hexadecimal digits
// without leading zeros.
func appendHandle(b []byte, h handle) []byte {
	const digits = "0123456789ABCDEF"
	shift := 0
	for h>>shift > 0xF {
		shift += 4
	}
	for ; shift >= 0; shift -= 4 {
		b = append(b, digits[h>>shift&0xF])
	}
	return b
}
