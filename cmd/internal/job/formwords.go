package job

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// FormText is a text about an entry at a path, in the words of a form: it calls entries by the titles
// of their fields, and asks for what a person does there, who may never have seen the file.
func FormText(text string, path []string) string {
	w := spoken{path}
	text = ticked.ReplaceAllStringFunc(text, w.ticked)
	text = w.each(writesEntry, text, func(m []string) string { return "set " + w.title(m[1]) + " to " })
	text = w.each(orEntry, text, func(m []string) string { return "or set " + w.title(m[1]) + " to " })
	text = w.each(writesOf, text, func(m []string) string { return "set " + w.title(m[1]) + " to " + m[2] })
	text = afterNumber.ReplaceAllString(text, "write $1 after the number")
	text = w.each(underSection, text, func(m []string) string {
		title := w.title(m[1])
		if inner := w.below(m[1], m[2]); inner != "" {
			title += ", " + inner
		}
		return "under " + title
	})
	text = w.each(bareKey, text, func(m []string) string { return w.title(m[1]) })
	return phrases.Replace(w.own(text))
}

// ofText are the rules about the text of a file: what breaks them was written there, and is told so.
var ofText = []Code{CodeRead, CodeTooLarge, CodeNotUTF8, CodeControl, CodeTab, CodeEmpty, CodeLayout, CodeUnclosed,
	CodeUnsupported, CodeUnknownKey, CodeDuplicateKey, CodeNoValue, CodeWrongKind}

// InForm is what a form says of a problem with the entry at a path, and what it says to do.
func (p Problem) InForm(path []string) (message, hint string) {
	if slices.Contains(ofText, p.Code) {
		return p.Message, p.Hint
	}
	message, hint = FormText(p.Message, path), FormText(p.Hint, path)
	if k, _ := keyAt(path); p.Key != "" && k != nil {
		if whose, found := strings.CutSuffix(p.Message, " has no "+p.Key); found {
			message = FormText(whose, nil) + ": " + spoken{path}.title(k.name) + " is missing"
		}
		hint = "fill in "
		if k.form == formStock || k.form == formWord || k.form == formRef {
			hint = "choose "
		}
		hint += spoken{path}.title(k.name) + ": " + FormText(strings.ToLower(k.doc[:1])+k.doc[1:], path)
	}
	return message, hint
}

// What texts say in the words of a job file: an entry between ticks, one that is to be written,
// a section, and a key with a hyphen, which is no other word.
var (
	ticked       = regexp.MustCompile("(write )?`[^`]+`")
	writesEntry  = regexp.MustCompile(`\bwrite ([a-z][a-z-]*): `)
	orEntry      = regexp.MustCompile(`\bor ([a-z][a-z-]*): `)
	writesOf     = regexp.MustCompile(`\bwrite an? ([a-z][a-z-]*) of (-?\d)`)
	afterNumber  = regexp.MustCompile(`\bchoose ([^;]*) after the number`)
	underSection = regexp.MustCompile(`\b(?:under|in the section) ([a-z][a-z-]*)(?:: ([a-z][a-z-]*))?`)
	bareKey      = regexp.MustCompile(`\b([a-z]+(?:-[a-z]+)+)\b`)
	tickedEntry  = regexp.MustCompile(`^\{?([a-z][a-z-]*):\s*(.*?)\}?$`)
)

// phrases are what a form says in place of what a person with a file does.
var phrases = strings.NewReplacer(
	"delete it", "clear it", "delete the entry", "clear it", "delete the line", "clear it",
	"the file has none: write it below", "there is none: make it with the button beside the field, under",
	"of the file", "of the job", "in the file", "in the job", "the file ", "the job ",
	"the whole file", "the whole job",
	"write the entries out", "fill in the fields")

// spoken puts words for those about the entry at a path.
type spoken struct{ path []string }

// each replaces what a pattern finds, where its first group is a key.
func (w spoken) each(of *regexp.Regexp, text string, by func(found []string) string) string {
	return of.ReplaceAllStringFunc(text, func(all string) string {
		m := of.FindStringSubmatch(all)
		if w.title(m[1]) == "" || of == bareKey && isWord(m[1]) {
			return all
		}
		return by(m)
	})
}

