package viewer

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"strings"

	"drawerwright/preview/scene"
)

// Picture is what is shown of a box where the viewer cannot be.
type Picture struct {
	SVG  func() ([]byte, error) // asked for while the page has room
	File string                 // where it is, relative to the page
}

// maxPictures is how many bytes of pictures a page holds; it names the files of others.
const maxPictures = 400 << 10

// scripts are the files of the program, in the order in which they need each other.
var scripts = []string{"vectors", "lengths", "elements", "solids", "camera", "state", "pick", "painter", "taken",
	"letters", "marks", "theme", "input", "setups", "assembly", "measured", "tools", "controls", "viewer"}

//go:embed script style.css page.css page.html boot.js
var sources embed.FS

func source(name string) string {
	data, err := sources.ReadFile(name)
	if err != nil {
		panic(err) // it is part of the program
	}
	return string(data)
}

// Script is the whole program. It sets mountViewer and does nothing else.
func Script() string {
	var b strings.Builder
	b.WriteString("(() => {\n'use strict';\n")
	for _, name := range scripts {
		b.WriteString(source("script/" + name + ".js"))
	}
	b.WriteString("globalThis.mountViewer = mountViewer;\n})();\n")
	return b.String()
}

// Style is the style sheet.
func Style() string { return source("style.css") }

// sceneElement is what the scene is written behind. No text of a job has its signs.
const sceneElement = `<script type="application/json" id="scene">`

var page = template.Must(template.New("page").Parse(source("page.html")))

// Write writes the page of a scene, with a picture of each of its boxes. The page asks
// for nothing from anywhere, and its policy lets it: scripts and styles run by their
// fingerprints alone.
func Write(w io.Writer, s scene.Scene, pictures []Picture) error {
	type figure struct {
		SVG        template.HTML
		Name, File string
	}
	var figures []figure
	room := maxPictures
	for i, p := range pictures {
		f := figure{Name: s.Boxes[i].Name, File: p.File}
		if room >= 0 {
			svg, err := p.SVG()
			if err != nil {
				return err
			}
			if room -= len(svg); room >= 0 {
				f.SVG = template.HTML(svg)
			}
		}
		figures = append(figures, f)
	}
	script, style := Script()+source("boot.js"), Style()+source("page.css")
	var around bytes.Buffer
	if err := page.Execute(&around, map[string]any{"Title": s.Title, "Figures": figures,
		"Script": template.JS(script), "Style": template.CSS(style), "ScriptHash": Fingerprint(script), "StyleHash": Fingerprint(style)}); err != nil {
		return err
	}
	before, after, _ := strings.Cut(around.String(), sceneElement)
	out := bufio.NewWriterSize(w, 1<<16)
	out.WriteString(before + sceneElement) // whose error Flush gives
	if err := writeData(out, s); err != nil {
		return err
	}
	out.WriteString(after)
	return out.Flush()
}

// Fingerprint is the hash of a text as Content Security Policy has it.
func Fingerprint(text string) string {
	sum := sha256.Sum256([]byte(text))
	return fmt.Sprintf("sha256-%s", base64.StdEncoding.EncodeToString(sum[:]))
}
