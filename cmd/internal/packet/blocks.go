package packet

import "drawerwright/export/paper"

// block is a family as it comes on a page in one piece, of a height in mm; a narrow one has room in one of two columns
// beside another.
type block struct {
	write  func(*paper.Book)
	height float64
	air    float64 // at the end of its height, which it does without at the end of a page
	narrow bool
	views  []paper.View
}

// lookedOver is how many blocks are looked over for those that a page has room for.
const lookedOver = 12

// pages are filled with blocks, whole ones, so that little is left of each.
type pages struct {
	room    func() float64 // that is left of this one, in mm
	turn    func()         // to a new one
	put     func(block)    // onto it
	slack   float64        // in mm, left of each so that the last has more
	waiting []block
}

// overHeading is the space over a heading within a page, in mm, which is not there at the top.
const overHeading = 2.0

// add takes a block, and fills a page when there are enough to choose from.
func (p *pages) add(b block) {
	if p.waiting = append(p.waiting, b); len(p.waiting) >= lookedOver {
		p.waiting = paired(p.waiting)
		p.fill()
	}
}

// end puts all that wait onto pages.
func (p *pages) end() {
	p.waiting = paired(p.waiting)
	for len(p.waiting) > 0 {
		p.fill()
	}
}

// fill puts those blocks that fill what is left of the page best, or else a new one, onto it. One that is longer than a
// page goes on over the next.
func (p *pages) fill() {
	take := fullest(p.waiting, p.room()-p.slack)
	if take == 0 {
		p.turn()
		take = max(1, fullest(p.waiting, p.room()+overHeading-p.slack))
	}
	var rest []block
	for i, b := range p.waiting {
		if take>>i&1 == 1 {
			p.put(b)
		} else {
			rest = append(rest, b)
		}
	}
	p.waiting = rest
}

// paired puts narrow blocks two by two beside each other.
func paired(list []block) (out []block) {
	alone := -1 // the narrow one that has none beside it yet
	for _, b := range list {
		switch {
		case b.narrow && alone >= 0:
			left := out[alone]
			out[alone] = block{height: max(left.height, b.height), air: min(left.air, b.air), write: func(book *paper.Book) {
				book.Abreast(left.write, b.write)
			}}
			alone = -1
			continue
		case b.narrow:
			alone = len(out)
		}
		out = append(out, b)
	}
	return out
}

// fullest is the set of blocks, a bit each, that fill a room in mm best; of such, those that come first.
func fullest(list []block, room float64) (best int) {
	most := 0.0
	for set := 1; set < 1<<len(list); set++ {
		sum, air := 0.0, 0.0
		for i, b := range list {
			if set>>i&1 == 1 {
				sum, air = sum+b.height, b.air
			}
		}
		if sum-air <= room && sum > most {
			best, most = set, sum
		}
	}
	return best
}
