package record

import (
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
	"drawerwright/geom/hold"
)

// Tie says how a placed part is held while a router cuts it out.
type Tie struct {
	By    string `json:"by"`              // tabs, an onion skin or nothing
	Tabs  int    `json:"tabs,omitempty"`  // by which it hangs
	Need  int    `json:"need,omitempty"`  // that its size asks for
	Frame int    `json:"frame,omitempty"` // tabs that end at the waste round the parts
	To    []int  `json:"to,omitempty"`    // the places, in this list from 0, of the parts at which the others end
	Skin  Length `json:"skin,omitempty"`
	Words string `json:"words"`
}

// TurnedOn is what sheets are put down on when they have been turned over.
type TurnedOn struct {
	On   string      `json:"on"`   // pins, three-pins or stops
	Pins [][2]Length `json:"pins"` // the middles of the holes, from the lower left corner of the first size
	Hole Length      `json:"hole"` // the diameter of the holes
}

func heldBy(one sheets.Sheet, u geom.Unit) (list []Tie) {
	for _, h := range one.Held {
		out := Tie{By: map[hold.Kind]string{hold.Tabs: "tabs", hold.Skin: "skin", hold.Loose: "nothing"}[h.By],
			Tabs: h.Tabs, Need: h.Need, Frame: h.Frame(), Skin: Length(h.Skin), Words: h.Text(u)}
		for _, to := range h.To {
			if to > hold.Frame {
				out.To = append(out.To, to)
			}
		}
		list = append(list, out)
	}
	return list
}
