package page

import (
	"encoding/json"
	"net/http"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
)

// view is what a tab shows of a job.
type view struct {
	Drawer string `json:"drawer"` // the name of the one that is shown; the first where there is none
	Entry  int    `json:"entry"`  // the drawer of the file whose fields the form has; -1 for that of the drawer shown
	Unit   string `json:"unit"`   // mm or in, of numbers; the job's where empty
	Whole  bool   `json:"whole"`  // the cabinet that the drawer is in, not it alone
	Flat   bool   `json:"flat"`   // a picture of lines, not what the viewer takes
	Show   string `json:"show"`   // fit, parts, setups or buy; the rest has requests of its own
	Soon   bool   `json:"soon"`   // of many drawers the numbers will do: the tab asks for the whole after them
}

// soon reports whether the numbers alone will do; what is to be bought depends on sheets.
func (v view) soon() bool { return v.Soon && v.Show != "buy" }

// looked is what a job comes out as, as far as a tab shows it.
type looked struct {
	Text     string    `json:"text"` // as it was asked about, or as an edit left it
	Problems []problem `json:"problems"`
	More     int       `json:"more"` // problems beyond those
	Failed   bool      `json:"failed"`
	Soon     bool      `json:"soon,omitempty"` // these are the numbers alone, and nothing is said of them

	Beside []besideFile `json:"beside"` // the files that it names

	Outline *node  `json:"outline"`
	Sound   bool   `json:"sound"` // fields can be written
	Entry   int    `json:"entry"` // the drawer of the file whose fields are in the outline
	Unit    string `json:"unit"`
	// Readings are what the readings of stocks come to, by the stock.
	Readings map[string]string `json:"readings,omitempty"`

	// Of a job that could be worked out.
	Drawers []drawer `json:"drawers,omitempty"`
	Drawer  int      `json:"drawer"`
	// Of a drawer that has its shape, though it may not go together.
	Scene   json.RawMessage `json:"scene,omitempty"` // what the viewer takes
	Picture *lines          `json:"picture,omitempty"`
	// Measures are the dimensions that can be changed in the picture.
	Measures []measure `json:"measures,omitempty"`
	// Known are its measures as set, of a job that cannot be built.
	Known *table `json:"known,omitempty"`

	// Of a job that can be built.
	Answer  string    `json:"answer,omitempty"` // on all drawers, as everywhere
	Said    string    `json:"said,omitempty"`
	Verdict string    `json:"verdict,omitempty"` // on the drawer shown
	Bears   string    `json:"bears,omitempty"`   // what that weighs and carries, in words
	Width   *boxWidth `json:"width,omitempty"`   // of a drawer in an opening, where its width comes from
	Front   *front    `json:"front,omitempty"`   // of the opening that the entry in the form is for
	Strip   *strip    `json:"strip,omitempty"`
	Fit     *fitted   `json:"fit,omitempty"`
	Tables  []table   `json:"tables,omitempty"`
	Notes   string    `json:"notes,omitempty"` // text as a printer would have it
	// Numbers are those of the parts that notes name, by their names.
	Numbers map[string]int `json:"numbers,omitempty"`
}

// problem is a problem with the path of the field that it is about.
type problem struct {
	File    string   `json:"file,omitempty"` // where it is not the job itself
	Line    int      `json:"line"`
	Column  int      `json:"column"`
	Path    []string `json:"path"`
	Where   string   `json:"where,omitempty"` // what the form calls the field; empty of the whole file
	Level   string   `json:"level"`           // error, warning or note
	Code    string   `json:"code"`
	Message string   `json:"message"`
	Hint    string   `json:"hint"`
	// Said and Do are both in the words of a form, where they are others.
	Said string       `json:"said,omitempty"`
	Do   string       `json:"do,omitempty"`
	Ways []job.WayOut `json:"ways,omitempty"`
}

// drawer is one to choose from, and the drawer of the file that it comes from.
type drawer struct {
	Name  string `json:"name"`
	Count int    `json:"count"`
	Entry int    `json:"entry"`
	Bank  bool   `json:"bank,omitempty"` // it stands in a cabinet with others
	// Numbers are those of its parts, each once.
	Numbers []int `json:"numbers"`
}

