package scene

import "drawerwright/geom/joinery"

// RGB is a color in sRGB, 8 bits each.
type RGB [3]uint8

// Tint is the color of a role, on a light and on a dark ground.
type Tint struct{ Light, Dark RGB }

// TintOf is the color of a role: this project's own, pale enough for lines and
// letters to be read on it.
func TintOf(r joinery.Role) Tint {
	switch r {
	case joinery.Side:
		return Tint{RGB{0xe3, 0xd4, 0xb0}, RGB{0x8f, 0x7d, 0x55}}
	case joinery.Front:
		return Tint{RGB{0xb5, 0xc7, 0xae}, RGB{0x5e, 0x77, 0x58}}
	case joinery.Back:
		return Tint{RGB{0xa9, 0xc1, 0xcd}, RGB{0x51, 0x70, 0x80}}
	case joinery.Bottom:
		return Tint{RGB{0xda, 0xd7, 0xd1}, RGB{0x77, 0x74, 0x6e}}
	case joinery.DividerRole:
		return Tint{RGB{0xcd, 0xbb, 0xd0}, RGB{0x7a, 0x66, 0x7e}}
	case joinery.CleatRole:
		return Tint{RGB{0xd6, 0xc6, 0x9a}, RGB{0x84, 0x74, 0x48}}
	case joinery.DrawerFrontRole:
		return Tint{RGB{0xd9, 0xad, 0x94}, RGB{0x8b, 0x5c, 0x45}}
	}
	return Tint{RGB{0xcc, 0xcc, 0xcc}, RGB{0x70, 0x70, 0x70}}
}
