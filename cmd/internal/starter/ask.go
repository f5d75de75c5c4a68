package starter

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"
)

// ErrEnded is the end of the answers before the last question.
var ErrEnded = errors.New("the answers ended before the last question; no file was written")

// keep is the answer with which a person takes a job with what is to be warned of in it.
const keep = "keep"

// asking is a person who is asked, in lines.
type asking struct {
	lines *bufio.Scanner
	out   io.Writer
}

// Ask asks for the answers that are not given, one line each, again where one is wrong, and
// makes the job. It prints what it asks, with what is usual in brackets: an empty line takes
// that. When answers do not go together it says why and asks for the one that can end it; a
// person can keep them where the job can be built.
func Ask(in io.Reader, out io.Writer, a Answers) (text string, err error) {
	p := asking{bufio.NewScanner(in), out}
	fmt.Fprintf(out, "%d questions, some in two parts. Enter takes the answer in brackets; Ctrl-D ends without a "+
		"file.\n",
		fields[Fields-1].question)
	for f := range Fields {
		for a[f] == "" && a.Needed(f) {
			if err := p.ask(&a, f, ""); err != nil {
				return "", err
			}
		}
	}
	for {
		text, wrong := Make(a)
		if wrong == nil {
			return text, nil
		}
		fmt.Fprintf(out, "\nThese answers do not go together:\n%s\n", wrong)
		kept := ""
		if text != "" {
			kept = keep
		}
		switch err := p.ask(&a, wrong.Field, kept); {
		case err == errKept:
			return text, nil
		case err != nil:
			return "", err
		}
	}
}

// errKept is that a person keeps the answers as they are.
var errKept = errors.New("kept")

// ask asks for a field until its answer is right by itself. With a word to keep them, the
// answers can stay as they are.
func (p asking) ask(a *Answers, f Field, kept string) error {
	text, picture := a.asked(f)
	fmt.Fprintf(p.out, "\n%s. %s\n   %s\n", f.number(), text, picture)
	choice := strings.Join(fields[f].words, ", ")
	if choice != "" {
		choice += " "
	}
	usual := a[f]
	if usual == "" {
		usual = a.Usual(f)
	}
	for {
		if kept != "" {
			fmt.Fprintf(p.out, "   Or %s: the answers stay, and check will warn of it.\n", kept)
		}
		fmt.Fprintf(p.out, "   %s[%s]: ", choice, usual)
		if !p.lines.Scan() {
			fmt.Fprintln(p.out)
			return errors.Join(ErrEnded, p.lines.Err())
		}
		written := strings.Join(strings.Fields(p.lines.Text()), " ")
		switch {
		case kept != "" && strings.EqualFold(written, kept):
			return errKept
		case written == "":
			written = usual
		}
		next := *a
		next[f] = f.Full(written)
		wrong := next.Wrong(f)
		if wrong == "" {
			*a = next
			return nil
		}
		fmt.Fprintf(p.out, "   ! %s\n", wrong)
	}
}
