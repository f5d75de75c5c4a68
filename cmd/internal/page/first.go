package page

import (
	"bytes"
	"errors"
	"io/fs"
	"net/http"
	"path/filepath"
	"slices"
	"time"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/firstbox"
	"drawerwright/cmd/internal/list"
	"drawerwright/cmd/internal/outdir"
	"drawerwright/cmd/internal/present"
)

// firstBox is the form for a first box, with what was read.
type firstBox struct {
	Drawer string        `json:"drawer"`
	Unit   string        `json:"unit"`
	Safely string        `json:"safely"`
	Head   string        `json:"head"`
	Level  present.Level `json:"level"` // of the head
	Do     string        `json:"do"`    // text as a printer would have it; empty where nothing is to be done
	Parts  []firstPart   `json:"parts"`
	Log    string        `json:"log"` // the job's; empty where it names none
	Logged []string      `json:"logged"`
}

// firstPart is what is read on one thing.
type firstPart struct {
	On   string     `json:"on"`
	Rows []firstRow `json:"rows"`
}

// firstRow is a row of the form.
type firstRow struct {
	What    string        `json:"what"`
	Right   string        `json:"right"`
	Least   string        `json:"least"`
	Most    string        `json:"most"`
	Verdict string        `json:"verdict"`
	Level   present.Level `json:"level,omitempty"`
	Fault   string        `json:"fault,omitempty"` // of what was typed, with what would do
}

// first gives the form for the first box of a drawer, judges what was read, and adds it to the log that the job names
// where that is asked for.
func (p *Page) first(w http.ResponseWriter, r *http.Request) {
	var asked struct {
		Text     string            `json:"text"`
		Unit     string            `json:"unit"`
		Drawer   string            `json:"drawer"`
		Readings map[string]string `json:"readings"` // as they were typed, by their rows
		Log      bool              `json:"log"`
	}
	if !read(w, r, &asked) {
		return
	}
	done, ok := p.soundWork(r.Context(), w, asked.Text)
	if !ok {
		return
	}
	b := done.shownIn(asked.Unit).Batch
	at := slices.IndexFunc(b.Drawers, func(d batch.Drawer) bool { return d.Spec.Name == asked.Drawer })
	out, judged, faults := firstBoxOf(b, max(at, 0), asked.Readings)
	switch {
	case asked.Log && out.Log == "":
		refuse(w, http.StatusBadRequest, "the job names no log")
		return
	case asked.Log && faults:
		out.Logged = []string{"Nothing is added to the log: mend the readings that are marked."}
	case asked.Log:
		p.folder.busy.RLock()
		defer p.folder.busy.RUnlock()
		p.folder.saving.Lock()
		defer p.folder.saving.Unlock()
		said, err := firstbox.Log([]firstbox.Record{judged}, today(), p.folder.log(out.Log), b.Units)
		if err != nil {
			refuse(w, http.StatusConflict, err.Error())
			return
		}
		out.Logged = said
	}
	reply(w, http.StatusOK, out)
}

// today is the day of what is read, by the clock of the computer.
func today() time.Time {
	y, m, d := time.Now().Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// firstBoxOf is the form of a drawer with what was typed into it.
func firstBoxOf(b batch.Batch, drawer int, typed map[string]string) (out firstBox, read firstbox.Record, faults bool) {
	f := firstbox.Of(b, drawer)
	said := make(map[int]string)
	var readings []firstbox.Reading
	for i, field := range f.Fields() {
		if text := typed[field.What]; text != "" {
			mm, fault, ask := field.Read(text, b.Units)
			if fault != "" {
				said[i], faults = "it "+fault+"; "+ask, true
				continue
			}
			readings = append(readings, firstbox.Reading{Row: i, MM: mm})
		}
	}
	read = f.Judge(b, readings)
	head := read.Head()
	out = firstBox{Drawer: f.Drawer(), Unit: b.Units.String(), Safely: firstbox.Safely, Head: head.Text,
		Level: head.Level, Do: read.ToDo(b.Units), Logged: []string{}}
	if b.Log != nil {
		out.Log = b.Log.File
	}
	i := 0
	for _, p := range f.Parts() {
		part := firstPart{On: p.On}
		for _, c := range p.Checks {
			row := firstRow{What: c.What, Verdict: read.Rows[i].Verdict, Level: read.Rows[i].Level(), Fault: said[i]}
			row.Right, row.Least, row.Most = c.Texts()
			part.Rows = append(part.Rows, row)
			i++
		}
		out.Parts = append(out.Parts, part)
	}
	return out, read, faults
}

// log is a log that a job names, within the folder.
func (d *folder) log(name string) list.LogFile {
	read := func() ([]byte, error) {
		data, err := d.readBeside(name)
		if errors.Is(err, fs.ErrNotExist) {
			return nil, nil
		}
		return data, err
	}
	return list.LogFile{Name: name, Read: read, Replace: func(was, now []byte) (bool, error) {
		local := filepath.FromSlash(name)
		in, err := d.root.OpenRoot(filepath.Dir(local)) // which leaves the folder by no link
		if err != nil {
			return false, err
		}
		defer in.Close()
		return outdir.ReplaceIn(in, filepath.Base(local), now, func() (bool, error) {
			still, err := read()
			return bytes.Equal(still, was), err
		})
	}}
}
