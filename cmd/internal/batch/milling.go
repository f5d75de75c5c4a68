package batch

import (
	"sync"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// milling works out how parts are milled. It keeps what was asked for last, and no more: of thousands of drawers that
// would take as much memory as all else of them, and it is found as soon as it is read. Goroutines may share it.
type milling struct {
	settings mill.Settings // without bits
	mu       sync.Mutex
	latest   map[milled]mill.Operations
}

// milled is a part as it is asked for.
type milled struct {
	part      *joinery.Part
	engraving *mill.Engraving
}

// keptWork is of how many parts the work is kept.
const keptWork = 128

// prepare is how a part is milled by bits, and what is wrong with that.
func (m *milling) prepare(of milled, bits []mill.Bit) (mill.Operations, []geom.Diagnosis) {
	var settings mill.Settings
	if m != nil {
		settings = m.settings
	}
	settings.Bits = bits
	thick := of.part.Stock.Thickness
	return mill.Prepare(mill.Part{Panel: of.part.Panel, MinThickness: thick.Min, MaxThickness: thick.Max,
		Engraving: of.engraving}, settings)
}

// Work is how a part is milled; it is shared, and not to be changed.
func (p Part) Work() mill.Operations {
	m, of := p.milling, milled{p.Part, p.engraving}
	if m == nil { // of no job
		work, _ := m.prepare(of, p.Bits)
		return work
	}
	m.mu.Lock()
	work, known := m.latest[of]
	m.mu.Unlock()
	if known {
		return work
	}
	work, _ = m.prepare(of, p.Bits)
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.latest) >= keptWork {
		clear(m.latest)
	}
	m.latest[of] = work
	return work
}
