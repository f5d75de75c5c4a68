package job

import (
	"errors"
	"fmt"
	"strings"
)

// Respell writes another key in the place of one, and leaves its value and every other byte as
// they are. The text is read again as [Patch] does.
func Respell(file []byte, key string, path ...string) ([]byte, error) {
	l, parent, at, err := openAt(file, path)
	if err == nil && parent.kind != mapping {
		err = errors.New("an item of a list has no key")
	}
	if err == nil {
		e := &parent.entries[at]
		out := l.splice(l.begins[e.mark], l.ends[e.mark], writeKey(key))
		e.key = key
		if err = l.holds(out); err == nil {
			return out, nil
		}
	}
	return nil, fmt.Errorf("%s cannot be called %s: %w", quote(strings.Join(path, " > ")), quote(key), err)
}
