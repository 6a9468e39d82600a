// Bounces of a ready chain against the flights on both sides; what small errors move; the card and what is not known of a contact.
import { describe, expect, test } from 'vitest';
import { type BounceEnd, calcBedSensitivity, calcBounce } from '../../sim/skill/contact-bounces.ts';
import { calcContactReport } from '../../sim/skill/contact-report.ts';
import { contactCard, wordNotKnown } from '../../sim/words/contact-card.ts';
import { flightsOf } from '../presets/flown.ts';

describe('bounce after bounce', () => {
  const { legs } = flightsOf('trampoline-jump-tuck-full');

  test('rise, height won and travel are those of the flights; what the legs give is the energy that the flights have more', () => {
    legs.forEach(({ course, whole }, k) => {
      const { flight, contact } = whole;
      if (!course || !contact) return;
      const b = calcBounce(course, flight);
      const [, up] = flight.v_WScm_W0;
      const [, down] = contact.v_before_W;
      expect(b.rise).toBeCloseTo(up ** 2 / 19.62, 9);
      expect(b.won).toBeCloseTo((up ** 2 - down ** 2) / 19.62, 9);
      const { before, after } = course.facts.account;
      const sum = (e: typeof before): number => e.moving + e.turning + e.height;
      expect(b.legs * flight.body.mass).toBeCloseTo(sum(after) - sum(before), 6);
      const next = legs[k + 1];
      // where the next push is: the same feet in the frame of the chain
      if (next) expect(Math.hypot(b.travel.x, b.travel.z)).toBeLessThan(1.5);
    });
  });

  test('each contact is a spring of its speed and time: depth, peak and stiffness of one bed within a tenth', () => {
    const bounces = legs.flatMap(({ course, whole }) => (course ? [calcBounce(course, whole.flight)] : []));
    expect(bounces.length).toBeGreaterThanOrEqual(2);
    const k = bounces.map(({ stiffness = Number.NaN }) => stiffness);
    expect(Math.max(...k) / Math.min(...k)).toBeLessThan(1.1);
    for (const { depth = Number.NaN, peak = Number.NaN } of bounces) {
      expect(depth).toBeGreaterThan(0.3);
      expect(peak).toBeGreaterThan(4);
    }
  });
});

test('an error that moves each place by twice the one before moves the fourth eight times as far; one that ends the series ends the list', () => {
  const end = (x: number, somersault: number): BounceEnd => ({ x, z: 0, somersault, tilt: 0, twist: 0 });
  const fly = (e: number | undefined): BounceEnd[] => {
    if (e === 99) return [end(0, 0)];
    return [1, 2, 4, 8].map((f, i) => end(0.3 * i + f * (e ?? 0), f * (e ?? 0)));
  };
  const [small, ends] = calcBedSensitivity([0.01, 99], fly);
  expect(small.moved.map(({ place }) => Number(place.toFixed(9)))).toEqual([0.01, 0.02, 0.04, 0.08]);
  expect(small.moved[3].somersault).toBeCloseTo(0.08, 12);
  expect(ends.moved.length).toBe(1);
});

test('a card has time, mean, peak with its basis, work with what was brought, and turning; what is not known is said', () => {
  const { legs } = flightsOf('trampoline-jump-tuck-full');
  const leg = legs.find(({ course }) => course);
  const report = leg && calcContactReport(leg.whole);
  if (!report?.contact?.course) throw new Error('no contact');
  const card = contactCard(report);
  expect(card.map(({ label }) => label)).toEqual([
    'Time',
    'Mean force',
    'Peak, upward',
    'Bed gives',
    'Net work',
    'Turns it by',
  ]);
  expect(card[0].under).toBe('usual 0.28 to 0.35 (from memory)');
  expect(card[2].under).toBe('of one linear spring');
  expect(card[4].under).toMatch(/^arrived with \d+\.\d; net of what the bed held$/);
  expect(wordNotKnown(report.contact.course.unknowns)).toContain(
    'how force and body go between entry and exit is assumed: peak and way go by that, and only the mean place of the force is judged',
  );
});