// own puts the title of the entry itself where a text begins with it, or tells of a side of it.
func (w spoken) own(text string) string {
	at := len(w.path) - 1
	for at >= 0 && w.title(w.path[at]) == "" { // the number of one in a list
		at--
	}
	if at < 0 {
		return text
	}
	last := w.path[at]
	for _, after := range []string{" ", ": "} {
		if rest, begins := strings.CutPrefix(text, last+after); begins {
			return w.title(last) + after + rest
		}
	}
	return strings.Replace(text, " of "+last+" ", " of "+w.title(last)+" ", 1)
}

// ticked is what stands between ticks, with the order to write it if that stands before it.
func (w spoken) ticked(text string) string {
	inside, write := text, ""
	if rest, begins := strings.CutPrefix(text, "write "); begins {
		inside, write = rest, "write "
	}
	inside = strings.Trim(inside, "`")
	m := tickedEntry.FindStringSubmatch(inside)
	switch {
	case m == nil && (w.near(inside) != "" || w.title(inside) != "" && !isWord(inside)):
		return write + w.title(inside)
	case m == nil:
		if write != "" {
			write = "choose "
		}
		return write + inside
	}
	title, value := w.entry(m[1], m[2])
	switch {
	case title == "":
		return write + inside
	case write == "":
		return strings.TrimSuffix(title+": "+value, ": ")
	case value == "":
		return "fill in " + title
	}
	return "set " + title + " to " + value
}

// entry is the title of an entry, with those in it if its value is a section, and the value that is
// to be written; that is empty where a text leaves it open.
func (w spoken) entry(key, value string) (title, is string) {
	title = w.title(key)
	if title == "" {
		return "", ""
	}
	if m := tickedEntry.FindStringSubmatch(value); m != nil && strings.HasPrefix(value, "{") {
		if inner := w.below(key, m[1]); inner != "" {
			return title + ", " + inner, open(m[2])
		}
	}
	return title, open(value)
}

// open is a value, empty where it only shows that one stands there.
func open(value string) string {
	for _, some := range []string{"...", "length x width", "width x height", "{"} {
		if strings.Contains(value, some) {
			return ""
		}
	}
	return value
}

// title is that of a key, nearest to the path; empty of what is none.
func (w spoken) title(name string) string {
	if near := w.near(name); near != "" {
		return near
	}
	return keyWords().titles[name]
}

// near is the title of a key in one of the sections of the path; empty where none has it.
func (w spoken) near(name string) string {
	for n := len(w.path); n >= 0; n-- {
		keys, section := jobKeys, ""
		if n > 0 {
			k, _ := keyAt(w.path[:n])
			if k == nil {
				continue
			}
			keys, section = k.keys, k.name
		}
		if hasKey(keys, name) {
			return titleOf(section, name)
		}
	}
	return ""
}

// below is the title of a key in a section; empty where the section has none.
func (w spoken) below(section, name string) string {
	if !keyWords().within[section][name] {
		return ""
	}
	return titleOf(section, name)
}

func hasKey(keys []key, name string) bool {
	return slices.ContainsFunc(keys, func(k key) bool { return k.name == name })
}

// tableWords are what the key table has by name: the title of a key where it stands first, the keys
// within a section, and all words that are values.
type tableWords struct {
	titles map[string]string
	within map[string]map[string]bool
	values map[string]bool
}

var keyWords = sync.OnceValue(func() tableWords {
	all := tableWords{map[string]string{}, map[string]map[string]bool{}, map[string]bool{}}
	for _, p := range placesBelow(jobKeys, nil) {
		k, section := p.key(), ""
		if len(p) > 1 {
			section = p[len(p)-2].name
		}
		if all.within[section] == nil {
			all.within[section] = make(map[string]bool)
		}
		all.within[section][k.name] = true
		if all.titles[k.name] == "" {
			all.titles[k.name] = titleOf(section, k.name)
		}
		for _, word := range k.words {
			all.values[word] = true
		}
	}
	return all
})

// isWord reports whether a text is a value that an entry takes.
func isWord(text string) bool { return keyWords().values[text] }
