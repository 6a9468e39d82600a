/** What the joints do during a flight, as a file says it: blocks of shapes, keys, samples, hands that hold on. */
import * as v from 'valibot';
import { angle, listOf, may, name, one, say, text, within } from './schema-parts.ts';

const timeSchema = v.strictObject({
  anchor: say(one('takeoff', 'apex', 'touchdown'), 'Event that the time is counted from.'),
  s: say(within(-60, 60, 's'), 'Seconds after the event; negative before it.'),
});
const angles = v.record(name, angle);

const block = v.strictObject({
  shape: say(name, 'Name of a shape, of the catalogue or of this file.'),
  from: say(timeSchema, 'The shape is reached.'),
  to: say(timeSchema, 'The shape is left.'),
  arms: may(one('front', 'side', 'direct'), 'The way the arms take into the shape; left out: direct.'),
  adjustDeg: may(angles, 'Angles that differ from the shape here, by name; a name without L or R means both sides.'),
});
const key = v.strictObject({
  angle: say(name, 'Name of the angle; without L or R both sides are keyed.'),
  at: say(timeSchema, 'When.'),
  deg: say(angle, 'The angle then.'),
  kind: may(one('stop', 'pass'), 'stop: the joint rests there (if left out); pass: it moves through.'),
  nextDeg: may(
    angle,
    'Plane of a shoulder only: the plane from here on, where the arm hangs down or points straight up.',
  ),
});
const smoothing = v.variant(
  'criterion',
  [
    v.strictObject({ criterion: say(v.literal('gcv'), 'Generalised cross-validation.') }),
    v.strictObject({
      criterion: say(v.literal('noise'), 'By the noise that is known.'),
      rmsDeg: say(within(0.0001, 90, 'deg'), 'Noise to take out, root mean square.'),
    }),
    v.strictObject({
      criterion: say(v.literal('cutoff'), 'By a frequency.'),
      hz: say(within(0.01, 5000, 'Hz'), 'At this frequency 0.707 of an oscillation is left; below half of the rate.'),
    }),
    v.strictObject({ criterion: say(v.literal('none'), 'Through every value.') }),
  ],
  'criterion "gcv", "noise" with rmsDeg, "cutoff" with hz, or "none"',
);
const samples = v.strictObject({
  angle: say(name, 'Name of the angle; without L or R both sides.'),
  startS: say(within(-60, 60, 's'), 'Time of the first value, from take-off.'),
  rateHz: say(within(1, 10000, 'Hz'), 'Values in a second.'),
  deg: say(listOf(angle, 20000), 'The values, 6 or more.'),
  smoothing: may(smoothing, 'How these are smoothed; left out: as the schedule says of all.'),
});
const hold = v.strictObject({
  hand: say(one('both', 'L', 'R'), 'Which hand.'),
  on: say(one('shin', 'behindKnee'), 'Where it takes hold, on its own side.'),
  from: say(timeSchema, 'It takes hold.'),
  to: say(timeSchema, 'It lets go.'),
});

export const scheduleSchema = v.strictObject({
  base: may(name, 'Name of the shape of the angles that nothing keys; left out: straight.'),
  blocks: may(
    listOf(block, 500),
    'The body held in shapes, in the order of time; between two it moves from one to the next.',
  ),
  keys: may(listOf(key, 10000), 'Single angles at single times; those of one angle in the order of time.'),
  samples: may(listOf(samples, 200), 'Angles measured or computed at a fixed rate.'),
  contacts: may(listOf(hold, 100), 'Hands that stay on the legs; those of one hand in the order of time.'),
  smoothing: may(smoothing, 'How samples are smoothed; left out: gcv.'),
});
export const shapeSchema = v.strictObject({
  title: say(text(80), 'Name that people read.'),
  word: say(text(40), 'A short word for its tile, such as tuck.'),
  angles: say(angles, 'Angles by name; those not named are 0.'),
});

export type FileTime = v.InferOutput<typeof timeSchema>;
export type FileSchedule = v.InferOutput<typeof scheduleSchema>;
export type FileBlock = v.InferOutput<typeof block>;
export type FileSmoothing = v.InferOutput<typeof smoothing>;
export type FileKey = v.InferOutput<typeof key>;
export type FileContact = v.InferOutput<typeof hold>;
export type ShapeData = v.InferOutput<typeof shapeSchema>;
