package job

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Numbers are read from their text in the file, as a person would: 010 is ten,
// quotes change nothing, and 0x2, 1_000, 1e3, yes and .nan are no numbers.

// scalar reads the text of a node into v.
func (r *reader) scalar(v *value, n *node, k *key) {
	switch k.form {
	case formTitle:
		if fault := titleFault(n.text); fault != "" {
			r.fail(CodeBadName, n.at,
				fmt.Sprintf("write one line of up to %d printable characters", maxTitle), "the title %s", fault)
		} else {
			r.legible(n.text, n.at)
		}
		v.text = n.text
	case formName, formStock, formRef:
		v.text = n.text // checked against the other names
		if n.text == "" {
			r.fail(CodeNoValue, n.at, "write a name", "%s is empty", k.name)
		}
	case formPath:
		v.text = r.path(n, k)
	case formWord:
		v.text = r.word(n, k)
	case formPattern:
		v.text = r.pattern(n, k)
	case formLength:
		if l, ok := r.length(n.text, n.at, k); ok {
			v.lengths = []geom.Length{l}
		}
	case formCount:
		v.number = r.number(n, k, countText, "write a whole number, as in 6")
	case formMeasure:
		v.number = r.measured(n, k)
	case formPrice:
		v.number = r.number(n, k, priceText, "write a number without a currency, as in 58 or 58.50")
	}
}

func (r *reader) word(n *node, k *key) string {
	for _, w := range k.words {
		if w == n.text {
			return w
		}
	}
	other := didYouMean(n.text, k.words)
	if w := k.trade[strings.ToLower(n.text)]; w != "" {
		other = suggestion{"write `" + w + "`, the word for it here", []string{w}}
	}
	r.suggest(CodeUnknownWord, n.at, other, "%s cannot be %s", k.name, quote(n.text))
	return ""
}

// words reads a list of words, each once.
func (r *reader) words(n *node, k *key) []string {
	if !r.expect(n, list, k.name) {
		return nil
	}
	var all []string
	for _, item := range n.items[:min(len(n.items), len(k.words)+1)] {
		if !r.expect(item, scalar, k.name) {
			continue
		}
		w := r.word(item, k)
		if w != "" && slices.Contains(all, w) {
			r.fail(CodeDuplicateKey, item.at, "delete one of the two", "%s lists %s twice", k.name, w)
		}
		all = append(all, w)
	}
	return all
}

// pattern reads text in which the key's words stand in braces; the rest is
// letters, digits and the signs that file and layer names can have.
func (r *reader) pattern(n *node, k *key) string {
	rest := n.text
	for _, w := range k.words {
		rest = strings.ReplaceAll(rest, w, "")
	}
	hint := "put it in quotes; its words are " + strings.Join(k.words, " ") + ", the rest letters, digits, - and _"
	switch {
	case n.text == "" || len(n.text) > maxPattern:
		r.fail(CodeBadName, n.at, hint, "%s needs 1 to %d characters", k.name, maxPattern)
	case strings.ContainsFunc(rest, func(c rune) bool { return !plainSign(c) }):
		r.fail(CodeBadName, n.at, hint, "%s cannot be %s", k.name, quote(n.text))
	case strings.Contains(n.text, "}{"):
		r.fail(CodeBadName, n.at, "put - or _ between them", "%s has two words that run into each other", k.name)
	case !strings.Contains(n.text, k.needs):
		r.fail(CodeBadName, n.at, "put "+k.needs+" into it",
			"%s without %s gives different things one name", k.name, k.needs)
	default:
		return n.text
	}
	return ""
}

func plainSign(c rune) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-' || c == '_'
}

var (
	countText = regexp.MustCompile(`^\d{1,9}$`)
	longCount = regexp.MustCompile(`^-?\d{1,100}$`) // out of any range, or below it
	priceText = regexp.MustCompile(`^\d{1,9}(\.\d{1,9})?$`)
)

// number reads a number of the given form within the range of its key.
func (r *reader) number(n *node, k *key, form *regexp.Regexp, hint string) float64 {
	if !form.MatchString(n.text) && !longCount.MatchString(n.text) {
		r.fail(CodeNotNumber, n.at, hint, "%s cannot be %s", k.name, quote(n.text))
		return 0
	}
	x, err := strconv.ParseFloat(n.text, 64)
	if err != nil || x < k.min || x > k.max {
		least, most := fmt.Sprintf("%.0f", k.min), fmt.Sprintf("%.0f", k.max)
		r.suggest(CodeOutOfRange, n.at, between(least, most), "%s cannot be %s", k.name, quote(n.text))
		return 0
	}
	return x
}

var exponent = regexp.MustCompile(`^[-+]?[0-9.]+[eE][-+]?[0-9]+`)

