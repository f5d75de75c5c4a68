// Colors of the picture: from the style sheet's custom properties, and of roles and stocks from
// the data. A person's choice of light or dark goes before the system's.

const rgb = (text) => [1, 3, 5].map((i) => parseInt(text.trim().slice(i, i + 2), 16) / 255);

// themeOf reads the colors as numbers from 0 to 1.
function themeOf(element, data) {
  const style = getComputedStyle(element);
  const of = (name) => rgb(style.getPropertyValue(`--${name}`));
  const dark = style.getPropertyValue('--dark').trim() === '1';
  const tints = (list) => new Map(Object.entries(list).map(([name, c]) => [name, rgb(dark ? c.dark : c.light)]));
  const roles = tints(data.roles), stocks = tints(data.stocks);
  return { ground: of('ground'), ink: of('ink'), line: of('line'), mark: of('mark'), bad: of('bad'), doubt: of('doubt'), glue: of('glue'), steel: of('steel'), pad: of('pad'), of: (part, byWood) => byWood && stocks.get(part.stock) || roles.get(part.role) };
}
