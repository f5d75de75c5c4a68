package readback

import (
	"fmt"
	"math"
	"strings"
)

// formMeasures are what the form for readings gives limits of, by the names of the forecast, in its columns.
var formMeasures = []string{"outside width", "outside depth", "outside height",
	"diagonals over the sides' outside corners"}

// formLine is how far a line of a cell of the form is from the next, in points, at most.
const formLine = 12.0

// formLimits reads by how much the boxes of a drawer may be off, which stands below what is right, in one line for both
// ways or in a line each: taken from what is right and added to it these are the limits of the forecast.
func (p *packetReader) formLimits(drawer string) {
	for i, measure := range formMeasures {
		right := p.s.lines[p.s.at][1+i]
		said := make(map[string]string) // by the sign before it
		for k := p.s.at + 1; k < len(p.s.lines) && k < p.s.at+ahead; k++ {
			down := right.y - p.s.lines[k][0].y
			if down <= 0 || down > formLine*float64(k-p.s.at) {
				break
			}
			for _, cell := range p.s.lines[k] {
				text := strings.TrimSpace(cell.text)
				for _, sign := range []string{"±", "-", "+"} {
					by, so := strings.CutPrefix(text, sign)
					if so && math.Abs(cell.x-right.x) <= 0.1 && said[sign] == "" {
						said[sign] = by
					}
				}
			}
			if len(said) == 0 || said["±"] != "" || said["+"] != "" {
				break // none stand right below, or they are complete
			}
		}
		p.missed(drawer, measure, right.text, said)
	}
}

// missed adds the limits of a measure from what is right, and by how much it may be missed either way, below and above.
func (p *packetReader) missed(drawer, measure, right string, by map[string]string) {
	right, _, _ = strings.Cut(strings.TrimSpace(right), " (")
	middle, known := number(right)
	if !known {
		return // the box's own size is read, and said to be none
	}
	for _, to := range []struct {
		sign, limit string
		way         float64
	}{{"-", "limit from", -1}, {"+", "limit to", 1}} {
		text, there := by[to.sign]
		if !there {
			text = by["±"]
		}
		if off, ok := number(text); ok {
			step := p.step(text) // it was rounded down by up to that
			p.add("fit", drawer+": "+measure, to.limit, fmt.Sprintf("%.5f", middle+float64(to.way*(off+step/2))),
				p.step(right)+step+p.step("")) // and other outputs round limits inward
		}
	}
}
