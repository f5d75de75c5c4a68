package drawing

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"math"
	"sync"

	"drawerwright/geom"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

const inch = 25.4 // mm

// maxPixels is the largest picture that is made: about 64 MB as it is drawn.
const maxPixels = 1 << 26

// WritePNG writes a drawing as a gray picture with so many dots to the inch.
func (d Drawing) WritePNG(w io.Writer, dots float64) error {
	scale := dots / inch
	wide, high := math.Ceil(d.Width*scale), math.Ceil(d.Height*scale)
	if !(wide >= 1 && high >= 1 && float64(wide*high) <= maxPixels) {
		return fmt.Errorf("png: %.0f x %.0f dots are none or too many", wide, high)
	}
	p := painter{drawing: d, scale: scale, out: image.NewGray(image.Rect(0, 0, int(wide), int(high)))}
	for i := range p.out.Pix {
		p.out.Pix[i] = 255
	}
	p.brush = vector.NewRasterizer(0, 0)
	p.covered = image.NewAlpha(image.Rect(0, 0, min(int(wide), tile), min(int(high), tile)))
	for _, s := range d.Shapes {
		p.shape(s)
	}
	for _, t := range d.Texts {
		p.text(t)
	}
	return (&png.Encoder{CompressionLevel: png.BestSpeed, BufferPool: &coders}).Encode(w, sixteenth(p.out))
}

// pool keeps the coder's buffers, a megabyte each, from one picture to the next.
type pool struct{ sync.Pool }

var coders pool

func (p *pool) Get() *png.EncoderBuffer {
	b, _ := p.Pool.Get().(*png.EncoderBuffer)
	return b
}

func (p *pool) Put(b *png.EncoderBuffer) { p.Pool.Put(b) }

// sixteenth is a picture in sixteen grays, which are enough for the edges of lines and
// letters: it is half as large, and the coder takes it as it is, without trying filters
// that help photographs alone.
func sixteenth(g *image.Gray) *image.Paletted {
	const grays = 16
	var palette color.Palette
	for i := range grays {
		palette = append(palette, color.Gray{Y: uint8(i * 255 / (grays - 1))})
	}
	out := image.NewPaletted(g.Bounds(), palette)
	var nearest [256]uint8
	for v := range nearest {
		nearest[v] = uint8((v*(grays-1) + 127) / 255)
	}
	for i, v := range g.Pix {
		out.Pix[i] = nearest[v]
	}
	return out
}

// painter fills rings. The brush goes no further than they do, so that a picture of
// many lines takes no longer than what they cover.
type painter struct {
	drawing Drawing
	scale   float64 // dots to the mm
	out     *image.Gray
	brush   *vector.Rasterizer
	covered *image.Alpha   // how much of each dot of a tile the brush has filled
	rings   [][]geom.Point // in dots, y down
}

func (p *painter) dots(q geom.Point) geom.Point {
	return geom.Point{X: float64(q.X * p.scale), Y: float64((p.drawing.Height - q.Y) * p.scale)}
}

// tile is the side, in dots, up to which the brush works in whole numbers, so that all
// processors make the same picture.
const tile = 512

// fill fills the part of the rings that is in a box.
func (p *painter) fill(box image.Rectangle, i Ink) {
	p.brush.Reset(box.Dx(), box.Dy())
	p.brush.DrawOp = draw.Src
	for _, r := range p.rings {
		for k, q := range r {
			x, y := float32(q.X-float64(box.Min.X)), float32(q.Y-float64(box.Min.Y))
			if k == 0 {
				p.brush.MoveTo(x, y)
			} else {
				p.brush.LineTo(x, y)
			}
		}
		p.brush.ClosePath()
	}
	p.brush.Draw(p.covered, image.Rect(0, 0, box.Dx(), box.Dy()), image.Opaque, image.Point{})
	ink := level(i)
	for y := range box.Dy() {
		row := p.out.Pix[p.out.PixOffset(box.Min.X, box.Min.Y+y):][:box.Dx()]
		for x, a := range p.covered.Pix[y*p.covered.Stride:][:box.Dx()] {
			if a > 0 {
				row[x] = uint8((int(row[x])*(255-int(a)) + ink*int(a) + 127) / 255)
			}
		}
	}
}

// paint fills the rings.
func (p *painter) paint(i Ink) {
	low, high := geom.Point{X: math.Inf(1), Y: math.Inf(1)}, geom.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, r := range p.rings {
		for _, q := range r {
			low.X, low.Y = min(low.X, q.X), min(low.Y, q.Y)
			high.X, high.Y = max(high.X, q.X), max(high.Y, q.Y)
		}
	}
	box := image.Rectangle{}
	if low.X <= high.X {
		box = image.Rect(int(math.Floor(low.X)), int(math.Floor(low.Y)), int(math.Ceil(high.X))+1,
			int(math.Ceil(high.Y))+1).Intersect(p.out.Bounds())
	}
	for y := box.Min.Y; y < box.Max.Y; y += tile {
		for x := box.Min.X; x < box.Max.X; x += tile {
			p.fill(image.Rect(x, y, min(x+tile, box.Max.X), min(y+tile, box.Max.Y)), i)
		}
	}
	p.rings = p.rings[:0]
}

