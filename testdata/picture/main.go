// Command picture draws a binary STL, seen from the front, right and above, and a part of a
// page of the packet beside it, as a PNG for the README:
//
//	drawerwright build samples/bench-drawers.yaml --exploded -o out
//	pdftoppm -r 72 -f 2 -l 2 -y 425 -H 262 -gray -png -singlefile out/packet.pdf page
//	go run ./testdata/picture out/3d/bench-wide/exploded.stl page.png > samples/bench-wide.png
package main

import (
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"log"
	"math"
	"os"

	"drawerwright/geom"
)

// width is the drawing's width in pixels, samples is how many a pixel has each way, gap is
// between drawing and page.
const width, samples, gap = 460, 3, 20

// The view: axes of the picture and toward the viewer, all unit vectors.
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
	if len(os.Args) != 3 {
		log.Fatal("usage: picture FILE.stl PAGE.png > FILE.png")
	}
	all, err := read(os.Args[1])
	if err != nil {
		log.Fatal("picture: ", err)
	}
	page, err := readPage(os.Args[2])
	if err != nil {
		log.Fatal("picture: ", err)
	}
	small := png.Encoder{CompressionLevel: png.BestCompression}
	if err := small.Encode(os.Stdout, beside(newCanvas(all).picture(), page)); err != nil {
		log.Fatal("picture: ", err)
	}
}

func readPage(name string) (image.Image, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return png.Decode(f)
}

// beside puts a page, in a frame, at the right of a drawing; the lower of both is in the middle.
func beside(drawing, page image.Image) image.Image {
	left, right := drawing.Bounds(), page.Bounds()
	high := max(left.Dy(), right.Dy()+2)
	out := image.NewRGBA(image.Rect(0, 0, left.Dx()+gap+right.Dx()+2, high))
	draw.Draw(out, out.Bounds(), image.White, image.Point{}, draw.Src)
	draw.Draw(out, left.Add(image.Pt(0, (high-left.Dy())/2)), drawing, left.Min, draw.Src)
	at := image.Pt(left.Dx()+gap, (high-right.Dy()-2)/2)
	frame := image.Rect(0, 0, right.Dx()+2, right.Dy()+2).Add(at)
	draw.Draw(out, frame, image.NewUniform(color.Gray{170}), image.Point{}, draw.Src)
	draw.Draw(out, frame.Inset(1), page, right.Min, draw.Src)
	return out
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

// canvas holds, for each sample, the nearest surface: its depth and normal.
type canvas struct {
	w, h   int
	scale  float64 // samples per millimeter
	left   float64 // of the picture, in millimeters along across
	top    float64 // along up
	depth  []float64
	normal []geom.Vec3
}

func newCanvas(all []triangle) *canvas {
	low, high := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, t := range all {
		for _, c := range t.corners {
			for k, v := range [2]float64{c.Dot(across), c.Dot(up)} {
				low[k], high[k] = math.Min(low[k], v), math.Max(high[k], v)
			}
		}
	}
	margin := 0.02 * (high[0] - low[0])
	c := &canvas{w: width * samples, left: low[0] - margin, top: high[1] + margin}
	c.scale = float64(c.w) / (high[0] - low[0] + 2*margin)
	c.h = int((high[1]-low[1]+2*margin)*c.scale) / samples * samples
	c.depth = make([]float64, c.w*c.h)
	c.normal = make([]geom.Vec3, c.w*c.h)
	for i := range c.depth {
		c.depth[i] = math.Inf(-1)
	}
	for _, t := range all {
		if t.normal.Dot(toViewer) > 0 {
			c.fill(t)
		}
	}
	return c
}

// fill puts a triangle where it is the nearest.
func (c *canvas) fill(t triangle) {
	var x, y, z [3]float64
	for i, v := range t.corners {
		x[i], y[i], z[i] = (v.Dot(across)-c.left)*c.scale, (c.top-v.Dot(up))*c.scale, v.Dot(toViewer)
	}
	area := (x[1]-x[0])*(y[2]-y[0]) - (y[1]-y[0])*(x[2]-x[0])
	if area == 0 {
		return
	}
	for py := max(0, int(min(y[0], y[1], y[2]))); py <= min(c.h-1, int(max(y[0], y[1], y[2]))); py++ {
		for px := max(0, int(min(x[0], x[1], x[2]))); px <= min(c.w-1, int(max(x[0], x[1], x[2]))); px++ {
			fx, fy := float64(px)+0.5, float64(py)+0.5
			a := ((x[1]-fx)*(y[2]-fy) - (y[1]-fy)*(x[2]-fx)) / area
			b := ((x[2]-fx)*(y[0]-fy) - (y[2]-fy)*(x[0]-fx)) / area
			if a < 0 || b < 0 || a+b > 1 {
				continue
			}
			if d, i := a*z[0]+b*z[1]+(1-a-b)*z[2], py*c.w+px; d > c.depth[i] {
				c.depth[i], c.normal[i] = d, t.normal
			}
		}
	}
}

// line reports whether a sample is on a drawn line: where the surface turns, or
// the depth jumps by more than the surface's own slope explains.
func (c *canvas) line(px, py int) bool {
	i := py*c.w + px
	for _, j := range [2]int{i + 1, i + c.w} {
		if px == c.w-1 || py == c.h-1 {
			return false
		}
		a, b := c.depth[i], c.depth[j]
		if math.IsInf(a, -1) && math.IsInf(b, -1) {
			continue
		}
		if math.IsInf(a, -1) != math.IsInf(b, -1) || c.normal[i].Dot(c.normal[j]) < 0.9 {
			return true
		}
		slope := (1 + 1/math.Max(0.05, c.normal[i].Dot(toViewer))) / c.scale
		if math.Abs(a-b) > 3*slope {
			return true
		}
	}
	return false
}

func (c *canvas) picture() image.Image {
	out := image.NewRGBA(image.Rect(0, 0, width, c.h/samples))
	paper, ink := [3]float64{255, 255, 255}, [3]float64{58, 48, 36}
	for py := range c.h / samples {
		for px := range width {
			var sum [3]float64
			for s := range samples * samples {
				sx, sy := px*samples+s%samples, py*samples+s/samples
				tone := paper
				if n := c.normal[sy*c.w+sx]; c.line(sx, sy) {
					tone = ink
				} else if n != (geom.Vec3{}) {
					shade := 0.62 + 0.38*math.Max(0, n.Dot(light))
					tone = [3]float64{236 * shade, 218 * shade, 188 * shade}
				}
				for k := range sum {
					sum[k] += tone[k] / (samples * samples)
				}
			}
			out.SetRGBA(px, py, color.RGBA{uint8(sum[0]), uint8(sum[1]), uint8(sum[2]), 255})
		}
	}
	return out
}
