// Two ways of a skill beside each other: what is between their curves, how many times faster, and why that is not what the moments say.
import { describe, expect, it } from 'vitest';
import { shapes, skills } from '../../presets/index.ts';
import { wordWay } from '../../sim/words/change-answer-words.ts';
import type { Beside } from '../../src/app/beside.ts';
import { calcBesideRows, calcTurned, splitRatio } from '../../src/app/beside-numbers.ts';
import { wordWhy } from '../../src/app/beside-why-words.ts';
import {
  calcWrittenMore,
  wordBesideMoment,
  wordBesideRate,
  wordMoreTurn,
  wordTurns,
} from '../../src/app/beside-words.ts';
import { makeComparing } from '../../src/engine/compare.ts';
import type { FlightResult } from '../../src/engine/result.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const comparing = makeComparing(engine, shapes);

interface Case {
  readonly id: string;
  readonly own: FlightResult;
  readonly beside: Beside;
}
const cases: Case[] = Object.entries(skills).flatMap(([id, file]) => {
  const own = engine.fly(file);
  return comparing.offers(own).flatMap((change): Case[] => {
    const result = comparing.flyChange(own, change, id);
    const answer = comparing.answerChange(change, own, result);
    const beside: Beside = {
      letter: 'B',
      result,
      turn: change.turn,
      own: wordWay(change.own),
      other: wordWay(change.other),
      held: change.held,
      ratio: answer.kind === 'notDefined' ? undefined : answer.ratio,
      verdict: () => result.outline.verdict,
    };
    return [{ id: `${id} ${change.kind}`, own, beside }];
  });
});
const find = (id: string): Case => {
  const found = cases.find((one) => one.id === id);
  if (!found) throw new RangeError(id);
  return found;
};
const middle = ({ beside: { held } }: Case): number => (held.from + held.to) / 2;
const rowsAt = ({ own, beside }: Case, t: number) => calcBesideRows(own.frames, beside.result.frames, t, beside.turn);

/** rev: a trapezoid over frames 1/240 s apart against the counted angle; measured 2e-4 (arms that spread in 0.15 s). */
const AREA_SAME = 1e-3;
/** Of a product of ratios against the ratio of the printed rates; measured 4e-6: between two frames a product is not straight. */
const PARTS_SAME = 1e-3;

/** rev: the area under a rate by trapezoids, up to its own landing. */
const areaUnder = (f: FlightResult['frames'], turn: Beside['turn']): number => {
  const rate = turn === 'twist' ? f.twistRate : f.somersaultRate;
  let area = 0;
  for (let i = 1; i < f.n; i++) area += ((rate[i] + rate[i - 1]) / 2) * (f.t[i] - f.t[i - 1]);
  return area / (2 * Math.PI);
};

describe('what is between two rates', () => {
  it.each(cases)('$id: the area that is tinted is what one counts more than the other', ({ own, beside }) => {
    const [a, b] = [own.frames, beside.result.frames];
    const { turn } = beside;
    const way = areaUnder(a, turn) < 0 ? -1 : 1;
    const more = calcTurned(a, a, turn) - calcTurned(a, b, turn);
    expect(Math.abs(way * (areaUnder(a, turn) - areaUnder(b, turn)) - more)).toBeLessThan(AREA_SAME);
  });

  it.each(cases)(
    '$id: who subtracts the two counts of the sentences finds what is written between the curves',
    ({ own, beside: { result, turn } }) => {
      const countOf = ({ outline: { verdict } }: FlightResult): number =>
        (turn === 'twist' ? verdict.flown.twists : verdict.flown.somersaults) ?? Number.NaN;
      const [a, b] = [own, result].map((one) => Number(wordTurns(countOf(one))));
      const more = calcWrittenMore(
        calcTurned(own.frames, own.frames, turn),
        calcTurned(own.frames, result.frames, turn),
      );
      expect(Math.abs(more)).toBeCloseTo(Math.abs(a - b), 9);
      expect(wordMoreTurn(more, turn)).toBe(`${Math.abs(a - b).toFixed(2)} ${a > b ? 'more' : 'less'} ${turn}`);
    },
  );

  it('is said as more or less, and not at all where it is nothing', () => {
    expect(wordMoreTurn(0.441, 'twist')).toBe('0.44 more twist');
    expect(wordMoreTurn(-0.12, 'somersault')).toBe('0.12 less somersault');
    expect(wordMoreTurn(0.001, 'twist')).toBe('');
  });
});

