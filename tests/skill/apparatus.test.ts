// What a skill leaves and lands on: which pieces, where, how large. Sizes are written here again, from memory of the norms, apart from the table in sim.
import { describe, expect, it } from 'vitest';
import { apparatusOf, flySkill, type Piece, type SkillApparatus, type SkillFile } from '../../sim/index.ts';
import { calcContactPlaces } from '../../sim/motion/contact-places.ts';
import { apparatusOfChain } from '../../sim/skill/chain-apparatus.ts';
import { solidsOf } from '../../sim/skill/clearance.ts';
import { joinApparatus } from '../../sim/skill/join-apparatus.ts';
import { flightIn } from '../files/parts.ts';
import { flightsOf } from '../presets/flown.ts';
import { fileOf, skillOf } from './load.ts';

function flown(file: SkillFile) {
  const skill = skillOf(file);
  const flight = flySkill(skill);
  return { skill, flight, apparatus: apparatusOf({ skill, flight }) };
}
const of = (id: string) => flown(fileOf(id));
const kinds = ({ pieces }: SkillApparatus): string => pieces.map((p) => p.kind).join(' ');
const leaves = ({ pieces, leaves: i }: SkillApparatus): Piece => pieces[i ?? -1];
const lands = ({ pieces, lands: i }: SkillApparatus): Piece => pieces[i ?? -1];
const size = ([a, b]: readonly [number, number]): number => b - a;
const middle = ([a, b]: readonly [number, number]): number => (a + b) / 2;

/** The lowest that feet or hands are at an instant, m. */
const lowest = (flight: ReturnType<typeof of>['flight'], t: number): number =>
  Math.min(...calcContactPlaces(flight, t).map((p) => p.low));
/** Feet may be so deep in what they leave or meet, or so far over it, m; measured: 0.0000. */
const FITS = 0.01;

describe('a trampoline skill', () => {
  for (const id of ['trampoline-double-tuck', 'trampoline-barani', 'trampoline-double-full']) {
    it(`${id}: leaves and meets one bed, whose feet fit it at both ends to 1 cm`, () => {
      const { apparatus, flight } = of(id);
      expect(kinds(apparatus)).toBe('floor bed');
      const bed = leaves(apparatus);
      expect(lands(apparatus)).toBe(bed);
      expect(size(bed.x)).toBeCloseTo(4.28, 9);
      expect(size(bed.z)).toBeCloseTo(2.14, 9);
      expect([size(bed.frame?.x ?? [0, 0]), size(bed.frame?.z ?? [0, 0])].map((v) => v.toFixed(2))).toEqual([
        '5.05',
        '2.91',
      ]);
      expect([size(bed.box?.x ?? [0, 0]), size(bed.box?.z ?? [0, 0])].map((v) => v.toFixed(2))).toEqual([
        '2.15',
        '1.08',
      ]);
      for (const t of [0, flight.duration]) expect(Math.abs(lowest(flight, t) - bed.y[1])).toBeLessThan(FITS);
      // its cross is under the feet that leave it
      const feet = calcContactPlaces(flight, 0).filter((p) => p.part === 'feet');
      const x = feet.reduce((sum, p) => sum + p.x, 0) / feet.length;
      expect(middle(bed.x)).toBeCloseTo(x, 9);
    });
  }

  it('whose heights count from the bed has the floor 1.155 m under it', () => {
    const file = fileOf('trampoline-barani');
    const flight = flightIn(file);
    flight.takeoff.lowestPointHeightM = 0;
    flight.end = { surface: { kind: 'trampoline', heightM: 0 } };
    const { apparatus } = flown(file);
    expect(leaves(apparatus).y[1]).toBeCloseTo(0, 9);
    expect(leaves(apparatus).floorY).toBeCloseTo(-1.155, 9);
    expect(apparatus.pieces[0].y[1]).toBeCloseTo(-1.155, 9);
  });
});

