/** The flight in a few sentences, to be heard: result, take-off, shapes in order, the peaks, its cautions. */

import { REV } from '../../../sim/math/angles.ts';
import { sentence } from '../../../sim/words/verdict-words.ts';
import type { Field } from '../../document/fields.ts';
import { inWords } from '../../ui/names.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import type { Page } from '../page.ts';
import { getGiven, getStated, isTelling, sayField, whatLaunches } from '../takeoff-values.ts';
import { wholeStateOf } from '../whole-state.ts';
import { wordCaution } from './caution-words.ts';
import { sayLikelihood } from './say-likelihood.ts';
import { speakVerdict } from './sentence-words.ts';
import { saidTexts } from './words.ts';

const t = saidTexts;
const s2 = (s: number): string => formatNumber(s, 2);

export function sayFlight(page: Page): string {
  const { flight, doc } = page;
  const { outline, frames, file, notCompared } = flight.result();
  const shapes = flight
    .spans()
    .filter((span) => span.to > 0 && span.from < outline.duration)
    .map((span) => t.hold(span.title, s2(Math.max(span.from, 0)), s2(Math.min(span.to, outline.duration))));
  let fastest = 0;
  for (let i = 1; i < frames.n; i++)
    if (Math.abs(frames.twistRate[i]) > Math.abs(frames.twistRate[fastest])) fastest = i;
  const whole = wholeStateOf(page);
  const cautions = whole.cautions();
  const likely = sayLikelihood(whole);
  return [
    t.by(inWords(file.title), inWords(doc.athlete().name)),
    `${speakVerdict(whole.verdict())}.`,
    likely && sentence(likely),
    t.takeoff(wordTakeoff(page)),
    shapes.length > 0 ? t.shapes(shapes.join(', ')) : '',
    t.highest(say('length', outline.height), s2(outline.apex)),
    (outline.twists ?? 0) > 0.05
      ? t.fastest(say('rate', Math.abs(frames.twistRate[fastest]) / REV), s2(frames.t[fastest]))
      : '',
    notCompared ? `${notCompared.title} ${notCompared.detail}` : '',
    cautions.length > 0
      ? `${t.cautions(cautions.length)} ${wordCaution(cautions[0])}`
      : notCompared
        ? t.inRanges
        : t.none,
  ]
    .filter(Boolean)
    .join(' ');
}

/** "Centre of mass: 0.98 m; Speed up: 4.60 m/s; ...": what is stated, then what the swing or the push gives; zeros are left out. */
/** `hasMass`: angular momentum is among it, which with the height gives the mass. */
export function wordTakeoff({ flight, services }: Page, hasMass = true): string {
  const result = flight.result();
  const list = (fields: readonly Omit<Field, 'write'>[]): string =>
    fields
      .filter(isTelling)
      .filter(({ unit }) => hasMass || !unit.startsWith('kg'))
      .map((one) => t.field(one.label, sayField(one)))
      .join('; ');
  const stated = list(getStated(result));
  const by = whatLaunches(result.file);
  const given = by ? list(getGiven(result, services.flying.launchedTakeoff(result))) : '';
  return by && given ? t.given[by](stated, given) : stated;
}
