package readback

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"drawerwright/geom"
)

// Step is what a STEP file has: the solids of its products, and pieces of them in a box.
type Step struct {
	Volumes map[string]float64 // of all solids of a product, by its name, in mm3
	Pieces  []StepPiece
}

// StepPiece is a product in its place.
type StepPiece struct {
	Name, Product string
	Place         geom.Placement
}

// StepOf reads a file of upright prisms: what they hold follows from their level faces. It
// fails where a boundary is not closed.
func StepOf(data []byte) (out Step, err error) {
	e, err := stepEntitiesOf(string(data))
	if err != nil {
		return out, err
	}
	out.Volumes = map[string]float64{}
	for _, ref := range slices.Sorted(maps.Keys(e)) {
		switch v := e[ref]; v.word {
		case "MANIFOLD_SOLID_BREP":
			solid, err := e.get(ref, v.word, 2)
			if err != nil {
				return out, err
			}
			held, err := e.volume(solid[1].ref)
			if err != nil {
				return out, err
			}
			out.Volumes[solid[0].text] += held
		case "CONTEXT_DEPENDENT_SHAPE_REPRESENTATION":
			p, err := e.piece(v.list)
			if err != nil {
				return out, err
			}
			out.Pieces = append(out.Pieces, p)
		}
	}
	return out, nil
}

// follow goes from an entity to one that it names, over kinds and the places of what they name.
func (e stepEntities) follow(ref int, way ...stepWay) (int, error) {
	for _, w := range way {
		list, err := e.get(ref, w.kind, w.at+1)
		if err != nil {
			return 0, err
		}
		ref = list[w.at].ref
	}
	return ref, nil
}

type stepWay struct {
	kind string
	at   int
}

// piece reads where a product stands, and what it is called there.
func (e stepEntities) piece(of []stepValue) (p StepPiece, err error) {
	if len(of) != 2 {
		return p, fmt.Errorf("%w: a place of a piece", errStepRef)
	}
	var to int
	for _, part := range e[of[0].ref].list {
		if part.word == "REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION" && len(part.list) == 1 {
			to = part.list[0].ref
		}
	}
	stands, err := e.follow(to, stepWay{"ITEM_DEFINED_TRANSFORMATION", 3})
	if err != nil {
		return p, err
	}
	origin, z, x, err := e.axes(stands)
	if err != nil {
		return p, err
	}
	p.Place = geom.Placement{Origin: origin, X: x, Y: z.Cross(x)}
	use, err := e.follow(of[1].ref, stepWay{"PRODUCT_DEFINITION_SHAPE", 2})
	if err != nil {
		return p, err
	}
	said, err := e.get(use, "NEXT_ASSEMBLY_USAGE_OCCURRENCE", 5)
	if err != nil {
		return p, err
	}
	p.Name = said[1].text
	product, err := e.follow(said[4].ref, stepWay{"PRODUCT_DEFINITION", 2}, stepWay{"PRODUCT_DEFINITION_FORMATION", 2})
	if err != nil {
		return p, err
	}
	named, err := e.get(product, "PRODUCT", 2)
	if err == nil {
		p.Product = named[1].text
	}
	return p, err
}

// axes are a place and the directions of z and x there.
func (e stepEntities) axes(ref int) (at, z, x geom.Vec3, err error) {
	list, err := e.get(ref, "AXIS2_PLACEMENT_3D", 4)
	if err != nil {
		return at, z, x, err
	}
	for i, to := range []*geom.Vec3{&at, &z, &x} {
		kind := "DIRECTION"
		if i == 0 {
			kind = "CARTESIAN_POINT"
		}
		if *to, err = e.triple(list[i+1].ref, kind); err != nil {
			return at, z, x, err
		}
	}
	return at, z, x, nil
}

func (e stepEntities) triple(ref int, kind string) (v geom.Vec3, err error) {
	list, err := e.get(ref, kind, 2)
	if err != nil {
		return v, err
	}
	if n := list[1].list; len(n) == 3 {
		return geom.Vec3{X: n[0].num, Y: n[1].num, Z: n[2].num}, nil
	}
	return v, fmt.Errorf("%w: #%d has not three numbers", errStepRef, ref)
}

