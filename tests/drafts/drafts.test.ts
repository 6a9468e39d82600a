/**
 * A draft is the skill or none. What is kept of the whole list is flown again and judged in full; of the search a fixed sample is made again (all of it with SHAPEFLIGHT_WHOLE). `npm run drafts`
 * (--mode drafts) searches what does not fly any more, and writes flown.json and docs/drafts.md.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { athletes, shapes } from '../../presets/index.ts';
import { fileOfDraft, flySkill, parseSkill, readAsked } from '../../sim/index.ts';
import { TWIST_WITHIN } from '../../sim/skill/draft-judge.ts';
import type { Found } from '../../sim/skill/draft-search.ts';
import { isWhole } from '../corpus.ts';
import { launchedOf } from '../skill/load.ts';
import { draftListed, folder, type Kept, keptOf, LEAST, LISTED, type Listed, nameOf, specOfListed } from './listed.ts';
import { refly, writePage } from './page.ts';

const PAGE = path.join(folder, '../../docs/drafts.md');
const isWriting = import.meta.env.MODE === 'drafts';
/** s of computing for a draft that is searched while the list is written */
const LONG = 600_000;

/** Found in a few flights each: of every form one. */
const SAMPLE = [
  'trampoline 4 0 o backward',
  'trampoline 4 1 / backward',
  'trampoline 8 01 o forward',
  'board 103B',
  'floor back tuck backward',
];

if (isWriting)
  describe('the list of drafts', () => {
    const kept: Kept[] = [];
    it.each(LISTED.map((one) => [nameOf(one), one] as const))('%s', { timeout: LONG }, (_, one) => {
      kept.push(keepDraft(one));
      writeFileSync(path.join(folder, 'flown.json'), `${JSON.stringify(kept, rounded, 1)}\n`);
    });
    afterAll(() => {
      const flown = new Map(LISTED.map((one) => [one, refly(one, keptOf(one, kept)?.recipe)]));
      writeFileSync(PAGE, writePage(flown, kept));
    });
  });
else
  describe('every draft that is kept', () => {
    const flown = new Map<Listed, Found | undefined>(LISTED.map((one) => [one, refly(one)]));
    const found = LISTED.flatMap((one) => (flown.get(one) ? [[nameOf(one), one] as const] : []));

    it.each(found)('%s flies to exactly its code', (_, one) => {
      const draft = specOfListed(one);
      const { judged, spec } = flown.get(one) as Found;
      const twists = draft.halfTwists.reduce((a, b) => a + b, 0) / 2;
      expect(judged.faults.map(({ text }) => text)).toEqual([]);
      expect(Math.abs(judged.reached.twists - twists)).toBeLessThanOrEqual(TWIST_WITHIN);
      expect(judged.reached.duration).toBeGreaterThan(one.airTimeS[0] - 0.005);
      expect(judged.reached.duration).toBeLessThan(one.airTimeS[1] + 0.005);
      expect(spec.title).toBe(draft.title);
    });

    it.each(['trampoline', 'dive', 'name'] as const)(
      'of the %s list so many fly as were wanted before the engine',
      (kind) => {
        expect(found.filter(([, one]) => one.kind === kind).length).toBeGreaterThanOrEqual(LEAST[kind]);
      },
    );

    it('docs/drafts.md is what is kept (npm run drafts)', () => {
      expect(readFileSync(PAGE, 'utf8')).toBe(writePage(flown));
    });

    it.each(LISTED.filter(({ kind }) => kind === 'name').map((one) => [nameOf(one), one] as const))(
      '%s is read as the trade means it',
      (_, one) => {
        const asked = readAsked(one.text, one.place);
        const specs = asked.kind === 'one' ? [asked.spec] : asked.offers.map(({ spec }) => spec);
        expect(specs.map(({ code, direction, place }) => [code, direction, place])).toContainEqual([
          one.meaning,
          one.direction,
          one.place,
        ]);
      },
    );
  });

if (!isWriting)
  describe('a search', () => {
    const sample = LISTED.filter((one) => (isWhole ? keptOf(one)?.recipe : SAMPLE.includes(nameOf(one))));
    it.each(sample.map((one) => [nameOf(one), one] as const))(
      '%s is found, and its file flies as the draft did',
      { timeout: LONG },
      (_, one) => {
        const draft = draftListed(one);
        if (draft.kind !== 'flown') throw new Error(draft.faults.join('; '));
        const file = fileOfDraft(draft, { ref: one.athlete });
        const flight = flySkill(launchedOf(parseSkill(file, { athletes, shapes })));
        expect(flight.duration).toBeCloseTo(draft.reached.duration, 3);
      },
    );
  });

/** What still flies is kept as it is; the rest is searched. */
function keepDraft(one: Listed): Kept {
  const { text, place, direction } = one;
  const id = { text, place, ...(direction ? { direction } : {}) };
  const known = keptOf(one);
  if (known?.recipe && refly(one)?.judged.faults.length === 0) return known;
  const draft = draftListed(one);
  if (draft.kind === 'flown') return { ...id, recipe: draft.found.recipe };
  const { limit, faults, nearest } = draft;
  return { ...id, refused: { ...(limit ? { limit } : {}), faults, ...(nearest ? { nearest: nearest.code } : {}) } };
}

/** Numbers as they are kept: finer than any of them matters. */
function rounded(_: string, value: unknown): unknown {
  return typeof value === 'number' ? Number(value.toFixed(7)) : value;
}
