/**
 * What is usual where athletes take off, by place: contact time, speeds, force, angular momentum. Each range says what it rests on: "published" was read in a
 * publication's own abstract or in a secondary copy, "usual" is from memory with the work that is remembered, "computed" follows from those by mechanics,
 * "judgement" is ours. Outside a range there is a caution, never a stop. SI; speeds along count in the direction of travel.
 */
import type { Body } from '../body/body.ts';
import type { TakeoffPlace } from '../contact/impulse-presets.ts';

/** Hands on the floor are asked other things than feet. */
export type RangedPlace = TakeoffPlace | 'floorHands';

export const rangedPlace = (place: TakeoffPlace, by: 'hands' | 'feet'): RangedPlace =>
  place === 'floor' && by === 'hands' ? 'floorHands' : place;

export type RangeBasis = 'published' | 'usual' | 'computed' | 'judgement';

export interface ContactRange {
  readonly low: number;
  readonly high: number;
  readonly basis: RangeBasis;
  readonly source: string;
}

interface PlaceRanges {
  /** s */
  readonly time?: ContactRange;
  /** m/s */
  readonly alongIn?: ContactRange;
  readonly alongOut?: ContactRange;
  readonly upOut: ContactRange;
  /** mean upward force over the contact, body weights */
  readonly meanUp?: ContactRange;
  /** peak upward, body weights */
  readonly peakUp?: ContactRange;
  /** angular momentum over mass and stature squared, 1/s */
  readonly momentum: ContactRange;
  /** J/kg that a contact adds to what the athlete brings; left out where nothing is known of it */
  readonly work?: ContactRange;
  /** peak over mean of the force: upward, along */
  readonly peakOverMean: { readonly up: ContactRange; readonly along: ContactRange };
}

const usual = (low: number, high: number, source: string): ContactRange => ({ low, high, basis: 'usual', source });
const computed = (low: number, high: number, source: string): ContactRange => ({
  low,
  high,
  basis: 'computed',
  source,
});
const published = (low: number, high: number, source: string): ContactRange => ({
  low,
  high,
  basis: 'published',
  source,
});
const judgement = (low: number, high: number): ContactRange => ({
  low,
  high,
  basis: 'judgement',
  source: 'our judgement',
});

const FLOOR = 'elite, from memory of Brüggemann 1987, Hwang 1990, Geiblinger 1995';
const HANDSPRING = 'Penitente, Merni & Sands 2011, Gym Coach 4:1: the best of 5 women, back handsprings';
const BOARD = 'elite vaults, from memory of Takei 1988 to 2003, Kwon 1990, Koh 2003';
const TABLE = 'elite vaults, from memory of Takei, Kwon, Farana';
const DIVING = '3 m, elite, from memory of Miller 1984, Sanders & Wilson 1988';
const SANO = 'Sano and others 2007, J Sports Sci 25:381, handspring vaults of men, 500 Hz';
/** A force that rises and falls as half a sine has pi / 2 of its mean; measured ones have more. */
const PEAK = judgement(Math.PI / 2, 2.2);
const PEAKS = { up: PEAK, along: PEAK };
/** More than this is cautioned, J/kg: by the speeds and times above a hard take-off adds 1 to 9. */
const WORK = computed(Number.NEGATIVE_INFINITY, 10, 'computed from speeds and times that are from memory');

