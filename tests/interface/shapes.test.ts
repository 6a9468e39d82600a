// Shapes on the ruler as laws: reached when asked, neighbours give way, hands go with their shape, an opened shape moves the same.

import { describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { removeBlock, setBlockEdge } from '../../src/document/edits.ts';
import { dropHold, findHold, setHold } from '../../src/document/hand-holds.ts';
import { isInOrder } from '../../src/document/key-order.ts';
import { carryShape, layShape, moveBlock, setMoveTime } from '../../src/document/lay-shape.ts';
import { openBlock } from '../../src/document/open-block.ts';
import { makeOwnShapes, nameShape } from '../../src/document/own-shapes.ts';
import { getSchedule } from '../../src/document/phases.ts';
import { resolveTime } from '../../src/document/times.ts';
import { posing } from '../../src/engine/pose.ts';
import type { FlightResult } from '../../src/engine/result.ts';
import { someOf } from '../corpus.ts';
import { flightIn } from '../files/parts.ts';
import { former } from '../former/index.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const anchors = { apex: 0.5, touchdown: 1.04 };
const full = former['back-straight-full'] as SkillFile;
const anchorsOf = (r: FlightResult) => ({ apex: r.outline.apex, touchdown: r.flight.duration });
const spans = (file: SkillFile) =>
  (flightIn(file).schedule.blocks ?? []).map(
    (b) => [b.shape, resolveTime(b.from, anchors), resolveTime(b.to, anchors)] as const,
  );
const lay = (at: number, moveS = 0.15) => layShape(full, { shape: 'tuck', at, moveS, arms: 'front' }, anchors);

describe('a shape that is laid down', () => {
  it('in a held shape is reached at the time asked for, after a move of the time asked for, and takes the rest', () => {
    expect(spans(lay(0.45))).toEqual([
      ['tShape', -0.2, 0],
      ['oneUpOneDown', 0.24, 0.3],
      ['tuck', 0.45, 0.712],
      ['landing', 0.952, 1.04],
    ]);
  });

  it('in a move is held for a tenth, and what is held before it ends where the move begins', () => {
    const [, before, tuck, after] = spans(lay(0.8));
    expect(before).toEqual(['oneUpOneDown', 0.24, 0.65]);
    expect(tuck[0]).toBe('tuck');
    expect(tuck[1]).toBeCloseTo(0.8, 9);
    expect(tuck[2]).toBeCloseTo(0.9, 9);
    expect(after).toEqual(['landing', 0.952, 1.04]);
  });

  it('where the held shape has only begun takes its place', () => {
    expect(spans(lay(0.25)).map(([name]) => name)).toEqual(['tShape', 'tuck', 'landing']);
  });

  it('keeps the order wherever it is laid, and flies', () => {
    for (let at = 0; at <= 1.04; at += 0.04) {
      const file = lay(at);
      expect(isInOrder(file, anchors)).toBe(true);
      // a tuck late in the flight brings the landing before the shape that was to land: said by the page, not here
      if (at < 0.6) expect(engine.fly(file).flight.duration).toBeGreaterThan(0.5);
    }
  });
});

describe('a shape on the ruler', () => {
  it('moved goes whole, with the keys in it, and stops before its neighbour', () => {
    const key = { angle: 'neckFlexion', at: { anchor: 'takeoff', s: 0.5 }, deg: 20 } as const;
    const keyed = { ...full, phases: [{ ...flightIn(full), schedule: { ...flightIn(full).schedule, keys: [key] } }] };
    const near = moveBlock(keyed, 1, 0.1, anchors);
    expect(spans(near)[1]).toEqual(['oneUpOneDown', 0.34, 0.812]);
    expect(flightIn(near).schedule.keys?.[0].at.s).toBeCloseTo(0.6, 9);
    const far = spans(moveBlock(keyed, 1, 0.5, anchors));
    expect(far[1][2]).toBeLessThanOrEqual(0.952 - 0.03 + 1e-6);
    expect(far[1][2] - far[1][1]).toBeCloseTo(0.472, 3);
  });

  it('takes the time typed for the move into it from the shape before', () => {
    expect(spans(setMoveTime(full, 2, 0.1, anchors))[1]).toEqual(['oneUpOneDown', 0.24, 0.852]);
    expect(spans(setMoveTime(full, 2, 9, anchors))[1]).toEqual(['oneUpOneDown', 0.24, 0.24]);
  });
});

describe('hands that hold on', () => {
  const tucked = layShape(full, { shape: 'tuck', at: 0.4, moveS: 0.12, arms: 'front' }, anchors);
  const held = setHold(tucked, 2, { on: 'shin', hand: 'both' }, anchors);

  it('do so from the beginning of the shape to its end, also after an edge was moved', () => {
    expect(findHold(held, 2)?.hold).toEqual({ on: 'shin', hand: 'both' });
    const moved = setBlockEdge(held, 2, 'to', { anchor: 'takeoff', s: 0.6 });
    expect(findHold(moved, 2)?.hold).toEqual({ on: 'shin', hand: 'both' });
    expect(findHold(moveBlock(moved, 2, 0.05, anchors), 2)?.hold.on).toBe('shin');
  });

  it('let go without a trace, and when the shape is taken out', () => {
    expect(dropHold(held, 2)).toEqual(tucked);
    expect(flightIn(removeBlock(held, 2)).schedule.contacts).toBeUndefined();
  });

  it('are brought to the shins', () => {
    const gaps = posing.handGaps(engine.fly(held));
    expect(gaps).toHaveLength(2);
    // 0.0 mm both: the arms are long enough for a tuck
    for (const { gap } of gaps) expect(gap).toBeLessThan(1e-3);
  });
});

describe('a shape opened into joint lanes', () => {
  /** deg; measured at most 5e-5, the rounding of keys to 1e-4 deg */
  const SAME_ANGLE = 1e-3;
  /** deg, where arms are led in front or by the side of a move: seven stages stand for that; measured at most 1.5, with a swing 1.4 */
  const SAME_LED = 2;
  for (const id of someOf(Object.keys(skills), 4, 3)) {
    const file = skills[id] as SkillFile;
    (getSchedule(file).blocks ?? []).forEach((_, index) => {
      it(`moves the joints as before: ${id}, shape ${index + 1}`, () => {
        const before = engine.fly(file);
        const { keys, base } = posing.blockKeys(before, index);
        const after = engine.fly(openBlock(file, index, keys, base, anchorsOf(before)));
        let worst = 0;
        let name = '';
        const { angles } = before.flight.body;
        for (let i = 0; i <= 200; i++) {
          const t = (before.flight.duration * i) / 200;
          const [a, b] = [posing.anglesAt(before, t), posing.anglesAt(after, t)];
          a.forEach((v, k) => {
            const off = (Math.abs(v - b[k]) * 180) / Math.PI;
            if (off > worst) [worst, name] = [off, `${angles[k].name} at ${t.toFixed(3)}`];
          });
        }
        const led = keys.some((key) => key.kind === 'pass');
        expect(worst, name).toBeLessThan(led ? SAME_LED : SAME_ANGLE);
      });
    });
  }
});

describe('a shape of the user', () => {
  const memory = () => {
    const map = new Map<string, string>();
    return {
      getItem: (k: string) => map.get(k) ?? null,
      setItem: (k: string, v: string) => map.set(k, v),
    } as unknown as Storage;
  };

  it('is kept, beside what another tab kept meanwhile', () => {
    const store = memory();
    const [one, two] = [makeOwnShapes(store), makeOwnShapes(store)];
    const shape = { title: 'Cat', word: 'cat', angles: { hipFlexion: 30 } };
    expect(one.keep('cat', shape)).toBe(true);
    expect(two.keep('dog', { ...shape, title: 'Dog' })).toBe(true);
    expect(Object.keys(one.read())).toEqual(['cat', 'dog']);
    one.remove('cat');
    expect(Object.keys(two.read())).toEqual(['dog']);
  });

  it('that was spoilt is passed over', () => {
    const store = memory();
    store.setItem('shapeflight.shapes', '{"a":{"title":"A","word":"a","angles":{"hipFlexion":"x"}},"b":7}');
    expect(makeOwnShapes(store).read()).toEqual({});
    store.setItem('shapeflight.shapes', 'not json');
    expect(makeOwnShapes(store).read()).toEqual({});
  });

  it('gets a name that is free', () => {
    const taken = new Set(['openTuck', 'openTuck2']);
    expect(nameShape('Open tuck!', (id) => taken.has(id))).toBe('openTuck3');
    expect(nameShape('***', () => false)).toBe('ownShape');
  });

  it('goes into the file that uses it', () => {
    const shape = { title: 'Cat', word: 'cat', angles: { hipFlexion: 30 } };
    const file = layShape(
      carryShape(full, 'cat', shape),
      { shape: 'cat', at: 0.5, moveS: 0.1, arms: 'direct' },
      anchors,
    );
    expect(engine.readFile(JSON.parse(JSON.stringify(file))).shapes?.cat).toEqual(shape);
    expect(engine.fly(file).skill.schedule.blocks[2].shape).toBe('cat');
  });
});
