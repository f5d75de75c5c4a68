package main

import (
	"context"
	"fmt"
	"sync/atomic"
	"time"

	"drawerwright/cmd/internal/list"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom/nest"

	"github.com/schollz/progressbar/v3"
)

// working shows a person what is done, with a clock that goes on whatever the work, until it ends;
// nothing of what takes less than a tenth of a second. Say says what is done by now, and may be called
// by several at once.
func (s streams) working(at string) (say func(string), end func()) {
	if !terminal(s.err) {
		return func(string) {}, func() {}
	}
	b := progressbar.NewOptions(-1, progressbar.OptionSetWriter(s.err), progressbar.OptionSetDescription(at),
		progressbar.OptionSetSpinnerChangeInterval(100*time.Millisecond), progressbar.OptionClearOnFinish())
	b.StartWithoutRender()
	return b.Describe, func() { b.Finish() } // only the screen could fail
}

// building shows how many drawers are written, and then that the pages of all are. Done may be called
// by several at once.
func (s streams) building(drawers int) (done, end func()) {
	say, end := s.working("writing the folder")
	var written atomic.Int64
	return func() {
		switch n := int(written.Add(1)); n {
		case drawers:
			say("writing the pages")
		default:
			say(fmt.Sprintf("%d of %d drawers", n, drawers))
		}
	}, end
}

// lay lays a job out on sheets, and shows that it does, unless the search itself shows it.
func (s streams) lay(ctx context.Context, l *loaded, shelf []list.Offcut, o sheets.Search) {
	if o.Options.Progress == nil {
		_, end := s.working("laying out on sheets")
		defer end()
	}
	l.Lay(ctx, shelf, o)
}

// searching shows how far a search for a layout is.
func (s streams) searching() (told func(nest.Progress), end func()) {
	say, end := s.working("sheets")
	return func(p nest.Progress) {
		many := words.Count(p.Sheets, "sheet", "sheets")
		say(fmt.Sprintf("%3.0f %%, %s, cost %g, at least %g", 100*p.Done, many, p.Cost, p.LowerBound))
	}, end
}
