package main

import (
	"encoding/json"
	"os"
	"strings"
	"testing"
)

// TestFilesThatAreNotThere: what is missing is said in plain words with what to do about it, as text and as JSON,
// and a name that is nearly right is asked for.
func TestFilesThatAreNotThere(t *testing.T) {
	job := codeBlock.FindStringSubmatch(readme(t))[1]
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{"drawers.yaml": job, "offcuts.csv": "stock,name,length,width\n"} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	const named = "write the name of the file, with its folder before it"
	for args, want := range map[string][2]string{
		"check nosuch.yaml":                       {"there is no file nosuch.yaml here", "look at its name and its folder; drawerwright init nosuch.yaml asks six questions and writes one"},
		"build drawer.yaml -o out":                {"there is no file drawer.yaml here", "did you mean drawers.yaml?"},
		"parts jobs/drawers.yaml":                 {"there is no file drawers.yaml in jobs", "look at its name and its folder; drawerwright init jobs/drawers.yaml asks six questions and writes one"},
		"layout list.csv":                         {"there is no file list.csv here", "look at its name and its folder"},
		"sheets drawers.yaml --shelf offcut.csv":  {"there is no file offcut.csv here", "did you mean offcuts.csv?"},
		"sheets drawers.yaml --shelf nothing.csv": {"there is no file nothing.csv here", "look at its name and its folder; --put-back begins a new one"},
		"check .":                       {"cannot read the job: . is a folder", named},
		"layout .":                      {"cannot read the list: . is a folder", named},
		"sheets drawers.yaml --shelf .": {"cannot read the shelf: . is a folder", named},
		"sheets drawers.yaml --shelf -": {"--shelf takes no standard input", "write the name of the file; ./- where it is called -"},
		"prove out":                     {"out is no folder that build wrote: there is no report.json in it", "drawerwright build JOB -o out writes one"},
	} {
		code, out, errs := call(t, "", strings.Fields(args)...)
		said := strings.Join(strings.Fields(errs), " ") // lines are folded
		if code != exitJob || out != "" || said != "drawerwright: "+want[0]+" hint: "+want[1] {
			t.Errorf("%s: %d, %s", args, code, said)
		}
		code, out, _ = call(t, "", append(strings.Fields(args), "--json")...)
		var found checked
		if err := json.Unmarshal([]byte(out), &found); err != nil || code != exitJob || len(found.Problems) != 1 ||
			found.Problems[0].Message != want[0] || found.Problems[0].Hint != want[1] {
			t.Errorf("%s --json: %d, %v, %s", args, code, err, out)
		}
	}
}

// TestFolderNameTooLong: the way out is a shorter name, not another folder.
func TestFolderNameTooLong(t *testing.T) {
	job := codeBlock.FindStringSubmatch(readme(t))[1]
	t.Chdir(t.TempDir())
	code, _, errs := call(t, job, "build", "-", "-o", strings.Repeat("x", 250))
	if code != exitJob || !strings.Contains(errs, "write a shorter name") {
		t.Errorf("%d: %s", code, errs)
	}
}
