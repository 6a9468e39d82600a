// The landings of the ready skills, which slide as they touch: both ways of stepping are of the same equations, so they come to the same.
import { expect, test } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import { runLanding } from '../../sim/contact/landing.ts';
import { flyWhole } from '../../sim/skill/whole.ts';
import { builtOf, fileOf, presetIds } from '../skill/load.ts';

/** s and m at which the ending is seen and how long a step it takes, both ways: measured 0.5 ms and 2.2 mm (40 ms and 0.25 m where sliding was left out of one). */
const SAME = { t: 0.002, step: 0.006 };

const landing = presetIds.filter((id) => fileOf(id).phases.some((phase) => phase.kind === 'landing'));

test.each(landing)('%s', (id) => {
  const whole = flyWhole(builtOf(fileOf(id)), contact);
  if (whole.landing?.kind !== 'landed') throw new Error('not landed');
  const { entry, spec } = whole.landing.run;
  const [shown, batch] = [false, true].map((isBatch) => runLanding(entry, { ...spec, isBatch }).ending);
  expect([batch.kind, batch.direction]).toEqual([shown.kind, shown.direction]);
  expect(Math.abs(batch.t - shown.t)).toBeLessThan(SAME.t);
  const stepIn = ({ reasons }: typeof shown): number => reasons.reduce((most, r) => ('step' in r ? r.step : most), 0);
  expect(Math.abs(stepIn(batch) - stepIn(shown))).toBeLessThan(SAME.step);
});
