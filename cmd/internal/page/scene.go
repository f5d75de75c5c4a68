package page

import (
	"encoding/json"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/packet"
	"drawerwright/preview/scene"
	"drawerwright/preview/viewer"
)

// sceneOf is what the viewer shows: a drawer, or all of its cabinet that have their shape. It is
// null where solids cannot be made, which a build reports. Setups are those of a job that can be built.
func sceneOf(b batch.Batch, drawer int, whole, setups bool) json.RawMessage {
	show := []int{drawer}
	var groups []scene.Group
	if at := slices.IndexFunc(b.Banks, func(k batch.Bank) bool { return slices.Contains(k.Drawers, drawer) }); whole && at >= 0 {
		all := files.Cabinets(b)[at]
		g := scene.Group{Name: all.Name}
		show = nil
		for i, k := range all.Boxes {
			if b.Drawers[k].Shaped {
				g.Boxes, g.At = append(g.Boxes, len(show)), append(g.At, all.At[i]) // they count in the scene now
				show = append(show, k)
			}
		}
		if len(show) == len(all.Boxes) { // else something is missing in it
			g.Carcass = all.Carcass
		}
		groups = append(groups, g)
	}
	var scenes []scene.Scene
	for _, i := range show {
		boxed, err := files.BoxOf(b.Drawers[i], files.MilledOf(b, i))
		if err != nil {
			return nil
		}
		box := boxed.Scene.Boxes[0]
		boxed.Scene.Boxes[0].Steps = func() []scene.Step { return packet.Steps(b, b.Drawers[i], box) }
		scenes = append(scenes, boxed.Scene)
	}
	title := b.Drawers[drawer].Spec.Name
	if len(groups) > 0 {
		title = groups[0].Name
	}
	all := scene.Join(title, b.Units, scenes, groups)
	all.Stocks = files.StockNames(b)
	if len(groups) > 0 {
		all.Groups = groups // what is shown is chosen on the page
	}
	if setups {
		var err error
		if all.Settings, err = packet.Settings(b, &all); err != nil {
			return nil
		}
	}
	data, err := viewer.Data(all)
	if err != nil {
		return nil
	}
	return data
}
