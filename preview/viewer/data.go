package viewer

import (
	"bufio"
	"bytes"
	"encoding/base64"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"io"
	"math"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
)

// data is the JSON that the package's comment describes.
type data struct {
	Title  string          `json:"title"`
	Unit   string          `json:"unit"`
	Ease   int             `json:"ease"`
	Meshes []mesh          `json:"meshes"`
	Roles  map[string]tint `json:"roles"`
	Stocks map[string]tint `json:"stocks"`
	Parts  []part          `json:"parts"`
	Boxes  []box           `json:"boxes,omitempty"` // writeData writes them first
	Groups []group         `json:"groups"`
	Setups []setting       `json:"setups,omitempty"`
	// Draws are the random numbers of the sources of joints, a list of the numbered boxes each.
	Draws map[int][]float64 `json:"draws"`
	Bytes string            `json:"bytes"` // empty, and last: writeData puts the bytes of meshes there
}

const firstField, lastField = `{"boxes":[`, `"bytes":"`

type mesh struct {
	At        int  `json:"at"`
	Vertices  int  `json:"vertices"`
	Triangles int  `json:"triangles"`
	Wide      bool `json:"wide,omitempty"`
}

type tint struct {
	Light string `json:"light"`
	Dark  string `json:"dark"`
}

type part struct {
	Name     string `json:"name"`
	Number   int    `json:"number"`
	Role     string `json:"role"`
	Label    string `json:"label,omitempty"`
	Stock    string `json:"stock"`
	Grained  bool   `json:"grained"`
	Quantity int    `json:"quantity"`
	Mesh     int    `json:"mesh"`
	Milled   int    `json:"milled"`
	Eased    int    `json:"eased"`
	scene.Numbers
}

type box struct {
	Name    string     `json:"name"`
	Count   int        `json:"count"`
	Size    [3]float64 `json:"size"`
	Opening []string   `json:"opening"`
	Steps   []step     `json:"steps"`
	Pieces  []piece    `json:"pieces"`
	Plays   []play     `json:"plays"`
	measured
	Overlaps []overlap `json:"overlaps"`
}

// step is a step of putting the box together.
type step struct {
	Text   string       `json:"text"`
	From   int          `json:"from"`
	Open   float64      `json:"open"`
	Glue   [][7]float64 `json:"glue,omitempty"`
	Clamps []block      `json:"clamps,omitempty"`
}

type block struct {
	Low  [3]float64 `json:"low"`
	High [3]float64 `json:"high"`
	Pad  bool       `json:"pad,omitempty"`
}

type piece struct {
	Name   string       `json:"name"`
	Part   int          `json:"part"`
	Origin [3]float64   `json:"origin"`
	X      [3]float64   `json:"x"`
	Y      [3]float64   `json:"y"`
	Moves  [][4]float64 `json:"moves"`
}

type play struct {
	Name   string     `json:"name"`
	Play   float64    `json:"play"`
	Axis   int        `json:"axis"`
	Along  int        `json:"along"`
	Low    [3]float64 `json:"low"`
	High   [3]float64 `json:"high"`
	In     int        `json:"in"` // what is in the slot, and the piece that has it
	Of     int        `json:"of"`
	Pocket int        `json:"pocket"`
	Way    [3]float64 `json:"way"`
	Up     bool       `json:"up,omitempty"`
	Open   bool       `json:"open,omitempty"` // a notch at an edge
	// Measure is what judges it, and Verdict the words where that is not right, with their sign;
	// Doubt where it is set right.
	Measure string `json:"measure,omitempty"`
	Verdict string `json:"verdict,omitempty"`
	Sign    string `json:"sign,omitempty"`
	Doubt   bool   `json:"doubt,omitempty"`
	Jams    bool   `json:"jams,omitempty"` // nothing goes in
}

type overlap struct {
	Name string     `json:"name"`
	Low  [3]float64 `json:"low"`
	High [3]float64 `json:"high"`
}

