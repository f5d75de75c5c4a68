package job

import (
	"bytes"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// source is the text of a job file: without its byte order mark, with plain
// newlines.
type source struct {
	file string
	// lines are indented by spaces; written are those that are indented by something else
	// in the file, by their index.
	lines   []string
	written map[int]string
}

// readSource reads a file and reports what is wrong with it as a text. It reads at most one
// byte more than the limit. Of a file that is none, with too many bytes, in another encoding
// or with control characters, nothing can be said: ok is false. One that is indented by tabs
// is read on as if they were spaces.
func readSource(file string, from io.Reader, r *reporter) (src *source, ok bool) {
	src = &source{file: file}
	r.src = src
	data, err := io.ReadAll(io.LimitReader(from, maxFile+1))
	if err != nil {
		r.fail(CodeRead, Position{1, 1}, "", "the file cannot be read: %s", printable(err.Error()))
		return src, false
	}
	if len(data) > maxFile {
		r.fail(CodeTooLarge, Position{1, 1}, "divide the job into several files", "the file has more than %d KiB", maxFile>>10)
		return src, false
	}
	text := string(bytes.TrimPrefix(data, []byte("\ufeff")))
	text = strings.ReplaceAll(text, "\r\n", "\n")
	if text != "" {
		src.lines = strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	}
	if !utf8.ValidString(text) {
		src.reportEncoding(r)
		return src, false
	}
	for i, line := range src.lines {
		src.reportControl(i, line, r)
	}
	if len(r.problems) > 0 {
		return src, false
	}
	src.plainIndent(r)
	return src, true
}

func (s *source) reportEncoding(r *reporter) {
	for i, line := range s.lines {
		column := 1
		for rest := line; rest != ""; column++ {
			c, size := utf8.DecodeRuneInString(rest)
			if c == utf8.RuneError && size == 1 {
				r.fail(CodeNotUTF8, Position{i + 1, column}, "save the file in the encoding UTF-8", "this is not UTF-8 text")
				return
			}
			rest = rest[size:]
		}
	}
}

// reportControl reports the first control character of a line.
func (s *source) reportControl(i int, line string, r *reporter) {
	column := 0
	for _, c := range line {
		column++
		if unicode.IsControl(c) && c != '\t' {
			r.fail(CodeControl, Position{i + 1, column}, "delete it; an editor may show it as a box or not at all",
				"there is a control character, U+%04X", c)
			return
		}
	}
}
