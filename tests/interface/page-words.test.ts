// What the page says of a flight and of a fault: plurals, landings without a turn, bad input in words.

import { describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import { FieldError, NoTouchdownError, SingularBodyError } from '../../sim/index.ts';
import { wordFault } from '../../src/app/say/fault-words.ts';
import { speakSentence, wordLanding } from '../../src/app/say/sentence-words.ts';
import type { Outline } from '../../src/engine/result.ts';
import { setUnits } from '../../src/ui/units.ts';
import { flightIn } from '../files/parts.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const base: Outline = engine.fly(skills['back-straight-full']).outline;
const say = (part: Partial<Outline>): string => speakSentence({ ...base, ...part });

describe('the sentence', () => {
  it('one is only what prints as one', () => {
    expect(say({ somersaults: 1.004, twists: 0.25 })).toContain('1.00 somersault backward, 0.25 twists to the left');
    expect(say({ somersaults: 0.98, twists: 0.996 })).toContain('0.98 somersaults backward, 1.00 twist to the left');
  });

  it('without a turn nothing is short or over', () => {
    const still = { somersaults: 0, somersaultWord: '' as const, shortDeg: null, tiltDeg: 0 };
    expect(say({ ...still, leanDeg: 0.2 })).toContain('lands upright');
    expect(say({ ...still, leanDeg: -12.4 })).toContain('lands leaning 12° forward');
    expect(say({ ...still, leanDeg: 30 })).toContain('lands leaning 30° backward');
    expect(wordLanding({ ...base, ...still, leanDeg: -179.8 })).toBe('head down');
    const jump = engine.fly(skills['arms-in-spin']).outline;
    expect(speakSentence(jump)).toMatch(
      /^no somersault, .* twists? to the (left|right), .* lands (upright|leaning \d+° (backward|forward))$/,
    );
  });

  it('is said in degrees where that is set', () => {
    setUnits({ turning: 'degrees' });
    expect(say({ somersaults: 1.02, twists: 0.98 })).toContain(
      '367° of somersault backward, 353° of twist to the left',
    );
    setUnits({ turning: 'revolutions' });
  });
});

describe('faults', () => {
  it('of a field are said in words, with what it holds and what is allowed', () => {
    expect(wordFault(new FieldError('takeoff.velocityMPerS.up', 900, 'a number from -20 to 20 m/s'))).toBe(
      'The speed up cannot be 900.00; allowed: a number from -20 to 20 m/s',
    );
    expect(wordFault(new FieldError('schedule.blocks[2].adjustDeg.hipFlexion', 'far', 'a number'))).toBe(
      'Body shape 3, adjustDeg, Hip pike cannot be “far”; allowed: a number',
    );
    expect(wordFault(new FieldError('athlete', undefined, 'an athlete'))).toBe(
      'The athlete is missing; needed: an athlete',
    );
    expect(wordFault(new FieldError('code, half twists', '2', '2 digits'))).toBe(
      'Half twists cannot be “2”; allowed: 2 digits',
    );
  });

  it('of a body and of a flight that never lands say what to do', () => {
    expect(wordFault(new SingularBodyError('rod'))).toMatch(/^The moments of inertia.*or undo$/);
    expect(wordFault(new NoTouchdownError('nothing meets the surface within 10 s'))).toContain('never comes down');
    const file = structuredClone(skills['back-straight-full']);
    // higher than the flight gets
    flightIn(file).end = { surface: { kind: 'mat', heightM: 9 } };
    let told = '';
    try {
      engine.fly(file);
    } catch (error) {
      told = wordFault(error);
    }
    expect(told).toContain('or undo');
    expect(told).not.toMatch(/touchdown|[A-Z][a-z]+Error/);
  });
});
