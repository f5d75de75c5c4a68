package readback

import (
	"fmt"
	"iter"
	"regexp"
	"slices"
	"strings"
)

// setupSheet is what is read of setup --json.
type setupSheet struct {
	Verdicts []verdict
	Machines []struct {
		Machine  string
		Cutter   float64
		Drawers  []string
		OneSetup struct {
			Text string
		} `json:"one_setup"`
		Settings []struct {
			Cutter, Height, Fence float64
			Cuts                  []setupStep
			Checks                []setupCheck
		}
		Separate, Refused []setupStep
		Files             []struct {
			Part, File string
			Count      int
		}
		Checks []setupCheck
	}
}

type setupStep struct {
	PartsText string `json:"parts_text"`
	Passes    []float64
}

type setupCheck struct {
	What             string
	Target, Min, Max float64
}

func setupJSON(r *reading, text string) {
	var j setupSheet
	r.decode(text, &j)
	r.verdicts(j.Verdicts)
	for i, m := range j.Machines {
		of := fmt.Sprint("machine ", i+1)
		r.exact(of, "job", "cutter", m.Cutter)
		r.words(of, "job", "drawers", someOf(m.Drawers))
		r.words(of, "job", "one setting", m.OneSetup.Text)
		r.count(of, "job", "settings", len(m.Settings))
		r.count(of, "job", "no setup", len(m.Refused))
		r.count(of, "job", "files", len(m.Files))
		for _, f := range m.Files {
			r.count("drawing", f.File, "pieces", f.Count)
		}
		step := 0
		add := func(s setupStep) {
			step++
			name := fmt.Sprint("step ", step)
			r.words(of, name, "who", s.PartsText)
			if len(s.Passes) > 1 {
				r.count(of, name, "passes", len(s.Passes))
				for k, p := range s.Passes {
					r.exact(of, name, fmt.Sprint("pass ", k+1), p)
				}
			}
		}
		for k, s := range m.Settings {
			name := fmt.Sprint("setting ", k+1)
			r.exact(of, name, "height", s.Height)
			if s.Fence > 0 {
				r.exact(of, name, "fence", s.Fence)
			}
			if s.Cutter > 0 {
				r.exact(of, name, "cutter", s.Cutter)
			}
			for k, at := range laterFences(s.Cuts) {
				r.exact(of, name, fmt.Sprint(thenFence, " ", k+1), at)
			}
			r.checksOf(of, name, s.Checks)
			for _, c := range s.Cuts {
				add(c)
			}
		}
		r.checksOf(of, "drawings", m.Checks)
		for _, c := range m.Separate {
			add(c)
		}
		r.count(of, "job", "steps", step)
	}
}

// thenFence is the name of a fence distance after the first of a setting.
const thenFence = "then fence"

// laterFences are the distances at which the fence stands for the passes of a setting's cuts after the first; cuts with
// the same passes share them.
func laterFences(cuts []setupStep) (list []float64) {
	for i, c := range cuts {
		same := func(o setupStep) bool { return slices.Equal(o.Passes, c.Passes) }
		if len(c.Passes) > 1 && !slices.ContainsFunc(cuts[:i], same) {
			list = append(list, c.Passes[1:]...)
		}
	}
	return list
}

func (r *reading) checksOf(of, name string, list []setupCheck) {
	nth := make(map[string]int) // drawings of several drawers have one list
	for _, c := range list {
		nth[c.What]++
		what := fmt.Sprintf("%s: %s %d", name, c.What, nth[c.What])
		r.exact(of, what, "is", c.Target)
		r.exact(of, what, "least", c.Min)
		r.exact(of, what, "most", c.Max)
	}
}

var (
	setupMachine = regexp.MustCompile(`^([A-Z][A-Z ]+), (?:cutter|bits?|plow iron) (.+?) (?:mm|in)(?: \([^)]+\))?(?:(?:,| and) [^:]+?)?(?: wide)?: (.+)$`)
	settingLine  = regexp.MustCompile(`^(?i:setting) (\d+): (.+)$`)
	settingPart  = regexp.MustCompile(`(?:(?:cutter|bit|iron) (\S+) (?:mm|in)(?: \([^)]+\))? wide)|(?:(?:height|depth or shoulder) (\S+) (?:mm|in))|(?:(?:gauge or fence|fence) (\S+) (?:mm|in))`)
	settingThen  = regexp.MustCompile(`, then (\S+) (?:mm|in)`)
	settingEnds  = regexp.MustCompile(`(?:near side of the \S+|sacrificial fence|finger jig` +
		`|depth or shoulder \S+ (?:mm|in)(?: \([^)]+\))?)$`)
	stepLine   = regexp.MustCompile(`^(\d+)\. (.+)\.$`)
	passesLine = regexp.MustCompile(`^(\d+) passes, the fence at (.+) (?:mm|in)\.$`)
	whoLine    = regexp.MustCompile(`^(?:\d+ x [^ ,]+(?:, \d+ x [^ ,]+)*|all [a-z, -]+ \(\d+\))`)
	setupFile  = regexp.MustCompile(`^ +(\d+) x +\S+ +\S+ +.*?(\S+\.dxf)$`)
	oneSetting = "One setting for everything? "
)

// setupReader reads a sheet paragraph by paragraph, as it stands in text and on paper.
type setupReader struct {
	*reading
	machines, step    int
	of, setting       string
	settings, noSetup int
	files             int
	lastStep          bool // a step was read, who it is for is not
}

