// Command nesting lays out public instances of packing and cutting stock problems, and
// jobs of this project's own, checks every layout, and prints the table of
// README.md beside this file:
//
//	go run ./testdata/nesting [-rows EXPRESSION] [-instances EXPRESSION] [-list] [-cuts] \
//	    [-without STRATEGY] FOLDER
//
// The folder holds the instances as JSON, as DEVELOPERS.md says; they are not part of
// the project. A missing file is a failure; without a folder the jobs alone are laid out.
// With -cuts the cuts of every guillotine layout are made too, on boards of real sizes.
package main

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"log"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"syscall"
	"time"

	"drawerwright/geom/breakdown"
	"drawerwright/geom/nest"
)

func main() {
	log.SetFlags(0)
	log.SetPrefix("nesting: ")
	b := bench{rows: regexp.MustCompile(""), names: regexp.MustCompile("")}
	flag.TextVar(b.rows, "rows", b.rows, "lay out the rows alone whose name this `expression` matches")
	flag.TextVar(b.names, "instances", b.names, "lay out the instances alone whose name this `expression` matches")
	flag.BoolVar(&b.list, "list", false, "list the instances that are not at the best known")
	flag.BoolVar(&b.cuts, "cuts", false, "make the cuts of guillotine layouts too, on boards of real sizes")
	flag.Func("without", "leave a `strategy` of the search out", b.leaveOut)
	flag.Parse()
	if flag.NArg() > 1 {
		log.Fatal("the instances are in one folder")
	}
	b.dir = flag.Arg(0)
	fmt.Printf("%s, %d processors\n\n", runtime.Version(), runtime.NumCPU())
	fmt.Println("| what | sheets | goal | best known, or bound | proven best | longest | all |")
	fmt.Println("|---|---|---|---|---|---|---|")
	if b.dir != "" {
		b.known()
	}
	b.shop()
}

// known lays out the public instances.
func (b *bench) known() {
	for _, m := range []struct {
		way        nest.Method
		turn       bool
		best, goal string
	}{
		{nest.Guillotine, false, "OG_3stage", "3,620"}, {nest.Free, false, "OF_by_dominance", "3,600"},
		{nest.Guillotine, true, "RG_3stage", "3,480"}, {nest.Free, true, "RF_by_dominance", "3,465"},
	} {
		title := fmt.Sprintf("bin packing, %s, %s", m.way, how(m.turn))
		b.lay(set{"bwmv", title, m.way, m.turn, m.best, m.goal, 200})
	}
	for _, s := range []set{
		{"csp_demand_classic", "cutting stock, classic", nest.Guillotine, false, "OG_3stage_homog_V", "251", 3000},
		{"csp_demand_atp", "cutting stock, large", nest.Guillotine, false, "OG_3stage_homog_V", "211", 3000},
		{"furniture_a", "furniture orders", nest.Guillotine, false, "OG", "1.5 % over the bound", 1500},
	} {
		b.lay(s)
	}
	b.strips(false, "15")
	b.strips(true, "")
}

// bench is what is laid out of a folder.
type bench struct {
	dir         string
	rows, names *regexp.Regexp
	list, cuts  bool
	without     nest.Strategy
}

// leaveOut leaves a strategy out, which shows what it adds.
func (b *bench) leaveOut(name string) error {
	if b.without = nest.Strategy(name); !slices.Contains(nest.Strategies, b.without) {
		return fmt.Errorf("strategies are %v", nest.Strategies)
	}
	return nil
}

// instance is one of a file.
type instance struct {
	Name  string
	W     int64 `json:"bin_w"`
	H     int64 `json:"bin_h"`
	Strip int64 `json:"strip_w"`
	High  int64 `json:"sheet_h"`
	Items []struct {
		W, H   int64
		Demand int
	}
	Best map[string]*int `json:"best_known"`
}

func (in instance) pieces(turn bool) (out []nest.Piece) {
	for i, it := range in.Items {
		out = append(out, nest.Piece{Name: fmt.Sprint(i), Length: it.W, Width: it.H, Count: it.Demand, MayRotate: turn})
	}
	return out
}

