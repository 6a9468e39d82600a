// Poses and keys along time as laws: a key at the cursor and nowhere else, order kept, nothing lost on the way.

import { describe, expect, it } from 'vitest';
import {
  calcFrames,
  type FileSchedule,
  flySkill,
  frameTimes,
  makeHuman,
  parseSkill,
  type SkillFile,
} from '../../sim/index.ts';
import { isInOrder } from '../../src/document/key-order.ts';
import type { KeySource } from '../../src/document/lanes.ts';
import {
  copyKeys,
  copyPose,
  getSourcesAt,
  getSourcesIn,
  mirrorKeys,
  mirrorPose,
  moveSources,
  pasteKeys,
  removeSources,
  scaleSources,
  setPoseAt,
} from '../../src/document/pose-edits.ts';
import { calcQuarterTimes, getEventTimes, snapTime } from '../../src/document/snap.ts';
import { resolveTime } from '../../src/document/times.ts';
import { flightIn } from '../files/parts.ts';
import { emptyShelf, sampleSkill } from '../files/sample-skill.ts';
import { launchedOf } from '../skill/load.ts';

const anchors = { apex: 0.43, touchdown: 1 };
const options = { anchors };
const RAD = Math.PI / 180;
const body = makeHuman({ name: 'Made Up', sex: 'female', mass: 54, stature: 1.62 });
const bare = (keys: FileSchedule['keys']): SkillFile => ({
  ...sampleSkill,
  phases: [{ ...flightIn(sampleSkill), schedule: { base: 'overhead', keys } }],
});
const at = (s: number, anchor: 'takeoff' | 'apex' | 'touchdown' = 'takeoff') => ({ anchor, s });
const fly = (file: SkillFile) => flySkill(launchedOf(parseSkill(file, emptyShelf)));
const angleAt = (file: SkillFile, name: string, t: number): number => {
  const flight = fly(file);
  const angles = new Float64Array(flight.body.angles.length);
  flight.schedule.anglesInto(t, angles, new Float64Array(angles.length));
  return angles[flight.body.angles.findIndex((a) => a.name === name)] / RAD;
};

describe('a pose set at the cursor', () => {
  it('is what the joints do there', () => {
    const file = setPoseAt(sampleSkill, 0.36, { hipFlexionL: 80, neckFlexion: -20 }, options);
    expect(angleAt(file, 'hipFlexionL', 0.36)).toBeCloseTo(80, 9);
    expect(angleAt(file, 'hipFlexionR', 0.36)).toBeCloseTo(120, 9);
    expect(angleAt(file, 'neckFlexion', 0.36)).toBeCloseTo(-20, 9);
  });

  it('is a key for both sides when mirrored', () => {
    const file = setPoseAt(sampleSkill, 0.36, { hipFlexionL: 80 }, { ...options, mirror: true });
    expect(flightIn(file).schedule.keys).toEqual([{ angle: 'hipFlexion', at: at(0.36), deg: 80 }]);
  });

  it('changes a key within 5 ms, and keeps its time, kind and event', () => {
    const key = { angle: 'kneeFlexion', at: at(-0.2, 'touchdown'), deg: 10, kind: 'pass' } as const;
    const file = setPoseAt(bare([key]), 0.804, { kneeFlexion: 30 }, options);
    expect(flightIn(file).schedule.keys).toEqual([{ ...key, deg: 30 }]);
  });

  it('snaps to a block edge within 5 ms', () => {
    const file = setPoseAt(sampleSkill, 0.417, { hipFlexion: 90 }, options);
    expect(flightIn(file).schedule.keys).toEqual([{ angle: 'hipFlexion', at: at(0.42), deg: 90 }]);
    expect(angleAt(file, 'hipFlexionR', 0.42)).toBeCloseTo(90, 9);
  });

  it('on one side leaves the other as it was keyed', () => {
    const both = bare([{ angle: 'hipFlexion', at: at(0.3), deg: 50 }]);
    const file = setPoseAt(both, 0.3, { hipFlexionR: 70 }, options);
    expect(angleAt(file, 'hipFlexionL', 0.3)).toBeCloseTo(50, 9);
    expect(angleAt(file, 'hipFlexionR', 0.3)).toBeCloseTo(70, 9);
    const again = setPoseAt(file, 0.3, { hipFlexionL: 20 }, { ...options, mirror: true });
    expect(angleAt(again, 'hipFlexionL', 0.3)).toBeCloseTo(20, 9);
    expect(angleAt(again, 'hipFlexionR', 0.3)).toBeCloseTo(20, 9);
  });

  it('keeps keys elsewhere, in the order of time', () => {
    const keys = [0.1, 0.5, 0.9].map((s) => ({ angle: 'hipFlexion', at: at(s), deg: 10 }));
    const file = setPoseAt(bare(keys), 0.3, { hipFlexionL: 70 }, options);
    expect(flightIn(file).schedule.keys?.filter((k) => k.angle === 'hipFlexion')).toEqual(keys);
    expect(isInOrder(file, anchors)).toBe(true);
    fly(file);
  });

  it('leaves the document it is made from untouched', () => {
    const before = structuredClone(sampleSkill);
    setPoseAt(sampleSkill, 0.36, { hipFlexionL: 80 }, options);
    expect(sampleSkill).toEqual(before);
  });
});

