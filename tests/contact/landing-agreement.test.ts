/**
 * How often the band of the landing model, read off a touchdown alone, says what the model does in full, on touchdowns that it was not made of. All 2,000,
 * with the table of docs/landing.md: SHAPEFLIGHT_WHOLE=1 npx vitest run tests/contact/landing-agreement.test.ts (three minutes).
 */
import { expect, test } from 'vitest';
import { MATS } from '../../sim/contact/mat.ts';
import { bandOf, mayBeHeld, placeInBand } from '../../sim/measure/landing-band.ts';
import { casesOf, isWhole } from '../corpus.ts';
import { landAt, rankOf } from './landing-sweep.ts';
import { SURFACES, type Touchdown, touchdowns } from './random-touchdowns.ts';

const PLACES = ['held', 'steps', 'falls'] as const;
/** m of reach: further out all but a few fall, and every agreement would be had for nothing */
const WIDEST = 0.25;
const SEED = 7;
const TOUCHDOWNS = 2000;

/** Of 2,000: share that the band says as the run does. */
const AGREES = 0.737;
/** Whether it is held, with a small step at most: share that the band says as the run does; that batches do, which run what may be held. */
const HELD_BY_BAND = 0.9;
const HELD_BY_BATCH = 0.999;
/** of the shares above, as they are rounded */
const ROUNDING = 0.005;

interface Judged {
  readonly surface: (typeof SURFACES)[number];
  /** indices into PLACES: by the band, by the run as it is shown */
  readonly band: number;
  readonly run: number;
  /** held: by the band, as batches judge, by the run as it is shown */
  readonly held: readonly [boolean, boolean, boolean];
}

/** As a study judges the landing of a flight that states one: by the band, and what may be held by a run of its own. */
function judge({ body, arrival, angle, reach }: Touchdown, surface: Judged['surface']): Judged {
  const band = bandOf(surface === 'floor' ? 'floor' : 'mat');
  if (!band) throw new Error(surface);
  // of four ranks the first two are held
  const place = (isBatch: boolean): number =>
    Math.max(0, rankOf(landAt(body, MATS[surface], arrival, angle, { isBatch }).ending.kind) - 1);
  const said = placeInBand({ reach, turning: arrival.turning ?? 0 }, band).place;
  const run = place(false);
  return {
    surface,
    band: PLACES.indexOf(said),
    run,
    held: [said === 'held', mayBeHeld(reach, band) && place(true) === 0, run === 0],
  };
}

const shareOf = (all: readonly Judged[], is: (one: Judged) => boolean): number => all.filter(is).length / all.length;
const isSame = ({ band, run }: Judged): boolean => band === run;

function print(judged: readonly Judged[]): void {
  const per = (share: number): string => `${(100 * share).toFixed(1)} %`;
  for (const surface of [...SURFACES, 'all'] as const) {
    const of = judged.filter((one) => surface === 'all' || one.surface === surface);
    console.log(
      `${surface}, ${of.length}: as said ${per(shareOf(of, isSame))}; held or not: band ${per(shareOf(of, ({ held }) => held[0] === held[2]))}, batch ${per(shareOf(of, ({ held }) => held[1] === held[2]))}`,
    );
  }
  for (const [band, word] of PLACES.entries())
    console.log(
      `band ${word}: ${PLACES.map((is, run) => `${is} ${judged.filter((one) => one.band === band && one.run === run).length}`).join(', ')}`,
    );
}

test('on random touchdowns band and batches say what the run does as often as is stated', () => {
  const judged: Judged[] = [];
  for (const one of touchdowns(SEED, 0, WIDEST)) {
    if (judged.length === casesOf(TOUCHDOWNS, 60)) break;
    judged.push(judge(one, SURFACES[judged.length % SURFACES.length]));
  }
  if (isWhole) print(judged);
  for (const [stated, is] of [
    [AGREES, isSame],
    [HELD_BY_BAND, ({ held }) => held[0] === held[2]],
    [HELD_BY_BATCH, ({ held }) => held[1] === held[2]],
  ] as const satisfies readonly (readonly [number, (one: Judged) => boolean])[]) {
    /** three standard deviations of so few */
    const chance = isWhole ? 0 : 3 * Math.sqrt((stated * (1 - stated)) / judged.length);
    expect(Math.abs(shareOf(judged, is) - stated)).toBeLessThanOrEqual(chance + ROUNDING);
  }
}, 600_000);

test(`beyond ${WIDEST} m of reach nothing is held`, () => {
  let n = 0;
  for (const { body, arrival, angle } of touchdowns(SEED, WIDEST, 1)) {
    if (n === casesOf(300, 12)) break;
    const { kind } = landAt(body, MATS[SURFACES[n % SURFACES.length]], arrival, angle).ending;
    if (isWhole && rankOf(kind) < 3) console.log('beyond', angle, arrival, kind);
    expect(rankOf(kind)).toBeGreaterThan(1);
    n++;
  }
}, 300_000);
