// One verdict in words: what was missed is said first, what is not known is said not to be, and no two ways of saying it differ.
import { describe, expect, it } from 'vitest';
import { ASYMMETRY_LIMITS } from '../../sim/contact/landing-entry.ts';
import { type SkillVerdict, wordVerdict } from '../../sim/index.ts';
import { RAD } from '../../sim/math/angles.ts';
import type { Summary } from '../../sim/measure/summary.ts';
import type { SkillTarget } from '../../sim/measure/target.ts';
import { type ArrivalEnd, calcSkillVerdict, MISS_WIDTHS, UNEVEN } from '../../sim/skill/skill-verdict.ts';
import { wordBasis, wordNotComputed } from '../../sim/words/basis-words.ts';

interface Case {
  readonly somersaults?: number;
  readonly somersaultWord?: Summary['somersaultWord'];
  readonly twists?: number;
  readonly twistWord?: Summary['twistWord'];
  readonly tiltDeg?: number;
  readonly shortDeg?: number;
  readonly leanDeg?: number;
  readonly touchedBy?: string;
  readonly travel?: number;
  readonly endBend?: number;
  readonly legsApart?: number;
  readonly across?: number;
  readonly reach?: number;
  readonly turning?: number;
  readonly target?: Partial<SkillTarget>;
  readonly undefinedFrom?: number;
}

const BACK_FULL: SkillTarget = {
  somersaults: 1,
  somersaultWord: 'backward',
  twists: 1,
  twistWord: 'left',
  landingAngle: 0,
};

/** What a summary says of a flight; the rest of it plays no part in a verdict. */
function summaryOf(c: Case): Summary {
  const isDefined = c.undefinedFrom === undefined;
  const part = {
    duration: 1.04,
    lands: true,
    touchedBy: c.touchedBy ?? 'feet',
    somersaultWord: isDefined ? (c.somersaultWord ?? 'backward') : '',
    twistWord: isDefined ? (c.twistWord ?? ((c.twists ?? 0) >= 0.05 ? 'left' : '')) : '',
    tiltWord: (c.tiltDeg ?? 0) > 0.5 ? 'right' : '',
    travel: c.travel ?? 0,
    endBend: c.endBend ?? 0,
    legsApart: c.legsApart ?? 0,
    across: c.across ?? 0,
    ...(c.reach === undefined ? {} : { touchdownReach: { reach: c.reach, turning: c.turning ?? 0 } }),
    target: { ...BACK_FULL, ...c.target },
    ...(isDefined
      ? {
          somersaults: c.somersaults ?? 1,
          twists: c.twists ?? 0,
          tilt: (c.tiltDeg ?? 0) * RAD,
          landing: {
            wanted: 0,
            reached: 0,
            short: (c.shortDeg ?? 0) * RAD,
            word: '',
            lean: (c.leanDeg ?? 0) * RAD,
            inverted: false,
          },
        }
      : { undefinedFrom: c.undefinedFrom }),
  };
  return part as unknown as Summary;
}

type Landed = Extract<ArrivalEnd, { kind: 'landed' }>['report']['ending'];
const landed = (ending: Pick<Landed, 'kind' | 'direction'>): ArrivalEnd => ({
  kind: 'landed',
  report: { ending: { ...ending, t: 0.3, reasons: [] } },
});
const mat = (c: Case, arrival?: ArrivalEnd | 'pending'): SkillVerdict =>
  calcSkillVerdict(summaryOf(c), { surface: 'mat', ...(arrival ? { arrival } : {}) });
const plain = { twists: 0, target: { twists: 0, twistWord: '' } } as const;

