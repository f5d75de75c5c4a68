package dxftest

import "drawerwright/export/dxf/dxfread"

// checkEntities checks what is drawn.
func (c *checker) checkEntities() {
	records := find(c.sections, "ENTITIES").records
	var polyline *record // the POLYLINE whose vertices now follow
	for i := range records {
		r := &records[i]
		c.place(*r)
		if (r.kind == "VERTEX" || r.kind == "SEQEND") != (polyline != nil) {
			c.fault(RuleSequence, r.line, "%s", r.kind)
			polyline = nil
		}
		switch r.kind {
		case "LWPOLYLINE":
			if c.r12 {
				c.fault(RuleKind, r.line, "LWPOLYLINE in R12")
				break
			}
			c.markers(*r, "AcDbEntity", "AcDbPolyline")
			if stated, n := r.number(90, -1), r.count(10); stated != n {
				c.fault(RuleVertexCount, r.line, "states %d vertices and has %d", stated, n)
			}
			c.pairs(*r)
			c.flag(*r)
		case "POLYLINE":
			if !c.r12 {
				c.fault(RuleKind, r.line, "POLYLINE in R2000")
			}
			if r.number(66, 0) != 1 {
				c.fault(RuleSequence, r.line, "group 66 does not say that vertices follow")
			}
			c.flag(*r)
			polyline = r
		case "VERTEX", "SEQEND":
			if polyline != nil && r.text(8) != polyline.text(8) {
				c.fault(RuleLayer, r.line, "%s on %q, its polyline on %q", r.kind, r.text(8), polyline.text(8))
			}
			if r.kind == "SEQEND" {
				polyline = nil
				break
			}
			c.pairs(*r)
		case "CIRCLE":
			if !c.r12 {
				c.markers(*r, "AcDbEntity", "AcDbCircle")
			}
			c.pairs(*r)
		default:
			c.fault(RuleKind, r.line, "%s", r.kind)
		}
	}
	if polyline != nil {
		c.fault(RuleSequence, polyline.line, "no SEQEND")
	}
	for _, e := range c.drawn {
		c.shape(e)
	}
}

// place checks the layer, the line type and the plane.
func (c *checker) place(r record) {
	if !c.hasLayer(r.text(8)) {
		c.fault(RuleLayer, r.line, "%s on layer %q", r.kind, r.text(8))
	}
	if t, ok := r.first(6); ok && key(t.Value) != "BYLAYER" && key(t.Value) != "BYBLOCK" {
		if _, ok := c.recordOf("LTYPE", t.Value); !ok {
			c.fault(RuleLinetype, t.Line, "%s with line type %q", r.kind, t.Value)
		}
	}
	for _, t := range r.tags {
		wide := r.kind != "CIRCLE" && (t.Code == 40 || t.Code == 41)
		high := !c.raised && (t.Code == 30 || t.Code == 38 || t.Code == 39)
		if flat := high || t.Code == 43 || wide; flat && t.float() != 0 {
			c.fault(RulePlane, t.Line, "%s, group %d: %s", r.kind, t.Code, t.Value)
		}
		if t.Code == 42 && t.float() == 0 {
			c.fault(RuleTag, t.Line, "%s with a bulge of 0", r.kind)
		}
	}
}

// pairs checks that each x is followed by its y.
func (c *checker) pairs(r record) {
	for i, t := range r.tags {
		if t.Code == 10 && (i+1 == len(r.tags) || r.tags[i+1].Code != 20) {
			c.fault(RuleTag, t.Line, "%s: group 10 without 20", r.kind)
		}
		if t.Code == 20 && (i == 0 || r.tags[i-1].Code != 10) {
			c.fault(RuleTag, t.Line, "%s: group 20 without 10", r.kind)
		}
	}
}

func (c *checker) flag(r record) {
	if n := r.number(70, 0); n != 0 && n != 1 {
		c.fault(RuleFlag, r.line, "%s: %d", r.kind, n)
	}
}

// shape checks what one entity is in the plane.
func (c *checker) shape(e dxfread.Entity) {
	if e.Low != e.High {
		c.fault(RulePlane, e.Line, "from z = %v to %v", e.Low, e.High)
	}
	if e.Type == "CIRCLE" {
		if e.Radius <= 0 {
			c.fault(RuleRadius, e.Line, "circle of radius %v", e.Radius)
		}
		return
	}
	n := len(e.Vertices)
	if n < 2 {
		c.fault(RuleVertexCount, e.Line, "%d vertices", n)
		return
	}
	bent := false
	for i, p := range e.Vertices {
		q := e.Vertices[(i+1)%n]
		bent = bent || p.Bulge != 0
		last := i == n-1
		switch meets := p.X == q.X && p.Y == q.Y; {
		case !last && meets:
			c.fault(RuleEdge, e.Line, "vertices %d and %d at %v, %v", i, i+1, p.X, p.Y)
		case last && e.Closed && meets:
			c.fault(RuleEdge, e.Line, "closed, and the last vertex is on the first")
		case last && !e.Closed && meets:
			c.fault(RuleClosed, e.Line, "open, and the last vertex is on the first")
		}
	}
	if e.Closed && n == 2 && !bent {
		c.fault(RuleClosed, e.Line, "closed, of two straight edges")
	}
}
