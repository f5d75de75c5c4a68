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
func Write(w io.Writer, r Report) error {
	out := reportWriter{Writer: bufio.NewWriter(w), numbers: numbersOf(r.Unit())}
	out.encoder = json.NewEncoder(&out.one)
	out.encoder.SetEscapeHTML(false)
	v := reflect.ValueOf(r)
	between := "{"
	for i := range v.NumField() {
		name, option, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
		field := v.Field(i)
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
	if v.Kind() != reflect.Slice || v.Len() == 0 {
		return w.value(v, "  ")
	}
	between := "["
	for i := range v.Len() {
		w.WriteString(between + "\n    ")
		between = ","
		if err := w.value(v.Index(i), "    "); err != nil {
			return err
		}
	}
	_, err := w.WriteString("\n  ]")
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