// machine begins the sheet of the next machine; cutter may be a size by its usual number.
func (s *setupReader) machine(cutter, drawers string) {
	s.end()
	s.machines++
	s.of, s.setting, s.step, s.settings, s.noSetup, s.files = fmt.Sprint("machine ", s.machines), "drawings", 0, 0, 0, 0
	s.printed(s.of, "job", "cutter", cutter)
	if drawers != "" {
		s.words(s.of, "job", "drawers", drawers)
	}
}

// end adds up what a machine's sheet had.
func (s *setupReader) end() {
	if s.of == "" {
		return
	}
	s.count(s.of, "job", "settings", s.settings)
	s.count(s.of, "job", "steps", s.step)
	s.count(s.of, "job", "no setup", s.noSetup)
	if s.files > 0 { // a packet whose parts are cut from sheets does not list them
		s.count(s.of, "job", "files", s.files)
	}
	s.of = ""
}

// paragraph reads one, with its mark before it.
func (s *setupReader) paragraph(text string) {
	if said, ok := strings.CutSuffix(text, "."); ok && judgedLine.MatchString(said) && s.machines == 0 {
		s.judged(said)
	}
	if s.of == "" {
		return
	}
	switch {
	case strings.HasPrefix(text, oneSetting):
		s.words(s.of, "job", "one setting", strings.TrimPrefix(text, oneSetting))
	case settingLine.MatchString(text):
		m := settingLine.FindStringSubmatch(text)
		s.settings++
		s.setting = "setting " + m[1]
		for _, p := range settingPart.FindAllStringSubmatch(m[2], -1) {
			for i, measure := range []string{"cutter", "height", "fence"} {
				if p[i+1] != "" && !(measure == "fence" && zero(p[i+1])) {
					s.printed(s.of, s.setting, measure, p[i+1])
				}
			}
		}
		for i, p := range settingThen.FindAllStringSubmatch(m[2], -1) {
			s.printed(s.of, s.setting, fmt.Sprint(thenFence, " ", i+1), p[1])
		}
	case stepLine.MatchString(text):
		m := stepLine.FindStringSubmatch(text)
		s.step++
		if m[1] != fmt.Sprint(s.step) {
			s.fail("%s: step %s where %d is due", s.of, m[1], s.step)
		}
		s.words(s.of, s.stepName(), "how", m[2])
		s.lastStep = true
	case passesLine.MatchString(text):
		m := passesLine.FindStringSubmatch(text)
		s.words(s.of, s.stepName(), "passes", m[1])
		for i, p := range strings.Split(m[2], ", ") {
			s.printed(s.of, s.stepName(), fmt.Sprint("pass ", i+1), p)
		}
	case s.lastStep && whoLine.MatchString(text):
		s.words(s.of, s.stepName(), "who", whoLine.FindString(text))
		s.lastStep = false
	}
}

func (s *setupReader) stepName() string { return fmt.Sprint("step ", s.step) }

// zero reports whether a printed length is none.
func zero(text string) bool { return strings.Trim(text, "0.") == "" }

// checks reads the caliper's limits: what, what it should be, and what is right.
func (s *setupReader) checks(rows iter.Seq[[]string]) {
	nth := make(map[string]int)
	for row := range rows {
		if len(row) < 3 {
			break // a sentence under the table
		}
		nth[row[0]]++
		name := fmt.Sprintf("%s: %s %d", s.setting, row[0], nth[row[0]])
		s.printed(s.of, name, "is", row[1])
		s.span(s.of, name, row[2], "least", "most")
	}
}

// goChecks reads the caliper's limits: what, what it should be, the least and the most that is right.
func (s *setupReader) goChecks(rows iter.Seq[[]string]) {
	nth := make(map[string]int)
	for row := range rows {
		nth[row[0]]++
		name := fmt.Sprintf("%s: %s %d", s.setting, row[0], nth[row[0]])
		for i, measure := range []string{"is", "least", "most"} {
			s.printed(s.of, name, measure, row[1+i])
		}
	}
}

// setupText reads what setup prints.
func setupText(r *reading, text string) {
	sheet := &setupReader{reading: r}
	s := r.scan(text)
	refused := false
	for s.more() {
		line := s.line()
		switch {
		case setupMachine.MatchString(line):
			m := setupMachine.FindStringSubmatch(line)
			sheet.machine(m[2], m[3])
		case strings.HasPrefix(strings.TrimSpace(line), "what ") && strings.HasSuffix(line, "right"):
			sheet.checks(s.table().each(r))
			continue
		case setupFile.MatchString(line):
			m := setupFile.FindStringSubmatch(line)
			sheet.files++
			r.words("drawing", m[2], "pieces", m[1])
		case line == "NOT ON THIS MACHINE":
			refused = true
		case line == "":
			refused = false
		case line == strings.ToUpper(line): // another heading
		default:
			if refused {
				sheet.noSetup++
			}
			sheet.paragraph(s.unwrapped())
		}
		s.at++
	}
	sheet.end()
}

// unwrapped is this line with those that go on with it, which are set in by two more.
func (s *scanner) unwrapped() string {
	indent := func(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }
	text, in := strings.TrimSpace(s.line()), indent(s.line())
	heading := settingLine.MatchString(text) // what belongs to it is set in as far as the rest of it
	for s.at+1 < len(s.lines) && !(heading && settingEnds.MatchString(text)) {
		next := s.lines[s.at+1]
		if next == "" || indent(next) != in+2 || setupFile.MatchString(next) ||
			stepLine.MatchString(strings.TrimSpace(next)) && in == 0 {
			break
		}
		text += " " + strings.TrimSpace(next)
		s.at++
	}
	return text
}