func (b *bench) read(name string) (list []instance) {
	data, err := os.ReadFile(filepath.Join(b.dir, name+".json"))
	check(err)
	var file struct{ Instances []instance }
	check(json.Unmarshal(data, &file))
	if len(file.Instances) == 0 {
		log.Fatalf("%s has no instances", name)
	}
	return slices.DeleteFunc(file.Instances, func(in instance) bool { return !b.names.MatchString(in.Name) })
}

func check(err error) {
	if err != nil {
		log.Fatal(err)
	}
}

// set is the instances of a file, with what they are held against.
type set struct {
	file, title string
	way         nest.Method
	turn        bool
	best        string // the key of the best known number of sheets
	goal        string
	effort      int
}

// lay lays out the instances of a set's file.
func (b *bench) lay(s set) {
	if !b.rows.MatchString(s.title) {
		return
	}
	var sheets, best, bound, proven int
	var all, longest time.Duration
	list := b.read(s.file)
	if len(list) == 0 {
		return
	}
	for _, in := range list {
		board := nest.Sheet{Name: in.Name, Length: in.W, Width: in.H, Price: 1}
		l, took := b.one(in.pieces(s.turn), board, nest.Rules{Method: s.way}, s.effort)
		sheets += l.Count
		bound += l.MinSheets
		if v := in.Best[s.best]; v != nil {
			best += *v
			if b.list && l.Count != *v {
				log.Printf("%s: %s takes %d sheets, best known %d, at least %d, %.2f s",
					s.title, in.Name, l.Count, *v, l.MinSheets, took.Seconds())
			}
		}
		if l.Optimal() {
			proven++
		}
		all += took
		longest = max(longest, took)
	}
	known := fmt.Sprintf("%d, bound %d", best, bound)
	if best == 0 {
		known = fmt.Sprintf("bound %d", bound)
	}
	fmt.Printf("| %s, %d instances | %d | %s | %s | %d | %.2f s | %.0f s |\n", s.title, len(list), sheets,
		s.goal, known, proven, longest.Seconds(), all.Seconds())
}

// strips lays all pieces of each instance on the one sheet that they fill without waste.
func (b *bench) strips(turn bool, goal string) {
	title := "sheets filled without waste, free, " + how(turn)
	if !b.rows.MatchString(title) {
		return
	}
	var all, longest time.Duration
	list := b.read("hopper_turton_c")
	if len(list) == 0 {
		return
	}
	reached := 0
	for _, in := range list {
		s := nest.Sheet{Name: in.Name, Length: in.Strip, Width: in.High, Count: 1, Price: 1}
		l, took := b.one(in.pieces(turn), s, nest.Rules{Method: nest.Free}, 5000)
		if !slices.ContainsFunc(l.Remaining, func(n int) bool { return n > 0 }) {
			reached++
		}
		all += took
		longest = max(longest, took)
	}
	fmt.Printf("| %s, %d instances | %d reached | %s | %d | %d | %.2f s, mean %.2f s | %.0f s |\n",
		title, len(list), reached, goal, len(list), reached, longest.Seconds(), all.Seconds()/float64(len(list)), all.Seconds())
}

// how pieces may lie.
func how(turn bool) string {
	if turn {
		return "turned"
	}
	return "as they lie"
}

// one lays out and checks.
func (b *bench) one(pieces []nest.Piece, s nest.Sheet, r nest.Rules, effort int) (nest.Layout, time.Duration) {
	start := time.Now()
	l, err := nest.Lay(context.Background(), pieces, []nest.Sheet{s}, r, nest.Options{Effort: effort, Without: b.without})
	took := time.Since(start)
	check(err)
	if err := nest.Check(l, pieces, []nest.Sheet{s}, r); err != nil {
		log.Fatalf("%s: %v", s.Name, err)
	}
	if b.cuts && r.Method == nest.Guillotine {
		if err := sawn(l, pieces, s, r); err != nil {
			log.Fatalf("%s: %v", s.Name, err)
		}
	}
	return l, took
}