describe('what other skills leave', () => {
  it('a vault: a table of 1.20 by 0.95 m, 1.25 m high for a woman, its far end 0.4 m past the hands, a mat behind it', () => {
    const { apparatus, flight } = of('vault-handspring-half');
    const table = leaves(apparatus);
    expect(kinds(apparatus)).toBe('floor mat table');
    expect([size(table.x), size(table.z), table.y[1]].map((v) => v.toFixed(2))).toEqual(['1.20', '0.95', '1.25']);
    const hands = calcContactPlaces(flight, 0).filter((p) => p.part === 'hands');
    const x = hands.reduce((sum, p) => sum + p.x, 0) / hands.length;
    expect(table.x[1]).toBeCloseTo(x + 0.4, 9);
    const mat = lands(apparatus);
    expect(mat.y).toEqual([0, 0.2]);
    expect(mat.x[0]).toBeGreaterThan(table.x[1]);
    expect(lowest(flight, flight.duration)).toBeCloseTo(0.2, 3);
  });

  it('a giant: a rail 2.40 m wide at the height of its norm over mats, and the layer that it lands on', () => {
    const { apparatus, skill } = of('giant-double-straight');
    const rail = leaves(apparatus);
    expect(kinds(apparatus)).toBe('floor mat mat rail');
    expect(middle(rail.y)).toBeCloseTo(2.8, 9);
    expect(size(rail.y)).toBeCloseTo(0.028, 9);
    expect(size(rail.z)).toBeCloseTo(2.4, 9);
    expect(middle(rail.x)).toBeCloseTo(skill.launch.barX, 9);
    expect(lands(apparatus).y[1]).toBeCloseTo(0.3, 9);
  });

  it('a dive: a springboard of 4.88 by 0.51 m under the toes, water, and the edge of the pool 1.5 m behind its end', () => {
    const { apparatus, flight } = of('dive-forward-one-and-half-pike');
    const board = leaves(apparatus);
    expect(kinds(apparatus)).toBe('water floor divingBoard');
    expect([size(board.x), size(board.z), board.y[1]].map((v) => v.toFixed(2))).toEqual(['4.88', '0.51', '3.00']);
    expect(board.x[1]).toBeCloseTo(
      Math.max(
        ...calcContactPlaces(flight, 0)
          .filter((p) => p.part === 'feet')
          .map((p) => p.x),
      ),
      9,
    );
    expect(apparatus.pieces[0].x[0]).toBeCloseTo(board.x[1] - 1.5, 9);
    expect(apparatus.pieces[1].x[1]).toBeCloseTo(board.x[1] - 1.5, 9);
  });

  it('a dive from 10 m: a platform', () => {
    const file = fileOf('dive-forward-one-and-half-pike');
    const { takeoff } = flightIn(file);
    takeoff.lowestPointHeightM = 10;
    const { apparatus } = flown(file);
    expect(leaves(apparatus)).toMatchObject({ kind: 'platform' });
    expect(leaves(apparatus).y[1]).toBeCloseTo(10, 6);
  });

  it('a tumbling skill: the floor, at both ends', () => {
    const { apparatus } = of('floor-double-tuck');
    expect(kinds(apparatus)).toBe('floor');
    expect([apparatus.leaves, apparatus.lands]).toEqual([0, 0]);
  });

  it('a mat beside the take-off does not begin under the feet that leave the floor', () => {
    const file = fileOf('back-tuck');
    flightIn(file).end = { surface: { kind: 'mat', heightM: 0.2 } };
    const { apparatus, flight } = flown(file);
    expect(kinds(apparatus)).toBe('floor mat');
    const feet = calcContactPlaces(flight, 0).filter((p) => p.part === 'feet');
    const mat = lands(apparatus);
    expect(mat.y[1]).toBeCloseTo(0.2, 9);
    const landed = calcContactPlaces(flight, flight.duration).filter((p) => p.part === 'feet');
    for (const p of landed) expect(p.x > mat.x[0] && p.x < mat.x[1]).toBe(true);
    expect(apparatus.leaves).toBe(0);
    expect(feet.length).toBeGreaterThan(0);
  });

  it('a foam pit is known from a mat by the landing', () => {
    const file = fileOf('floor-double-tuck');
    const landing = file.phases.find((p) => p.kind === 'landing');
    if (landing?.kind !== 'landing') throw new Error('no landing');
    landing.mat = 'pit';
    expect(lands(flown(file).apparatus)).toMatchObject({ kind: 'pit' });
  });

  it('nothing over the floor where it is not known what: no piece is made up', () => {
    const file = fileOf('back-tuck');
    const { takeoff } = flightIn(file);
    takeoff.lowestPointHeightM = 1;
    const { apparatus } = flown(file);
    expect(kinds(apparatus)).toBe('floor');
    expect(apparatus.leaves).toBeUndefined();
  });

  it('is what distances are measured from', () => {
    for (const id of ['giant-double-straight', 'vault-handspring-half', 'dive-forward-one-and-half-pike']) {
      const { skill, flight, apparatus } = of(id);
      const [solid] = solidsOf({ skill, flight });
      const piece = leaves(apparatus);
      if (solid.solid === 'rail') expect([solid.x, solid.y]).toEqual([middle(piece.x), middle(piece.y)]);
      else expect([solid.x, solid.y[1]]).toEqual([piece.x, piece.y[1]]);
    }
  });
});