describe('the sentence', () => {
  it.each<[string, SkillVerdict]>([
    ['1.00 somersault backward, 1.00 twist left, 1.04 s in the air: stands', mat({ twists: 1 }, landed({ kind: 'stands' }))],
    ['1.00 somersault backward, no twist, 1.04 s in the air, 8 deg short, a hop forward', mat({ ...plain, shortDeg: 8 }, landed({ kind: 'hop', direction: 'forward' }))],
    ['1.00 somersault backward, no twist, 1.04 s in the air, 9 deg past, a small step back', mat({ ...plain, shortDeg: -9 }, landed({ kind: 'smallStep', direction: 'back' }))],
    ['1.00 somersault backward, no twist, 1.04 s in the air, 15 deg past, steps back', mat({ ...plain, shortDeg: -15 }, landed({ kind: 'steps', direction: 'back' }))],
    ['1.00 somersault backward, no twist, 1.04 s in the air, deep squat, hips below the knees', mat(plain, landed({ kind: 'deepSquat' }))],
    ['1.00 somersault backward, no twist, 1.04 s in the air, 26 deg short: hands down in front', mat({ ...plain, shortDeg: 26 }, landed({ kind: 'hands', direction: 'forward' }))],
    ['1.00 somersault backward, no twist, 1.04 s in the air, 31 deg past: sits down', mat({ ...plain, shortDeg: -31 }, landed({ kind: 'seat' }))],
    ['1.12 twists of 1: 43 deg past; 1.00 somersault backward, 1.04 s in the air, on the feet, facing 43 deg aside; landing not computed', mat({ twists: 1.12 }, { kind: 'asymmetric', asymmetry: [{ kind: 'twist', value: 43 * RAD, limit: 30 * RAD }] })],
    ['Wrong way: 2.00 twists left, right was wanted; 1.00 somersault backward, 1.04 s in the air: stands', mat({ twists: 2, target: { twists: 2, twistWord: 'right' } }, landed({ kind: 'stands' }))],
    ['1.40 somersaults of 2; no twist, 1.04 s in the air: lands on the back', mat({ ...plain, somersaults: 1.4, shortDeg: 216, touchedBy: 'back', target: { ...plain.target, somersaults: 2 } })],
    ['Somersault and twist not defined after 0.62 s: lies along the somersault axis, 1.04 s in the air; landing not computed', mat({ undefinedFrom: 0.62 }, landed({ kind: 'stands' }))],
    ['Tilted 12 deg, head to the right; 1.00 somersault backward, no twist, 1.04 s in the air, on the feet, upright; landing not computed', mat({ ...plain, tiltDeg: 12 }, { kind: 'asymmetric', asymmetry: [{ kind: 'tilt', value: 12 * RAD, limit: 10 * RAD }] })],
  ])('%s', (sentence, verdict) => {
    expect(wordVerdict(verdict)).toBe(sentence);
  }); // biome-ignore format: a table

  it('is no finer about a twist that one late hand gives than that hand is known', () => {
    const late = (c: Case): string =>
      wordVerdict(
        calcSkillVerdict(summaryOf(c), { surface: 'mat', arrival: landed({ kind: 'stands' }), isHandLate: true }),
      );
    expect(late({ twists: 0.98 })).toBe('1.00 somersault backward, about 1.0 twist left, 1.04 s in the air: stands');
    expect(late({ twists: 0.787 })).toMatch(/^About 0\.8 twists of 1: about 80 deg short; /);
    expect(late({ twists: 0.94, twistWord: 'right' })).toMatch(
      /^Wrong way: about 0\.9 twists right, left was wanted; /,
    );
    expect(late({})).toMatch(/^0\.0 twists of 1|^About 0\.0 twists of 1/);
  });

  it('tells first of all what comes near a rail, and nothing of what stays farther than asked', () => {
    const near = (distance: number): string =>
      wordVerdict(
        calcSkillVerdict(summaryOf(plain), {
          surface: 'mat',
          arrival: landed({ kind: 'stands' }),
          nearest: { solid: 'rail', part: 'toes', distance, t: 0.36 },
        }),
      );
    expect(near(0.021)).toMatch(/^Toes pass 2 cm from the rail\. 1\.00 somersault backward.*: stands$/);
    expect(near(0.002)).toMatch(/^Toes pass 1 cm from the rail\. /);
    expect(near(-0.01)).toMatch(/^Toes touch the rail\. /);
    expect(near(0.11)).toMatch(/^1\.00 somersault/);
  });

  it('on a bed bounces, with how far it travelled; no step can follow', () => {
    const bed = calcSkillVerdict(summaryOf({ ...plain, shortDeg: -2, travel: -0.4 }), { surface: 'trampoline' });
    expect(wordVerdict(bed)).toBe(
      '1.00 somersault backward, no twist, 1.04 s in the air, 2 deg past, bounces, 0.4 m back',
    );
    expect(wordVerdict(bed)).not.toMatch(/step|stand/);
    const bent = calcSkillVerdict(summaryOf({ ...plain, endBend: 50 * RAD, tiltDeg: 12 }), { surface: 'trampoline' });
    expect(wordVerdict(bent)).toBe(
      'Tilted 12 deg, head to the right; 1.00 somersault backward, no twist, 1.04 s in the air, bounces, body bent by 50 deg',
    );
  });

  it('on a mat over a bed lands, and the bed is said to be taken as stiff', () => {
    const mat = (arrival: ArrivalEnd | 'pending'): SkillVerdict =>
      calcSkillVerdict(summaryOf({ ...plain, shortDeg: -2, travel: -0.4 }), { surface: 'trampoline', arrival });
    const step = mat(landed({ kind: 'smallStep', direction: 'back' }));
    expect(wordVerdict(step)).toMatch(/, 2 deg past, a small step back, as if the bed did not give$/);
    expect(wordBasis(step)).toMatch(
      /^Ending judged by the landing model: .* The bed under the mat is taken not to give/,
    );
    expect(wordVerdict(mat('pending'))).toMatch(/; landing being computed$/);
  });

  it('into water says which end goes first, how far from the vertical, and a body that is not straight', () => {
    const water = (c: Case): string =>
      wordVerdict(calcSkillVerdict(summaryOf({ ...plain, ...c }), { surface: 'water' }));
    expect(water({ somersaults: 1.52, leanDeg: -174, shortDeg: -6 })).toMatch(/: enters head first, 6 deg past$/);
    expect(water({ somersaults: 1, leanDeg: 0, endBend: 40 * RAD })).toMatch(
      /: enters feet first, body bent by 40 deg$/,
    );
    expect(water({ somersaults: 1.25, leanDeg: 90, shortDeg: 59 })).toMatch(/: enters flat, 59 deg short$/);
  });

  it('in the air there is no landing to speak of', () => {
    expect(wordVerdict(calcSkillVerdict(summaryOf(plain), {}))).toMatch(/, ends upright$/);
  });
});

