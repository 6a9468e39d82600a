/** An athlete of a file (degrees in ranges) as the SI spec that body/ makes a Body of. */
import { RAD } from '../math/angles.ts';
import type { AthleteSpec } from '../skill/skill-spec.ts';
import type { Athlete } from './athlete-schema.ts';

export function inSi(a: Athlete): AthleteSpec {
  if (a.kind === 'human')
    return {
      kind: 'human',
      human: {
        name: a.name,
        sex: a.sex,
        mass: a.massKg,
        stature: a.statureM,
        ...(a.ageYears === undefined ? {} : { age: a.ageYears }),
        ...(a.shoulderHalfWidthM === undefined ? {} : { shoulderHalfWidth: a.shoulderHalfWidthM }),
        ...(a.hipHalfWidthM === undefined ? {} : { hipHalfWidth: a.hipHalfWidthM }),
        ...(a.segments === undefined
          ? {}
          : {
              overrides: Object.fromEntries(
                Object.entries(a.segments).map(([name, o]) => [
                  name,
                  {
                    ...(o.massKg === undefined ? {} : { mass: o.massKg }),
                    ...(o.lengthM === undefined ? {} : { length: o.lengthM }),
                    ...(o.centreShare === undefined ? {} : { centreShare: o.centreShare }),
                    ...(o.radiiShare === undefined ? {} : { radiiShare: o.radiiShare }),
                  },
                ]),
              ),
            }),
      },
    };
  return {
    kind: 'tree',
    tree: {
      name: a.name,
      segments: a.segments.map((s) => ({
        name: s.name,
        ...(s.parent === undefined ? {} : { parent: s.parent }),
        joint: s.jointM ?? [0, 0, 0],
        hinges: (s.hinges ?? []).map((h) => ({
          name: h.name,
          axis: h.axis,
          ...(h.rangeDeg ? { range: [h.rangeDeg[0] * RAD, h.rangeDeg[1] * RAD] as const } : {}),
          ...(h.mirror === undefined ? {} : { mirror: h.mirror }),
          ...(h.mirrorSign === undefined ? {} : { mirrorSign: h.mirrorSign }),
        })),
        mass: s.massKg,
        centre: s.centreM,
        inertia: s.inertiaKgM2,
        ...(s.group ? { group: s.group } : {}),
        ...(s.side ? { side: s.side } : {}),
        contacts: (s.contacts ?? []).map((c) => ({ name: c.name, part: c.part, point: c.pointM, radius: c.radiusM })),
        shapes: (s.shapes ?? []).map((d) =>
          d.kind === 'capsule'
            ? { kind: 'capsule' as const, a_B: d.aM, b_B: d.bM, radiusA: d.radiusAM, radiusB: d.radiusBM }
            : { kind: 'ellipsoid' as const, centre_B: d.centreM, radii: d.radiiM },
        ),
      })),
      ...(a.framePoints
        ? {
            framePoints: {
              hipL: { segment: a.framePoints.hipL.segment, point: a.framePoints.hipL.pointM },
              hipR: { segment: a.framePoints.hipR.segment, point: a.framePoints.hipR.pointM },
              shoulderL: { segment: a.framePoints.shoulderL.segment, point: a.framePoints.shoulderL.pointM },
              shoulderR: { segment: a.framePoints.shoulderR.segment, point: a.framePoints.shoulderR.pointM },
            },
          }
        : {}),
    },
  };
}
