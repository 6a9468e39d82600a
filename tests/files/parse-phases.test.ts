// The phases before and after the flight in a skill file: units, and faults with field, value and what is allowed.
import { describe, expect, test } from 'vitest';
import { parseSkill } from '../../sim/files/parse-skill.ts';
import { afterOf, beforeOf } from '../../sim/index.ts';
import { fileOf, shelf } from '../skill/load.ts';

const RAD = Math.PI / 180;
type Change = (file: Loose) => void;
interface Loose {
  before: Record<string, unknown> & { moves: Record<string, unknown> & { keys: Record<string, unknown>[] } };
  after: Record<string, unknown> & { keys: Record<string, unknown>[] };
}
const parse = (id: string, change: Change = () => {}) => {
  const file = fileOf(id);
  change({ before: beforeOf(file), after: afterOf(file) } as unknown as Loose);
  return parseSkill(file, shelf);
};

describe('units', () => {
  test('a swing in radians and seconds', () => {
    const { start } = parse('giant-release-late');
    if (start.kind !== 'swing') throw new Error('no swing');
    const { swing } = start;
    expect(swing.start).toEqual({ kind: 'handstand', nudge: 8 * RAD });
    expect(swing.release).toEqual({ at: 'angle', angle: 436 * RAD });
    expect(swing.late).toBe(0.03);
    expect(swing.moves.keys.hip?.[1]).toEqual({ at: -105 * RAD, value: -1.6 * RAD, kind: 'pass' });
  });

  test('a contact and a mat of its own', () => {
    const { start } = parse('vault-handspring-half');
    if (start.kind !== 'contact') throw new Error('no contact');
    expect(start.contact.given.lean).toBeCloseTo(-26 * RAD, 12);
    expect(start.contact.h_Scm_W).toEqual([0, 0, -50]);
    const { after } = parse('trampoline-double-tuck');
    expect(after?.mat).toEqual({ thickness: 1.1, stiffness: 5500, damping: 0.02, friction: 0.8 });
    expect(after?.action.kind).toBe('keyed');
    expect(after?.action.keys).toEqual([{ s: 0.05, angles: { hip: 4 * RAD, knee: 4 * RAD, ankle: 0 } }]);
  });

  test('a file without them has none', () => {
    const spec = parse('back-tuck');
    expect(spec.start.kind).toBe('stated');
    expect(spec.after).toBeUndefined();
  });
});

describe('faults', () => {
  // what is changed, what the message holds
  test.each<[string, string, Change, ...string[]]>([
    [
      'giant-release-late',
      'rail',
      (f) => {
        f.before.rail = 'rope';
      },
      'phases[0].rail',
      '"rope"',
      'highBar',
    ],
    [
      'giant-release-late',
      'kind',
      (f) => {
        f.before.kind = 'run';
      },
      'phases[0].kind',
      '"run"',
    ],
    [
      'giant-release-late',
      'late',
      (f) => {
        f.before.releaseLateS = 3;
      },
      'phases[0].releaseLateS',
      '3',
      '-0.5 to 0.5',
    ],
    [
      'giant-release-late',
      'unit',
      (f) => {
        f.before.moves.over = 'time';
        f.before.moves.periodS = 2;
      },
      'phases[0].moves.keys[0].atS',
      'missing',
    ],
    [
      'giant-release-late',
      'both',
      (f) => {
        f.before.moves.keys[0].atS = 1;
      },
      'keys[0].atS',
      'atDeg alone',
    ],
    [
      'giant-release-late',
      'order',
      (f) => {
        f.before.moves.keys[1].atDeg = -200;
      },
      'keys[1].atDeg',
      'shoulder key above',
    ],
    [
      'giant-release-late',
      'rounds',
      (f) => {
        f.before.moves.rounds = 1.5;
      },
      'phases[0].moves.rounds',
      '1.5',
      'whole number',
    ],
    [
      'vault-handspring-half',
      'place',
      (f) => {
        f.before.place = 'wall';
      },
      'phases[0].place',
      '"wall"',
      'vaultTable',
    ],
    [
      'floor-double-tuck',
      'mat',
      (f) => {
        f.after.mat = 'sand';
      },
      'phases[2].mat',
      '"sand"',
    ],
    [
      'floor-double-tuck',
      'stiff',
      (f) => {
        f.after.legStiffness = 50;
      },
      'phases[2].legStiffness',
      '50',
      '0.1 to 5',
    ],
    [
      'trampoline-double-tuck',
      'keys',
      (f) => {
        f.after.keys[2].s = 0.01;
      },
      'phases[2].keys[2].s',
      '0.01',
      'not before',
    ],
    [
      'floor-double-tuck',
      'unknown',
      (f) => {
        f.after.bounce = 1;
      },
      'phases[2].bounce',
      'unknown field',
    ],
  ])('%s: %s', (id, _, change, ...words) => {
    let shown = '';
    try {
      parse(id, change);
    } catch (error) {
      shown = String(error);
    }
    for (const word of words) expect(shown).toContain(word);
  });
});
