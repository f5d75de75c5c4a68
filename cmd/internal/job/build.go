package job

import (
	"cmp"
	"fmt"
	"strconv"
	"sync"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
	"drawerwright/geom/setup"
	"drawerwright/geom/shoplog"
)

// job makes the job of the values of a file, and checks what concerns more
// than one of them. It does so with mistakes in the file too, so that they are
// all reported.
func (r *reader) job(root *section) *Job {
	if r.lots != nil {
		r.lots.apply(root)
	}
	get := root.values
	j := &Job{File: r.src.file, Title: get["job"].text, Units: r.units, src: r.src, open: r.open, lots: r.lots}
	j.Preview, j.Step = get["preview"].text, get["cad"].text == CADStep
	j.cutter = sync.OnceValue(j.cutterText)
	r.drawings(j, r.sub(root, "dxf", dxfKeys))
	j.Paper = r.paper(r.sub(root, "paper", paperKeys))
	router := r.sub(root, "router", routerKeys)
	j.Router = r.router(router)
	r.boards(j, root)
	j.ruleAt = rulePlaces(root)
	for _, l := range root.values["spacers"].lengths {
		j.Spacers = append(j.Spacers, l.MM())
	}
	b := builder{reader: r, root: root, joinery: r.sub(root, "joinery", joineryKeys), router: router,
		limits: r.limits(r.sub(root, "limits", limitKeys)), accuracy: r.sub(root, "accuracy", accuracyKeys),
		stocks: map[string]joinery.Stock{}, reported: map[Position]bool{}, fenced: map[geom.Setting]sawn{}, names: names{}, learned: map[tooled]fit.Accuracy{}}
	j.Log = r.log(get["log"], b.accuracy)
	b.log = j.Log
	b.fromLog = b.asksLog()
	for _, s := range j.Stocks {
		b.stocks[s.Name] = s
		b.stockNames = append(b.stockNames, s.Name)
	}
	j.Templates, j.Sheets, j.Machines = b.templates(), b.sheets(), b.machines()
	b.shop = j.Machines
	b.openings = b.readOpenings()
	b.slides, b.slidesLost = b.readSlides()
	for _, s := range get["drawers"].sections {
		if r.full() {
			break
		}
		b.number = s.number
		b.entry(s)
	}
	b.plan(j)
	b.checkDefaults()
	return j
}

// drawings fills in how the drawings are written.
func (r *reader) drawings(j *Job, dxf *section) {
	get := dxf.values
	j.DXFVersion, j.DXFUnits = get["version"].text, r.units
	if units, err := geom.ParseUnit(get["units"].text); err == nil {
		j.DXFUnits = units
	}
	j.Layers, j.Order, j.FileNames = oneT(get["layers"].text), get["order"].words, get["files"].text
	j.Elevation = get["elevation"].text == yes
	j.Split = get["split"].text == splitCutter
	j.NoNotes = get["notes"].text == notesNone
}

// boards fills in the stocks, how much their readings spread, and where their keys are.
func (r *reader) boards(j *Job, root *section) {
	r.stocks(root, j)
	j.Spreads = make(map[string]fit.Spread, len(j.Stocks))
	j.stockAt = make(map[string]map[string]Position, len(j.Stocks))
	for i, s := range root.values["stock"].sections {
		places := map[string]Position{"": s.at}
		for key, v := range s.values {
			if v.given {
				places[key] = v.at
			}
		}
		j.stockAt[s.name] = places
		if i < len(j.Stocks) && j.Stocks[i].Name == s.name {
			j.Spreads[s.name] = r.spread(s, j.Stocks[i])
		}
	}
}

