package shop

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"html/template"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/record"
	"drawerwright/preview/viewer"
)

//go:embed page.html main.html style.css script.js
var sources embed.FS

func source(name string) string {
	data, err := sources.ReadFile(name)
	if err != nil {
		panic(err) // it is part of the program
	}
	return string(data)
}

// The page, and what it says, which is well-formed XML besides, so that the proof reads it with
// the library's reader.
var (
	whole = template.Must(template.New("page").Parse(source("page.html")))
	said  = template.Must(template.New("main").Parse(source("main.html")))
)

// codeBytes of a hash tell the states of all jobs of a phone apart.
const codeBytes = 8

// Page is the page of a batch and its report. Scripts and styles run by their fingerprints alone,
// and text of a job is never markup.
func Page(b batch.Batch, r record.Kept) ([]byte, error) {
	var inner, out bytes.Buffer
	c := contentOf(b, r)
	if err := said.Execute(&inner, c); err != nil {
		return nil, fmt.Errorf("the page for the shop: %w", err)
	}
	script, style := source("script.js"), source("style.css")
	sum := sha256.Sum256(inner.Bytes())
	err := whole.Execute(&out, map[string]any{"Title": c.Title, "Code": hex.EncodeToString(sum[:codeBytes]),
		"Main": template.HTML(inner.String()), "Script": template.JS(script), "Style": template.CSS(style),
		"ScriptHash": viewer.Fingerprint(script), "StyleHash": viewer.Fingerprint(style)})
	return out.Bytes(), err
}
