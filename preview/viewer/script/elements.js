// Small makers of elements. Text goes in as text, never as markup.

function make(name, properties = {}, ...children) {
  const e = document.createElement(name);
  for (const [k, v] of Object.entries(properties)) {
    if (k.startsWith('on')) e.addEventListener(k.slice(2), v);
    else if (k in e) e[k] = v;
    else e.setAttribute(k, v);
  }
  e.append(...children.filter((c) => c !== null));
  return e;
}

const button = (text, act, properties = {}) => make('button', { type: 'button', onclick: act, ...properties }, text);

const check = (text, act) => make('label', { className: 'dw-check' }, make('input', { type: 'checkbox', onchange: (e) => act(e.target.checked) }), text);

// calledOf is the name of a control, as a person hears it.
const calledOf = (e) => `${e.tagName} ${e.getAttribute('aria-label') ?? [...e.closest('label')?.childNodes ?? e.childNodes].filter((n) => n.nodeType === Node.TEXT_NODE).map((n) => n.data).join('')}`;

// keepFocus makes controls anew and gives the focus back to the one of the same name; of several that
// are called the same, to the one in the same place. Where it is gone, something else takes the focus,
// so that the next key is not lost.
function keepFocus(within, act, otherwise) {
  const stops = () => within.flatMap((e) => [...e.querySelectorAll('button, input, select, summary')]);
  const before = stops(), at = before.indexOf(document.activeElement);
  const name = at >= 0 && calledOf(before[at]);
  act();
  if (at < 0 || before[at].isConnected) return;
  const nth = before.slice(0, at).filter((e) => calledOf(e) === name).length;
  (stops().filter((e) => calledOf(e) === name)[nth] ?? otherwise).focus();
}

const part = (title, ...children) => make('section', {}, make('h3', {}, title), ...children);

function table(caption, heads, rows) {
  return make('table', {}, make('caption', {}, caption),
    make('thead', {}, make('tr', {}, ...heads.map((h) => make('th', { scope: 'col' }, h)))),
    make('tbody', {}, ...rows.map((r) => make('tr', {}, ...r.map((c, i) => make(i === 0 ? 'th' : 'td', i === 0 ? { scope: 'row' } : {}, c))))));
}

// setText leaves alone what stands there already: that costs no layout.
function setText(e, text) {
  if (e.textContent !== text) e.textContent = text;
}
