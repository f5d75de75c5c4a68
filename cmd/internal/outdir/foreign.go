package outdir

import (
	"fmt"
	"strings"
)

// Foreign is a thing in the folder that this package did not write, or that is
// no longer what it wrote.
type Foreign struct {
	Path string // as the user would name it: the folder's name, a slash, the path in it
	Why  Why
}

// Why is a verb and what follows, as "was not written by this tool".
type Why string

// Why something is foreign.
const (
	Unknown Why = "was not written by this tool"
	Changed Why = "was changed since it was built"
	Missing Why = "is missing" // which is no obstacle to a build
	Link    Why = "is a symbolic link"
	Special Why = "is not a plain file"
	// Unreadable is what this process may not read: of a folder that is to be replaced it is an error.
	Unreadable Why = "cannot be read"
)

// foreignNamed is how many foreign files a message names; a list that scrolls
// by helps nobody.
const foreignNamed = 5

// foreignLimit is how many foreign files are counted. It bounds the time that
// is spent in a large folder named by mistake.
const foreignLimit = 1000

// describe writes the first of the list and the number of the others.
func describe(b *strings.Builder, list []Foreign) {
	named := list[:min(len(list), foreignNamed)]
	for _, f := range named {
		fmt.Fprintf(b, "\n  %s %s", shown(f.Path), f.Why)
	}
	switch more := len(list) - len(named); {
	case len(list) >= foreignLimit:
		fmt.Fprintf(b, "\n  and at least %d more", more)
	case more > 0:
		fmt.Fprintf(b, "\n  and %d more", more)
	}
}

// refuse makes the error for a folder with foreign files.
func (t target) refuse(list []Foreign, recorded bool) error {
	count := "1 thing that is"
	if n := len(list); n >= foreignLimit {
		count = fmt.Sprintf("at least %d things that are", n)
	} else if n > 1 {
		count = fmt.Sprintf("%d things that are", n)
	}
	fact := fmt.Sprintf("%s holds %s not this tool's", shown(t.name), count)
	if !recorded {
		fact += " (it has no " + ManifestName + ", the list this tool leaves in its folders)"
	}
	e := fault(ErrForeign, t.name, nil, fact,
		"nothing was changed; name another folder, or first move what you want to keep, then delete this one")
	e.Foreign = list
	return e
}
