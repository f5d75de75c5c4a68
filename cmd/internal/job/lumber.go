package job

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/lumber"
	"drawerwright/geom/wood"
)

// Lumber is the rough boards that a stock is bought in.
type Lumber struct {
	Stock string
	lumber.Boards
	Price float64 // of a cubic meter, or of a board foot in a file of inches; 0 when not said
}

// usualWaste is how much more wood is bought than rough parts take, in percent; common practice, no source.
const usualWaste = "25"

// CodeRoughThin is of rough boards that cannot be planed to the thickness of their stock.
const CodeRoughThin Code = "rough-thin"

// boardsOf reads the rough boards of a stock, whose grain runs along them; nil where it has none.
func (r *reader) boardsOf(s *section, board *joinery.Stock) *Lumber {
	v := s.values["boards"]
	if v.section == nil {
		return nil
	}
	_, isSheet := wood.FindSheet(s.values["material"].text)
	sheeted := s.values["sheet"].given
	r.noEffect(sheeted, s.values, "boards", "delete it, or delete `sheet:`", "the parts are cut of sheets")
	grain := s.values["grain"]
	r.noEffect(!sheeted && (isSheet || grain.given && grain.text != string(joinery.GrainLength)), s.values, "boards",
		"delete it, or write `grain: length` and a kind of wood as `material:`",
		"boards are of solid wood, with the grain along them")
	board.Grain = joinery.GrainLength
	get := v.section.values
	out := Lumber{Stock: s.name, Price: get["price"].number, Boards: lumber.Boards{Unit: r.units, Width: get["width"].mm(0),
		Rough: get["rough"].mm(0), Waste: get["waste"].number / 100}}
	thick := board.Thickness.Max
	if thick == 0 || out.Width == 0 || get["rough"].given && out.Rough == 0 {
		return nil
	}
	if !get["rough"].given {
		var sold bool
		if out.Rough, sold = lumber.RoughFor(thick, r.units); !sold {
			r.fail(CodeRoughThin, v.at, "write how thick they are as `rough:`",
				"no rough boards that are usual plane to %s", geom.LengthOf(thick).Text(r.units))
			return nil
		}
		return &out
	}
	if need, ok := lumber.Planes(out.Rough, thick, r.units); !ok {
		r.fail(CodeRoughThin, get["rough"].at, "write `rough: "+geom.LengthOf(need).RoundUp(r.units).Text(r.units)+
			"` or more, or delete it", "boards of %s cannot be planed to %s", geom.LengthOf(out.Rough).Text(r.units),
			geom.LengthOf(thick).Text(r.units))
		return nil
	}
	return &out
}
