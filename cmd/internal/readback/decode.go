package readback

import (
	"cmp"
	"encoding/json"
	"errors"
	"reflect"
	"strings"
)

// decode reads JSON.
func (r *reading) decode(text string, to any) {
	if err := json.Unmarshal([]byte(text), to); err != nil {
		r.fail("%v", err)
	}
}

// decodeLists reads an object into a structure, of its lists one element after the other, so that
// no more of the text than that is held. What the structure does not have is passed over.
func decodeLists(d *json.Decoder, to reflect.Value) error {
	if t, err := d.Token(); err != nil || t != json.Delim('{') {
		return cmp.Or(err, errNoObject)
	}
	for d.More() {
		key, err := d.Token()
		if err != nil {
			return err
		}
		field := to.FieldByNameFunc(func(name string) bool {
			f, _ := to.Type().FieldByName(name)
			return strings.EqualFold(cmp.Or(f.Tag.Get("json"), name), key.(string))
		})
		if !field.IsValid() || field.Kind() == reflect.Slice || field.Kind() == reflect.Func {
			err = eachElement(d, field)
		} else {
			err = d.Decode(field.Addr().Interface())
		}
		if err != nil {
			return err
		}
	}
	_, err := d.Token()
	return err
}

var errNoObject = errors.New("it is no object")

// eachElement appends the elements of a list to a slice, or calls a function with each; without either it
// passes over any value.
func eachElement(d *json.Decoder, to reflect.Value) error {
	t, err := d.Token()
	if begins, _ := t.(json.Delim); err != nil || begins == 0 {
		return err // null, or a value that is passed over
	}
	for depth := 1; depth > 0; {
		if to.IsValid() && d.More() {
			if err := oneElement(d, to); err != nil {
				return err
			}
			continue
		}
		t, err := d.Token()
		if err != nil {
			return err
		}
		switch t {
		case json.Delim('['), json.Delim('{'):
			depth++
		case json.Delim(']'), json.Delim('}'):
			depth--
		}
	}
	return nil
}

// oneElement reads the next element of a list for [eachElement].
func oneElement(d *json.Decoder, to reflect.Value) error {
	if to.Kind() == reflect.Func {
		one := reflect.New(to.Type().In(0))
		err := d.Decode(one.Interface())
		if err == nil {
			to.Call([]reflect.Value{one.Elem()})
		}
		return err
	}
	one := reflect.New(to.Type().Elem())
	err := d.Decode(one.Interface())
	to.Set(reflect.Append(to, one.Elem()))
	return err
}
