package words

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestCell: no cell begins as a formula does, and each gives its name back.
func TestCell(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.StringMatching(`['=+\-@\t\ra1]{0,4}`).Draw(t, "name")
		cell := Cell(name)
		if cell != "" && strings.Contains("=+-@\t\r", cell[:1]) {
			t.Fatalf("%q is a formula", cell)
		}
		if cell != name && OfCell(cell) != name {
			t.Fatalf("%q gives %q back, not %q", cell, OfCell(cell), name)
		}
		if plain := strings.TrimLeft(name, "'=+-@\t\r") == name; plain && cell != name {
			t.Fatalf("%q needs no %q", name, cell)
		}
	})
}
