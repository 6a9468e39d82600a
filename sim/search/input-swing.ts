/**
 * Inputs of a bar swing: when the hands let go, how the swing starts, what the joints are asked to do. Keys count from 1, first
 * those of every round, then those of the last one, joint by joint. SI and radians.
 */
import { RAD } from '../math/angles.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { SwingApproach } from '../skill/start-spec.ts';
import type { Input } from './input.ts';
import { startInput } from './start-input.ts';

type Moves = SwingApproach['moves'];
type Keys = Moves['keys'];
type Key = NonNullable<Keys['hip']>[number];

/** Least distance of two keys of one joint, s or rad. */
const APART = 1e-3;
/** A key that is free on one side moves this far at most: a round, or s. */
const FAR = { time: 2, angle: 360 * RAD };

const input = startInput<SwingApproach>('swing', (spec, by) =>
  spec.start.kind === 'swing' ? { ...spec, start: { kind: 'swing', swing: by(spec.start.swing) } } : spec,
);

export function listSwingInputs({ start }: SkillSpec): Input[] {
  if (start.kind !== 'swing') return [];
  const { swing } = start;
  const { release, lateHand, start: from, strength } = swing;
  const out = [
    release.at === 'angle'
      ? input(
          'releaseAngle',
          'swing angle at which the hands let go',
          'rad',
          release.angle,
          [-62.8, 62.8],
          RAD,
          (s, v) => ({
            ...s,
            release: { at: 'angle', angle: v },
          }),
        )
      : input('releaseTime', 'time at which the hands let go', 's', release.s, [0.001, 20], 0.005, (s, v) => ({
          ...s,
          release: { at: 'time', s: v },
        })),
    input('late', 'how late the hands let go', 's', swing.late, [-0.5, 0.5], 0.005, (s, v) => ({ ...s, late: v })),
  ];
  if (lateHand)
    out.push(
      input('lateHand', 'how long one hand holds on', 's', lateHand.s, [0, 0.1], 0.002, (s, v) => ({
        ...s,
        lateHand: { hand: lateHand.hand, s: v },
      })),
    );
  if (from.kind === 'handstand')
    out.push(
      input(
        'nudge',
        'turning speed out of the handstand',
        'swingRadPerS',
        from.nudge,
        [0.1 * RAD, 280 * RAD],
        RAD,
        (s, v) => ({
          ...s,
          start: { kind: 'handstand', nudge: v },
        }),
      ),
    );
  else
    out.push(
      input('startAngle', 'swing angle at the start', 'rad', from.angle, [-720 * RAD, 720 * RAD], RAD, (s, v) =>
        s.start.kind === 'handstand' ? s : { ...s, start: { ...s.start, angle: v } },
      ),
    );
  if (from.kind === 'given')
    out.push(
      input(
        'startRate',
        'turning speed at the start',
        'swingRadPerS',
        from.rate,
        [-1000 * RAD, 1000 * RAD],
        5 * RAD,
        (s, v) => (s.start.kind === 'given' ? { ...s, start: { ...s.start, rate: v } } : s),
      ),
    );
  const keys = listKeys(swing.moves);
  keys.forEach(({ part, joint, index, key, before, after }, i) => {
    const set = (s: SwingApproach, change: Partial<Key>): SwingApproach => ({
      ...s,
      moves: {
        ...s.moves,
        [part]: {
          ...s.moves[part],
          [joint]: s.moves[part]?.[joint]?.map((k, n) => (n === index ? { ...k, ...change } : k)),
        },
      },
    });
    const name = `key ${i + 1} of the swing (${joint})`;
    const far = FAR[swing.moves.over];
    const isTime = swing.moves.over === 'time';
    const angle = input(
      `key:${i + 1}.angle`,
      `joint angle of ${name}`,
      'rad',
      key.value,
      [-360 * RAD, 360 * RAD],
      RAD,
      (s, v) => set(s, { value: v }),
    );
    out.push(
      { ...angle, angle: angleOf(joint) },
      input(
        `key:${i + 1}.at`,
        `${isTime ? 'time' : 'swing angle'} of ${name}`,
        isTime ? 's' : 'rad',
        key.at,
        [before === undefined ? key.at - far : before + APART, after === undefined ? key.at + far : after - APART],
        isTime ? 0.005 : RAD,
        (s, v) => set(s, { at: v }),
      ),
    );
  });
  if (strength !== undefined && Number.isFinite(strength))
    out.push(
      input('strength', 'times the usual strength', 'count', strength, [0.1, 10], 0.02, (s, v) => ({
        ...s,
        strength: v,
      })),
    );
  return out;
}

/** The angle of the body that a joint of the swing bends. */
function angleOf(joint: keyof Keys): string {
  if (joint === 'shoulder') return 'shoulderElevation';
  return joint === 'ankle' ? 'anklePlantarFlexion' : `${joint}Flexion`;
}

interface PlacedKey {
  readonly part: 'keys' | 'last';
  readonly joint: keyof Keys;
  readonly index: number;
  readonly key: Key;
  readonly before: number | undefined;
  readonly after: number | undefined;
}

function listKeys(moves: Moves): PlacedKey[] {
  return (['keys', 'last'] as const).flatMap((part) =>
    Object.entries(moves[part] ?? {}).flatMap(([joint, list]) =>
      list.map((key, index) => ({
        part,
        joint: joint as keyof Keys,
        index,
        key,
        before: list[index - 1]?.at,
        after: list[index + 1]?.at,
      })),
    ),
  );
}
