package job

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"math/big"
	"regexp"
	"slices"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Convert gives a job file the other unit: every length that has no unit of its own is written in
// it, and all else stays, comments too. To millimeters a fraction stays exact, and a decimal becomes
// the shortest number that is the same to a ten-thousandth of an inch, or to the decimals that it
// has; to inches a length becomes a fraction where it is a whole number of 64ths, else a decimal
// that shows a hundredth of what was shown, and no less than ten-thousandths. The boxes of the job
// stay what they are: where they follow from what is usual in a unit, as the lengths in which slides
// are sold, that is written out (convertusual.go). files are those that the job names.
//
// Drawings are in the unit of the job unless dxf: {units: ...} says other. What is usual of machines,
// hardware and boards with a single reading is usual in that unit.
func Convert(file []byte, to geom.Unit, files ...Option) ([]byte, error) {
	out, err := converted(file, to, files)
	if err != nil {
		return nil, fmt.Errorf("the job cannot be converted to %s: %w", to, err)
	}
	return out, nil
}

// sameSize is by how much a size may differ, in mm: a thousandth of an inch, the larger of the steps
// to which the width of a box in an opening is rounded.
const sameSize = geom.InchMM / 1000

func converted(file []byte, to geom.Unit, files []Option) ([]byte, error) {
	l, err := readLayout(file)
	if err != nil {
		return nil, fmt.Errorf("the job file must be read first: %w", err)
	}
	units, err := l.units()
	if err != nil {
		return nil, err
	}
	from, err := geom.ParseUnit(units.text)
	if err != nil || from == to {
		return file, err
	}
	before, problems := Read("", bytes.NewReader(file), files...)
	if problems.Failed() { // there are no boxes to keep
		return conversion{from: from, to: to}.of(file)
	}
	// What just fits may need more decimals to do so.
	for _, more := range []int{0, 2, 4} {
		var out []byte
		if out, err = (conversion{from: from, to: to, more: more}).of(file); err != nil {
			return nil, err
		}
		if out, err = withUsual(out, before); err != nil {
			return nil, err
		}
		after, problems := Read("", bytes.NewReader(out), files...)
		if err = sameBoxes(before, after, problems); err == nil {
			return out, nil
		}
	}
	return nil, err
}

// units is what the file says of them.
func (l *layout) units() (*node, error) {
	units, missing, err := l.follow([]string{"units"})
	if err == nil && (len(missing) > 0 || units.kind != scalar) {
		err = errors.New("it says no units; write `units: mm` or `units: in`")
	}
	return units, err
}

// sameBoxes says which boxes of a job come out otherwise, if any do. The width that is aimed at in
// an opening is not asked for where a single reading is judged by a standard that is assumed, since
// each unit has its own; by one that the file names it is judged in both.
func sameBoxes(before, after *Job, problems Problems) error {
	if p := problems.First(geom.LevelError); p != nil {
		return fmt.Errorf("it would have a mistake then: %s", p.Message)
	}
	for i, d := range before.Drawers {
		other := after.Drawers[i]
		far := math.Abs(d.Height-other.Height) > sameSize || math.Abs(d.Depth-other.Depth) > sameSize
		alike := sameStandards(before.Boards(d.Spec), after.Boards(other.Spec))
		if far || alike && math.Abs(d.Width-other.Width) > sameSize {
			return fmt.Errorf("%s would come out in another size", quote(d.Name))
		}
		_, _, sound := joinery.LayOut(d.Spec)
		if _, _, still := joinery.LayOut(other.Spec); sound && !still {
			return fmt.Errorf("%s could not be made any more", quote(d.Name))
		}
	}
	return nil
}

// sameStandards reports whether the boards of a drawer are judged alike in two jobs.
func sameStandards(a, b fit.Boards) bool {
	return a.Sides.Assumed == b.Sides.Assumed && a.Front.Assumed == b.Front.Assumed &&
		a.Back.Assumed == b.Back.Assumed && a.Bottom.Assumed == b.Bottom.Assumed
}

