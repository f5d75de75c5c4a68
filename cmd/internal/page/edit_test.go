package page

import (
	"context"
	"net/http"
	"net/http/httptest"
	"testing"

	"drawerwright/cmd/internal/job"
)

// TestEditsHaveAnEnd: an edit has no more steps than a button makes, and stops where nobody waits.
func TestEditsHaveAnEnd(t *testing.T) {
	p, _ := open(t, jobText)
	step := job.Step{Do: "enter", Path: []string{"job"}, Value: "Bench"}
	ask := func(ctx context.Context, steps int) int {
		asked := edited{Text: jobText, Step: step}
		for range steps - 1 {
			asked.Then = append(asked.Then, step)
		}
		w := httptest.NewRecorder()
		p.Handler(host).ServeHTTP(w, request(p, "POST", "/api/edit", asked).WithContext(ctx))
		return w.Code
	}
	gone, leave := context.WithCancel(t.Context())
	leave()
	for _, c := range []struct {
		ctx         context.Context
		steps, code int
	}{
		{t.Context(), maxSteps, http.StatusOK}, {t.Context(), maxSteps + 1, http.StatusUnprocessableEntity},
		{gone, 2, http.StatusServiceUnavailable},
	} {
		if got := ask(c.ctx, c.steps); got != c.code {
			t.Errorf("%d steps: %d, not %d", c.steps, got, c.code)
		}
	}
}

// seen is a context that tells when it is looked at.
type seen struct {
	context.Context
	look func()
}

func (s seen) Err() error {
	s.look()
	return s.Context.Err()
}

// TestEditTakesItsTurn: while an edit is made no other text is worked out; before each of its steps it
// looks whether somebody still waits.
func TestEditTakesItsTurn(t *testing.T) {
	p, _ := open(t, jobText)
	step := job.Step{Do: "enter", Path: []string{"job"}, Value: "Bench"}
	looks := 0
	ctx := seen{t.Context(), func() {
		looks++
		if len(p.work.short) == 0 {
			t.Error("an edit is made out of turn")
		}
	}}
	w := httptest.NewRecorder()
	r := request(p, "POST", "/api/edit", edited{Text: jobText, Step: step, Then: []job.Step{step, step}})
	p.Handler(host).ServeHTTP(w, r.WithContext(ctx))
	if w.Code != http.StatusOK || looks < 3 {
		t.Errorf("%d after %d looks", w.Code, looks)
	}
}
