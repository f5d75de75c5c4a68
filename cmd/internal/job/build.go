package job

import (
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// job makes the job of the values of a file, and checks what concerns more
// than one of them. It does so with mistakes in the file too, so that they are
// all reported.
func (r *reader) job(root *section) *Job {
	get := root.values
	dxf := r.sub(root, "dxf", dxfKeys)
	j := &Job{
		File:       r.src.file,
		Title:      get["job"].text,
		Units:      r.units,
		DXFVersion: dxf.values["version"].text,
		DXFUnits:   r.units,
		src:        r.src,
	}
	j.Layers, j.Order, j.FileNames = dxf.values["layers"].text, dxf.values["order"].words, dxf.values["files"].text
	router := r.sub(root, "router", routerKeys)
	j.Router = r.router(router)
	if units, err := geom.ParseUnit(dxf.values["units"].text); err == nil {
		j.DXFUnits = units
	}
	for _, s := range get["stock"].sections {
		j.Stocks = append(j.Stocks, s.stock())
	}
	b := builder{reader: r, root: root, joinery: r.sub(root, "joinery", joineryKeys), router: router,
		stocks: map[string]joinery.Stock{}, reported: map[Position]bool{}, sawn: map[joinery.Field]string{}}
	for _, s := range j.Stocks {
		b.stocks[s.Name] = s
		b.stockNames = append(b.stockNames, s.Name)
	}
	for _, s := range get["drawers"].sections {
		if r.full() {
			break
		}
		j.Drawers = append(j.Drawers, b.drawer(s))
	}
	b.checkDefaults()
	return j
}

// sub is the section under a key, or one of fallbacks where the file has none.
func (r *reader) sub(of *section, name string, keys []key) *section {
	if s := of.values[name].section; s != nil {
		return s
	}
	s := &section{at: of.at, values: map[string]value{}}
	s.fallBack(r, keys)
	return s
}

func (s *section) stock() joinery.Stock {
	get := s.values
	stock := joinery.Stock{
		Name:   s.name,
		Length: get["sheet"].mm(0),
		Width:  get["sheet"].mm(1),
		Grain:  joinery.Grain(get["grain"].text),
		Price:  get["price"].number,
	}
	if stock.Grain == grainWidth { // turn the sheet, so that its length is along the grain
		stock.Length, stock.Width, stock.Grain = stock.Width, stock.Length, joinery.GrainLength
	}
	if lengths := get["thickness"].lengths; len(lengths) > 0 {
		readings := make([]float64, len(lengths))
		for i, l := range lengths {
			readings[i] = l.MM()
		}
		stock.Thickness = joinery.Measure(readings...)
	}
	return stock
}

// builder makes drawers.
type builder struct {
	*reader
	root       *section
	joinery    *section // for all drawers
	router     *section
	stocks     map[string]joinery.Stock
	stockNames []string
	noCutter   bool              // reported already
	reported   map[Position]bool // tools that were complained of
	routed     bool              // one of the drawers is cut with a router
	// sawn are the first drawers cut with a saw for which the file's settings hold.
	sawn map[joinery.Field]string
}

func (b *builder) drawer(s *section) Drawer {
	d := Drawer{at: s.at, places: map[joinery.Field]Position{}}
	put := func(f joinery.Field, v value) {
		if v.given {
			d.places[f] = v.at
		}
	}
	get := s.values
	for _, f := range []joinery.Field{joinery.FieldName, joinery.FieldOutside, joinery.FieldJoint} {
		put(f, get[string(f)])
	}
	size := get["outside"]
	d.Spec = joinery.Spec{
		Name:  get["name"].text,
		Count: int(get["count"].number),
		Units: b.units,
		Width: size.mm(0), Height: size.mm(1), Depth: size.mm(2),
		Joint: joinery.Joint(get["joint"].text),
	}
	sides, bottom := get["sides"], get["bottom"]
	front := either(get["front"], sides)
	back := either(get["back"], front)
	put(joinery.FieldSides, sides)
	put(joinery.FieldFront, front)
	put(joinery.FieldBack, back)
	put(joinery.FieldBottom, bottom)
	for _, name := range []string{"sides", "front", "back", "bottom"} {
		b.checkStock(name, get[name])
	}
	d.Sides, d.Front, d.Back, d.Bottom = b.stocks[sides.text], b.stocks[front.text], b.stocks[back.text], b.stocks[bottom.text]

	cutter := either(get["cutter"], b.root.values["cutter"])
	put(joinery.FieldCutter, cutter)
	if cutter.section != nil {
		d.Cutter, d.Bits = b.cutter(cutter.section)
	}
	if !cutter.given && !b.noCutter && !b.lost {
		b.noCutter = true
		b.fail(CodeMissingKey, d.at, "write `cutter: {kind: saw, width: ...}` for the whole file or for the drawer", "the drawer %s has no cutter", quote(d.Name))
	}
	if dxf := b.root.values["dxf"].section; dxf != nil {
		put("layers", dxf.values["layers"])
		put("files", dxf.values["files"])
	}
	settled := b.setJoinery(&d, b.sub(s, "joinery", joineryKeys), put)
	d.sound = settled && b.unitsKnown && nameFault(d.Name) == "" && d.Width > 0 && d.Count > 0 && d.Cutter.Kind != "" && d.Cutter.Width > 0 && d.Joint != ""
	for _, s := range []joinery.Stock{d.Sides, d.Front, d.Back, d.Bottom} {
		d.sound = d.sound && s.Thickness.Mean > 0
	}
	return d
}

// either is the first value if the file has it, else the second.
func either(a, b value) value {
	if a.given {
		return a
	}
	return b
}

// checkStock reports a stock that is not in a list that could be read.
func (b *builder) checkStock(name string, v value) {
	if _, known := b.stocks[v.text]; known || v.text == "" || b.lost || len(b.stocks) == 0 {
		return
	}
	hint := "the stocks of the file are " + alternatives(b.stockNames)
	if near := nearest(v.text, b.stockNames); near != "" {
		hint = fmt.Sprintf("did you mean `%s`? %s", near, hint)
	}
	b.fail(CodeUnknownStock, v.at, hint, "%s: the file has no stock %s", name, quote(v.text))
}
