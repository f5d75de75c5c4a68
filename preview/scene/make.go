package scene

import (
	"crypto/sha256"
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/milled"
	"drawerwright/geom/solid"
)

// Drawer is what a box of a scene is made from.
type Drawer struct {
	joinery.Drawer
	// Names, Numbers and Quantities are those of its Parts, in their order.
	Names      []string
	Numbers    []int
	Quantities []int
	// Milled are its parts as bits leave them; none where the solids are to be as designed.
	Milled []geom.Panel
}

// parted is how far pieces of an opened box move, of its largest size: far enough to
// see into the joints, near enough to see where they belong.
const parted = 0.2

// Make makes the scene of one box. The grid of its solids is that of [solid.Options].
// Errors are those of [solid.Build], with the part.
func Make(d Drawer, grid float64) (Scene, error) {
	b := Opened(d.Drawer)
	s := Scene{Title: d.Spec.Name, Unit: d.Spec.Units}
	for i, p := range d.Parts {
		s.Parts = append(s.Parts, Part{Name: d.Names[i], Number: d.Numbers[i], Role: p.Role,
			Label: p.Label, Stock: p.Stock.Name,
			Grained: p.Stock.Grain == joinery.GrainLength, Quantity: d.Quantities[i], Panel: p.Panel})
	}
	standing := stand(s.Parts, b.Pieces)
	_, rooms := plays(s.Parts, b.Pieces, standing)
	_, moves := fingerPlays(s.Parts, b.Pieces, standing)
	for i := range s.Parts {
		p := &s.Parts[i]
		m, err := solid.Build(p.Panel, solid.Options{Grid: grid})
		if err != nil {
			return Scene{}, fmt.Errorf("%s: %w", p.Name, err)
		}
		p.Mesh = len(s.Meshes)
		p.Eased, p.Milled = p.Mesh, p.Mesh
		s.Meshes = append(s.Meshes, solid.Pack(m))
		if len(d.Milled) > 0 {
			if m, err = milled.Solid(d.Milled[i], grid); err != nil {
				return Scene{}, fmt.Errorf("%s, as milled: %w", p.Name, err)
			}
			p.Milled = len(s.Meshes)
			s.Meshes = append(s.Meshes, solid.Pack(m))
		}
		if len(rooms[i])+len(moves[i]) > 0 {
			if m, err = solid.Build(narrowed(eased(p.Panel, rooms[i]), moves[i]), solid.Options{Grid: grid}); err != nil {
				return Scene{}, fmt.Errorf("%s: %w", p.Name, err)
			}
			p.Eased = len(s.Meshes)
			s.Meshes = append(s.Meshes, solid.Pack(m))
		}
	}
	s.Boxes = []Box{b}
	s.Boxes[0].Overlaps = s.OverlapsAt(0, 0)
	return Join(s.Title, s.Unit, []Scene{s}, nil), nil // front and back are often the same
}

// PieceName tells pieces of a box apart: the name of the k-th placement of a part.
func PieceName(p joinery.Part, k int) string {
	role := p.Role.String()
	if p.Role == joinery.Side {
		if p.Placements[k].Normal().X > 0 {
			return "left " + role
		}
		return "right " + role
	}
	if p.Label != "" {
		role += " " + p.Label
	}
	if len(p.Placements) > 1 {
		role += fmt.Sprintf(" (%d)", k+1)
	}
	return role
}

// Join puts scenes of single boxes into one, with the groups given, whose boxes count
// in the order of the scenes, before the boxes one by one. Equal solids become one.
func Join(title string, unit geom.Unit, scenes []Scene, groups []Group) Scene {
	out := Scene{Title: title, Unit: unit, Groups: groups[:len(groups):len(groups)]}
	known := make(map[[sha256.Size]byte]int)
	parts := 0
	for _, s := range scenes {
		parts += len(s.Parts)
	}
	out.Parts = make([]Part, 0, parts)
	for _, s := range scenes {
		mesh := make([]int, len(s.Meshes))
		for i, m := range s.Meshes {
			key := fingerprint(m)
			at, ok := known[key]
			if !ok {
				at = len(out.Meshes)
				known[key] = at
				out.Meshes = append(out.Meshes, m)
			}
			mesh[i] = at
		}
		first := len(out.Parts)
		for _, p := range s.Parts {
			p.Mesh, p.Eased, p.Milled = mesh[p.Mesh], mesh[p.Eased], mesh[p.Milled]
			out.Parts = append(out.Parts, p)
		}
		for _, b := range s.Boxes {
			pieces := make([]Piece, len(b.Pieces))
			for i, p := range b.Pieces {
				p.Part += first
				pieces[i] = p
			}
			b.Pieces = pieces
			out.Groups = append(out.Groups, Alone(b.Name, len(out.Boxes)))
			out.Boxes = append(out.Boxes, b)
		}
	}
	return out
}

// fingerprint is the same for meshes with the same vertices and triangles alone.
func fingerprint(m solid.Packed) [sha256.Size]byte { return sha256.Sum256(m.AppendKey(nil)) }
