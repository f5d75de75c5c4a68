package prove_test

// harmedFiles are of whole files.
var harmedFiles = map[string]seeded{
	"a file lost": {file: sideIn, code: "missing-file", folder: func(f *folder) { delete(f.files, sideIn) }},
	"a file cut off": {file: sideIn, code: "unreadable", folder: func(f *folder) {
		f.files[sideIn] = f.files[sideIn][:len(f.files[sideIn])/2]
	}},
	"a file without its end": {file: sideIn, code: "unreadable", folder: func(f *folder) {
		f.files[sideIn] = f.files[sideIn][:len(f.files[sideIn])-len("0\nEOF\n")]
	}},
	"an empty file": {file: sideIn, code: "unreadable", folder: func(f *folder) { f.files[sideIn] = nil }},
	"a file that is none": {file: sideIn, code: "unreadable", folder: func(f *folder) {
		f.files[sideIn] = []byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR")
	}},
	"a binary DXF": {file: sideIn, code: "unreadable", folder: func(f *folder) {
		f.files[sideIn] = []byte("AutoCAD Binary DXF\r\n\x1a\x00")
	}},
	"the front under the side's name": {file: sideIn, code: "size", also: "missing moved", folder: func(f *folder) { f.files[sideIn] = f.files[frontIn] }},
	"inside and outside under each other's name": {file: frontIn, code: "mirror", also: "missing no-outline register unlisted-layer wrong-face", folder: func(f *folder) {
		f.files[frontIn], f.files[frontOut] = f.files[frontOut], f.files[frontIn]
	}},
}
