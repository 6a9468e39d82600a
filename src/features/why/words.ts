/** Words of the account: why the flight went as it did. */
export const accountTexts = {
  tabs: { tilt: 'Where the tilt came from', map: 'Twist or wobble', sight: 'What the eyes see', momentum: 'Momentum' },
  tabsShort: { tilt: 'Tilt', map: 'Twist or wobble', sight: 'Eyes', momentum: 'Momentum' },
  changed: 'What changed',
  nothingYet: 'Nothing has moved yet.',

  measure: 'Account for',
  measures: {
    greatest: (s: string) => `the greatest tilt, at ${s} s`,
    at: (s: string) => `the tilt at the cursor, ${s} s`,
    twist: () => 'the twist done',
  },
  measuresShort: { greatest: 'the greatest tilt', at: 'the tilt at the cursor', twist: 'the twist done' },
  sources: {
    takeoff: 'Take-off',
    arms: 'Arms',
    chest: 'Chest and head',
    hips: 'Hips and legs',
    joints: 'Joints',
  },
  rest: 'Uneven body',
  total: 'Whole',
  even: 'both sides alike',
  evenAll: 'Left and right move alike from take-off to landing: nothing here makes a tilt.',
  way: { right: 'head to the right', left: 'head to the left', twistLeft: 'to the left', twistRight: 'to the right' },
  against: 'against it',
  how: 'The flight is flown again with each set of uneven parts left out, down to both sides alike and no tilt at take-off. Each part gets the mean of what it adds over all orders; its smallest and largest are beside it.',
  howTitle: 'How the tilt came about',
  howDivided: 'How it is divided',
  groups: { arms: 'Arms', upper: 'Trunk and head', legs: 'Legs', whole: 'Joints' },
  axes: { lateral: 'lateral', frontBack: 'front-back', long: 'long' },
  takes: (part: string, momentum: string, axis: string, s: string, deg: string) =>
    `${part} take ${momentum} about the ${axis} axis (${s} s): the body turns ${deg}.`,
  atStart: (deg: string) => `Tilted at take-off: ${deg}.`,
  byLean: (deg: string) => `The body goes round its leaning long axis: ${deg}.`,
  byBreathing: (deg: string) => `It breathes, being wider than deep: ${deg}.`,
  orders: (least: string, most: string) => `${least} to ${most}`,
  counter: (value: string) => `The same movements without angular momentum twist ${value}.`,
  noCounter: 'Without angular momentum the same movements twist nothing.',
  fromMomentum:
    'Measured from the plane of the somersault, square to the angular momentum: picture and readings measure it from the vertical plane of travel, out of which the momentum leans too.',
  fromWorld: 'There is too little somersault to measure tilt from: it is measured from the vertical plane of travel.',
  undefined: 'not defined: a rerun lies along the somersault axis',
  working: (done: string, of: string) => `Flying it again: ${done} of ${of}`,
  failed: (reason: string) => `The account could not be made: ${reason}`,
  mostly: (part: string, share: string, what: string) => `${part} gave ${share} of ${what}.`,
  opposed: (part: string, with_: string, other: string, against: string) =>
    `Parts work against each other: ${part.toLowerCase()} ${with_}, ${other.toLowerCase()} ${against}.`,
  nearlyAll: (part: string, what: string) => `${part} gave nearly all of ${what}.`,
  theMost: (part: string, what: string, value: string, whole: string) =>
    `${part} gave the most of ${what}: ${value} of ${whole}.`,
  tooSmall: 'Too little to be divided.',

  showMap: 'Show the map of this shape',
  mapTitle: 'Twist or wobble',
  modes: {
    twists: 'Held in this shape, the body twists on.',
    'wobbles about the quarter twist':
      'Held in this shape, the body only wobbles about the quarter twist, and does not twist on.',
    'wobbles about the somersault': 'Held in this shape, the body wobbles about the somersault.',
    'on the boundary': 'Held in this shape, the body is on the boundary between twist and wobble.',
    steady: 'Held in this shape, the body turns steadily.',
  },
  noMomentum: 'Without angular momentum there is neither: a twist is made by movement alone.',
  boundaryAt: (deg: string, now: string) =>
    `At a quarter twist this shape twists on from ${deg} of tilt; it is tilted ${now} now.`,
  takesAgain: {
    twist: (s: string) => `A whole twist would take ${s} s`,
    wobble: (s: string) => `There and back would take ${s} s`,
  },
  compared: {
    shorter: '.',
    same: ', as long as the flight.',
    longer: ', longer than the flight.',
  },
  byAxes: (rate: string, axis: string, byAxis: string, body: string, byBody: string) =>
    `It twists at ${rate}: the tilt of its principal long axis, ${axis}, gives ${byAxis}; that of the body, ${body}, ${byBody}.`,
  noBoundary: 'This shape has no boundary between twist and wobble.',
  mapPicture: (mode: string, tilt: string, twist: string) =>
    `Map of tilt against twist. ${mode} Now at ${twist} twist and ${tilt} tilt.`,
  mapX: 'twist',
  mapY: 'tilt',
  twisting: 'twists',
  wobbling: 'wobbles',
  mapHint: 'line: this flight; grey: where the shape at the cursor would only wobble. Press on the line to go there.',

  sightTitle: 'What the eyes see',
  seen: 'sees the landing',
  short: { seen: 'sees it', behind: 'behind', 'above or below': 'too high/low', 'hidden by the body': 'hidden' },
  why: { behind: 'behind', 'above or below': 'above or below', 'hidden by the body': 'hidden by the body' },
  whyLong: {
    behind: 'the landing is behind the head',
    'above or below': 'the landing is too far above or below where the nose points',
    'hidden by the body': 'trunk or thigh is in the way',
  },
  seenFrom: (s: string, before: string) => `The landing is in sight from ${s} s to the end, the last ${before} s.`,
  seenFirst: (s: string, before: string) => `First in sight at ${s} s, ${before} s before the landing.`,
  seenNever: 'The landing is never in sight.',
  seenNotAtEnd: 'At the landing itself it is out of sight.',
  seenAlways: 'The landing is in sight all the way.',
  seenNow: (side: string, up: string) => `Now in sight, ${side}, ${up}.`,
  notNow: (why: string) => `Now out of sight: ${why}.`,
  aside: (deg: string, way: string) => `${deg} to the ${way}`,
  upDown: (deg: string, way: string) => `${deg} ${way} where the nose points`,
  right: 'right',
  left: 'left',
  above: 'above',
  below: 'below',
  noHead: 'This body has no head to look with.',
  sightHow:
    'Eyes in the middle of the head, looking where the nose points: 95° to each side, 60° up and down (from memory, no source). Seeing is not yet looking.',
  sightPicture: (list: string) => `The landing over time: ${list}`,
  span: (why: string, from: string, to: string) => `${why} from ${from} to ${to} s`,

  loop: {
    title: 'Turning without angular momentum',
    said: (across: string, up: string, turn: string, way: string) =>
      `${across} and ${up} go round a loop: ${turn} ${way} remains. There and back along one line would leave nothing.`,
    area: (area: string) =>
      `The turn comes of the area gone round, ${area} rad², each round counted; the other way round it turns the other way.`,
  },
  parts: {
    title: 'Momentum by part',
    axes: { long: 'about the long axis', lateral: 'about the lateral axis', frontBack: 'about the front-back axis' },
    groups: { upper: 'trunk and head', arms: 'arms', legs: 'legs', whole: 'body', sum: 'whole' } as Readonly<
      Record<string, string>
    >,
    picture: (axis: string) => `Angular momentum of each part of the body ${axis}, over time, with its sign`,
  },
  momentumTitle: 'Angular momentum at the cursor',
  momentumHint: 'by body part, along the whole; it stays the same in flight, only its share wanders',
  noMomentumHere: 'none: what one part takes, another gives',
} as const;
