/** Words of posing over a clip, and of the flight that is made of the poses. */
import type { PosedCaution } from '../../../sim/index.ts';

const LIMBS: Readonly<Record<string, string>> = {
  head: 'Head',
  armL: 'Left arm',
  armR: 'Right arm',
  legL: 'Left leg',
  legR: 'Right leg',
};

export const clipPoseTexts = {
  pose: 'Pose by hand',
  done: 'Done',
  make: 'Make the figure do this',
  cancel: 'Cancel',
  making: (percent: string) => `Fitting the take-off: ${percent} %`,
  title: 'What it takes to do this',
  explain: (n: number) =>
    n < 2
      ? 'Pose the figure by hand in three to eight frames; their shapes become moments of the schedule. Then the take-off is fitted.'
      : `${n} frames are posed by hand; their shapes become moments of the schedule. Then the take-off is fitted.`,
  figure: 'The posed figure',
  limbs: LIMBS,
  trunk: 'Trunk: all of the figure',
  trunkAt: (x: string, y: string) => `${x} px from the left, ${y} px from the top`,
  limbAt: (x: string, y: string) => `its end ${x} px from the left, ${y} px from the top`,
  turn: 'Turn the figure',
  turnAt: (deg: string) => `somersault ${deg}`,
  tools: 'Turn, twist and tilt of the posed figure',
  turns: { turn: 'Turn', twist: 'Twist', tilt: 'Tilt' },
  less: (what: string) => `${what}: 5° less`,
  more: (what: string) => `${what}: 5° more`,
  swapHere: 'Swap left and right',
  takeOff: 'Take this pose off',
  fewInAir: 'Fewer than two posed frames are between take-off and landing as they are marked.',
  full: (most: number) => `${most} frames are posed, as many as a flight is made of. Take one off first.`,
  posed: (s: string) => `Pose at ${s} s`,
  swapped: (s: string) => `Swap left and right at ${s} s`,
  removed: (s: string) => `Take the pose at ${s} s off`,
  goTo: (s: string) => `Frame posed at ${s} s`,
  rows: { limbs: 'Limbs as long as the athlete’s', sides: 'Left and right', left: 'Left over', momentum: 'Momentum' },
  within: (percent: string) => `within ${percent} %`,
  longer: (percent: string) => `${percent} % longer asked`,
  limbsUnknown: 'no limb was led to its end',
  sidesSeen: 'in doubt in no frame',
  sidesOpen: (s: string) => `could be swapped at ${s} s`,
  swap: 'swap',
  name: (title: string) => `${title}, as in the clip`,
  version: 'As in the clip',
  step: 'Make the figure do what was posed',
  made: (letter: string, left: string) =>
    `Version ${letter} does what was posed, its somersault within ${left} of the poses. A is as it was.`,
  compare: 'Compare',
  madeRow: (letter: string) => `Version ${letter}, of these poses`,
  cautionTitle: 'To be checked',
} as const;

/** What is to be checked of a flight that was made of poses, a sentence each. */
export function wordPosedCaution(caution: PosedCaution, say: (value: number, decimals: number) => string): string {
  switch (caution.kind) {
    case 'notOneFlight':
      return `These poses are not those of one flight: ${say((caution.left * 180) / Math.PI, 0)}° are left over. Check scale, true rate, or left and right.`;
    case 'farApart':
      return `From ${say(caution.from, 2)} to ${say(caution.to, 2)} s the ${caution.of} goes on by more than half a turn: another count would fit too. Pose a frame between.`;
    case 'momentum':
      return `Angular momentum ${say(caution.value, 2)} times mass × height², more than the ${say(caution.most, 2)} that leave such a place. Check scale, true rate, or the count of turns.`;
    case 'airTime':
      return `No flight of these poses is ${say(caution.wanted, 2)} s in the air; this one is ${say(caution.flown, 2)} s.`;
    case 'limbs':
      return `Limbs were drawn out ${say(100 * caution.share, 0)} % longer than the athlete’s: ${
        { scale: 'the scale is off', height: 'the athlete’s height is off', either: 'scale or height is off' }[
          caution.by
        ]
      }.`;
    case 'sides':
      return `In ${caution.frames} ${caution.frames === 1 ? 'frame' : 'frames'} left and right could be swapped.`;
  }
}
