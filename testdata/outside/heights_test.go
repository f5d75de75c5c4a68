package outside

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"
)

// nearHeight is how near heights have to be, in millimeters: cuts that share a layer may
// differ by what its name rounds off.
const nearHeight = 0.011

// floorOf works out, in millimeters, at which height a cut of the legend ends and where its
// face is: from the face down, or from the top of the spoilboard. What goes through goes
// through the thickest board, and as far on as the job says.
func (r report) floorOf(l legendRow, stock string) (floor, face float64) {
	thick, most := 0.0, 0.0
	for _, s := range r.Stocks {
		if s.Name == stock {
			thick, most = s.Thickness*r.mm(), s.Max*r.mm()
		}
	}
	through := r.Router.IntoSpoilboard * r.mm()
	if r.Router.DepthFrom == "spoilboard" && l.Diameter > 0 {
		face, most = thick, thick // zero is under the board, whatever its thickness
	}
	if l.Stated == "through" {
		return face - most - through, face
	}
	return face - l.Depth*r.mm(), face
}

// checkHeights: what is cut lies level at the floor of its cut and is as thick as reaches up
// to the face, where the job asks for elevations; all else lies at 0.
func (r report) checkHeights(a audited, rows []legendRow, stock string, scale float64) error {
	counts := make([]int, len(rows))
	for _, e := range a.Entities {
		low, high, top := e.Heights[0]*scale, e.Heights[1]*scale, (e.Heights[0]+e.Heights[2])*scale
		found, listed := -1, false
		for i, l := range rows {
			if l.Layer != e.Layer {
				continue
			}
			floor, face := 0.0, 0.0
			if r.DXF.Elevation {
				floor, face = r.floorOf(l, stock)
			}
			listed = true
			pin := l.Operation == "register" && r.DXF.Elevation && low < floor-1 // and so far on that a pin stands there
			if (math.Abs(low-floor) < nearHeight && l.Operation != "register" || !r.DXF.Elevation && low == 0 || pin) && math.Abs(top-face) < nearHeight {
				found = i
			}
		}
		switch {
		case high != low || !listed && (low != 0 || top != 0):
			return fmt.Errorf("something on %s lies from %g to %g, up to %g", e.Layer, low, high, top)
		case listed && found < 0:
			return fmt.Errorf("something on %s lies at %g and reaches up to %g: no cut of the legend",
				e.Layer, low, top)
		case found >= 0:
			counts[found]++
		}
	}
	for i, l := range rows {
		if counts[i] != l.Cuts {
			return fmt.Errorf("%d lines on %s lie where the legend has %d", counts[i], l.Layer, l.Cuts)
		}
	}
	return nil
}

// heightsOf checks all drawings of a folder that have a legend.
func (r report) heightsOf(t *testing.T, dir string, scale float64) {
	t.Helper()
	rows, stock := map[string][]legendRow{}, map[string]string{}
	for _, l := range r.Layers {
		rows[l.File] = append(rows[l.File], l)
	}
	for _, p := range r.Parts {
		stock[p.Files.Inside], stock[p.Files.Outside] = p.Stock, p.Stock
	}
	for _, k := range r.Sheets {
		for _, s := range k.Sheets {
			for _, l := range s.Layers {
				rows[l.File], stock[l.File] = append(rows[l.File], l), k.Stock
			}
		}
	}
	seen := 0
	for _, a := range audit(t, glob(t, dir, ".dxf")) {
		name, err := filepath.Rel(dir, a.File)
		if err != nil {
			t.Fatal(err)
		}
		name = filepath.ToSlash(name)
		if seen++; rows[name] == nil && strings.HasPrefix(name, "router/") { // of a single bit
			continue
		}
		if err := r.checkHeights(a, rows[name], stock[name], scale); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if seen == 0 {
		t.Error("no drawings")
	}
}
