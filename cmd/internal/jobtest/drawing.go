package jobtest

import (
	"fmt"
	"math"
	"strings"
)

// drawing is a job file on its way. Lengths are in millimeters.
type drawing struct {
	between func(low, high int, name string) int
	want    Want
	job     Job

	ts, tf   float64 // thickness of the sides, and of front and back
	fence    float64 // of the corner
	slot     float64 // of a cutter behind a fence
	grooves  float64 // of the one for grooves; 0 for the same
	bits     []float64
	sides    stock
	front    stock
	others   []stock // bottoms, dividers, drawer fronts, plates
	openings []string
	slides   []string
	entries  string // the drawers
}

// length is a length between two, in hundredths of a millimeter.
func (d *drawing) length(low, high float64, name string) float64 {
	return float64(d.between(int(math.Round(low*100)), int(math.Round(high*100)), name)) / 100
}

// odds is true in one of n drawings.
func (d *drawing) odds(n int, name string) bool { return d.between(1, n, name) == n }

func (d *drawing) word(name string, words ...string) string {
	return words[d.between(0, len(words)-1, name)]
}

// wanted is the word that is wanted, or any.
func (d *drawing) wanted(want, name string, words []string) string {
	if want != "" {
		return want
	}
	return d.word(name, words...)
}

func (d *drawing) inches() bool { return d.job.Units == "in" }

// mm writes a length in the unit of the file, without it.
func (d *drawing) mm(length float64) string {
	if d.inches() {
		return plain(fmt.Sprintf("%.3f", length/25.4))
	}
	return plain(fmt.Sprintf("%.2f", length))
}

// plain leaves out zeros at the end of a decimal.
func plain(number string) string {
	return strings.TrimSuffix(strings.TrimRight(number, "0"), ".")
}

// list writes lengths as a list.
func (d *drawing) list(lengths ...float64) string {
	var all []string
	for _, l := range lengths {
		all = append(all, d.mm(l))
	}
	return "[" + strings.Join(all, ", ") + "]"
}

// tape writes a length as it is read off a tape: to half a millimeter, or to a sixteenth
// of an inch as a fraction; it gives the length that was written as well.
func (d *drawing) tape(length float64) (string, float64) {
	if !d.inches() {
		l := math.Round(length*2) / 2
		return d.mm(l), l
	}
	n := int(math.Round(length / 25.4 * 16))
	whole, over, of := n/16, n%16, 16
	for over > 0 && over%2 == 0 {
		over, of = over/2, of/2
	}
	mm := float64(n) / 16 * 25.4
	switch {
	case over == 0:
		return fmt.Sprint(whole), mm
	case whole == 0:
		return fmt.Sprintf("%d/%d", over, of), mm
	}
	return fmt.Sprintf("%d %d/%d", whole, over, of), mm
}

// size writes lengths as a size off a tape.
func (d *drawing) size(lengths ...float64) string {
	var all []string
	for _, l := range lengths {
		s, _ := d.tape(l)
		all = append(all, s)
	}
	return strings.Join(all, " x ")
}

// entries are `key: value` pairs of a mapping in one line.
type entries []string

func (e *entries) say(key, format string, args ...any) {
	*e = append(*e, key+": "+fmt.Sprintf(format, args...))
}

func (e entries) String() string { return "{" + strings.Join(e, ", ") + "}" }

// section writes a section of the file in one line; nothing without entries.
func (e entries) section(name string) string {
	if len(e) == 0 {
		return ""
	}
	return name + ": " + e.String() + "\n"
}
