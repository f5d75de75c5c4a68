package job

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawerwright/geom"
)

// Sides are the numbers of a size as a job file has it at a path, as width x height x depth,
// each with its unit where it has one; nil where no such size stands there.
func Sides(o Outline, path ...string) []string {
	k, _ := keyAt(path)
	n := o.At(path...)
	if k == nil || n == nil || k.form != formSize {
		return nil
	}
	sides, err := SplitSize(strings.Join(numbersOf(n), " x "), len(k.sides))
	if err != nil {
		return nil
	}
	return sides
}

// numbersOf are the numbers of a size as they are written; in a list, too, a unit at the last is
// that of all.
func numbersOf(n *Node) (list []string) {
	if len(n.Items) == 0 {
		return timesSign.Split(n.Text, -1)
	}
	for _, item := range n.Items {
		list = append(list, item.Text)
	}
	return list
}

// otherSides are the numbers of a size of which one is replaced. Where that is none, as a slip
// is, nothing of it is kept: what follows it is no unit for the others.
func otherSides(o Outline, side int, path ...string) []string {
	n := o.At(path...)
	if n == nil {
		return nil
	}
	numbers := numbersOf(n)
	if side < 0 || side >= len(numbers) || isLength(numbers[side]) {
		return Sides(o, path...)
	}
	k, _ := keyAt(path)
	beside := max(side-1, min(1-side, len(numbers)-1)) // a unit at the last alone is not that of each
	numbers[side] = "1 " + lastUnit.FindString(strings.TrimSpace(numbers[beside]))
	sides, err := SplitSize(strings.Join(numbers, " x "), len(k.sides))
	if err != nil {
		return nil
	}
	return sides
}

func isLength(text string) bool {
	_, err := geom.ParseLength(text, geom.Millimeter)
	return err == nil
}

// sideAt takes the path to one number of a size apart; nil where it is none.
func sideAt(path []string) (size []string, side int) {
	if len(path) == 0 {
		return nil, 0
	}
	size = path[:len(path)-1]
	side, err := strconv.Atoi(path[len(path)-1])
	if k, _ := keyAt(size); err != nil || k == nil || k.form != formSize {
		return nil, 0
	}
	return size, side
}

// enterSide writes one number of a size into the text of a job file, as a person typed it, and
// leaves the others. What is typed without a unit has that of the number before; where it
// brings the first unit into a size without, the others get the unit of the file.
func enterSide(file []byte, typed string, side int, path ...string) ([]byte, error) {
	o := Outlined(file)
	sides := otherSides(o, side, path...)
	if side < 0 || side >= len(sides) {
		return nil, fmt.Errorf("%s is no size that can be changed here", quote(strings.Join(path, " > ")))
	}
	if typed == "" {
		return nil, errors.New("a size needs a number")
	}
	if timesSign.MatchString(typed) || strings.Contains(typed, ",") {
		return nil, errors.New("one number is changed here: write it without x")
	}
	return Enter(file, sizeText(o, sides, side, typed, o.At(path...)), path...)
}

// sizeText is a size with another number for one side, written as it was written before.
func sizeText(o Outline, sides []string, side int, typed string, before *Node) string {
	sides = slices.Clone(sides)
	unit := lastUnit.FindString(sides[side])
	switch u := o.At("units"); {
	case unit != "" && !carriesUnit(typed):
		typed += space(unit) + unit
	case unit == "" && carriesUnit(typed) && isLength(typed) && u != nil:
		for i := range sides {
			sides[i] += " " + u.Text
		}
	}
	sides[side] = typed
	if len(before.Items) > 0 {
		return "[" + strings.Join(sides, ", ") + "]"
	}
	if !carriesUnit(firstSide(before.Text)) {
		sides = unitOnce(sides)
	}
	return strings.Join(sides, " x ")
}

// unitOnce leaves the unit of all sides at the last alone, if they share one.
func unitOnce(sides []string) []string {
	last := len(sides) - 1
	shared := lastUnit.FindString(sides[last])
	if shared == "" || slices.ContainsFunc(sides, func(s string) bool { return lastUnit.FindString(s) != shared }) {
		return sides
	}
	for i := range sides[:last] {
		sides[i] = strings.TrimSpace(strings.TrimSuffix(sides[i], shared))
	}
	return sides
}

// firstSide is the first number of a size.
func firstSide(text string) string { return strings.TrimSpace(timesSign.Split(text, 2)[0]) }

// space stands before a unit of letters, and not before a sign.
func space(unit string) string {
	if strings.ContainsAny(unit, unitSigns) {
		return ""
	}
	return " "
}
