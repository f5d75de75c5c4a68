// Package batch works out every drawer of a job and gives drawers, parts and
// files their names, once, for the commands that list, report and write them.
package batch

import (
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Batch is a job worked out.
type Batch struct {
	Title   string
	Units   geom.Unit
	Drawers []Drawer // in the order of the file
}

// Boxes is how many boxes the batch makes.
func (b Batch) Boxes() int {
	n := 0
	for _, d := range b.Drawers {
		n += d.Spec.Count
	}
	return n
}

// Drawer is one kind of drawer with its parts.
type Drawer struct {
	joinery.Drawer
	Folder string // of its previews
	Parts  []Part
}

// Part is a panel that a shop cuts some of.
type Part struct {
	joinery.Part
	Name     string // safe for every file system, and different from all others
	Drawer   string
	Quantity int // for all drawers of its kind
	// Files, relative to the output folder; Outside is empty for a part that is
	// cut on its inside face alone.
	Inside, Outside, STL string
}

// Problem is a problem of one drawer, by its place in the file.
type Problem struct {
	Drawer int
	joinery.Problem
}

// Make works out a job. With an error among the problems the batch is not to be built.
func Make(j *job.Job) (Batch, []Problem) {
	b := Batch{Title: j.Title, Units: j.Units, Drawers: make([]Drawer, 0, len(j.Drawers))}
	var problems []Problem
	for i, asked := range j.Drawers {
		spec := asked.Spec
		spec.Units = j.Units
		built, found := joinery.Build(spec)
		for _, p := range found {
			problems = append(problems, Problem{i, p})
		}
		b.Drawers = append(b.Drawers, name(built))
	}
	return b, problems
}

func name(d joinery.Drawer) Drawer {
	out := Drawer{Drawer: d, Folder: job.FileName(d.Spec.Name)}
	for _, p := range d.Parts {
		part := Part{Part: p, Name: out.Folder + "-" + string(p.Role), Drawer: d.Spec.Name, Quantity: d.Spec.Count * len(p.Stands)}
		part.Inside = "router/" + part.Name + ".inside.dxf"
		if p.Panel.CutOn(geom.Outside) {
			part.Outside = "router/" + part.Name + ".outside.dxf"
		}
		part.STL = "preview/" + out.Folder + "/" + part.Name + ".stl"
		out.Parts = append(out.Parts, part)
	}
	return out
}
