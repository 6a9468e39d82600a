/** A drafted skill as a skill file: radians to degrees, angles rounded to what the draft used. Flies as the draft flew. */
import { DEG } from '../math/angles.ts';
import type { Draft } from '../skill/draft-skill.ts';
import { type AthleteRef, SKILL_FORMAT, SKILL_VERSION, type SkillFile } from './skill-file.ts';

const NOTE =
  'A first draft made from a code: a start for editing, not a technique to copy. Times, arms and momentum were searched so that the flight ends as the code says.';

export function fileOfDraft(draft: Draft, athlete: AthleteRef): SkillFile {
  const { spec, falls } = draft;
  const { start, end, target } = spec;
  if (start.kind !== 'stated') throw new RangeError('a draft states its take-off');
  const { takeoff } = start;
  const [along, up, across] = takeoff.v_WScm_W;
  const { momentum } = takeoff;
  const inverted = Math.abs(takeoff.somersault) > 1e-9;
  return {
    format: SKILL_FORMAT,
    version: SKILL_VERSION,
    title: spec.title,
    note: falls.length ? `${NOTE} It falls short: ${falls.join('; ')}.` : NOTE,
    athlete,
    ...(spec.gravity === 9.81 ? {} : { gravityMPerS2: spec.gravity }),
    takeoff: {
      ...(takeoff.height.of === 'lowestPoint'
        ? { lowestPointHeightM: takeoff.height.y }
        : { massCentreHeightM: takeoff.height.y }),
      velocityMPerS: { along, up, ...(across ? { across } : {}) },
      ...(inverted ? { attitudeDeg: { somersault: tidy(takeoff.somersault * DEG) } } : {}),
      momentum:
        momentum.kind === 'straight'
          ? { straightSomersaults: momentum.somersaults }
          : momentum.kind === 'vector'
            ? { vectorKgM2PerS: [...momentum.h_Scm_W] }
            : {
                ratesRevPerS: {
                  somersault: turns(momentum.somersault),
                  tilt: turns(momentum.tilt),
                  twist: turns(momentum.twist),
                },
              },
    },
    end:
      end.kind === 'touchdown'
        ? { surface: { kind: end.surface.kind, heightM: end.surface.y } }
        : { durationS: end.duration },
    schedule: {
      base: 'straight',
      blocks: spec.blocks.map((b) => ({
        shape: b.shape,
        from: { ...b.from },
        to: { ...b.to },
        arms: b.arms,
        ...(Object.keys(b.adjust).length
          ? { adjustDeg: Object.fromEntries(Object.entries(b.adjust).map(([name, a]) => [name, tidy(a * DEG)])) }
          : {}),
      })),
    },
    ...(target
      ? {
          target: {
            somersaults: target.somersaults,
            ...(target.somersaultWord ? { direction: target.somersaultWord } : {}),
            twists: target.twists,
            ...(target.twistWord ? { twistTo: target.twistWord } : {}),
            ...(target.landingAngle ? { landingAngleDeg: tidy(target.landingAngle * DEG) } : {}),
          },
        }
      : {}),
  };
}

/** Away with the last bits of a change of unit. */
const tidy = (x: number): number => Math.round(x * 1e6) / 1e6;
const turns = (rate: number): number => tidy(rate / (2 * Math.PI));
