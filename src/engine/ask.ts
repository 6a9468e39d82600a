/**
 * Asking for the result: what is wanted as wishes, what may change as inputs, and the long work (solve, margin, map) handed
 * to workers. Everything is asked of one flown document; its key says whether an answer still belongs to the page. SI, radians.
 */

import {
  type Aim,
  type Athlete,
  aimAt,
  calcJointPeaks,
  DEFAULT_BALANCE,
  type DraftSpec,
  draftOfCode,
  type ErrorSetting,
  errorSources,
  FieldError,
  fieldsOfDraft,
  findContour,
  findInput,
  type Input,
  type InputLevel,
  type InputUnit,
  isHanded,
  type LaunchedSkill,
  listInputs,
  type MapRow,
  makeUnknown,
  needsReflexRange,
  outcomeOf,
  parseSkill,
  putInputs,
  REFLEX_DELAYS,
  REFLEX_TRIES,
  RESULTS,
  type ReflexShare,
  type ResultUnit,
  rangeBalance,
  roundLevels,
  type ShapeData,
  type SkillFile,
  type SkillSpec,
  type Solution,
  type StudyRequest,
  type TargetFields,
  USUAL_TOLERANCES,
  updateSkill,
  usualBy,
  usualSpread,
  usualWindow,
  wordTogether,
} from '../../sim/index.ts';
import { eventTime } from '../../sim/math/anchor.ts';
import { countWorkers, makePagePool } from '../jobs/browser-port.ts';
import {
  type AnswerResult,
  type Batch,
  type BatchCall,
  type ForgivingResult,
  type MapListener,
  makeBatch,
  type Progress,
  type SolveRequest,
  type StudyDone,
  type StudyListener,
  type TwistResult,
} from './batch.ts';
import type { FlightResult } from './result.ts';
import { findRoom, type RoomBar } from './room.ts';

export type { AnswerResult, BatchCall, ObstacleResult, Progress } from './batch.ts';

export interface AskInput {
  readonly id: string;
  readonly unit: InputUnit;
  readonly level: InputLevel;
  readonly value: number;
  readonly range: readonly [number, number];
  /** a small change */
  readonly scale: number;
  /** an instant of the flight: this much later than the input's own zero, s */
  readonly eventS?: number;
}

/** The document as a search has it. */
export interface AskSkill {
  readonly key: string;
  readonly file: SkillFile;
  readonly spec: SkillSpec;
  readonly inputs: readonly AskInput[];
  /** the take-off comes from a swing or a known contact */
  readonly isReleased: boolean;
  readonly launched: LaunchedSkill;
  readonly flight: FlightResult['flight'];
}

export interface Wanted {
  readonly somersaults: number;
  readonly direction: 'backward' | 'forward' | '';
  /** rad; left out: what the somersaults make of the take-off */
  readonly landingAngle?: number;
  /** where it comes down on its feet: held by its verdict, or at an angle alone */
  readonly ending: 'held' | 'any';
  readonly twists: number;
  readonly twistTo: 'left' | 'right' | '';
  /** rev */
  readonly twistWithin: number;
  /** rad, how far short and how far over is still as wanted */
  readonly short: number;
  readonly over: number;
  readonly tiltWithin: number;
  readonly airTime?: { readonly value: number; readonly within: number };
  readonly height?: { readonly value: number; readonly within: number };
  readonly twistsAfter?: readonly number[];
}

export interface WindowBound {
  readonly result: string;
  readonly low: number;
  readonly high: number;
}

interface AskResult {
  readonly id: string;
  readonly unit: ResultUnit;
}

export interface MarginAsk {
  readonly spec: SkillSpec;
  readonly window: readonly WindowBound[];
  readonly tries: number;
  readonly seed: number;
  readonly balanced: boolean;
  readonly errors: ErrorSetting;
}

interface MapAsk {
  readonly spec: SkillSpec;
  readonly x: { readonly input: string; readonly from: number; readonly to: number };
  readonly y: { readonly input: string; readonly from: number; readonly to: number };
  readonly count: number;
  readonly window: readonly WindowBound[];
  readonly balanced: boolean;
}

