/** A change in a coach's words, before and after it is done. */
import { describe, expect, it } from 'vitest';
import { RAD } from '../../sim/math/angles.ts';
import { type Cause, joinCauses, mergeLimbs, wordCause } from '../../sim/words/cause-words.ts';
import { PLAIN_NUMBERS } from '../../sim/words/verdict-words.ts';

const both = (cause: Cause): string[] =>
  (['cue', 'said'] as const).map((mood) => wordCause(cause, mood, PLAIN_NUMBERS));

describe('a change in words', () => {
  it.each<[string, Cause, string, string]>([
    [
      'a shape held longer',
      { kind: 'move', from: 'wrapped', into: 'arms out', leaves: 'closed', by: 0.02 },
      'Hold the wrap 0.02 s longer',
      'Held the wrap 0.02 s longer',
    ],
    [
      'one opened sooner',
      { kind: 'move', from: 'tuck', into: 'landing', leaves: 'closed', by: -0.03 },
      'Open the tuck 0.03 s earlier',
      'Opened the tuck 0.03 s earlier',
    ],
    [
      'one gone into',
      { kind: 'move', from: 'overhead', into: 'pike', leaves: 'forClosed', by: -0.01 },
      'Go into the pike 0.01 s earlier',
      'Went into the pike 0.01 s earlier',
    ],
    [
      'hips',
      { kind: 'shapeAngle', shape: 'tuck', angle: 'hipFlexion', by: -4 * RAD },
      'Hips 4 deg more open in the tuck',
      'Hips 4 deg more open in the tuck',
    ],
    [
      'one arm',
      { kind: 'shapeAngle', shape: 'right up', angle: 'shoulderElevationL', by: 6 * RAD },
      'Left arm 6 deg higher in “right arm up, left arm down”',
      'Left arm 6 deg higher in “right arm up, left arm down”',
    ],
    ['more air', { kind: 'airTime', by: 0.04 }, 'Jump higher: 0.04 s more in the air', '0.04 s more in the air'],
    [
      'less rotation',
      { kind: 'rotation', by: -0.03, off: 'the floor' },
      '3 % less rotation off the floor',
      '3 % less rotation off the floor',
    ],
  ])('says %s', (_, cause, cue, said) => {
    expect(both(cause)).toEqual([cue, said]);
  });
  it.each<[string, Cause]>([
    ['Changed the arms in “arms out”', { kind: 'limb', limb: 'arms', shape: 'arms out' }],
    ['Changed the left arm in the wrap', { kind: 'limb', limb: 'left arm', shape: 'wrapped' }],
    ['Changed the legs at 0.39 s', { kind: 'limb', limb: 'legs', at: 0.39 }],
    ['Age 13', { kind: 'athlete', of: 'age', is: '13' }],
    ['No age stated', { kind: 'athlete', of: 'age', is: '' }],
    [
      'Stature 1.52 m, age 13',
      {
        kind: 'athlete',
        of: 'several',
        is: 'Ilse',
        parts: [
          { of: 'stature', is: '1.52 m' },
          { of: 'mass', is: '42.0 kg' },
          { of: 'age', is: '13' },
        ],
      },
    ],
    ['Ilse with other measurements', { kind: 'athlete', of: 'several', is: 'Ilse', parts: [] }],
  ])('says %s of what was done', (said, cause) => {
    expect(wordCause(cause, 'said', PLAIN_NUMBERS)).toBe(said);
  });
  it('names limbs of one place together', () => {
    const left: Cause = { kind: 'limb', limb: 'left arm', shape: 'wrapped' };
    const right: Cause = { kind: 'limb', limb: 'right leg', shape: 'wrapped' };
    const elsewhere: Cause = { kind: 'limb', limb: 'head', at: 0.3 };
    expect(mergeLimbs([left, right, elsewhere]).map((one) => wordCause(one, 'said', PLAIN_NUMBERS))).toEqual([
      'Changed the left arm and right leg in the wrap',
      'Changed the head at 0.30 s',
    ]);
  });
  it('names both sides of a limb once', () => {
    const of = (...limbs: string[]): string =>
      wordCause(
        mergeLimbs(limbs.map((limb) => ({ kind: 'limb', limb, shape: 'wrapped' }) as const))[0],
        'said',
        PLAIN_NUMBERS,
      );
    expect(of('left arm', 'right arm')).toBe('Changed the arms in the wrap');
    expect(of('arms', 'left arm', 'right arm')).toBe('Changed the arms in the wrap');
    expect(of('left arm', 'head', 'right leg')).toBe('Changed the left arm, head and right leg in the wrap');
  });
  it('a tilt that rounds to none is less than a degree', () => {
    expect(wordCause({ kind: 'start', of: 'tilt', by: 0.2 * RAD }, 'said', PLAIN_NUMBERS)).toBe(
      'Tilts less than 1 deg further to the right at take-off',
    );
  });
  it('joins two as one sentence', () => {
    expect(joinCauses(['Hold the tuck 0.02 s longer', 'Hips 2 deg more bent in the tuck'])).toBe(
      'Hold the tuck 0.02 s longer and hips 2 deg more bent in the tuck',
    );
  });
});
