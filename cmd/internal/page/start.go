package page

import (
	"cmp"
	"io/fs"
	"net/http"
	"path/filepath"
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/starter"
)

// blank reports whether a text says nothing.
func blank(text string) bool { return strings.TrimSpace(strings.TrimPrefix(text, "\ufeff")) == "" }

// firstJob is what a page begins with where nothing is given: the job that init makes of what is
// usual. A test of the starter holds that these answers go together.
func firstJob() string {
	text, _ := starter.Make(starter.Answers{}.Filled())
	return text
}

// Most files of a folder that are looked at, and that are listed.
const (
	mostEntries = 5000
	mostListed  = 200
)

// listed is a job file of the folder.
type listed struct {
	Name  string `json:"name"`
	Title string `json:"title"` // as the job says it; empty where it does not
}

// usual is what a card has in its fields before anything is typed, in one unit.
type usual struct {
	Units    string   `json:"units"`
	Measured string   `json:"measured"`
	Size     []string `json:"size"` // width, height, depth
	Sides    string   `json:"sides"`
	Bottom   string   `json:"bottom"`
	Slide    string   `json:"slide"` // empty of a box
	Cutter   string   `json:"cutter"`
	Count    string   `json:"count"`
	Length   string   `json:"length"` // of the slide; empty for the longest that fits
	Rows     string   `json:"rows"`   // drawers above each other; empty of a box
}

// start tells a tab with what a job can begin.
func (p *Page) start(w http.ResponseWriter, _ *http.Request) {
	list, err := p.folder.jobs()
	if err != nil {
		refuse(w, http.StatusConflict, "the folder cannot be read: "+err.Error())
		return
	}
	var all []usual
	for _, measured := range starter.Measured.Words() {
		for _, unit := range starter.Units.Words() {
			a := starter.Answers{starter.Units: unit, starter.Measured: measured}.Filled()
			size, err := job.SplitSize(a[starter.Size], 3)
			if err == nil { // as it always is
				all = append(all, usual{unit, measured, size, a[starter.Sides], a[starter.Bottom], a[starter.Slide],
					a[starter.Cutter], a[starter.Count], "", ""})
			}
		}
	}
	reply(w, http.StatusOK, struct {
		Folder string   `json:"folder"`
		Jobs   []listed `json:"jobs"`
		Usual  []usual  `json:"usual"`
		Slides []string `json:"slides"`
		Title  string   `json:"title"` // of a job that nobody gave one
	}{p.folder.path, list, all, starter.Slide.Words(), starter.Title})
}

// jobs are the job files of the folder itself, in the order of their names: no links, and no
// other YAML.
func (d *folder) jobs() ([]listed, error) {
	in, err := d.root.Open(".")
	if err != nil {
		return nil, err
	}
	defer in.Close()
	list := []listed{}
	entries, err := in.ReadDir(mostEntries)
	if len(entries) == 0 { // then it may be its end
		return list, nil
	}
	slices.SortFunc(entries, func(a, b fs.DirEntry) int { return cmp.Compare(a.Name(), b.Name()) })
	for _, e := range entries {
		if !e.Type().IsRegular() || fileFault(e.Name()) != "" || len(list) == mostListed {
			continue
		}
		one := file{e.Name(), d.root, e.Name()}
		data, err := one.read()
		if err != nil { // it is too large, or no text: no job
			continue
		}
		root := job.Outlined(data).Root
		if drawersOf(root) != nil {
			list = append(list, listed{e.Name(), titleOf(root)})
		}
	}
	return list, err
}

// titleOf is what a job calls itself.
func titleOf(root *job.Node) string {
	for _, e := range root.Entries {
		if e.Key == "job" {
			return e.Value.Text
		}
	}
	return ""
}

// name answers with the name that a job gets from what was typed, and the version of the file
// that has it already, if one has.
func (p *Page) name(w http.ResponseWriter, r *http.Request) {
	var asked struct {
		Name string `json:"name"`
	}
	if !read(w, r, &asked) {
		return
	}
	name := strings.TrimSpace(asked.Name)
	if ext := strings.ToLower(filepath.Ext(name)); name != "" && ext != ".yaml" && ext != ".yml" {
		name += ".yaml"
	}
	f, err := p.folder.file(name)
	switch {
	case name == "":
		refuse(w, http.StatusUnprocessableEntity, "give the file a name")
		return
	case err != nil:
		refuse(w, http.StatusUnprocessableEntity, err.Error())
		return
	}
	now, err := f.now()
	if err == nil {
		_, err = outdir.Replaceable(f.in, f.at)
	}
	if err != nil {
		refuse(w, http.StatusUnprocessableEntity, err.Error())
		return
	}
	reply(w, http.StatusOK, struct {
		Name    string `json:"name"`
		Version string `json:"version"`
	}{name, now.Version})
}
