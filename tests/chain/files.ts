/** Chains to test with, built from ready skills: numbers are of no gymnast. */

import jump from '../../presets/skills/trampoline-double-tuck.json' with { type: 'json' };
import vault from '../../presets/skills/vault-handspring-half.json' with { type: 'json' };
import type { SkillFile } from '../../sim/index.ts';

type Phase = SkillFile['phases'][number];
const phaseOf = (file: unknown, i: number): Record<string, unknown> =>
  structuredClone((file as { phases: Record<string, unknown>[] }).phases[i]);

/** Leaning forward; height of the mass centre, speed along and up, momentum about Z. */
export const leaning = (massCentreHeightM: number, [along, up]: readonly [number, number], h: number) => ({
  massCentreHeightM,
  velocityMPerS: { along, up },
  attitudeDeg: { somersault: -25 },
  momentum: { vectorKgM2PerS: [0, 0, h] as [number, number, number] },
});

/** Off the board, over the table, to the mat. */
export function boardTable(): SkillFile {
  const [table, flight] = [phaseOf(vault, 0), phaseOf(vault, 1)];
  const { velocityMPerS: _, momentumKgM2PerS: __, ...given } = table;
  return {
    ...(structuredClone(vault) as unknown as SkillFile),
    phases: [
      {
        kind: 'flight',
        title: 'To the table',
        takeoff: leaning(1.3, [4.7, 3.5], -50),
        end: { surface: { kind: 'other', heightM: 1.25, by: 'hands' } },
        schedule: { base: 'armsOverhead' },
      },
      given as unknown as Phase,
      flight as unknown as Phase,
    ],
  };
}

/** Up, down to the bed and up once more. */
export function twoBounces(): SkillFile {
  const flight = phaseOf(
    jump,
    jump.phases.findIndex(({ kind }) => kind === 'flight'),
  );
  return {
    ...(structuredClone(jump) as unknown as SkillFile),
    phases: [
      { ...flight, title: 'First' } as unknown as Phase,
      { kind: 'contact', place: 'trampoline', timeS: 0.3 },
      flight as unknown as Phase,
    ],
  };
}
