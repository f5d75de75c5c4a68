package files

import (
	"context"
	"io"
	"sync"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/packet"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/shop"
)

// papers are what people read of a batch.
type papers struct {
	batch batch.Batch
	plan  sheets.Plan
	to    Folder
}

// packet writes packet.pdf while others work, and gives what waits for it.
func (p papers) packet(ctx context.Context, r record.Kept) (wait func() error) {
	done := make(chan error, 1)
	go func() {
		done <- p.to.Stream(filing.Packet, func(w io.Writer) error { return packet.Write(ctx, w, p.batch, r, p.plan) })
	}()
	return sync.OnceValue(func() error { return <-done })
}

// last writes shop.html, and waits for the packet.
func (p papers) last(r record.Kept, packet func() error) error {
	err := p.to.Stream(filing.Shop, func(w io.Writer) error {
		page, err := shop.Page(p.batch, r)
		if err == nil {
			_, err = w.Write(page)
		}
		return err
	})
	if err != nil {
		return err
	}
	return packet()
}

// writeRecord writes what a report says.
func writeRecord(ctx context.Context, r record.Kept, to Folder) error {
	list := []func() error{
		func() error { return to.Stream(filing.Report, func(w io.Writer) error { return record.Write(w, r) }) },
		func() error {
			return to.Stream(filing.PartsText, func(w io.Writer) error { return present.PartsText(w, r) })
		},
	}
	return Each(ctx, len(list), func() func(int) error { return func(i int) error { return list[i]() } })
}

// readPapers reads the files for people.
func readPapers(ctx context.Context, prover *prove.Prover, to Folder) error {
	found := make([]record.Checked, len(prove.Printed))
	err := Each(ctx, len(found), func() func(int) error {
		return func(i int) error {
			found[i] = prover.Worker().Document(prove.Printed[i], to.ReadFile)
			return nil
		}
	})
	if err == nil && !prove.Sound(found) {
		err = &Unproven{Checked: found}
	}
	return err
}
