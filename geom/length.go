package geom

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strings"
)

// Length is an exact number of nanometers. 1/64 in is 396,875 of them and
// 0.01 mm 10,000, so whatever a shop writes on either grid is held without
// rounding. Calculations are made in float64 millimeters ([Length.MM]).
type Length int64

// Lengths that the two scales are built from, in nanometers.
const (
	micrometer      Length = 1_000
	millimeter      Length = 1_000_000
	inch            Length = 25_400_000
	sixtyFourth     Length = inch / 64
	thousandth      Length = inch / 1000
	hundredthMM     Length = millimeter / 100
	fractionDenom          = 64
	maxLengthMeters        = 100 // more than any building that a cabinet stands in
)

// MaxLength is the largest magnitude that [ParseLength] takes.
const MaxLength = maxLengthMeters * 1000 * millimeter

// maxLengthText bounds the text of one length, so that a hostile file cannot
// make the exact arithmetic below work on a million digits.
const maxLengthText = 64

// Errors that [ParseLength] wraps. The text says what a person can write instead.
var (
	ErrLengthSyntax = errors.New("not a length")
	ErrLengthUnit   = errors.New("not a unit of length")
	ErrLengthRange  = fmt.Errorf("beyond %d m", maxLengthMeters)
)

// LengthOf gives the nearest Length to a number of millimeters. NaN and numbers
// beyond [MaxLength] give the nearest bound, NaN zero.
func LengthOf(mm float64) Length {
	switch nm := math.Round(mm * float64(millimeter)); {
	case nm >= float64(MaxLength):
		return MaxLength
	case nm <= -float64(MaxLength):
		return -MaxLength
	case math.IsNaN(nm):
		return 0
	default:
		return Length(nm)
	}
}

// MM is the length in millimeters.
func (l Length) MM() float64 { return float64(l) / float64(millimeter) }

var (
	// number: 12, 12.21, .5, 1/2, 17 5/8, 17-5/8. The three groups are the
	// decimal, or the whole number of a mixed one and its fraction.
	numberRE = regexp.MustCompile(`^(?:(\d+\.?\d*|\.\d+)|(?:(\d+)(?:\s+|\s*-\s*))?(\d+\s*/\s*\d+))$`)
	// splitRE parts a number from the unit that follows it.
	splitRE = regexp.MustCompile(`^([-0-9./\s]*?)\s*([^-0-9./\s].*)?$`)
	commaRE = regexp.MustCompile(`\d,\d`)
)

