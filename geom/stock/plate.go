package stock

// The plates of which templates are cut, in mm: thinner ones do not lie flat, thicker ones no
// small laser cuts. Common practice, no source.
const (
	ThinnestPlate = 3
	ThickestPlate = 6
	plateRoom     = 0.05 // a caliper reading may be off by that
)

// IsPlate reports whether templates are cut from boards of a thickness in mm.
func IsPlate(thickness float64) bool {
	return thickness >= ThinnestPlate-plateRoom && thickness <= ThickestPlate+plateRoom
}