/** How far a search has come: fits or moves of so many, and the most so far: answers, a share, twists. */
export interface SearchProgress {
  readonly done: number;
  /** 0: not known beforehand */
  readonly all: number;
  readonly best: number;
}

/** What an answer costs, of the skill as it is. */
export type OwnCost = Omit<Solution['cost'], 'cautions' | 'marginFault'>;

export interface Asking {
  /** `isLater`: a leg that another leads to, which gives some of its inputs */
  open(result: FlightResult, isLater: boolean): AskSkill;
  /** throws a FieldError with what is allowed */
  readCode(code: string, direction?: DraftSpec['direction']): TargetFields;
  /** a landing on the feet is wanted, where the landing model knows the surface */
  canHold(skill: AskSkill, wanted: Wanted): boolean;
  /** throws a FieldError */
  aim(skill: AskSkill, wanted: Wanted): Aim;
  /** the span a search takes when none is stated */
  spanOf(skill: AskSkill, id: string): readonly [number, number];
  /** one standard deviation of what an athlete is usually off by */
  spreadOf(skill: AskSkill, id: string): number;
  /** where the usual errors of a margin are from */
  errorSources(skill: AskSkill, errors: ErrorSetting): ReturnType<typeof errorSources>;
  /** which of them go together, in one sentence */
  errorsTogether(skill: AskSkill): string;
  readonly results: readonly AskResult[];
  wantedWindow(aim: Aim): readonly WindowBound[];
  /** as a verdict judges, about what is aimed at */
  usualWindow(skill: AskSkill, aim: Aim): readonly WindowBound[];
  /** of the skill as it is; without a margin, which takes tries */
  costOf(skill: AskSkill): OwnCost;
  solve(request: SolveRequest, onProgress: (p: SearchProgress) => void): BatchCall<AnswerResult>;
  /** goes on from the most forgiving answer */
  forgiving(request: SolveRequest, onProgress: (p: SearchProgress) => void): BatchCall<ForgivingResult>;
  /** the most twist within what may change, all other wishes met */
  twist(request: SolveRequest, onProgress: (p: SearchProgress) => void): BatchCall<TwistResult>;
  study(ask: MarginAsk, on: StudyListener): BatchCall<StudyDone>;
  /** the skill is to be held straight and does not stay so by itself: its share in the window is a range */
  needsRange(skill: AskSkill, errors: ErrorSetting): boolean;
  /** what the hips' reflex makes of the same tries, delay by delay */
  reflexRange(ask: MarginAsk, onShare: (share: ReflexShare) => void): BatchCall<readonly ReflexShare[]>;
  map(ask: MapAsk, on: MapListener): BatchCall<readonly MapRow[]>;
  /** how far times, push and lean may be off, one at a time */
  room(skill: AskSkill, onProgress: (progress: Progress) => void): BatchCall<readonly RoomBar[]>;
  valueAt(spec: SkillSpec, id: string): number;
  put(spec: SkillSpec, ids: readonly string[], values: readonly number[]): SkillSpec;
  /** the document with what a search changed */
  fileOf(skill: AskSkill, spec: SkillSpec): SkillFile;
  contour(values: Float64Array, columns: number, rows: number, level: number): readonly (readonly number[])[];
  levels(values: Float64Array, most: number): number[];
  readonly usual: Pick<Wanted, 'twistWithin' | 'short' | 'over' | 'tiltWithin'> & {
    readonly airTimeWithin: number;
    readonly heightWithin: number;
  };
  readonly balance: { readonly delayS: number; readonly by: 'hips' | 'arms' };
}

/** Moves of a search for the most forgiving: the command line's example, which takes most of a minute here. */
const ROUNDS = 40;

