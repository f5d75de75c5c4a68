package page

import (
	"bytes"
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
	var asked edited
	if !read(w, r, &asked) {
		return
	}
	if len(asked.Then) >= maxSteps {
		refuse(w, http.StatusUnprocessableEntity, fmt.Sprintf("an edit has at most %d steps", maxSteps))
		return
	}
	text, err := []byte(asked.Text), error(nil)
	for _, s := range append([]job.Step{asked.Step}, asked.Then...) {
		if r.Context().Err() != nil { // nobody waits for it any more
			refuse(w, http.StatusServiceUnavailable, "stopped")
			return
		}
		if text, err = p.work.apply(text, s); err != nil {
			refuse(w, http.StatusUnprocessableEntity, err.Error())
			return
		}
	}
	p.show(w, r, string(text), asked.View)
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
