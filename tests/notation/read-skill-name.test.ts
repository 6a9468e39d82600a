// Skills as people ask for them. Every row was written by hand from what the trade means (common practice, no source), before it was read.
import { describe, expect, it, test } from 'vitest';
import { readAsked, type SkillPlace, wordTrade } from '../../sim/index.ts';
import { readLooseCode } from '../../sim/notation/loose-code.ts';
import { formatTrampolineCode, type TrampolineCode } from '../../sim/notation/trampoline-code.ts';
import { refusalOf } from './refusal.ts';

type Row = [text: string, meant: string, place?: SkillPlace];

/** "8 02 o backward floor"; several are offered in this order */
function say(text: string, place?: SkillPlace): string[] {
  const asked = readAsked(text, place);
  const specs = asked.kind === 'one' ? [asked.spec] : asked.offers.map(({ spec }) => spec);
  return specs.map((one) => `${one.code} ${one.direction} ${one.place}`);
}

const ONE: readonly Row[] = [
  // codes, strict and closed up
  ['8 02 /', '8 02 / backward trampoline'],
  ['802/', '8 02 / backward trampoline'],
  ['8 -1 o', '8 01 o forward trampoline'],
  ['811O', '8 11 o backward trampoline'],
  ['12001 o', '12 001 o forward trampoline'],
  ['8 02 straight', '8 02 / backward trampoline'],
  ['8 11 tucked', '8 11 o backward trampoline'],
  ['8 o', '8 00 o backward trampoline'],
  ['8 0 <', '8 00 < backward trampoline'],
  // a code is of the bed, wherever it is typed
  ['8 02 o', '8 02 o backward trampoline', 'floor'],
  ['3 0 /', '3 0 / backward trampoline', 'floor'],
  // dives
  ['107b', '107B forward platform'],
  ['5 2 5 3 B', '5253B backward board'],
  ['103 pike', '103B forward board'],
  ['dive 105C', '105C forward board'],
  ['105C', '105C forward platform', 'platform'],
  ['105C', '105C forward board', 'floor'],
  ['612B', '612B forward platform'],
  ['inward two and a half, tuck', '405C forward board'],
  ['inward dive pike', '401B forward board'],
  ['back dive straight', '201A backward board'],
  ['reverse somersault tuck', '302C backward board'],
  ['forward 3 1/2 somersaults piked', '107B forward platform'],
  ['armstand double back tuck', '624C backward platform'],
  ['double back tuck', '204C backward board', 'board'],
  // singles
  ['back tuck', '4 0 o backward floor'],
  ['Tucked back', '4 0 o backward floor'],
  ['PIKE BACK', '4 0 < backward floor'],
  ['layout back', '4 0 / backward floor'],
  ['back lay-out', '4 0 / backward floor'],
  ['front tuck', '4 0 o forward floor'],
  ['back straight', '4 0 / backward trampoline', 'trampoline'],
  ['full', '4 2 / backward floor'],
  ['full twist', '4 2 / backward floor'],
  ['full twisting layout', '4 2 / backward floor'],
  ['back full', '4 2 / backward trampoline', 'trampoline'],
  ['full on trampoline', '4 2 / backward trampoline'],
  ['front full', '4 2 / forward floor'],
  ['half', '4 1 / backward floor'],
  ['Double Full', '4 4 / backward floor'],
  ['full, double', '8 02 o backward floor|8 11 o backward floor|8 20 o backward floor'],
  ['double twist', '4 4 / backward floor'],
  ['straight back double full', '4 4 / backward floor'],
  ['triple full', '4 6 / backward floor'],
  ['back one and a half twists', '4 3 / backward floor'],
  ['back 2 1/2', '4 5 / backward trampoline', 'trampoline'],
  ['barani', '4 1 / forward trampoline'],
  ['piked barani', '4 1 < forward trampoline'],
  ['rudi', '4 3 / forward trampoline'],
  ['Rudy', '4 3 / forward trampoline'],
  ['randi', '4 5 / forward trampoline'],
  ['adolph', '4 7 / forward trampoline'],
  ['crash dive', '3 0 / forward trampoline'],
  ['lazy back', '3 0 / backward trampoline'],
  // doubles
  ['double back', '8 00 o backward floor'],
  ['double tuck', '8 00 o backward floor'],
  ['pike double back', '8 00 < backward floor'],
  ['double straight', '8 00 / backward floor'],
  ['double layout', '8 00 / backward floor'],
  ['double front', '8 00 o forward floor'],
  ['full-in', '8 20 o backward floor'],
  ['full-in back-out', '8 20 o backward floor'],
  ['full-out', '8 02 o backward floor'],
  ['back-in full-out', '8 02 o backward floor'],
  ['back double straight full out', '8 02 / backward floor'],
  ['full out double back straight', '8 02 / backward floor'],
  ['double full-out', '8 02 o backward floor'],
  ['double-full-out', '8 04 o backward floor'],
  ['half-in half-out', '8 11 o backward floor'],
  ['half out half in', '8 11 o backward floor'],
  ['full-in full-out', '8 22 o backward floor'],
  ['full in full out', '8 22 o backward floor'],
  ['FULL IN FULL OUT PIKED', '8 22 < backward floor'],
  ['full-in double-full-out', '8 24 o backward floor'],
  ['half out', '8 01 o backward floor'],
  ['half out', '8 01 o forward trampoline', 'trampoline'],
  ['double straight half out', '8 01 / backward floor'],
  ['barani-out', '8 01 o forward trampoline'],
  ['barani out pike', '8 01 < forward trampoline'],
  ['rudi-out', '8 03 o forward trampoline'],
  ['half-in rudi-out', '8 13 o backward trampoline'],
  ['full-in half-out', '8 21 o forward trampoline', 'trampoline'],
  ['full in rudi out piked', '8 23 < forward trampoline'],
  ['rudi-out fliffis', '8 03 o forward trampoline'],
  // triples
  ['triple back', '12 000 o backward trampoline'],
  ['triple tuck', '12 000 o backward trampoline'],
  ['half-out triffis', '12 001 o forward trampoline'],
  ['triffis, half-in half-out, piked', '12 101 < backward trampoline'],
];

