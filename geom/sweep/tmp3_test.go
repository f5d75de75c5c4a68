package sweep

import (
	"bufio"
	"encoding/json"
	"fmt"
	"os"
	"testing"

	"drawerwright/geom"
)

func TestTmpWhy(t *testing.T) {
	f, _ := os.Open("/tmp/unsettled.jsonl")
	sc := bufio.NewScanner(f)
	sc.Buffer(nil, 1<<24)
	n := 0
	for sc.Scan() {
		var s struct {
			What   string
			Radius float64
			Points [][3]float64
		}
		json.Unmarshal(sc.Bytes(), &s)
		var l geom.Loop
		for _, p := range s.Points {
			l = append(l, geom.Vertex{Point: geom.Point{X: p[0], Y: p[1]}, Bulge: p[2]})
		}
		n++
		if n > 90 {
			break
		}
		fmt.Println(n, s.What, s.Radius, len(l))
		if s.What == "outside" {
			l = l.Reverse()
		}
		sides, err := sidesOf(l, true)
		for _, sh := range trials {
			c, err := newCourse(sides, s.Radius-fit*sh, false)
			before := append([]piece(nil), c.pieces...)
			var ok, ok2 bool
			c.pieces, ok = prune(c.pieces, len(c.web.nodes))
			c.links, ok2 = pair(c.pieces, len(c.web.nodes), 1)
			fmt.Println("  ", sh, len(before), len(c.pieces), c.doubt, ok, ok2, err)
			if ok && ok2 && s.What == "pocket" {
				r, err := c.rim(false)
				fmt.Println("    rim", len(r.pieces), err)
			}
			kept := map[[3]int32]bool{}
			for _, q := range c.pieces { kept[[3]int32{q.whole,q.from,q.to}] = true }
			if sh == 0.5 && n<=6 { for _, q := range before { if !kept[[3]int32{q.whole,q.from,q.to}] {
				fmt.Println("   lost", q.whole, q.source, q.from, q.to, q.s, q.t, q.length, q.a, q.b, c.web.curves[q.whole].length, len(c.sides))
				if c.corner(q.source) {
				i := int(q.source)-len(c.sides)
				fmt.Println("     ", c.sides[i], c.sides[(i+1)%len(c.sides)])
				}
			}}}
		}
		_ = err
	}
}
