package wood

// The range of the Wood Handbook's table 4-2, which equation 4-5 was made for:
// 30 to 270 degrees Fahrenheit, 5 to 95 percent of relative humidity.
const (
	MinTempC = (30.0 - 32) / 1.8  // -1.1
	MaxTempC = (270.0 - 32) / 1.8 // 132.2
	MinRH    = 0.05
	MaxRH    = 0.95
)

// EMC gives the equilibrium moisture content in percent: what wood comes to, at
// last, in air of a temperature in degrees Celsius and a relative humidity from
// 0 to 1. Wood Handbook, equation 4-5 with the constants for Celsius (FPL-GTR-282,
// p. 4-3; secondary). Where it was compared with table 4-2, up to 38 degrees, it
// agrees to 0.06; species differ by more, above all in damp air. Outside [MinTempC]..[MaxTempC] and [MinRH]..[MaxRH] it
// is an error.
func EMC(tempC, rh float64) (float64, error) {
	if err := inRange("the temperature", tempC, MinTempC, MaxTempC, " degrees Celsius"); err != nil {
		return 0, err
	}
	if err := inRange("the relative humidity", rh, MinRH, MaxRH, ""); err != nil {
		return 0, err
	}
	t, tt := tempC, tempC*tempC
	w := 349 + float64(1.29*t) + float64(0.0135*tt)
	k := 0.805 + float64(0.000736*t) - float64(0.00000273*tt)
	k1 := 6.27 - float64(0.00938*t) - float64(0.000303*tt)
	k2 := 1.91 + float64(0.0407*t) - float64(0.000293*tt)

	kh := k * rh
	one := k1 * kh           // water held once by a place in the wood
	two := k1 * k2 * kh * kh // and twice
	held := kh/(1-kh) + (one+float64(2*two))/(1+one+two)
	return 1800 / w * held, nil
}
