package pdf

import (
	"encoding/binary"
	"fmt"
)

// place is where an object stands: from a byte of the document on, or as one of a stream of objects.
type place struct {
	at  int64 // 0 is not written yet, and in a stream
	in  int32 // the number of the stream
	nth int32 // in the stream, from 0
}

// held are objects that wait to be written together (7.5.7): they are much alike, and short.
type held struct {
	numbers []int32
	heads   []byte // their numbers, and where each begins
	bodies  []byte
}

// heldMost is how many objects are written together.
const heldMost = 100

// next is the number of a new object.
func (f *File) next() int {
	f.objects = append(f.objects, place{})
	return len(f.objects)
}

// object writes one that is no stream.
func (f *File) object(n int, format string, args ...any) {
	h := &f.held
	h.heads = fmt.Appendf(h.heads, "%d %d ", n, len(h.bodies))
	h.bodies = append(fmt.Appendf(h.bodies, format, args...), '\n')
	if h.numbers = append(h.numbers, int32(n)); len(h.numbers) == heldMost {
		f.packHeld()
	}
}

// packHeld writes the objects that wait.
func (f *File) packHeld() {
	h := &f.held
	if len(h.numbers) == 0 {
		return
	}
	n := f.next()
	first := len(h.heads)
	f.stream(n, append(h.heads, h.bodies...), fmt.Sprintf(" /Type /ObjStm /N %d /First %d", len(h.numbers), first))
	for i, one := range h.numbers {
		f.objects[one-1] = place{in: int32(n), nth: int32(i)}
	}
	h.numbers, h.heads, h.bodies = h.numbers[:0], h.heads[:0], h.bodies[:0]
}

// stream writes one that is, compressed.
func (f *File) stream(n int, data []byte, more string) {
	f.packed.Reset()
	f.pack.Reset(&f.packed)
	f.pack.Write(data) // into memory: neither can fail
	f.pack.Close()
	f.raw(n, f.packed.Bytes(), " /Filter /FlateDecode"+more)
}

// raw writes a stream as it is.
func (f *File) raw(n int, data []byte, more string) {
	f.objects[n-1].at = f.at
	f.write(fmt.Sprintf("%d 0 obj\n<</Length %d%s>>\nstream\n", n, len(data), more))
	f.write(string(data))
	f.write("\nendstream\nendobj\n")
}

// crossReferences ends the document with where each object stands (7.5.8), and with what tells it from others
// (14.4): a sum of its bytes, so that the same pages give the same.
func (f *File) crossReferences() {
	n := f.next()
	f.objects[n-1].at = f.at
	start := f.at
	rows := make([]byte, 0, 8*(len(f.objects)+1)) // a kind in one byte, five and two bytes of numbers
	row := func(kind byte, a int64, b int) {
		rows = append(rows, kind, byte(a>>32))
		rows = binary.BigEndian.AppendUint32(rows, uint32(a))
		rows = binary.BigEndian.AppendUint16(rows, uint16(b))
	}
	row(0, 0, 0xFFFF)
	for _, o := range f.objects {
		if o.in != 0 {
			row(2, int64(o.in), int(o.nth))
		} else {
			row(1, o.at, 0)
		}
	}
	id := fmt.Sprintf("%X", f.sum.Sum(nil)[:16])
	f.stream(n, rows, fmt.Sprintf(" /Type /XRef /W [1 5 2] /Size %d /Root %d 0 R /Info %d 0 R /ID [<%s> <%s>]",
		len(f.objects)+1, catalog, info, id, id))
	f.write(fmt.Sprintf("startxref\n%d\n%%%%EOF\n", start))
}
