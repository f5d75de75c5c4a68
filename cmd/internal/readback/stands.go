package readback

import (
	"slices"
	"strings"
)

// Groups of outputs that say the same.
var (
	reports = []string{PartsJSON, ReportJSON}
	printed = []string{PartsText, PartsTxt}
	lists   = []string{PartsCSV, PartsList}
	layouts = []string{SheetsText, SheetsJSON, SheetsCSV, ReportJSON, LayoutList, Page}
)

// stand says in which outputs all things of a kind have to stand once one of them has it.
// No measure means each.
type stand struct {
	kind, measures string // measures are divided by |
	in             []string
}

var stands = []stand{
	{"part", "quantity|drawer|role", slices.Concat(reports, lists)},
	{"part", "length|width|thickness|stock", slices.Concat(reports, lists, []string{CutList})},
	{"part", "grain", slices.Concat(reports, lists)},
	{"group", "pieces", slices.Concat(reports, printed, []string{CutList, Packet, ShopPage, Page})},
	{"group", "cuts", slices.Concat(reports, printed, []string{CutList, Page})},
	{"group", "parts", slices.Concat(reports, []string{CutList, Packet, ShopPage, Page})},
	{"group", "grain|banding", slices.Concat(reports, []string{CutList, Page})},
	{"group", "setting", []string{CutList, Page}},
	{"rough", "number|pieces|boards|length|width", slices.Concat(reports, printed, []string{Packet})},
	{"box", "outside width|outside height|outside depth", slices.Concat(reports, []string{Packet, ShopPage, Page})},
	{"box", "inside width|inside height|inside depth", slices.Concat(reports, []string{Packet, Page})},
	{"box", "count", slices.Concat(reports, []string{Packet, ShopPage, Page})},
	{"total", "kinds|boxes", slices.Concat(reports, []string{CheckText, Packet, ShopPage, Page})},
	{"total", "code|date", []string{ReportJSON, Packet}},
	{"total", "answer", slices.Concat(reports, []string{CheckText, Packet, ShopPage, Page})},
	{"total", "pieces", slices.Concat(reports, []string{CutList})},
	{"total", "different warnings|different notes", slices.Concat(reports, printed, []string{CheckText, CheckJSON, Page, Packet, ShopPage})},
	{"note", "drawers", slices.Concat(reports, printed, []string{CheckText, CheckJSON, Page, Packet, ShopPage})},
	{"warning", "drawers", slices.Concat(reports, printed, []string{CheckText, CheckJSON, Page, Packet, ShopPage})},
	{"stock", "pieces", slices.Concat(reports, printed, []string{CutList, Packet, ShopPage, Page})},
	{"stock", "area", slices.Concat(reports, printed)},
	{"layout", "sheets", layouts},
	{"layout", "said|yield in %", []string{SheetsText, SheetsJSON, ReportJSON, PartsTxt, Packet, Page}},
	{"row", "opening|front height|front lower edge|box lower edge|slide line",
		slices.Concat(reports, printed, []string{SlideLines, Packet})},
	{"row", "free above|free below", slices.Concat(reports, printed)},
	{"row", strings.Join(seasonHeads, "|"), slices.Concat(reports, printed, []string{Packet})},
	{"strip", strings.Join(stripHeads, "|"), slices.Concat(reports, printed, []string{Packet})},
	{"pilot holes", "", slices.Concat(reports, []string{Packet})},
	{"spacer", "length", slices.Concat(reports, printed, []string{Packet})},
	{"opening", "width|height|depth|slide", slices.Concat(reports, printed, []string{Packet})},
	{"opening", "boxes wide", slices.Concat(reports, printed, []string{Packet})},
	{"opening", widthTerms, slices.Concat(reports, printed, []string{Packet})},
	{"opening", "packing|slide length", slices.Concat(reports, printed)},
	{"fit", "nominal|likely from|likely to|worst from|worst to|limit from|limit to|verdict|right of 1,000", slices.Concat(reports, []string{FitJSON, Page})},
	{"verdict", "said", slices.Concat(reports, []string{FitJSON, SetupJSON, CheckJSON})},
	{"board", "mean|least|most", []string{FitText, FitJSON, Page}},
	{"stack", "diagonal|diagonals apart", []string{FitJSON, Packet}},
	{"weight", "empty in kg|empty in lb", slices.Concat(reports, printed, []string{Packet})},
	{"weight", "loaded in kg|loaded in lb|slides carry in kg|slides carry in lb", slices.Concat(reports, printed)},
	{"sag", "clamped|simple|limit", slices.Concat(reports, printed)},
	{"bore", "", slices.Concat(reports, printed)},
	{"buy", "quantity|unit", []string{ReportJSON, BuyList, Packet, ShopPage, Page}},
}

// outputsOf are the outputs of a kind, by its measure; those of every measure have none.
var outputsOf = func() map[[2]string][]string {
	list := make(map[[2]string][]string)
	for _, s := range stands {
		for _, m := range strings.Split(s.measures, "|") {
			list[[2]string{s.kind, m}] = append(list[[2]string{s.kind, m}], s.in...)
		}
	}
	return list
}()

// standsIn are the outputs in which a thing has to stand once it stands in any.
func (j Job) standsIn(k Key) []string {
	in := slices.Concat(outputsOf[[2]string{k.Kind, ""}], outputsOf[[2]string{k.Kind, k.Measure}])
	drawer, measure, _ := strings.Cut(k.Of, ": ")
	if k.Kind == "fit" && strings.HasPrefix(k.Measure, "limit ") && slices.Contains(formMeasures, measure) {
		in = append(in, Packet) // its form for readings
	}
	if (k.Kind == "box" && k.Measure != "count" || k.Kind == "fit") && !slices.Contains(j.Shown, drawer) {
		in = slices.DeleteFunc(in, func(out string) bool { return out == Page })
	}
	if k.Kind == "board" && len(j.Shown) < len(j.Drawers) { // boards come with the drawers
		in = slices.DeleteFunc(in, func(out string) bool { return out == Page })
	}
	if k.Kind == "buy" && !strings.HasPrefix(k.Of, "board ") { // the board has a table of its own
		in = append(in, printed...)
	}
	return in
}
