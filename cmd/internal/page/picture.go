package page

import (
	"math"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/packet"
	"drawerwright/geom/picture"
	"drawerwright/geom/solid"
)

// lines are a picture for browsers that cannot draw in three dimensions: its size, and
// x1, y1, x2, y2 of each line from its upper left corner, in tenths of a millimeter.
type lines struct {
	Width  int   `json:"width"`
	Height int   `json:"height"`
	Lines  []int `json:"lines"`
}

// pictureOf is a drawer with hidden lines left out; nil if its solids cannot be made,
// which a build reports.
func pictureOf(d batch.Drawer) *lines {
	boxed, err := files.BoxOf(d, nil)
	if err != nil {
		return nil
	}
	var solids []solid.Mesh
	for _, p := range boxed.Scene.Boxes[0].Pieces {
		m := boxed.Scene.Meshes[boxed.Scene.Parts[p.Part].Mesh].Mesh()
		solids = append(solids, m.Place(p.Placement, boxed.Grid))
	}
	segments := picture.Draw(solids, packet.Seen)
	b := picture.Bounds(segments)
	tenth := func(mm float64) int { return int(math.Round(10 * mm)) }
	out := &lines{Width: tenth(b.Width()), Height: tenth(b.Height()), Lines: make([]int, 0, 4*len(segments))}
	for _, s := range segments {
		out.Lines = append(out.Lines, tenth(s.A.X-b.Min.X), tenth(b.Max.Y-s.A.Y), tenth(s.B.X-b.Min.X),
			tenth(b.Max.Y-s.B.Y))
	}
	return out
}
