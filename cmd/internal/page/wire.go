package page

import (
	"encoding/json"
	"errors"
	"net/http"

	"drawerwright/cmd/internal/record"
)

// read takes the JSON of a request, or answers that there is none.
func read(w http.ResponseWriter, r *http.Request, to any) bool {
	d := json.NewDecoder(r.Body)
	d.DisallowUnknownFields()
	err := d.Decode(to)
	if err == nil && d.More() {
		err = errors.New("more follows")
	}
	var large *http.MaxBytesError
	switch {
	case err == nil:
		return true
	case errors.As(err, &large):
		refuse(w, http.StatusRequestEntityTooLarge, "the request is too large")
	default:
		refuse(w, http.StatusBadRequest, "the request cannot be read")
	}
	return false
}

// reply answers with JSON, in the unit that the value says.
func reply(w http.ResponseWriter, code int, v any) {
	var data []byte
	v, err := record.InUnits(v)
	if err == nil {
		data, err = json.Marshal(v)
	}
	if err != nil {
		code, data = http.StatusInternalServerError, []byte(`{"error":"the answer cannot be written"}`)
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(code)
	w.Write(data) // a browser that has gone needs no answer
}
