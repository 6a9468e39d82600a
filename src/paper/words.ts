/** Words of what is printed. */
export const paperTexts = {
  card: {
    seconds: (s: string) => `${s} s`,
    span: (from: string, to: string) => `${from} to ${to} s`,
    caution: 'Caution.',
    room: 'Room for error.',
    opens: 'Opens this skill.',
    noName: 'No name in it.',
    nameIn: (who: string) => `Name in it: ${who}.`,
    at: { apex: 'highest' },
    foot: 'Filled limbs with two bands are the left side.',
  },
  report: {
    call: 'made on the page',
    page: (n: number, of: number) => `page ${n} of ${of}`,
  },
  plan: {
    title: 'Filming plan.',
    camera: (up: string, off: string, view: string) =>
      `Camera ${up} up, ${off}° off square, field of view ${view}° across`,
    shutter: 'shutter',
    locked: 'Locked: focus, exposure, zoom. Level.',
    own: (s: string) => `The camera’s own view at ${s} s`,
    marks: (a: string, b: string) => `Put four marks on the floor, ${a} × ${b} m apart, and film them once.`,
    room: 'Room for body and hands',
    away: 'From the middle of the flight',
    held: 'Held from',
    never: 'no distance',
    above: 'From above',
    side: 'From the side',
    expected: {
      airTime: 'Air time',
      somersault: 'Somersault',
      twist: 'Twist, inferred',
      tilt: 'Tilt, by the twists',
      momentum: 'Momentum',
    },
    notKnown: 'not known',
    beside: (m: string, isBefore: boolean) => `${m} ${isBefore ? 'before' : 'after'} the middle`,
    fastest: 'Fastest, a frame',
    blur: 'Blur',
    skew: 'Skew at most',
    hidden: (joint: string) => `Hidden longest: ${joint}`,
  },
  picture: {
    title: 'Poses of a flight',
    seconds: (s: string) => `${s} s`,
    metre: (m: number) => `${m} m`,
    scale: (n: number) => `Figures to scale, 1 to ${n} in print.`,
    foot: 'Filled limbs with two bands are the left side.',
    versions: (a: string, b: string) => `A, drawn full: ${a}. B, dashed: ${b}.`,
  },
} as const;

export const pictureFoot = (versions?: { readonly a: string; readonly b: string }): string =>
  [paperTexts.picture.foot, ...(versions ? [paperTexts.picture.versions(versions.a, versions.b)] : [])].join(' ');
