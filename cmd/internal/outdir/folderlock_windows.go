package outdir

// lockFolder does nothing: Windows locks no folders. The look before the rename is all.
func lockFolder(string) (unlock func(), err error) { return func() {}, nil }
