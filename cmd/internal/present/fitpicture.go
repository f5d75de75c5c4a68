package present

import (
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// FitPicture is a measure as it is drawn, on paper and on the page.
func FitPicture(f record.Fit, u geom.Unit) paper.Forecast {
	between := func(r [2]record.Length) geom.Interval { return geom.Interval{Min: r[0].MM(), Max: r[1].MM()} }
	return paper.Forecast{Set: f.Nominal.MM(), Right: between(f.Limits), Likely: between(f.Likely),
		Worst: between(f.WorstCase), Below: f.Below, Above: f.Above, Unit: u}
}

// FitRow is a measure with what is said of it.
func FitRow(f record.Fit, u geom.Unit) paper.ForecastRow {
	return paper.ForecastRow{Forecast: FitPicture(f, u), Name: f.Short(),
		Numbers: "as set " + FitSet(f, u) + ", likely " + FitLikely(f, u),
		Help:    FitHelp(f, u), Verdict: FitVerdict(f), Odds: FitOdds(f), Wrong: !joinery.Verdict(f.Verdict).Right()}
}

// PlusMinus has the sign that a screen and paper have for it, and a terminal may not.
func PlusMinus(text string) string { return strings.ReplaceAll(text, "+-", "±") }

// FitVerdict is the verdict on a measure in words.
func FitVerdict(f record.Fit) string { return f.State.Words(joinery.Verdict(f.Verdict)) }

// FitText is a measure in words, for those who do not see its drawing.
func FitText(f record.Fit, u geom.Unit) string {
	return FitVerdict(f) + "; as set " + FitSet(f, u) + " " + u.String() + "; right is " +
		FitLimits(f, u) + ", likely " + FitLikely(f, u) + ", worst " + rangeBeside(f.WorstCase, f.Limits, u) + "; " +
		FitOdds(f)
}

// FitLimits are the least and the most of a measure that is right, rounded inward.
func FitLimits(f record.Fit, u geom.Unit) string { return within(f.Limits, u) }

// within prints limits of a record.
func within(r [2]record.Length, u geom.Unit) string { return words.Within(r[0].MM(), r[1].MM(), u) }

// FitSet is what a measure is set for.
func FitSet(f record.Fit, u geom.Unit) string { return beside(f.Nominal, f.Limits, u) }

// FitLikely are the least and the most of a measure that nearly all boxes have.
func FitLikely(f record.Fit, u geom.Unit) string { return rangeBeside(f.Likely, f.Limits, u) }

// FitOdds says how many boxes have a measure right.
func FitOdds(f record.Fit) string {
	if f.Of1000 == "all" {
		return "all right"
	}
	return f.Of1000 + " of 1,000 right"
}

// FitHelp says what would help a measure most: what is advised where it leaves its limits, else
// what moves it most; nothing where nothing does.
func FitHelp(f record.Fit, u geom.Unit) string {
	switch c := f.Largest; {
	case f.Advice != "":
		return f.Advice
	case c != nil && c.RootSumSquare > 0:
		return "moved most by " + c.Source + ", +-" + caliper(c.PlusMinus, u)
	}
	return ""
}
