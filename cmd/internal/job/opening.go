package job

import (
	"fmt"
	"maps"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/opening"
)

// readOpenings makes the openings of the file by name; nil is one that could not
// be read.
func (b *builder) readOpenings() map[string]*opening.Opening {
	all := map[string]*opening.Opening{}
	for _, s := range b.root.values["openings"].sections {
		get := s.values
		o := &opening.Opening{
			Width: all64(get["width"]), Height: all64(get["height"]), Depth: all64(get["depth"]), Diagonals: all64(get["diagonals"]),
			FrameOverhang: get["frame-overhang"].mm(0), FaceFrame: get["cabinet"].text == faceFrame,
			Fronts: opening.Fronts(get["fronts"].text), ClearanceBehind: get["clearance-behind"].mm(0),
		}
		o.WebFrame, o.DustPanel = get["web-frame"].mm(0), get["dust-panel"].mm(0)
		b.noEffect(!get["web-frame"].given, get, "dust-panel", "delete it, or write `web-frame:`",
			"it lies in the grooves of web frames")
		if v := get["cabinet-stock"]; v.text != "" {
			b.checkStock("cabinet-stock", v)
			if sides, ok := b.stocks[v.text]; ok {
				o.Sides = &sides
			}
		}
		b.noEffect(get["cabinet"].text == frameless, get, "frame-overhang",
			"delete it, or write cabinet: "+faceFrame, "a frameless cabinet has no frame")
		if get["cabinet"].text == faceFrame && !get["frame-overhang"].given && !s.meant["frame-overhang"] && !b.lost {
			b.add(Problem{Level: geom.LevelNote, Code: CodeAssumed,
				Message: "the sides of the cabinet " + quote(s.name) + " are taken to be level with its face frame",
				Hint: "measure how far the frame stands in before a side and write it as `frame-overhang:` of the opening; " +
					"where it does not, `frame-overhang: 0` ends this note"}, get["cabinet"].at)
		}
		if len(o.Width) == 0 || len(o.Height) == 0 || len(o.Depth) == 0 || o.Fronts == "" {
			o = nil
		}
		all[s.name] = o
	}
	return all
}

// all64 are all lengths of a value in millimeters; nil when it has none.
func all64(v value) []float64 {
	var all []float64
	for i := range v.lengths {
		all = append(all, v.mm(i))
	}
	return all
}

// readSlides makes the slides by name: the built-in kinds, those of the file and
// those of the file that it names; nil is one that could not be read.
func (b *builder) readSlides() (all map[string]*opening.Slide, lost bool) {
	all = map[string]*opening.Slide{}
	for _, kind := range opening.Kinds {
		if slide, ok := opening.BuiltIn(kind, b.units); ok {
			all[string(kind)] = &slide
		}
	}
	builtIn := len(all)
	own := b.root.values["slides"]
	b.makeSlides(own.sections, all)
	lost = own.given && len(all) == builtIn
	return all, b.sharedSlides(b.root.values["slides-file"], all) || lost
}

// makeSlides adds slides to those that are there.
func (r *reader) makeSlides(sections []*section, all map[string]*opening.Slide) {
	for _, s := range sections {
		if _, kind := opening.BuiltIn(opening.Kind(s.name), r.units); kind {
			r.fail(CodeSameName, s.at, "give it another name",
				"the slide %s has the name of a built-in kind", quote(s.name))
			continue
		}
		all[s.name] = r.slide(s)
	}
}

// slide makes a slide of its kind and of what differs from the kind.
func (r *reader) slide(s *section) *opening.Slide {
	get := s.values
	slide, ok := opening.BuiltIn(opening.Kind(get["kind"].text), r.units)
	if !ok {
		return nil
	}
	slide.Name = s.name
	for _, l := range slideLengths {
		v := get[l.name]
		r.noEffect(l.kind != "" && l.kind != slide.Kind, get, l.name, "delete it",
			fmt.Sprintf("it is for slides of the kind %s", l.kind))
		if v.given {
			*l.set(&slide) = v.mm(0)
		}
		ok = ok && (!v.given || len(v.lengths) > 0)
	}
	r.noEffect(slide.Kind == opening.Undermount, get, "clearance", "write `inside-deduction:`",
		"such a slide asks for a width inside the box")
	if slide.Kind == opening.Wooden {
		r.onRunners(&slide, get)
	}
	if v := get["lengths"]; v.given {
		slide.Lengths = all64(v)
		ok = ok && len(slide.Lengths) > 0
	}
	if v := get["load"]; v.given {
		slide.Load = v.number
	}
	if !ok {
		return nil
	}
	return &slide
}

// onRunners lets the box stand on runners that are as high as the job says.
func (r *reader) onRunners(slide *opening.Slide, get map[string]value) {
	r.noEffect(true, get, screwLine, "delete it, and write `height:`",
		"a box stands on its runners, and their line is in the middle of their height")
	slide.ScrewLine = -slide.Height / 2
	if get["height"].given && !get["clearance-below"].given {
		slide.ClearanceBelow = slide.Height
	}
}

// known finds what a name stands for, and reports a name that nothing has. What
// could not be read is nil.
func known[T any](b *builder, v value, all map[string]*T, kind string, lost bool) *T {
	found, ok := all[v.text]
	if ok || v.text == "" || lost || b.lost {
		return found
	}
	other := didYouMean(v.text, slices.Sorted(maps.Keys(all)))
	if len(all) == 0 {
		other.hint = fmt.Sprintf("the file has none: write it below `%ss:`", kind)
	}
	b.suggest(CodeUnknownName, v.at, other, "there is no %s %s", kind, quote(v.text))
	return nil
}

// outOfReach reports a size that is beyond what panels can have. It reports whether
// there was one.
func (b *builder) outOfReach(at Position, sizes ...float64) bool {
	for _, size := range sizes {
		if size < minSize || size > maxSize {
			b.fail(CodeOutOfRange, at, "measure again, or look for a slip of the decimal point",
				"a part would be %s; it can be %s to %s",
				geom.LengthOf(size).Text(b.units), geom.LengthOf(minSize).Text(b.units),
				geom.LengthOf(maxSize).Text(b.units))
			return true
		}
	}
	return false
}
