/** A skill whose schedule is keys alone, written back as a file: the arms held wide, or in, are then a skill like any other. */

import {
  afterOf,
  flightOf,
  type LaunchedSkill,
  type ShapeData,
  type SkillFile,
  takeoffInFile,
} from '../../sim/index.ts';
import { DEG } from '../../sim/math/angles.ts';

/** name of the pose at rest among the file's own shapes */
const BASE = 'armsHeld';

/**
 * `source` is the file that `skill` was made from; what schedule and take-off do not say is taken from it. The take-off is stated,
 * as launched: what came before gave it to other arms.
 */
export function fileOfArms(
  source: SkillFile,
  skill: LaunchedSkill,
  { title, word }: { title: string; word: string },
): SkillFile {
  const { schedule, takeoff, body } = skill;
  if (schedule.blocks.length > 0) throw new RangeError('fileOfArms: a schedule of keys alone is needed');
  if (takeoff.momentum.kind !== 'vector') throw new RangeError('fileOfArms: the momentum has to be a vector');
  const [hx, hy, hz] = takeoff.momentum.h_Scm_W;
  const { end, schedule: own } = flightOf(source);
  const landing = afterOf(source);
  const nameOf = (angle: number): string => body.angles[angle].name;
  const base: ShapeData = {
    title: word,
    word,
    angles: Object.fromEntries(body.angles.map(({ name }, i) => [name, schedule.base[i] * DEG])),
  };
  const smoothing = own.smoothing ? { smoothing: own.smoothing } : {};
  const samples = schedule.sampled.map((s) => ({
    angle: nameOf(s.angle),
    startS: s.start,
    rateHz: s.rate,
    deg: s.values.map((v) => v * DEG),
  }));
  return {
    ...source,
    title,
    phases: [
      {
        kind: 'flight',
        takeoff: { ...takeoffInFile(takeoff), momentum: { vectorKgM2PerS: [hx, hy, hz] } },
        end,
        schedule: {
          base: BASE,
          keys: schedule.keys.map((k) => ({
            angle: nameOf(k.angle),
            at: { anchor: k.at.anchor, s: k.at.s },
            deg: k.value * DEG,
            kind: k.kind,
            ...(k.next === undefined ? {} : { nextDeg: k.next * DEG }),
          })),
          ...(samples.length > 0 ? { samples } : {}),
          ...smoothing,
        },
      },
      ...(landing ? [landing] : []),
    ],
    shapes: { ...source.shapes, [BASE]: base },
  };
}
