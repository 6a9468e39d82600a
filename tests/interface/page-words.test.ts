// What the page says of a flight and of a fault: plurals, landings without a turn, bad input in words.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import {
  buildSkill,
  checkSkillFile,
  FieldError,
  launch,
  loadContact,
  NoTouchdownError,
  parseJson,
  parseSkill,
  SingularBodyError,
  type SkillFile,
  type SkillVerdict,
} from '../../sim/index.ts';
import { RAD } from '../../sim/math/angles.ts';
import { ENDING_WORDS } from '../../sim/words/verdict-words.ts';
import { faultTexts } from '../../src/app/say/fault-texts.ts';
import { wordFault, wordFileName } from '../../src/app/say/fault-words.ts';
import { speakSentence, speakVerdict, wordLanding } from '../../src/app/say/sentence-words.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import type { Outline } from '../../src/engine/result.ts';
import { dataOfError, errorOfData } from '../../src/jobs/message.ts';
import { setUnits } from '../../src/ui/units.ts';
import { flightIn } from '../files/parts.ts';
import { withSchedule } from '../reliability/heavy-parts.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const base: Outline = engine.fly(skills['back-straight-full']).outline;
const say = (flown: Partial<SkillVerdict['flown']>, rest: Partial<SkillVerdict> = {}): string =>
  speakVerdict({ ...base.verdict, ...rest, flown: { ...base.verdict.flown, ...flown } });

describe('the sentence', () => {
  it('one is only what prints as one', () => {
    expect(say({ somersaults: 1.004, twists: 0.25 })).toContain('1.00 somersault backward, 0.25 twists left');
    expect(say({ somersaults: 0.98, twists: 0.996 })).toContain('0.98 somersaults backward, 1.00 twist left');
  });

  it('without a turn nothing is short or past', () => {
    const { short: _, ...still } = base.verdict;
    const lean = (deg: number): string =>
      speakVerdict({ ...still, ending: { kind: 'inAir' }, flown: { ...still.flown, somersaults: 0 }, lean: deg * RAD });
    expect(lean(0.2)).toContain('ends upright');
    expect(lean(-12.4)).toContain('ends leaning 12° forward');
    expect(lean(30)).toContain('ends leaning 30° back');
    expect(wordLanding({ ...base, shortDeg: null, leanDeg: -179.8 })).toBe('head down');
    const jump = engine.fly(skills['arms-in-spin']).outline;
    expect(speakSentence(jump)).toMatch(/^No somersault, .* twists? (left|right), .* on the feet, could be held$/);
  });

  it('is said in degrees where that is set', () => {
    setUnits({ turning: 'degrees' });
    expect(say({ somersaults: 1.02, twists: 0.98 })).toContain('367° of somersault backward, 353° of twist left');
    setUnits({ turning: 'revolutions' });
  });
});

