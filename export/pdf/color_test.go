package pdf

import (
	"encoding/binary"
	"math"
	"testing"
)

// TestStandardColors: the profile says how long it is, its primaries are those that are published of sRGB for the
// white of profiles (D50), and together they make that white.
func TestStandardColors(t *testing.T) {
	p := standardColors()
	if n := int(binary.BigEndian.Uint32(p)); n != len(p) {
		t.Errorf("%d bytes, it says %d", len(p), n)
	}
	tag := func(name string) (list []float64) {
		for i := range int(binary.BigEndian.Uint32(p[128:])) {
			entry := p[132+12*i:]
			if string(entry[:4]) != name {
				continue
			}
			from, long := binary.BigEndian.Uint32(entry[4:]), binary.BigEndian.Uint32(entry[8:])
			for data := p[from+8 : from+long]; len(data) > 0; data = data[4:] {
				list = append(list, float64(int32(binary.BigEndian.Uint32(data)))/65536)
			}
		}
		return list
	}
	// Published values of the profile of IEC 61966-2-1, from memory.
	want := map[string][3]float64{"rXYZ": {0.4361, 0.2225, 0.0139}, "gXYZ": {0.3851, 0.7169, 0.0971},
		"bXYZ": {0.1431, 0.0606, 0.7141}, "wtpt": {0.9642, 1, 0.8249}}
	var sum [3]float64
	for name, xyz := range want {
		got := tag(name)
		for i, v := range xyz {
			if len(got) != 3 || math.Abs(got[i]-v) > 2e-4 {
				t.Fatalf("%s is %v, published %v", name, got, xyz)
			}
			if name != "wtpt" {
				sum[i] += got[i]
			}
		}
	}
	for i, v := range d50 {
		if math.Abs(sum[i]-v) > 1e-4 {
			t.Errorf("the primaries make %v", sum)
		}
	}
}
