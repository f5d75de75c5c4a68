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
	case joinery.DividerRole, joinery.InsertRole:
		return Tint{RGB{0xcd, 0xbb, 0xd0}, RGB{0x7a, 0x66, 0x7e}}
	case joinery.CleatRole:
		return Tint{RGB{0xd6, 0xc6, 0x9a}, RGB{0x84, 0x74, 0x48}}
	case joinery.DrawerFrontRole:
		return Tint{RGB{0xd9, 0xad, 0x94}, RGB{0x8b, 0x5c, 0x45}}
	case TableRole:
		return Tint{RGB{0xc3, 0xca, 0xcc}, RGB{0x4a, 0x52, 0x55}}
	case FenceRole:
		return Tint{RGB{0xe9, 0xe4, 0xd6}, RGB{0x6b, 0x66, 0x58}}
	case CutterRole:
		return Tint{RGB{0x7f, 0x88, 0x90}, RGB{0xb9, 0xc2, 0xc9}}
	}
	return Tint{RGB{0xcc, 0xcc, 0xcc}, RGB{0x70, 0x70, 0x70}}
}

// woods are tones of wood, from birch over oak and cherry to hardboard and walnut: this project's
// own, pale enough for lines and letters to be read on them, and each a shade of its own in gray.
var woods = []RGB{{0xf6, 0xea, 0xcf}, {0xe0, 0xbf, 0x8c}, {0xc9, 0xa0, 0x74}, {0xee, 0xd2, 0xb0}, {0xb5, 0x8d, 0x6b}}

// WoodTone is the tone of a stock, by its number in the job, from 0; after the last one they begin
// again.
func WoodTone(stock int) RGB { return woods[stock%len(woods)] }

// WoodTint is that tone as a color: on a dark ground as much darker as those of roles are.
func WoodTint(stock int) Tint {
	light := WoodTone(stock)
	dark := light
	for i := range dark {
		dark[i] = uint8(int(light[i]) * 3 / 5)
	}
	return Tint{Light: light, Dark: dark}
}
