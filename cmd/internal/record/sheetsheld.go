package record

import (
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
	"drawerwright/geom/hold"
)

// Tie says how a placed part is held while a router cuts it out.
type Tie struct {
	By          string `json:"by"`                      // tabs, onion-skin or nothing
	Tabs        int    `json:"tabs,omitempty"`          // by which it hangs
	TabsNeeded  int    `json:"tabs_needed,omitempty"`   // that its size asks for
	TabsToWaste int    `json:"tabs_to_waste,omitempty"` // tabs that end at the waste round the parts
	TabsTo      []int  `json:"tabs_to,omitempty"`       // at which parts the others end, by their places in this list from 0
	OnionSkin   Length `json:"onion_skin,omitempty"`
	Text        string `json:"text"`
}

// FlipRegistration is what sheets are put down on when they have been turned over.
type FlipRegistration struct {
	On           string      `json:"on"`            // pins, three-pins or stops
	Pins         [][2]Length `json:"pins"`          // the middles of the holes, from the first size's lower left corner
	HoleDiameter Length      `json:"hole_diameter"` // the diameter of the holes
}

func heldBy(one sheets.Sheet, u geom.Unit) (list []Tie) {
	for _, h := range one.Held {
		out := Tie{By: map[hold.Kind]string{hold.Tabs: "tabs", hold.OnionSkin: "onion-skin", hold.Loose: "nothing"}[h.By],
			Tabs: h.Tabs, TabsNeeded: h.Need, TabsToWaste: h.Frame(), OnionSkin: Length(h.OnionSkin), Text: h.Text(u)}
		for _, to := range h.To {
			if to > hold.Frame {
				out.TabsTo = append(out.TabsTo, to)
			}
		}
		list = append(list, out)
	}
	return list
}
