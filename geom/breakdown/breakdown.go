// Package breakdown puts the cuts that take laid-out sheets apart in order: with the
// setting of the fence or stop for each, what it gives, and what stays in hand.
//
// Lengths are whole numbers of a unit, as in package nest; a board's sides are along x
// and y of the sheet that it came from.
package breakdown

import (
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// Sheet is one way in which some sheets are cut.
type Sheet struct {
	Name  string
	Count int          // of sheets cut alike
	Size  nest.Sheet   // with its trims
	Board nest.CutTree // what its trims leave of it, and how that comes apart
	// Names is what a piece is, or what a strip holds, in full and shortly: of placed pieces, by their indices.
	Names func(placed []int) (name, short string)
}

// Rules of breaking down.
type Rules struct {
	Kerf int64
	// Allowance is how much larger a board is first cut where its size gets a cut of its own, 0 for none.
	Allowance int64
	// Weight is that of a square of unit sides, in kg, 0 where it is not known;
	// Heaviest is what one person puts onto a saw.
	Weight, MaxWeight float64
	// MinGuided is the least edge that a fence guides, and the least side of a board that
	// is held by hand at a saw.
	MinGuided int64
	// RipCapacity is how far the fence opens, CrosscutCapacity how long a crosscut is at most, and SledCapacity how
	// long a board that lies across the sled. MaxStop is how far from the blade the stop on it can be.
	RipCapacity, CrosscutCapacity, SledCapacity, MaxStop int64
	// Squared says that both edges of a sheet are cleaned up before it is cut, not the ends of each strip.
	Squared bool
	// Before is what has a name already: names of strips and pieces go on after that.
	Before Named
}

// Named is how many letters strips of a sheet have, and how many numbers pieces that come off the sheet itself.
type Named struct{ Strips, Pieces int }

// Most is the larger of each.
func (n Named) Most(o Named) Named { return Named{max(n.Strips, o.Strips), max(n.Pieces, o.Pieces)} }

// Kind is how a cut is made.
type Kind uint8

const (
	// HandHeld cuts are made along a guide with a saw that is taken to the board.
	HandHeld Kind = iota
	// FenceCut cuts run along the fence.
	FenceCut
	// SledCut is one against a stop, the board on a sled or miter gauge, whichever way its grain runs.
	SledCut
)

func (k Kind) String() string { return [...]string{"hand-held", "fence cut", "sled cut"}[k] }

// Workpiece is a board in hand.
type Workpiece struct {
	Name, Short   string
	Length, Width int64
	Piece, Offcut bool // it is ready; nothing more is cut from it
	// Clean is what trims would leave of an offcut.
	Clean [2]int64
}

// Cut is one cut, made alike on Count boards.
type Cut struct {
	Stage int // from 1; 0 for those that make sheets light enough
	Kind  Kind
	// Trim says that it straightens an edge, off which all else is measured.
	Trim bool
	// Rough says that what it gives is larger by the allowance, which a cut on the machine takes off.
	Rough bool
	// Setting is what the fence or stop keeps between itself and the blade, or what lies
	// before the guide: the width of what is given, of a trim along the fence that of what
	// stays. Of other trims it is what they take off, by eye.
	Setting        int64
	Count          int
	Workpiece      Workpiece
	Yields         Workpiece // of no name where it is sawdust
	Remainder      Workpiece // likewise
	SettingChanged bool      // fence or stop is set for it: it stood elsewhere, or was taken away for other cuts
	SetAs          int       // where it is set again, the number, from 1, of the last cut of the same setting; else 0
	NeedsHelper    bool      // the board is too heavy for one person
	Short          bool      // the board is too small to be held by hand or guided by the fence
}

// Cuts puts the cuts of sheets in order: those of one setting one after the other on all boards, as far as what lies on
// them allows. Of each sheet it tells what they make of its layout.
func Cuts(sheets []Sheet, r Rules) (cuts []Cut, laid []Laid) {
	laid = make([]Laid, len(sheets))
	c := cutter{rules: r}
	var boards []board
	for i, s := range sheets {
		t, n := s.Size.Trim, len(s.Board.Placed())
		laid[i] = Laid{Called: make([]string, n), Places: make([][2]int64, n)}
		of := &sheet{Sheet: s, cut: &laid[i]}
		of.cut.Named = r.Before
		b := board{CutTree: s.Board, mark: s.Name, name: "sheet " + s.Name, short: s.Name, of: of, count: s.Count,
			edge: [2]int64{t.Left, t.Bottom}, over: [2]int64{t.Right, t.Top}, after: -1}.settled()
		b.given() // which may be a piece as it is
		boards = append(boards, c.halves(b, 0, c.heavy)...)
	}
	for stage := 1; len(boards) > 0; stage++ {
		boards = c.stage(boards, stage)
	}
	cuts = inOrder(c.jobs)
	setDevices(cuts)
	return cuts, laid
}

type cutter struct {
	rules Rules
	jobs  []job
}

// stage makes one stage's cuts and gives the boards of the next.
func (c *cutter) stage(boards []board, stage int) (after []board) {
	for _, b := range boards {
		for _, p := range c.along(b, stage) {
			if _, more := p.next(); len(more) > 0 {
				after = append(after, p)
			}
		}
	}
	return after
}

// along makes the cuts of one board along its next axis, and gives what they make of it.
func (c *cutter) along(b board, stage int) (parts []board) {
	axis, sections := b.next()
	if len(sections) == 0 {
		return nil
	}
	first := len(c.jobs)
	if c.rules.Squared && stage == 1 {
		across := c.taken(b, stage, 1-axis)
		across.trim(b.edge[1-axis], across.from)
		b = across.board
		b.edge[1-axis] = 0
	}
	if parts, done := c.inHalves(b, stage); done {
		return parts
	}
	h := c.taken(b, stage, axis)
	h.first = first
	h.trim(b.edge[axis], h.from)
	h.single = len(sections) == 1
	room := c.roomOf(b, axis, sections)
	for _, s := range sections {
		room.kept += c.rules.tight(s, axis) * c.rules.Allowance
	}
	for i, s := range sections {
		wanted := c.rules.tight(s, axis)
		room.kept -= wanted * c.rules.Allowance
		s, last := moved(s, axis, room.shift), i == len(sections)-1
		if before := s.From(axis) - h.from; before > 0 { // waste, which only sets that keep their order have
			b.offcut(axis, h.from, before-c.rules.Kerf+b.over[axis])
			h.trim(before, s.From(axis))
		}
		by, _ := room.take(wanted, last)
		size, rough := s.Size(axis)+by, false
		s = c.rules.larger(s, axis, by)
		if h.end > s.From(axis)+size && h.next(size, h.extent()) == HandHeld && c.onMachine(size, b.whole(1-axis)) {
			if by, rough = room.take(1, last); rough {
				s = oversize(s, axis, by)
			}
		}
		parts = append(parts, h.part(s, last, rough))
	}
	return parts
}

// inHand is a board while its parts are cut off it along one axis.
type inHand struct {
	*cutter
	board  board
	stage  int
	axis   geom.Axis
	rest   Workpiece // what is still in hand of it
	from   int64     // where that begins
	end    int64     // of the board
	first  int       // its first cut among the jobs
	given  int       // pieces that it gave
	single bool      // one part is all that comes of it
}

// taken is a board that is taken in hand to be cut along an axis.
func (c *cutter) taken(b board, stage int, axis geom.Axis) inHand {
	return inHand{cutter: c, board: b, stage: stage, axis: axis, rest: b.hand(),
		from: b.From(axis), end: b.From(axis) + b.Size(axis) + b.over[axis]}
}

// extent is how far what is in hand reaches along the axis.
func (h *inHand) extent() int64 {
	if h.axis == geom.AlongY {
		return h.rest.Width
	}
	return h.rest.Length
}

// resized is a workpiece of another size along the axis.
func (h *inHand) resized(w Workpiece, size int64) Workpiece {
	if h.axis == geom.AlongY {
		w.Width = size
	} else {
		w.Length = size
	}
	return w
}

// cut makes a cut of what is in hand.
func (h *inHand) cut(k Cut) {
	k.Stage, k.Count, k.Workpiece = h.stage, h.board.count, h.rest
	k.NeedsHelper = h.heavyHand(h.rest)
	k.Short = max(h.rest.Length, h.rest.Width) < h.rules.MinGuided
	h.jobs = append(h.jobs, job{k, h.board.after})
	h.board.after, h.rest = len(h.jobs)-1, k.Remainder
}

// trim cuts off so much that is before a place.
func (h *inHand) trim(trim, to int64) {
	if trim <= 0 {
		return
	}
	rest := h.end - to
	k := Cut{Kind: h.kind(rest, 0, h.board.whole(1-h.axis), rest+trim), Trim: true, Setting: rest,
		Remainder: h.resized(h.rest, rest)}
	if k.Kind != FenceCut {
		k.Setting = trim
	}
	if trim > h.rules.Kerf {
		strip := Workpiece{Offcut: true, Name: "trim", Short: "trim", Length: h.rest.Length, Width: h.rest.Width}
		k.Yields = h.resized(strip, trim-h.rules.Kerf)
	}
	h.cut(k)
}

// part cuts off a section: where nothing is beyond it, it is what is in hand.
func (h *inHand) part(section nest.CutTree, last, rough bool) board {
	p := h.board
	p.CutTree = section
	p.edge[h.axis], p.over[h.axis] = 0, 0
	size := section.Size(h.axis)
	at := section.From(h.axis) + size
	h.from = at + h.rules.Kerf
	p = p.settled()
	whole := h.end <= at && len(h.jobs) == h.first // it is all of the board, whose name it keeps
	switch {
	case whole || len(h.board.Sections) == 0:
	case p.done():
		h.given++
		p.mark = h.board.numbered(h.given)
	case h.single && h.board.mark != h.board.of.Name: // it is the strip still
	default:
		p.strip()
	}
	gives := p.given()
	if h.end <= at {
		if n := len(h.jobs); n > h.first {
			h.jobs[n-1].Remainder = gives
		}
		return p
	}
	left := Workpiece{}
	if rest := h.end - h.from; rest > 0 {
		left = h.resized(h.rest, rest)
		if left.Name, left.Short, left.Offcut = h.board.name, h.board.short, last; left.Offcut {
			left.Clean = h.board.offcut(h.axis, h.from, rest)
		}
	}
	h.cut(Cut{Kind: h.next(size, h.extent()), Rough: rough, Setting: size, Yields: gives, Remainder: left})
	p.after = h.board.after
	return p
}

// next is how the next section is cut off: on the sled where one before it was, so that pieces that are alike have one
// stop though what is in hand grows shorter.
func (h *inHand) next(setting, extent int64) Kind {
	onSled := func(j job) bool { return j.Kind == SledCut && !j.Trim }
	if setting <= h.rules.MaxStop && slices.ContainsFunc(h.jobs[h.first:], onSled) {
		return SledCut
	}
	return h.kind(setting, setting, h.board.whole(1-h.axis), extent)
}

// kind is how a cut of a length is made that is set to a width, at a stop for it, 0 for none, on a board that reaches
// so far across it. Along the fence a board needs an edge that is long beside what is between fence and blade and as
// long as the board is across, else it turns and is thrown; it is cut on the sled then. Where the sled does not take
// it an edge of two thirds will do (common practice, no source).
func (c *cutter) kind(setting, stop, length, extent int64) Kind {
	guided := length >= c.rules.MinGuided && length >= setting && setting <= c.rules.RipCapacity
	switch {
	case guided && length >= extent:
		return FenceCut
	case length <= c.rules.CrosscutCapacity && extent <= c.rules.SledCapacity && stop <= c.rules.MaxStop:
		return SledCut
	case guided && 3*length >= 2*extent:
		return FenceCut
	}
	return HandHeld
}

// onMachine reports whether fence or sled takes the allowance off a board of this length, down to a size.
func (c *cutter) onMachine(size, length int64) bool {
	return c.kind(size, size, length, size+c.rules.Allowance) != HandHeld
}

func (c *cutter) heavyHand(h Workpiece) bool {
	return c.rules.MaxWeight > 0 && float64(h.Length)*float64(h.Width)*c.rules.Weight > c.rules.MaxWeight
}
