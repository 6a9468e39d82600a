// Dark differs from light in colours only: what does not hang on colours is checked in one of the two (tests/browser/axe.ts).
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '../..');
const COLOURED = /^(color-scheme|color|background|background-color|fill|stroke|border-color|outline-color)$/;
const COLOUR = /^(#[\da-f]{3,8}|(rgb|hsl|oklch|color-mix)\(.*\)|var\(--[\w-]+\)|dark)$/i;
/** how dense the ghosts of a figure are drawn: on the canvas, where axe reads no text */
const SHARE = /^--ghost$/;

/** Declarations in every block whose selector, or whose query around it, names dark. */
function darkDeclarations(css: string): [name: string, value: string][] {
  const found: [string, string][] = [];
  const open: string[] = [];
  for (const [, text, end] of css.replace(/\/\*.*?\*\//gs, '').matchAll(/([^{};]*)([{};])/g)) {
    if (end === '{') open.push(text);
    else {
      const at = text.indexOf(':');
      if (at > 0 && open.some((head) => /\bdark\b/.test(head)))
        found.push([text.slice(0, at).trim(), text.slice(at + 1).trim()]);
      if (end === '}') open.pop();
    }
  }
  return found;
}
const beyondColours = (css: string): string[] =>
  darkDeclarations(css)
    .filter(
      ([name, value]) => !SHARE.test(name) && !((name.startsWith('--') || COLOURED.test(name)) && COLOUR.test(value)),
    )
    .map(([name, value]) => `${name}: ${value}`);

test('the dark theme changes colours only', () => {
  const sheets = readdirSync(path.join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.css'))
    .map((name) => readFileSync(path.join(root, 'src', name), 'utf8'));
  expect(sheets.flatMap(darkDeclarations).length).toBeGreaterThan(80);
  expect(sheets.flatMap(beyondColours)).toEqual([]);
});

test('a size or a place that is dark only is found', () => {
  expect(beyondColours('[data-theme="dark"] .a { color: #fff; --gap: 4px; padding: 2px }')).toEqual([
    '--gap: 4px',
    'padding: 2px',
  ]);
  expect(beyondColours('@media (prefers-color-scheme: dark) { .b { display: none; } }')).toEqual(['display: none']);
});
