/** What a skill file says of the landing, in SI units and radians. Faults name the field. */
import { RAD } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import type { LandingSpec } from '../skill/landing-spec.ts';
import type { FileLanding } from './phase-schema.ts';

/** `path`: where the landing is in the file, "phases[2]". */
export function parseLanding(a: FileLanding, path: string): LandingSpec {
  const keys = new Map<number, Record<string, number>>();
  let last = 0;
  (a.keys ?? []).forEach((k, i) => {
    if (k.s < last) throw new FieldError(`${path}.keys[${i}].s`, k.s, `not before the key above it (${last} s)`);
    last = k.s;
    keys.set(k.s, { ...keys.get(k.s), [k.joint]: k.deg * RAD });
  });
  return {
    mat:
      typeof a.mat === 'string'
        ? a.mat
        : {
            thickness: a.mat.thicknessM,
            stiffness: a.mat.stiffnessKNPerM * 1000,
            damping: a.mat.dampingSPerM,
            friction: a.mat.friction,
          },
    action: {
      ...(a.legStiffness === undefined ? {} : { stiffness: a.legStiffness }),
      ...(a.effort === undefined ? {} : { effort: a.effort }),
      ...(a.eccentricFactor === undefined ? {} : { eccentric: a.eccentricFactor }),
      ...(a.reflexDelayS === undefined ? {} : { delay: a.reflexDelayS }),
      ...(keys.size > 0 ? { kind: 'keyed', keys: [...keys].map(([s, angles]) => ({ s, angles })) } : {}),
    },
    ...(a.kneeDeg === undefined ? {} : { knee: a.kneeDeg * RAD }),
    ...(a.durationS === undefined ? {} : { duration: a.durationS }),
  };
}
