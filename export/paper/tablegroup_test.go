package paper

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawerwright/export/drawing"
)

// grouped prints groups of cuts in columns of a page, some of which is taken, and gives the pages.
func grouped(taken float64, across, rows int) (pages []drawing.Page) {
	b := &Book{Size: A4, Out: func(p drawing.Page) { pages = append(pages, p) }}
	b.Page()
	b.Space(taken)
	var groups []Group
	for g := range 3 {
		one := Group{Head: fmt.Sprintf("Fence %d mm", 100*(g+1))}
		for i := range rows {
			one.Rows = append(one.Rows, []string{fmt.Sprint("cut ", g, "-", i), "offcut"})
		}
		groups = append(groups, one)
	}
	b.Columns(across, func() { b.Groups([]Column{{Head: "cut"}, {Head: "rest"}}, groups) })
	b.Close()
	return pages
}

// TestGroupsGoOn: every row of a group stands below what is set for it, in its own column of its own page, and below
// the heads; no head and no line of a group stands at the end of a column.
func TestGroupsGoOn(t *testing.T) {
	for taken := 0.0; taken < 240; taken += 4 {
		for _, across := range []int{1, 2, 3} {
			rows := 0
			for _, p := range grouped(taken, across, 25) {
				set, last := "", "cut 0-0"
				for _, w := range p.Texts {
					switch {
					case w.String == "rest":
						if strings.HasPrefix(last, "Fence") || last == "rest" {
							t.Errorf("%g taken, %d columns: %q stands at the end of a column", taken, across, last)
						}
						set = ""
					case strings.HasPrefix(w.String, "Fence"):
						set = w.String[len("Fence "):len("Fence 1")]
					case strings.HasPrefix(w.String, "cut "):
						rows++
						var of, at int
						fmt.Sscanf(w.String, "cut %d-%d", &of, &at)
						if set != fmt.Sprint(of+1) {
							t.Errorf("%g taken, %d columns: %s stands below what is set for "+
								"%q", taken, across, w.String, set)
						}
					default:
						continue
					}
					last = w.String
				}
				if strings.HasPrefix(last, "Fence") {
					t.Errorf("%g taken, %d columns: %q stands at the end of a page", taken, across, last)
				}
			}
			if rows != 75 {
				t.Errorf("%g taken, %d columns: %d rows", taken, across, rows)
			}
		}
	}
}

// TestTablesEndInSomeRows: on the page on which a table of eight rows ends are three of them or more, wherever it
// begins.
func TestTablesEndInSomeRows(t *testing.T) {
	torn := 0
	for taken := 150.0; taken < 250; taken++ {
		var on []int // of each page how many rows
		b := &Book{Size: A4, Out: func(p drawing.Page) {
			rows := 0
			for _, w := range p.Texts {
				if w.String == "row" {
					rows++
				}
			}
			on = append(on, rows)
		}}
		b.Page()
		b.Space(taken)
		b.Table([]Column{{Head: "head"}}, slices.Repeat([][]string{{"row"}}, 8))
		b.Close()
		if len(on) == 2 && on[0] > 0 {
			torn++
		}
		if last := on[len(on)-1]; last < 3 {
			t.Errorf("%g taken: %v rows on pages", taken, on)
		}
	}
	if torn < 10 {
		t.Errorf("%d tables are torn", torn)
	}
}

// TestColumnsGoOnEvenly: what goes on the next page in columns is about as long in each of them there.
func TestColumnsGoOnEvenly(t *testing.T) {
	pages := grouped(150, 3, 25)
	if len(pages) != 2 {
		t.Fatalf("%d pages", len(pages))
	}
	lowest := make(map[int]float64) // by the place of the column
	for _, w := range pages[1].Texts {
		if strings.HasPrefix(w.String, "cut ") {
			column := int(w.At.X / 60)
			if y, known := lowest[column]; !known || w.At.Y < y {
				lowest[column] = w.At.Y
			}
		}
	}
	var ends []float64
	for _, y := range lowest {
		ends = append(ends, y)
	}
	const rows = 3 * 6.0 // mm: a group is not broken before its first row
	if len(ends) != 3 || slices.Max(ends)-slices.Min(ends) > rows {
		t.Errorf("the columns end at %v", ends)
	}
}

// TestTablesAreReadable: however crowded a table is, its capitals are 2.5 mm high.
func TestTablesAreReadable(t *testing.T) {
	var pages []drawing.Page
	b := &Book{Size: A4, Out: func(p drawing.Page) { pages = append(pages, p) }}
	var columns []Column
	var row []string
	for range 14 {
		columns, row = append(columns, Column{Head: "a heading of words"}), append(row, "cells-of-one-word")
	}
	b.Columns(2, func() { b.Table(columns, [][]string{row}) })
	b.Close()
	for _, w := range pages[0].Texts[:28] {
		if w.Size < drawing.Capitals(2.5)-1e-9 {
			t.Fatalf("%q is %.2f mm", w.String, w.Size)
		}
	}
}

// TestFigureHasRoom: a drawing that no column of the rest of a page has room for stands on the next one, and not over
// the foot of this.
func TestFigureHasRoom(t *testing.T) {
	var pages []drawing.Page
	b := &Book{Size: A4, Out: func(p drawing.Page) { pages = append(pages, p) }}
	b.Page()
	b.Space(0.7 * b.whole())
	figure := drawing.Drawing{Width: 50, Height: 100}
	figure.Words(0, 0, 3, drawing.Regular, "figure")
	b.Columns(2, func() {
		b.Text("left")
		b.Break()
		b.Figure(figure, "")
	})
	b.Close()
	for i, p := range pages {
		for _, w := range p.Texts {
			if w.String == "figure" && (i == 0 || w.At.Y < bottomEdge) {
				t.Errorf("on page %d it ends at %.1f", i+1, w.At.Y)
			}
		}
	}
}

// TestNoRowStandsAlone: wherever a table or a list of forecasts begins, the last page of one that goes on has two rows
// of it or more.
func TestNoRowStandsAlone(t *testing.T) {
	turned := 0
	for rows := 3; rows <= 8; rows++ {
		for taken := 0.0; taken < 265; taken += 2.5 {
			for what, draw := range map[string]func(b *Book){
				"table": func(b *Book) {
					list := make([][]string, rows)
					for i := range list {
						list[i] = []string{fmt.Sprintf("row %d", i), strings.Repeat("words of a cell that is broken ", 12)}
					}
					b.Table([]Column{{Head: "name"}, {Head: "words"}}, list)
				},
				"forecasts": func(b *Book) {
					list := make([]ForecastRow, rows)
					for i := range list {
						list[i] = ForecastRow{Name: fmt.Sprintf("row %d", i), Numbers: "right 1 to 2", Verdict: "as asked"}
						list[i].Forecast.Right.Max, list[i].Forecast.Worst.Max, list[i].Forecast.Likely.Max = 2, 2, 1
					}
					b.Forecasts(list)
				},
			} {
				var last []int // rows of each page
				b := &Book{Size: A4, Out: func(p drawing.Page) {
					n := 0
					for _, w := range p.Texts {
						if strings.HasPrefix(w.String, "row ") {
							n++
						}
					}
					last = append(last, n)
				}}
				b.Page()
				b.Space(taken)
				draw(b)
				b.Close()
				if n := last[len(last)-1]; len(last) > 1 && n < rows {
					turned++
					if n == 1 {
						t.Errorf("%s of %d rows, %g taken: one row on the last page", what, rows, taken)
					}
				}
			}
		}
	}
	if turned == 0 {
		t.Error("nothing went on over a page")
	}
}
