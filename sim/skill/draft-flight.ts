/** A plan flown: the spec of the skill, and its flight at the tolerance of a search or in full. */
import type { Flight } from '../flight/flight.ts';
import { flySchedule } from '../flight/fly.ts';
import { REV } from '../math/angles.ts';
import { compileSchedule } from '../schedule/compile.ts';
import { buildSkill } from './build-skill.ts';
import type { DraftForm } from './draft-form.ts';
import { siteOf } from './draft-limits.ts';
import type { DraftPlan } from './draft-plan.ts';
import type { DraftSpec } from './draft-spec.ts';
import type { DraftValues } from './draft-unknowns.ts';
import { type LaunchedSkill, launch } from './launch.ts';
import type { AthleteSpec, NamedPose, SkillSpec } from './skill-spec.ts';

/** What is the same for all flights of a draft. */
export interface DraftBase {
  readonly draft: DraftSpec;
  readonly form: DraftForm;
  readonly athlete: AthleteSpec;
  readonly massStature2: number;
  readonly gravity: number;
  readonly straight: NamedPose;
}

export const directionOf = ({ direction }: DraftSpec): 1 | -1 => (direction === 'backward' ? 1 : -1);
const round = (x: number, per: number): number => Math.round(x * per) / per;
/** The same angle in revolutions, from -0.5 (left out) to 0.5. */
const withinHalf = (x: number): number => x - Math.ceil(x - 0.5);

export function specOf(base: DraftBase, plan: DraftPlan, v: DraftValues): SkillSpec {
  const { draft, form } = base;
  const { surface, from, to, along } = siteOf(draft);
  const dir = directionOf(draft);
  const h = (v.momentum ?? 0) * base.massStature2;
  const isJump = form.kind === 'jump';
  const push = v.push ?? 0;
  const isHeadDown = draft.takeoff === 'hands';
  return {
    title: draft.title,
    athlete: base.athlete,
    gravity: base.gravity,
    start: {
      kind: 'stated',
      takeoff: {
        height: { of: 'lowestPoint', y: from },
        v_WScm_W: [(draft.travel === 'forward' ? 1 : -1) * along, round(v.up ?? 0, 1e4), 0],
        somersault: isHeadDown ? Math.PI : 0,
        tilt: 0,
        twist: 0,
        momentum: {
          kind: 'vector',
          h_Scm_W: isJump
            ? [0, round(h, 1e4), 0]
            : [0, round(dir * h * Math.sin(push), 1e4), round(dir * h * Math.cos(push), 1e4)],
        },
      },
    },
    end: { kind: 'touchdown', surface: { kind: surface, y: to } },
    base: base.straight,
    ownShapes: {},
    blocks: plan.blocks,
    keys: plan.keys,
    samples: [],
    smoothing: { kind: 'gcv' },
    target: {
      somersaults: draft.somersaults,
      somersaultWord: isJump ? '' : draft.direction,
      twists: form.twists,
      twistWord: form.twists === 0 ? '' : dir > 0 ? 'left' : 'right',
      landingAngle: withinHalf((draft.somersaults % 1) * dir + (isHeadDown ? 0.5 : 0)) * REV,
    },
  };
}

export const launchDraft = (spec: SkillSpec): LaunchedSkill => launch(buildSkill(spec));

/** Error asked of a step, and of the tabulated shape: thousands of flights. */
const COARSE = { tolerance: 1e-5, shapeTolerance: 1e-6 };

export function flyCoarse(spec: SkillSpec): Flight {
  const { body, schedule, takeoff, end, gravity } = launchDraft(spec);
  return flySchedule(body, compileSchedule(body, schedule, { apex: 0, touchdown: 0 }), takeoff, end, gravity, COARSE);
}
