package job

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom/opening"
)

// Option changes how [Read] reads.
type Option func(*reader)

// Files lets a job name another file, which open opens: a path with / between
// folders, from the folder of the job file, which may lead out of it by "..".
// Without this option such a job is refused. Read closes what it has opened.
func Files(open func(name string) (io.ReadCloser, error)) Option {
	return func(r *reader) { r.open = open }
}

// path reads the name of a file.
func (r *reader) path(n *node, k *key) string {
	text, fault := n.text, ""
	switch {
	case text == "":
		fault = "is empty"
	case utf8.RuneCountInString(text) > maxPath:
		fault = fmt.Sprintf("has more than %d characters", maxPath)
	case text[0] == '/' || strings.ContainsAny(text, `\:`):
		fault = "does not begin in the folder of the job"
	case strings.ContainsFunc(text, words.Unprintable):
		fault = "holds a character that does not print"
	default:
		return text
	}
	r.fail(CodeFile, n.at, "write its name with / between folders, as in slides.yaml or ../slides.yaml",
		"%s: the name %s %s", k.name, quote(text), fault)
	return ""
}

// sharedSlides adds the slides of the file that the job names to those that are
// there. It reports whether some could not be read. That file has its own units, and
// its own places for what is wrong in it.
func (r *reader) sharedSlides(named value, all map[string]*opening.Slide) (lost bool) {
	if named.text == "" {
		return named.given
	}
	if r.open == nil {
		r.fail(CodeFile, named.at, "write the slides under `slides:` in the job",
			"slides-file: no other file can be opened here")
		return true
	}
	f, err := r.open(named.text)
	if err != nil {
		r.fail(CodeFile, named.at, "the name begins in the folder of the job file",
			"slides-file: the file cannot be opened: %s", printable(err.Error()))
		return true
	}
	defer f.Close()
	other := &reader{reporter: &reporter{}}
	shared := map[string]*opening.Slide{}
	if src, ok := readSource(named.text, f, other.reporter); ok {
		root, _ := parse(src, other.reporter)
		other.makeSlides(other.slideSections(root), shared)
	}
	for _, name := range slices.Sorted(maps.Keys(shared)) {
		if _, taken := all[name]; taken {
			r.fail(CodeSameName, named.at, "give one of them another name",
				"the slide %s is in the job and in %s", quote(name), quote(named.text))
		}
		all[name] = shared[name]
	}
	r.shared = append(r.shared, other.sorted()...)
	return other.problems.Failed()
}

// slideSections reads the root of a file of slides.
func (r *reader) slideSections(root *node) []*section {
	if root.kind == nothing {
		if len(r.problems) == 0 {
			r.fail(CodeEmpty, Position{1, 1}, "such a file begins with `units: mm` and lists `slides:`", "the file holds no slides")
		}
		return nil
	}
	r.readUnits(root)
	return r.section(root, sharedKeys, "the file").values["slides"].sections
}
