// approach and arrival of a skill file: units, and faults with field, value and what is allowed.
import { describe, expect, test } from 'vitest';
import { parseSkill } from '../../sim/files/parse-skill.ts';
import { fileOf, shelf } from '../skill/load.ts';

const RAD = Math.PI / 180;
type Change = (file: Loose) => void;
interface Loose {
  approach: Record<string, unknown> & { moves: Record<string, unknown> & { keys: Record<string, unknown>[] } };
  arrival: Record<string, unknown> & { keys: Record<string, unknown>[] };
}
const parse = (id: string, change: (file: ReturnType<typeof fileOf>) => void = () => {}) => {
  const file = fileOf(id);
  change(file);
  return parseSkill(file, shelf);
};

describe('units', () => {
  test('a swing in radians and seconds', () => {
    const { start } = parse('giant-release-late');
    if (start.kind !== 'swing') throw new Error('no swing');
    const approach = start.swing;
    expect(approach.start).toEqual({ kind: 'handstand', nudge: 8 * RAD });
    expect(approach.release).toEqual({ at: 'angle', angle: 437.5 * RAD });
    expect(approach.late).toBe(0.03);
    expect(approach.moves.keys.hip?.[1]).toEqual({ at: -90 * RAD, value: 7 * RAD, kind: 'pass' });
  });

  test('a contact and a mat of its own', () => {
    const { start } = parse('vault-handspring-half');
    if (start.kind !== 'contact') throw new Error('no contact');
    const vault = start.contact;
    expect(vault.given.lean).toBeCloseTo(-26 * RAD, 12);
    expect(vault.h_Scm_W).toEqual([0, 0, -50]);
    const { after } = parse('trampoline-double-tuck');
    expect(after?.mat).toEqual({ thickness: 1.1, stiffness: 5500, damping: 0.02, friction: 0.8 });
    expect(after?.action.kind).toBe('keyed');
    expect(after?.action.keys).toEqual([{ s: 0.05, angles: { hip: 4 * RAD, knee: 4 * RAD, ankle: 0 } }]);
  });

  test('a file without them has none', () => {
    const spec = parse('back-tuck');
    expect(spec.start.kind === 'stated' && spec.start.contact).toBeUndefined();
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
        f.approach.rail = 'rope';
      },
      'approach.rail',
      '"rope"',
      'highBar',
    ],
    [
      'giant-release-late',
      'kind',
      (f) => {
        f.approach.kind = 'run';
      },
      'approach.kind',
      '"run"',
    ],
    [
      'giant-release-late',
      'late',
      (f) => {
        f.approach.releaseLateS = 3;
      },
      'approach.releaseLateS',
      '3',
      '-0.5 to 0.5',
    ],
    [
      'giant-release-late',
      'unit',
      (f) => {
        f.approach.moves.over = 'time';
        f.approach.moves.periodS = 2;
      },
      'approach.moves.keys[0].atS',
      'missing',
    ],
    [
      'giant-release-late',
      'both',
      (f) => {
        f.approach.moves.keys[0].atS = 1;
      },
      'keys[0].atS',
      'atDeg alone',
    ],
    [
      'giant-release-late',
      'order',
      (f) => {
        f.approach.moves.keys[1].atDeg = -200;
      },
      'keys[1].atDeg',
      'shoulder key above',
    ],
    [
      'giant-release-late',
      'rounds',
      (f) => {
        f.approach.moves.rounds = 1.5;
      },
      'approach.moves.rounds',
      '1.5',
      'whole number',
    ],
    [
      'vault-handspring-half',
      'place',
      (f) => {
        f.approach.place = 'wall';
      },
      'approach.place',
      '"wall"',
      'vaultTable',
    ],
    [
      'floor-double-tuck',
      'mat',
      (f) => {
        f.arrival.mat = 'sand';
      },
      'arrival.mat',
      '"sand"',
    ],
    [
      'floor-double-tuck',
      'stiff',
      (f) => {
        f.arrival.legStiffness = 50;
      },
      'arrival.legStiffness',
      '50',
      '0.1 to 5',
    ],
    [
      'trampoline-double-tuck',
      'keys',
      (f) => {
        f.arrival.keys[2].s = 0.01;
      },
      'arrival.keys[2].s',
      '0.01',
      'not before',
    ],
    [
      'floor-double-tuck',
      'unknown',
      (f) => {
        f.arrival.bounce = 1;
      },
      'arrival.bounce',
      'unknown field',
    ],
  ])('%s: %s', (id, _, change, ...words) => {
    let told = '';
    try {
      parse(id, change as never);
    } catch (error) {
      told = String(error);
    }
    for (const word of words) expect(told).toContain(word);
  });
});
