package stroke

// glyph is a character's drawing on a grid of 12 units to the height: its
// strokes parted by "|", each stroke's points by spaces, each point x and y as a
// hexadecimal figure, from the lower left corner of the glyph's box.
type glyph struct {
	width   int // of the box, in units
	strokes string
}

// unknown stands for every character that has no glyph.
var unknown = glyph{5, "00 50 58 08 00"}

// glyphs are drawn so that what is easily mistaken differs in more than one
// thing: figures are narrower than letters; 0 has a stroke inside, Z one across;
// 1 has a flag and a foot, I a bar at either end; 5 has square corners where S is
// round; B has a straight back where 8 has a waist.
var glyphs = map[rune]glyph{
	'A': {8, "00 4c 80|13 73"},
	'B': {8, "00 0c 5c 7b 8a 88 77 56 75 84 82 71 50 00|06 56"},
	'C': {8, "8a 7b 5c 3c 1b 09 03 11 30 50 71 82"},
	'D': {8, "00 0c 4c 6b 7a 88 84 72 61 40 00"},
	'E': {7, "7c 0c 00 70|06 56"},
	'F': {7, "7c 0c 00|06 56"},
	'G': {8, "8a 7b 5c 3c 1b 09 03 11 30 50 71 83 86 56"},
	'H': {8, "00 0c|06 86|8c 80"},
	'I': {4, "0c 4c|2c 20|00 40"},
	'J': {6, "03 11 20 40 51 63 6c"},
	'K': {8, "00 0c|8c 04|37 80"},
	'L': {7, "0c 00 70"},
	'M': {8, "00 0c 44 8c 80"},
	'N': {8, "00 0c 80 8c"},
	'O': {8, "30 50 71 83 89 7b 5c 3c 1b 09 03 11 30"},
	'P': {8, "00 0c 5c 7b 8a 88 77 56 06"},
	'Q': {8, "30 50 71 83 89 7b 5c 3c 1b 09 03 11 30|44 80"},
	'R': {8, "00 0c 5c 7b 8a 88 77 56 06|46 80"},
	'S': {8, "8a 7b 5c 3c 1b 0a 08 17 36 56 75 84 82 71 50 30 11 02"},
	'T': {8, "0c 8c|4c 40"},
	'U': {8, "0c 03 11 30 50 71 83 8c"},
	'V': {8, "0c 40 8c"},
	'W': {10, "0c 20 59 80 ac"},
	'X': {8, "00 8c|0c 80"},
	'Y': {8, "0c 46 8c|46 40"},
	'Z': {8, "0c 8c 00 80|26 66"},

	'0': {6, "20 40 51 63 69 5b 4c 2c 1b 09 03 11 20|24 48"},
	'1': {6, "09 3c 30|00 60"},
	'2': {6, "0a 2c 4c 6a 68 56 00 60"},
	'3': {6, "0a 2c 4c 6a 68 46 64 62 40 20 02|26 46"},
	'4': {6, "40 4c 03 63"},
	'5': {6, "6c 0c 07 47 56 64 63 51 40 20 02"},
	'6': {6, "6a 4c 2c 1b 09 03 11 20 40 51 63 64 56 47 27 16 04"},
	'7': {6, "0c 6c 20"},
	'8': {6, "26 08 0a 2c 4c 6a 68 46 26 04 02 20 40 62 64 46"},
	'9': {6, "02 20 40 51 63 69 5b 4c 2c 1b 09 08 16 25 45 56 68"},

	' ':  {5, ""},
	'.':  {1, "00 10 11 01 00"},
	',':  {2, "00 23"},
	':':  {1, "00 10 11 01 00|07 17 18 08 07"},
	';':  {2, "00 23|17 27 28 18 17"},
	'-':  {5, "06 56"},
	'_':  {8, "00 80"},
	'/':  {6, "00 6c"},
	'(':  {3, "3c 1a 08 04 12 30"},
	')':  {3, "0c 2a 38 34 22 00"},
	'\'': {1, "0c 09"},
	'"':  {3, "0c 09|3c 39"},
	'+':  {6, "06 66|39 33"},
	'×':  {6, "03 69|09 63"},
	'=':  {6, "08 68|04 64"},
	'#':  {8, "10 3c|50 7c|08 88|04 84"},
	'%':  {8, "19 0a 0b 1c 2c 3b 3a 29 19|00 8c|60 51 52 63 73 82 81 70 60"},
	'&':  {8, "80 19 1b 2c 4c 5b 59 16 04 02 20 40 62 85"},
	'°':  {4, "18 09 0b 1c 3c 4b 49 38 18"},
}
