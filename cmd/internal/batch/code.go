package batch

import (
	"crypto/sha256"
	"encoding/binary"
	"hash"

	"drawerwright/geom"
)

// codeLetters are those of codes: figures and capitals without 0, O, 1 and I, which are taken for each other.
const codeLetters = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"

// codeLength is how many letters a code has. With 32 letters that makes 32^6 codes, about 1.07e9: that two given
// jobs have the same one is one chance in 1.07e9, and that any two of 1,000 jobs of a shop have, about 1 in 2,100.
const codeLength = 6

// codeOf is a short code of what decides the parts: the name of each, how many there are, its stock, its outline and
// its cuts, to a nanometer. It is the same for the same parts, whatever the title of the job, and another where any
// size, name or quantity is: an old page does not pass for one of this job.
func codeOf(drawers []Drawer) string {
	h := coding{sha256.New(), nil}
	for _, d := range drawers {
		for _, p := range d.Parts {
			h.words(p.Name, string(p.Role), p.Stock.Name, string(p.Stock.Grain))
			h.numbers(int64(p.Quantity), int64(p.Spares), int64(len(p.Panel.Pockets)))
			h.lengths(p.Panel.Thickness)
			h.loop(p.Panel.Outline)
			for _, k := range p.Panel.Pockets {
				h.words(k.Kind.String(), k.Face.String())
				h.lengths(k.Depth)
				h.loop(k.Outline)
			}
		}
	}
	sum := binary.BigEndian.Uint64(h.Sum(nil))
	code := make([]byte, codeLength)
	for i := range code {
		code[i] = codeLetters[sum%uint64(len(codeLetters))]
		sum /= uint64(len(codeLetters))
	}
	return string(code)
}

// coding takes what a code is of: words and numbers, each so that where it ends is known.
type coding struct {
	hash.Hash
	out []byte
}

func (c *coding) words(list ...string) {
	for _, s := range list {
		c.numbers(int64(len(s)))
		c.Write([]byte(s))
	}
}

func (c *coding) numbers(list ...int64) {
	c.out = c.out[:0]
	for _, n := range list {
		c.out = binary.BigEndian.AppendUint64(c.out, uint64(n))
	}
	c.Write(c.out)
}

func (c *coding) lengths(list ...float64) {
	for _, mm := range list {
		c.numbers(int64(geom.LengthOf(mm)))
	}
}

func (c *coding) loop(l geom.Loop) {
	c.numbers(int64(len(l)))
	for _, v := range l {
		c.lengths(v.X, v.Y, v.Bulge)
	}
}