type group struct {
	Name  string       `json:"name"`
	Boxes []int        `json:"boxes"`
	At    [][3]float64 `json:"at"`
	// Carcass is missing where the boxes share no opening.
	Carcass *carcassData `json:"carcass,omitempty"`
}

// Data is a scene as JSON. It holds no <, > or &, so that it can stand in a page.
func Data(s scene.Scene) ([]byte, error) {
	var out bytes.Buffer
	err := writeData(&out, s)
	return out.Bytes(), err
}

// dataOf is a scene but for its boxes, which gave draws, and the bytes of its meshes.
func dataOf(s scene.Scene, draws map[int][]float64) data {
	d := data{Title: s.Title, Unit: s.Unit.String(), Ease: scene.Exaggeration, Meshes: []mesh{},
		Roles: map[string]tint{}, Stocks: map[string]tint{}, Parts: []part{}, Groups: []group{},
		Draws: draws, Setups: settingsOf(s.Settings)}
	at := 0
	for _, packed := range s.Meshes {
		m := packed.Mesh()
		d.Meshes = append(d.Meshes, mesh{At: at, Vertices: len(m.Vertices), Triangles: len(m.Triangles), Wide: wide(m)})
		at += sizeOf(m)
	}
	for i, name := range s.Stocks {
		d.Stocks[name] = tintOf(scene.WoodTint(i))
	}
	color := func(r joinery.Role) { d.Roles[string(r)] = tintOf(scene.TintOf(r)) }
	if len(s.Settings) > 0 {
		color(scene.TableRole)
		color(scene.FenceRole)
		color(scene.CutterRole)
	}
	for _, p := range s.Parts {
		color(p.Role)
		d.Parts = append(d.Parts, part{Name: p.Name, Number: p.Number, Role: string(p.Role),
			Label: p.Label, Stock: p.Stock, Grained: p.Grained, Quantity: p.Quantity,
			Mesh: p.Mesh, Milled: p.Milled, Eased: p.Eased, Numbers: scene.NumbersOf(p.Panel)})
	}
	for _, g := range s.Groups {
		d.Groups = append(d.Groups, groupOf(g))
	}
	return d
}

// boxOf is a box with its clearances; draws gets the random numbers of the sources of its joints.
func boxOf(b scene.Box, clearances []scene.Clearance, draws map[int][]float64) box {
	out := box{Name: b.Name, Count: b.Count, Size: [3]float64{scene.Rounded(b.Size.Width), scene.Rounded(b.Size.Height), scene.Rounded(b.Size.Depth)},
		Opening: append([]string{}, b.Opening...), Steps: stepsOf(b),
		Pieces: []piece{}, Plays: []play{}, Overlaps: []overlap{}, measured: measuredOf(b, draws)}
	for _, p := range b.Pieces {
		q := piece{Name: p.Name, Part: p.Part, Origin: place(p.Placement.Origin), X: place(p.Placement.X), Y: place(p.Placement.Y), Moves: [][4]float64{}}
		for _, m := range p.Moves {
			by := place(m.By)
			q.Moves = append(q.Moves, [4]float64{float64(m.Step), by[0], by[1], by[2]})
		}
		out.Pieces = append(out.Pieces, q)
	}
	for _, p := range clearances {
		at := p.Joint
		one := play{Name: p.Name, Play: scene.Rounded(p.Gap), Axis: p.Axis, Along: p.Along, Low: place(p.Low),
			High: place(p.High), In: at.In, Of: at.Of, Pocket: at.Pocket, Way: place(at.Way), Up: at.Up, Open: at.Open,
			Measure: p.Measure, Verdict: p.Verdict, Doubt: p.State == joinery.StateDoubt}
		if p.Verdict != "" {
			one.Jams = p.Verdict == string(joinery.WillNot)
			one.Sign = p.State.Sign()
		}
		out.Plays = append(out.Plays, one)
	}
	for _, o := range b.Overlaps {
		out.Overlaps = append(out.Overlaps, overlap{o.Name, place(o.Low), place(o.High)})
	}
	return out
}

