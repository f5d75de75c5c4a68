package readback

import (
	"bytes"
	"compress/zlib"
	"io"
	"regexp"
	"slices"
	"unicode/utf16"
)

// Plant gives an output in which what is first found is replaced, as regexp.Expand has it; ok
// is false where nothing is found. On paper it is a text as it stands there, whole.
func Plant(out, text, find, instead string) (changed string, ok bool) {
	if out == Packet {
		return plantOnPaper(text, find, instead)
	}
	re := regexp.MustCompile("(?m)" + find)
	at := re.FindStringSubmatchIndex(text)
	if at == nil {
		return text, false
	}
	return text[:at[0]] + string(re.ExpandString(nil, instead, text, at)) + text[at[1]:], true
}

// plantOnPaper packs the pages of a PDF anew. The places of its objects are then wrong,
// which does not matter to who reads stream after stream.
func plantOnPaper(data, find, instead string) (changed string, ok bool) {
	var out bytes.Buffer
	old, fresh := "("+inUTF16(find)+")", "("+inUTF16(instead)+")"
	rest := []byte(data)
	for {
		before, after, found := bytes.Cut(rest, []byte("stream\n"))
		out.Write(before)
		if !found {
			return out.String(), ok
		}
		body, next, _ := bytes.Cut(after, []byte("\nendstream"))
		rest = next
		if z, err := zlib.NewReader(bytes.NewReader(body)); err == nil && !ok {
			if content, err := io.ReadAll(z); err == nil && bytes.Contains(content, []byte(old)) {
				ok = true
				var packed bytes.Buffer
				w := zlib.NewWriter(&packed)
				at := bytes.LastIndex(content, []byte(old)) // tables, which are read, follow their drawings
				w.Write(slices.Concat(content[:at], []byte(fresh), content[at+len(old):]))
				w.Close()
				body = packed.Bytes()
			}
		}
		out.WriteString("stream\n")
		out.Write(body)
		out.WriteString("\nendstream")
	}
}

// inUTF16 is a text without letters that a PDF escapes.
func inUTF16(s string) string {
	var b []byte
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return string(b)
}
