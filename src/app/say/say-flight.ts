/** The flight in a few sentences, to be heard: result, take-off, shapes in order, the peaks, what is out of bounds. */

import { REV } from '../../../sim/math/angles.ts';
import { getFields } from '../../document/fields.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { quantityOf, say } from '../../ui/units.ts';
import type { Page } from '../page.ts';
import { wordCaution } from './caution-words.ts';
import { speakSentence } from './sentence-words.ts';
import { saidTexts } from './words.ts';

const t = saidTexts;
const s2 = (s: number): string => formatNumber(s, 2);

export function sayFlight(page: Page): string {
  const { flight, doc } = page;
  const { outline, frames, file } = flight.result();
  const shapes = flight
    .spans()
    .filter((span) => span.to > 0 && span.from < outline.duration)
    .map((span) => t.hold(span.title, s2(Math.max(span.from, 0)), s2(Math.min(span.to, outline.duration))));
  let fastest = 0;
  for (let i = 1; i < frames.n; i++)
    if (Math.abs(frames.twistRate[i]) > Math.abs(frames.twistRate[fastest])) fastest = i;
  const cautions = flight.cautions();
  return [
    t.by(file.title, doc.athlete().name),
    `${speakSentence(outline)}.`,
    t.takeoff(wordTakeoff(page)),
    shapes.length > 0 ? t.shapes(shapes.join(', ')) : '',
    t.highest(say('length', outline.height), s2(outline.apex)),
    (outline.twists ?? 0) > 0.05
      ? t.fastest(say('rate', Math.abs(frames.twistRate[fastest]) / REV), s2(frames.t[fastest]))
      : '',
    cautions.length > 0 ? `${t.cautions(cautions.length)} ${wordCaution(cautions[0])}` : t.none,
  ]
    .filter(Boolean)
    .join(' ');
}

/** "Centre of mass: 0.98 m; Speed up: 4.60 m/s; ...": what the fields of the take-off hold; zeros are left out. */
export function wordTakeoff(page: Page): string {
  const { doc } = page;
  return getFields(doc.file(), doc.athlete())
    .filter((f) => f.group === 'takeoff' && (f.main || (f.id !== 'gravity' && f.value !== 0)))
    .filter((f) => f.id === 'height' || f.value !== 0)
    .map((f) => {
      const q = quantityOf(f.unit);
      const value = q ? say(q, f.value, f.decimals) : `${formatNumber(f.value, f.decimals)} ${f.unit}`.trim();
      return t.field(f.label, value);
    })
    .join('; ');
}
