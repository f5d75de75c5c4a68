package record

import (
	"encoding/binary"
	"iter"
	"math"
	"reflect"
	"slices"
	"sync"

	"drawerwright/geom"
)

// List is a list of a report as it is kept: each element packed into bytes, for those of thousands of drawers
// would be the most in memory, and what collects garbage would go through all of their words. It may be used by
// several goroutines at once. The zero List is none, as a nil slice is.
type List[T any] struct{ *packed }

// packed are elements one after the other.
type packed struct {
	words *vocabulary
	data  []byte
	at    []uint32 // where each begins, from 1; 0 where there is none yet
}

// vocabulary are words by their numbers, each once for all lists of a report. It guards those lists too.
type vocabulary struct {
	sync.RWMutex
	number map[string]uint64
	list   []string
}

func newVocabulary() *vocabulary { return &vocabulary{number: make(map[string]uint64)} }

// listOf packs a list; of nil it is none.
func listOf[T any](words *vocabulary, list []T) (l List[T]) {
	if list == nil {
		return l
	}
	l = emptyList[T](words)
	for i := range list {
		l.Append(list[i])
	}
	return l
}

func emptyList[T any](words *vocabulary) List[T] { return List[T]{&packed{words: words}} }

// Len is how many there are.
func (l List[T]) Len() int {
	if l.packed == nil {
		return 0
	}
	l.words.RLock()
	defer l.words.RUnlock()
	return len(l.at)
}

// At is one of them, made anew.
func (l List[T]) At(i int) (v T) {
	l.words.RLock()
	defer l.words.RUnlock()
	if at := l.at[i]; at > 0 {
		u := unpacking{l.data[at-1:], l.words.list}
		u.value(reflect.ValueOf(&v).Elem())
	}
	return v
}

// All are all of them by their places.
func (l List[T]) All() iter.Seq2[int, T] {
	return func(yield func(int, T) bool) {
		for i := range l.Len() {
			if !yield(i, l.At(i)) {
				return
			}
		}
	}
}

// Slice is the list unpacked.
func (l List[T]) Slice() []T {
	if l.packed == nil {
		return nil
	}
	list := make([]T, l.Len())
	for i := range list {
		list[i] = l.At(i)
	}
	return list
}

// Append adds an element.
func (l List[T]) Append(v T) {
	l.words.Lock()
	defer l.words.Unlock()
	l.at = append(l.at, 0)
	l.put(len(l.at)-1, reflect.ValueOf(&v).Elem())
}

// Put puts an element into its place, of as many as [List.Grow] has made room for.
func (l List[T]) Put(i int, v T) {
	l.words.Lock()
	defer l.words.Unlock()
	l.put(i, reflect.ValueOf(&v).Elem())
}

// Grow makes room for so many.
func (l List[T]) Grow(n int) { l.at = slices.Concat(l.at, make([]uint32, n)) }

// each gives the elements for reflection.
func (l List[T]) each(do func(reflect.Value) error) error {
	for _, v := range l.All() {
		if err := do(reflect.ValueOf(&v).Elem()); err != nil {
			return err
		}
	}
	return nil
}

// none reports whether there is no list.
func (l List[T]) none() bool { return l.packed == nil }

func (p *packed) put(i int, v reflect.Value) {
	p.at[i] = uint32(len(p.data)) + 1
	p.value(v)
}

// Ways in which a number is packed.
const (
	ofMillimeters = iota // millionths, as lengths of a settled report are
	ofInches             // billionths of an inch
	ofBits
	numberWays = 2 // bits of them
)

// value appends a value; those of a report have no fields that are hidden.
func (p *packed) value(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		p.data = binary.AppendUvarint(p.data, p.words.add(v.String()))
	case reflect.Float64:
		p.float(v.Float())
	case reflect.Int:
		p.data = binary.AppendVarint(p.data, v.Int())
	case reflect.Bool:
		p.data = append(p.data, 0)
		if v.Bool() {
			p.data[len(p.data)-1] = 1
		}
	case reflect.Struct:
		for i := range v.NumField() {
			p.value(v.Field(i))
		}
	case reflect.Array:
		for i := range v.Len() {
			p.value(v.Index(i))
		}
	case reflect.Slice:
		if v.IsNil() {
			p.data = append(p.data, 0)
			return
		}
		p.data = binary.AppendUvarint(p.data, uint64(v.Len())+1)
		for i := range v.Len() {
			p.value(v.Index(i))
		}
	case reflect.Pointer:
		if v.IsNil() {
			p.data = append(p.data, 0)
			return
		}
		p.data = append(p.data, 1)
		p.value(v.Elem())
	default:
		panic("record: no way to pack a " + v.Type().String())
	}
}

func (p *packed) float(f float64) {
	for way, back := range []func(int64) float64{ofMillimeters: inMillionths, ofInches: inBillionths} {
		steps := math.Round(f * []float64{1e6, 1e9 / geom.InchMM}[way])
		if n := int64(steps); math.Abs(steps) < 1<<52 && math.Float64bits(back(n)) == math.Float64bits(f) {
			p.data = binary.AppendVarint(p.data, n<<numberWays|int64(way))
			return
		}
	}
	p.data = binary.AppendVarint(p.data, ofBits)
	p.data = binary.LittleEndian.AppendUint64(p.data, math.Float64bits(f))
}

func inMillionths(n int64) float64 { return float64(n) / 1e6 }
func inBillionths(n int64) float64 { return float64(n) / 1e9 * geom.InchMM }

func (w *vocabulary) add(s string) uint64 {
	n, known := w.number[s]
	if !known {
		n = uint64(len(w.list))
		w.number[s], w.list = n, append(w.list, s)
	}
	return n
}

// unpacking takes values off bytes.
type unpacking struct {
	data  []byte
	words []string
}

func (u *unpacking) uvarint() uint64 {
	v, n := binary.Uvarint(u.data)
	u.data = u.data[n:]
	return v
}

func (u *unpacking) varint() int64 {
	v, n := binary.Varint(u.data)
	u.data = u.data[n:]
	return v
}

func (u *unpacking) byte() byte {
	b := u.data[0]
	u.data = u.data[1:]
	return b
}

func (u *unpacking) value(to reflect.Value) {
	switch to.Kind() {
	case reflect.String:
		to.SetString(u.words[u.uvarint()])
	case reflect.Float64:
		to.SetFloat(u.float())
	case reflect.Int:
		to.SetInt(u.varint())
	case reflect.Bool:
		to.SetBool(u.byte() == 1)
	case reflect.Struct:
		for i := range to.NumField() {
			u.value(to.Field(i))
		}
	case reflect.Array:
		for i := range to.Len() {
			u.value(to.Index(i))
		}
	case reflect.Slice:
		if n := int(u.uvarint()); n > 0 {
			to.Set(reflect.MakeSlice(to.Type(), n-1, n-1))
			for i := range n - 1 {
				u.value(to.Index(i))
			}
		}
	case reflect.Pointer:
		if u.byte() == 1 {
			to.Set(reflect.New(to.Type().Elem()))
			u.value(to.Elem())
		}
	}
}

func (u *unpacking) float() float64 {
	n := u.varint()
	switch n & (1<<numberWays - 1) {
	case ofMillimeters:
		return inMillionths(n >> numberWays)
	case ofInches:
		return inBillionths(n >> numberWays)
	}
	f := math.Float64frombits(binary.LittleEndian.Uint64(u.data))
	u.data = u.data[8:]
	return f
}
