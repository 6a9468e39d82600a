/** The two invented adults that the pages of docs/ are measured on, and poses by named angles in degrees. */
import { makeHuman } from '../../sim/body/human.ts';
import type { Body } from '../../sim/index.ts';
import type { Schedule } from '../../sim/schedule/schedule.ts';
import { rad, stopKeys } from '../checks/flown.ts';

export const man: Body = makeHuman({ name: 'a man', sex: 'male', mass: 73, stature: 1.741 });
export const woman: Body = makeHuman({ name: 'a woman', sex: 'female', mass: 54, stature: 1.62 });

export type Degrees = Readonly<Record<string, number>>;

/** One value for each angle, rad; a name without L or R means both sides. */
export function poseRad(body: Body, deg: Degrees): number[] {
  const bare = (name: string): string => name.replace(/[LR]$/, '');
  for (const name of Object.keys(deg))
    if (!body.angles.some((a) => a.name === name || bare(a.name) === name)) throw new RangeError(`no angle ${name}`);
  return body.angles.map((a) => (deg[a.name] ?? deg[bare(a.name)] ?? 0) * rad);
}

/** Rests in `from` until t = 0, moves to `to` by minimum jerk, rests from `seconds` on. */
export function move(body: Body, from: Degrees, to: Degrees, seconds: number): Schedule {
  const [a, b] = [poseRad(body, from), poseRad(body, to)];
  return stopKeys(
    body,
    Object.fromEntries(
      body.angles.map(({ name }, i) => [
        name,
        [
          [0, a[i]],
          [seconds, b[i]],
        ] as const,
      ]),
    ),
  );
}

export const rest = (body: Body, deg: Degrees): Schedule => move(body, deg, deg, 1);
