package outside

import (
	"path/filepath"
	"testing"
)

// TestLinesOfPacket: on a packet that a gray printer of 200 dots an inch prints, every straight line of 5 mm and more
// stands: where no area is laid over it, nine tenths of it have over half of the ink.
func TestLinesOfPacket(t *testing.T) {
	t.Parallel()
	const least = 0.55 // of the ink: 1.4 dots of 0.18 mm may lie on two, three quarters on one of them at least
	packet := func(sample string) string {
		dir, _ := build(t, textOf(t, "../../samples/"+sample+".yaml"))
		return filepath.Join(dir, "packet.pdf")
	}
	type pen struct {
		Width, Gray float64
		Lines       int
		Lightest    float64
		Where       string
	}
	faint := func(p pen) bool { return 255-p.Lightest < least*255*(1-p.Gray) }
	bench, other := packet("bench-drawers"), packet("hand-cut")
	followed := 0
	for _, p := range lines[pen](t, "", python, "pdf_lines.py", bench) {
		followed += p.Lines
		if faint(p) {
			t.Errorf("a line of %g mm and gray %g is no darker than %g: %s", p.Width, p.Gray, p.Lightest, p.Where)
		}
	}
	if followed < 1000 {
		t.Errorf("only %d lines", followed)
	}
	missed := 0
	for _, p := range lines[pen](t, "", python, "pdf_lines.py", bench, other) {
		if faint(p) {
			missed++
		}
	}
	if missed < 4 {
		t.Errorf("on other pages the lines of %d pens alone are missed", missed)
	}
}