export const PLACE_RANGES: Readonly<Record<RangedPlace, PlaceRanges>> = {
  floor: {
    time: usual(0.1, 0.14, FLOOR),
    alongIn: published(0, 7, 'King & Yeadon 2004, J Biomech: the realistic maximum of one elite man'),
    alongOut: usual(2.2, 3.5, FLOOR),
    upOut: usual(3.8, 5.2, FLOOR),
    meanUp: computed(4.5, 7.3, 'from -1 to 3.8 to 5.2 m/s in 0.10 to 0.14 s'),
    momentum: computed(0, 0.66, 'a double straight of 1.85 turns in 0.95 to 1.0 s, the moment of this body'),
    work: WORK,
    peakOverMean: PEAKS,
  },
  floorHands: {
    alongIn: published(0, 3.4, HANDSPRING),
    alongOut: published(0, 2.2, HANDSPRING),
    upOut: published(0, 1, HANDSPRING),
    peakUp: published(
      2.77,
      4.37,
      'Calgary 2003, practice study: 3.57 ± 0.80 of back handsprings, 4 gymnasts; taken to be of the hands',
    ),
    momentum: { ...judgement(0, 0.66), source: 'our judgement: as much as leaves the floor in any somersault' },
    work: WORK,
    peakOverMean: PEAKS,
  },
  springboard: {
    time: usual(0.1, 0.14, BOARD),
    alongIn: usual(6.8, 8.7, 'elite, from memory of the tables of Schärer 2019, PLoS One 0213310 and 0225975'),
    alongOut: usual(3.2, 5.3, BOARD),
    upOut: usual(3.2, 4.4, BOARD),
    meanUp: computed(4.2, 6.6, 'from -1 to 3.4 to 4.4 m/s in 0.10 to 0.14 s'),
    momentum: { ...judgement(0, 0.5), source: 'our judgement: 7 rad/s of a straight body, arms overhead' },
    work: WORK,
    peakOverMean: { up: published(2, 2, SANO), along: published(3, 3, SANO) },
  },
  vaultTable: {
    time: usual(0.12, 0.3, TABLE),
    alongIn: usual(3.2, 5.3, BOARD),
    alongOut: usual(2.8, 4, TABLE),
    upOut: usual(2, 3.2, TABLE),
    meanUp: computed(0.3, 2.2, 'from 1.9 to 2.9 m/s to 2.0 to 3.2 in 0.12 to 0.30 s'),
    momentum: computed(0, 0.5, '1.4 turns of a straight body in 0.95 s'),
    work: WORK,
    peakUp: { ...usual(1, 2.5, 'weakly, from memory: total vertical peak of both hands'), basis: 'usual' },
    peakOverMean: PEAKS,
  },
  trampoline: {
    time: usual(0.28, 0.35, 'elite, from memory of Vaughan 1980 and later'),
    upOut: computed(5.9, 10.1, '1.2 to 2.05 s in the air, common practice from memory'),
    meanUp: computed(4.4, 8.4, 'those speeds both ways in 0.28 to 0.35 s'),
    momentum: computed(0, 0.5, 'a triple straight of 2.9 turns in 2.0 s'),
    work: judgement(Number.NEGATIVE_INFINITY, 10),
    peakOverMean: PEAKS,
  },
  divingBoard: {
    time: usual(0.4, 0.5, DIVING),
    upOut: usual(4.2, 6, DIVING),
    meanUp: computed(2.5, 3.8, 'from -3 to -5 m/s to 4.2 to 6.0 in 0.40 to 0.50 s'),
    momentum: computed(0, 0.46, '1.9 turns of a straight body in 1.4 s'),
    peakOverMean: PEAKS,
  },
  platform: {
    upOut: { ...judgement(2.5, 4.2), source: 'our judgement: a jump from a hard surface' },
    momentum: computed(0, 0.46, '1.9 turns of a straight body in 1.4 s'),
    work: WORK,
    peakOverMean: PEAKS,
  },
};

/** Women leave the floor about 0.3 m/s slower (from memory); a diving board gives them 4.2 to 5.2 m/s. */
export function upOutOf(place: RangedPlace, sex: Body['sex']): ContactRange {
  const { upOut } = PLACE_RANGES[place];
  if (sex !== 'female') return upOut;
  if (place === 'floor') return { ...upOut, low: upOut.low - 0.3, high: upOut.high - 0.3 };
  return place === 'divingBoard' ? { ...upOut, high: 5.2 } : upOut;
}
