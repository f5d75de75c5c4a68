package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/layer"
	"drawerwright/geom"
)

// Signs that names of some kinds may hold beside them, as boards and bits are called: birch
// 1/2, 1/4" up. They are left out of the names of files.
const (
	bitSigns   = "/\"'"
	stockSigns = "/"
)

// nameSigns are the signs that a name may hold beside letters, digits and the
// marks that belong to letters.
const nameSigns = " -_.+()"

// nameFault says what is wrong with the name of a drawer or stock; empty when
// nothing is.
func nameFault(name string) string { return faultWithin(name, nameSigns) }

// faultWithin is nameFault for names that may hold some signs.
func faultWithin(name, signs string) string {
	if name == "" {
		return "is empty"
	}
	if utf8.RuneCountInString(name) > maxName {
		return fmt.Sprintf("has more than %d characters", maxName)
	}
	for i, c := range name {
		switch {
		case c > 0xFFFF: // in PDF a letter has a code of two bytes, and the fonts have none beyond
			return "holds " + quote(string(c)) + ", which the packet cannot print"
		case unicode.IsLetter(c) && visible(c), unicode.IsDigit(c):
		case i == 0:
			return "does not begin with a letter or digit"
		case unicode.IsMark(c) && visible(c), strings.ContainsRune(signs, c):
		default:
			return "holds " + quote(string(c))
		}
	}
	switch {
	case strings.HasSuffix(name, " "):
		return "ends with a space"
	case strings.Contains(name, "  "): // of which people see one
		return "has two spaces in a row"
	}
	return ""
}

// visible refuses letters and marks that show nothing, such as fillers and
// variation selectors: two names must not differ by them alone.
func visible(c rune) bool {
	return !unicode.Is(unicode.Other_Default_Ignorable_Code_Point, c) && !unicode.Is(unicode.Variation_Selector, c)
}

// titleFault says what is wrong with the title of a job.
func titleFault(title string) string {
	switch {
	case strings.TrimSpace(title) == "":
		return "is empty"
	case utf8.RuneCountInString(title) > maxTitle:
		return fmt.Sprintf("has more than %d characters", maxTitle)
	case strings.ContainsFunc(title, words.Unprintable):
		return "holds a character that does not print"
	}
	return ""
}

// deviceNames are the names that Windows keeps for devices, with any extension: Microsoft Learn,
// "Naming Files, Paths, and Namespaces", and "CreateFile function" for those of the console.
var deviceNames = []string{"con", "prn", "aux", "nul", "conin$", "conout$",
	"com¹", "com²", "com³", "lpt¹", "lpt²", "lpt³",
	"com0", "com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9",
	"lpt0", "lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9"}

// IsDevice reports whether Windows keeps a name for a device.
func IsDevice(name string) bool {
	return slices.Contains(deviceNames, strings.ToLower(strings.TrimSpace(name)))
}

// FileName is a name made safe for every file system: lower case, a to z, 0 to
// 9 and single hyphens between them. Accents are dropped; everything else
// becomes a hyphen. It is never empty and never the name of a device. Different
// names can have the same file name; [Read] refuses a job in which two do.
func FileName(name string) string {
	switch file := layer.Plain(name); {
	case file == "":
		return "unnamed"
	case IsDevice(file):
		return file + "-x"
	default:
		return file
	}
}

// names are the names of one kind of thing, by the files they give.
type names map[string]struct {
	name string
	line int
}

// legible says where letters that paper lacks stand first in the names and the title of a file.
func (r *reader) legible(text string, at Position) {
	if c, missing := drawing.Missing(text); missing && !r.illegible {
		r.illegible = true
		sign := strconv.QuoteRune(c)
		if c > 0xFFFF { // paper that tells of it could not be read back
			sign = fmt.Sprintf("U+%X", c)
		}
		fact := fmt.Sprintf("the letters of the packet and its labels have no %s: an empty box stands for it", sign)
		r.add(Problem{Level: geom.LevelWarning, Code: CodeLetters, Message: fact,
			Hint: "write names in Latin, Greek or Cyrillic letters"}, at)
	}
}

// check reports a name that cannot be one, or that an earlier one excludes.
func (ns names) check(r *reader, name string, at Position, kind string) {
	more := map[string]string{"bit": bitSigns, "stock": stockSigns}[kind]
	if fault := faultWithin(name, nameSigns+more); fault != "" {
		r.fail(CodeBadName, at, fmt.Sprintf("begin with a letter or digit; letters, digits, single spaces and %s "+
			"may follow, %d characters in all",
			strings.Join(strings.Split(strings.TrimSpace(nameSigns+more), ""), " "), maxName),
			"the name %s %s", quote(name), fault)
		return
	}
	r.legible(name, at)
	file := FileName(name)
	first, taken := ns[file]
	switch {
	case !taken:
		first.name, first.line = name, at.Line
		ns[file] = first
	case first.name == name:
		r.fail(CodeSameName, at, "give each "+kind+" a name of its own",
			"the %s %s is already on line %d", kind, quote(name), first.line)
	default:
		r.fail(CodeSameName, at, "let the names differ in a letter a to z or a digit",
			"the %s %s would have the same files as %s on line %d: %s", kind, quote(name), quote(first.name), first.line, file)
	}
}
