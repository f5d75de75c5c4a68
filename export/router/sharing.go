package router

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"drawerwright/export/dxf"
	"drawerwright/export/layer"
	"drawerwright/geom/mill"
)

// Sharing gathers the names of a job's layers: those that cuts of several bits would share,
// and what they leave room for of the names of bits.
type Sharing struct {
	bits map[string]mill.Bit // of the first cut on each
	list map[string]bool
	all  []drawnOn // one of each name and bit
	seen map[namedBit]bool
}

// drawnOn is a layer with what else its name tells.
type drawnOn struct {
	bits  []mill.Bit
	stock string
	layer Layer
}

type namedBit struct{ layer, bit string }

// Add takes the cuts of a part.
func (s *Sharing) Add(p Part, o Options) {
	if s.bits == nil {
		s.bits, s.list, s.seen = make(map[string]mill.Bit), make(map[string]bool), make(map[namedBit]bool)
	}
	for _, c := range p.Work.Cuts {
		var bit mill.Bit // none of a part that is sawn, which may lie on the same sheet
		if c.Bit >= 0 {
			bit = p.Bits[c.Bit]
		}
		l := p.layerOf(c)
		name := o.fill(p.Bits, p.Stock, l)
		if first, known := s.bits[name]; !known {
			s.bits[name] = bit
		} else if first != bit {
			s.list[name] = true
		}
		if key := (namedBit{name, bit.Name}); !s.seen[key] {
			s.seen[key] = true
			s.all = append(s.all, drawnOn{p.Bits, p.Stock, l})
		}
	}
}

// Names are those that are shared, for [Options].
func (s *Sharing) Names() map[string]bool { return s.list }

// Words are shorter ones for the names of bits where they make the name of any layer longer
// than the version takes: as long as all layers of the job leave room for, the same in all
// of them, and no two alike. It is nil where none is needed, or none would do.
func (s *Sharing) Words(o Options) map[string]string {
	o.Shared, o.Words = s.list, nil
	if s.fit(o) {
		return nil
	}
	var names []string
	longest := 0
	for _, d := range s.all {
		if d.layer.Bit < 0 {
			continue
		}
		for _, b := range d.bits {
			if !slices.Contains(names, b.Name) {
				names = append(names, b.Name)
			}
			longest = max(longest, len(layer.Word(b.Name)))
		}
	}
	for room := longest - 1; room > 0; room-- {
		if o.Words = shortened(names, room); o.Words != nil && s.fit(o) {
			return o.Words
		}
	}
	return nil
}

// fit reports whether no name is too long.
func (s *Sharing) fit(o Options) bool {
	for _, d := range s.all {
		if errors.Is(dxf.ValidLayerName(o.Version, o.Name(d.bits, d.stock, d.layer)), dxf.ErrLayerNameLong) {
			return false
		}
	}
	return true
}

// shortened are the words of names cut to so many characters; of those that would be alike
// each after the first ends in a number. It is nil where there is no room for that.
func shortened(names []string, room int) map[string]string {
	words, taken := make(map[string]string), make(map[string]bool)
	for _, name := range names {
		whole := layer.Word(name)
		word := strings.TrimSuffix(whole[:min(room, len(whole))], "-")
		for n := 2; taken[word]; n++ {
			number := fmt.Sprint(n)
			if len(number) >= room {
				return nil
			}
			word = whole[:min(room-len(number), len(whole))] + number
		}
		words[name], taken[word] = word, true
	}
	return words
}

// word is that of a bit in names of layers.
func (o Options) word(bit string) string {
	if w, short := o.Words[bit]; short {
		return w
	}
	return layer.Word(bit)
}
