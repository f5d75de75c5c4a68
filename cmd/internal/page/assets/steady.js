// The form stays where it is under the hand: the field that has the focus keeps its place while notes
// come and go above it and the form is built anew, and the Tab key rolls no further than it must.

// keep makes a change of what a scroller shows. What had the focus stays where it was; what gets it
// newly is brought into view.
export function keep(scroller, change) {
  const held = focused(scroller), name = nameOf(held), before = held?.getBoundingClientRect().top;
  const rolls = rolling(scroller);
  change();
  const now = focused(scroller);
  scroller.style.paddingTop = scroller.style.paddingBottom = '';
  if (!now) return;
  if (!held || now !== held && !(name && nameOf(now) === name)) {
    now.scrollIntoView({ block: 'nearest' });
    return;
  }
  const off = () => now.getBoundingClientRect().top - before;
  rolls.scrollTop += off();
  // At an end of what can be rolled there is room to add.
  const left = off();
  if (Math.abs(left) < 0.5) return;
  if (left < 0) scroller.style.paddingTop = `${-left}px`;
  else {
    scroller.style.paddingBottom = `${left}px`;
    rolls.scrollTop += off();
  }
}

// rolling is what rolls a scroller: on a phone it is as long as what it shows, and the page rolls.
const rolling = (scroller) => (getComputedStyle(scroller).overflowY === 'visible' ? document.scrollingElement : scroller);

function focused(scroller) {
  const e = document.activeElement;
  return scroller.contains(e) ? e : null;
}

const nameOf = (e) => e?.closest('[data-path]')?.dataset.path ?? e?.dataset.focus;

// tabs lets the Tab key roll a scroller only as far as the field is out of view: by itself a browser
// brings it to the middle.
export function tabs(scroller) {
  let rolled = null;
  document.addEventListener('keydown', (event) => { rolled = event.key === 'Tab' ? rolling(scroller).scrollTop : null; });
  scroller.addEventListener('focusin', (event) => {
    if (rolled === null) return;
    const to = rolled;
    rolled = null;
    requestAnimationFrame(() => {
      if (document.activeElement !== event.target) return;
      rolling(scroller).scrollTop = to;
      event.target.scrollIntoView({ block: 'nearest' });
    });
  });
}
