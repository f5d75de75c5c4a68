package sweep

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// outlines gives the closed chains of linked pieces as simple loops. Sides as
// short as scrap, in millimeters, are left out.
func outlines(pieces []piece, links []link, scrap float64) []geom.Loop {
	var list []geom.Loop
	add := func(chain []int32) {
		if l := outline(pieces, chain, scrap); math.Abs(l.Area()) > speck {
			list = append(list, l)
		}
	}
	for _, chain := range loops(links) {
		unpinch(pieces, chain, add)
	}
	return list
}

// unpinch calls f with the parts of a chain between which it comes back to a
// node where it was before.
func unpinch(pieces []piece, chain []int32, f func([]int32)) {
	place := make(map[int32]int, len(chain)) // of a node in what is kept so far
	var kept []int32
	for _, i := range chain {
		from := pieces[i].from
		if k, ok := place[from]; ok {
			f(slices.Clone(kept[k:]))
			for _, j := range kept[k:] {
				delete(place, pieces[j].from)
			}
			kept = kept[:k]
		}
		place[from] = len(kept)
		kept = append(kept, i)
	}
	f(kept)
}

// outline makes a loop of a chain. Pieces of one source that follow one another
// become one side.
func outline(pieces []piece, chain []int32, scrap float64) geom.Loop {
	first := 0
	for k := range chain {
		if pieces[chain[k]].source != pieces[chain[(k+len(chain)-1)%len(chain)]].source {
			first = k
			break
		}
	}
	l := make(geom.Loop, 0, len(chain)+1)
	for k := 0; k < len(chain); {
		start := &pieces[chain[(first+k)%len(chain)]]
		sweep := 0.0
		for ; k < len(chain) && pieces[chain[(first+k)%len(chain)]].source == start.source; k++ {
			sweep += pieces[chain[(first+k)%len(chain)]].sweep
		}
		if math.Abs(sweep) <= 3*math.Pi/2 {
			l = append(l, geom.Vertex{Point: start.a, Bulge: geom.BulgeOf(sweep)})
			continue
		}
		// The bulge of a full turn is infinite.
		half := newArc(start.center, start.radius, start.unit, sweep/2)
		l = append(l, geom.Vertex{Point: start.a, Bulge: geom.BulgeOf(sweep / 2)}, geom.Vertex{Point: half.b, Bulge: geom.BulgeOf(sweep / 2)})
	}
	// Where things fit just so, sides come out too short to mean anything.
	for i := 0; i < len(l) && len(l) > 2; {
		if next := (i + 1) % len(l); l[i].Point.To(l[next].Point) <= scrap {
			l[i].Bulge = l[next].Bulge
			l = slices.Delete(l, next, next+1)
			continue
		}
		i++
	}
	return l
}

// islandsLast puts loops that run clockwise behind the others.
func islandsLast(loops []geom.Loop) []geom.Loop {
	var sorted []geom.Loop
	for _, l := range loops {
		if l.Area() > 0 {
			sorted = append(sorted, l)
		}
	}
	for _, l := range loops {
		if l.Area() < 0 {
			sorted = append(sorted, l)
		}
	}
	return sorted
}
