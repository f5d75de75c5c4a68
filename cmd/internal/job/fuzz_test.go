package job

import (
	"math"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// checkProblems checks what holds for the problems of every file: they are in
// order, inside the file, and safe to print.
func checkProblems(t *testing.T, text string, problems Problems) {
	t.Helper()
	text = strings.ReplaceAll(strings.TrimPrefix(text, "\ufeff"), "\r\n", "\n")
	lines := strings.Split(text, "\n")
	own := 0
	for i, p := range problems {
		if p.File != "job.yaml" { // of another file, after those of the job
			continue
		}
		if own++; i >= own {
			t.Errorf("%s stands after those of another file", p)
		}
		if p.Line < 1 || p.Line > len(lines) || p.Column < 1 || p.Column > utf8.RuneCountInString(lines[p.Line-1])+1 {
			t.Errorf("%d:%d is outside the file: %s", p.Line, p.Column, p)
		}
		if i > 0 && (p.Line < problems[i-1].Line || p.Line == problems[i-1].Line && p.Column < problems[i-1].Column) {
			t.Errorf("%s stands after\n%s", p, problems[i-1])
		}
		if p.Code == "" || p.Message == "" {
			t.Errorf("a problem without code or message: %+v", p)
		}
		printed := p.String()
		if strings.ContainsFunc(printed, func(c rune) bool { return c != '\n' && !unicode.IsPrint(c) }) || !utf8.ValidString(printed) {
			t.Errorf("%q does not print", printed)
		}
		if p.Caret > 2*maxExcerpt+2 || utf8.RuneCountInString(p.Excerpt) > maxExcerpt+2 {
			t.Errorf("the excerpt is too long: %+v", p)
		}
	}
}

// checkWithin checks a number against its range, both ends included.
func checkWithin(t *testing.T, what string, x, least, most float64) {
	t.Helper()
	if math.IsNaN(x) || x < least || x > most {
		t.Errorf("%s is %g, outside %g to %g", what, x, least, most)
	}
}

// checkJob checks what holds for every job without an error.
func checkJob(t *testing.T, j *Job) {
	t.Helper()
	within := func(what string, x, least, most float64) { checkWithin(t, what, x, least, most) }
	if len(j.Drawers) == 0 || len(j.Stocks) == 0 {
		t.Errorf("%d drawers of %d stocks", len(j.Drawers), len(j.Stocks))
	}
	for _, s := range j.Stocks {
		within("thickness", s.Thickness.Min, minThickness, s.Thickness.Mean+1e-9) // the mean of equal numbers may differ in the last bit
		within("mean thickness", s.Thickness.Mean, minThickness, maxThickness)
		within("greatest thickness", s.Thickness.Max, s.Thickness.Mean-1e-9, maxThickness)
		if s.Length != 0 || s.Width != 0 {
			within("sheet length", s.Length, minSize, maxSize)
			within("sheet width", s.Width, minSize, maxSize)
		}
	}
	banked := 0
	for _, b := range j.Banks {
		if len(b.Drawers) != len(b.Plan.Rows) {
			t.Errorf("%s has %d drawers in %d rows", b.Name, len(b.Drawers), len(b.Plan.Rows))
		}
		for i, at := range b.Drawers {
			banked++
			if d, row := j.Drawers[at], b.Plan.Rows[i]; d.Width != row.Box.Width || d.Height != row.Box.Height || d.Depth != row.Box.Depth {
				t.Errorf("%s is no box of %+v", d.Name, row)
			}
		}
	}
	if banked > len(j.Drawers) {
		t.Errorf("%d of %d drawers are in openings", banked, len(j.Drawers))
	}
	files := map[string]bool{}
	for _, d := range j.Drawers {
		file := FileName(d.Name)
		if files[file] {
			t.Errorf("two drawers have the files of %s", file)
		}
		files[file] = true
	}
	checkDrawers(t, j)
}

// checkDrawers checks what holds for the drawers of every job, also of one
// whose other entries have errors.
func checkDrawers(t *testing.T, j *Job) {
	t.Helper()
	within := func(what string, x, least, most float64) { checkWithin(t, what, x, least, most) }
	for i, d := range j.Drawers {
		within("width", d.Width, minSize, maxSize)
		within("height", d.Height, minSize, maxSize)
		within("depth", d.Depth, minSize, maxSize)
		within("count", float64(d.Count), 1, maxCount)
		within("cutter width", d.Cutter.Width, minCutter, maxCutter)
		within("fence distance", d.FenceDistance, 0, maxSetting)
		within("cutter height", d.CutterHeight, 0, maxSetting)
		within("slack", d.BottomClearance, 0, maxBottomClearance)
		for _, play := range []float64{d.DadoClearance, d.GrooveClearance, d.GlueSpace} {
			within("play", play, 0, maxClearance)
		}
		for _, s := range []float64{d.Sides.Thickness.Mean, d.Front.Thickness.Mean, d.Back.Thickness.Mean, d.Bottom.Thickness.Mean} {
			within("thickness of a part", s, minThickness, maxThickness)
		}
		for _, word := range []string{string(d.Joint), string(d.Cutter.Kind), string(d.GrooveEnds), string(d.BottomFit)} {
			if word == "" {
				t.Errorf("drawer %d lacks a word: %+v", i, d.Spec)
			}
		}
		if d.BackJoint == "" && d.BackSetback != 0 {
			t.Errorf("drawer %d has a setback without a joint", i)
		}
		for _, div := range d.Dividers {
			within("thickness of a divider", div.Stock.Thickness.Mean, minThickness, maxThickness)
			if (div.Count > 0) == (len(div.At) > 0) {
				t.Errorf("drawer %d has dividers %+v", i, div)
			}
		}
		if front := d.DrawerFront; front != nil {
			within("thickness of a front", front.Stock.Thickness.Mean, minThickness, maxThickness)
			within("front width", front.Width, minSize, maxSize)
			within("front height", front.Height, minSize, maxSize)
			within("holes", float64(front.Handles), 0, 2)
		}
		within("load", d.Load, 0, maxLoad+1e-3)
		for _, f := range fields {
			at := j.Where(i, f)
			if at.Line < 1 || at.Line > len(j.src.lines) || at.Column < 1 || at.Column > utf8.RuneCountInString(j.src.lines[at.Line-1]) {
				t.Errorf("%s of drawer %d is at %v, outside the file", f, i, at)
			}
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, text := range goodFiles {
		f.Add(text)
	}
	for _, m := range mistakes {
		f.Add(m.file())
	}
	for _, text := range hostile {
		f.Add(text[:min(len(text), 300)])
	}
	f.Fuzz(func(t *testing.T, text string) { checkText(t, text) })
}

// checkText reads any text as a job, whose limits hold or whose problems have places, and reports whether it can be
// built.
func checkText(t *testing.T, text string) (built bool) {
	t.Helper()
	job, problems := Read("job.yaml", strings.NewReader(text), Files(openTest))
	if job == nil && !problems.Failed() {
		t.Errorf("no job, and no error among %v", problems)
	}
	checkProblems(t, text, problems)
	switch {
	case job == nil:
	case problems.Failed():
		checkDrawers(t, job)
	default:
		checkJob(t, job)
		return true
	}
	return false
}
