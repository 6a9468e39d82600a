// How far a command is: on a terminal alone, at most once a second, with the time left.
import { expect, test } from 'vitest';
import { makeProgressLine } from '../../src/cli/progress-line.ts';

function made(isTerminal: boolean) {
  let now = 5000;
  const written: string[] = [];
  const line = makeProgressLine('margin', {
    isTerminal,
    write: (text) => void written.push(text),
    clock: () => now,
  });
  return {
    line,
    written,
    at: (ms: number) => {
      now = 5000 + ms;
    },
  };
}

test('comes at most once a second, though pieces come a hundred times as often', () => {
  const { line, written, at } = made(true);
  for (let i = 1; i <= 1000; i++) {
    at(10 * i);
    line.show(i, 1000);
  }
  expect(written).toHaveLength(10);
});

test('has the share and the time left, by the pieces done so far', () => {
  const { line, written, at } = made(true);
  at(2000);
  line.show(1, 4);
  at(10_000);
  line.show(1, 40);
  at(20_000);
  line.show(1, 1000);
  expect(written.map((text) => text.trim())).toEqual([
    'margin: 25 %, 6 s left',
    'margin: 2 %, 6 min 30 s left',
    'margin: 0 %, 5 h 33 min left',
  ]);
});

test('writes over a longer line before it, and ends its line', () => {
  const { line, written, at } = made(true);
  at(1000);
  line.show(1, 100);
  at(2000);
  line.show(99, 100);
  line.end();
  expect(written[1].length).toBeGreaterThanOrEqual(written[0].length);
  expect(written.at(-1)).toBe('\n');
});

test('nothing where stderr is no terminal, and nothing of what is over at once', () => {
  const quiet = made(false);
  quiet.at(3000);
  quiet.line.show(1, 2);
  quiet.line.end();
  expect(quiet.written).toEqual([]);
  const quick = made(true);
  quick.at(200);
  quick.line.show(1, 1);
  quick.line.end();
  expect(quick.written).toEqual([]);
});
