// The list of changes between two skill files.
import { describe, expect, it } from 'vitest';
import { listChanges } from '../../sim/files/list-changes.ts';
import { type FileTakeoff, type FileVelocity, flightOf, type SkillFile } from '../../sim/index.ts';
import { fileOf, presetIds } from '../skill/load.ts';

const changed = (id: string, edit: (file: SkillFile) => void): ReturnType<typeof listChanges> => {
  const after = fileOf(id);
  edit(after);
  return listChanges(fileOf(id), after);
};
const firstBlock = (file: SkillFile) => {
  const list = flightOf(file).schedule.blocks;
  if (!list || list.length < 2) throw new RangeError('blocks');
  return list;
};

const takeoffOf = (file: SkillFile): FileTakeoff => {
  const { takeoff } = flightOf(file);
  if (!takeoff) throw new RangeError('take-off');
  return takeoff;
};
const speedOf = (file: SkillFile): FileVelocity => {
  const { velocityMPerS } = takeoffOf(file);
  if (!velocityMPerS) throw new RangeError('velocity');
  return velocityMPerS;
};

describe('list of changes', () => {
  it('of a file against itself is empty, whatever the order of its fields', () => {
    for (const id of presetIds) {
      expect(listChanges(fileOf(id), fileOf(id))).toEqual([]);
      const turned = Object.fromEntries(Object.entries(fileOf(id)).reverse()) as unknown as SkillFile;
      expect(listChanges(fileOf(id), turned)).toEqual([]);
    }
  });

  it('one number changed is one change, in words', () => {
    const list = changed('former/back-straight-full', (f) => {
      speedOf(f).up = 5.2;
    });
    expect(list).toEqual([
      {
        kind: 'changed',
        field: 'phases[0].takeoff.velocityMPerS.up',
        before: 5,
        after: 5.2,
        words: 'take-off speed up (m/s): 5 -> 5.2',
      },
    ]);
  });

  it('a number that came from radians is written without the noise behind its digits', () => {
    const list = changed('former/back-straight-full', (f) => {
      speedOf(f).up = 3.0000000000000004;
    });
    expect(list.map((c) => c.words)).toEqual(['take-off speed up (m/s): 5 -> 3']);
  });

  it('a block moved, adjusted, put in between, taken out', () => {
    expect(
      changed('former/back-straight-full', (f) => {
        firstBlock(f)[1].from = { anchor: 'takeoff', s: 0.26 };
        firstBlock(f)[1].adjustDeg = { shoulderElevationR: 150, shoulderElevationL: 22 };
      }).map((c) => c.words),
    ).toEqual([
      'block 2 "oneUpOneDown" starts: 0.24 s after take-off -> 0.26 s after take-off',
      'block 2 "oneUpOneDown", right shoulder elevation (deg): 158 -> 150',
    ]);
    expect(
      changed('former/back-straight-full', (f) => {
        firstBlock(f).splice(1, 0, {
          shape: 'star',
          from: { anchor: 'takeoff', s: 0.1 },
          to: { anchor: 'takeoff', s: 0.12 },
        });
      }).map((c) => `${c.kind} ${c.field}`),
    ).toEqual(['added phases[0].schedule.blocks[1]']);
    expect(
      changed('former/back-straight-full', (f) => {
        firstBlock(f).splice(0, 1);
      }).map((c) => c.words),
    ).toEqual(['block "tShape": 0.2 s before take-off, removed']);
  });

  it('keys: pasted, moved, set again', () => {
    const list = changed('cat-turn', (f) => {
      const keys = flightOf(f).schedule.keys ?? [];
      keys[0].deg = 12;
      keys.push({ angle: 'neckFlexion', at: { anchor: 'touchdown', s: -0.1 }, deg: 20 });
    });
    expect(list.map((c) => c.words)).toEqual([
      'key of shoulder elevation at take-off (deg): 8 -> 12',
      'key of neck flexion: 20 deg 0.1 s before touchdown, added',
    ]);
  });

  it('the momentum said another way is listed, out and in', () => {
    const list = changed('back-tuck', (f) => {
      takeoffOf(f).momentum = { ratesRevPerS: { somersault: 0.7 } };
    });
    expect(list.map((c) => c.kind).sort()).toEqual(['added', 'removed']);
    for (const c of list) expect(c.words).not.toMatch(/undefined|object/);
  });

  it('between any two presets every change has words without a hole', () => {
    for (const a of presetIds)
      for (const b of presetIds)
        for (const c of listChanges(fileOf(a), fileOf(b))) expect(c.words).not.toMatch(/undefined|\[object|NaN/);
  });
});
