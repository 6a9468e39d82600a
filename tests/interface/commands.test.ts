// The table of commands and its projections.
import { describe, expect, it } from 'vitest';
import type { Actions } from '../../src/commands/actions.ts';
import { findByKey, nameKey, runKey } from '../../src/commands/keys.ts';
import { commands } from '../../src/commands/table.ts';

const press = (key: string, mods: Partial<Record<'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey', boolean>> = {}) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...mods,
});

describe('commands', () => {
  it('have unique ids and unique keys', () => {
    expect(new Set(commands.map((c) => c.id)).size).toBe(commands.length);
    const keys = commands.flatMap((c) => c.keys);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it.each([
    [press('z', { ctrlKey: true }), 'Mod+Z', 'undo'],
    [press('z', { metaKey: true }), 'Mod+Z', 'undo'],
    [press('Z', { ctrlKey: true, shiftKey: true }), 'Mod+Shift+Z', 'redo'],
    [press('ArrowLeft'), 'ArrowLeft', 'back'],
    [press('ArrowRight', { shiftKey: true }), 'Shift+ArrowRight', 'on-tenth'],
    [press(' '), 'Space', 'play'],
    [press('?', { shiftKey: true }), '?', 'help'],
    [press('PageDown'), 'PageDown', 'shape-after'],
  ] as const)('%o is %s', (p, name, id) => {
    expect(nameKey(p)).toBe(name);
    expect(findByKey(p)?.id).toBe(id);
  });

  it('a command that cannot run leaves its key to the page', () => {
    const idle = { undoTitle: () => undefined, undo: () => expect.unreachable() } as unknown as Actions;
    expect(runKey(press('z', { ctrlKey: true }), idle)).toBe(false);
  });

  it('undo and redo say what they would do', () => {
    const bench = { undoTitle: () => 'Edit line 3', redoTitle: () => undefined } as unknown as Actions;
    const titles = ['undo', 'redo'].map((id) => commands.find((one) => one.id === id)?.titleNow?.(bench));
    expect(titles).toEqual(['Undo: Edit line 3', 'Redo']);
  });
});
