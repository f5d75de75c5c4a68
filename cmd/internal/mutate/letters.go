package mutate

import (
	"strings"
	"unicode/utf8"
)

// longest is how many letters stand where a few do.
const longest = 10_000

// oddLetters come in by copying, by editors, by other encodings and by broken disks.
var oddLetters = []string{"\x00", "\xff", "\xc3", "\xed\xa0\x80", "\ufeff", "\u202e", "\u2066", "\u200b", "\u200f", "\u2028", "\u00a0",
	"\u0301", "\ufffd", "\U0010ffff", "\t", "\r", "\n", "\v", "\x1b[2J", "\x7f", "\u0085", "e\u0301", "ﬁ", "½", "×", "−", "‘", "“", "，", "１２",
	"'", "\"", "<script>", "%s%n", "${a}", "../", "\\", strings.Repeat("x", longest), strings.Repeat(" ", longest), strings.Repeat("\n", longest)}

// ofLetters spoil a text letter by letter, and as a whole.
var ofLetters = []way{
	func(s *spoiler, text string) string { return s.put(text, one(s, oddLetters)) },
	func(s *spoiler, text string) string { return s.put(text, one(s, s.format.odd)) },
	func(s *spoiler, text string) string { return text[:s.place(text)] }, // cut off
	func(s *spoiler, text string) string { // a hole
		from := s.place(text)
		return text[:from] + text[min(len(text), from+1+s.IntN(20)):]
	},
	func(s *spoiler, text string) string { // one bit
		if text == "" {
			return text
		}
		data := []byte(text)
		data[s.IntN(len(data))] ^= 1 << s.IntN(8)
		return string(data)
	},
	func(s *spoiler, text string) string { return one(s, wholes)(text) },
}

// wholes are what an editor or a mail does to a whole file.
var wholes = []func(text string) string{
	func(text string) string { return "\ufeff" + text },
	func(text string) string { return strings.ReplaceAll(text, "\n", "\r\n") },
	func(text string) string { return strings.ReplaceAll(text, "\n", "\r") },
	func(text string) string { return strings.ReplaceAll(text, "  ", "\t") },
	func(text string) string { return strings.ReplaceAll(text, "\n", "\n\n") },
	func(text string) string { return strings.ReplaceAll(text, " ", "\u00a0") },
	func(text string) string { return strings.ToUpper(text) },
	func(text string) string { return strings.TrimRight(text, "\n") },
	func(text string) string { return text + text },
	func(string) string { return "" },
	func(text string) string { // UTF-16
		var b strings.Builder
		b.WriteString("\xff\xfe")
		for _, c := range []byte(text) {
			b.Write([]byte{c, 0})
		}
		return b.String()
	},
	func(text string) string { // Latin 1
		var b strings.Builder
		for _, c := range text + "ü" {
			if c < utf8.RuneSelf {
				b.WriteRune(c)
			} else {
				b.WriteByte(byte(c))
			}
		}
		return b.String()
	},
}

// put puts letters into a text.
func (s *spoiler) put(text, letters string) string {
	at := s.place(text)
	return text[:at] + letters + text[at:]
}
