// Lengths are millimetres and shown in the job's unit: to 0.01 mm or 0.001 in.
const MM_IN = 25.4;

function lengthText(mm, name) {
  const [v, digits] = name === 'in' ? [mm / MM_IN, 3] : [mm, 2];
  return String(Number(v.toFixed(digits)));
}
