/** Commands on picked keys, and on the pose at the cursor where none is picked. */

import type { Actions } from './actions.ts';
import type { Command } from './command.ts';
import { pickedTexts } from './words.ts';

const t = pickedTexts;
const picked = (b: Actions): boolean => b.keys.hasPicked();
const span = (b: Actions): boolean => b.keys.hasSpan();
const edit = { group: 'edit' } as const;

export const keyCommands: readonly Command[] = [
  { ...edit, id: 'copy', title: t.copy, keys: ['Mod+C'], run: (b) => b.keys.copy() },
  { ...edit, id: 'paste', title: t.paste, keys: ['Mod+V'], when: (b) => b.keys.canPaste(), run: (b) => b.keys.paste() },
  { ...edit, id: 'mirror', title: t.mirror, keys: ['X'], run: (b) => b.keys.mirror() },
  { ...edit, id: 'pick-all', title: t.pickAll, keys: ['Mod+A'], run: (b) => b.keys.pickAll() },
  { ...edit, id: 'pick-here', title: t.pickHere, keys: ['Shift+A'], run: (b) => b.keys.pickHere() },
  { ...edit, id: 'pick-none', title: t.pickNone, keys: ['Escape'], when: picked, run: (b) => b.keys.pickNone() },
  {
    ...edit,
    id: 'remove-keys',
    title: t.remove,
    keys: ['Delete', 'Backspace'],
    when: (b) => b.keys.hasKeysPicked(),
    run: (b) => b.keys.remove(),
  },
  { ...edit, id: 'keys-earlier', title: t.earlier, keys: [','], when: picked, run: (b) => b.keys.nudge(-0.01) },
  { ...edit, id: 'keys-later', title: t.later, keys: ['.'], when: picked, run: (b) => b.keys.nudge(0.01) },
  { ...edit, id: 'keys-closer', title: t.closer, keys: ['['], when: span, run: (b) => b.keys.scale(1 / 1.05) },
  { ...edit, id: 'keys-apart', title: t.apart, keys: [']'], when: span, run: (b) => b.keys.scale(1.05) },
];
