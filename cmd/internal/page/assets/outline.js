// What the text holds, as it was looked at last: every part of the form reads it here.
export let looked = null;
export function take(now) { looked = now; }

// usual is what is told of a key, {doc, default, without, why, example}, in the unit of the job.
export const usual = (key) => (looked && unit() === 'in' && key.inches) || key;

// unit is that of the job, whatever the numbers beside it are shown in.
export const unit = () => textOf(child(looked.outline, 'units'));

export const child = (n, name) => n?.entries?.[n.names?.indexOf(name) ?? -1];

// at is the value at a path.
export function at(path) {
  return path.reduce((n, step) => (n?.items && /^\d+$/.test(step) ? n.items[Number(step)] : child(n, step)), looked.outline);
}

// textOf is a value as a field shows it; null for what a field cannot show.
export function textOf(n) {
  if (!n) return '';
  if (n.entries) return null;
  if (n.items) return n.items.some((item) => item.entries || item.items) ? null : n.items.map((item) => item.text ?? '').join(', ');
  return n.text ?? '';
}

// nameAt is what people call an item of a list or an entry: by its name if it has one.
export function nameAt(path, noun) {
  const step = path.at(-1);
  if (!/^\d+$/.test(step)) return `${noun} ${step}`;
  return `${noun} ${textOf(child(at(path), 'name')) || Number(step) + 1}`;
}

// fresh is a name that is not among those beside a path yet.
export function fresh(path, noun = 'new') {
  const above = at(path.slice(0, -1));
  const taken = new Set([...(above?.names ?? []), ...(above?.items ?? []).map((item) => textOf(child(item, 'name')))]);
  const stem = ((above?.items ? textOf(child(above.items[Number(path.at(-1))], 'name')) : path.at(-1)) || noun).replace(/ \d+$/, '');
  let name = stem;
  for (let n = 2; taken.has(name); n++) name = `${stem} ${n}`;
  return name;
}

// shapeOf tells outlines apart whose fields are not the same.
export function shapeOf(n) {
  if (n.entries) return n.entries.map((e, i) => [n.names[i], shapeOf(e)]);
  return n.items && n.items.some((item) => item.entries) ? n.items.map((item) => (item.entries ? shapeOf(item) : 0)) : 0;
}
