// Reads panels, one a line, from standard input; prints {"volume"} for each, as
// manifold-3d's booleans find it.
import { lines, panel } from './panels.mjs';

for (const p of await lines()) console.log(JSON.stringify({ volume: panel(p).volume() }));
