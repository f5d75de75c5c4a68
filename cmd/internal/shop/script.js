'use strict';
// Ticks that stay on the phone. Nothing leaves it: they are kept by the browser under a code of
// what the page says, so that another job, or another state of this one, begins without any.
const boxes = [...document.querySelectorAll('input[type=checkbox]')];
const kept = document.getElementById('kept'), clear = document.getElementById('clear');
const key = `drawerwright shop ${document.body.dataset.code}`;

// A browser may forbid a file to keep anything, by an error or by silence.
function keeper() {
  try {
    const trial = `${key} trial`;
    localStorage.setItem(trial, 'kept');
    const works = localStorage.getItem(trial) === 'kept';
    localStorage.removeItem(trial);
    return works ? localStorage : null;
  } catch {
    return null;
  }
}

let store = keeper();

function tell() {
  kept.textContent = store ? 'Ticks stay on this phone.' : 'This browser keeps nothing for this page: ticks last until it is closed or loaded again.';
}

function count() {
  for (const section of document.querySelectorAll('section')) {
    const all = [...section.querySelectorAll('input')], done = all.filter((box) => box.checked).length;
    section.querySelector('.count').textContent = all.length ? `${done} of ${all.length}` : '';
  }
}

function keep() {
  count();
  if (!store) return;
  try {
    const ticked = boxes.filter((box) => box.checked).map((box) => box.id);
    if (ticked.length) store.setItem(key, ticked.join(' '));
    else store.removeItem(key);
  } catch { // it is full
    store = null;
    tell();
  }
}

function restore() {
  const ticked = new Set((store?.getItem(key) ?? '').split(' '));
  for (const box of boxes) box.checked = ticked.has(box.id);
  count();
}

document.addEventListener('change', keep);
addEventListener('storage', (event) => { if (event.key === key) restore(); }); // the page in another tab
clear.hidden = false;
clear.addEventListener('click', () => {
  if (!confirm('Clear all ticks of this page?')) return;
  for (const box of boxes) box.checked = false;
  keep();
});

// Paper shows what is folded away.
const folded = [];
addEventListener('beforeprint', () => {
  for (const part of document.querySelectorAll('details:not([open])')) { // a second call finds none
    part.open = true;
    folded.push(part);
  }
});
addEventListener('afterprint', () => { for (const part of folded.splice(0)) part.open = false; });

tell();
restore();
