package job

import (
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/stock"
)

// The words for what a template is held to the panel's edges by.
const (
	RegisterPins = "pins"
	RegisterLip  = "lip"
)

var templateKeys = []key{
	{name: "stock", form: formStock, required: true, doc: fmt.Sprintf("The stock of the plates, %d to %d mm of hardboard or the like; its kerf is that of the cutter that cuts them",
		stock.ThinnestPlate, stock.ThickestPlate),
		example: "hardboard"},
	{name: "bed", form: formSize, sides: []string{"length", "width"}, min: minBed, max: maxSize, fallback: "600 mm x 400 mm", doc: "What the cutter's bed holds: larger plates are cut in pieces with keyed joints",
		example: "400 x 300", with: "stock: hardboard", why: "what a small laser usually holds; common practice, no source"},
	{name: "register", form: formWord, words: []string{RegisterPins, RegisterLip}, fallback: RegisterPins, doc: "What a template stops against the panel's edges with: dowel pins, or strips glued under it",
		example: "lip", with: "stock: hardboard", why: "pins stay true, and a drill makes their holes"},
	{name: "pin-diameter", form: formLength, min: minPin, max: maxPin, fallback: "5 mm", doc: "The diameter of the pins",
		example: "6 mm", with: "stock: hardboard", why: "a usual dowel pin; common practice, no source"},
	{name: "slot-width", form: formLength, min: minMark, max: maxMark, fallback: "1.2 mm", doc: "The width of the slots in which a knife or a pencil marks; never less than the cutter can cut",
		example: "1 mm", with: "stock: hardboard", why: "a knife or a sharp pencil gets in; common practice, no source"},
	{name: "roll-width", form: formLength, min: minBed, max: maxSize, doc: "The width of the roll of paper on which templates are printed", without: "they are printed on sheets",
		example: "610", with: "stock: hardboard"},
}

// Limits of templates, in mm: a bed below 150 has no room for a joint between pieces,
// and plates are what a laser cuts and what lies flat.
const (
	minBed, minPin, maxPin = 150, 2, 12
	minMark, maxMark       = 0.3, 6
	maxKerf                = 6.5
)

// Templates are the marking templates that a job asks for.
type Templates struct {
	Stock                  string
	Thickness              float64 // mm, mean of the readings
	Kerf                   float64 // mm; 0 when not said
	Bed                    geom.Point
	Register               string // RegisterPins or RegisterLip
	PinDiameter, SlotWidth float64
	RollWidth              float64 // width of the paper, 0 for sheets
}

// templates are those of a job, nil without.
func (b *builder) templates() *Templates {
	s := b.root.values["templates"].section
	if s == nil {
		return nil
	}
	get := s.values
	b.checkStock("templates", get["stock"])
	t := &Templates{Stock: get["stock"].text, Bed: geom.Point{X: get["bed"].mm(0), Y: get["bed"].mm(1)}, Register: get["register"].text,
		PinDiameter: get["pin-diameter"].mm(0), SlotWidth: get["slot-width"].mm(0), RollWidth: get["roll-width"].mm(0)}
	if t.Bed.X <= 0 || t.Bed.Y <= 0 { // reported where it is read
		return nil
	}
	for _, of := range b.root.values["stock"].sections {
		if of.name == t.Stock {
			t.Kerf = of.values["kerf"].mm(0)
		}
	}
	board, known := b.stocks[t.Stock]
	if t.Thickness = board.Thickness.Mean; known && t.Thickness > 0 && !stock.IsPlate(t.Thickness) {
		b.fail(CodeOutOfRange, get["stock"].at, "write a stock of "+geom.LengthOf(stock.ThinnestPlate).Number(b.units)+" to "+geom.LengthOf(stock.ThickestPlate).Text(b.units), "templates are cut from plates of %s to %s, and %s is %s thick",
			geom.LengthOf(stock.ThinnestPlate).Text(b.units), geom.LengthOf(stock.ThickestPlate).Text(b.units), quote(t.Stock), geom.LengthOf(t.Thickness).Text(b.units))
	}
	if get["register"].text == RegisterLip && get["pin-diameter"].given {
		b.fail(CodeNoEffect, get["pin-diameter"].at, "delete it, or write `register: pins`",
			"pin is for pins, and the templates have a lip")
	}
	return t
}
