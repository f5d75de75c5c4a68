package viewer

import (
	"drawerwright/preview/scene"
)

// setting is one of a machine with a fence, and how parts are fed at it.
type setting struct {
	Name     string      `json:"name"`
	Heading  string      `json:"heading"`
	Figures  [][2]string `json:"figures"`
	Notes    []string    `json:"notes"`
	Cautions []string    `json:"cautions"`
	Cutter   float64     `json:"cutter"`
	Height   float64     `json:"height"`
	Cuts     []setCut    `json:"cuts"`
}

type setCut struct {
	Number   int      `json:"number"`
	Text     string   `json:"text"`
	Parts    string   `json:"parts"`
	Notes    []string `json:"notes"`
	Cautions []string `json:"cautions"`
	Feeds    []feed   `json:"feeds"`
}

type feed struct {
	Parts   []int        `json:"parts"`
	Edge    string       `json:"edge"`
	Down    string       `json:"down"`
	Pass    int          `json:"pass"`
	Passes  int          `json:"passes"`
	Fence   float64      `json:"fence"`
	Before  int          `json:"before"`
	After   int          `json:"after"`
	Origin  [3]float64   `json:"origin"`
	X       [3]float64   `json:"x"`
	Y       [3]float64   `json:"y"`
	By      float64      `json:"by"`
	Rows    []float64    `json:"rows,omitempty"`
	Lead    float64      `json:"lead,omitempty"`
	Machine []machineRow `json:"machine"`
}

type machineRow struct {
	Mesh int    `json:"mesh"`
	Role string `json:"role"`
	Fed  bool   `json:"fed,omitempty"`
}

// settingsOf are settings as data; nil without.
func settingsOf(list []scene.Setting) (out []setting) {
	for _, s := range list {
		one := setting{Name: s.Name, Heading: s.Heading, Figures: [][2]string{}, Notes: append([]string{}, s.Notes...),
			Cautions: append([]string{}, s.Cautions...), Cutter: scene.Rounded(s.Cutter), Height: scene.Rounded(s.Height)}
		for _, f := range s.Figures {
			one.Figures = append(one.Figures, [2]string{f.Name, f.Value})
		}
		for _, c := range s.Cuts {
			cut := setCut{Number: c.Number, Text: c.Text, Parts: c.Parts, Notes: append([]string{}, c.Notes...),
				Cautions: append([]string{}, c.Cautions...)}
			for _, f := range c.Feeds {
				cut.Feeds = append(cut.Feeds, feedOf(f))
			}
			one.Cuts = append(one.Cuts, cut)
		}
		out = append(out, one)
	}
	return out
}

func feedOf(f scene.Feed) feed {
	out := feed{Parts: f.Parts, Edge: f.Edge, Down: f.Face.String(), Pass: f.Pass, Passes: f.Passes,
		Fence: scene.Rounded(f.Fence), Before: f.Before, After: f.After, Origin: place(f.From.Origin),
		X: place(f.From.X), Y: place(f.From.Y), By: scene.Rounded(f.By), Lead: scene.Rounded(f.Lead)}
	for _, r := range f.Rows {
		out.Rows = append(out.Rows, scene.Rounded(r))
	}
	for _, m := range f.Machine {
		out.Machine = append(out.Machine, machineRow{m.Mesh, string(m.Role), m.Fed})
	}
	return out
}
