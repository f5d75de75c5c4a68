// Drawings as the server sends them: shapes and texts with roles, which the style sheet colors.
import { svg } from './dom.js';

// parts are the elements of a drawing.
export const parts = (d) => [
  ...d.shapes.map((s) => svg('path', { class: `d-${s.role}`, d: s.path })),
  ...d.texts.map((t) => svg('text', { class: `d-${t.role}`, x: t.x, y: t.y, 'font-size': t.size, 'text-anchor': t.anchor, textLength: t.length, lengthAdjust: 'spacingAndGlyphs' }, t.text)),
];

export const viewBox = (d) => `0 0 ${d.width} ${d.height}`;

// marks are signs for a word of judgment, told apart by their shapes.
const marks = { right: 'M2 8.5 6.5 13 14 3', doubt: 'M8 2 15 14H1ZM8 6v4M8 12v.5', wrong: 'M3 3 13 13M13 3 3 13' };

export const mark = (kind) => svg('svg', { class: 'mark', viewBox: '0 0 16 16', 'aria-hidden': 'true' }, svg('path', { d: marks[kind] }));