// typography turns the signs that keyboards and word processors make into the
// plain ones that the grammar knows.
var typography = strings.NewReplacer(
	"″", `"`, "”", `"`, "“", `"`, "''", `"`, "′", "'", "’", "'", "‘", "'", "⁄", "/", "−", "-", "–", "-", "\u00a0", " ",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// ParseLength reads a length as a shop writes it: 12.21, 12 mm, 1.2 m, 1/2 in,
// 17 5/8", 17-5/8 in, 1' 5 5/8". A number without a unit is in the given one.
// A leading minus sign makes the whole length negative. What is finer than a
// nanometer is rounded to the nearest, half away from zero.
//
// Errors wrap [ErrLengthSyntax], [ErrLengthUnit] or [ErrLengthRange].
func ParseLength(s string, bare Unit) (Length, error) {
	text := strings.TrimSpace(s)
	if len(text) > maxLengthText {
		return 0, fmt.Errorf("%w: more than %d characters", ErrLengthSyntax, maxLengthText)
	}
	if commaRE.MatchString(text) {
		return 0, fmt.Errorf("%w: %q has a comma; write the decimal point as 12.21 and no thousands separator",
			ErrLengthSyntax, text)
	}
	text = strings.TrimSpace(typography.Replace(text))
	negative := strings.HasPrefix(text, "-")
	if negative {
		text = strings.TrimSpace(text[1:])
	}
	nm, err := parseUnsigned(text, bare)
	if err != nil {
		return 0, err
	}
	if nm.Cmp(new(big.Rat).SetInt64(int64(MaxLength))) > 0 {
		return 0, fmt.Errorf("%w: %q", ErrLengthRange, s)
	}
	// Half away from zero: add one half, then cut.
	nm.Add(nm, big.NewRat(1, 2))
	l := Length(new(big.Int).Quo(nm.Num(), nm.Denom()).Int64())
	if negative {
		l = -l
	}
	return l, nil
}

// parseUnsigned reads feet and inches, or one number with or without a unit.
func parseUnsigned(text string, bare Unit) (*big.Rat, error) {
	if feet, rest, found := strings.Cut(text, "'"); found {
		whole, err := parseNumber(feet)
		if err != nil {
			return nil, err
		}
		total := whole.Mul(whole, ratOf(12*inch))
		if rest = strings.TrimSpace(rest); rest == "" {
			return total, nil
		}
		rest = strings.TrimSpace(strings.TrimPrefix(rest, "-"))
		if strings.Contains(rest, "'") {
			return nil, syntaxError(text)
		}
		if !strings.HasSuffix(rest, `"`) && !strings.HasSuffix(rest, "in") {
			return nil, fmt.Errorf("%w: %q: %w", ErrLengthSyntax, text,
				whyError(`write inches after the feet, as in 1' 5 5/8"`))
		}
		inches, err := parseUnsigned(rest, Inch)
		if err != nil {
			return nil, err
		}
		return total.Add(total, inches), nil
	}
	m := splitRE.FindStringSubmatch(text)
	if m == nil || m[1] == "" {
		return nil, syntaxError(text)
	}
	scale, err := unitScale(m[2], bare)
	if err != nil {
		return nil, err
	}
	value, err := parseNumber(m[1])
	if err != nil {
		return nil, err
	}
	return value.Mul(value, ratOf(scale)), nil
}

func unitScale(name string, bare Unit) (Length, error) {
	switch strings.ToLower(strings.TrimSuffix(strings.TrimSpace(name), ".")) {
	case "":
		if bare == Inch {
			return inch, nil
		}
		return millimeter, nil
	case "mm":
		return millimeter, nil
	case "cm":
		return 10 * millimeter, nil
	case "m":
		return 1000 * millimeter, nil
	case "um", "µm", "μm":
		return micrometer, nil
	case "in", `"`, "inch", "inches":
		return inch, nil
	case "ft", "foot", "feet":
		return 12 * inch, nil
	}
	return 0, fmt.Errorf("%w: %q; write mm, cm, m, in or ft", ErrLengthUnit, name)
}

func parseNumber(s string) (*big.Rat, error) {
	s = strings.TrimSpace(s)
	m := numberRE.FindStringSubmatch(s)
	if m == nil {
		return nil, syntaxError(s)
	}
	if m[1] != "" {
		r, ok := new(big.Rat).SetString(m[1])
		if !ok {
			return nil, syntaxError(s)
		}
		return r, nil
	}
	above, below, _ := strings.Cut(m[3], "/")
	num, den := decimalInt(above), decimalInt(below)
	if den.Sign() == 0 {
		return nil, fmt.Errorf("%w: %q: %w", ErrLengthSyntax, s, whyError("a fraction of 0 parts is no length"))
	}
	r := new(big.Rat).SetFrac(num, den)
	if m[2] != "" {
		if num.Cmp(den) >= 0 {
			return nil, fmt.Errorf("%w: %q: %w", ErrLengthSyntax, s, improper(decimalInt(m[2]), num, den))
		}
		r.Add(r, new(big.Rat).SetInt(decimalInt(m[2])))
	}
	return r, nil
}

// decimalInt reads digits in base 10, leading zeros and all.
func decimalInt(digits string) *big.Int {
	n, _ := new(big.Int).SetString(strings.TrimSpace(digits), 10)
	return n
}

// Why says what is wrong with a text that is nearly a length; empty where it is like none.
func Why(err error) string {
	var w whyError
	if errors.As(err, &w) {
		return string(w)
	}
	return ""
}

// whyError is a fault that a person who knows it can mend.
type whyError string

func (w whyError) Error() string { return string(w) }

// improper says how to write a whole number with a fraction that is not less than 1.
func improper(whole, num, den *big.Int) whyError {
	over, rest := new(big.Int).QuoRem(num, den, new(big.Int))
	proper := new(big.Int).Add(whole, over).String()
	if rest.Sign() != 0 {
		proper += " " + rest.String() + "/" + den.String()
	}
	return whyError(fmt.Sprintf("%s/%s is not less than 1; write %s", num, den, proper))
}

func syntaxError(s string) error {
	return fmt.Errorf(`%w: %q; write it like 12.21, 12 mm, 1/2 in or 17 5/8"`, ErrLengthSyntax, s)
}

func ratOf(l Length) *big.Rat { return new(big.Rat).SetInt64(int64(l)) }
