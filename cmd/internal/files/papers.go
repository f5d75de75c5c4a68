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

// papers are what people read of a batch, each read back as it is on disk once it is written.
type papers struct {
	batch  batch.Batch
	plan   sheets.Plan
	to     Folder
	prover *prove.Prover // none where nothing is proven
}

// packet writes packet.pdf while others work, and gives what waits for it.
func (p papers) packet(ctx context.Context, r record.Kept) (wait func() error) {
	done := make(chan error, 1)
	go func() {
		done <- p.to.Stream(filing.Packet, func(w io.Writer) error { return packet.Write(ctx, w, p.batch, r, p.plan) })
	}()
	return sync.OnceValue(func() error { return <-done })
}

// last writes the files that say how the proof of the others went, all at once, and reads the packet. What the
// report says in order to compare it takes as much room as the boxes did for their page, and so comes after them.
func (p papers) last(ctx context.Context, r record.Kept, packet func() error) error {
	read := make([]record.Checked, 3)
	work := []func() error{
		func() error {
			return p.to.Stream(filing.Report, func(w io.Writer) error { return record.Write(w, r) })
		},
		func() error {
			return p.document(ctx, filing.PartsText, &read[0], func() error {
				return p.to.Stream(filing.PartsText, func(w io.Writer) error {
					_, err := w.Write(present.PartsText(r))
					return err
				})
			})
		},
		func() error {
			return p.document(ctx, filing.Shop, &read[2], func() error {
				return p.to.Stream(filing.Shop, func(w io.Writer) error {
					page, err := shop.Page(p.batch, r)
					if err == nil {
						_, err = w.Write(page)
					}
					return err
				})
			})
		},
		func() error { return p.document(ctx, filing.Packet, &read[1], packet) },
	}
	does := func(i int) error { return work[i]() }
	if err := Each(ctx, len(work), func() func(int) error { return does }); err != nil {
		return err
	}
	if !prove.Sound(read) {
		return &Unproven{Checked: read}
	}
	return nil
}

// document writes a file for people and, where there is a proof, reads it back.
func (p papers) document(ctx context.Context, name string, read *record.Checked, write func() error) error {
	if err := write(); err != nil || p.prover == nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	*read = p.prover.Worker().Document(name, p.to.ReadFile)
	return nil
}
