/** The large stage's scene: what the page wants to see, with the poses that it takes. */

import { largeScene } from '../scene/large-scene.ts';
import { calcMeasure, type Measure } from '../scene/measure.ts';
import type { StageFlight, StagePose } from '../scene/pose-frames.ts';
import type { Scene } from '../scene/scene.ts';
import type { Trail } from '../scene/trails.ts';
import type { OtherVersion } from '../scene/version-ghost.ts';
import { formatNumber } from '../ui/numbers.ts';
import type { UnitSystem } from '../ui/units.ts';
import type { LargePictures, ViewPlace } from './stage-input.ts';
import { pictureTexts } from './words.ts';

type PoseAt = (t: number) => StagePose;

/** Points of a trail a second. */
const TRAIL_RATE = 60;
const ENDS = [
  ['handL', 'left'],
  ['handR', 'right'],
  ['footL', 'left'],
  ['footR', 'right'],
  ['head', 'centre'],
] as const;

const known = new WeakMap<StageFlight, readonly Trail[]>();

/** The ways of hands, feet and head through the flight, made once for each. */
function getTrails(flight: StageFlight, poseAt: PoseAt): readonly Trail[] {
  const made = known.get(flight);
  if (made) return made;
  const { body, duration } = flight;
  const followed = ENDS.flatMap(([name, side]) => {
    const segment = body.segments.findIndex((one) => one.name === name);
    const contact = body.contacts.find((one) => one.segment === segment);
    return contact ? [{ name, side, segment, p: contact.p_BoC_B }] : [];
  });
  const n = Math.max(2, Math.ceil(duration * TRAIL_RATE) + 1);
  const trails = followed.map(({ name, side }) => ({ name, side, points: new Float64Array(4 * n) }));
  for (let i = 0; i < n; i++) {
    const t = (duration * i) / (n - 1);
    const { R_WS, p_WSo_W } = poseAt(t).frames;
    followed.forEach(({ segment: k, p }, j) => {
      const { points } = trails[j];
      points[4 * i] = t;
      for (let row = 0; row < 3; row++) {
        const m = 9 * k + 3 * row;
        points[4 * i + 1 + row] = p_WSo_W[3 * k + row] + R_WS[m] * p[0] + R_WS[m + 1] * p[1] + R_WS[m + 2] * p[2];
      }
    });
  }
  known.set(flight, trails);
  return trails;
}

function wordMeasure(measure: Measure, units: UnitSystem): string {
  const value = calcMeasure(measure);
  if (value === undefined) return '';
  if (measure.kind === 'angle') return `${formatNumber((value * 180) / Math.PI, 0)}°`;
  const [[u0, v0], [u1, v1]] = measure.points;
  const length = (m: number): string => units.say('length', m);
  return pictureTexts.lengthRead(length(value), length(Math.abs(u1 - u0)), length(Math.abs(v1 - v0)));
}

function drawLarge(
  place: ViewPlace,
  flight: StageFlight,
  cursor: StagePose,
  poseAt: PoseAt,
  others: readonly OtherVersion[],
  units: UnitSystem,
): Scene {
  const { look, width, height } = place;
  if (!look) throw new RangeError('the large stage is drawn with a camera');
  const { everyStep, paths } = look.show;
  const n = look.steps;
  return largeScene({
    flight,
    cursor,
    look,
    width,
    height,
    others,
    trails: paths ? getTrails(flight, poseAt) : [],
    everyStep: everyStep ? Array.from({ length: n }, (_, i) => poseAt((flight.duration * i) / (n - 1))) : [],
    words: {
      ...pictureTexts,
      length: (m) => units.say('length', m),
      measured: look.measure ? wordMeasure(look.measure, units) : '',
    },
  });
}

export const largePictures: LargePictures = { draw: drawLarge, wordMeasure };
