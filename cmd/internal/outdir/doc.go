// Package outdir writes an output folder that appears whole or not at all.
//
// [Create] checks the folder's name and what stands there, and claims it for
// one build. [Stage.WriteFile] writes files into a hidden folder beside it,
// [Stage.Commit] puts that folder in its place in one step, [Stage.Abort] takes
// it away again. A full disk, a folder that may not be written, or the end of
// the process at any moment leaves what stood there before.
//
// A folder that holds anything this package did not write is refused: the
// manifest in each folder lists what was written, with sizes and hashes.
//
// # Beside the folder
//
// A build into parent/out works in parent/.out.drawerwright-build, which only
// its user can enter:
//
//	lock   held by the build for as long as it runs; the system frees it when the process ends
//	new    the folder being built; after the swap, the one that was replaced
//	old    the replaced folder, where two renames make the swap
//
// What an interrupted build left there is cleared by the next Create for the same folder.
//
// # Whose code
//
// Locks are flock's. Renaming and removing are robustio's, which tries again
// for two seconds where Windows refuses because a scanner holds a new file open.
// Exchanging two folders is one call of golang.org/x/sys. The rest is this
// package's own: no library replaces a whole folder, or looks whether its
// contents are known; and [ReplaceFileIf] looks at the old file between handing
// the new one to the disk and renaming it, where libraries that replace a file
// let nobody in, or do not know Windows.
//
// # How strong the promise is
//
// Linux and macOS exchange two folders in one step, where the file system can
// do it: somebody who opens files of the folder meanwhile gets the old or the
// new one. Elsewhere, Windows among them, the old folder is renamed out of the
// way and the new one renamed into its place: between the two, for some
// microseconds, there is no folder under the name, and a process ended just
// there leaves it so. The old one is then in "old", which is the mark by which
// the next Create puts it back. On Windows a file of the folder that another
// program has open stops the swap; the old folder stays.
//
// Before the swap everything is handed to the disk: with one call for the whole
// file system on Linux; elsewhere systems promise less, and a power cut within
// seconds of a build, other than a killed process, may leave empty files.
package outdir
