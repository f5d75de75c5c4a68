package batch

import (
	"errors"
	"fmt"
	"path"
	"strings"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/job"
	"drawerwright/export/dxf"
	"drawerwright/export/router"
	"drawerwright/geom"
)

// shareLayers finds the names of layers that cuts of several bits would share, in any
// drawing of a part or a sheet: a layer has the same bit in all of them; and shorter words for bits where the
// version takes no longer names.
func (b *Batch) shareLayers() {
	var sharing router.Sharing
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			sharing.Add(p.Drawn(b.Router), b.DXF)
		}
	}
	for _, sheet := range b.turnedSheets() {
		sharing.Add(sheet.Whole(), b.DXF)
	}
	b.DXF.Shared, b.DXF.Words = sharing.Names(), sharing.Words(b.DXF)
}

// draw works out the drawings of the parts of a drawer.
func (b Batch) draw(d *Drawer) []geom.Diagnosis {
	var problems []geom.Diagnosis
	told := make(map[string]bool)
	for i := range d.Parts {
		p := &d.Parts[i]
		for _, face := range p.Work().Faces {
			layers, err := router.Layers(p.Drawn(b.Router), face, b.DXF)
			if err != nil {
				if !told[err.Error()] {
					told[err.Error()] = true
					problems = append(problems, geom.Diagnosis{
						Code: "layers", Level: geom.LevelError, Subject: geom.Subject{Setting: "layers", Part: string(p.Role)},
						Fact: geom.Sentencef("%s: %s", p.Role, err), Ask: geom.Sentencef("%s", LayersHint(err)),
					})
				}
				continue
			}
			drawing := Drawing{Face: face, File: b.names.name(*p, face)}
			longest := len(drawing.File)
			for _, run := range b.DXF.Runs(drawing.File, layers, p.Bits) {
				longest = max(longest, len(run.File))
			}
			if n := longest - len(path.Dir(drawing.File)+"/"); n > maxName && !told["file name"] {
				told["file name"] = true
				problems = append(problems, geom.Diagnosis{
					Code: "file-name", Level: geom.LevelError, Subject: geom.Subject{Setting: "files", Part: string(p.Role)},
					Fact:     geom.Sentencef("%s: its drawing's name would have %d characters; file systems take %d with some room", p.Role, n, maxName),
					Measured: geom.Count(n), Limit: geom.Count(maxName),
					Ask: geom.Sentencef("shorten the job's title or the pattern of file names"),
				})
			}
			p.Drawings = append(p.Drawings, drawing)
		}
	}
	return problems
}

// Layers are those of a drawing of a part, which [Make] has found sound. They are made anew each time: those of many
// drawers would be the most in memory.
func (b Batch) Layers(p Part, d Drawing) []router.Layer {
	list, _ := router.Layers(p.Drawn(b.Router), d.Face, b.DXF)
	return list
}

// LayersHint says what to change about names of layers that cannot be had.
func LayersHint(err error) string {
	if errors.Is(err, dxf.ErrLayerNameLong) {
		return "shorten the pattern of layer names, or leave the version at R2000"
	}
	hint := "change the pattern of layer names; " + strings.Join(job.LayerTokens, " ") + " tell cuts apart"
	var clash *router.LayerConflict
	if errors.As(err, &clash) && clash.In == router.InDepth {
		hint += "; or write `elevation: yes` under dxf: then each cut tells its depth itself"
	}
	return hint
}

// maxName is how long a file's name may be, in bytes: file systems take 255, and what copies
// files adds to names.
const maxName = 200

// fileNames makes the names of drawings by the job's pattern.
type fileNames struct {
	pattern, job string
	unit         geom.Unit
}

func (f fileNames) name(p Part, face geom.Face) string {
	thick := strings.ReplaceAll(geom.LengthOf(p.Panel.Thickness).Fixed(f.unit), ".", "-") + f.unit.String()
	folder := filing.Drawings
	if len(p.Bits) > 0 {
		folder = filing.RouterParts
	}
	return folder + strings.NewReplacer("{job}", f.job, "{part}", p.Name, "{thickness}", thick,
		"{quantity}", fmt.Sprintf("%dx", p.Quantity), "{units}", f.unit.String()).Replace(f.pattern) + "." + face.String() + ".dxf"
}
