package opening

// WidthTerm is a part of the sum that is the width of the boxes: Each, in mm, so many Times; below 0 it is
// taken off.
type WidthTerm struct {
	Of    string // for people
	Times int
	Each  float64
}

// widthTerms are what the width of the boxes is made up of: the opening as it counts, less what slides and
// shims take at both sides or, of slides that ask for a width inside the box, less what they ask for and with
// its sides; and by how much it is wider, or narrower, so that most boxes run.
func (p *planner) widthTerms() []WidthTerm {
	terms := []WidthTerm{{"opening", 1, p.plan.Opening.Width}, {"shims", -2, p.plan.Shim}}
	if p.Slide.InsideDeduction > 0 {
		terms = append(terms, WidthTerm{"inside deduction", -1, p.Slide.InsideDeduction},
			WidthTerm{"sides", 2, p.Sides.Thickness.Mean})
	} else {
		terms = append(terms, WidthTerm{"slide", -2, p.Slide.Clearance})
	}
	aim := WidthTerm{"so that most run", 1, p.Aim}
	if p.Aim < 0 {
		aim = WidthTerm{aim.Of, -1, -p.Aim}
	}
	var list []WidthTerm
	for _, t := range append(terms, aim) {
		if t.Each != 0 {
			list = append(list, t)
		}
	}
	return list
}

// width is that of the boxes.
func (p *planner) width() (sum float64) {
	for _, t := range p.widthTerms() {
		sum += float64(float64(t.Times) * t.Each)
	}
	return sum
}
