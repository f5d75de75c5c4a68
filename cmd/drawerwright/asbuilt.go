package main

import (
	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/record"
)

// differences are the codes of faults of a folder that is no longer as it was built.
var differences = map[outdir.Why]string{outdir.Changed: record.FaultChanged, outdir.Missing: record.FaultLost,
	outdir.Unreadable: record.FaultChanged}

// asBuilt compares every file of a folder with the list of sums that build left in it. That is no proof: who changes
// a file can change the list.
func asBuilt(dir string) (record.Checked, error) {
	out := record.Checked{Kind: record.CheckedFolder, Name: record.CheckedFolder, Faults: []record.Fault{}}
	found, listed, err := outdir.Compare(dir)
	if err != nil {
		return out, err
	}
	if !listed {
		out.Faults = append(out.Faults, record.Fault{Code: record.FaultUnlisted, File: outdir.ManifestName,
			Message: "is missing: what was changed, added or lost since the folder was built is not known",
			Hint:    "copy it along with the folder, or build the job into a new folder"})
	}
	for _, f := range found {
		code, known := differences[f.Why]
		if !known {
			code = record.FaultAdded
		}
		if f.Path == outdir.ManifestName {
			code = record.FaultUnlisted
		}
		out.Faults = append(out.Faults, record.Fault{Code: code, File: f.Path, Message: string(f.Why)})
	}
	return out, nil
}
