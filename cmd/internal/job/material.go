package job

import (
	"fmt"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/stock"
	"drawerwright/geom/wood"
)

// flatsawn and quartersawn are the words for cuts of solid wood.
const flatsawn, quartersawn = "flatsawn", "quartersawn"

// airOf is the air of a climate, nil without one.
func airOf(climate *section) *wood.Air {
	if climate == nil {
		return nil
	}
	share := func(name string) float64 { return climate.values[name].number / 100 }
	return &wood.Air{Now: share("now"), Driest: share("driest"), Dampest: share("dampest"),
		Celsius: climate.values["temperature"].number}
}

// material sets what follows from the kind of sheet or wood, and what the file
// says instead.
func (r *reader) material(board *joinery.Stock, s *section, climate *section) {
	get := s.values
	species, solid := wood.Find(get["material"].text)
	sheet, isSheet := wood.FindSheet(get["material"].text)
	r.noEffect(isSheet, get, "movement", "delete it, or write a kind of wood as `material:`, or none",
		"it is for solid wood, and "+get["material"].text+" is a sheet")
	// A wood by its own figures, or a listed one that was measured.
	if moves := get["movement"].number / 100; moves > 0 && !isSheet {
		r.noEffect(true, get, "cut", "delete it", "movement is that of the boards as they are sawn")
		if !solid {
			species, solid = wood.Species{Modulus: get["stiffness"].number}, true
		}
		species.Radial, species.Tangential = moves, moves
	}
	switch {
	case solid:
		r.solidStock(board, species, get["cut"].text, climate)
	case isSheet && board.Thickness.Mean > 0:
		stock.OfSheet(board, sheet, airOf(climate))
	}
	if cut := get["cut"]; !solid && cut.given && (get["material"].text != "" || !get["material"].given) {
		r.fail(CodeNoEffect, cut.at, "delete it, or write a kind of wood as `material:`", "cut is for solid wood, and the stock %s is not", quote(s.name))
	}
	if density := get["density"].number; density > 0 {
		board.Density = density
	}
	r.elastic(board, s)
}

func (r *reader) solidStock(board *joinery.Stock, species wood.Species, cut string, climate *section) {
	sawn := wood.Flatsawn
	if cut == quartersawn {
		sawn = wood.Quartersawn
	}
	season := stock.OfWood(board, species, sawn, airOf(climate))
	if season.Limited {
		r.add(Problem{Level: geom.LevelWarning, Code: CodeMoisture, Hint: "give the air over weeks, not over a day, of the place where the wood lies and of the room where it will stand; if that is so, leave more room than is asked for",
			Message: fmt.Sprintf("in this air wood has %.1f %% of moisture now, %.1f %% at its driest and %.1f %% at its dampest; it moves in proportion from %g to %g %%, and beyond that its movement is an estimate",
				season.Now, season.Dry, season.Damp, wood.MinLinear, wood.MaxLinear)}, climate.at)
	}
}

// elastic puts the shop's own figures of stiffness in the place of the material's.
func (r *reader) elastic(board *joinery.Stock, s *section) {
	get := s.values
	if along := get["stiffness"].number; along > 0 {
		board.Stiffness, board.StiffnessAcross, board.StiffAs = along, along, ""
		if board.Solid {
			board.StiffnessAcross = float64(wood.AcrossShare * along)
		}
	}
	if across := get["stiffness-across"].number; across > 0 {
		board.StiffnessAcross, board.StiffAs = across, ""
	}
	unread := get["stiffness"].given && get["stiffness"].number == 0 || get["material"].given && get["material"].text == ""
	r.noEffect(board.Stiffness == 0 && board.Thickness.Mean > 0 && !unread, get, "stiffness-across",
		"write `stiffness:` or `material:` too, or delete it", "the stiffness of the stock along its grain is not known")
	stock.DropShear(board)
}
