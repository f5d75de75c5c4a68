package sheets

import (
	"context"
	"fmt"
	"strings"
	"sync"

	"drawerwright/geom/nest"
)

// Effort is how long layouts are searched for wherever a job is laid out, so that every
// output says the same number of sheets. It keeps that as short as the rest of a build.
const Effort = 200

// Search is how layouts are searched for; the zero value is the usual way.
type Search struct {
	nest.Options         // an effort of 0 is [Effort]
	Memory       *Memory // nil for none
}

// Memory keeps the last layouts, for who lays a job out again after each change. What it
// gives is what a search would find.
type Memory struct {
	mu   sync.Mutex
	keys []string // the latest last
	laid map[string]nest.Layout
}

// remembered is how many layouts are kept: those of a job of many stocks, of each in any and in few stages.
const remembered = 96

func (m *Memory) find(key string) (l nest.Layout, known bool) {
	if m == nil {
		return l, false
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	l, known = m.laid[key]
	return l, known
}

func (m *Memory) keep(key string, l nest.Layout) {
	if m == nil || !l.Completed { // what was stopped may be better the next time
		return
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if _, known := m.laid[key]; known {
		return
	}
	if m.laid == nil {
		m.laid = make(map[string]nest.Layout)
	}
	if len(m.keys) == remembered {
		delete(m.laid, m.keys[0])
		m.keys = m.keys[1:]
	}
	m.keys, m.laid[key] = append(m.keys, key), l
}

// lay is [nest.Lay] with a memory.
func (o Search) lay(ctx context.Context, pieces []nest.Piece, from []nest.Sheet, r nest.Rules) (nest.Layout, error) {
	if o.Effort == 0 {
		o.Effort = Effort
	}
	if o.Memory == nil {
		return nest.Lay(ctx, pieces, from, r, o.Options)
	}
	key := keyOf(pieces, from, r, o.Options)
	if l, known := o.Memory.find(key); known {
		return l, nil
	}
	l, err := nest.Lay(ctx, pieces, from, r, o.Options)
	if err == nil {
		o.Memory.keep(key, l)
	}
	return l, err
}

// keyOf is all that a layout depends on; names do not move a piece.
func keyOf(pieces []nest.Piece, from []nest.Sheet, r nest.Rules, o nest.Options) string {
	var out strings.Builder
	fmt.Fprintln(&out, r, o.Effort, o.Seed)
	for _, p := range pieces {
		p.Name = ""
		fmt.Fprintln(&out, p)
	}
	for _, z := range from {
		z.Name = ""
		fmt.Fprintf(&out, "%+v %q\n", z, z.Batch)
	}
	return out.String()
}
