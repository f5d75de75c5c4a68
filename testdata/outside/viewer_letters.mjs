// Turns the boxes of pages in Chromium, with all that can be marked, and looks whether letters over the
// picture cover each other or a mark that is not their own. Reads {"name", "page", "turns"} as JSON, one a line;
// prints for each {"name", "views", "letters", "faults"}.
import { browse, open } from './browser.mjs';
import { lines } from './panels.mjs';

const jobs = await lines();
await browse(true, async (browser) => {
  for (const job of jobs) {
    const { context, page, heard } = await open(browser, job.page);
    const found = await page.evaluate(async (turns) => {
      const { state, marks, stage } = viewer, faults = [];
      let views = 0, letters = 0;
      // still waits until tools that came or went have given the picture its size.
      const still = () => new Promise((done) => {
        let n = 3;
        const next = () => (n-- === 0 ? done() : requestAnimationFrame(next));
        next();
      });
      // crosses is whether a line goes through a rectangle that is smaller by a dot all around.
      const crosses = ({ a, b }, r) => {
        const n = Math.ceil(2 * Math.hypot(b[0] - a[0], b[1] - a[1])) + 1;
        for (let i = 0; i <= n; i++) {
          const [x, y] = a.map((v, k) => v + (b[k] - v) * i / n);
          if (x > r.left + 1 && x < r.right - 1 && y > r.top + 1 && y < r.bottom - 1) return true;
        }
        return false;
      };
      const judge = (what) => {
        marks.draw(state, { gl: viewer.painter.gl, put: () => {} }, viewer.theme, viewer.over); // letters alone
        views++;
        const origin = stage.getBoundingClientRect(), own = new Map(marks.letters.placed.map((p) => [p.e, p.own]));
        const all = [...stage.querySelectorAll('.dw-letters span:not([hidden]), .dw-size:not([hidden]), .dw-caption > :not(:empty):not([hidden])')].map((e) => {
          const r = e.getBoundingClientRect();
          return { e, left: r.left - origin.left, right: r.right - origin.left, top: r.top - origin.top, bottom: r.bottom - origin.top };
        });
        letters += all.length;
        all.forEach((p, i) => {
          if (p.left < -0.5 || p.top < -0.5 || p.right > origin.width + 0.5 || p.bottom > origin.height + 0.5) faults.push(`${what}: "${p.e.textContent}" is not wholly in the picture`);
          for (const q of all.slice(i + 1)) {
            if (p.left < q.right && q.left < p.right && p.top < q.bottom && q.top < p.bottom) faults.push(`${what}: "${p.e.textContent}" and "${q.e.textContent}" cover each other`);
          }
          if (!own.has(p.e)) return; // the caption
          for (const l of marks.letters.taken.lines) {
            if (l.own !== own.get(p.e) && crosses(l, p)) {
              faults.push(`${what}: "${p.e.textContent}" covers a mark`);
              break;
            }
          }
        });
        const told = all.map((p) => p.e.textContent);
        for (const ask of marks.letters.asked) {
          if (ask.must && (!ask.from || ask.from.every((v, k) => v > 0 && v < [origin.width, origin.height][k])) && !told.includes(ask.text)) faults.push(`${what}: "${ask.text}" is not told`);
        }
      };
      const single = state.data.groups.findIndex((g) => g.boxes.length === 1);
      const groups = state.data.groups.map((g, i) => i).filter((i) => state.data.groups[i].carcass || i < single + 2);
      const states = {
        'as it is': () => {},
        'all marks': () => ['plays', 'faces', 'grain'].forEach((m) => viewer.mark(m, true)),
        chosen: () => {
          viewer.next(1);
          if (state.chosenPiece().part.pockets.length > 0) viewer.pocket(0);
        },
        'cut': () => viewer.section(0),
        open: () => viewer.open(0.6),
      };
      for (const g of groups) {
        viewer.show(g);
        ['plays', 'faces', 'grain'].forEach((m) => viewer.mark(m, false));
        for (const [name, set] of Object.entries(states)) {
          set();
          await still();
          for (const [left, above] of [[-30, 30], [0, 90], [35, 20], [120, -25], [0, 0], [-90, 0], [180, 0], [0, -90], [-65, 50], [-150, 10]].slice(0, turns)) {
            Object.assign(state.camera, { left, above });
            state.fit();
            judge(`${state.groupName}, ${name}, seen from ${left}, ${above}`);
          }
        }
        if (state.setups.length > 0) {
          viewer.section(-1);
          viewer.assembly.choose('setups');
          for (let i = 0; i < 8; i++) {
            viewer.assembly.halt(); // where the part has been fed to
            await still();
            judge(`${state.groupName}, setups, step ${state.step + 1}`);
            viewer.assembly.by(1);
          }
          viewer.assembly.choose('assembly');
        }
        const play = state.group.boxes.length === 1 && state.data.boxes[state.group.boxes[0]].plays[0];
        if (play) {
          viewer.choose(null);
          viewer.goTo(play);
          await still();
          judge(`${state.groupName}, in the joint ${play.name}`);
        }
      }
      return { views, letters, faults: faults.slice(0, 20), all: faults.length };
    }, job.turns);
    console.log(JSON.stringify({ name: job.name, ...found, faults: [...found.faults, ...heard] }));
    await context.close();
  }
});