describe('how many times faster', () => {
  it('a jump: the sentence, the rates and the moments agree while the arms are held, and nothing is asked', () => {
    const one = find('arms-in-spin arms');
    const rows = rowsAt(one, middle(one));
    const ratio = one.beside.ratio?.toFixed(1);
    expect(wordBesideRate(rows, one.beside)).toEqual({ lead: `${ratio} times faster`, rest: 'than arms wide' });
    expect(wordBesideMoment(rows.moment, one.beside)).toEqual({
      lead: `${ratio} times smaller`,
      rest: 'than arms wide',
    });
    expect(rows.momentum).toEqual({ kind: 'same' });
    expect(wordWhy(rows, one.beside)).toBeUndefined();
  });

  it('while the arms are on their way the number is that of the instant, and it is said that the sentence means the held shape', () => {
    const one = find('arms-in-spin arms');
    const rows = rowsAt(one, 0.19);
    if (rows.rate.kind !== 'more') throw new Error('faster');
    const [now, mean] = [rows.rate.times.toFixed(1), one.beside.ratio?.toFixed(1)];
    expect(now).not.toBe(mean);
    const why = wordWhy(rows, one.beside);
    expect(why?.ask.startsWith(`Why ${now}, not `)).toBe(true);
    expect(why?.sentences.at(-1)).toMatch(
      new RegExp(
        `^${now} is at this instant: the ${mean} above is the mean while both shapes are held, 0\\.\\d\\d to 0\\.\\d\\d s\\.$`,
      ),
    );
  });

  it('a way that stops or turns back is said in words, never as a ratio', () => {
    const one = find('arms-in-spin arms');
    const rows = rowsAt(one, middle(one));
    const of = (rate: typeof rows.rate, v: number) =>
      wordBesideRate({ ...rows, rate, other: { ...rows.other, rate: v } }, one.beside).lead;
    expect(of({ kind: 'fromZero' }, 0.01)).toBe('B hardly turns');
    expect(of({ kind: 'turned' }, -0.5)).toBe('B turns back');
    expect(of({ kind: 'toZero' }, 1)).toBe('A hardly turns');
  });
});

describe('why the rates are not as the moments', () => {
  it('the parts multiplied are the ratio of the rates, at every instant of every ready skill', () => {
    let seen = 0;
    for (const one of cases)
      for (const share of [0.1, 0.3, 0.5, 0.7, 0.9]) {
        const parts = splitRatio(rowsAt(one, share * one.own.flight.duration));
        if (!parts) continue;
        seen++;
        const product = parts.moments * parts.momentum * parts.carried * parts.share;
        expect(Math.abs(product / parts.rates - 1), `${one.id} ${share}`).toBeLessThan(PARTS_SAME);
      }
    expect(seen).toBeGreaterThan(100);
  });

  it('w_y = twist rate + somersault rate times sin tilt: what is left of the spin is the twist', () => {
    for (const one of cases.filter(({ beside }) => beside.turn === 'twist'))
      for (const share of [0.2, 0.5, 0.8]) {
        const { own, other } = rowsAt(one, share * one.own.flight.duration);
        for (const { rate, spin, share: over } of [own, other])
          if (Number.isFinite(rate)) expect(Math.abs(spin - over - rate), one.id).toBeLessThan(1e-3);
      }
  });

  it('a double twist: more momentum about the long axis by more tilt, and the somersault in the spin', () => {
    const one = find('back-straight-double arms');
    const rows = rowsAt(one, middle(one));
    const why = wordWhy(rows, one.beside);
    if (rows.rate.kind !== 'more' || rows.moment.kind !== 'less') throw new Error('faster, smaller');
    expect(why?.ask).toBe(`Why ${rows.rate.times.toFixed(1)}, not ${rows.moment.times.toFixed(1)}?`);
    expect(why?.sentences[0]).toBe(
      `More of the angular momentum is about the long axis in A, ${rows.own.about.toFixed(1)} against ${rows.other.about.toFixed(1)} kg·m²/s, as the body is tilted more (${rows.own.tilt.toFixed(0)}° against ${rows.other.tilt.toFixed(0)}°).`,
    );
  });

  it('where the somersault in the spin is what matters it is said with its numbers', () => {
    const one = find('back-straight-full arms');
    const t = 0.42;
    const { own, other } = rowsAt(one, t);
    expect(wordWhy(rowsAt(one, t), one.beside)?.sentences).toContain(
      `Part of the spin about the long axis is the somersault of a tilted body, ${own.share.toFixed(2)} of ${own.spin.toFixed(2)} rev/s in A and ${other.share.toFixed(2)} of ${other.spin.toFixed(2)} in B: only the rest is twist.`,
    );
  });

  it('what is asked has an answer that leads from the one number to the other, at every instant of every ready skill', () => {
    let asked = 0;
    for (const one of cases)
      for (let k = 1; k < 40; k++) {
        const t = (k / 40) * one.own.flight.duration;
        const rows = rowsAt(one, t);
        const why = wordWhy(rows, one.beside);
        if (!why) continue;
        asked++;
        expect(why.sentences.length, `${one.id} ${t}`).toBeGreaterThan(0);
        expect(why.sentences.length).toBeLessThanOrEqual(4);
        const [, x, y] = /^Why ([\d.]+), not ([\d.]+)\?$/.exec(why.ask) ?? [];
        expect(x, why.ask).not.toBe(y);
        const parts = splitRatio(rows);
        const causes = why.sentences.filter((s) => !s.includes('at this instant'));
        if (causes.length === 0 || !parts) continue;
        const said = causes.reduce((product, s) => {
          if (s.includes('another axis')) return product * (rows.other.across / rows.own.across / parts.moments);
          if (s.includes('of the angular momentum')) return product * parts.momentum;
          return product * (s.startsWith('Moving') ? parts.carried : parts.share);
        }, parts.moments);
        // nearer to the rates by two thirds of what was between at least
        const [before, after] = [parts.moments, said].map((v) => Math.abs(Math.log(v / parts.rates)));
        expect(after, `${one.id} ${t.toFixed(3)} ${why.sentences.join(' ')}`).toBeLessThanOrEqual(before / 3 + 1e-9);
      }
    expect(asked).toBeGreaterThan(50);
  });
});
