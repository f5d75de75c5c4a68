// Package licenses has the license of the program and those of all that is linked into it:
// libraries, letters, and Go itself.
package licenses

import _ "embed"

// Own is the license of the program. The README has the same text.
//
//go:embed own.txt
var Own string

// Others are the licenses of what is linked on any of the systems that are released, collected
// from the modules themselves by .ci/licenses. Over each text stands a line that begins with
// "==== " and names the module, its version and the file.
//
//go:embed others.txt
var Others string