// writeData writes a scene as JSON, box by box and mesh by mesh: all of them would be the largest
// things in memory.
func writeData(w io.Writer, s scene.Scene) error {
	out := bufio.NewWriter(w)
	out.WriteString(firstField) // whose error Flush gives, as of all that follows
	draws := make(map[int][]float64)
	for i, b := range s.Boxes {
		one, err := json.Marshal(boxOf(b, s.Clearances(i), draws))
		if err != nil {
			return err
		}
		if i > 0 {
			out.WriteByte(',')
		}
		out.Write(one)
	}
	text, err := json.Marshal(dataOf(s, draws))
	if err != nil {
		return err
	}
	before, found := bytes.CutSuffix(text, []byte(`"}`))
	if !found || !bytes.HasSuffix(before, []byte(lastField)) {
		panic("the bytes of meshes are not the last field") // a field was added behind it
	}
	out.WriteString("],")
	out.Write(before[1:])
	in64 := base64.NewEncoder(base64.StdEncoding, out)
	var one []byte
	for _, m := range s.Meshes {
		one = appendMesh(one[:0], m.Mesh())
		in64.Write(one)
	}
	in64.Close()
	out.WriteString(`"}`)
	return out.Flush()
}

func stepsOf(b scene.Box) []step {
	list := []step{}
	if b.Steps == nil {
		return list
	}
	for _, s := range b.Steps() {
		one := step{Text: s.Text, From: s.From, Open: s.Open}
		for _, g := range s.Glue {
			low, high := place(g.Low), place(g.High)
			one.Glue = append(one.Glue, [7]float64{float64(g.Piece), low[0], low[1], low[2], high[0], high[1], high[2]})
		}
		for _, c := range s.Clamps {
			one.Clamps = append(one.Clamps, block{place(c.Low), place(c.High), c.Pad})
		}
		list = append(list, one)
	}
	return list
}

func groupOf(g scene.Group) group {
	out := group{Name: g.Name, Boxes: append([]int{}, g.Boxes...), At: [][3]float64{}, Carcass: carcassOf(g.Carcass)}
	for _, at := range g.At {
		out.At = append(out.At, place(at))
	}
	return out
}

func place(v geom.Vec3) [3]float64 {
	return [3]float64{scene.Rounded(v.X), scene.Rounded(v.Y), scene.Rounded(v.Z)}
}

func tintOf(t scene.Tint) tint { return tint{hex(t.Light), hex(t.Dark)} }

func hex(c scene.RGB) string { return fmt.Sprintf("#%02x%02x%02x", c[0], c[1], c[2]) }

// wide reports whether a mesh has too many vertices for uint16.
func wide(m solid.Mesh) bool { return len(m.Vertices) > math.MaxUint16+1 }

// sizeOf is how many bytes appendMesh appends.
func sizeOf(m solid.Mesh) int {
	index := 2
	if wide(m) {
		index = 4
	}
	return (12*len(m.Vertices) + 3*index*len(m.Triangles) + 3) / 4 * 4
}

func appendMesh(out []byte, m solid.Mesh) []byte {
	for _, v := range m.Vertices {
		for _, x := range [3]float64{v.X, v.Y, v.Z} {
			out = binary.LittleEndian.AppendUint32(out, math.Float32bits(float32(x+0)))
		}
	}
	for _, t := range m.Triangles {
		for _, k := range t {
			if wide(m) {
				out = binary.LittleEndian.AppendUint32(out, uint32(k))
			} else {
				out = binary.LittleEndian.AppendUint16(out, uint16(k))
			}
		}
	}
	for len(out)%4 != 0 {
		out = append(out, 0)
	}
	return out
}
