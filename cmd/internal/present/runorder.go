package present

import (
	"fmt"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// bitOfStep names the bit of a step.
func bitOfStep(s record.RunStep, u geom.Unit) string {
	return bitWords(mill.Bit{Name: s.Bit, Tool: s.Tool, Diameter: s.Diameter.MM()}, u)
}

// bitWords name a bit by number, name and diameter.
func bitWords(b mill.Bit, u geom.Unit) string {
	text := b.Name
	if d := geom.LengthOf(b.Diameter).Text(u); text != d {
		text += ", " + d
	}
	if b.Tool > 0 {
		text = fmt.Sprintf("T%d %s", b.Tool, text)
	}
	return text
}

// RunOrder says which files have the steps of a face, where there is one for each change of
// bit, and which steps begin deep down.
func RunOrder(f record.RunFace, u geom.Unit) (list []string) {
	if n := len(f.Steps); n > 0 && f.Steps[0].File != f.Steps[n-1].File {
		list = append(list, "Cut these files in this order, one for each change of bit; "+
			"a bit that comes up again has another file:")
	}
	for i, s := range f.Steps {
		if s.File == "" || i > 0 && f.Steps[i-1].File == s.File {
			continue
		}
		steps, to := fmt.Sprintf("step %d", i+1), i+1
		for to < len(f.Steps) && f.Steps[to].File == s.File {
			to++
		}
		if to > i+1 {
			steps = fmt.Sprintf("steps %d to %d", i+1, to)
		}
		list = append(list, fmt.Sprintf("%s: %s, with %s", s.File, steps, bitOfStep(s, u)))
	}
	for i, s := range f.Steps {
		if s.StartDepth > 0 {
			list = append(list, fmt.Sprintf("Step %d, %s, begins at the floor of PROFILE: "+
				"the bit has been there all over, and passes are counted from there.", i+1, s.Layer))
		}
	}
	return list
}
