package page

import (
	"fmt"
	"net/http"

	"drawerwright/cmd/internal/job"
)

// edited is an edit from the form, and what the tab shows.
type edited struct {
	Text  string   `json:"text"`
	Do    string   `json:"do"` // enter, remove, begin or copy
	Path  []string `json:"path"`
	Value string   `json:"value"` // what was typed, or the name of what is new
	View  view     `json:"view"`
}

// edit writes one edit into a text, and answers with the text and what it comes out as.
// The file is not touched.
func (p *Page) edit(w http.ResponseWriter, r *http.Request) {
	var asked edited
	if !read(w, r, &asked) {
		return
	}
	text, err := asked.apply()
	if err != nil {
		refuse(w, http.StatusUnprocessableEntity, err.Error())
		return
	}
	p.show(w, r, string(text), asked.View)
}

func (e edited) apply() ([]byte, error) {
	text := []byte(e.Text)
	switch e.Do {
	case "enter":
		return job.Enter(text, e.Value, e.Path...)
	case "remove":
		return job.Remove(text, e.Path...)
	case "begin":
		return job.Begin(text, e.Value, e.Path...)
	case "copy":
		return job.Copy(text, e.Value, e.Path...)
	}
	return nil, fmt.Errorf("there is no edit %q", e.Do)
}
