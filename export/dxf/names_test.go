package dxf

import (
	"errors"
	"strings"
	"testing"
)

func TestValidLayerName(t *testing.T) {
	for _, c := range []struct {
		name       string
		r2000, r12 error
	}{
		{"A", nil, nil},
		{"0", nil, nil},
		{"DADO_INSIDE_5-99MM", nil, nil},
		{"-_-", nil, nil},
		{strings.Repeat("A", 31), nil, nil},
		{strings.Repeat("A", 32), nil, ErrLayerNameLong},
		{strings.Repeat("A", 255), nil, ErrLayerNameLong},
		{strings.Repeat("A", 256), ErrLayerNameLong, ErrLayerNameLong},
		{"", ErrLayerName, ErrLayerName},
		{"dado", ErrLayerName, ErrLayerName},
		{"DADO INSIDE", ErrLayerName, ErrLayerName},
		{"DADO.5", ErrLayerName, ErrLayerName},
		{"DADO$", ErrLayerName, ErrLayerName},
		{"DADO\n", ErrLayerName, ErrLayerName},
		{"DADO\x00", ErrLayerName, ErrLayerName},
		{"NÚT", ErrLayerName, ErrLayerName},
		{"Ａ", ErrLayerName, ErrLayerName}, // a full-width A
	} {
		if err := ValidLayerName(R2000, c.name); !errors.Is(err, c.r2000) {
			t.Errorf("R2000 %q: %v, want %v", c.name, err, c.r2000)
		}
		if err := ValidLayerName(R12, c.name); !errors.Is(err, c.r12) {
			t.Errorf("R12 %q: %v, want %v", c.name, err, c.r12)
		}
	}
	if err := ValidLayerName(7, "A"); !errors.Is(err, ErrVersion) {
		t.Errorf("version 7: %v", err)
	}
}

// A message repeats no more of a hostile name than helps, and no line ends.
func TestLayerNameMessage(t *testing.T) {
	got := ValidLayerName(R2000, strings.Repeat("x\n", 100_000)).Error()
	if len(got) > 400 || strings.Contains(got, "\n") {
		t.Errorf("message of %d bytes: %.200q", len(got), got)
	}
}
