package job

import (
	"bytes"
	"encoding/json"
	"regexp"
	"strings"
)

// Schema is a JSON Schema (draft 2020-12) of the job file, from the same
// tables of keys that [Read] follows, so that editors complete and check it.
// It is the same at every call. It takes everything that Read takes; Read
// refuses more, since a schema knows nothing of units.
func Schema() []byte {
	root := schemaOf(&key{form: formSection, keys: jobKeys})
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["title"] = "Job file of drawerwright"
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(root); err != nil {
		panic(err) // maps of strings, numbers and lists always encode
	}
	return b.Bytes()
}

// object is a JSON object; its keys are written in alphabetical order.
type object map[string]any

// schemaOf describes the value of a key.
func schemaOf(k *key) object {
	switch k.form {
	case formTitle:
		return object{"type": plain, "minLength": 1, "maxLength": maxTitle}
	case formName, formStock, formRef:
		return object{"type": plain, "minLength": 1, "maxLength": maxName}
	case formPath:
		return object{"type": "string", "minLength": 1, "maxLength": maxPath}
	case formWord:
		return wordSchema(k)
	case formLength:
		return lengthSchema(k)
	case formReadings:
		return object{"anyOf": []object{lengthSchema(k), listSchema(lengthSchema(k), 1, maxReadings)}}
	case formLengths:
		return listSchema(lengthSchema(k), 1, k.most)
	case formCells:
		count := numberSchema("integer", countText, &key{min: 1, max: float64(k.most)})
		cell := lengthSchema(k)
		if len(k.words) > 0 {
			cell = object{"anyOf": []object{cell, wordSchema(k)}}
		}
		return object{"anyOf": []object{count, listSchema(cell, 1, k.most)}}
	case formEdges:
		return object{"anyOf": []object{lengthSchema(k), listSchema(lengthSchema(k), len(k.sides), len(k.sides))}}
	case formSize:
		size := object{"type": "string", "pattern": `[xX×]`}
		return object{"anyOf": []object{size, listSchema(lengthSchema(k), len(k.sides), len(k.sides))}}
	case formCount:
		return numberSchema("integer", countText, k)
	case formPrice:
		return numberSchema("number", priceText, k)
	case formMeasure:
		return measureSchema(k)
	case formNamed:
		return object{"type": "object", "additionalProperties": sectionSchema(k.keys), "minProperties": 1, "maxProperties": k.most,
			"propertyNames": object{"minLength": 1, "maxLength": maxName}}
	case formWords:
		return object{"type": "array", "items": object{"enum": k.words}, "uniqueItems": true}
	case formPattern:
		return object{"type": "string", "minLength": 1, "maxLength": maxPattern}
	case formList:
		item := sectionSchema(k.keys)
		if len(k.oneOf) > 0 {
			ways := []object{}
			for _, name := range k.oneOf {
				ways = append(ways, object{"required": []string{name}})
			}
			item["oneOf"] = ways
		}
		return listSchema(item, 1, k.most)
	default:
		if len(k.words) > 0 {
			return object{"anyOf": []object{wordSchema(k), sectionSchema(k.keys)}}
		}
		return sectionSchema(k.keys)
	}
}

// wordSchema lists words; readers of YAML 1.1 take yes and no for true and false.
func wordSchema(k *key) object {
	words := []any{}
	for _, w := range k.words {
		words = append(words, w)
		switch w {
		case "yes":
			words = append(words, true)
		case "no":
			words = append(words, false)
		}
	}
	return object{"enum": words}
}

// measureSchema describes a number with a unit, and without where it needs none;
// the range is that of the first unit.
func measureSchema(k *key) object {
	s := object{"type": "string", "pattern": measureText.String()}
	if k.bare() {
		return object{"anyOf": []object{s, {"type": "number", "minimum": k.min, "maximum": k.max}}}
	}
	return s
}

// plain are the types that YAML gives to text without quotes.
var plain = []string{"string", "number", "boolean", "null"}

// numberSchema describes a number, which may stand in quotes.
func numberSchema(kind string, form *regexp.Regexp, k *key) object {
	return object{"type": []string{kind, "string"}, "minimum": k.min, "maximum": k.max, "pattern": form.String()}
}

func lengthSchema(k *key) object {
	s := object{"type": []string{"number", "string"}, "minLength": 1}
	switch {
	case k.min > 0:
		s["exclusiveMinimum"] = 0
	case k.min == 0:
		s["minimum"] = 0
	}
	return s
}

func listSchema(items object, least, most int) object {
	return object{"type": "array", "items": items, "minItems": least, "maxItems": most}
}

func sectionSchema(keys []key) object {
	properties, required := object{}, []string{}
	for i := range keys {
		k := &keys[i]
		s := schemaOf(k)
		s["description"] = k.describe()
		if k.fallback != "" {
			s["default"] = k.defaultValue()
		}
		properties[k.name] = s
		if k.required {
			required = append(required, k.name)
		}
	}
	return object{"type": "object", "properties": properties, "required": required, "additionalProperties": false}
}

// describe says everything about a key in a few sentences.
func (k *key) describe() string { return k.said(k.span(), k.fallbacks()) }

// said says everything about a key, with its range and its fallback in given words.
func (k *key) said(span, fallback string) string {
	parts := []string{k.doc}
	switch k.form {
	case formLength, formReadings, formLengths, formCells, formEdges, formSize:
		if k.form == formEdges {
			parts = append(parts, "Write one length, or a list of "+strings.Join(k.sides, ", "))
		} else if len(k.sides) > 0 {
			parts = append(parts, "Write "+strings.Join(k.sides, " x "))
		}
		parts = append(parts, "From "+span)
	case formMeasure:
		parts = append(parts, "From "+span)
		if units := k.units(); len(units) > 0 {
			parts = append(parts, "Write "+alternatives(units)+" after the number")
		}
	}
	if fallback != "" {
		parts = append(parts, "Default: "+fallback)
	}
	if k.without != "" {
		parts = append(parts, "When left out: "+k.without)
	}
	return strings.Join(parts, ". ") + "."
}

// defaultValue is the fallback in the type that the schema gives the key.
func (k *key) defaultValue() any {
	if k.form == formCount {
		return json.Number(k.fallback)
	}
	return k.fallback
}
