package sweep

import (
	"errors"
	"fmt"

	"drawerwright/geom"
)

// Where things fit to within rounding, places can contradict each other: one says that
// the disc passes, another that it does not. Then the radius is perturbed, numerically,
// by less than [fit], and all is computed again: what fitted just so then has room, or
// touches elsewhere. The result is that of a disc whose radius differs from the one asked
// for by less than fit; nothing else of it is changed.

// perturbation is the share of fit, from 0 to less than 1, by which a radius is changed.
// A strict one must leave no doubt about what fits.
type perturbation struct {
	share  float64
	strict bool
}

// of is the amount, in millimeters, by which the radius is changed.
func (p perturbation) of() float64 { return float64(fit * p.share) }

// perturbations are made one after another until the result is settled. The first
// gives fillets of just the radius; with the second, what fits exactly has room;
// most of the rest are for sizes that happen to differ from the radius by the
// shares before them. The last is as the first and puts up with doubt.
var perturbations = []perturbation{{0, true}, {0.5, false}, {0.6, false}, {0.71, false}, {0.37, false}, {0.23, false}, {0, false}}

// settled perturbs the radius until a result is settled. Where none is, sides that cross
// are to blame.
func settled(sides []curve, try func(perturbation) ([]geom.Loop, error)) (loops []geom.Loop, err error) {
	for _, p := range perturbations {
		if loops, err = try(p); !errors.Is(err, ErrUnsettled) {
			return loops, err
		}
	}
	if at, ok := crossed(sides); ok {
		return nil, fmt.Errorf("%w: near x %g, y %g", ErrRing, at.X, at.Y)
	}
	return nil, err
}