// length reads one length within the range of its key. A range in millimeters
// means nothing for a bare number while the units of the file are not known.
func (r *reader) length(text string, at Position, k *key) (geom.Length, bool) {
	l, err := geom.ParseLength(text, r.units)
	const examples = `write it like 12.21, 12 mm, 1/2 in or 17 5/8"`
	switch {
	case exponent.MatchString(text):
		r.fail(CodeNotLength, at, "write the number out, without an exponent", "%s is not a length: %s",
			k.name, quote(text))
		return 0, false
	case errors.Is(err, geom.ErrLengthUnit) && strings.ContainsAny(text, "0123456789"):
		r.fail(CodeUnknownUnit, at, "write mm, cm, m, in or ft after the number, or nothing for the units of the file",
			"%s has an unknown unit: %s", k.name, quote(text))
		return 0, false
	case errors.Is(err, geom.ErrLengthRange):
		r.suggest(CodeOutOfRange, at, between(r.ends(k)), "%s is far too large: %s", k.name, quote(text))
		return 0, false
	case err != nil:
		hint := examples
		if why := geom.Why(err); why != "" {
			hint = why
		}
		if strings.Contains(text, ",") {
			hint = "write the decimal point as in 12.21"
		}
		r.fail(CodeNotLength, at, hint, "%s is not a length: %s", k.name, quote(text))
		return 0, false
	case !r.unitsKnown && !carriesUnit(text):
		return l, true
	case !k.holds(l):
		r.suggest(CodeOutOfRange, at, r.rangeHint(text, k), "%s is %s; it can be %s", k.name, r.measure(text), r.span(k))
		return 0, false
	}
	return l, true
}

func (k *key) holds(l geom.Length) bool {
	return l >= geom.LengthOf(k.min) && l <= geom.LengthOf(k.max)
}

// span says the range of a key in the units of the file; what it prints is in it.
func (r *reader) span(k *key) string {
	least, most := r.ends(k)
	return least + " to " + most
}

func (r *reader) ends(k *key) (least, most string) { return k.endsIn(r.units) }

// endsIn are the ends of the range of a key's lengths, as a file in a unit can have them.
func (k *key) endsIn(u geom.Unit) (least, most string) {
	return geom.LengthOf(k.min).RoundUp(u).Text(u), geom.LengthOf(k.max).RoundDown(u).Text(u)
}

// measure shows a length as it was written, with the unit that it was read in.
func (r *reader) measure(text string) string {
	if !carriesUnit(text) {
		text = strings.TrimSpace(text) + " " + r.units.String()
	}
	return printable(text)
}

// rangeHint asks whether a number out of range was meant in another unit, or with its decimal point elsewhere, when it
// would be in range there, and near the other readings of its list.
func (r *reader) rangeHint(text string, k *key) suggestion {
	if u, one := r.meantIn(k, text); one {
		meant := unitless(text) + " " + u.String()
		if l, err := geom.ParseLength(meant, u); err == nil && r.nearOthers(l) {
			return suggestion{"did you mean " + meant + "?", []string{meant}}
		}
	}
	x, err := strconv.ParseFloat(unitless(text), 64)
	for _, tens := range []float64{10, 100, 1000, 0.1, 0.01} {
		if err != nil || len(r.beside) == 0 {
			break
		}
		meant := strings.Replace(text, unitless(text), fmt.Sprintf("%.9g", x/tens), 1)
		if l, err := geom.ParseLength(meant, r.units); err == nil && r.nearOthers(l) {
			return suggestion{"did you mean " + meant + "?", []string{meant}}
		}
	}
	return suggestion{hint: "measure again, or look for a slip of the decimal point"}
}

// inRange are the lengths of a list that are in the range of its key.
func (r *reader) inRange(parts []part, k *key) (list []geom.Length) {
	for _, p := range parts {
		if l, err := geom.ParseLength(p.text, r.units); err == nil && k.holds(l) {
			list = append(list, l)
		}
	}
	return list
}

// nearOthers reports whether a length is like all others of the list that is read.
func (r *reader) nearOthers(l geom.Length) bool {
	return !slices.ContainsFunc(r.beside, func(o geom.Length) bool { return math.Abs((l - o).MM()) > maxSpread*o.MM() })
}

// meantIn is the unit in which numbers that are out of range would all be in range.
func (r *reader) meantIn(k *key, texts ...string) (geom.Unit, bool) {
	for _, u := range []geom.Unit{geom.Millimeter, geom.Inch} {
		if !slices.ContainsFunc(texts, func(text string) bool {
			l, err := geom.ParseLength(unitless(text), u)
			return err != nil || !k.holds(l)
		}) {
			return u, true
		}
	}
	return 0, false
}

// unitless is a length without the unit behind it.
func unitless(text string) string {
	return strings.TrimSpace(lastUnit.ReplaceAllString(strings.TrimSpace(text), ""))
}

// wrongUnit reports numbers that belong together, of which more than one is out of range and all
// are in range in another unit, as the one mistake that they are.
func (r *reader) wrongUnit(n *node, parts []part, k *key, meant func(numbers []string, u geom.Unit) string) bool {
	var texts, numbers, out []string
	for _, p := range parts {
		l, err := geom.ParseLength(p.text, r.units)
		if err != nil || !r.unitsKnown && !carriesUnit(p.text) {
			return false
		}
		if !k.holds(l) {
			out = append(out, r.measure(p.text))
		}
		texts, numbers = append(texts, p.text), append(numbers, unitless(p.text))
	}
	u, one := r.meantIn(k, texts...)
	if len(out) < 2 || !one {
		return false
	}
	text := meant(numbers, u)
	way := suggestion{hint: "did you mean " + text + "?"}
	if n.kind == scalar { // the page writes a scalar for another
		way.instead = []string{text}
	}
	r.suggest(CodeOutOfRange, n.at, way, "%s has %s; each can be %s", k.name, words.Some(out), r.span(k))
	return true
}

// carriesUnit reports whether a length says its own unit.
func carriesUnit(text string) bool {
	return strings.ContainsFunc(text, func(c rune) bool {
		return unicode.IsLetter(c) || strings.ContainsRune(unitSigns, c)
	})
}

// unitSigns are the signs for feet and inches that geom.ParseLength knows.
const unitSigns = `'"′″‘’“”`
