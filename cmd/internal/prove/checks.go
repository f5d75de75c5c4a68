package prove

import (
	"path"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// check reads one thing back that a build wrote.
type check func(w *Worker, read Read) record.Checked

// Checks is how many things are read back besides the drawings of the drawers.
func (p *Prover) Checks() int { return len(p.checks) }

// Own are those of them that read what shows one drawer alone. They are made after its proof, and by the same
// worker, which has read its boards.
func (p *Prover) Own(drawer int) []int { return p.own[drawer] }

// Rest are all others, in their order, which are made after all drawers are proven.
func (p *Prover) Rest() (list []int) {
	own := make(map[int]bool)
	for _, of := range p.own {
		for _, i := range of {
			own[i] = true
		}
	}
	for i := range p.checks {
		if !own[i] {
			list = append(list, i)
		}
	}
	return list
}

// Check reads one of them back.
func (w *Worker) Check(i int, read Read) record.Checked { return w.checks[i](w, read) }

// Sound reports whether nothing that was checked is at fault.
func Sound(list []record.Checked) bool {
	for _, c := range list {
		if len(c.Faults) > 0 {
			return false
		}
	}
	return true
}

// others lists what is read back besides the drawings of the drawers.
func (p *Prover) others() {
	r := p.report
	add := func(c check) { p.checks = append(p.checks, c) }
	addOwn := func(drawer int, c check) {
		p.own[drawer] = append(p.own[drawer], len(p.checks))
		add(c)
	}
	for i, k := range r.Sheets {
		for j, laid := range k.Sheets {
			if len(laid.Layers) > 0 {
				add(func(w *Worker, read Read) record.Checked { return w.sheetCheck(laidSheet{i, j}, read) })
			}
		}
	}
	// What a check needs of a part or drawer it takes from the report when its turn comes: there may be
	// thousands of them.
	for i, part := range r.Parts.All() {
		if part.Files.STL != "" {
			c := func(w *Worker, read Read) record.Checked { return w.solidCheck(w.report.Parts.At(i), read) }
			if d, known := p.drawer[part.Name]; known {
				addOwn(d, c)
			} else {
				add(c)
			}
		}
	}
	byName := make(map[string]*record.Drawer)
	for i := range r.Drawers {
		d := &r.Drawers[i]
		byName[d.Name] = d
		if box := p.folderOf(*d); box != "" {
			addOwn(i, func(w *Worker, read Read) record.Checked {
				return w.sceneCheck(group{d.Name, filing.BoxScene(box), []record.Drawer{*d}, []geom.Vec3{{}}}, read)
			})
			addOwn(i, func(w *Worker, read Read) record.Checked { return w.boxCheck(*d, box, read) })
		}
	}
	p.cabinets(byName, add)
	printed, plates := p.printedPlates()
	for _, file := range printed {
		add(func(w *Worker, read Read) record.Checked { return w.platesCheck(file, plates[file], read) })
	}
	for _, t := range r.Templates {
		add(func(w *Worker, read Read) record.Checked { return w.templateCheck(t, read) })
	}
	if r.HasPart(func(q record.Part) bool { return q.Files.STL != "" }) {
		add(func(w *Worker, read Read) record.Checked { return w.pageCheck(read) })
	}
	for _, set := range p.picturesOf() {
		add(func(w *Worker, read Read) record.Checked { return w.picturesCheck(set, read) })
	}
	for _, lines := range p.tables() {
		add(func(w *Worker, read Read) record.Checked { return w.tableCheck(lines(), read) })
	}
	add(func(w *Worker, read Read) record.Checked { return w.cutListCheck(read) })
}

// cabinets adds what is read back of cabinets, with drawers by their names.
func (p *Prover) cabinets(byName map[string]*record.Drawer, add func(check)) {
	for _, k := range p.report.Cabinets {
		if k.Preview != "" {
			g := group{name: k.Name, file: k.Preview}
			for _, row := range k.Rows {
				var d record.Drawer
				if known := byName[row.Drawer]; known != nil {
					d = *known
				}
				g.drawers, g.at = append(g.drawers, d), append(g.at,
					geom.Vec3{X: (k.Opening.Width - d.Outside.Width).MM() / 2, Z: row.BoxBottom.MM()})
			}
			add(func(w *Worker, read Read) record.Checked { return w.sceneCheck(g, read) })
		}
		if len(k.Files) > 0 {
			add(func(w *Worker, read Read) record.Checked { return w.cabinetCheck(k, read) })
		}
	}
}

// folderOf is the folder of a drawer's solids, that of its first part.
func (p *Prover) folderOf(d record.Drawer) string {
	for _, name := range d.Parts {
		if i, known := p.parts[name]; known {
			if stl := p.report.Parts.At(i).Files.STL; stl != "" {
				return path.Base(path.Dir(stl))
			}
		}
	}
	return ""
}
