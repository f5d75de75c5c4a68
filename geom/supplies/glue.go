package supplies

// gluePerArea is in grams a square meter of joint, spread on one face; common practice, no
// source.
const gluePerArea = 180.0

// GlueFor is how much glue, in kilograms, joints of an area in square millimeters take.
func GlueFor(area float64) float64 {
	const squareMM, grams = 1e6, 1000 // of a square meter, of a kilogram
	return area / squareMM * gluePerArea / grams
}
