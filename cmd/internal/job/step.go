package job

import (
	"errors"
	"fmt"
	"slices"
	"strconv"

	"drawerwright/geom"
)

// Step is one change of the text of a job file, as a form makes it.
type Step struct {
	Do   string   `json:"do"` // of those below
	Path []string `json:"path"`
	// Value is what was typed, YAML to write, a name, size or opening, a place from 0, or a unit.
	Value string `json:"value"`
}

// What steps do.
const (
	DoEnter   = "enter"   // what was typed into a field
	DoWrite   = "write"   // YAML, as [Patch] takes it
	DoRemove  = "remove"  // an entry or an item
	DoCopy    = "copy"    // the same
	DoRespell = "respell" // a key
	DoBegin   = "begin"   // what is not there yet
	DoMake    = "make"    // what a field names
	DoSize    = "size"    // the way in which a drawer has its size
	DoRename  = "rename"  // a thing, with all that refer to it
	DoMove    = "move"    // an item to another place of its list
	DoConvert = "convert" // the whole file to the other unit
)

// Texts are what a step may make of a file, in the order in which it is to be tried: the first that
// can be built is meant. Most steps make one text.
func (s Step) Texts(file []byte, files Option) ([][]byte, error) {
	one := func(text []byte, err error) ([][]byte, error) { return [][]byte{text}, err }
	switch s.Do {
	case DoEnter:
		return one(Enter(file, s.Value, s.Path...))
	case DoWrite:
		return one(Patch(file, Edit{Path: s.Path, Value: s.Value}))
	case DoRemove:
		return one(Remove(file, s.Path...))
	case DoCopy:
		return one(Copy(file, s.Value, s.Path...))
	case DoRespell:
		return one(Respell(file, s.Value, s.Path...))
	case DoBegin:
		return Starts(file, files, s.Value, s.Path...)
	case DoMake:
		return Made(file, files, s.Value, s.Path...)
	case DoSize:
		return Sized(file, files, s.Value, s.Path...)
	}
	return one(s.arranged(file, files))
}

// arranged makes a step that changes no single value: a name with all that refer to it, a place, or
// the unit of the whole file.
func (s Step) arranged(file []byte, files Option) ([]byte, error) {
	switch s.Do {
	case DoRename:
		return Rename(file, s.Value, s.Path...)
	case DoMove:
		to, err := strconv.Atoi(s.Value)
		if err != nil {
			return nil, errors.New("a place is a number, counted from 0")
		}
		return Move(file, to, s.Path...)
	case DoConvert:
		to, err := geom.ParseUnit(s.Value)
		if err != nil {
			return nil, err
		}
		return Convert(file, to, files)
	}
	return nil, fmt.Errorf("there is no edit %q", s.Do)
}

// same reports whether two steps do the same.
func (s Step) same(o Step) bool {
	return s.Do == o.Do && s.Value == o.Value && slices.Equal(s.Path, o.Path)
}

// Tried reports whether the texts of a step are to be tried, as they are chosen for a shop.
func (s Step) Tried() bool { return s.Do == DoBegin || s.Do == DoMake || s.Do == DoSize }