describe('moves along time', () => {
  const keys = [
    { angle: 'hipFlexion', at: at(0.2), deg: 10 },
    { angle: 'kneeFlexion', at: at(0.2), deg: 20 },
    { angle: 'hipFlexion', at: at(0.5), deg: 30 },
    { angle: 'hipFlexionL', at: at(-0.2, 'touchdown'), deg: 40 },
  ];
  const times = (file: SkillFile): number[] =>
    (flightIn(file).schedule.keys ?? []).map((k) => resolveTime(k.at, anchors));

  /** All that lies at 0.2 s, moved to another time. */
  const retimed = (toS: number): SkillFile => {
    const file = bare(keys);
    return moveSources(file, getSourcesAt(file, 0.2, anchors), toS - 0.2, anchors);
  };

  it('of a whole pose: all that lies at its time goes along', () => {
    expect(times(retimed(0.34))).toEqual([0.34, 0.34, 0.5, 0.8]);
  });

  it('stop at what is in the way', () => {
    const file = retimed(0.7);
    expect(isInOrder(file, anchors)).toBe(true);
    expect(times(file)[0]).toBeCloseTo(0.499, 3);
  });

  it('of several move together and may pass where single ones could not', () => {
    const sources: KeySource[] = [0, 2, 3].map((index) => ({ kind: 'key', index }));
    const moved = times(moveSources(bare(keys), sources, 0.1, anchors));
    for (const [i, t] of [0.3, 0.2, 0.6, 0.9].entries()) expect(moved[i]).toBeCloseTo(t, 9);
  });

  it('move block edges too, but never through each other', () => {
    const sources = getSourcesAt(sampleSkill, 0.42, anchors);
    expect(sources).toEqual([{ kind: 'edge', block: 0, side: 'to' }]);
    const file = moveSources(sampleSkill, sources, 1, anchors);
    expect(resolveTime(flightIn(file).schedule.blocks?.[0].to ?? at(9), anchors)).toBeCloseTo(0.59, 3);
    fly(file);
  });

  it('scale about a time that stays', () => {
    const file = bare(keys);
    const scaled = times(scaleSources(file, getSourcesIn(file, 0.2, 0.5, anchors), 0.2, 1.5, anchors));
    for (const [i, t] of [0.2, 0.2, 0.65, 0.8].entries()) expect(scaled[i]).toBeCloseTo(t, 9);
  });

  it('scaled to nothing keep their order', () => {
    const file = bare(keys);
    expect(isInOrder(scaleSources(file, getSourcesIn(file, 0, 1, anchors), 0.2, 0, anchors), anchors)).toBe(true);
  });
});

describe('copies', () => {
  it('of a pose put elsewhere make the same pose', () => {
    const row = body.angles.map((_, i) => (i - 15) / 40);
    const file = setPoseAt(bare([]), 0.4, copyPose(body, row), options);
    for (const [i, a] of body.angles.entries()) expect(angleAt(file, a.name, 0.4)).toBeCloseTo(row[i] / RAD, 2);
  });

  it('mirrored twice are what they were; once, sides change and turns of the spine change their way', () => {
    const pose = copyPose(
      body,
      body.angles.map((_, i) => (i - 15) / 40),
    );
    expect(mirrorPose(body, mirrorPose(body, pose))).toEqual(pose);
    const once = mirrorPose(body, { hipFlexionL: 30, lumbarTurn: 5, neckFlexion: 4, shoulderElevation: 7 });
    expect(once).toEqual({ hipFlexionR: 30, lumbarTurn: -5, neckFlexion: 4, shoulderElevation: 7 });
  });

  it('of a span of keys come again later, drawn out, each on its event', () => {
    const file = bare([
      { angle: 'hipFlexionL', at: at(0.1), deg: 10 },
      { angle: 'hipFlexionL', at: at(0.2), deg: 30, kind: 'pass' },
    ]);
    const span = copyKeys(file, getSourcesIn(file, 0, 0.3, anchors), anchors);
    expect(span.lengthS).toBeCloseTo(0.1, 9);
    const pasted = pasteKeys(file, mirrorKeys(body, span), 0.5, anchors, 2);
    expect(flightIn(pasted).schedule.keys?.slice(2)).toEqual([
      { angle: 'hipFlexionR', at: at(0.5), deg: 10 },
      { angle: 'hipFlexionR', at: at(0.7), deg: 30, kind: 'pass' },
    ]);
    expect(removeSources(pasted, getSourcesIn(pasted, 0.4, 1, anchors))).toEqual(file);
  });
});

describe('a dragged time', () => {
  const near = getEventTimes(anchors);
  it('takes an event within reach on the screen, whatever the zoom', () => {
    expect(snapTime(0.45, near, 200)).toMatchObject({ s: 0.43, anchor: 'apex' });
    expect(snapTime(0.45, near, 1000).kind).toBe('frame');
  });

  it('takes the event rather than the key on it, and the nearer of two', () => {
    expect(snapTime(0.99, [{ s: 1, kind: 'key' }, ...near], 200).kind).toBe('event');
    expect(snapTime(0.99, [{ s: 0.985, kind: 'key' }, ...near], 200).s).toBe(0.985);
  });

  it('else snaps to a frame', () => {
    expect(snapTime(0.2512, [], 200).s).toBeCloseTo(0.25, 9);
  });

  it('finds the quarter somersaults of a flight where the angle is a multiple of 90', () => {
    const flight = fly(sampleSkill);
    const frames = calcFrames(flight, frameTimes(flight.duration, 240));
    const quarters = calcQuarterTimes(frames);
    expect(quarters.map((q) => q.quarters)).toEqual(quarters.map((_, i) => i + 1));
    expect(quarters.length).toBeGreaterThan(2);
    for (const q of quarters) {
      const row = calcFrames(
        flight,
        Float64Array.of(0, ...Array.from({ length: 200 }, (_, i) => (q.s * (i + 1)) / 200)),
      );
      const done = Math.abs(row.somersault[200] - row.somersault[0]);
      expect(done / (Math.PI / 2)).toBeCloseTo(q.quarters ?? 0, 2);
    }
  });
});
