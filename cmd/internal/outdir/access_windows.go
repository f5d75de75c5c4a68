package outdir

// checkWritable asks nothing: only the attempt tells on Windows, and a swap
// that is refused leaves the old folder.
func checkWritable(string) error { return nil }
