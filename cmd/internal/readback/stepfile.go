package readback

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// Errors of a text that is no Part 21 file.
var (
	errStepText = errors.New("no ISO 10303-21 text")
	errStepRef  = errors.New("entity is not there, or of another kind")
)

// stepValue is a value of Part 21: a number, a text or a word, a reference, or a list, which
// may have the name of a type before it.
type stepValue struct {
	word string // also the name of a type
	text string
	num  float64
	ref  int
	list []stepValue
}

// stepEntities are those of a file, by their numbers.
type stepEntities map[int]stepValue

// stepScan goes over a text.
type stepScan struct {
	text string
	at   int
}

// stepEntitiesOf reads the data section of a file.
func stepEntitiesOf(text string) (stepEntities, error) {
	_, data, ok := strings.Cut(text, "\nDATA;\n")
	ends := strings.HasSuffix(text, "\nENDSEC;\nEND-ISO-10303-21;\n")
	if !strings.HasPrefix(text, "ISO-10303-21;\n") || !ok || !ends {
		return nil, errStepText
	}
	s, out := &stepScan{text: data}, stepEntities{}
	for s.next() == '#' {
		head := s.value()
		if _, twice := out[head.ref]; twice || !s.take('=') {
			return nil, fmt.Errorf("%w: entity #%d", errStepText, head.ref)
		}
		out[head.ref] = s.value()
		if !s.take(';') {
			return nil, fmt.Errorf("%w: entity #%d has no end", errStepText, head.ref)
		}
	}
	return out, nil
}

// next is the next sign, 0 at the end.
func (s *stepScan) next() byte {
	for s.at < len(s.text) && s.text[s.at] <= ' ' {
		s.at++
	}
	if s.at == len(s.text) {
		return 0
	}
	return s.text[s.at]
}

func (s *stepScan) take(c byte) bool {
	if s.next() != c {
		return false
	}
	s.at++
	return true
}

// run takes signs for as long as they are among some.
func (s *stepScan) run(of string) string {
	from := s.at
	for s.at < len(s.text) && strings.IndexByte(of, s.text[s.at]) >= 0 {
		s.at++
	}
	return s.text[from:s.at]
}

const (
	stepDigits  = "0123456789"
	stepLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz"
)

// value reads one. What it cannot read is left, so that its entity has no end.
func (s *stepScan) value() (v stepValue) {
	switch c := s.next(); {
	case c == '#':
		s.at++
		v.ref, _ = strconv.Atoi(s.run(stepDigits))
	case c == '\'':
		v.text = s.quoted()
	case c == '(':
		v.list = s.listed()
	case c == '.':
		s.at++
		v.word = s.run(stepLetters)
		s.take('.')
	case c == '$' || c == '*':
		s.at++
	case c != 0 && strings.IndexByte(stepLetters, c) >= 0:
		v.word = s.run(stepLetters + stepDigits)
		if s.next() == '(' {
			v.list = s.listed()
		}
	default:
		v.num, _ = strconv.ParseFloat(s.run(stepDigits+"+-.E"), 64)
	}
	return v
}

// listed reads values between parentheses: several with commas between, or the types of one
// entity without.
func (s *stepScan) listed() (list []stepValue) {
	s.take('(')
	for s.next() != ')' && s.next() != 0 {
		from := s.at
		list = append(list, s.value())
		s.take(',')
		if s.at == from {
			break
		}
	}
	s.take(')')
	return list
}

func (s *stepScan) quoted() string {
	var out strings.Builder
	for s.at++; s.at < len(s.text); s.at++ {
		if s.text[s.at] == '\'' {
			s.at++
			if s.at == len(s.text) || s.text[s.at] != '\'' {
				break
			}
		}
		out.WriteByte(s.text[s.at])
	}
	return out.String()
}

// get is what an entity of a kind is made of, at least so many values.
func (e stepEntities) get(ref int, kind string, least int) ([]stepValue, error) {
	v, known := e[ref]
	if !known || v.word != kind || len(v.list) < least {
		return nil, fmt.Errorf("%w: #%d, %s", errStepRef, ref, kind)
	}
	return v.list, nil
}