// shape fills and strokes. The brush fills by winding number: loops that lie in
// others run the other way round in all that is drawn here, or are drawn apart.
func (p *painter) shape(s Shape) {
	lines := s.flat()
	if s.Fill > 0 {
		for _, l := range evenOdd(lines) {
			p.ring(l)
		}
		p.paint(s.Fill)
	}
	if s.Pen.Width > 0 && s.Pen.Ink > 0 {
		half := max(s.Pen.Width, 1/p.scale) / 2 // a dot at least
		for _, l := range lines {
			if s.Closed && len(l) > 0 {
				l = append(l, l[0])
			}
			for _, dash := range dashes(l, s.Pen.Dash) {
				p.stroke(dash, half)
			}
		}
		p.paint(s.Pen.Ink)
	}
}

func (p *painter) ring(l []geom.Point) {
	r := make([]geom.Point, len(l))
	for i, q := range l {
		r[i] = p.dots(q)
	}
	p.rings = append(p.rings, r)
}

// stroke goes round every side of a line, all the same way, and round its corners.
func (p *painter) stroke(l []geom.Point, half float64) {
	for i := range len(l) - 1 {
		a, b := l[i], l[i+1]
		long := a.To(b)
		if long == 0 {
			continue
		}
		ux, uy := (b.X-a.X)/long*half, (b.Y-a.Y)/long*half
		at := func(q geom.Point, along, across float64) geom.Point {
			return geom.Point{X: q.X + float64(along*ux) - float64(across*uy), Y: q.Y + float64(along*uy) + float64(across*ux)}
		}
		// Half an octagon at each end, near enough to a round pen at these widths.
		const c = 0.4142
		p.ring([]geom.Point{at(a, -c, -1), at(b, c, -1), at(b, 1, -c), at(b, 1, c), at(b, c, 1), at(a, -c, 1), at(a, -1, c), at(a, -1, -c)})
	}
}

// text fills the outlines of letters.
func (p *painter) text(t Text) {
	c := cuts[t.Face]()
	c.mu.Lock()
	defer c.mu.Unlock()
	per := t.Size / c.units // mm of a unit
	x := 0.0
	body := fixed.Int26_6(c.font.UnitsPerEm()) << 6
	long := 0.0
	advance := func(g sfnt.GlyphIndex) float64 {
		a, _ := c.font.GlyphAdvance(&c.buf, g, body, font.HintingNone)
		return float64(a) / 64 * per
	}
	glyphs := make([]sfnt.GlyphIndex, 0, len(t.String))
	for _, r := range t.String {
		g := c.shape(r)
		glyphs = append(glyphs, g)
		long += advance(g)
	}
	switch t.Align {
	case Middle:
		x = -long / 2
	case Right:
		x = -long
	}
	for _, g := range glyphs {
		segments, err := c.font.LoadGlyph(&c.buf, g, body, nil)
		if err != nil {
			continue
		}
		at := func(q fixed.Point26_6) geom.Point {
			return t.turned(x+float64(float64(q.X)/64*per), -float64(q.Y)/64*per)
		}
		p.ringsOf(segments, at)
		x += advance(g)
	}
	p.paint(t.Ink)
}

// ringsOf are the outlines of a letter, its curves in a few chords.
func (p *painter) ringsOf(segments sfnt.Segments, at func(fixed.Point26_6) geom.Point) {
	const chords = 4
	var ring []geom.Point
	for _, s := range segments {
		switch a := at(s.Args[0]); s.Op {
		case sfnt.SegmentOpMoveTo:
			if len(ring) > 0 {
				p.ring(ring)
			}
			ring = []geom.Point{a}
		case sfnt.SegmentOpLineTo:
			ring = append(ring, a)
		case sfnt.SegmentOpQuadTo: // as a cubic with its controls two thirds of the way
			b, from := at(s.Args[1]), ring[len(ring)-1]
			third := func(q geom.Point) geom.Point {
				return geom.Point{X: (q.X + a.X + a.X) / 3, Y: (q.Y + a.Y + a.Y) / 3}
			}
			c := curve{third(from), third(b), b}
			for i := 1; i <= chords; i++ {
				ring = append(ring, c.at(from, float64(i)/chords))
			}
		case sfnt.SegmentOpCubeTo:
			from := ring[len(ring)-1]
			c := curve{a, at(s.Args[1]), at(s.Args[2])}
			for i := 1; i <= chords; i++ {
				ring = append(ring, c.at(from, float64(i)/chords))
			}
		}
	}
	if len(ring) > 0 {
		p.ring(ring)
	}
}
