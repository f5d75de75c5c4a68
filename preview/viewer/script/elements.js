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
