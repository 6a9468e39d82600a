// A study judges a landing on the feet as the verdict does: of every ready skill as it is filed, inside the window is held.
import { describe, expect, it } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import {
  calcClearance,
  calcFrames,
  flyWhole,
  frameTimes,
  StudyRunner,
  summarize,
  usualStudy,
  verdictOf,
} from '../../sim/index.ts';
import { distanceIn } from '../../sim/search/margin-window.ts';
import { someOf } from '../corpus.ts';
import { builtOf, fileOf, presetIds, specOf } from '../skill/load.ts';

const HELD = ['stands', 'hop', 'deepSquat', 'smallStep', 'held'];

describe('inside the usual window is held by the verdict', () => {
  const onFeet = presetIds.filter((id) => /"kind":"(mat|floor)"/.test(JSON.stringify(fileOf(id)).replaceAll(' ', '')));

  const found = new Set<boolean>();

  it.each(someOf(onFeet, 3, 1))('%s', (id) => {
    const whole = flyWhole(builtOf(fileOf(id)), contact);
    const { flight } = whole;
    const summary = summarize(flight, calcFrames(flight, frameTimes(flight.duration, 240)), whole.skill.target);
    const nearest = calcClearance(whole);
    const { missed, ending } = verdictOf(whole, summary, nearest);
    const word = ending.kind === 'landed' ? ending.how : ending.kind === 'touches' ? ending.place : '';
    const touches = nearest !== undefined && nearest.distance <= 0;
    // what turns too fast to be judged is inside by the band
    const isBand = ending.kind === 'notComputed' && ending.why.kind === 'fast' && ending.why.isWithin === true;
    const isHeld = (HELD.includes(word) || isBand) && missed.every((m) => m.kind === 'near') && !touches;
    found.add(isHeld);
    const study = new StudyRunner(usualStudy(specOf(fileOf(id)), 1, contact), contact);
    expect(distanceIn(study.study.window, study.now()).distance <= 1).toBe(isHeld);
  });

  it('of some and not of others', () => {
    expect(found).toEqual(new Set([true, false]));
  });
});
