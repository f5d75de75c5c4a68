package job

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// What stands between readings: a comma, a semicolon or "and".
var separators = regexp.MustCompile(`(?i)\s*(?:[,;]\s*)?\band\b\s*|\s*[,;]\s*`)

// SplitReadings parts readings of a caliper as people type them: between commas, semicolons, "and",
// or by spaces alone. A whole number and the fraction behind it stay one: 15 1/8. Decimal
// commas are taken where they can be nothing else: 12,21; 12,16.
func SplitReadings(text string) (list []string) {
	text = pointed(text)
	for _, part := range separators.Split(strings.TrimRight(text, ",; \t\r\n"), -1) {
		one := ""
		for _, t := range strings.Fields(slashes.ReplaceAllString(part, "/")) {
			switch {
			case one == "":
				one = t
			case beginsReading(one, t):
				list = append(list, one)
				one = t
			default:
				one += " " + t
			}
		}
		list = append(list, one)
	}
	return list
}

// A number with a decimal comma and what may stand beside it, and the comma.
var (
	commaNumber  = regexp.MustCompile(`^\d+,\d+[\pL"]*$`)
	decimalComma = regexp.MustCompile(`(\d),(\d)`)
)

// pointed writes decimal points for decimal commas: where all readings have one and something else
// parts them, where semicolons do, and behind a 0 that stands alone. In 12,13 a comma parts readings.
func pointed(text string) string {
	numbers, others := 0, 0
	for _, word := range strings.FieldsFunc(text, func(c rune) bool { return c == ';' || unicode.IsSpace(c) }) {
		switch word = strings.TrimRight(word, ","); {
		case commaNumber.MatchString(word):
			numbers++
		case strings.ContainsAny(word, "0123456789"):
			others++
		}
	}
	parted := strings.Contains(text, ";") || numbers > 1 || numbers == 1 && strings.HasPrefix(text, "0,")
	if numbers == 0 || !parted || others > 0 && (!strings.Contains(text, ";") || strings.Contains(text, ".")) {
		return text
	}
	return decimalComma.ReplaceAllString(text, "$1.$2")
}

var (
	slashes     = regexp.MustCompile(`\s*/\s*`)
	wholeNumber = regexp.MustCompile(`^\d+$`)
	fractional  = regexp.MustCompile(`^(?:\d+/|[½¼¾⅛⅜⅝⅞])`)
	numeral     = regexp.MustCompile(`^(?:\.?\d|[½¼¾⅛⅜⅝⅞])`)
)

// beginsReading reports whether the next word behind a reading is another one: a number, unless the
// reading is a whole number without its fraction yet, or feet.
func beginsReading(reading, next string) bool {
	feet := strings.HasSuffix(reading, "'") && !strings.HasSuffix(reading, "''") || strings.HasSuffix(reading, "ft")
	return numeral.MatchString(next) && !feet && !strings.HasSuffix(reading, "-") &&
		!(wholeNumber.MatchString(reading[strings.LastIndexByte(reading, ' ')+1:]) && fractional.MatchString(next))
}

// ReadingsOf says of each stock with several readings what they come to, in the unit of the file.
// Nothing is said of a stock with a reading that is no length.
func ReadingsOf(root *Node) map[string]string {
	unit, err := geom.ParseUnit(root.Of("units").textOf())
	if err != nil {
		return nil
	}
	said := make(map[string]string)
	for _, e := range root.Of("stock").entriesOf() {
		list := e.Value.Of("thickness")
		if list == nil || len(list.Items) < 2 {
			continue
		}
		var spread geom.Interval
		var sum float64
		for i, item := range list.Items {
			l, err := geom.ParseLength(item.Text, unit)
			if err != nil {
				sum = -1
				break
			}
			if i == 0 {
				spread = geom.Interval{Min: l.MM(), Max: l.MM()}
			}
			spread.Min, spread.Max, sum = min(spread.Min, l.MM()), max(spread.Max, l.MM()), sum+l.MM()
		}
		if sum > 0 {
			n := len(list.Items)
			said[e.Key] = fmt.Sprintf("%s: mean %s %s, spread %s %s", words.Count(n, "reading", "readings"),
				geom.LengthOf(sum/float64(n)).Fixed(unit), unit, geom.LengthOf(spread.Max-spread.Min).Fixed(unit), unit)
		}
	}
	return said
}
