/**
 * A recording as a skill file: who reads it flies the flight that the model's test was. The angles are those recorded (gaps filled, shoulders
 * away from their poles), each with its smoothing, so that nothing is smoothed twice.
 */
import type { AthleteRef, SkillFile } from '../files/skill-schema.ts';
import { SKILL_FORMAT, SKILL_VERSION } from '../files/skill-schema.ts';
import { tidy, tidyDeg } from '../files/tidy.ts';
import { writeSmoothing } from '../files/write-skill.ts';
import { takeoffInFile } from '../files/write-start.ts';
import type { ConditionedMotion } from '../recording/conditioned.ts';
import { durationOf, scheduleOf, takeoffOf } from './recorded-flight.ts';
import type { RecordedStart } from './recording-study.ts';

interface RecordedNames {
  readonly title: string;
  /** of the same measures as the body of the recording */
  readonly athlete: AthleteRef;
  /** name of the file that was read */
  readonly file: string;
  readonly note?: string;
}

/** Shape beneath the samples: the angles that nothing moved. */
const BASE = 'recorded';

/** The skill file of a flight in a recording, from a start that was measured or fitted. */
export function writeRecordedSkill(
  motion: ConditionedMotion,
  start: RecordedStart,
  { title, athlete, file, note }: RecordedNames,
): SkillFile {
  const { posed, span } = motion;
  const { base, sampled } = scheduleOf(motion);
  const moved = new Set(sampled.map((s) => s.angle));
  const angles = posed.body.angles.flatMap(({ name }, k): [string, number][] =>
    moved.has(k) || base[k] === 0 ? [] : [[name, tidyDeg(base[k])]],
  );
  return {
    format: SKILL_FORMAT,
    version: SKILL_VERSION,
    title,
    ...(note === undefined ? {} : { note }),
    athlete,
    phases: [
      {
        kind: 'flight',
        takeoff: takeoffInFile(takeoffOf(start)),
        end: { durationS: tidy(durationOf(motion)) },
        schedule: {
          base: BASE,
          samples: sampled.map((s) => ({
            angle: posed.body.angles[s.angle].name,
            startS: tidy(s.start),
            rateHz: s.rate,
            deg: Array.from(s.values, tidyDeg),
            ...(s.smoothing ? { smoothing: writeSmoothing(s.smoothing) } : {}),
          })),
        },
      },
    ],
    shapes: { [BASE]: { title: 'As recorded', word: 'recorded', angles: Object.fromEntries(angles) } },
    recordings: [
      { title, kind: 'capture', file, startS: tidy(posed.t[0] - posed.t[span.first]), rateHz: posed.rateHz },
    ],
  };
}
