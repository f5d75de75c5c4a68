package packet

import (
	"fmt"
	"strings"
	"testing"
)

// TestHeaded: a heading names as many drawers as one has room for; of more it counts all but the first, as the reader
// of the packet does, so that it never goes over to a page of which that knows nothing.
func TestHeaded(t *testing.T) {
	var list []string
	for i := range headedBy {
		list = append(list, fmt.Sprint("drawer ", i))
	}
	if said := headed(list); said != strings.Join(list, ", ") {
		t.Errorf("of %d: %s", headedBy, said)
	}
	if said := headed(append(list, "one more")); said != "drawer 0, drawer 1, drawer 2, drawer 3 and 37 more" {
		t.Errorf("of %d: %s", headedBy+1, said)
	}
}
