// A launch is kept while body and gravity are the same: a study that varies them flies what a new one flies.
import { expect, it } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import { findInput, type Input, putInputs } from '../../sim/index.ts';
import { SampleFlyer } from '../../sim/search/sample-fly.ts';
import { fileOf, specOf } from '../skill/load.ts';

const giant = specOf(fileOf('giant-double-straight'));
const mass = findInput(giant, 'body.mass');
/** No input of searches today; what is kept depends on it all the same. */
const gravity: Input = {
  ...mass,
  id: 'gravity',
  value: giant.gravity,
  range: [1, 20],
  put: (spec, value) => ({ ...spec, gravity: value }),
};

it.each([mass, gravity])('giants of two values of $id fly from a launch of their own', (input) => {
  const study = new SampleFlyer(giant, [input], { contact });
  const startOf = (flyer: SampleFlyer, value: number) => {
    const { v_WScm_W0, h_Scm_W } = flyer.flightAt([value]);
    return [...v_WScm_W0, ...h_Scm_W];
  };
  const starts = [1, 1.1, 1].map((factor) => {
    const value = input.value * factor;
    const start = startOf(study, value);
    // a copy of the start, of which no launch is kept
    const changed = putInputs({ ...giant, start: structuredClone(giant.start) }, [input], [value]);
    expect(start).toEqual(startOf(new SampleFlyer(changed, [], { contact }), value));
    return start;
  });
  expect(starts[2]).toEqual(starts[0]);
  expect(starts[1]).not.toEqual(starts[0]);
});