// look answers what a text comes out as.
func (p *Page) look(w http.ResponseWriter, r *http.Request) {
	var of struct {
		Text string `json:"text"`
		View view   `json:"view"`
	}
	if !read(w, r, &of) {
		return
	}
	done, err := p.work.out(r.Context(), task{text: of.Text, soon: of.View.soon()})
	p.show(w, r, done, err, of.View)
}

// show answers with what a tab shows of a text that was worked out; err says that it was not.
func (p *Page) show(w http.ResponseWriter, r *http.Request, done worked, err error, v view) {
	if err != nil {
		refuse(w, http.StatusServiceUnavailable, "stopped")
		return
	}
	reply(w, http.StatusOK, lookAt(done.shownIn(v.Unit), v, fileOf(r.Context()).called()))
}

// lookAt makes the answer. file is the name that the job's own problems carry.
func lookAt(w worked, v view, file string) looked {
	o := job.Outlined([]byte(w.text))
	out := looked{Text: w.text, Failed: w.Failed(), More: w.More, Sound: o.Sound, Entry: v.Entry, Problems: []problem{},
		Soon: w.soon, Beside: w.beside.files()}
	if w.Job != nil {
		out.Unit = w.Job.Units.String()
	}
	said := w.Problems
	if w.soon {
		said = nil // of one that can be built; a part of it would be taken for all
	}
	for _, one := range said {
		q := problem{Line: one.Line, Column: one.Column, Level: one.Level.String(), Code: string(one.Code), Message: one.Message, Hint: one.Hint, Path: []string{}}
		if one.File == file {
			q.Path, q.Ways = append(q.Path, o.PathOf(one)...), o.WaysOut(one)
			q.Where = o.FieldAt(q.Path)
			q.inForm(one)
		} else {
			q.File, q.Path = one.File, []string{"slides-file"}
		}
		out.Problems = append(out.Problems, q)
	}
	if out.choose(w, v) {
		out.draw(o, w, v)
	}
	if !out.Failed {
		out.results(w, v)
	}
	out.Entry = min(max(out.Entry, 0), max(len(drawersOf(o.Root))-1, 0)) // one may have been removed
	out.Outline, out.Readings = nodeOf(o.Root, out.Entry), job.ReadingsOf(o.Root)
	return out
}

// inForm adds what a form says of a problem.
func (q *problem) inForm(p job.Problem) {
	said, do := p.InForm(q.Path)
	said, do = present.PlusMinus(said), present.PlusMinus(do)
	if said != q.Message {
		q.Said = said
	}
	if do != q.Hint {
		q.Do = do
	}
}

// choose lists the drawers, and chooses the one that is shown. It reports whether there is one: a
// drawer that could not be read is none, and no other is shown in its place.
func (l *looked) choose(w worked, v view) bool {
	b := w.Batch
	shown := shownOf(w, v)
	if shown < 0 {
		return false
	}
	l.Drawer = shown
	for i, d := range b.Drawers {
		one := drawer{Name: d.Spec.Name, Count: d.Spec.Count, Entry: w.Job.Drawers[i].Entry(), Numbers: []int{}}
		for _, p := range d.Parts {
			if !slices.Contains(one.Numbers, p.Number) {
				one.Numbers = append(one.Numbers, p.Number)
			}
		}
		l.Drawers = append(l.Drawers, one)
	}
	for _, k := range b.Banks {
		for _, i := range k.Drawers {
			l.Drawers[i].Bank = len(k.Drawers) > 1
		}
	}
	if v.Entry < 0 {
		l.Entry = l.Drawers[l.Drawer].Entry
	}
	return true
}

// shownOf is the place of the drawer that is shown: by its name, or of the entry in the form; else
// the first one of a job that can be built.
func shownOf(w worked, v view) int {
	list := w.Batch.Drawers
	at := slices.IndexFunc(list, func(d batch.Drawer) bool { return d.Spec.Name == v.Drawer })
	for i := range list {
		if at < 0 && v.Entry >= 0 && w.Job.Drawers[i].Entry() == v.Entry {
			at = i
		}
	}
	if at < 0 && len(list) > 0 && (!w.Failed() || v.Drawer == "" && v.Entry < 0) {
		at = 0
	}
	return at
}

