/**
 * Studies and maps as plain data, cut into pieces that stand alone: what a worker, a thread or a machine of a cluster is
 * handed, and what it hands back. The pieces of one request are the same wherever they are computed.
 */
import type { FromTo } from '../math/from-to.ts';
import type { BalanceSpec } from '../skill/balance.ts';
import type { Contact } from '../skill/contact-room.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { Correlation } from './error-together.ts';
import { findInput } from './inputs.ts';
import { Mapper, type MapRow, type MapSpec } from './map.ts';
import { type Bar, calcBar } from './margin-bars.ts';
import { type ShareAfter, shareOf } from './margin-study.ts';
import { usualWindow, type Window } from './margin-window.ts';
import { findResult } from './result.ts';
import { distances, Sampler, type SampleTable, type Study } from './sample.ts';
import { SampleFlyer } from './sample-fly.ts';
import { makeSpread, type SpreadPart, usualSpread } from './sample-spread.ts';
import { type ErrorSetting, USUAL_ERRORS } from './usual-error.ts';

export interface BoundRequest {
  readonly result: string;
  readonly low: number;
  readonly high: number;
}

/** SI, radians; inputs and results by their ids. */
export interface StudyRequest {
  readonly spec: SkillSpec;
  readonly vary: readonly { readonly input: string; readonly by: number; readonly kind: SpreadPart['kind'] }[];
  readonly correlations: readonly Correlation[];
  readonly window: readonly BoundRequest[];
  readonly seed: number;
  /** what the usual errors of `vary` were of */
  readonly errors?: ErrorSetting;
  readonly balance?: BalanceSpec;
}

interface AxisRequest extends FromTo {
  readonly input: string;
  readonly count: number;
}

export interface MapRequest {
  readonly spec: SkillSpec;
  readonly x: AxisRequest;
  readonly y: AxisRequest;
  readonly results: readonly string[];
  readonly window: readonly BoundRequest[];
  readonly balance?: BalanceSpec;
}

/** What a skill is usually off by, and the usual window of its landing. */
export function usualStudy(
  spec: SkillSpec,
  seed = 1,
  contact?: Contact,
  errors: ErrorSetting = USUAL_ERRORS,
): StudyRequest {
  const { parts, correlations } = usualSpread(spec, errors);
  const inputs = parts.map((p) => p.input);
  const outcome = new SampleFlyer(spec, inputs, { contact }).outcomeAt(inputs.map((i) => i.value));
  return {
    spec,
    vary: parts.map(({ input, by, kind }) => ({ input: input.id, by, kind })),
    correlations,
    window: usualWindow(spec, outcome).map(({ result, low, high }) => ({ result: result.id, low, high })),
    seed,
    errors,
  };
}

const openWindow = (bounds: readonly BoundRequest[]): Window =>
  bounds.map(({ result, low, high }) => ({ result: findResult(result), low, high }));

/** A study ready to be flown, from plain data. Throws a FieldError that names the input or result that is not known. */
export function openStudy(request: StudyRequest, contact?: Contact): Study {
  const { spec, vary, correlations, window: bounds, seed, balance } = request;
  return {
    spec,
    spread: makeSpread(
      vary.map(({ input, by, kind }) => ({ input: findInput(spec, input), by, kind })),
      correlations,
    ),
    window: openWindow(bounds),
    seed,
    ...(balance ? { balance } : {}),
    contact,
  };
}

/** A map ready to be flown, from plain data. Throws a FieldError that names the input or result that is not known. */
export function openMap(request: MapRequest, contact?: Contact): MapSpec {
  const { spec, x, y, results, window: bounds, balance } = request;
  const axis = ({ input, ...rest }: AxisRequest): MapSpec['x'] => ({ input: findInput(spec, input), ...rest });
  return {
    spec,
    x: axis(x),
    y: axis(y),
    results: results.map(findResult),
    ...(bounds.length > 0 ? { window: openWindow(bounds) } : {}),
    ...(balance ? { balance } : {}),
    contact,
  };
}

/** Computes pieces of a study: spans of its samples, and its bars one by one. */
export class StudyRunner {
  readonly study: Study;
  private readonly sampler: Sampler;

  constructor(request: StudyRequest, contact?: Contact) {
    this.study = openStudy(request, contact);
    this.sampler = new Sampler(this.study);
  }

  samples(from: number, to: number): SampleTable {
    return this.sampler.run(from, to);
  }

  bar(index: number): Bar {
    return calcBar(this.sampler.flyer, this.study.spread.parts, this.study.window, index);
  }

  /** The results of the skill as it is, in the order of the window. */
  now(): number[] {
    const { parts } = this.study.spread;
    const outcome = this.sampler.flyer.outcomeAt(parts.map((p) => p.input.value));
    return this.study.window.map((b) => b.result.get(outcome));
  }
}

/** Computes rows of a map. */
export class MapRunner {
  readonly map: MapSpec;
  private readonly mapper: Mapper;

  constructor(request: MapRequest, contact?: Contact) {
    this.map = openMap(request, contact);
    this.mapper = new Mapper(this.map);
  }

  row(index: number): MapRow {
    return this.mapper.run(index);
  }
}

/** A quick measure of how much a skill forgives: tries with the usual errors, about the usual window. */
export function shareOfTries(
  spec: SkillSpec,
  tries: number,
  {
    balance,
    seed = 1,
    contact,
  }: { balance?: BalanceSpec | undefined; seed?: number; contact?: Contact | undefined } = {},
): ShareAfter {
  const runner = new StudyRunner({ ...usualStudy(spec, seed, contact), ...(balance ? { balance } : {}) }, contact);
  return shareOf(distances(runner.study.window, runner.samples(0, tries)), tries);
}
