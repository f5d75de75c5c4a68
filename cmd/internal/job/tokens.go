package job

import (
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/token"
)

// scanning turns the library's tokens into marks.
type scanning struct {
	*reporter
	lines []int // of the file, for the lines that the scanner saw
	marks []mark
	after int  // the scanner's line after the token before
	begun bool // a --- was there
	ended bool // the rest of the file is not read
}

func (s *scanning) take(tokens token.Tokens) {
	for i := 0; i < len(tokens) && !s.ended; i++ {
		i += s.one(tokens[i], tokens[i+1:])
		last := tokens[min(i, len(tokens)-1)]
		s.after = last.Position.Line + newlines(strings.TrimLeft(last.Origin, " \n"))
	}
}

// one takes a token and says how many of those after it belong to it.
func (s *scanning) one(tk *token.Token, rest token.Tokens) (more int) {
	m := s.mark(tk)
	switch tk.Type {
	case token.CommentType:
	case token.SequenceEntryType, token.MappingValueType, token.CollectEntryType,
		token.SequenceStartType, token.SequenceEndType, token.MappingStartType, token.MappingEndType:
		m.sign = tk.Value[0]
		s.marks = append(s.marks, m)
	case token.TagType:
		s.unsupported(m, tk.Value)
	case token.AnchorType:
		s.unsupported(m, tk.Value)
		return 1 // its name
	case token.DirectiveType:
		s.unsupported(m, tk.Value)
		for more < len(rest) && rest[more].Position.Line == tk.Position.Line {
			more++
		}
	case token.AliasType, token.LiteralType, token.FoldedType:
		s.unsupported(m, tk.Value)
		s.broken(m)
		return 1 // its name or its text
	case token.MergeKeyType:
		s.unsupported(m, tk.Value)
		s.broken(m)
	case token.MappingKeyType:
		s.unsupported(m, tk.Value)
		s.ended = true // keys and values on lines of their own upset all that follows
	case token.DocumentHeaderType, token.DocumentEndType:
		s.document(m, tk, rest)
	case token.InvalidType:
		s.invalid(m, tk)
	default:
		s.scalar(m, tk)
	}
	return more
}

// broken leaves a scalar in the place of something that has been reported, so
// that the entry is not thought to be empty.
func (s *scanning) broken(m mark) {
	m.bad = true
	s.marks = append(s.marks, m)
}

// line is the line of the file for a line that the scanner counted.
func (s *scanning) line(n int) int { return s.lines[min(max(n, 1), len(s.lines))-1] }

func (s *scanning) mark(tk *token.Token) mark {
	n := tk.Position.Line
	at := Position{s.line(n), max(tk.Position.Column, 1)}
	return mark{at: at, last: s.line(n + newlines(strings.Trim(tk.Origin, " \n")))}
}

// scalar takes text, plain or in quotes.
func (s *scanning) scalar(m mark, tk *token.Token) {
	m.text = tk.Value
	written := strings.Trim(tk.Origin, " \n")
	lines := newlines(written) + 1
	switch quotes := quotesOf(tk); {
	case quotes == "" && lines > 1:
		s.joined(tk, strings.Split(written, "\n"))
		return
	case quotes == "" || written == quotes+tk.Value+quotes:
		m.inset = len(quotes)
	case lines > 1:
		s.fail(CodeLayout, m.at, "close the quotes on the same line", "text in quotes goes on over the next line")
		s.lost, m.bad = true, true
	case written != quotes+escapes[quotes].Replace(tk.Value)+quotes:
		// The scanner also takes escapes that are none, such as \xyz.
		s.fail(CodeUnsupported, m.at, `write the character itself; \" and \\ are the only escapes in a job file`, "the text in quotes holds an escape")
		m.bad = true
	default:
		m.inset = -1
	}
	s.marks = append(s.marks, m)
}

// quotesOf is the quote around the text of a token; empty for plain text.
func quotesOf(tk *token.Token) string {
	switch tk.Type {
	case token.SingleQuoteType:
		return "'"
	case token.DoubleQuoteType:
		return `"`
	}
	return ""
}

// escapes write text as it stands in quotes.
var escapes = map[string]*strings.Replacer{
	"'": strings.NewReplacer("'", "''"),
	`"`: strings.NewReplacer(`\`, `\\`, `"`, `\"`),
}

// joined takes plain text that the scanner has joined with the lines below it,
// which are indented further. Here each line is a mark of its own: a job has
// no text of several lines, and the join hides where a colon is missing. The
// scanner can give the place of a later line for such text, so that its
// beginning is counted from the token before it.
func (s *scanning) joined(tk *token.Token, parts []string) {
	first := s.after + newlines(tk.Origin) - newlines(strings.TrimLeft(tk.Origin, " \n"))
	for i, part := range parts {
		part = strings.Trim(part, " ")
		line := s.line(first + i)
		at := Position{line, s.src.indent(line)}
		if i == 0 { // it reaches to the end of its line
			whole := strings.TrimRight(s.src.lines[line-1], " \t")
			at.Column = max(1, utf8.RuneCountInString(whole)-utf8.RuneCountInString(part)+1)
		}
		s.marks = append(s.marks, mark{text: part, at: at, last: line})
	}
}

func newlines(text string) int { return strings.Count(text, "\n") }

func (s *scanning) unsupported(m mark, sign string) {
	s.fail(CodeUnsupported, m.at, "write the value out; text that begins with such a sign must be in quotes",
		"%s is YAML that a job file does without", quote(sign))
}

// document takes a --- on a line of its own before the first entry and refuses
// every other sign between documents.
func (s *scanning) document(m mark, tk *token.Token, rest token.Tokens) {
	alone := len(rest) == 0 || rest[0].Type == token.CommentType || rest[0].Position.Line > tk.Position.Line
	if tk.Type == token.DocumentHeaderType && len(s.marks) == 0 && alone && !s.begun {
		s.begun = true
		return
	}
	s.fail(CodeUnsupported, m.at, "a file holds one job, and --- or ... are not needed",
		"%s begins or ends a document here", quote(tk.Value))
	s.ended = true
}

// invalid reports a token that the scanner could not read.
func (s *scanning) invalid(m mark, tk *token.Token) {
	text := strings.Trim(tk.Origin, " \n")
	s.lost = true
	first, _ := utf8.DecodeRuneInString(text)
	switch first {
	case '"', '\'':
		s.fail(CodeUnclosed, m.at, `close the quotes on the same line; inside double quotes a backslash is written \\ and a quote \"`,
			"the quotes are not closed, or hold a sign that they cannot")
	default:
		s.fail(CodeLayout, m.at, "put text that begins with a sign in quotes", "%s cannot stand here", quote(text))
	}
	s.broken(m)
}