test.each<Row>(ONE)('%s is %s', (text, meant, place) => expect(say(text, place)).toEqual(meant.split('|')));

/** each with what the buttons say */
type Offered = [text: string, offers: readonly string[], place?: SkillPlace];
const OFFERS: readonly Offered[] = [
  ['8 1 o', ['8 01 o: Barani-out, tuck', '8 10 o: Half-in, tuck']],
  ['8 1 <', ['8 01 <: Barani-out, pike', '8 10 <: Half-in, pike']],
  ['8 2 o', ['8 02 o: Full-out, tuck', '8 11 o: Half-in half-out, tuck', '8 20 o: Full-in, tuck']],
  [
    '12 1 o',
    ['12 001 o: Barani-out triffis, tuck', '12 010 o: Half-middle triffis, tuck', '12 100 o: Half-in triffis, tuck'],
  ],
  [
    '12 11 o',
    [
      '12 011 o: Half-middle half-out triffis, tuck',
      '12 101 o: Half-in half-out triffis, tuck',
      '12 110 o: Half-in half-middle triffis, tuck',
    ],
  ],
  ['8 11', ['8 11 o: Half-in half-out, tuck', '8 11 <: Half-in half-out, pike', '8 11 /: Half-in half-out, straight']],
  ['4 2', ['4 2 /: Back full, straight', '4 2 <: Back full, pike', '4 2 o: Back full, tuck']],
  ['8', ['8 00 o: Double back, tuck', '8 00 <: Double back, pike', '8 00 /: Double back, straight']],
  ['107', ['107B: 107B, forward 3 1/2 somersaults, pike', '107C: 107C, forward 3 1/2 somersaults, tuck']],
  ['tuck', ['Back somersault, tuck: Back somersault, tuck', 'Front somersault, tuck: Front somersault, tuck']],
  ['fliffis front', ['8 01 o: Barani-out, tuck', '8 03 o: Rudi-out, tuck', '8 21 o: Full-in half-out, tuck']],
  ['double full out', ['8 02 o: Full-out, tuck', '8 04 o: Double-full-out, tuck'], 'trampoline'],
  ['front one and a half, pike', ['Rudi, pike: Rudi, pike', '103B: 103B, forward 1 1/2 somersaults, pike']],
];

test.each<Offered>(OFFERS)('%s offers what it can mean', (text, offers, place) => {
  const asked = readAsked(text, place);
  if (asked.kind === 'one') throw new Error(`${text} is taken for ${asked.spec.code}`);
  expect(asked.reason).toBeUndefined();
  expect(asked.offers.map((one) => `${one.text}: ${one.title}`)).toEqual(offers);
});

test.each([
  ['fliffis', 5, /^8 (?!00)/],
  ['piked triffis', 3, /^12 (?!000).*<$/],
] as const)('%s offers its usual ones', (text, least, code) => {
  const asked = readAsked(text);
  if (asked.kind === 'one') throw new Error('one skill');
  expect(asked.offers.length).toBeGreaterThanOrEqual(least);
  for (const { spec } of asked.offers) expect(spec.code).toMatch(code);
});

