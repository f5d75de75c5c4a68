// Command picture draws a binary STL as an SVG, seen from the front, right and
// above, for the README:
//
//	go run ./testdata/picture out/preview/bench-wide/exploded.stl > samples/bench-wide.svg
//
// It sorts triangles from far to near, which is right for parts that stand
// apart; it is no hidden-line drawing.
package main

import (
	"bufio"
	"cmp"
	"encoding/binary"
	"fmt"
	"log"
	"math"
	"os"
	"slices"

	"drawerwright/geom"
)

// width of the picture in pixels.
const width = 720

// The view: axes of the picture and towards the viewer, all unit vectors.
var (
	toViewer = unit(geom.Vec3{X: 0.62, Y: -1, Z: 0.72})
	across   = unit(geom.Up.Cross(toViewer))
	up       = toViewer.Cross(across)
	light    = unit(geom.Vec3{X: 0.3, Y: -0.55, Z: 1})
)

func unit(v geom.Vec3) geom.Vec3 { return v.Scale(1 / math.Sqrt(v.Dot(v))) }

type triangle struct {
	corners [3]geom.Vec3
	normal  geom.Vec3
}

func main() {
	log.SetFlags(0)
	if len(os.Args) != 2 {
		log.Fatal("usage: picture FILE.stl > FILE.svg")
	}
	all, err := read(os.Args[1])
	if err != nil {
		log.Fatal("picture: ", err)
	}
	out := bufio.NewWriter(os.Stdout)
	draw(out, all)
	if err := out.Flush(); err != nil {
		log.Fatal("picture: ", err)
	}
}

func read(name string) ([]triangle, error) {
	data, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	if len(data) < 84 || len(data) != 84+50*int(binary.LittleEndian.Uint32(data[80:])) {
		return nil, fmt.Errorf("%s is not a binary STL", name)
	}
	var list []triangle
	for at := 84; at < len(data); at += 50 {
		var v [4]geom.Vec3
		for i := range v {
			f := func(k int) float64 {
				return float64(math.Float32frombits(binary.LittleEndian.Uint32(data[at+12*i+4*k:])))
			}
			v[i] = geom.Vec3{X: f(0), Y: f(1), Z: f(2)}
		}
		list = append(list, triangle{[3]geom.Vec3{v[1], v[2], v[3]}, v[0]})
	}
	return list, nil
}

// creases finds the sides at which the surface turns, by their ends.
func creases(all []triangle) map[[2]geom.Vec3]bool {
	normals := make(map[[2]geom.Vec3]geom.Vec3)
	for _, t := range all {
		for i := range t.corners {
			normals[[2]geom.Vec3{t.corners[i], t.corners[(i+1)%3]}] = t.normal
		}
	}
	sharp := make(map[[2]geom.Vec3]bool)
	for side, n := range normals {
		other, ok := normals[[2]geom.Vec3{side[1], side[0]}]
		sharp[side] = !ok || n.Dot(other) < 0.9
	}
	return sharp
}

func draw(out *bufio.Writer, all []triangle) {
	sharp := creases(all)
	depth := func(t triangle) float64 {
		return t.corners[0].Add(t.corners[1]).Add(t.corners[2]).Dot(toViewer)
	}
	low, high := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, t := range all {
		for _, c := range t.corners {
			for k, v := range [2]float64{c.Dot(across), -c.Dot(up)} {
				low[k], high[k] = math.Min(low[k], v), math.Max(high[k], v)
			}
		}
	}
	margin := 0.02 * (high[0] - low[0])
	scale := width / (high[0] - low[0] + 2*margin)
	at := func(v geom.Vec3) (x, y float64) {
		return (v.Dot(across) - low[0] + margin) * scale, (-v.Dot(up) - low[1] + margin) * scale
	}
	fmt.Fprintf(out, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %.0f\" stroke-linejoin=\"round\">\n", width, (high[1]-low[1]+2*margin)*scale)
	seen := slices.DeleteFunc(all, func(t triangle) bool { return t.normal.Dot(toViewer) <= 0 })
	slices.SortStableFunc(seen, func(a, b triangle) int { return cmp.Compare(depth(a), depth(b)) })
	for _, t := range seen {
		shade := 0.55 + 0.45*math.Max(0, t.normal.Dot(light))
		colour := fmt.Sprintf("#%02x%02x%02x", int(232*shade), int(214*shade), int(184*shade))
		fmt.Fprintf(out, "<path fill=%q stroke=%q stroke-width=\".4\" d=\"M", colour, colour)
		for _, c := range t.corners {
			x, y := at(c)
			fmt.Fprintf(out, "%.1f %.1f ", x, y)
		}
		fmt.Fprint(out, "z\"/>\n")
		for i := range t.corners {
			a, b := t.corners[i], t.corners[(i+1)%3]
			if sharp[[2]geom.Vec3{a, b}] {
				x0, y0 := at(a)
				x1, y1 := at(b)
				fmt.Fprintf(out, "<path fill=\"none\" stroke=\"#443a2c\" stroke-width=\".9\" d=\"M%.1f %.1f %.1f %.1f\"/>\n", x0, y0, x1, y1)
			}
		}
	}
	fmt.Fprint(out, "</svg>\n")
}