// draw fills in the picture of the drawer that is shown, where there is one: also of a drawer that
// cannot be built, which is there to be looked at.
func (l *looked) draw(o job.Outline, w worked, v view) {
	d := w.Batch.Drawers[l.Drawer]
	if !d.Shaped {
		return
	}
	if v.Flat {
		l.Picture = pictureOf(d)
	} else {
		l.Scene = sceneOf(w.Batch, l.Drawer, v.Whole, !l.Failed)
	}
	l.Measures = measuresOf(o, w, l.Drawer)
	if l.Failed && v.Show == "fit" {
		l.Known = knownOf(d, w.Batch.Units)
	}
}

// results fills in what a job that can be built comes out as.
func (l *looked) results(w worked, v view) {
	b := w.Batch
	shown := b
	shown.Drawers = []batch.Drawer{b.Drawers[l.Drawer]}
	verdict := record.VerdictOn(b)
	l.Answer, l.Strip = verdict.Text, stripOf(verdict)
	l.Said = b.KindsSaid() + ", " +
		words.Count(b.Boxes(), "box", "boxes")
	l.Verdict = b.Drawers[l.Drawer].Outcome.String()
	l.Front = frontOf(b, w.Job, max(l.Entry, 0))
	l.Width = boxWidthOf(b, l.Drawer)
	l.Bears = present.Bearing(record.StrengthOf(shown.Drawers[0]), b.Units)
	switch v.Show {
	case "fit":
		f := record.ForecastOf(shown)
		l.Fit, l.Tables = fitOf(f.Drawers[0], b.Units), fitTables(shown, f, openingOf(b, l.Drawer))
		l.Fit.Said = "Each line is one measure by itself. A box is right where all of them are: " +
			b.Drawers[l.Drawer].Outcome.Right.String() + "."
	case "parts":
		tables, notes := partTables(b)
		l.Tables, l.Notes = tables, strings.Join(notes, "\n")
	case "setups":
		l.Tables = setupTables(b)
		l.Notes = string(present.SetupText(present.SetupsOf(record.WorkOf(b)), b.Units))
		l.Numbers = numbersOf(b)
	case "buy":
		l.Tables = buyTables(b, w.Plan)
	}
}

// node is a value of the file on its way to the form: its line, its text, and what is
// in it.
type node struct {
	Line    int      `json:"line"`
	Text    string   `json:"text,omitempty"`
	Names   []string `json:"names,omitempty"` // of the entries
	Entries []*node  `json:"entries,omitempty"`
	Items   []*node  `json:"items,omitempty"`
}

// drawersOf are the entries of the list of drawers.
func drawersOf(root *job.Node) []*job.Node {
	for _, e := range root.Entries {
		if e.Key == "drawers" {
			return e.Value.Items
		}
	}
	return nil
}

// nodeOf is the tree of a file with the fields of one of its drawers; of the others it
// has the names.
func nodeOf(root *job.Node, entry int) *node {
	out := plainNode(root, func(key string) bool { return key != "drawers" })
	for _, e := range root.Entries {
		if e.Key != "drawers" {
			continue
		}
		list := &node{Line: e.Value.At.Line}
		for at, item := range e.Value.Items {
			list.Items = append(list.Items,
				plainNode(item, func(key string) bool { return at == entry || key == "name" }))
		}
		out.Names, out.Entries = append(out.Names, e.Key), append(out.Entries, list)
	}
	return out
}

func plainNode(n *job.Node, wanted func(key string) bool) *node {
	out := &node{Line: n.At.Line, Text: n.Text}
	for _, e := range n.Entries {
		if wanted(e.Key) {
			out.Names = append(out.Names, e.Key)
			out.Entries = append(out.Entries, plainNode(e.Value, func(string) bool { return true }))
		}
	}
	for _, item := range n.Items {
		out.Items = append(out.Items, plainNode(item, func(string) bool { return true }))
	}
	return out
}
