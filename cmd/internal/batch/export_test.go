package batch

// ForgetWork forgets how parts are milled, so that only what they are is compared.
func (b Batch) ForgetWork() { clear(b.milling.latest) }
