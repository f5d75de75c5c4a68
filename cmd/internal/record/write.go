package record

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"strings"
)

// Write writes a report, the same bytes as [JSON] gives: but one element of its lists after the other, so
// that the text of a large job need not be held.
func Write(w io.Writer, k Kept) error {
	out := reportWriter{Writer: bufio.NewWriter(w), numbers: numbersOf(k.Unit())}
	out.encoder = json.NewEncoder(&out.one)
	out.encoder.SetEscapeHTML(false)
	v, t := reflect.ValueOf(k), reflect.TypeFor[Report]()
	between := "{"
	for i := range t.NumField() {
		name, option, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		field := v.FieldByName(t.Field(i).Name)        // the packed list, where there is one
		if option == "omitempty" && field.Len() == 0 { // of lists
			continue
		}
		fmt.Fprintf(out, "%s\n  %q: ", between, name)
		between = ","
		if err := out.field(field); err != nil {
			return err
		}
	}
	out.WriteString("\n}\n")
	return out.Flush() // the first error of all the writes above
}

// reportWriter writes a report's fields.
type reportWriter struct {
	*bufio.Writer
	numbers measures
	one     bytes.Buffer
	encoder *json.Encoder // of one value, which keeps its room
}

func (w *reportWriter) field(v reflect.Value) error {
	l, packed := v.Interface().(interface {
		none() bool
		each(func(reflect.Value) error) error
	})
	switch {
	case packed && l.none():
		_, err := w.WriteString("null")
		return err
	case packed:
		return w.list(l.each)
	case v.Kind() == reflect.Slice && !v.IsNil():
		return w.list(func(do func(reflect.Value) error) error {
			for i := range v.Len() {
				if err := do(v.Index(i)); err != nil {
					return err
				}
			}
			return nil
		})
	}
	return w.value(v, "  ")
}

// list writes the elements that each goes over.
func (w *reportWriter) list(each func(do func(reflect.Value) error) error) error {
	between, end := "[", "[]"
	err := each(func(one reflect.Value) error {
		w.WriteString(between + "\n    ")
		between, end = ",", "\n  ]"
		return w.value(one, "    ")
	})
	if err == nil {
		_, err = w.WriteString(end)
	}
	return err
}

// value writes one with its lengths in the report's unit, set in so far.
func (w *reportWriter) value(v reflect.Value, in string) error {
	to := reflect.New(v.Type()).Elem()
	w.numbers.copied(to, v)
	w.one.Reset()
	w.encoder.SetIndent(in, "  ")
	if err := w.encoder.Encode(to.Interface()); err != nil {
		return err
	}
	_, err := w.Write(bytes.TrimSuffix(w.one.Bytes(), []byte("\n")))
	return err
}