// conversion gathers what changes, in the file and in its tree.
type conversion struct {
	from, to geom.Unit
	more     int // decimals than are usual
	changes  []change
}

// of converts what a file says.
func (c conversion) of(file []byte) ([]byte, error) {
	l, err := readLayout(file)
	if err != nil {
		return nil, err
	}
	eachEntry(l.root, jobKeys, (&c).value)
	units, err := l.units()
	if err != nil {
		return nil, err
	}
	c.rewrite(units, c.to.String())
	out := l.changed(c.changes)
	return out, l.holds(out)
}

// rewrite puts another text in the place of a scalar.
func (c *conversion) rewrite(n *node, text string) {
	n.text = text
	c.changes = append(c.changes, change{n.first, oneScalar(text)})
}

// value converts the lengths of a value.
func (c *conversion) value(n *node, k *key) {
	switch k.form {
	case formSize, formEdges:
		// One unit may hold for all numbers.
		if own := slices.ContainsFunc(n.items, func(n *node) bool { return carriesUnit(n.text) }); own {
			return
		}
	case formLength, formReadings, formLengths, formCells:
	default:
		return
	}
	if n.kind == scalar && k.form != formCells { // there it is a count
		c.scalar(n, k)
	}
	for _, item := range n.items {
		if item.kind == scalar {
			c.scalar(item, k)
		}
	}
}

// scalar converts the bare numbers of a text: one, or those of a size. A word of the key is none.
func (c *conversion) scalar(n *node, k *key) {
	numbers := []string{n.text}
	signs := [][]string{}
	if k.form == formSize {
		numbers, signs = timesSign.Split(n.text, -1), timesSign.FindAllStringSubmatch(n.text, -1)
	}
	if slices.ContainsFunc(numbers, carriesUnit) {
		return
	}
	text := ""
	for i, number := range numbers {
		trimmed := strings.TrimSpace(number)
		other, ok := c.length(trimmed)
		if !ok {
			return
		}
		text += strings.Replace(number, trimmed, other, 1)
		if i < len(signs) {
			text += signs[i][0]
		}
	}
	c.rewrite(n, text)
}

var decimals = regexp.MustCompile(`^-?\d*\.?(\d*)$`)

// length is the number of a length in the other unit.
func (c *conversion) length(text string) (string, bool) {
	l, err := geom.ParseLength(text, c.from)
	if err != nil {
		return "", false
	}
	shown := 0 // decimals; a fraction has none
	split := decimals.FindStringSubmatch(text)
	if split != nil {
		shown = len(split[1])
	}
	exact := new(big.Rat).SetFrac64(int64(l), int64(geom.LengthOf(c.to.MM())))
	if c.to == geom.Inch {
		if fraction := l.Number(geom.Inch); !strings.Contains(fraction, ".") {
			if same, err := geom.ParseLength(fraction, geom.Inch); err == nil && same == l {
				return fraction, true
			}
		}
		return trimmed(exact, min(max(inches, shown+2)+c.more, 8)), true
	}
	const nanometers = 6 // decimals of a millimeter
	if split == nil || c.more > 0 {
		return trimmed(exact, nanometers), true
	}
	was := inInches(l, max(inches, shown))
	for places := 0; places < nanometers; places++ {
		number := trimmed(exact, places)
		mm, err := geom.ParseLength(number, geom.Millimeter)
		if err == nil && inInches(mm, max(inches, shown)) == was {
			return number, true
		}
	}
	return trimmed(exact, nanometers), true
}

// inches is how many decimals of an inch say as much as a hundredth of a millimeter.
const inches = 4

// inInches is a length in inches with so many decimals.
func inInches(l geom.Length, places int) string {
	return new(big.Rat).SetFrac64(int64(l), int64(geom.LengthOf(geom.InchMM))).FloatString(places)
}

// trimmed is a number with so many decimals at most.
func trimmed(x *big.Rat, places int) string {
	number := x.FloatString(places)
	if strings.Contains(number, ".") {
		number = strings.TrimRight(strings.TrimRight(number, "0"), ".")
	}
	return number
}
