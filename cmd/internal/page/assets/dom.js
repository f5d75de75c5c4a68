// Elements made without markup: names from a job file are only ever text.

// el makes an element. Properties that begin with "on" are listeners, those that the
// element has are set, others become attributes; null and false leave them out.
export function el(tag, properties = {}, ...children) {
  const e = document.createElement(tag);
  for (const [name, value] of Object.entries(properties)) {
    if (value === null || value === false || value === undefined) continue;
    if (name.startsWith('on')) e.addEventListener(name.slice(2), value);
    else if (name === 'class') e.className = value;
    else if (name in e && !name.includes('-') && name !== 'list') e[name] = value;
    else e.setAttribute(name, value === true ? '' : value);
  }
  e.append(...children.filter((c) => c !== null && c !== undefined));
  return e;
}

const drawn = 'http://www.w3.org/2000/svg';

// svg makes an element of a drawing.
export function svg(tag, attributes = {}, ...children) {
  const e = document.createElementNS(drawn, tag);
  for (const [name, value] of Object.entries(attributes)) e.setAttribute(name, value);
  e.append(...children);
  return e;
}

export const byId = (id) => document.getElementById(id);

// setText changes a text only where it differs, so that nothing is laid out for nothing.
export function setText(e, text) {
  if (e.textContent !== text) e.textContent = text;
}
