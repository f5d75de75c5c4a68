package readback

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
)

// shopReader reads the page for the shop: the texts of elements by their class, in the order in
// which they stand.
type shopReader struct {
	*reading
	sheet            *setupReader
	said             map[string][]string // warnings and notes
	stock, thickness string
	inStock          map[string]int    // pieces
	last             map[string]string // the text of each class that was read last
	rows             [][]string        // of a table of limits
	later            int               // fence distances after the first of a setting
}

// shopPage reads shop.html, of which the part that says something is XML.
func shopPage(r *reading, text string) {
	const begin, end = "<main>", "</main>"
	from, to := strings.Index(text, begin), strings.LastIndex(text, end)
	if from < 0 || to < from || !strings.HasSuffix(strings.TrimSpace(text), "</html>") {
		r.fail("the page says nothing, or is cut short")
	}
	s := &shopReader{reading: r, sheet: &setupReader{reading: r}, said: map[string][]string{}, inStock: map[string]int{},
		last: map[string]string{}}
	first := 1 + strings.Count(text[:from], "\n")
	d := xml.NewDecoder(strings.NewReader(text[from : to+len(end)]))
	var open []*element
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			r.fail("not well-formed: %v", err)
		}
		switch t := token.(type) {
		case xml.StartElement:
			line, _ := d.InputPos()
			open = append(open, &element{class: classOf(t), line: first + line - 1})
		case xml.CharData:
			for _, e := range open {
				e.text.Write(t)
			}
		case xml.EndElement:
			e := open[len(open)-1]
			open = open[:len(open)-1]
			if e.class != "" {
				r.at = e.line
				s.element(e.class, strings.TrimSpace(e.text.String()))
			}
		}
	}
	s.sheet.end()
	r.remarks(s.said)
	for stock, n := range s.inStock {
		r.count("stock", stock, "pieces", n)
	}
}

// element is one that is being read.
type element struct {
	class string
	line  int
	text  strings.Builder
}

func classOf(e xml.StartElement) string {
	i := slices.IndexFunc(e.Attr, func(a xml.Attr) bool { return a.Name.Local == "class" })
	if i < 0 {
		return ""
	}
	return e.Attr[i].Value
}

var (
	shopTotal  = regexp.MustCompile(`^(\d+) box(?:es)? of (\d+) kinds?$`)
	shopFigure = regexp.MustCompile(`^(\S+) (?:mm|in)(?: \([^)]+\))?$`)
	// figureOf is the measure that the figure below a name is.
	figureOf = map[string]string{"fence": "fence", "gauge or fence": "fence", "sacrificial fence": "fence", "out of sacrificial fence": "out of fence", "height": "height",
		thenFence: thenFence, "depth or shoulder": "height", "cutter": "cutter", "bit": "cutter", "plow iron": "cutter"}
)

// element takes the text of an element.
func (s *shopReader) element(class, text string) {
	s.last[class] = text
	switch class {
	case "said":
		s.words("total", "job", "answer", text)
	case "total":
		m := s.match(shopTotal, text)
		s.words("total", "job", "boxes", m[1])
		s.words("total", "job", "kinds", m[2])
	case "warning":
		s.said["warning"] = append(s.said["warning"], text)
	case "remark":
		s.said["note"] = append(s.said["note"], text)
	case "verdict":
		s.judged(strings.TrimSuffix(text, "."))
	case "stock":
		m := s.match(paperStock, text)
		s.stock, s.thickness = m[1], m[2]
	case "parts":
		s.row(text)
	case "outside":
		s.words("box", s.last["name"], "count", s.last["boxes"])
		s.paperBox(s.last["name"], "outside", text)
	case "bought":
		name := s.last["kind"] + " " + text
		s.words("buy", name, "quantity", s.last["quantity"])
		s.words("buy", name, "unit", s.last["of-what"])
	default:
		s.setup(class, text)
	}
}

// row ends equal parts of a stock.
func (s *shopReader) row(parts string) {
	first, _, _ := strings.Cut(parts, ", ")
	s.words("group", first, "number", s.last["no"])
	s.words("group", first, "pieces", s.last["pieces"])
	s.words("group", first, "parts", parts)
	s.words("part", first, "stock", s.stock)
	s.printed("part", first, "thickness", s.thickness)
	s.printed("part", first, "length", s.last["length"])
	s.printed("part", first, "width", s.last["width"])
	s.inStock[s.stock] += whole(s.reading, s.last["pieces"])
}

// setup takes what belongs to the setups of a machine.
func (s *shopReader) setup(class, text string) {
	switch class {
	case "machine":
		m := s.match(paperMachine, text)
		s.sheet.machine(m[1], someOf(strings.Split(m[2], ", ")))
	case "refused":
		s.sheet.noSetup++
	case "one", "setting", "step", "passes", "who":
		if class == "setting" {
			s.later = 0
		}
		s.sheet.paragraph(text)
	case "figure":
		measure, known := figureOf[s.last["measure"]]
		if !known {
			s.fail("%s: no measure %q", s.sheet.setting, s.last["measure"])
		}
		if measure == thenFence {
			s.later++
			measure = fmt.Sprint(thenFence, " ", s.later)
		}
		if value := s.match(shopFigure, text)[1]; measure != "fence" || !zero(value) {
			s.printed(s.sheet.of, s.sheet.setting, measure, value)
		}
	case "file":
		s.sheet.files++
		s.words("drawing", text, "pieces", s.last["of"])
	case "right":
		s.rows = append(s.rows, []string{s.last["what"], s.last["is"], text})
	case "limits":
		s.sheet.checks(slices.Values(s.rows))
		s.rows = nil
	}
}

// match is a text by its pattern.
func (s *shopReader) match(pattern *regexp.Regexp, text string) []string {
	m := pattern.FindStringSubmatch(text)
	if m == nil {
		s.fail("cannot read %q", text)
	}
	return m
}
