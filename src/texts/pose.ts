/** Words of posing, of the catalogue of shapes, and of work on keys. */
const both = { hand: 'hands', elbow: 'elbows', foot: 'feet', knee: 'knees' } as Record<string, string>;
const stem = (end: string): string => (end === 'head' ? 'head' : (both[end.slice(0, -1)] ?? end));

export const poseTexts = {
  ends: {
    handL: 'Left hand',
    handR: 'Right hand',
    elbowL: 'Left elbow',
    elbowR: 'Right elbow',
    footL: 'Left foot',
    footR: 'Right foot',
    kneeL: 'Left knee',
    kneeR: 'Right knee',
    head: 'Head',
  } as Record<string, string>,
  stage: 'Posing',
  front: 'Held upright: front',
  side: 'from the left',
  frontOf: (end: string) => `${end}, seen from the front`,
  sideOf: (end: string) => `${end}, seen from the left`,
  handleHint: 'Arrow keys move it 1 cm, with Shift 5 cm; with Alt the other choice of sides; Escape puts it back',
  noHandles: 'This body is a tree of its own: its joints are set in the list of angles.',
  moved: (end: string) => `pose of the ${stem(end)}`,
  shaped: (end: string) => `shape of the ${stem(end)}`,
  typed: (joint: string) => `${joint.toLowerCase()} typed`,
  atEnd: (joint: string) => `${joint}: end of its range`,
  short: (cm: string) => `${cm} cm out of reach`,
  putBack: 'Put back as it was',
  putBackKey: 'Esc puts it back',

  switches: 'How the hand works',
  sides: { both: 'both sides', one: 'one side' },
  sidesHint: 'The other side makes the same move, seen in a mirror. Alt: the other way round while it is held',
  scope: { key: 'key here', shape: 'whole shape' },
  scopeHint: 'A key at the cursor, or the held shape changed from its beginning to its end',

  tabsLabel: 'Shapes, angles, the shape at the cursor',
  tabs: { shapes: 'Shapes', angles: 'Angles', held: 'This shape' },

  anglesAt: (s: string) => `At ${s} s.`,
  setsKey: 'A typed value sets a key here.',
  setsShape: (shape: string) => `A typed value changes ${shape.toLowerCase()} from its beginning to its end.`,
  beyond: (low: string, high: string) => `Beyond its range, ${low}° to ${high}°`,
} as const;
