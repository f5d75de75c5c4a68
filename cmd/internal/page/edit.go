package page

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math"
	"net/http"
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
)

// edited is an edit from the form, and what the tab shows.
type edited struct {
	Text string `json:"text"`
	job.Step
	Then []job.Step `json:"then"` // made after it, as one edit
	View view       `json:"view"`
}

// maxSteps is more than any button of the form makes as one edit.
const maxSteps = 50

// edit writes one edit into a text, and answers with the text and what it comes out as.
// The file is not touched.
func (p *Page) edit(w http.ResponseWriter, r *http.Request) {
	var e edited
	if !read(w, r, &e) {
		return
	}
	if len(e.Then) >= maxSteps {
		refuse(w, http.StatusUnprocessableEntity, fmt.Sprintf("an edit has at most %d steps", maxSteps))
		return
	}
	done, err := p.work.out(r.Context(), task{e.Text, append([]job.Step{e.Step}, e.Then...), e.View.soon()})
	if wrong := (unmade{}); errors.As(err, &wrong) {
		refuse(w, http.StatusUnprocessableEntity, wrong.Error())
		return
	}
	p.show(w, r, done, err, e.View)
}

// unmade is why a step cannot be made.
type unmade struct{ error }

// edited makes steps of a text, one after the other.
func (w *work) edited(ctx context.Context, text string, steps []job.Step) (string, error) {
	now := []byte(text)
	for _, s := range steps {
		if err := ctx.Err(); err != nil { // nobody waits for it any more
			return "", err
		}
		next, err := w.apply(now, s)
		if err != nil {
			return "", unmade{err}
		}
		now = next
	}
	return string(now), nil
}

// apply makes a step.
func (w *work) apply(text []byte, s job.Step) ([]byte, error) {
	texts, err := s.Texts(text, job.Files(w.folder.beside))
	if err != nil {
		return nil, err
	}
	if !s.Tried() {
		return texts[0], nil
	}
	return w.sound(text, texts)
}

// sound chooses of texts the first that has no more errors than the one before. Where there is
// none, the error says what is wrong with the first of them; of a job that has errors in any case
// it is the one with the fewest.
func (w *work) sound(before []byte, texts [][]byte) (best []byte, err error) {
	known, least := w.errors(before), math.MaxInt
	for _, text := range texts {
		now := w.errors(text)
		if len(now) <= len(known) {
			return text, nil
		}
		if err == nil {
			err = said(now, known)
		}
		if len(now) < least {
			best, least = text, len(now)
		}
	}
	if len(known) > 0 {
		return best, nil
	}
	return nil, err
}

// said is the first problem that was not known.
func said(now, known job.Problems) error {
	for _, p := range now {
		if !slices.ContainsFunc(known, func(k job.Problem) bool { return k.Message == p.Message }) {
			hint := strings.TrimPrefix(strings.TrimPrefix(p.Hint, "delete it"), ", or ") // it is not there
			return errors.New(strings.TrimSuffix("it is not added: "+p.Message+"; "+hint, "; "))
		}
	}
	return errors.New(now[0].Message)
}

// errors are the mistakes of a text.
func (w *work) errors(text []byte) (list job.Problems) {
	for _, p := range load.Read("", bytes.NewReader(text), w.folder.beside).Problems {
		if p.IsError() {
			list = append(list, p)
		}
	}
	return list
}
