package files

import (
	"bytes"
	"fmt"
	"io"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/packet"
	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/solid"
	"drawerwright/preview/glb"
	"drawerwright/preview/scene"
	"drawerwright/preview/stl"
	"drawerwright/preview/viewer"
)

// preview writes what shows a box, each way that programs read, and gives its scene for the page of all; its
// solids as milled where there are such. Pictures show the design, with fewer lines.
func (w *writer) preview(d batch.Drawer, milled []geom.Panel) (scene.Scene, error) {
	boxed, err := BoxOf(d, milled)
	if err != nil {
		return scene.Scene{}, err
	}
	shown := boxed.Scene
	type moved func(scene.Part, geom.Placement) geom.Placement
	stands := func(where moved) (list []solid.Mesh) {
		for _, piece := range shown.Boxes[0].Pieces {
			part := shown.Parts[piece.Part]
			list = append(list, shown.Meshes[part.Milled].Mesh().Place(where(part, piece.Placement), boxed.Grid))
		}
		return list
	}
	taken := w.taken(d, boxed)
	assembled := stands(func(_ scene.Part, s geom.Placement) geom.Placement { return s })
	if err := w.view(d, filing.Assembled, assembled, taken.Assembled(pictured)); err != nil {
		return shown, err
	}
	if w.o.Plan.Looks.Exploded {
		exploded := stands(func(part scene.Part, s geom.Placement) geom.Placement {
			return aside(part.Role, s, boxed.Apart)
		})
		if err := w.view(d, filing.Exploded, exploded, taken.Exploded(pictured)); err != nil {
			return shown, err
		}
		if err := w.corner(d, taken); err != nil {
			return shown, err
		}
	}
	return shown, writeGLB(w.to, filing.BoxScene(d.Folder), shown, shown.Groups[0])
}

// taken is a box for pictures, with the solids of its scene.
func (w *writer) taken(d batch.Drawer, boxed Boxed) packet.Taken {
	var meshes []solid.Mesh
	for _, part := range boxed.Scene.Parts {
		meshes = append(meshes, boxed.Scene.Meshes[part.Mesh].Mesh())
	}
	return packet.Take(w.batch.Stocks, d, meshes, boxed.Grid)
}

// view writes a view of a box as STL and as a picture.
func (w *writer) view(d batch.Drawer, view string, solids []solid.Mesh, drawn drawing.Drawing) error {
	title := d.Spec.Name + " " + view
	if err := w.stl(filing.BoxSolid(d.Folder, view), title, solid.Join(solids...)); err != nil {
		return err
	}
	look := pictureOf{filing.BoxPicture(d.Folder, view), title, drawn}
	return look.write(w.to, w.o.Plan.Looks)
}

// corner writes the picture of a box's left front corner.
func (w *writer) corner(d batch.Drawer, taken packet.Taken) error {
	drawn, err := taken.Corner(pictured)
	if err != nil {
		return err
	}
	look := pictureOf{filing.BoxPicture(d.Folder, filing.Corner), d.Spec.Name + " corner", drawn}
	return look.write(w.to, w.o.Plan.Looks)
}

// sceneOf is what a scene is made from.
func sceneOf(d batch.Drawer) scene.Drawer {
	out := scene.Drawer{Drawer: d.Drawer}
	for _, p := range d.Parts {
		out.Names, out.Numbers = append(out.Names, p.Name), append(out.Numbers, p.Number)
		out.Quantities = append(out.Quantities, p.Quantity)
	}
	return out
}

func writeGLB(to Folder, name string, s scene.Scene, g scene.Group) error {
	var out bytes.Buffer
	if err := glb.Write(&out, s, g); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return to.WriteFile(name, out.Bytes())
}

// writePreviews writes what shows several boxes: each cabinet's, and the page.
func writePreviews(b batch.Batch, scenes []scene.Scene, to Folder) error {
	if len(scenes) == 0 {
		return nil
	}
	pictures := make([]viewer.Picture, len(scenes))
	for i := range scenes {
		box := scenes[i].Boxes[0]
		scenes[i].Boxes[0].Steps = func() []scene.Step { return packet.Steps(b, b.Drawers[i], box) }
		file := filing.BoxPicture(b.Drawers[i].Folder, filing.Assembled) + ".svg"
		pictures[i] = viewer.Picture{SVG: func() ([]byte, error) { return to.ReadFile(file) }, File: file}
	}
	groups := Cabinets(b)
	title := b.Title
	if title == "" {
		title = b.Drawers[0].Spec.Name
		if n := len(b.Drawers); n > 1 {
			title += fmt.Sprintf(" and %d more", n-1)
		}
	}
	s := scene.Join(title, b.Units, scenes, groups)
	clear(scenes) // which would be there twice
	s.Stocks = StockNames(b)
	for i, bank := range b.Banks {
		if len(groups[i].Boxes) == 0 {
			continue
		}
		if err := writeGLB(to, bank.Preview(), s, groups[i]); err != nil {
			return err
		}
	}
	var err error
	if s.Settings, err = packet.Settings(b, &s); err != nil {
		return err
	}
	return to.Stream(filing.Page, func(w io.Writer) error { return viewer.Write(w, s, pictures) })
}

// pictured is the room for a picture, in mm.
var pictured = geom.Point{X: 160, Y: 120}

// aside is where a part of the exploded box stands: dividers and inserts are lifted out, a drawer
// front moves further than the front behind it.
func aside(r joinery.Role, s geom.Placement, apart float64) geom.Placement {
	switch r {
	case joinery.DividerRole, joinery.InsertRole:
		s.Origin.Z += apart
		return s
	case joinery.DrawerFrontRole:
		apart *= 1.5
	}
	return solid.Explode(s, apart)
}

func (w *writer) stl(name, title string, m solid.Mesh) error {
	w.out.Reset()
	write := stl.Binary
	if w.o.ASCII {
		write = stl.ASCII
	}
	if err := write(&w.out, title, m); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return w.to.WriteFile(name, w.out.Bytes())
}
