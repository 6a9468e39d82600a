/** What a flight of a skill comes to, as plain data that a thread can be sent: the body, which both sides have, is left out. */
import type { Body } from '../body/body.ts';
import { type FlightData, packFlight, unpackFlight } from '../flight/flight-data.ts';
import { calcFrames, frameTimes } from '../measure/calc-frames.ts';
import type { Frames } from '../measure/frames.ts';
import { type Summary, summarize } from '../measure/summary.ts';
import type { CatchOutcome } from './find-catch.ts';
import type { Flown } from './flyer.ts';
import type { LaunchedSkill } from './launch.ts';

/** A skill, its flight, and what was measured of it. */
export interface MeasuredFlight {
  readonly skill: LaunchedSkill;
  readonly flight: Flown;
  readonly frames: Frames;
  readonly summary: Summary;
}

/** Frames a second for what is shown, and the most of them: a long flight gets fewer a second. */
const RATE_HZ = 120;
const MOST_FRAMES = 300;
/** While a hand drags. */
const ROUGH_RATE_HZ = 60;

/** What a page shows of a flight. `isRough`: on the way to another. */
export function measureFlown(skill: LaunchedSkill, flight: Flown, isRough = false): MeasuredFlight {
  const rate = Math.min(isRough ? ROUGH_RATE_HZ : RATE_HZ, MOST_FRAMES / flight.duration);
  const frames = calcFrames(flight, frameTimes(flight.duration, rate), { isRough });
  return { skill, flight, frames, summary: summarize(flight, frames, skill.target) };
}

export interface FlownData {
  readonly skill: object;
  readonly flight: FlightData;
  readonly uncut?: FlightData;
  readonly met?: CatchOutcome;
  readonly frames: Frames;
  readonly summary: object;
}

/** Not for a flight with the reflex, whose joints react to its state. A swing, which holds functions, is left out of its launch. */
export function packFlown({ skill, flight, frames, summary }: MeasuredFlight): FlownData {
  const { body: _, launch, ...ownSkill } = skill;
  const { swing: __, ...came } = launch;
  const { body: ___, ...ownSummary } = summary;
  return {
    skill: { ...ownSkill, launch: came },
    flight: packed(flight),
    ...(flight.uncut ? { uncut: packed(flight.uncut) } : {}),
    ...(flight.met ? { met: flight.met } : {}),
    frames,
    summary: ownSummary,
  };
}

function packed(flight: Parameters<typeof packFlight>[0]): FlightData {
  const data = packFlight(flight);
  if (!data) throw new RangeError('a flight whose joints react to its state is no plain data');
  return data;
}

/** The same again, of this body. */
export function unpackFlown(body: Body, { skill, flight, uncut, met, frames, summary }: FlownData): MeasuredFlight {
  return {
    skill: { ...skill, body } as LaunchedSkill,
    flight: {
      ...unpackFlight(body, flight),
      ...(uncut ? { uncut: unpackFlight(body, uncut) } : {}),
      ...(met ? { met } : {}),
    },
    frames,
    summary: { ...summary, body } as Summary,
  };
}
