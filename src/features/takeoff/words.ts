/** Words of what comes before the flight: take-off and athlete. */
export const takeoffTexts = {
  before: 'Before the flight',
  takeoff: 'Take-off',
  off: (what: string) => `Off ${what}`,
  athlete: 'Athlete',
  both: 'Take-off, athlete',
  all: 'All values',
  /** Under the values that a swing or a push gives. */
  given: {
    swing: 'Given by the swing.',
    contact: 'Given by the push.',
    change: 'Change it',
    pending: 'They come when it is computed.',
  },
  noTime: (s: string, allowed: string) => `This skill is never ${s} s in the air; it can be ${allowed}`,
  /** Of the athlete. */
  form: {
    name: 'Name',
    sex: 'Sex',
    tree: (name: string) => `${name} is a body of its own: its measures are in its file.`,
    stays: 'When the athlete changes, the air time stays, and',
    kept: {
      straight: 'the turn, in straight somersaults',
      momentum: 'the angular momentum',
    },
    given: 'What comes before the flight gives its take-off: with another body, another one.',
    everywhere: (name: string) => `${name} flies every ready skill that I open`,
  },
  highest: (m: string, over: 'floor' | 'bed' | 'water') =>
    `Height is how far the centre of mass rises above where it is at take-off. At its highest it is ${m} above the ${over}.`,
  /** Beside the pictures. */
  /** the skill that was opened brought its own athlete */
  wasFlown: (name: string) => `its own; before: ${name}`,
  short: { momentum: 'Rotation', straight: 'Straight somersaults' } as Record<string, string | undefined>,
  /** Said where the pointer rests on a name. */
  hints: {
    airTime: 'From the last touch to the first. Typed, the speed up and the height follow; the angular momentum stays.',
    rise: 'How far the centre of mass rises above where it is at take-off. The angular momentum stays.',
    up: 'Upward speed of the centre of mass at take-off. The angular momentum stays.',
    rotation: 'All of the angular momentum. Typed, its direction stays.',
    momentum: 'Angular momentum about the somersault axis.',
    straight:
      'How many somersaults of a straight body, arms at its sides, the angular momentum is enough for in this flight.',
    rate: 'How fast the body somersaults as it leaves.',
  } as Record<string, string | undefined>,
  changed: (label: string) => `Change: ${label}`,
};
