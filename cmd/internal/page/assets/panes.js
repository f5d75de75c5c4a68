// Which parts of the page are seen. The job's text is folded away behind its button and
// opens beside the form; on a small screen one pane is seen at a time.
import { byId } from './dom.js';

const toggle = byId('file'), page = document.body;

export function begin() {
  toggle.addEventListener('click', () => (page.dataset.file === 'open' ? fold() : go('text')));
  for (const button of document.querySelectorAll('[data-to]')) button.addEventListener('click', () => go(button.dataset.to));
  for (const skip of document.querySelectorAll('.skips a')) skip.addEventListener('click', () => go(skip.hash.slice(1)));
  mark();
}

// go brings a pane into sight: form, text or result.
export function go(pane) {
  page.dataset.pane = pane;
  if (pane === 'text') page.dataset.file = 'open';
  mark();
}

function fold() {
  delete page.dataset.file;
  if (page.dataset.pane === 'text') page.dataset.pane = 'form';
  mark();
}

function mark() {
  toggle.setAttribute('aria-expanded', String(page.dataset.file === 'open'));
  for (const button of document.querySelectorAll('[data-to]')) {
    if (button.dataset.to === page.dataset.pane) button.setAttribute('aria-current', 'true');
    else button.removeAttribute('aria-current');
  }
}
