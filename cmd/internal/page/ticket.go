package page

import (
	"crypto/subtle"
	"sync"
)

// ticket is a token that is good for one time.
type ticket struct {
	mu   sync.Mutex
	text string // empty once it was taken
}

// issue makes a ticket; one that was issued before is good no more.
func (t *ticket) issue() string {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.text = secret()
	return t.text
}

// take reports whether a text is the ticket, which then is taken.
func (t *ticket) take(text string) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.text == "" || subtle.ConstantTimeCompare([]byte(text), []byte(t.text)) != 1 {
		return false
	}
	t.text = ""
	return true
}