// sawn makes the cuts of a guillotine layout: at a saw that rips and crosscuts all, at one that takes half of a sheet,
// with boards a little or much larger than what they give, and with nothing but a guide; with a blade that takes what it should, and where there is a kerf a sixteenth more or
// less.
func sawn(l nest.Layout, pieces []nest.Piece, z nest.Sheet, r nest.Rules) error {
	var sheets []breakdown.Sheet
	for i, one := range l.Sheets {
		board, ok := nest.Cuts(one, pieces, z, r)
		if !ok {
			return fmt.Errorf("sheet %d does not come apart", i+1)
		}
		sheets = append(sheets, breakdown.Sheet{Name: fmt.Sprint(i + 1), Count: 1, Size: z, Board: board,
			Names: func([]int) (name, short string) { return "piece", "piece" }})
	}
	long := max(z.Length, z.Width)
	for i, reach := range []int64{0, long / 2, long, long / 2} {
		rules := breakdown.Rules{Kerf: r.Kerf, Allowance: r.Kerf / 2, MinGuided: long / 8, RipCapacity: reach,
			CrosscutCapacity: reach, SledCapacity: 2 * reach, MaxStop: reach, Squared: reach == long}
		if i == 3 {
			rules.Allowance = 2 * r.Kerf
		}
		cuts, laid := breakdown.Cuts(sheets, rules)
		for _, more := range []int64{0, r.Kerf / 16, -r.Kerf / 16} {
			if err := breakdown.Check(sheets, cuts, laid, rules, more); err != nil {
				return fmt.Errorf("at a saw that takes %d, with a kerf %d wider: %w", reach, more, err)
			}
		}
	}
	return nil
}

// shop lays out what shops have, in micrometers: sizes of drawer parts on a sheet of
// 2,440 x 1,220 mm with a kerf of 3.2 mm.
func (b *bench) shop() {
	board := nest.Sheet{Name: "board", Length: 2_440_000, Width: 1_220_000, Price: 1, Trim: nest.Trim{Left: 5000, Right: 5000, Bottom: 5000, Top: 5000}}
	for _, j := range []struct {
		parts, sizes int
		way          nest.Method
		goal         string
	}{{500, 60, nest.Guillotine, "one over the bound, 2 s"}, {500, 60, nest.Free, "one over the bound, 2 s"}, {10_000, 1000, nest.Guillotine, ""}, {100_000, 100_000, nest.Guillotine, "30 s, 1 GB"}} {
		title := fmt.Sprintf("%d drawer parts of %d sizes, %s", j.parts, j.sizes, j.way)
		if !b.rows.MatchString(title) {
			continue
		}
		rnd := rand.New(rand.NewPCG(1, uint64(j.sizes)))
		pieces := make([]nest.Piece, j.sizes)
		for i := range pieces {
			pieces[i] = nest.Piece{Name: fmt.Sprint(i), Length: 250_000 + int64(rnd.IntN(40_000))*10, Width: 60_000 + int64(rnd.IntN(24_000))*10, Count: 1}
			if i%3 == 2 { // bottoms
				pieces[i].Width = 250_000 + int64(rnd.IntN(25_000))*10
			}
		}
		for n := j.sizes; n < j.parts; n++ {
			pieces[rnd.IntN(j.sizes)].Count++
		}
		l, took := b.one(pieces, board, nest.Rules{Method: j.way, Kerf: 3200}, 0)
		var use syscall.Rusage
		check(syscall.Getrusage(syscall.RUSAGE_SELF, &use))
		proven := 0
		if l.Optimal() {
			proven = 1
		}
		fmt.Printf("| %s | %d | %s | bound %d | %d | %.2f s | %d MB so far |\n", title, l.Count, j.goal, l.MinSheets, proven, took.Seconds(), use.Maxrss/1024)
	}
}
