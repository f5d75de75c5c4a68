package outside

import (
	"regexp"
	"slices"

	"drawerwright/geom"
)

// sheet brings a part of the report back into a panel with the rules it is drawn by.
func (r report) sheet(p part, unit geom.Unit) sheet {
	s := sheet{Panel: r.panel(p), unit: unit, routing: r.Router}
	s.Overcut *= r.mm()
	if r.machine(p) != "router" {
		s.DepthFrom = "top" // a saw's depths are always those of its cuts
	}
	diameters := map[string][]float64{}
	for _, l := range r.Layers {
		if l.File != p.Files.Inside && l.File != p.Files.Outside {
			continue
		}
		name := withoutBit(l.Layer)
		diameters[name] = append(diameters[name], l.Diameter*r.mm())
		if l.Operation == "profile" {
			s.skin = l.Remaining * r.mm()
		}
	}
	s.bits = func(layer string) []float64 { return diameters[withoutBit(layer)] }
	return s
}

// named is a layer's name by the default pattern with the name of a bit after it, which
// layers have that several bits would share.
var named = regexp.MustCompile(`^([A-Z]+_(?:INSIDE|OUTSIDE)_(?:LINE_)?(?:THROUGH|(?:FLOOR_)?[0-9]+-[0-9]+(?:MM|IN)))_[A-Z0-9-]+$`)

// withoutBit is a layer's name without that of its bit.
func withoutBit(layer string) string { return named.ReplaceAllString(layer, "$1") }

// machine is the tool that a part is cut with.
func (r report) machine(p part) string {
	for _, d := range r.Drawers {
		if d.Name == p.Drawer {
			return d.Machine
		}
	}
	return ""
}

// panel is a part in millimeters. Grooves take the bottom, which has square corners
// and may lie anywhere in its play.
func (r report) panel(p part) geom.Panel {
	scale := r.mm()
	out := geom.Panel{Outline: geom.Rectangle(0, 0, p.Length*scale, p.Width*scale), Thickness: p.Thickness * scale}
	for _, op := range p.Operations {
		k := geom.Pocket{Depth: op.Depth * scale}
		for kind := geom.Dado; kind <= geom.Cutout; kind++ {
			if kind.String() == op.Kind {
				k.Kind = kind
			}
		}
		if op.Face == "outside" {
			k.Face = geom.Outside
		}
		for _, v := range op.Outline {
			k.Outline = append(k.Outline, geom.Vertex{Point: geom.Point{X: v[0] * scale, Y: v[1] * scale}})
		}
		out.Pockets = append(out.Pockets, k)
	}
	for i, k := range out.Pockets {
		if k.Kind == geom.Groove {
			x0, x1 := r.bottomAlong(p)
			g := k.Outline.Bounds()
			out.Pockets[i].Takes = geom.Rectangle(x0, g.Min.Y, x1, g.Max.Y)
		}
	}
	return out
}

// bottomAlong is from where to where the drawer's bottom reaches along a part.
func (r report) bottomAlong(p part) (x0, x1 float64) {
	i := slices.IndexFunc(r.Parts, func(o part) bool { return o.Drawer == p.Drawer && o.Role == "bottom" })
	bottom := r.Parts[i]
	for n, corner := range [2][3]float64{bottom.Placements[0].at(0, 0, 0), bottom.Placements[0].at(bottom.Length,
		bottom.Width, bottom.Thickness)} {
		d := 0.0
		for k := range 3 {
			d += (corner[k] - p.Placements[0].Origin[k]) * p.Placements[0].X[k]
		}
		if d *= r.mm(); n == 0 {
			x0 = d
		} else {
			x1 = d
		}
	}
	return min(x0, x1), max(x0, x1)
}

// at takes a point of a panel into its box.
func (s stand) at(x, y, z float64) (p [3]float64) {
	n := [3]float64{s.X[1]*s.Y[2] - s.X[2]*s.Y[1], s.X[2]*s.Y[0] - s.X[0]*s.Y[2], s.X[0]*s.Y[1] - s.X[1]*s.Y[0]}
	for k := range p {
		p[k] = s.Origin[k] + x*s.X[k] + y*s.Y[k] + z*n[k]
	}
	return p
}