describe('a chain', () => {
  it('of bounces in one bed has one bed, with its cross where the first leaves it', () => {
    const { apparatus } = of('trampoline-barani');
    const chain = joinApparatus([
      { apparatus, offset: { x: 0, z: 0 }, facing: 1 },
      { apparatus, offset: { x: 0.4, z: 0.1 }, facing: 1 },
      { apparatus, offset: { x: 0.9, z: 0 }, facing: 1 },
    ]);
    expect(chain.pieces.map((p) => p.kind)).toEqual(['floor', 'bed']);
    expect(chain.pieces[1]).toEqual(apparatus.pieces[1]);
    expect(chain.legs).toEqual([
      { leaves: 1, lands: 1 },
      { leaves: 1, lands: 1 },
      { leaves: 1, lands: 1 },
    ]);
  });

  it('onto a table and off it has one table: what is met is what the next flight leaves', () => {
    const after = of('vault-handspring-half').apparatus;
    const before = of('back-tuck').apparatus;
    const top: Piece = { kind: 'mat', x: [-0.6, 0.6], y: [0, 1.25], z: [-1, 1], floorY: 0, way: 1 };
    const chain = joinApparatus([
      {
        apparatus: { pieces: [...before.pieces, top], leaves: 0, lands: before.pieces.length },
        offset: { x: 0, z: 0 },
        facing: 1,
      },
      { apparatus: after, offset: { x: 1.3, z: 0 }, facing: 1 },
    ]);
    expect(chain.pieces.map((p) => p.kind)).toEqual(['floor', 'mat', 'table']);
    expect(chain.legs[0].lands).toBe(chain.legs[1].leaves);
    const table = chain.pieces[chain.legs[1].leaves ?? -1];
    expect(table.x[0]).toBeCloseTo(leaves(after).x[0] + 1.3, 9);
  });

  const giant = flown(fileOf('giant-double-straight'));
  const caught = (rail: 'highBar' | 'unevenLow', along: number) => {
    const ask = { rail, along, hands: 'both', gap: 0.05, closing: 2, armsStiffness: 15_000 } as const;
    return apparatusOf({ skill: { ...giant.skill, catch: ask }, flight: giant.flight });
  };

  it('with a catch of the rail that was let go has one rail; of another, that one too, so far along at its own height', () => {
    const same = caught('highBar', 0);
    expect(same.pieces.filter((p) => p.kind === 'rail')).toHaveLength(1);
    expect(same.lands).toBe(same.leaves);
    const other = caught('unevenLow', 1.61);
    const rails = other.pieces.filter((p) => p.kind === 'rail');
    expect(rails.map((p) => middle(p.y).toFixed(2))).toEqual(['2.80', '1.70']);
    expect(middle(rails[1].x) - middle(rails[0].x)).toBeCloseTo(1.61, 9);
    expect(size(rails[1].y)).toBeCloseTo(0.04, 9);
    expect(lands(other)).toBe(rails[1]);
  });

  it('of a flight turned half round has its pieces turned about the vertical', () => {
    const { apparatus } = giant;
    const turned = joinApparatus([{ apparatus, offset: { x: 2, z: 0.5 }, facing: -1 }]).pieces.find(
      (p) => p.kind === 'rail',
    );
    const rail = leaves(apparatus);
    expect(turned?.way).toBe(-rail.way);
    expect(turned?.x).toEqual([2 - rail.x[1], 2 - rail.x[0]]);
    expect(turned?.z).toEqual([0.5 - rail.z[1], 0.5 - rail.z[0]]);
    expect(turned?.y).toEqual(rail.y);
  });

  it('a flight that hands alone end, over 0.8 m, meets a table, its far end 0.4 m past the hands', () => {
    const file = fileOf('back-tuck');
    const end = { surface: { kind: 'other', heightM: 1.25, by: 'hands' } } as const;
    flightIn(file).end = end;
    flightIn(file).takeoff.velocityMPerS = { along: 1, up: 6 };
    const { apparatus, flight } = flown(file);
    const table = lands(apparatus);
    const hands = calcContactPlaces(flight, flight.duration).filter((p) => p.part === 'hands');
    expect(table).toMatchObject({ kind: 'table', way: 1 });
    expect(table.x[1]).toBeCloseTo(hands.reduce((sum, p) => sum + p.x, 0) / hands.length + 0.4, 9);
    expect(table.y[1]).toBeCloseTo(1.25, 9);
  });

  it('of the ready skills: a springboard before the table and a mat behind it, none in another; one bed for three flights', () => {
    const vault = apparatusOfChain(flightsOf('vault-from-the-board'));
    expect(vault.pieces.map((p) => p.kind)).toEqual(['floor', 'springboard', 'mat', 'table']);
    const [, board, mat, table] = vault.pieces;
    expect(board.x[1]).toBeLessThan(table.x[0]);
    expect(table.x[1]).toBeLessThan(mat.x[0]);
    expect(board.y[1]).toBeCloseTo(0.2, 6);
    expect(vault.legs).toEqual([
      { leaves: 1, lands: 3 },
      { leaves: 3, lands: 2 },
    ]);
    const bounces = apparatusOfChain(flightsOf('trampoline-jump-tuck-full'));
    expect(bounces.pieces.map((p) => p.kind)).toEqual(['floor', 'bed']);
    expect(bounces.legs).toEqual(Array(3).fill({ leaves: 1, lands: 1 }));
  });
});
