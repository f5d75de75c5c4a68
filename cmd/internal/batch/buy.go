package batch

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/opening"
)

// Buy is one thing that a job takes beside board.
type Buy struct {
	Kind     string // slide, hardware, offcut, banding, glue
	Name     string
	Quantity float64
	Unit     string // pieces, pairs, m or ft, g or oz
	Cost     float64
}

const (
	// wasteOfBanding is what is trimmed off; common practice, no source.
	wasteOfBanding = 1.1
	// gluePerArea in grams a square metre of joint, spread on one face; common
	// practice, no source.
	gluePerArea = 180.0
)

// ToBuy lists slides, hardware, edge banding and glue, in order of first use.
func ToBuy(b Batch) []Buy {
	var list []Buy
	add := func(kind, name, unit string, quantity, cost float64) {
		if quantity == 0 {
			return
		}
		for i := range list {
			if list[i].Kind == kind && list[i].Name == name {
				list[i].Quantity += quantity
				list[i].Cost += cost
				return
			}
		}
		list = append(list, Buy{kind, name, quantity, unit, cost})
	}
	glue := 0.0
	for _, d := range b.Drawers {
		n := float64(d.Spec.Count)
		if s := d.Strength; s.Slide.Kind != "" && s.Slide.Kind != opening.NoSlide {
			unit := "pieces"
			if s.Slide.Pair() {
				unit = "pairs"
			}
			name := s.Slide.Name + " " + geom.LengthOf(s.SlideLength).Text(b.Units)
			if s.Slide.Load > 0 {
				name += ", for " + words.Weight(s.Slide.Load, b.Units)
			}
			add("slide", name, unit, n, 0)
		}
		glue += float64(d.GlueArea() * n)
	}
	for _, d := range b.Drawers {
		for _, h := range d.Hardware {
			kind := "hardware"
			if h.Offcut {
				kind = "offcut"
			}
			add(kind, h.Name, "pieces", float64(h.Count*d.Spec.Count), 0)
		}
	}
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			run := p.Banding * float64(p.Quantity) * wasteOfBanding
			length, unit := words.Run(run, b.Units)
			add("banding", geom.LengthOf(p.BandingThickness).Text(b.Units)+", for "+p.Stock.Name, unit, length, run/1000*p.BandingPrice)
		}
	}
	area, of := words.Area(glue, b.Units)
	weight, unit := words.Little(glue/1e6*gluePerArea/1000, b.Units)
	for i, one := range list {
		if one.Quantity == 1 {
			list[i].Unit = strings.TrimSuffix(one.Unit, "s") // 1 piece, 1 pair
		}
	}
	add("glue", fmt.Sprintf("for %.2f %s of joints", area, of), unit, weight, 0)
	return list
}
