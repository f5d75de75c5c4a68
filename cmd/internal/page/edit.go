package page

import (
	"bytes"
	"errors"
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
	step
	Then []step `json:"then"` // made after it, as one edit
	View view   `json:"view"`
}

// step is one change of a text.
type step struct {
	Do    string   `json:"do"` // enter, remove, copy, respell, begin, make, size, rename, move or convert
	Path  []string `json:"path"`
	Value string   `json:"value"` // what was typed, a name, size and opening, a place from 0, or a unit
}

// edit writes one edit into a text, and answers with the text and what it comes out as.
// The file is not touched.
func (p *Page) edit(w http.ResponseWriter, r *http.Request) {
	var asked edited
	if !read(w, r, &asked) {
		return
	}
	text, err := []byte(asked.Text), error(nil)
	for _, s := range append([]step{asked.step}, asked.Then...) {
		if text, err = p.work.apply(text, s); err != nil {
			refuse(w, http.StatusUnprocessableEntity, err.Error())
			return
		}
	}
	p.show(w, r, string(text), asked.View)
}

func (w *work) apply(text []byte, s step) ([]byte, error) {
	files := job.Files(w.folder.beside)
	switch s.Do {
	case "enter":
		return job.Enter(text, s.Value, s.Path...)
	case "remove":
		return job.Remove(text, s.Path...)
	case "copy":
		return job.Copy(text, s.Value, s.Path...)
	case "respell":
		return job.Respell(text, s.Value, s.Path...)
	case "begin":
		return w.sound(text)(job.Starts(text, files, s.Value, s.Path...))
	case "make":
		return w.sound(text)(job.Made(text, files, s.Value, s.Path...))
	case "size":
		return w.sound(text)(job.Sized(text, files, s.Value, s.Path...))
	}
	return arranged(text, s, files)
}

// sound chooses of texts the first that has no more errors than the one before. Where there is
// none, the error says what is wrong with the first of them; of a job that has errors in any case
// it is the one with the fewest.
func (w *work) sound(before []byte) func(texts [][]byte, err error) ([]byte, error) {
	return func(texts [][]byte, err error) ([]byte, error) {
		if err != nil {
			return nil, err
		}
		known := w.errors(before)
		var best []byte
		least := math.MaxInt
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
