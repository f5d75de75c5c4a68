// Lengths are millimeters and shown in the job's unit: to 0.01 mm or 0.001 in. They are
// rounded as the program rounds them (geom/lengthtext.go): in nanometers, halves away from
// zero, with room for the last bits; toFixed would take 9.075 down, where lists have 9.08.
const MM_IN = 25.4, COMPUTED = 26;

function lengthText(mm, name) {
  const [step, digits] = name === 'in' ? [25400, 3] : [10000, 2];
  const nm = Math.round(Math.abs(mm) * 1e6);
  const n = Math.floor((nm + step / 2 + COMPUTED) / step);
  return String(Math.sign(mm) * n / 10 ** digits + 0);
}

// tapeText is a length that is read with a tape: of inches the nearest 32nd, in lowest terms, as the
// program's lists have it.
function tapeText(mm, name) {
  if (name !== 'in') return lengthText(mm, name);
  const steps = Math.round(mm / MM_IN * 32), whole = Math.floor(steps / 32);
  let part = steps % 32, of = 32;
  if (part === 0) return String(whole);
  while (part % 2 === 0) [part, of] = [part / 2, of / 2];
  return `${whole === 0 ? '' : `${whole} `}${part}/${of}`;
}
