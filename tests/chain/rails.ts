/** A chain of two catches to test with: carried up to the high bar, a swing under it, let go, and down to a lower rail. Numbers are of no gymnast. */
import giant from '../../presets/skills/giant-double-straight.json' with { type: 'json' };
import type { SkillFile } from '../../sim/index.ts';
import { leaning } from './files.ts';

const key = (joint: 'shoulder' | 'hip' | 'knee' | 'ankle', atS: number, deg: number) => ({
  joint,
  atS,
  deg,
  kind: 'stop' as const,
});
const overhead = { base: 'armsOverhead' };

type Rail = 'highBar' | 'unevenLow';

/** `rail`, `alongM`: the second one, from the first; `atS`: the release after the first catch. */
export function twoRails({ rail = 'unevenLow' as Rail, alongM = 0.65, atS = 0.44, gapM = 0.05 } = {}): SkillFile {
  const { athlete, format, version } = structuredClone(giant) as unknown as SkillFile;
  return {
    format,
    version,
    athlete,
    title: 'From rail to rail',
    phases: [
      {
        kind: 'flight',
        title: 'Up to the bar',
        takeoff: leaning(2.03, [1.6, 2.2], 6),
        end: { durationS: 0.7 },
        schedule: overhead,
      },
      {
        kind: 'catch',
        rail: 'highBar',
        alongM: 0.89,
        closingMPerS: 4,
        swing: {
          sense: 'backward',
          moves: {
            over: 'time',
            keys: [
              key('shoulder', 0, 175),
              key('shoulder', 0.5, 180),
              key('hip', 0, 5),
              key('hip', 0.35, -12),
              key('hip', 0.75, 25),
              key('knee', 0, 0),
              key('ankle', 0, 40),
            ],
          },
          release: { atS },
          durationS: 1.5,
        },
      },
      { kind: 'flight', title: 'Down to the rail', end: { durationS: 0.9 }, schedule: overhead },
      { kind: 'catch', rail, alongM, gapM, closingMPerS: 10 },
    ],
  };
}
