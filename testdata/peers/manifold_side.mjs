// Times manifold-3d's booleans on a drawer side with two dados and a groove.
// Prints {"seconds"}: the best mean of five rounds of 100, after a warm-up.
import { panel } from '../outside/panels.mjs';

const rect = (x0, y0, x1, y1) => [[x0, y0], [x1, y0], [x1, y1], [x0, y1]];
const side = {
  thickness: 12.2,
  outline: rect(0, 0, 500, 140),
  pockets: [
    { depth: 6.1, rings: [rect(6.1, -1, 12.45, 141)] },
    { depth: 6.1, rings: [rect(487.55, -1, 493.9, 141)] },
    { depth: 6.1, rings: [rect(-1, 6.1, 501, 12.45)] },
  ],
};

const ROUNDS = 5, EACH = 100;
const run = () => {
  const solid = panel(side);
  solid.volume(); // manifold-3d works lazily
  solid.delete();
};
for (let i = 0; i < EACH; i++) run();
let best = Infinity;
for (let r = 0; r < ROUNDS; r++) {
  const start = process.hrtime.bigint();
  for (let i = 0; i < EACH; i++) run();
  best = Math.min(best, Number(process.hrtime.bigint() - start) / 1e9 / EACH);
}
console.log(JSON.stringify({ seconds: best }));
