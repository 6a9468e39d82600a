/**
 * A draft of a skill from its code: a skill that flies to exactly that code within what joints, muscles, technique and air time allow, or a refusal that names the limit. A limit is named
 * only where lifting it alone lets the skill fly; where no limit is found the search has failed, and that is said.
 */
import { makeBody } from './build-skill.ts';
import { bentPoses, LOOSEST } from './draft-bend.ts';
import type { DraftBase } from './draft-flight.ts';
import { formOf } from './draft-form.ts';
import { gripsOf } from './draft-grip.ts';
import type { ReadCode } from './draft-judge.ts';
import { DRAFT_LIMITS, type DraftLimit, massStature2 } from './draft-limits.ts';
import { type DraftTools, type Found, flyRecipe, searchDraft } from './draft-search.ts';
import type { DraftSpec } from './draft-spec.ts';
import type { AthleteSpec, NamedPose, SkillSpec } from './skill-spec.ts';

export interface Draft {
  readonly kind: 'flown';
  readonly spec: SkillSpec;
  /** done, in revolutions, unsigned; tilt at the end in rad */
  readonly reached: Found['judged']['reached'];
  readonly found: Found;
  readonly flights: number;
}

/** It flies to its code, and asks more of muscles than is known of them. */
export interface BeyondStrength {
  readonly spec: SkillSpec;
  /** what it asks, each in words */
  readonly asks: readonly string[];
}

export interface Refusal {
  readonly kind: 'refused';
  /** lifting it alone lets the skill fly; left out: the search did not converge */
  readonly limit?: DraftLimit;
  /** what the best that was flown asks beyond the limit, or where it fell short */
  readonly faults: readonly string[];
  /** of strength: the skill as it flies without that limit, where no joint goes further than it can */
  readonly beyond?: BeyondStrength;
  /** air time with which it flies, s, where that is the limit */
  readonly airTime?: number;
  /** a skill close to it that flies */
  readonly nearest?: DraftSpec;
  readonly flights: number;
}

export interface DraftInput {
  readonly athlete: AthleteSpec;
  /** shapes by id, rad */
  readonly shapes: Readonly<Record<string, NamedPose>>;
  readonly readCode: ReadCode;
  readonly gravity?: number;
  /** skills close to the one that is asked for, nearest first: tried where it does not fly */
  readonly nearby?: (draft: DraftSpec) => readonly DraftSpec[];
  /** called after every flight of the search */
  readonly onFlight?: (flights: number) => void;
}

/** A skill that flies to exactly what is asked, or the limit in the way and the nearest that flies. */
export function draftSkill(draft: DraftSpec, input: DraftInput): Draft | Refusal {
  let flights = 0;
  const onFlight = (): void => {
    flights++;
    input.onFlight?.(flights);
  };
  const { base, tools } = prepareDraft(draft, input, onFlight);
  const found = searchDraft(base, tools);
  if (found && found.judged.faults.length === 0)
    return { kind: 'flown', spec: found.spec, reached: found.judged.reached, found, flights };
  const faultsOf = (limit?: DraftLimit): string[] =>
    (found?.judged.faults ?? []).filter((f) => limit === undefined || f.limit === limit).map(({ text }) => text);
  const nearest = findNearest(draft, input, onFlight);
  for (const limit of DRAFT_LIMITS) {
    const lifted = searchDraft(base, tools, limit);
    if (!lifted || lifted.judged.faults.length > 0) continue;
    const airTime = limit === 'airTime' ? { airTime: lifted.judged.reached.duration } : {};
    const beyond = limit === 'strength' ? beyondOf(lifted, flyRecipe(base, tools, lifted.recipe).judged) : undefined;
    return {
      kind: 'refused',
      limit,
      faults: faultsOf(limit),
      ...(beyond ? { beyond } : {}),
      ...airTime,
      ...(nearest ? { nearest } : {}),
      flights,
    };
  }
  return { kind: 'refused', faults: faultsOf(), ...(nearest ? { nearest } : {}), flights };
}

/** `judged`: with nothing lifted. */
function beyondOf({ spec }: Found, { faults }: Found['judged']): BeyondStrength | undefined {
  if (faults.some(({ limit, isRange }) => limit !== 'strength' || isRange)) return undefined;
  // the most that is asked is said first
  const asks = [...faults].sort((a, b) => (b.over ?? 0) - (a.over ?? 0)).map(({ text }) => text);
  return asks.length > 0 ? { spec, asks } : undefined;
}

function findNearest(draft: DraftSpec, input: DraftInput, onFlight: () => void): DraftSpec | undefined {
  return input.nearby?.(draft).find((near) => {
    const { base, tools } = prepareDraft(near, input, onFlight);
    return searchDraft(base, tools)?.judged.faults.length === 0;
  });
}

export function prepareDraft(
  draft: DraftSpec,
  { athlete, shapes, readCode, gravity = 9.81 }: DraftInput,
  onFlight: () => void,
): { base: DraftBase; tools: DraftTools } {
  const form = formOf(draft);
  const body = makeBody(athlete);
  const { bend } = form;
  const bends = bend ? Array.from({ length: LOOSEST + 1 }, (_, loose) => bentPoses(shapes, bend, loose)) : [];
  return {
    base: { draft, form, athlete, massStature2: massStature2(body), gravity, straight: shapes.straight ?? {} },
    tools: { shapes, readCode, onFlight, grips: gripsOf(body, bends) },
  };
}
