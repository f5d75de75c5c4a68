package job

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"drawerwright/geom"
)

// Key describes an entry of the job file to a form.
type Key struct {
	Name     string `json:"name"`
	Title    string `json:"title"` // what a shop calls it
	Kind     string `json:"kind"`  // of kinds
	Required bool   `json:"required,omitempty"`
	Told
	Inches *Told    `json:"inches,omitempty"` // the same in a job in inches, where it differs
	Words  []string `json:"words,omitempty"`  // all that it takes; of a reference what is built in
	In     string   `json:"in,omitempty"`     // of a drawer: only where it has its size in that way
	Noun   string   `json:"noun,omitempty"`   // what a list or a mapping of names lists
	First  int      `json:"first,omitempty"`  // its place among what is asked for first; 0 where it is folded away
	Keys   []Key    `json:"keys,omitempty"`
}

// kinds are the names of forms.
var kinds = map[form]string{formTitle: "text", formName: "text", formStock: "stock", formRef: "reference", formPath: "text", formWord: "word", formLength: "length",
	formReadings: "readings", formLengths: "lengths", formCells: "lengths", formEdges: "lengths",
	formSize: "size", formCount: "count", formPrice: "price", formMeasure: "measure",
	formSection: "section", formNamed: "named", formWords: "words", formPattern: "text", formList: "list"}

// Keys are all entries of a job file, from the tables that [Read] follows.
func Keys() []Key { return described(jobKeys, "", nil) }

func described(keys []key, section string, path []string) []Key {
	list := make([]Key, len(keys))
	for i := range keys {
		k := &keys[i]
		within := append(path[:len(path):len(path)], k.name)
		below := within
		if k.form == formNamed || k.form == formList {
			below = append(within, "0") // the first of them, or any
		}
		list[i] = Key{Name: k.name, Title: titleOf(section, k.name), Kind: kinds[k.form], Required: k.required,
			Told: k.told(geom.Millimeter, within), Inches: k.inches(within), Words: k.words, In: sizedBy(section, k.name),
			Noun: k.noun, First: firstIn(section, k.name, i), Keys: described(k.keys, k.name, below)}
	}
	return list
}

// Enter writes what a person typed into the field of a form into the text of a job
// file, at the path of an entry that the job file has: lists without their brackets,
// text without quotes. Nothing typed removes the entry. A number after the path of a size is
// one of its sides.
func Enter(file []byte, typed string, path ...string) ([]byte, error) {
	typed = strings.TrimSpace(typed)
	k, above := keyAt(path)
	if size, side := sideAt(path); size != nil {
		return enterSide(file, typed, side, size...)
	}
	if k == nil {
		return nil, fmt.Errorf("the job file has no entry %s", quote(strings.Join(path, " > ")))
	}
	value, err := k.written(typed)
	if err != nil { // of a list or a section too, that nothing typed would remove with all it holds
		return nil, err
	}
	if typed == "" {
		return Remove(file, path...)
	}
	if above != nil && above.form == formSection && len(above.words) > 0 { // one of its words may stand there
		up := path[:len(path)-1]
		if l, err := readLayout(file); err == nil {
			if n, missing, err := l.follow(up); err == nil && len(missing) == 0 && n.kind == scalar {
				return Patch(file, Edit{Path: up, Value: "{" + k.name + ": " + value + "}"})
			}
		}
	}
	return Patch(file, Edit{Path: path, Value: value})
}

// keyAt is the key at a path of names and numbers, and the one of the section around it.
func keyAt(path []string) (k, above *key) {
	keys := jobKeys
	for i := 0; i < len(path); i++ {
		at := slices.IndexFunc(keys, func(k key) bool { return k.name == path[i] })
		if at < 0 {
			return nil, nil
		}
		above, k = k, &keys[at]
		keys = k.keys
		if (k.form == formNamed || k.form == formList) && i+1 < len(path) {
			if i++; i+1 == len(path) {
				return nil, nil // the thing itself is no field
			}
		}
	}
	return k, above
}

// asTyped is text that needs no quotes, in brackets neither.
var asTyped = regexp.MustCompile(`^[\pL\pN+.-][\pL\pN ./_'"%×+²-]*$`)

// written is what was typed as a value of YAML on one line.
func (k *key) written(typed string) (string, error) {
	switch k.form {
	case formSection, formNamed, formList:
		if k.form == formSection && len(k.words) > 0 {
			return oneScalar(typed), nil
		}
		return "", fmt.Errorf("%s has fields of its own", k.name)
	case formReadings, formLengths, formCells, formEdges, formWords, formSize:
		inside, bracketed := strings.CutPrefix(typed, "[")
		if bracketed {
			var closed bool
			if inside, closed = strings.CutSuffix(inside, "]"); !closed {
				return "", errors.New("the bracket is not closed")
			}
		}
		parts := strings.Split(strings.TrimRight(inside, ", "), ",")
		if k.form == formReadings {
			if parts = SplitReadings(inside); len(parts) == 1 && !bracketed {
				return oneScalar(parts[0]), nil
			}
		}
		if len(parts) == 1 && !bracketed && k.form != formLengths && k.form != formWords {
			return oneScalar(typed), nil
		}
		for i, p := range parts {
			parts[i] = oneScalar(strings.TrimSpace(p))
		}
		return "[" + strings.Join(parts, ", ") + "]", nil
	}
	return oneScalar(typed), nil
}

// oneScalar writes a text so that it is read as that text.
func oneScalar(text string) string {
	if asTyped.MatchString(text) {
		if v, err := readValue(text); err == nil && v.kind == scalar && v.text == text {
			return text
		}
	}
	return `"` + escapes[`"`].Replace(text) + `"`
}
