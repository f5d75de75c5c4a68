package viewer

import (
	"drawerwright/geom"
	"drawerwright/geom/carcass"
	"drawerwright/preview/scene"
)

// carcassData is an opening with what stands and runs in it.
type carcassData struct {
	Low        [3]float64  `json:"low"` // of the opening
	High       [3]float64  `json:"high"`
	Travel     []float64   `json:"travel"` // of each box of the group
	Assumed    []string    `json:"assumed"`
	Outlines   []outline   `json:"outlines"`
	Clearances []clearance `json:"clearances"`
	Collisions []collision `json:"collisions"`
}

type outline struct {
	Name   string     `json:"name"`
	Low    [3]float64 `json:"low"`
	High   [3]float64 `json:"high"`
	Box    int        `json:"box"` // of the group; below 0 of what is no drawer's
	Motion string     `json:"motion"`
	Usual  bool       `json:"usual,omitempty"`
}

type clearance struct {
	Name string     `json:"name"`
	Gap  float64    `json:"gap"`
	Axis int        `json:"axis"`
	Low  [3]float64 `json:"low"`
	High [3]float64 `json:"high"`
	Box  int        `json:"box"`
}

type collision struct {
	Name   string     `json:"name"`
	By     float64    `json:"by"`
	Low    [3]float64 `json:"low"`
	High   [3]float64 `json:"high"`
	Pulled bool       `json:"pulled,omitempty"`
}

// carcassOf is a carcass as data; nil without.
func carcassOf(c *carcass.Carcass) *carcassData {
	if c == nil {
		return nil
	}
	low, high := corners(c.Opening)
	d := &carcassData{Low: low, High: high, Travel: []float64{}, Assumed: append([]string{}, c.Assumed...),
		Outlines: []outline{}, Clearances: []clearance{}, Collisions: []collision{}}
	for _, t := range c.Travel {
		d.Travel = append(d.Travel, scene.Rounded(t))
	}
	for _, o := range c.Outlines {
		low, high := corners(o.Block)
		d.Outlines = append(d.Outlines, outline{o.Name, low, high, o.Drawer, string(o.Motion), o.Usual})
	}
	for _, k := range c.Clearances {
		low, high := corners(k.Block)
		d.Clearances = append(d.Clearances, clearance{k.Name, scene.Rounded(k.Gap), k.Axis, low, high, k.Drawer})
	}
	for _, k := range c.Collisions {
		low, high := corners(k.Block)
		d.Collisions = append(d.Collisions, collision{k.Name, scene.Rounded(k.By), low, high, k.Pulled})
	}
	return d
}

func corners(b carcass.Block) (low, high [3]float64) {
	at := func(v [3]float64) [3]float64 { return place(geom.Vec3{X: v[0], Y: v[1], Z: v[2]}) }
	return at(b.Low), at(b.High)
}
