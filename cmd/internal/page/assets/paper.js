// The page on paper shows what is folded away in its lists, and folds it again.
import { byId } from './dom.js';

const folded = [];

export function begin() {
  addEventListener('beforeprint', () => {
    for (const part of byId('lists').querySelectorAll('details:not([open])')) { // a second call finds none
      part.open = true;
      folded.push(part);
    }
  });
  addEventListener('afterprint', () => { for (const part of folded.splice(0)) part.open = false; });
}
