/** What follows from the marks, the scale and the place in a clip; computed by the physics, at once. */
import { type Accessor, createMemo } from 'solid-js';
import type {
  ClipFrames,
  ClipMark,
  ClipMeasured,
  ClipSight,
  ClipTimes,
  FlownTimes,
  Measured,
} from '../../../sim/index.ts';
import { wordMarkFault, wordSightFaults } from '../../../sim/words/clip-words.ts';
import type { Page } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { Clipping } from '../../engine/clip.ts';
import { type KeptClip, readKept } from './clip-kept.ts';
import type { ClipOpening } from './clip-opening.ts';
import { wordSightFault } from './clip-sight-fault.ts';

interface ClipCalc {
  readonly frames: Accessor<ClipFrames | undefined>;
  readonly marks: Accessor<readonly ClipMark[]>;
  /** with where in the picture they took place, where that is known */
  readonly placed: Accessor<readonly ClipMark[]>;
  /** of the clip that is open */
  readonly live: Accessor<ClipTimes | undefined>;
  /** or of one that is kept with the skill, while none is open */
  readonly times: Accessor<ClipTimes | undefined>;
  readonly kept: Accessor<KeptClip | undefined>;
  /** why what is kept cannot be read */
  readonly keptFault: Accessor<string | undefined>;
  readonly flown: Accessor<FlownTimes | undefined>;
  readonly drop: Accessor<Measured | undefined>;
  readonly timesFault: Accessor<string | undefined>;
  readonly markFaults: Accessor<readonly string[]>;
  readonly sight: Accessor<ClipSight | undefined>;
  readonly sightFault: Accessor<string | undefined>;
}

interface ClipCalcPorts extends Pick<Page, 'flight' | 'doc'> {
  readonly opening: ClipOpening;
  readonly measuring: Accessor<ClipMeasured>;
  readonly engine: Accessor<Clipping | undefined>;
}

export function makeClipCalc({ opening, measuring, engine: engineOf, flight, doc }: ClipCalcPorts): ClipCalc {
  const trueHz = createMemo(() => measuring().trueHz);
  const lines = createMemo(() => measuring().lines);
  const read = createMemo((): { frames?: ClipFrames; fault?: string } => {
    const [now, hz, engine] = [opening.opened(), trueHz(), engineOf()];
    if (!now || !engine) return {};
    const { facts } = now.clip;
    const { width, height } = facts;
    if (facts.kind === 'still')
      return { frames: { t: Float64Array.of(0), hz: Number.NaN, width, height, lines: Number.NaN } };
    if (hz === undefined) return {};
    try {
      const t = engine.trueTimes(now.span.stamps, facts.fileHz, hz);
      return { frames: { t, hz, width, height, lines: lines() ?? Number.NaN } };
    } catch (error) {
      return { fault: wordFault(error) };
    }
  });
  const frames = (): ClipFrames | undefined => read().frames;
  const marks = createMemo(() => measuring().marks);
  const feetRow = createMemo((): number | undefined => {
    const [stand, height] = [measuring().stand, frames()?.height];
    return stand && height ? Math.min(Math.max(stand.feet[1] / height, 0), 1) : undefined;
  });
  /** the feet leave and touch the floor at the same lines of the picture */
  const placed = createMemo((): readonly ClipMark[] => {
    const row = feetRow();
    return marks().map((mark) =>
      row !== undefined && mark.row === undefined && (mark.kind === 'takeoff' || mark.kind === 'landing')
        ? { ...mark, row }
        : mark,
    );
  });
  const found = createMemo((): { times?: ClipTimes; fault?: string } => {
    const [now, engine] = [frames(), engineOf()];
    if (!now || !engine || Number.isNaN(now.hz)) return {};
    try {
      return { times: engine.times(now, placed(), flight.result()) };
    } catch (error) {
      return { fault: wordFault(error) };
    }
  });
  const stored = createMemo((): { kept?: KeptClip; fault?: string } => {
    const engine = engineOf();
    try {
      const kept = engine && readKept(doc.file(), engine, flight.result());
      return kept ? { kept } : {};
    } catch (error) {
      return { fault: wordFault(error) };
    }
  });
  const kept = (): KeptClip | undefined => stored().kept;
  const times = (): ClipTimes | undefined => found().times ?? (opening.opened() ? undefined : kept()?.times);
  const seen = createMemo((): { sight?: ClipSight; fault?: string } => {
    const [now, engine, { scale, stand, view }] = [frames(), engineOf(), measuring()];
    if (!now || !engine || !scale || !stand) return {};
    try {
      return { sight: engine.sight(now, scale, stand, flight.result(), view) };
    } catch (error) {
      return { fault: wordSightFault(error) };
    }
  });
  return {
    frames,
    marks,
    placed,
    live: () => found().times,
    times,
    kept,
    keptFault: () => stored().fault,
    flown: createMemo(() => {
      const [engine, now] = [engineOf(), times()];
      return engine && now ? engine.flown(now, flight.result()) : undefined;
    }),
    drop: () => engineOf()?.drop(flight.result()),
    timesFault: () => read().fault ?? found().fault,
    markFaults: () => found().times?.faults.map((fault) => wordMarkFault(fault, placed())) ?? [],
    sight: () => seen().sight,
    sightFault: () => {
      const { sight, fault } = seen();
      return fault ?? (sight && wordSightFaults(sight)[0]);
    },
  };
}
