/** A skill file with the numbers of a spec that a search changed: same blocks and keys, degrees and metres again. */
import { DEG, REV } from '../math/angles.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { FileApproach, FileSwingKey, HumanAthlete, SegmentOverride, SkillFile } from './skill-file.ts';

/** What did not change stays as it is written; angles and times are rounded far below what is felt. */
export function fileOfSolved(file: SkillFile, before: SkillSpec, after: SkillSpec): SkillFile {
  const { schedule } = file;
  const out: SkillFile = { ...file, takeoff: takeoffOf(file.takeoff, after), schedule: { ...schedule } };
  if (file.approach && after.start !== before.start) out.approach = approachOf(file.approach, after);
  if (after.end !== before.end) {
    const { end } = after;
    const surface = end.surface ? { surface: { kind: end.surface.kind, heightM: tidy(end.surface.y) } } : {};
    out.end =
      end.kind === 'duration'
        ? { durationS: tidy(end.duration), ...surface }
        : { surface: { kind: end.surface.kind, heightM: tidy(end.surface.y) } };
  }
  if (schedule.blocks)
    out.schedule.blocks = schedule.blocks.map((b, i) => {
      const [old, now] = [before.blocks[i], after.blocks[i]];
      if (old === now) return b;
      const { adjustDeg: _, ...rest } = b;
      const adjust =
        now.adjust === old.adjust
          ? b.adjustDeg
          : Object.fromEntries(
              Object.entries(now.adjust).map(([name, a]) => [
                name,
                a === old.adjust[name] ? (b.adjustDeg?.[name] ?? tidy(a * DEG)) : tidy(a * DEG),
              ]),
            );
      return {
        ...rest,
        shape: now.shape,
        from: { anchor: now.from.anchor, s: tidy(now.from.s) },
        to: { anchor: now.to.anchor, s: tidy(now.to.s) },
        ...(adjust && Object.keys(adjust).length ? { adjustDeg: adjust } : {}),
      };
    });
  if (schedule.keys)
    out.schedule.keys = schedule.keys.map((k, i) => {
      const [old, now] = [before.keys[i], after.keys[i]];
      if (old === now) return k;
      return {
        ...k,
        at: { anchor: now.at.anchor, s: tidy(now.at.s) },
        deg: now.value === old.value ? k.deg : tidy(now.value * DEG),
      };
    });
  if (after.target && after.target !== before.target) {
    const { somersaults, somersaultWord, twists, twistWord, landingAngle } = after.target;
    out.target = {
      somersaults,
      ...(somersaultWord ? { direction: somersaultWord } : {}),
      twists,
      ...(twistWord ? { twistTo: twistWord } : {}),
      ...(landingAngle ? { landingAngleDeg: tidy(landingAngle * DEG) } : {}),
    };
  }
  if (after.athlete !== before.athlete) out.athlete = athleteOf(file, after);
  return out;
}

/** A swing or a known contact with the numbers that can be varied; the order of its keys stays that of the file. */
function approachOf(file: FileApproach, { start }: SkillSpec): FileApproach {
  if (file.kind === 'swing' && start.kind === 'swing') {
    const { release, late, lateHand, start: from, moves, strength } = start.swing;
    const keysOf = (part: 'keys' | 'last', keys: readonly FileSwingKey[]): FileSwingKey[] => {
      const seen: Record<string, number> = {};
      return keys.map((k) => {
        const i = seen[k.joint] ?? 0;
        seen[k.joint] = i + 1;
        const now = moves[part]?.[k.joint]?.[i];
        if (!now) return k;
        return {
          ...k,
          deg: tidy(now.value * DEG),
          ...(k.atS === undefined ? { atDeg: tidy(now.at * DEG) } : { atS: tidy(now.at) }),
        };
      });
    };
    const { releaseLateS: _, ...rest } = file;
    return {
      ...rest,
      release: release.at === 'angle' ? { atDeg: tidy(release.angle * DEG) } : { atS: tidy(release.s) },
      ...(late ? { releaseLateS: tidy(late) } : {}),
      ...(lateHand ? { lateHand: { hand: lateHand.hand, lateS: tidy(lateHand.s) } } : {}),
      start:
        from.kind === 'handstand'
          ? { handstandNudgeDegPerS: tidy(from.nudge * DEG) }
          : from.kind === 'cast'
            ? { castDeg: tidy(from.angle * DEG) }
            : { angleDeg: tidy(from.angle * DEG), rateDegPerS: tidy(from.rate * DEG) },
      moves: {
        ...file.moves,
        keys: keysOf('keys', file.moves.keys),
        ...(file.moves.last ? { last: keysOf('last', file.moves.last) } : {}),
      },
      ...(strength === undefined ? {} : { strength: tidy(strength) }),
    };
  }
  if (file.kind === 'contact' && start.kind === 'contact') {
    const { given, time, v_WScm_W: v, h_Scm_W: h } = start.contact;
    return {
      ...file,
      ...(time === undefined ? {} : { timeS: tidy(time) }),
      velocityMPerS: { along: tidy(v[0]), up: tidy(v[1]), ...(v[2] ? { across: tidy(v[2]) } : {}) },
      momentumKgM2PerS: [tidy(h[0]), tidy(h[1]), tidy(h[2])],
      given: {
        meanBodyWeights: tidy(given.bodyWeights),
        leanDeg: tidy(given.lean * DEG),
        ...(given.across ? { acrossBodyWeights: tidy(given.across) } : {}),
        placeM: { along: tidy(given.place.x), ...(given.place.z ? { across: tidy(given.place.z) } : {}) },
        ...(given.freeTurn ? { freeTurnKgM2PerS: tidy(given.freeTurn) } : {}),
      },
    };
  }
  return file;
}

