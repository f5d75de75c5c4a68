package outdir

import (
	"errors"
	"io/fs"
	"os"
	"strconv"
	"strings"
	"syscall"
	"unicode"
	"unicode/utf8"
)

// The rules by which a folder, a file or a step is refused. Compare with
// [errors.Is]; the place and the words are in the [*Error] around it, and the
// system's own error, where there is one, is found by errors.Is as well.
var (
	ErrNoName     = errors.New("no folder is named")
	ErrCurrent    = errors.New("the folder is the current one or holds it")
	ErrMountPoint = errors.New("the folder is a mount point")
	ErrSymlink    = errors.New("the folder is a symbolic link")
	ErrNotFolder  = errors.New("something else than a folder has the name")
	ErrParent     = errors.New("the folder cannot be made where it was asked for")
	ErrReadOnly   = errors.New("the folder cannot be replaced")
	ErrForeign    = errors.New("the folder holds files of somebody else")
	ErrBusy       = errors.New("another build into the folder is running")
	ErrFileName   = errors.New("no name for a file in the folder")
	ErrDuplicate  = errors.New("two files of one name")
	ErrWrite      = errors.New("a file could not be written")
	ErrSwap       = errors.New("the folder could not be put in place")
	ErrLeftover   = errors.New("a working folder could not be removed")
	ErrOldLeft    = errors.New("the folder is in place, and what it replaced could not be removed")
	ErrKept       = errors.New("the folder is in place, and what somebody changed is kept beside it")
	ErrFinished   = errors.New("the build of the folder has ended")
)

// Error is a refusal or a failure.
type Error struct {
	Rule    error     // one of the Err values of this package
	Path    string    // the folder or file at fault, as the user named it
	Fact    string    // what was found
	Hint    string    // what can be done about it; may be empty
	Foreign []Foreign // with ErrForeign: what is in the way, by path, at most foreignLimit
	Cause   error     // the system's error, if any
}

// fault makes an Error without foreign files.
func fault(rule error, path string, cause error, fact, hint string) *Error {
	return &Error{Rule: rule, Path: path, Cause: cause, Fact: fact, Hint: hint}
}

// Unwrap gives the rule and the system's error.
func (e *Error) Unwrap() []error {
	if e.Cause == nil {
		return []error{e.Rule}
	}
	return []error{e.Rule, e.Cause}
}

// Error gives the fact, what is in the way, and the hint, each on a line of its own.
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(e.Fact)
	if e.Cause != nil {
		b.WriteString(": " + reason(e.Cause))
	}
	describe(&b, e.Foreign)
	if e.Hint != "" {
		b.WriteString("\n  hint: " + e.Hint)
	}
	return b.String()
}

// reason gives the system's words without the call and the hidden paths.
func reason(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err.Error()
	}
	return err.Error()
}

// shown makes a path fit for a message: as it is, or quoted where it holds
// something that a screen would obey.
func shown(path string) string {
	if !utf8.ValidString(path) || strings.ContainsFunc(path, func(r rune) bool { return !unicode.IsPrint(r) }) {
		return strconv.Quote(path)
	}
	return path
}

// advice says what can be done about an error of the disk.
func advice(err error) string {
	if errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) {
		return "nothing was changed; make room on the disk, or name a folder on another one"
	}
	if errors.Is(err, syscall.ENAMETOOLONG) {
		return "nothing was changed; write a shorter name: most disks take 255 bytes, a folder beside it included"
	}
	return "nothing was changed; name a folder that you may write to"
}