describe('faults', () => {
  it('of what cannot be flown say what can be done about it, in words of the page', () => {
    const { startsAfterEnd, order, neverLeaves, noTouchdown, noAgreement, tooFast, noApex, noTime, noHeight } =
      faultTexts;
    const said = [
      startsAfterEnd('the tuck shape', '0.30', '0.20'),
      order('the tuck shape', '0.30', 'the landing shape', '0.20'),
      ...[neverLeaves, noTouchdown, noAgreement, tooFast, noApex, noTime, noHeight],
    ];
    for (const one of said) {
      expect(one).toMatch(/\. (Move|Give|Raise|Lower|Time|Count) .*, or undo$/);
      expect(one).not.toMatch(/anchor|converge|root|schedule|block|deg\b/);
    }
  });

  it('of an order in time name a shape as the page does, not as a file', () => {
    const straight = skills['back-straight'] as SkillFile;
    const block = (shape: string, from: number, to: number) => ({
      shape,
      from: { anchor: 'takeoff', s: from },
      to: { anchor: 'takeoff', s: to },
    });
    const said = (...blocks: ReturnType<typeof block>[]): string => {
      try {
        makeEngine({ athletes, shapes }).fly(
          withSchedule(straight, 'x', ({ base }) => ({ ...(base ? { base } : {}), blocks }) as never),
        );
        return 'flown';
      } catch (error) {
        return wordFault(errorOfData(structuredClone(dataOfError(error))));
      }
    };
    expect(said(block('tShape', 0, 0.3), block('tuck', 0.2, 0.4))).toBe(
      'There must be time between the end of the shape “Straight, arms out to the sides”, at 0.30 s, and the start of the shape “Tuck, hands on the shins”, at 0.20 s, in this order. Move one, or undo',
    );
    expect(said(block('tShape', 0.3, 0.2))).toBe(
      'At 0.30 s the shape “Straight, arms out to the sides” would start after its end at 0.20 s. Move its start earlier, or undo',
    );
  });

  it('of a field are said in words, with what it holds and what is allowed', () => {
    expect(wordFault(new FieldError('takeoff.velocityMPerS.up', 900, 'a number from -20 to 20 m/s'))).toBe(
      'The speed up cannot be 900. Allowed: a number from -20 to 20 m/s',
    );
    expect(wordFault(new FieldError('schedule.blocks[2].adjustDeg.hipFlexion', 'far', 'a number'))).toBe(
      'Body shape 3, changed angle, Hip pike cannot be “far”. Allowed: a number',
    );
    expect(wordFault(new FieldError('athlete', undefined, 'an athlete'))).toBe(
      'The athlete is missing. Needed: an athlete',
    );
    expect(wordFault(new FieldError('code, half twists', '2', '2 digits'))).toBe(
      'The count of half twists cannot be “2”. Allowed: 2 digits',
    );
  });

  describe('of a file', () => {
    const file = skills['giant-double-straight'] as unknown as Record<string, unknown>;
    const [swing, flight] = file.phases as Record<string, unknown>[];
    const swung = (part: Record<string, unknown>): string =>
      JSON.stringify({ ...file, phases: [{ ...swing, ...part }, flight] });
    const bad: [what: string, text: string, said: string | RegExp][] = [
      ['nothing', ' \n', /^The file is empty\./],
      [
        'broken JSON',
        '{"format": "shapeflight-skill",\n  "version": 2\n  "title"',
        /^The file is not valid JSON: expected "," or "}" in line 3, column 3, found "title"\. It may have been cut off, or changed by hand$/,
      ],
      [
        'the same key twice',
        '{"phases": [{\n"kind": "swing",\n"kind": "swing"}]}',
        'The kind of phase 1 is given twice; the second time in line 3. Each field may be given once',
      ],
      [
        'a newer version',
        JSON.stringify({ ...file, version: 3 }),
        'The file has version 3, from a newer Shapeflight; this page reads versions up to 2. Reload the page to get the newer one',
      ],
      [
        'a version that is none',
        JSON.stringify({ ...file, version: 'two' }),
        'The version of the file cannot be “two”. Allowed: a whole number from 1 to 2',
      ],
      [
        'a wrong type',
        JSON.stringify({ ...file, title: { a: 1 } }),
        /^The title cannot be an object with a\. Allowed: text of/,
      ],
      [
        'a value out of range',
        swung({ releaseLateS: -0.75 }),
        'The delay of the release cannot be −0.75. Allowed: a number from -0.5 to 0.5 s',
      ],
      [
        'one deep inside',
        swung({ lateHand: { hand: 'left', lateS: 3 } }),
        'The late hand of the swing, delay cannot be 3. Allowed: a number from 0 to 0.1 s',
      ],
      [
        'an unknown field',
        JSON.stringify({ ...file, tilte: 'x' }),
        'The file has a field “tilte” that is not known here. Look for a slip in its name, or delete it',
      ],
      [
        'an unknown field whose name looks like a path',
        swung({ 'a.b["c"].d[0]': 'x' }),
        /^Phase 1 has a field “a\.b\["c"\]\.d\[0\]” that is not known here\./,
      ],
      ['an unknown field of a phase', swung({ grip: 'x' }), /^Phase 1 has a field “grip” that is not known here\./],
      [
        'a long text',
        JSON.stringify({ ...file, athlete: 'a'.repeat(200) }),
        `The athlete cannot be “${'a'.repeat(60)}…”. Allowed: `,
      ],
      ['an estimate sheet', '{"format": "shapeflight-sheet"}', 'The file is an estimate sheet. Open it in Estimate'],
      ['another kind of file', '{"format": "picture"}', /^The file is of another kind: “picture”\. A skill file has/],
      ['no kind of file', '{}', /^The file does not say what it is: its field “format” is missing\./],
      ['a list', '[1, 2, 3]', 'The file cannot be a list of 3. Allowed: a JSON object'],
    ];
    it.each(bad)('with %s says where, what and what is allowed', (_, text, said) => {
      let found = '';
      try {
        checkSkillFile(parseJson(text));
      } catch (error) {
        found = wordFault(error);
      }
      if (typeof said === 'string') expect(found.startsWith(said)).toBe(true);
      else expect(found).toMatch(said);
      expect(found).not.toMatch(/phases\[|undefined|\[object|\d\.00/);
    });
  });

  it('of a swing say where it gets to and which key is late, in words', async () => {
    const contact = await loadContact();
    const wordOf = (change: (swing: Extract<SkillFile['phases'][number], { kind: 'swing' }>) => void): string => {
      const file = structuredClone(skills['giant-double-straight']);
      const [swing] = file.phases;
      if (swing.kind !== 'swing') throw new Error('no swing');
      change(swing);
      try {
        launch(buildSkill(parseSkill(file, { athletes, shapes })), contact);
      } catch (error) {
        return wordFault(error);
      }
      return '';
    };
    const far = wordOf((swing) => {
      swing.release = { atDeg: 3000 };
    });
    const late = wordOf((swing) => {
      const { keys } = swing.moves;
      // into the next round
      keys.push({ ...keys[0], atDeg: (keys[0].atDeg ?? 0) + 400, deg: keys[0].deg + 10 });
    });
    expect(late).toMatch(/^The swing cannot be swung: in round 2 key \d of the \w+ does not come after .*undo$/);
    expect(far).toMatch(
      /^The swing does not get to its release at 3\D?000° within [\d.]+ s: it gets as far as [\d\s]+°\..*undo$/,
    );
  });

  it('of a body and of a flight that never lands say what to do', () => {
    expect(wordFault(new SingularBodyError('rod'))).toMatch(/^The moments of inertia.*or undo$/);
    expect(wordFault(new NoTouchdownError('nothing meets the surface within 10 s'))).toContain('never comes down');
    const file = structuredClone(skills['back-straight-full']);
    // higher than the flight gets
    flightIn(file).end = { surface: { kind: 'mat', heightM: 9 } };
    let shown = '';
    try {
      engine.fly(file);
    } catch (error) {
      shown = wordFault(error);
    }
    expect(shown).toContain('or undo');
    expect(shown).not.toMatch(/touchdown|[A-Z][a-z]+Error/);
  });
});

it('the glossary names every ending as it is said', () => {
  const row = readFileSync('docs/glossary.md', 'utf8').match(/^\| ending \|.*$/m)?.[0] ?? '';
  for (const word of Object.values(ENDING_WORDS)) expect(row).toContain(word()[0]);
});

it('the name of a file is read in its order, on one line, and as far as a name is looked at', () => {
  expect(wordFileName('back tuck.json')).toBe('back tuck.json');
  expect(wordFileName('\u202enosj.\u0000\nkcut')).toBe(' nosj. kcut');
  expect(wordFileName('n'.repeat(5000))).toBe(`${'n'.repeat(60)}…`);
});