// rulePlaces are where the sections that rule sheets and routers are, and their keys.
func rulePlaces(root *section) map[string]Position {
	places := make(map[string]Position)
	var add func(path string, v value)
	add = func(path string, v value) {
		if !v.given {
			return
		}
		places[path] = v.at
		if v.section != nil {
			for key, v := range v.section.values {
				add(path+"."+key, v)
			}
		}
	}
	for _, name := range []string{"sheets", "router"} {
		add(name, root.values[name])
	}
	return places
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

// builder makes drawers.
type builder struct {
	*reader
	root       *section
	joinery    *section // for all drawers
	router     *section
	limits     joinery.Limits
	accuracy   *section
	log        *Log
	fromLog    bool // accuracies follow from it
	learned    map[tooled]fit.Accuracy
	stocks     map[string]joinery.Stock
	stockNames []string
	openings   map[string]*opening.Opening // nil are those that could not be read
	slides     map[string]*opening.Slide
	shop       setup.Machines
	number     int               // of the entry that is being read
	waiting    []*waiting        // entries that have been read
	unplanned  bool              // some of them cannot be planned
	crowded    bool              // too many drawers, reported already
	slidesLost bool              // some slides could not be read
	names      names             // of all drawers, those of rows too
	noCutter   bool              // reported already
	reported   map[Position]bool // tools that were complained of
	anyMachine bool              // one of the drawers has a machine that could be read
	routed     bool              // one of them is cut with a CNC router
	fitted     bool              // the slots of one of them are made to fit
	// fenced are the first drawers for which the file's settings hold, and whose
	// machine cannot keep them.
	fenced map[geom.Setting]sawn
}

// entry reads the drawers of an entry: one with an outside size, or those of an
// opening. They wait until all have been read, since openings can share a box.
func (b *builder) entry(s *section) {
	get := s.values
	d := b.drawer(s)
	front := get["drawer-front"].section
	if get["opening"].given {
		b.noEffect(true, get, "outside", "delete it, or the opening", "the size follows from the opening")
		b.bank(s, d)
		return
	}
	for _, name := range inOpening {
		b.noEffect(true, get, name, "delete it, or write `opening:` instead of `outside:`", "it is for a drawer in an opening")
	}
	if s.read && !get["outside"].given && !s.meant["outside"] && !s.meant["opening"] && !b.lost {
		b.fail(CodeMissingKey, s.at, "write `outside: width x height x depth` there, or `opening:` and `slide:`", "the drawer has no outside size and no opening")
	}
	if front != nil {
		d.DrawerFront = b.drawerFront(front, false)
		d.sound = d.sound && d.DrawerFront.Stock.Thickness.Mean > 0 && d.DrawerFront.Width > 0 && d.DrawerFront.Height > 0
	}
	d.sound = d.sound && d.Width > 0
	b.waiting = append(b.waiting, &waiting{entry: s, drawer: d})
}

func (b *builder) drawer(s *section) Drawer {
	d := Drawer{at: s.at, entry: b.number, places: map[geom.Setting]Position{}}
	put := func(f geom.Setting, v value) {
		if v.given {
			d.places[f] = v.at
		}
	}
	get := s.values
	for _, f := range []geom.Setting{joinery.SettingName, joinery.SettingOutside, joinery.SettingJoint} {
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
	front := either(get["box-front"], sides)
	back := either(get["back"], front)
	if d.Joint == joinery.RabbetedFront { // whose board is chosen for its looks
		back = either(get["back"], sides)
	}
	put(joinery.SettingSides, sides)
	put(joinery.SettingBoxFront, front)
	put(joinery.SettingBack, back)
	put(joinery.SettingBottom, bottom)
	for _, name := range []string{"sides", "box-front", "back", "bottom"} {
		b.checkStock(name, get[name])
	}
	d.Sides, d.Front, d.Back, d.Bottom = b.stocks[sides.text], b.stocks[front.text], b.stocks[back.text], b.stocks[bottom.text]

	put(joinery.SettingCutter, b.setCutter(&d, get["cutter"]))
	if dxf := b.root.values["dxf"].section; dxf != nil {
		put("layers", dxf.values["layers"])
		put("files", dxf.values["files"])
	}
	put("templates", b.root.values["templates"])
	d.Limits, d.Accuracy = b.limits, accuracy(b.accuracy, d.Cutter.Kind)
	if b.fromLog {
		d.Accuracy = b.learn(d)
	}
	if d.Cutter.Kind.Fenced() {
		d.OnEnd = b.shop.Of(d.Cutter.Kind).OnEnd()
	}
	settled := b.setJoinery(&d, b.sub(s, "joinery", joineryKeys), put)
	b.corners(&d, s, put)
	settled = b.fittings(&d, s, put) && settled
	d.Load, d.Spares = get["load"].number, int(get["spares"].number)
	put("load", get["load"])
	d.sound = settled && b.unitsKnown && nameFault(d.Name) == "" && d.Count > 0 && d.Cutter.Kind != "" && d.Cutter.Width > 0 && d.Joint != ""
	for _, s := range []joinery.Stock{d.Sides, d.Front, d.Back, d.Bottom} {
		d.sound = d.sound && s.Thickness.Mean > 0
	}
	return d
}

// setCutter fills in what a drawer is cut with, its own or the file's, and gives where
// that is said.
func (b *builder) setCutter(d *Drawer, own value) value {
	cutter := either(own, b.root.values["cutter"])
	if cutter.section != nil {
		d.Cutter, d.Bits = b.cutter(cutter.section)
		get := cutter.section.values
		d.Tool = shoplog.Tool{Machine: cmp.Or(get["machine"].text, get["kind"].text), Cutter: get["name"].text}
		d.bitsAt = bitsOf(cutter.section)
		if len(d.Bits) > 1 {
			for _, bit := range d.Bits {
				if bit.Engraves {
					continue
				}
				d.Spec.Bits = append(d.Spec.Bits, joinery.Bit{Diameter: bit.Diameter, Reach: bit.Reach})
			}
		}
		d.ownCutter = own.given
		for _, name := range []string{"width", "diameter"} {
			if cutter.section.values[name].given {
				d.cutterAt = []string{"cutter", name}
			}
		}
		if d.cutterAt != nil && own.given {
			d.cutterAt = append([]string{"drawers", strconv.Itoa(b.number)}, d.cutterAt...)
		}
	}
	if !cutter.given && !b.noCutter && !b.lost {
		b.noCutter = true
		b.fail(CodeMissingKey, d.at, "write `cutter: {kind: saw, width: ...}` for the whole file or for the drawer",
			"the drawer %s has no cutter", quote(d.Name))
	}
	return cutter
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
	stocks := suggestion{"the stocks of the file are " + alternatives(b.stockNames),
		b.stockNames[:min(len(b.stockNames), maxShown)]}
	if near := nearest(v.text, b.stockNames); near != "" {
		stocks.hint = fmt.Sprintf("did you mean `%s`? %s", near, stocks.hint)
	}
	b.suggest(CodeUnknownStock, v.at, stocks, "%s: the file has no stock %s", name, quote(v.text))
}
