package prove

import (
	"errors"
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/milled"
	"drawerwright/geom/sweep"

	"drawerwright/cmd/internal/record"
)

// ErrUncut is wrapped by errors about drawings of which no board can be cut.
var ErrUncut = errors.New("the drawings cut no board")

// Board reads the drawings of a part, as they were written, and gives the board as the
// bits of the legend leave it, of the mean thickness; the proof of its drawer goes on from
// what was read. Errors wrap [ErrUncut].
func (w *Worker) Board(part string, read Read) (milled.Board, error) {
	i, known := w.parts[part]
	if !known {
		return milled.Board{}, fmt.Errorf("%w: the report has no part %s", ErrUncut, part)
	}
	r := w.reader(w.report.Parts.At(i), read, false)
	if !r.out.whole {
		why := "it has no outline"
		if len(r.faults) > 0 {
			why = r.faults[0].File + ": " + r.faults[0].Message
		}
		return milled.Board{}, fmt.Errorf("%w: %s: %s", ErrUncut, part, why)
	}
	b, err := w.keep(r)
	w.ahead[part] = r
	return b, err
}

// keep gives the board of a part that was read, and keeps it for the checks of its solids, as long as the
// worker is at its drawer: those of thousands of drawers would be the most in memory.
func (w *Worker) keep(r *panelReader) (milled.Board, error) {
	if of := w.drawerOf(r.part.Name).Name; w.boards == nil || w.at != of { // what was of another is not proven
		w.at, w.ahead, w.boards = of, make(map[string]*panelReader), make(map[string]milled.Board)
	}
	b, err := r.board()
	if err == nil {
		w.boards[r.part.Name] = b
	}
	return b, err
}

// reader is one that has read all drawings of a part, and judged them.
func (w *Worker) reader(part record.Part, read Read, detail bool) *panelReader {
	if r := w.ahead[part.Name]; r != nil && !detail {
		delete(w.ahead, part.Name)
		return r
	}
	r := &panelReader{Prover: w.Prover, part: part, read: read, detail: detail,
		saw: !joinery.CutterKind(w.drawerOf(part.Name).Machine).FollowsDrawing()}
	r.panel()
	return r
}

// board is the part with all that its bits reach.
func (r *panelReader) board() (b milled.Board, err error) {
	b = milled.Board{Outline: r.out.left, Thickness: r.out.thickness}
	for _, c := range r.drawn {
		cut := milled.Cut{Face: c.face, Depth: c.deepest(r.out.thickness), Reach: c.reach}
		switch {
		case c.operation == "register":
			cut.Reach = []geom.Loop{c.loop}
		case c.operation == "profile" && c.through:
			continue
		case c.operation == "profile":
			if cut.Reach, err = sweep.Outset(c.loop, c.bit); err != nil {
				return b, fmt.Errorf("%w: %s:%d: %w", ErrUncut, c.file, c.at, err)
			}
			b.CutOut = append(b.CutOut, cut)
			continue
		}
		if len(cut.Reach) > 0 {
			b.Cuts = append(b.Cuts, cut)
		}
	}
	return b, nil
}

// shown is what the solids of a part have to show: its design, or one of the ways in which its
// board is milled. A part of which no board can be cut has a fault where its drawer is proven.
func (w *Worker) shown(c *checking, part record.Part, read Read, way func(milled.Board) geom.Panel) (shapeOf, bool) {
	if w.drawerOf(part.Name).Preview != record.PreviewMilled {
		return w.shape(part)
	}
	b, err := w.milledBoard(part.Name, read)
	if err != nil {
		return shapeOf{}, false
	}
	return shapeFrom(way(b), asMilled), true
}

// milledBoard is the board of a part, which several checks ask for.
func (w *Worker) milledBoard(part string, read Read) (milled.Board, error) {
	if b, known := w.boards[part]; known && w.at == w.drawerOf(part).Name {
		return b, nil
	}
	defer delete(w.ahead, part)
	return w.Board(part, read)
}
