package joinery

// Item is hardware that one box takes.
type Item struct {
	Name  string
	Count int
}

// takes adds hardware to the box.
func (l *layout) takes(name string, count int) {
	if count == 0 {
		return
	}
	for i := range l.drawer.Hardware {
		if l.drawer.Hardware[i].Name == name {
			l.drawer.Hardware[i].Count += count
			return
		}
	}
	l.drawer.Hardware = append(l.drawer.Hardware, Item{name, count})
}
