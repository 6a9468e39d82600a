/** Inputs of a leg seen from its chain: what the leg before gives is none, and those of a leg before have its number and its title in front. */
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { Input } from './input.ts';

/** Given by the leg before: how it comes to a contact, how a swing starts. */
const HANDED = /^(contact\.(speed(Along|Up|Across)|h\.[xyz])|swing\.(nudge|start(Angle|Rate)))$/;
/** Whether an input of a leg is what the leg before hands over. */
export const isHanded = (id: string): boolean => HANDED.test(id);

/** Of leg `index`, counted from 0, of the legs before. */
export function ofLeg(input: Input, { title, earlier = [] }: SkillSpec, index: number): Input {
  const number = `leg${index + 1}`;
  const leg = earlier[index];
  const { id, label, level, unit, range, scale, angle } = input;
  return {
    id: `${number}.${id}`,
    label: `${leg.title === title ? `leg ${index + 1}` : leg.title}: ${label}`,
    unit,
    level,
    range,
    scale,
    ...(angle === undefined ? {} : { angle }),
    get value() {
      return input.value;
    },
    put: (spec, v) => ({
      ...spec,
      earlier: (spec.earlier ?? []).map((one, i) => (i === index ? input.put(one, v) : one)),
    }),
  };
}

/** The body is one in all legs. */
export function ofAllLegs(input: Input): Input {
  if (input.level !== 'body') return input;
  return {
    ...input,
    put: (spec, v) => {
      const out = input.put(spec, v);
      return out.earlier ? { ...out, earlier: out.earlier.map((leg) => input.put(leg, v)) } : out;
    },
  };
}
