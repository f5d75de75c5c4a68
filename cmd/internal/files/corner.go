package files

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/packet"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/picture"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
)

// cornerLeft and cornerFore are how far the picture of a corner sets the side off to the left and
// the front to the fore, cornerShown is how much about the corner it shows, in thicknesses of the
// side.
const cornerLeft, cornerFore, cornerShown = 2.0, 5.0, 9.0

// corner is the corner whose joint one looks into from before, above and the right: the
// left side with its inside face, the front, and the bottom, a little apart.
func corner(d batch.Drawer, s scene.Scene, grid float64) drawing.Drawing {
	left := func(piece scene.Piece) bool {
		return s.Parts[piece.Part].Role == joinery.Side && piece.Placement.Normal().X > 0
	}
	thick := 0.0
	for _, piece := range s.Boxes[0].Pieces {
		if left(piece) {
			thick = d.Parts[piece.Part].Panel.Thickness
		}
	}
	var solids []solid.Mesh
	for _, piece := range s.Boxes[0].Pieces {
		part, stand := s.Parts[piece.Part], piece.Placement
		switch {
		case part.Role == joinery.Front:
			stand.Origin.Y -= cornerFore * thick
		case left(piece):
			stand.Origin.X -= cornerLeft * thick
		case part.Role != joinery.Bottom:
			continue
		}
		solids = append(solids, s.Meshes[part.Mesh].Place(stand, grid))
	}
	at := packet.Seen.At(geom.Vec3{X: -cornerLeft / 2 * thick, Y: -cornerFore / 2 * thick, Z: d.Outside.Height})
	half := cornerShown * thick
	window := geom.Rect{Min: geom.Point{X: at.X - 0.4*half, Y: at.Y - 0.75*half}, Max: geom.Point{X: at.X + 1.2*half, Y: at.Y + 0.45*half}}
	return paper.Detail(picture.Draw(solids, packet.Seen), window, pictured)
}
