package sheets

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/list"
	"drawerwright/geom"
	"drawerwright/geom/nest"
)

func read(t *testing.T, file string) batch.Batch {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	beside := func(name string) (io.ReadCloser, error) { return os.Open(filepath.Join(filepath.Dir(file), name)) }
	j, problems := job.Read(file, f, job.Files(beside))
	if j == nil {
		t.Fatal(problems)
	}
	b, _ := batch.Make(t.Context(), j)
	return b
}

// TestEveryPieceHasASheet: of every sample, the pieces of each part come from as many
// sheets as there are pieces, and whatever is sawn has cuts that give them all.
func TestEveryPieceHasASheet(t *testing.T) {
	files, _ := filepath.Glob("../../../samples/*.yaml")
	for _, file := range files {
		b := read(t, file)
		plan, err := Of(context.Background(), b, nil, Search{Options: nest.Options{Effort: 20}})
		if err != nil {
			t.Fatal(err)
		}
		if len(plan.Stocks) == 0 {
			t.Errorf("%s: no stock is laid out", file)
		}
		for i := range plan.Stocks {
			s := &plan.Stocks[i]
			from := s.Sources()
			pieces, sheets := 0, 0
			for _, one := range s.Laid {
				if one.Number != sheets+1 {
					t.Errorf("%s: sheet %d comes after %d", s.Name, one.Number, sheets)
				}
				sheets += one.Count
			}
			for _, d := range b.Drawers {
				for _, p := range d.Parts {
					if p.Stock.Name != s.Name {
						continue
					}
					if pieces += p.Quantity; len(from[p.Name]) != p.Quantity {
						t.Errorf("%s: %d of %d pieces of %s are on sheets", file, len(from[p.Name]), p.Quantity, p.Name)
					}
					for _, n := range from[p.Name] {
						if n.Sheet < 1 || n.Sheet > sheets {
							t.Errorf("%s: %s is on sheet %d of %d", file, p.Name, n.Sheet, sheets)
						}
					}
				}
			}
			given := 0
			for _, c := range s.Cuts {
				if c.Yields.Piece {
					given += c.Count
				}
				if c.Remainder.Piece {
					given += c.Count
				}
			}
			if s.Rules.Method == nest.Guillotine && given != pieces {
				t.Errorf("%s, %s: cuts give %d of %d pieces", file, s.Name, given, pieces)
			}
		}
	}
}

// TestSequence: the fronts of a cabinet whose stock asks for it lie side by side, the
// lowest drawer's first.
func TestSequence(t *testing.T) {
	b := read(t, "../../../samples/kitchen-bank.yaml")
	plan, err := Of(context.Background(), b, nil, Search{Options: nest.Options{Effort: 20}})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range plan.Stocks {
		if s.Name != "front 19" {
			continue
		}
		at := make(map[string]nest.Placement)
		for _, p := range s.Laid[0].Placements {
			if s.Pieces[p.Piece].Set > 0 {
				at[s.Parts[p.Piece][0].Drawer] = p
			}
		}
		row := b.Banks[0].Drawers // from the top
		for i := 1; i < len(row); i++ {
			above, below := at[b.Drawers[row[i-1]].Spec.Name], at[b.Drawers[row[i]].Spec.Name]
			if above.X != below.X || above.Y != below.Y+s.Pieces[below.Piece].Width+s.Rules.Kerf {
				t.Errorf("%s does not lie over %s", b.Drawers[row[i-1]].Spec.Name, b.Drawers[row[i]].Spec.Name)
			}
		}
		if len(at) != len(row) {
			t.Errorf("%d fronts in sequence of %d", len(at), len(row))
		}
	}
}

// TestBatches: with two batches in the rack, all fronts of a cabinet come from one.
func TestBatches(t *testing.T) {
	b := read(t, "../../../samples/kitchen-bank.yaml")
	of := b.Sheets.Of["front 19"]
	of.Match = job.MatchBatch
	size := of.Sizes[0]
	size.Length, size.Width = 700, 450 // two or three fronts on each
	one, two := size, size
	one.Name, one.Batch, one.Count = "one", "A", 2
	two.Name, two.Batch = "two", "B"
	of.Sizes = []job.SheetSize{one, two}
	b.Sheets.Of["front 19"] = of
	plan, err := Of(context.Background(), b, nil, Search{Options: nest.Options{Effort: 20}})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range plan.Stocks {
		if s.Name != "front 19" {
			continue
		}
		batches := make(map[string]bool)
		for _, l := range s.Laid {
			for _, p := range l.Placements {
				if s.Pieces[p.Piece].Match > 0 {
					batches[s.Sheets[l.Sheet].Batch] = true
				}
			}
		}
		if len(batches) != 1 || s.Remaining() > 0 {
			t.Errorf("batches %v, %d left", batches, s.Remaining())
		}
	}
}

// TestOffcuts: what is put back is no larger than what is left.
func TestOffcuts(t *testing.T) {
	b := read(t, "../../../samples/inch-chest.yaml")
	shelf := []list.Offcut{{Stock: "maple ply", Name: "old", Length: int64(geom.LengthOf(900)), Width: int64(geom.LengthOf(600))}}
	plan, err := Of(context.Background(), b, shelf, Search{Options: nest.Options{Effort: 20}})
	if err != nil {
		t.Fatal(err)
	}
	used, left := plan.Offcuts()
	if len(used) != 1 || used[0] != shelf[0] {
		t.Errorf("used %v", used)
	}
	most := int64(0)
	for _, s := range plan.Stocks {
		for _, l := range s.Laid {
			for _, o := range l.Offcuts {
				most = max(most, o.Length, o.Width)
			}
		}
	}
	step := int64(geom.LengthOf(geom.InchMM / 32))
	for _, o := range left {
		if o.Length%step != 0 || o.Width%step != 0 || max(o.Length, o.Width) > most {
			t.Errorf("%+v is put back", o)
		}
	}
	if len(left) == 0 {
		t.Error("nothing is put back")
	}
}
