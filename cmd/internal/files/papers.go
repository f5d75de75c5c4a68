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

// packet writes packet.pdf while others work, and gives what waits for it. It is compared with the
// cut list, which is there before.
func (p papers) packet(ctx context.Context, r record.Report) (wait func() (record.Checked, error)) {
	type read struct {
		checked record.Checked
		err     error
	}
	done := make(chan read, 1)
	go func() {
		var d read
		d.checked, d.err = p.document(ctx, filing.Packet, func(w io.Writer) error {
			return packet.Write(ctx, w, p.batch, r, p.plan)
		})
		done <- d
	}()
	return sync.OnceValues(func() (record.Checked, error) {
		d := <-done
		return d.checked, d.err
	})
}

// last writes the files that say how the proof of the others went, all at once, and waits for the packet.
func (p papers) last(ctx context.Context, r record.Report, packet func() (record.Checked, error)) error {
	read := make([]record.Checked, 3)
	work := []func() error{
		func() error {
			return p.to.Stream(filing.Report, func(w io.Writer) error { return record.Write(w, r) })
		},
		func() (err error) {
			read[0], err = p.document(ctx, filing.PartsText, func(w io.Writer) error {
				_, err := w.Write(present.PartsText(r))
				return err
			})
			return err
		},
		func() (err error) {
			read[2], err = p.document(ctx, filing.Shop, func(w io.Writer) error {
				page, err := shop.Page(p.batch, r)
				if err == nil {
					_, err = w.Write(page)
				}
				return err
			})
			return err
		},
		func() (err error) {
			read[1], err = packet()
			return err
		},
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
func (p papers) document(ctx context.Context, name string, fill func(io.Writer) error) (c record.Checked, err error) {
	if err = p.to.Stream(name, fill); err != nil || p.prover == nil {
		return c, err
	}
	if err = ctx.Err(); err != nil {
		return c, err
	}
	return p.prover.Worker().Document(name, p.to.ReadFile), nil
}
