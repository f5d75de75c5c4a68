package readback

import (
	"encoding/csv"
	"slices"
	"strings"
)

// csvRows calls for each row of a list, with what gives a column by its name.
func (r *reading) csvRows(text string, each func(get func(column string) string)) {
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil || len(all) == 0 {
		r.fail("no list: %v", err)
	}
	for _, row := range all[1:] {
		each(func(column string) string {
			i := slices.Index(all[0], column)
			if i < 0 {
				r.fail("no column %q among %q", column, all[0])
			}
			return row[i]
		})
	}
}

func partsCSV(r *reading, text string) {
	r.csvRows(text, func(get func(string) string) {
		name := get("part")
		for _, m := range []string{"drawer", "role", "quantity", "stock", "grain"} {
			r.words("part", name, m, get(m))
		}
		for _, m := range []string{"length", "width", "thickness"} {
			r.decimal("part", name, m, get(m))
		}
		r.size(name, get("size"), get("length"), get("width"))
	})
}

// size holds the size that people read against the numbers beside it.
func (r *reading) size(name, size, length, width string) {
	a, b, ok := strings.Cut(strings.TrimSuffix(size, " "+r.unit), " x ")
	if !ok {
		r.fail("%s: size %q", name, size)
	}
	r.printed("part", name, "length", a)
	r.printed("part", name, "width", b)
}

func cutListCSV(r *reading, text string) {
	pieces := 0
	stocks := make(map[string]int)
	r.csvRows(text, func(get func(string) string) {
		names := strings.Fields(get("parts"))
		first := names[0]
		r.words("group", first, "parts", strings.Join(names, ", "))
		r.words("group", first, "number", get("number"))
		for _, m := range []string{"pieces", "spares", "cuts", "grain", "banding", "setting"} {
			r.words("group", first, m, get(m))
		}
		for _, name := range names {
			r.words("part", name, "stock", get("stock"))
			for _, m := range []string{"length", "width", "thickness"} {
				r.decimal("part", name, m, get(m))
			}
		}
		r.size(first, get("size"), get("length"), get("width"))
		n := whole(r, get("pieces"))
		pieces, stocks[get("stock")] = pieces+n, stocks[get("stock")]+n
	})
	for stock, n := range stocks {
		r.count("stock", stock, "pieces", n)
	}
	r.count("total", "job", "pieces", pieces)
}

func buyCSV(r *reading, text string) {
	r.csvRows(text, func(get func(string) string) {
		name := get("kind") + " " + get("name")
		r.words("buy", name, "quantity", get("quantity"))
		r.words("buy", name, "unit", get("unit"))
		r.money("buy", name, "cost", get("cost"))
	})
}

func slideLinesCSV(r *reading, text string) {
	r.csvRows(text, func(get func(string) string) {
		drawer := get("drawer")
		r.words("row", drawer, "opening", get("opening"))
		if get("slide_line") != "" {
			r.decimal("row", drawer, "slide line", get("slide_line"))
		}
		r.decimal("row", drawer, "box lower edge", get("box_bottom"))
		r.decimal("row", drawer, "front lower edge", get("front_bottom"))
		r.decimal("row", drawer, "front height", get("front_height"))
	})
}
