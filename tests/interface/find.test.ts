// What Find answers first: skills by their trade names, values, commands, and what is typed as a draft.
import { expect, test } from 'vitest';
import { athletes, catalogue, chains, skills } from '../../presets/index.ts';
import { readAsked } from '../../sim/index.ts';
import type { FindEntry } from '../../src/app/layout/find-entries.ts';
import { findEntries, listEntries } from '../../src/app/layout/find-entries.ts';
import { listLate } from '../../src/app/layout/find-late.ts';
import type { Page } from '../../src/app/page.ts';
import type { UserShelf } from '../../src/app/shelf.ts';
import type { Actions } from '../../src/commands/actions.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const open = skills['back-tuck'];
const result = engine.fly(open);
const page = {
  doc: { file: () => open, athlete: () => result.athlete, origin: () => undefined, undoTitle: () => undefined },
  flight: { result: () => result },
  services: {
    presets: {
      skills: catalogue.map(({ id, ...about }) => ({ id, file: skills[id] ?? chains[id], about })),
      athletes: Object.entries(athletes).map(([id, athlete]) => ({ id, athlete })),
    },
  },
} as unknown as Page;
const actions = new Proxy({}, { get: (_, name) => (name === 'keys' ? actions : () => true) }) as unknown as Actions;
const shelf = { skills: () => [], athletes: () => [] } as unknown as UserShelf;
const drafted: string[] = [];
const all = listEntries(page, actions, shelf, listLate());
const find = (typed: string): FindEntry[] =>
  findEntries(all, typed, {
    read: (text) => {
      try {
        return readAsked(text, result.names.place);
      } catch {
        return undefined;
      }
    },
    draft: ({ title }) => drafted.push(title),
  });

test.each([
  // skills, exact trade names first
  ['full twist', 'demo-back-straight-full'],
  ['Full', 'demo-back-straight-full'],
  ['back full', 'demo-back-straight-full'],
  ['back layout', 'demo-back-straight'],
  ['double straight', 'demo-double-back-straight'],
  ['barani', 'demo-trampoline-barani'],
  ['full out', 'demo-double-back-pike-full-out'],
  ['105b', 'draft-0'],
  ['103B', 'draft-0'],
  ['giant', 'demo-giant-double-straight'],
  ['handspring half', 'demo-vault-from-the-board'],
  ['full-in full-out', 'demo-giant-double-straight-two-twists'],
  // values
  ['height', 'field-rise'],
  ['air time', 'field-airTime'],
  ['time in the air', 'field-airTime'],
  ['speed up', 'field-up'],
  ['weight', 'field-mass'],
  ['stature', 'field-stature'],
  ['angular momentum', 'field-momentum'],
  ['travel', 'field-along'],
  // commands
  ['step back', 'back-tenth'],
  ['step', 'on-tenth'],
  ['small step', 'tool-contact'],
  ['hop', 'tool-contact'],
  ['energy', 'tool-account'],
  ['side by side', 'tool-compare'],
  ['c3d', 'tool-film'],
  ['camera', 'tool-film'],
  ['frame by frame', 'tool-film'],
  ['undo', 'undo'],
  ['print', 'print'],
  ['slow', 'quarter'],
  // what can be read
  ['lesson', 'lessons'],
  ['lessons', 'lessons'],
  ['glossary', 'glossary'],
  ['guide', 'start'],
  ['help', 'start'],
  ['start here', 'start'],
  ['tutorial', 'start'],
  ['arms in faster', 'read-coach-'],
  ['wobble means', 'read-glossary-wobble'],
  ['keys', 'help'],
  // drafts
  ['8 02 /', 'draft-0'],
  ['8 1 o', 'draft-0'],
  ['rudi', 'draft-0'],
  ['full in full out pike', 'draft-0'],
  ['cody', 'draft-none'],
  // athletes
  ['nell', 'demo-athlete-nell-oakum'],
])('%s finds %s first', (typed, id) => expect(find(typed)[0]?.id).toBe(id));

test.each(['double full', 'triple twist', 'double back tuck', 'triple back', 'handspring vault'])(
  '%s finds a ready skill of that name first, at the place shown where there is one',
  (typed) => {
    const named = catalogue.filter(({ words }) => words.includes(typed));
    const here = named.find(({ place }) => place === result.names.place) ?? named[0];
    expect(find(typed)[0].id).toBe(`demo-${here.id}`);
  },
);

test('the same name at another place comes first where that place is shown', () => {
  const file = skills['trampoline-barani'];
  const shown = engine.fly(file);
  const there = { ...page, flight: { result: () => shown } } as unknown as Page;
  const [first] = findEntries(listEntries(there, actions, shelf), 'double back tuck', {
    read: () => undefined,
    draft: () => {},
  });
  const bed = catalogue.find(({ words, place }) => place === 'trampoline' && words.includes('double back tuck'));
  expect(first.id).toBe(`demo-${bed?.id}`);
});

test.each(['lesson', 'help', 'guide'])('%s finds the lessons, and what else there is to read', (typed) => {
  const ids = find(typed).map(({ id }) => id);
  for (const id of ['lessons', 'read-coach-', 'read-student-', 'read-biomechanist-']) expect(ids).toContain(id);
});

test.each(['energy', 'start', 'momentum', 'tilt'])(
  '%s is found among what can be done, and in the glossary after that',
  (typed) => {
    const found = find(typed);
    const terms = found.map(({ group }) => group === 'term');
    expect(terms[0]).toBe(false);
    if (typed !== 'start') expect(terms).toContain(true);
  },
);

test('a loose code offers what it can mean, and a press drafts it', () => {
  const [first, second] = find('8 1 o');
  expect([first.title, second.title]).toEqual([
    'Draft Barani-out, tuck (8 01 o), on the trampoline',
    'Draft Half-in, tuck (8 10 o), on the trampoline',
  ]);
  second.run();
  expect(drafted).toEqual(['Half-in, tuck']);
});

test('what no draft can be says so first, then the nearest', () => {
  const [why, nearest] = find('cody');
  expect(why.title).toMatch(/begins lying on the front/);
  expect(why.why).toBeDefined();
  expect(nearest.title).toContain('Draft Back somersault, tuck');
});

test('nothing that fits is nothing', () => expect(find('xyzzy')).toEqual([]));
