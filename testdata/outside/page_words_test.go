package outside

import "testing"

// TestPageWords: what the page asks for and says is understood by a person who never wrote a job file.
func TestPageWords(t *testing.T) {
	persons(t, "page_words.mjs", "the order of the fields", "help in the unit of the job",
		"messages in the words of the form", "decimal commas", "sizes as a tape reads them", "a metric cabinet",
		"one verdict", "a part of another drawer", "parts in the setups", "cards ask for what they do not know",
		"an example is called one")
}