describe('a verdict', () => {
  it('a stretch of flight of which nothing was wanted is short of nothing: how it leans is said', () => {
    const off = { ...plain, shortDeg: 21, leanDeg: 21 };
    const { target: _, ...open } = summaryOf(off);
    expect(wordVerdict(calcSkillVerdict(open as Summary, {}))).toMatch(/, ends leaning 21 deg back$/);
    expect(wordVerdict(calcSkillVerdict(summaryOf(off), {}))).toMatch(/, ends 21 deg short$/);
  });

  it('is never given of a landing that was not run', () => {
    for (const arrival of [undefined, 'pending'] as const) {
      const verdict = mat({ twists: 1 }, arrival);
      expect(verdict.ending.kind).toBe('notComputed');
      expect(wordVerdict(verdict)).not.toMatch(/stands|step|hop/);
    }
  });

  it('by the band is given of no uneven landing either', () => {
    const held = { ...plain, reach: 0 };
    expect(wordVerdict(mat(held))).toMatch(/, on the feet, could be held$/);
    for (const uneven of [{ legsApart: 21 * RAD }, { across: 1.1 }, { tiltDeg: 10.5 }])
      expect(mat({ ...held, ...uneven }).ending).toMatchObject({ kind: 'notComputed', why: { kind: 'asymmetric' } });
  });

  it('by the band claims no hold of what turns faster than the band was read off', () => {
    const fast = { ...plain, reach: 0, turning: 0.34 };
    expect(wordVerdict(mat(fast))).toMatch(/, on the feet, may take a step$/);
    expect(wordBasis(mat(fast))).toMatch(/faster than the landings that the band was read off/);
  });

  it('of a run says of a step or a fall that turns so fast that it is the model’s, and of a hold nothing', () => {
    const fast = { ...plain, reach: 0, turning: 0.34 };
    expect(wordVerdict(mat(fast, landed({ kind: 'steps', direction: 'back' })))).toMatch(/, steps back in the model$/);
    expect(wordBasis(mat(fast, landed({ kind: 'steps', direction: 'back' })))).toMatch(
      /not evidence that a gymnast could not hold it/,
    );
    expect(wordVerdict(mat(fast, landed({ kind: 'stands' })))).toMatch(/: stands$/);
    const slow = mat({ ...fast, turning: 0.1 }, landed({ kind: 'steps', direction: 'back' }));
    expect(wordVerdict(slow)).toMatch(/, steps back$/);
    expect(wordBasis(slow)).not.toMatch(/not evidence/);
  });

  it('says of what it is short: of upright, or of the lean that is wanted', () => {
    const lean = { ...plain, shortDeg: 3, leanDeg: -22, reach: 0 };
    expect(wordVerdict(mat(lean))).toMatch(/, on the feet, 3 deg short, could be held$/);
    const wanted = (deg: number): SkillVerdict =>
      mat({ ...lean, target: { ...plain.target, landingAngle: deg * RAD } });
    expect(wordVerdict(wanted(-19))).toMatch(/, on the feet, 3 deg short of the lean wanted, could be held$/);
    expect(wordVerdict({ ...wanted(-19), short: -13 * RAD })).toMatch(
      /, on the feet, 13 deg over-rotated, past the lean wanted, /,
    );
    expect(wordBasis(wanted(-19))).toMatch(/leaning 22 deg forward from upright there is 0\.06 of one somersault/);
    const unknown = { kind: 'asymmetric', asymmetry: [{ kind: 'twist', value: 1, limit: 0.5 }] } as const;
    const on = (shortDeg: number): string =>
      wordVerdict(
        mat({ ...lean, shortDeg, leanDeg: -19, target: { ...plain.target, landingAngle: -19 * RAD } }, unknown),
      );
    expect(on(0.2)).toMatch(/, on the feet, leaning 19 deg forward, as wanted; landing not computed$/);
    expect(on(70)).toMatch(/, on the feet, leaning 19 deg forward; landing not computed$/);
    for (const upright of [0, 180, -180, 1]) expect(wordVerdict(wanted(upright))).toMatch(/3 deg short, could/);
  });

  it('of a landing that turns too fast says that its impact is computed, and only that; without a landing that none is', () => {
    const fast: ArrivalEnd = {
      kind: 'landed',
      report: { ending: { kind: 'tooFast', t: 0.1, reasons: [{ kind: 'turnsFast', turning: 123, limit: 76 }] } },
    };
    const run = mat(plain, fast);
    expect(wordVerdict(run)).toMatch(/, on the feet, upright; of the landing only the first impact is computed$/);
    expect(wordBasis(run)).toMatch(/^How it ends is not computed: .* The first tenth of a second is run/);
    const none: SkillVerdict = {
      ...run,
      ending: { kind: 'notComputed', why: { kind: 'fast', turning: 123, limit: 76 } },
    };
    expect(wordVerdict(none)).toMatch(/; landing not computed$/);
    expect(wordBasis(none)).toMatch(/^Not computed: .* computed where a landing is stated/);
  });

  it('of an uneven landing says that most are, with the source', () => {
    expect(wordNotComputed({ kind: 'asymmetric', of: [{ kind: 'twist', value: 43 * RAD, limit: 30 * RAD }] })).toBe(
      'the landing model is flat: twist off by 43 deg (limit 30 deg). Most twisting landings are uneven (50 to 83 %: Marinšek & Čuk)',
    );
  });

  it('calls a twist missed from the smallest judging band on, and not before', () => {
    expect(mat({ twists: 1 + 29 / 360 }).missed).toEqual([]);
    expect(mat({ twists: 1 - 31 / 360 }).missed).toMatchObject([{ kind: 'twists', wanted: 1 }]);
    expect(mat({ twists: 1, twistWord: 'right' }).missed).toMatchObject([
      { kind: 'wrongWay', of: 'twist', wanted: 'left' },
    ]);
  });

  it('turned the other way a little is a count that was missed, not a wrong way', () => {
    expect(mat({ twists: 0.1, twistWord: 'right' }).missed).toMatchObject([{ kind: 'twists', done: 0.1 }]);
    expect(wordVerdict(mat({ twists: 0.1, twistWord: 'right' }))).toMatch(/^0\.10 twists of 1: 396 deg short; /);
  });

  it('says everything that was missed, the wrong way first', () => {
    const verdict = mat({ somersaultWord: 'forward', twists: 0.5, shortDeg: 700, touchedBy: 'back' });
    expect(verdict.missed.map((m) => m.kind)).toEqual(['wrongWay', 'twists']);
    expect(wordVerdict(verdict)).toBe(
      'Wrong way: 1.00 somersault forward, backward was wanted, 0.50 twists of 1: 180 deg short; 1.04 s in the air: lands on the back',
    );
  });
});

it('a landing is not computed from the same tilt and twist on, whether it was run or not', () => {
  expect(MISS_WIDTHS.tilt).toBe(ASYMMETRY_LIMITS.tilt);
  expect(MISS_WIDTHS.twist).toBe(ASYMMETRY_LIMITS.twist);
  expect(UNEVEN).toEqual({ sides: ASYMMETRY_LIMITS.sides, across: ASYMMETRY_LIMITS.across });
});