export function makeAsking(shelf: {
  readonly athletes: Readonly<Record<string, Athlete>>;
  readonly shapes: Readonly<Record<string, ShapeData>>;
}): Asking {
  const opened = new WeakMap<FlightResult, AskSkill>();
  const costs = new WeakMap<AskSkill, OwnCost>();
  let batch: Batch | undefined;
  const work = (): Batch => {
    batch ??= makeBatch(makePagePool(countWorkers()));
    return batch;
  };
  const balanceOf = (on: boolean) => (on ? { balance: DEFAULT_BALANCE } : {});

  return {
    open: (result, isLater) => {
      const known = opened.get(result);
      if (known) return known;
      const { file, skill, flight } = result;
      const spec = parseSkill(file, shelf);
      const isReleased = spec.start.kind !== 'stated';
      const inputs = listInputs(spec)
        .filter(({ id }) => !isLater || !isHanded(id))
        .map((input) => describeInput(spec, input, flight));
      const made = { key: JSON.stringify(file), file, spec, inputs, isReleased, launched: skill, flight };
      opened.set(result, made);
      return made;
    },
    readCode: (code, direction) => fieldsOfDraft(draftOfCode(code, direction)),
    canHold: ({ spec, launched }, wanted) =>
      aimAt(spec, { ...turnsOf(wanted), ending: 'held' }, launched).ending === 'held',
    aim: ({ spec, launched }, wanted) => {
      const { ending } = wanted;
      if (ending === 'any' && !(wanted.short + wanted.over > 0))
        throw new FieldError('target.within.landing', wanted.short + wanted.over, 'above 0');
      const middle = (wanted.short - wanted.over) / 2;
      const { airTime, height } = wanted;
      const isHeld = ending === 'held' && aimAt(spec, { ...turnsOf(wanted), ending }, launched).ending === 'held';
      const aim = aimAt(
        spec,
        {
          ...turnsOf(wanted),
          ending,
          ...(wanted.twistsAfter ? { twistsAfter: wanted.twistsAfter } : {}),
          ...(airTime ? { airTime: airTime.value } : {}),
          ...(height ? { height: height.value } : {}),
          within: {
            ...(isHeld ? {} : { landing: (wanted.short + wanted.over) / 2 }),
            tilt: wanted.tiltWithin,
            twists: wanted.twistWithin,
            ...(airTime ? { airTime: airTime.within } : {}),
            ...(height ? { height: height.within } : {}),
          },
        },
        launched,
      );
      return { ...aim, wishes: aim.wishes.map((w) => (w.result === 'short' && !isHeld ? { ...w, value: middle } : w)) };
    },
    spanOf: ({ spec }, id) => {
      const { from, to, input } = makeUnknown(spec, id);
      const { value } = input;
      // from nothing to the most that is published is too wide to start with
      if (/^takeoff\.h\.[yz]$/.test(id) && Math.abs(value) > 5)
        return [value - 0.2 * Math.abs(value), value + 0.2 * Math.abs(value)];
      return [from, to];
    },
    spreadOf: ({ spec }, id) => usualBy(findInput(spec, id)),
    errorSources: ({ spec }, errors) => errorSources(usualSpread(spec, errors).parts, errors),
    errorsTogether: ({ spec }) => wordTogether(usualSpread(spec).correlations),
    results: RESULTS.map(({ id, unit }) => ({ id, unit })),
    wantedWindow: ({ wishes }) =>
      wishes.map(({ result, value, tolerance }) => ({ result, low: value - tolerance, high: value + tolerance })),
    usualWindow: ({ launched, flight }, { spec }) =>
      usualWindow(spec, outcomeOf(launched, flight)).map(({ result, low, high }) => ({ result: result.id, low, high })),
    costOf: (skill) => {
      const known = costs.get(skill);
      if (known) return known;
      const { cautions: _, ...peaks } = calcJointPeaks(skill.flight, true);
      const made = { momentum: Math.hypot(...skill.flight.h_Scm_W), ...peaks };
      costs.set(skill, made);
      return made;
    },
    solve: (request, onProgress) =>
      work().solve(request, ({ fit, fits, found }) => onProgress({ done: fit, all: fits, best: found })),
    forgiving: (request, onProgress) =>
      work().forgiving({ ...request, rounds: ROUNDS }, ({ round, rounds, margin }) =>
        onProgress({ done: round, all: rounds, best: margin }),
      ),
    twist: (request, onProgress) =>
      work().twist(request, ({ wanted, found }) => onProgress({ done: wanted, all: 0, best: found })),
    study: ({ spec, window, tries, seed, balanced, errors }, on) => {
      return work().study(
        { spec, ...varyOf(spec, errors), window, seed, errors, ...balanceOf(balanced) },
        { from: 0, to: tries, bars: true },
        on,
      );
    },
    needsRange: ({ spec, flight }, errors) => needsReflexRange(flight, { spec, vary: varyOf(spec, errors).vary }),
    reflexRange: ({ spec, window, tries, seed, errors }, onShare) => {
      let cancel = (): void => {};
      const run = async (): Promise<readonly ReflexShare[]> => {
        const out: ReflexShare[] = [];
        for (const delay of REFLEX_DELAYS) {
          const request = { spec, ...varyOf(spec, errors), window, seed, balance: rangeBalance(delay, seed) };
          const call = work().study(request, { from: 0, to: Math.min(REFLEX_TRIES, tries), bars: false });
          cancel = call.cancel;
          const { result } = await call.done;
          out.push({ delay, share: result.now });
          onShare(out[out.length - 1]);
        }
        return out;
      };
      const done = run();
      done.catch(() => {});
      return { done, cancel: () => cancel() };
    },
    map: ({ spec, x, y, count, window, balanced }, on) =>
      work().map(
        {
          spec,
          x: { ...x, count },
          y: { ...y, count },
          results: RESULTS.map((r) => r.id),
          window,
          ...balanceOf(balanced),
        },
        on,
      ),
    room: (skill, onProgress) => findRoom(work(), skill, onProgress),
    valueAt: (spec, id) => findInput(spec, id).value,
    put: (spec, ids, values) =>
      putInputs(
        spec,
        ids.map((id) => findInput(spec, id)),
        values,
      ),
    fileOf: ({ file, spec }, after) => updateSkill(file, spec, after),
    contour: (values, columns, rows, level) => findContour(values, columns, rows, level).lines,
    levels: roundLevels,
    usual: {
      twistWithin: USUAL_TOLERANCES.twists,
      short: USUAL_TOLERANCES.landing,
      over: USUAL_TOLERANCES.landing,
      tiltWithin: USUAL_TOLERANCES.tilt,
      airTimeWithin: USUAL_TOLERANCES.airTime,
      heightWithin: USUAL_TOLERANCES.height,
    },
    balance: { delayS: DEFAULT_BALANCE.delay, by: DEFAULT_BALANCE.by },
  };
}

