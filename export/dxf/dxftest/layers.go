package dxftest

// Layer is a record of the layer table.
type Layer struct {
	Name     string
	Color    int // of the format's color index; 0 where the record has none
	Linetype string
}

// Layers reads the layer table of a file, in its order. The error of a file that
// is not made of tags is [ErrTags].
func Layers(data []byte) ([]Layer, error) {
	tags, err := readAll(data)
	if err != nil {
		return nil, err
	}
	all, _, _ := sections(tags)
	return layersOf(all), nil
}

func layersOf(all []section) []Layer {
	var layers []Layer
	for _, t := range tables(find(all, "TABLES")) {
		if t.name != "LAYER" {
			continue
		}
		for _, r := range t.records {
			layers = append(layers, Layer{r.text(2), r.number(62, 0), r.text(6)})
		}
	}
	return layers
}
