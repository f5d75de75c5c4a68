package record

// CheckedFolder is checked of a folder that was built: all its files, against the sums of those that were written.
const CheckedFolder = "folder"

// Codes of faults of a folder that is no longer what was built.
const (
	FaultChanged  = "changed-file"
	FaultAdded    = "added-file"
	FaultLost     = "lost-file"
	FaultUnlisted = "no-list" // of what was built
)
