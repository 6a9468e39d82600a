// What was said of a deed for screen readers goes with it.
import { createRoot, createSignal } from 'solid-js';
import { expect, test } from 'vitest';
import { makeSaid } from '../../src/app/said.ts';

function open() {
  const [id, setId] = createSignal(1);
  const [past, setPast] = createSignal<{ done: string[]; undone: string[] }>({ done: [], undone: [] });
  const [said, say] = createRoot(() =>
    makeSaid({ id, undoTitle: () => past().done.at(-1), redoTitle: () => past().undone.at(-1) }),
  );
  return { said, say, setId, setPast };
}

test('it is cleared when the deed is undone, not when another is done', () => {
  const { said, say, setPast } = open();
  setPast({ done: ['lay'], undone: [] });
  say('Laid at 0.30 s');
  setPast({ done: ['lay', 'move'], undone: [] });
  expect(said()).toBe('Laid at 0.30 s');
  setPast({ done: ['lay'], undone: ['move'] });
  expect(said()).toBe('');
  // what is said after an undo, as of a copy, is heard while a drag writes the document
  say('Copied');
  setPast({ done: ['lay'], undone: ['move'] });
  expect(said()).toBe('Copied');
});

test('it is cleared when another skill opens', () => {
  const { said, say, setId } = open();
  say('Copied');
  setId(2);
  expect(said()).toBe('');
});