const turnsOf = ({ somersaults, twists, direction, twistTo, landingAngle }: Wanted): TargetFields => ({
  somersaults,
  twists,
  ...(direction ? { direction } : {}),
  ...(twistTo ? { twistTo } : {}),
  ...(landingAngle === undefined ? {} : { landingAngle }),
});

/** What varies by usual errors, as plain data. */
function varyOf(spec: SkillSpec, errors: ErrorSetting): Pick<StudyRequest, 'vary' | 'correlations'> {
  const { parts, correlations } = usualSpread(spec, errors);
  return { vary: parts.map(({ input, by, kind }) => ({ input: input.id, by, kind })), correlations };
}

function describeInput(spec: SkillSpec, input: Input, flight: FlightResult['flight']): AskInput {
  const { id, unit, level, value, range, scale } = input;
  const anchor = anchorOf(spec, id);
  const eventS = anchor && eventTime(anchor, { apex: flight.apex, touchdown: flight.duration });
  return { id, unit, level, value, range, scale, ...(eventS === undefined ? {} : { eventS }) };
}

/** The event that a time is anchored to; undefined for what is no time. */
function anchorOf({ blocks, keys }: SkillSpec, id: string): 'takeoff' | 'apex' | 'touchdown' | undefined {
  const [, n, what] = /^block:(\d+)\.(start|end|moveStart)$/.exec(id) ?? [];
  if (what === 'start') return blocks[Number(n) - 1]?.from.anchor;
  if (what === 'end') return blocks[Number(n) - 1]?.to.anchor;
  if (what === 'moveStart') return blocks[Number(n) - 2]?.to.anchor;
  const key = /^key:(\d+)\.time$/.exec(id)?.[1];
  return key ? keys[Number(key) - 1]?.at.anchor : undefined;
}
