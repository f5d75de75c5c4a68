package job

import (
	"math"
	"testing"
)

func TestMeasures(t *testing.T) {
	humidity := &key{name: "now", measures: humidities, min: 5, max: 95}
	temperature := &key{name: "temperature", measures: temperatures, min: 0, max: 60}
	load := &key{name: "load", measures: loads, min: 0.1, max: 1000}
	stiffness := &key{name: "stiffness", measures: stiffnesses, min: 100, max: 40_000}
	density := &key{name: "density", measures: densities, min: 50, max: 1600}
	ratio := &key{name: "geometric", measures: ratios, min: 1, max: 3}
	for _, c := range []struct {
		k    *key
		text string
		want float64 // NaN for a problem
	}{
		{humidity, "45 %", 45}, {humidity, "45%", 45}, {humidity, "45.5   %", 45.5}, {humidity, "4.9999999 %", 5}, {humidity, "95.0000001 %", 95},
		{humidity, "4.9 %", math.NaN()}, {humidity, "45", math.NaN()}, {humidity, "", math.NaN()}, {humidity, "45 % or so", math.NaN()},
		{temperature, "20 C", 20}, {temperature, "20 °C", 20}, {temperature, "68 F", 20}, {temperature, "32 °F", 0}, {temperature, "31 F", math.NaN()}, {temperature, "-1 C", math.NaN()},
		{load, "20 kg", 20}, {load, "100 lb", 45.359237}, {load, "1e3 kg", math.NaN()}, {load, "20 KG", math.NaN()},
		{stiffness, "9000", 9000}, {stiffness, "9 GPa", 9000}, {stiffness, "9000 MPa", 9000}, {stiffness, "9000 N/mm2", 9000}, {stiffness, "1000000 psi", 6894.75729},
		{density, "650", 650}, {density, "40 lb/ft3", 640.73853}, {density, "0x28", math.NaN()},
		{ratio, "1.25", 1.25}, {ratio, "1.25 mm", math.NaN()}, {ratio, "0.8", math.NaN()},
	} {
		r := &reader{reporter: &reporter{src: &source{}}}
		got := r.measured(&node{kind: scalar, text: c.text}, c.k)
		if bad := math.IsNaN(c.want); bad != (len(r.problems) > 0) || !bad && math.Abs(got-c.want) > 1e-5 || got != 0 && (got < c.k.min || got > c.k.max) {
			t.Errorf("%s: %q is %g, want %g; %v", c.k.name, c.text, got, c.want, r.problems)
		}
	}
}
