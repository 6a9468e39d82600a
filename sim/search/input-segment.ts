/**
 * Inputs of single segments of a human: mass, length, mass centre, radii of gyration; limbs for both sides ("thigh") and
 * for each ("thighL"). One of both sides takes the place of each side.
 */
import type { Body, Segment } from '../body/body.ts';
import type { HumanSpec } from '../body/human.ts';
import type { SegmentValues } from '../body/human-values.ts';
import { spell } from '../math/spell.ts';
import { makeBody } from '../skill/build-skill.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { Input } from './input.ts';
import { humanInput } from './input-body.ts';

/** A name as a file has it, and the segments of the body that it means. */
type Part = readonly [name: string, segments: readonly string[]];

const PARTS: readonly Part[] = [
  ['head', ['head']],
  ['upperTrunk', ['upperTrunk']],
  ['middleTrunk', ['middleTrunk']],
  ['lowerTrunk', ['pelvis']],
  ...['upperArm', 'forearm', 'hand', 'thigh', 'shank', 'foot'].flatMap((name): Part[] => [
    [name, [`${name}R`, `${name}L`]],
    [`${name}L`, [`${name}L`]],
    [`${name}R`, [`${name}R`]],
  ]),
];

const RADII = [
  ['frontBack', 'front-back', 0],
  ['lateral', 'lateral', 1],
  ['long', 'long', 2],
] as const;

export function listSegmentInputs({ athlete }: SkillSpec): Input[] {
  if (athlete.kind !== 'human') return [];
  const body = bodyOf(athlete.human);
  return PARTS.flatMap((part) => {
    const [name, segments] = part;
    const { mass, values } = segmentOf(body, segments[0]);
    const at = (field: string): string => `segment:${name}.${field}`;
    const of = `of ${spell(name)}`;
    const centre = humanInput(at('centre'), `mass centre ${of}`, 'share', values.centreShare, (h, v) =>
      withValue(h, part, { centreShare: v }),
    );
    return [
      humanInput(at('mass'), `mass ${of}, the whole kept`, 'kg', mass, (h, v) => withMass(h, part, v)),
      humanInput(at('length'), `length ${of}`, 'm', values.length, (h, v) => withValue(h, part, { length: v })),
      { ...centre, range: [centre.range[0], Math.min(0.99, centre.range[1])] as const },
      ...RADII.map(([field, axis, i]): Input => {
        const label = `radius of gyration ${of}, ${axis}`;
        const radius = humanInput(at(`radius.${field}`), label, 'share', values.radiiShare[i], (h, v) =>
          withRadius(h, part, i, v),
        );
        return { ...radius, range: radiusRange(values.radiiShare, i) };
      }),
    ];
  });
}

/** Half to twice the value, where a real body can be: no moment exceeds the sum of the other two. */
function radiusRange(radii: readonly [number, number, number], i: number): readonly [number, number] {
  const [a, b] = [radii[(i + 1) % 3], radii[(i + 2) % 3]];
  const inside = 1e-9;
  return [
    Math.max(0.5 * radii[i], (1 + inside) * Math.sqrt(Math.abs(a * a - b * b))),
    Math.min(2 * radii[i], 1.49, (1 - inside) * Math.hypot(a, b)),
  ];
}

/** The whole keeps its mass: all other segments, measured or not, make room in proportion. */
function withMass(human: HumanSpec, part: Part, mass: number): HumanSpec {
  const [, segments] = part;
  const body = bodyOf(human);
  const before = segments.reduce((sum, name) => sum + segmentOf(body, name).mass, 0);
  // what was not measured shares the rest by itself
  const others = (body.mass - segments.length * mass) / (body.mass - before);
  const scaled = Object.entries(overridesOf(human)).map(([name, values]) => [
    name,
    values.mass === undefined ? values : { ...values, mass: others * values.mass },
  ]);
  return withValue({ ...human, overrides: Object.fromEntries(scaled) }, part, { mass });
}

function withRadius(human: HumanSpec, part: Part, i: number, radius: number): HumanSpec {
  const [, segments] = part;
  const radii = [...segmentOf(bodyOf(human), segments[0]).values.radiiShare] as [number, number, number];
  radii[i] = radius;
  return withValue(human, part, { radiiShare: radii });
}

function withValue(human: HumanSpec, [name, segments]: Part, value: SegmentValues): HumanSpec {
  const overrides = { ...overridesOf(human) };
  const fields = Object.keys(value) as (keyof SegmentValues)[];
  // of both sides: each side's own gives way
  if (segments.length > 1)
    for (const side of segments) {
      const own = overrides[side];
      if (own)
        overrides[side] = Object.fromEntries(
          Object.entries(own).filter(([field]) => !fields.includes(field as keyof SegmentValues)),
        );
    }
  overrides[name] = { ...overrides[name], ...value };
  return { ...human, overrides };
}

/** A file may call the lower trunk pelvis. */
function overridesOf({ overrides = {} }: HumanSpec): Readonly<Record<string, SegmentValues>> {
  const { pelvis, ...others } = overrides;
  return pelvis ? { ...others, lowerTrunk: { ...pelvis, ...others.lowerTrunk } } : others;
}

const bodyOf = (human: HumanSpec): Body => makeBody({ kind: 'human', human });

function segmentOf(body: Body, name: string): Segment & Required<Pick<Segment, 'values'>> {
  const found = body.segments.find((s) => s.name === name);
  if (!found?.values) throw new RangeError(`a human has a ${name}`);
  return { ...found, values: found.values };
}