// volume is what a closed shell holds.
func (e stepEntities) volume(shell int) (sum float64, err error) {
	faces, err := e.get(shell, "CLOSED_SHELL", 2)
	if err != nil {
		return 0, err
	}
	ways := map[int]int{} // of each edge: as often one way as the other
	used := map[int]int{}
	for _, f := range faces[1].list {
		face, err := e.get(f.ref, "ADVANCED_FACE", 4)
		if err != nil {
			return 0, err
		}
		under := func(geom.Loop) float64 { return 0 } // a loop of the face; nothing where it is upright
		if e[face[2].ref].word == "PLANE" {
			at, _ := e.follow(face[2].ref, stepWay{"PLANE", 1})
			origin, normal, _, err := e.axes(at)
			if err != nil {
				return 0, err
			}
			if math.Abs(normal.Z) > uprightBy {
				under = func(l geom.Loop) float64 { return volumeUnder(l, origin, normal) }
			}
		}
		for _, bound := range face[1].list {
			loop, err := e.bound(bound.ref, ways, used)
			if err != nil {
				return 0, err
			}
			sum += under(loop)
		}
	}
	for edge, n := range used {
		if n != 2 || ways[edge] != 0 {
			return 0, fmt.Errorf("%w: edge #%d is not in two faces", errStepText, edge)
		}
	}
	return sum, nil
}

// uprightBy is the part of a unit normal that is up, below which a face is upright.
const uprightBy = 1e-6

// volumeUnder is what lies between z = 0 and a loop of a plane, below 0 of one that is seen clockwise. Where the
// plane leans, its edges are straight.
func volumeUnder(l geom.Loop, at, normal geom.Vec3) float64 {
	if math.Hypot(normal.X, normal.Y) < uprightBy {
		return float64(at.Z * l.Area())
	}
	sum := 0.0 // of triangles between the first corner and each side
	height := func(p geom.Point) float64 {
		return at.Z - (float64(normal.X*(p.X-at.X))+float64(normal.Y*(p.Y-at.Y)))/normal.Z
	}
	for i, v := range l {
		w := l.Next(i)
		area := v.Sub(l[0].Point).Cross(w.Sub(l[0].Point)) / 2
		sum += float64(area * (height(l[0].Point) + height(v.Point) + height(w.Point)) / 3)
	}
	return sum
}

// bound gives a loop seen from above, and counts its edges.
func (e stepEntities) bound(ref int, ways, used map[int]int) (geom.Loop, error) {
	loop, err := e.follow(ref, stepWay{e[ref].word, 1})
	if err != nil {
		return nil, err
	}
	list, err := e.get(loop, "EDGE_LOOP", 2)
	if err != nil {
		return nil, err
	}
	var flat geom.Loop
	for _, u := range list[1].list {
		use, err := e.get(u.ref, "ORIENTED_EDGE", 5)
		if err != nil {
			return nil, err
		}
		from, to, err := e.ends(use[3].ref)
		if err != nil {
			return nil, err
		}
		used[use[3].ref]++
		way := 1
		if use[4].word == "F" {
			way, from.Point = -1, to
		}
		ways[use[3].ref] += way
		flat = append(flat, geom.Vertex{Point: from.Point, Bulge: from.Bulge * float64(way)})
	}
	return flat, nil
}

// ends are those of an edge in the plane, and the bulge between them.
func (e stepEntities) ends(ref int) (from geom.Vertex, to geom.Point, err error) {
	edge, err := e.get(ref, "EDGE_CURVE", 5)
	if err != nil {
		return from, to, err
	}
	for i, p := range []*geom.Point{&from.Point, &to} {
		at, err := e.follow(edge[1+i].ref, stepWay{"VERTEX_POINT", 1})
		if err != nil {
			return from, to, err
		}
		v, err := e.triple(at, "CARTESIAN_POINT")
		if err != nil {
			return from, to, err
		}
		*p = geom.Point{X: v.X, Y: v.Y}
	}
	if e[edge[3].ref].word == "CIRCLE" {
		at, _ := e.follow(edge[3].ref, stepWay{"CIRCLE", 1})
		center, _, _, err := e.axes(at)
		if err != nil {
			return from, to, err
		}
		from.Bulge = geom.ArcAbout(geom.Point{X: center.X, Y: center.Y}, from.Point, to).Bulge
	}
	return from, to, nil
}