describe('what no draft can be says why, and offers the nearest', () => {
  test.each([
    ['cody', /begins lying on the front/, ['4 0 o backward trampoline']],
    ['ball-out', /begins lying on the back/, ['5 0 o forward trampoline', '4 0 o forward trampoline']],
    ['whip', /low and arched/, ['4 0 / backward floor']],
    ['arabian', /before the first quarter/, ['4 1 / backward floor', '4 0 o forward floor']],
    ['double arabian', /before the first quarter/, ['8 10 o backward floor', '8 00 o forward floor']],
    ['back barani', /turns forward/, ['4 1 / forward trampoline', '4 1 / backward trampoline']],
    ['back rudi-out', /turns forward/, ['8 03 o forward trampoline', '8 03 o backward trampoline']],
  ] as const)('%s', (text, reason, nearest) => {
    const asked = readAsked(text);
    expect(asked).toMatchObject({ kind: 'offers', reason: expect.stringMatching(reason) });
    expect(say(text)).toEqual(nearest);
  });
  it('a crash dive on the floor: the bed is offered', () => {
    expect(readAsked('crash dive', 'floor')).toMatchObject({ reason: expect.stringContaining('only a bed') });
    expect(say('crash dive', 'floor')).toEqual(['3 0 / forward trampoline']);
  });
});

describe('what means nothing is named', () => {
  test.each([
    ['flibble', 'name', 'flibble'],
    ['back handspring', 'name', 'handspring'],
    ['double back wobbled', 'name', 'wobbled'],
    ['8 111 o', 'code, half twists', '111'],
    ['4 01 o', 'code, half twists', '01'],
    ['20 0 o', 'code, quarter somersaults', '20'],
    ['4 1 x', 'code, shape', 'x'],
    ['5937B', 'dive, take-off group', '9'],
    ['in', 'name', 'in'],
    ['', 'name', undefined],
  ])('%s', (text, field, value) => expect(refusalOf(() => readAsked(text))).toMatchObject({ field, value }));
  test('the nearest known word is asked for', () => {
    expect(refusalOf(() => readAsked('fulll')).detail).toEqual({ kind: 'noName', near: 'full' });
    expect(refusalOf(() => readAsked('baranni out')).message).toContain('did you mean "barani"');
  });
  test.each(['tuck pike', 'back front tuck', 'full-in full-in', 'single full-out', 'full-out half'])(
    '%s contradicts itself',
    (text) => expect(refusalOf(() => readAsked(text)).field).toBe('name'),
  );
});

/** Up to three half twists a somersault. */
const codes = (['tuck', 'pike', 'straight'] as const).flatMap((shape) =>
  [1, 2, 3].flatMap((n) =>
    Array.from({ length: 4 ** n }, (_, k): TrampolineCode => {
      const halfTwists = Array.from({ length: n }, (_, i) => Math.floor(k / 4 ** i) % 4);
      return { quarters: 4 * n, halfTwists, shape };
    }),
  ),
);

test('what a code is called in the trade is read as that code again', () => {
  const off: string[] = [];
  let read = 0;
  for (const code of codes)
    for (const way of ['backward', 'forward'] as const) {
      const n = code.halfTwists.length;
      const [word] = wordTrade({ direction: way, somersaults: n, halfTwists: code.halfTwists });
      // the words of multiples with twist do not say how many somersaults, nor whether they began forward
      const text = [
        n === 3 ? 'triple' : n === 2 ? 'double' : '',
        way === 'forward' ? 'front' : 'back',
        word,
        code.shape,
      ];
      const asked = readAsked(
        text
          .filter(Boolean)
          .join(' ')
          .replace(/(double|triple) (front|back) \1 \2/, '$1 $2'),
        'trampoline',
      );
      const found = asked.kind === 'one' ? `${asked.spec.code} ${asked.spec.direction}` : 'offers';
      if (found !== `${formatTrampolineCode(code)} ${way}`) off.push(`${text.join(' ')}: ${found}`);
      read++;
    }
  expect(read).toBe(2 * 3 * (4 + 16 + 64));
  expect(off).toEqual([]);
});

test('a strict code, spaced or closed, is itself', () => {
  for (const code of codes) {
    expect(readLooseCode(formatTrampolineCode(code))).toEqual([code]);
    expect(readLooseCode(formatTrampolineCode(code).replaceAll(' ', ''))).toEqual([code]);
  }
});
