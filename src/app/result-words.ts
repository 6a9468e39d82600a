/** Words about a result that come with what is opened of it. */

export const resultTexts = {
  judged: {
    open: 'What was judged',
    title: 'What was judged, and what not',
    samples: (n: string) =>
      `${n} landings, each with other values out of these ranges. A share of the ranges, not a chance.`,
    sources: 'The ranges, and where they are from',
    limitsTitle: 'What is not judged',
    varied: 'Varied',
    from: 'from',
    to: 'to',
    source: 'where it is from',
    names: {
      legs: 'Stiffness of the legs, times',
      bend: 'How far the legs give, times',
      mat: 'Stiffness of the mat, times',
      reaction: 'Reaction, s',
      strength: 'Strength, times',
    } as Record<string, string>,
    limits: [
      'A landing is run in a plane with both legs alike: turned by more than 30°, tilted by more than 10°, legs 20° apart or moving across at more than 1 m/s it is not computed. After half to one and a half twists 50 to 83 % of landings were uneven (Marinšek & Čuk).',
      'A twist is called missed from 30° off, a tilt from 10°; what comes nearer to a rail, table or board than 10 cm is named first. These widths are judgement; 30° is the smallest judging band, from memory.',
    ],
  },
  sensitive: {
    open: 'How sensitive',
    title: 'Sensitive',
    working: 'Flying it a little otherwise …',
    failed: 'It could not be computed.',
    how: 'Usual errors: 0.25° of tilt, 3 % of momentum, 12 ms, 5 ms of a late hand; held against 30° of twist and 5° at the landing. One error at a time, nothing corrected in the air.',
  },
};
