package page

import (
	"errors"
	"fmt"
	"strconv"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
)

// arranged makes a step that changes no single value: a name with all that refer to it, a place, or
// the unit of the whole file.
func arranged(text []byte, s step, files job.Option) ([]byte, error) {
	switch s.Do {
	case "rename":
		return job.Rename(text, s.Value, s.Path...)
	case "move":
		to, err := strconv.Atoi(s.Value)
		if err != nil {
			return nil, errors.New("a place is a number, counted from 0")
		}
		return job.Move(text, to, s.Path...)
	case "convert":
		to, err := geom.ParseUnit(s.Value)
		if err != nil {
			return nil, err
		}
		return job.Convert(text, to, files)
	}
	return nil, fmt.Errorf("there is no edit %q", s.Do)
}
