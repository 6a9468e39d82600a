/** An input of what comes before the flight: its name has the kind of start in front, and it goes back into that start. */
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { Input } from './input.ts';

type StartInput<T> = (
  id: string,
  label: string,
  unit: Input['unit'],
  value: number,
  range: Input['range'],
  scale: number,
  set: (of: T, v: number) => T,
) => Input;

export const startInput =
  <T>(kind: SkillSpec['start']['kind'], change: (spec: SkillSpec, by: (of: T) => T) => SkillSpec): StartInput<T> =>
  (id, label, unit, value, range, scale, set) => ({
    id: `${kind}.${id}`,
    label,
    unit,
    level: 'takeoff',
    value,
    range,
    scale,
    put: (spec, v) => change(spec, (of) => set(of, v)),
  });
