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
	file  string
	lines []string
}

// readSource reads a file and reports what keeps it from being text: too many
// bytes, another encoding, control characters, tabs at the beginning of lines.
// It reads at most one byte more than the limit.
func readSource(file string, from io.Reader, r *reporter) *source {
	src := &source{file: file}
	r.src = src
	data, err := io.ReadAll(io.LimitReader(from, maxFile+1))
	if err != nil {
		r.fail(CodeRead, Position{1, 1}, "", "the file cannot be read: %s", printable(err.Error()))
		return src
	}
	if len(data) > maxFile {
		r.fail(CodeTooLarge, Position{1, 1}, "divide the job into several files", "the file has more than %d KiB", maxFile>>10)
		return src
	}
	text := string(bytes.TrimPrefix(data, []byte("\ufeff")))
	text = strings.ReplaceAll(text, "\r\n", "\n")
	if text != "" {
		src.lines = strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	}
	if !utf8.ValidString(text) {
		src.reportEncoding(r)
		return src
	}
	for i, line := range src.lines {
		src.reportControl(i, line, r)
		src.reportIndent(i, line, r)
	}
	return src
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

// reportIndent reports a line that is indented by something else than spaces.
func (s *source) reportIndent(i int, line string, r *reporter) {
	column := 0
	for _, c := range line {
		column++
		switch {
		case c == ' ':
			continue
		case !unicode.IsSpace(c) || strings.Trim(line, " \t") == "":
			return
		case c == '\t':
			r.fail(CodeTab, Position{i + 1, column}, "write spaces instead; an editor can replace all tabs at once", "the line is indented by a tab")
		default:
			r.fail(CodeTab, Position{i + 1, column}, "write plain spaces instead", "the line is indented by a special space, U+%04X", c)
		}
		return
	}
}
