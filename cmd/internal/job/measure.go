package job

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"drawerwright/geom"
)

// measure is a unit in which a number of a key may be written.
type measure struct {
	unit  string // empty for a number that needs none
	scale float64
	zero  float64 // of the unit, in the first unit of the key
}

// Units of what a job gives beside lengths; the first is the one that is kept.
// The pound is 0.45359237 kg, the inch 25.4 mm (international yard and pound
// agreement of 1959), standard gravity 9.80665 m/s2, so that one pound on a square
// inch is 0.00689476 N/mm2, and a pound in a cubic foot 16.0185 kg/m3.
var (
	humidities   = []measure{{unit: "%", scale: 1}}
	temperatures = []measure{{unit: "C", scale: 1}, {unit: "°C", scale: 1}, {unit: "F", scale: 5.0 / 9, zero: -160.0 / 9}, {unit: "°F", scale: 5.0 / 9, zero: -160.0 / 9}}
	loads        = []measure{{unit: "kg", scale: 1}, {unit: "lb", scale: geom.PoundKG}}
	densities    = []measure{{unit: "kg/m3", scale: 1}, {unit: "", scale: 1}, {unit: "lb/ft3", scale: 16.018463374}}
	stiffnesses  = []measure{{unit: "N/mm2", scale: 1}, {unit: "", scale: 1}, {unit: "MPa", scale: 1}, {unit: "GPa", scale: 1000}, {unit: "psi", scale: 0.00689475729}}
	feeds        = []measure{{unit: "mm/min", scale: 1}, {unit: "m/min", scale: 1000}, {unit: "in/min", scale: 25.4}}
	speeds       = []measure{{unit: "rpm", scale: 1}, {unit: "", scale: 1}}
	periods      = []measure{{unit: "s", scale: 1}, {unit: "min", scale: 60}}
	ratios       = []measure{{unit: "", scale: 1}}
)

var measureText = regexp.MustCompile(`^(-?\d{1,9}(?:\.\d{1,9})?) *(.*)$`)

// measured reads a number with its unit, in the first unit of the key, within the
// range of the key.
func (r *reader) measured(n *node, k *key) float64 {
	split := measureText.FindStringSubmatch(strings.TrimSpace(n.text))
	if split == nil {
		r.fail(CodeNotNumber, n.at, "write a number, as in "+k.example, "%s cannot be %s", k.name, quote(n.text))
		return 0
	}
	for _, m := range k.measures {
		if m.unit != split[2] {
			continue
		}
		x, err := strconv.ParseFloat(split[1], 64)
		if x = float64(x*m.scale) + m.zero; err == nil && k.within(x) {
			return min(max(x, k.min), k.max)
		}
		least, most := k.ends()
		r.suggest(CodeOutOfRange, n.at, between(least, most), "%s cannot be %s", k.name, quote(n.text))
		return 0
	}
	hint, fault := "write only the number, as in "+k.example, "an unknown unit"
	if units := k.units(); len(units) > 0 {
		hint = "write " + alternatives(units) + " after the number"
	}
	if split[2] == "" {
		fault = "no unit"
	}
	r.fail(CodeUnknownUnit, n.at, hint, "%s has %s: %s", k.name, fault, quote(n.text))
	return 0
}

// measureClearance lets the ends of a range be written in another unit.
const measureClearance = 1e-6

func (k *key) within(x float64) bool {
	slack := measureClearance * max(1, k.max)
	return x >= k.min-slack && x <= k.max+slack
}

// numbers says the range of a measure.
func (k *key) numbers() string {
	return strings.TrimSpace(fmt.Sprintf("%g to %g %s", k.min, k.max, k.measures[0].unit))
}

// ends of that range, as they are written.
func (k *key) ends() (least, most string) {
	unit := k.measures[0].unit
	return strings.TrimSpace(fmt.Sprintf("%g %s", k.min, unit)), strings.TrimSpace(fmt.Sprintf("%g %s", k.max, unit))
}

// units are those that a measure can be written in.
func (k *key) units() []string {
	var all []string
	for _, m := range k.measures {
		if m.unit != "" {
			all = append(all, m.unit)
		}
	}
	return all
}

// bare reports whether a measure may stand without a unit.
func (k *key) bare() bool {
	for _, m := range k.measures {
		if m.unit == "" {
			return true
		}
	}
	return false
}