function takeoffOf(file: SkillFile['takeoff'], { start }: SkillSpec): SkillFile['takeoff'] {
  if (start.kind !== 'stated') return file;
  const { takeoff } = start;
  const [along, up, across] = takeoff.v_WScm_W.map(tidy);
  const { momentum: m } = takeoff;
  const attitude = {
    ...(takeoff.somersault ? { somersault: tidy(takeoff.somersault * DEG) } : {}),
    ...(takeoff.tilt ? { tilt: tidy(takeoff.tilt * DEG) } : {}),
    ...(takeoff.twist ? { twist: tidy(takeoff.twist * DEG) } : {}),
  };
  const { attitudeDeg: _, ...rest } = file;
  return {
    ...rest,
    ...(takeoff.height.of === 'massCentre'
      ? { massCentreHeightM: tidy(takeoff.height.y) }
      : { lowestPointHeightM: tidy(takeoff.height.y) }),
    velocityMPerS: { along, up, ...(across ? { across } : {}) },
    ...(Object.keys(attitude).length ? { attitudeDeg: attitude } : {}),
    momentum:
      m.kind === 'vector'
        ? { vectorKgM2PerS: [tidy(m.h_Scm_W[0]), tidy(m.h_Scm_W[1]), tidy(m.h_Scm_W[2])] }
        : m.kind === 'straight'
          ? { straightSomersaults: tidy(m.somersaults) }
          : {
              ratesRevPerS: {
                somersault: tidy(m.somersault / REV),
                tilt: tidy(m.tilt / REV),
                twist: tidy(m.twist / REV),
              },
            },
  };
}

/** The athlete as the search left it, in the file itself. */
function athleteOf(file: SkillFile, { athlete }: SkillSpec): SkillFile['athlete'] {
  if (athlete.kind !== 'human') return file.athlete;
  const { name, sex, mass, stature, shoulderHalfWidth, hipHalfWidth, overrides } = athlete.human;
  const segments = Object.entries(overrides ?? {}).map(([segment, v]): [string, SegmentOverride] => [
    segment,
    {
      ...(v.mass === undefined ? {} : { massKg: v.mass }),
      ...(v.length === undefined ? {} : { lengthM: v.length }),
      ...(v.centreShare === undefined ? {} : { centreShare: v.centreShare }),
      ...(v.radiiShare === undefined ? {} : { radiiShare: [...v.radiiShare] }),
    },
  ]);
  const human: HumanAthlete = {
    kind: 'human',
    name,
    sex,
    massKg: mass,
    statureM: stature,
    ...(shoulderHalfWidth === undefined ? {} : { shoulderHalfWidthM: shoulderHalfWidth }),
    ...(hipHalfWidth === undefined ? {} : { hipHalfWidthM: hipHalfWidth }),
    ...(segments.length ? { segments: Object.fromEntries(segments) } : {}),
  };
  return human;
}

/** To 1e-6 of a degree, metre, second or kg m^2/s. */
const tidy = (x: number): number => Math.round(x * 1e6) / 1e6;
