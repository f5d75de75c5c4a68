package prove_test

import (
	"strings"
	"testing"
)

// familyJob has parts that one drawing of the packet shows, with letters for what they differ in.
func familyJob(t testing.TB, version string) string {
	return strings.Replace(sample(t, "bench-drawers.yaml"), "\ndrawers:", "\ndxf: {version: "+version+"}\ndrawers:", 1)
}

// ofBottoms and ofSides are how drawings of several parts say what these are of.
const (
	ofBottoms = "Of hardboard, 5.91 mm thick."
	ofSides   = "Of birch, 12.2 mm thick; the grain runs along the length."
)

var plantedFamily = map[string]planted{
	"a figure of a letter":        {file: packetPDF, code: "said", bytes: inPages("441.70", "441.80")},
	"a figure of the second part": {file: packetPDF, code: "said", bytes: inPages("279.70", "279.60")},
	"another letter":              {file: packetPDF, code: "said", bytes: inPages("L1 to L", "L1 to W")},
	"a letter without a figure":   {file: packetPDF, code: "said", bytes: inPages("L1 to L", "L1 to L2")},
	"a part in two drawings": {file: packetPDF, code: "said",
		bytes: inPages("bench-wide-bottom", "bench-wide-side")},
	"the stock of several parts": {file: packetPDF, code: "said",
		bytes: inPages(ofBottoms, "Of plywood, 5.91 mm thick.")},
	"the thickness of several": {file: packetPDF, code: "said",
		bytes: inPages(ofBottoms, "Of hardboard, 5.81 mm thick.")},
	"parts without their row": {file: packetPDF, code: "unreadable", bytes: nowhere(inPages(ofSides, "Birch."))},
}
