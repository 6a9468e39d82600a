/** A stretched body that turns and does nothing else: somersault = h T / A, so margins have closed forms. */
import { athletes, shapes } from '../../presets/index.ts';
import { parseSkill } from '../../sim/index.ts';
import { findInput } from '../../sim/search/inputs.ts';
import type { Window } from '../../sim/search/margin-window.ts';
import { findResult } from '../../sim/search/result.ts';
import type { SpreadPart } from '../../sim/search/sample-spread.ts';
import type { SkillSpec } from '../../sim/skill/skill-spec.ts';

export const RAD = Math.PI / 180;
export const shelf = { athletes, shapes };

export const stillFile = (h = 60, T = 1.1) => ({
  format: 'shapeflight-skill',
  version: 1,
  title: 'Still',
  athlete: { ref: 'tobias-fenn' },
  takeoff: {
    massCentreHeightM: 1.2,
    velocityMPerS: { along: 0, up: 5 },
    momentum: { vectorKgM2PerS: [0, 0, h] },
  },
  end: { durationS: T },
  schedule: { base: 'straight' },
});

export const stillSpec = (h?: number, T?: number): SkillSpec => parseSkill(stillFile(h, T), shelf);

/** `half`: half width about what the skill does, in the unit of the result. */
export const bound = (id: string, middle: number, half: number): Window[number] => ({
  result: findResult(id),
  low: middle - half,
  high: middle + half,
});

export const vary = (spec: SkillSpec, id: string, by: number, kind: SpreadPart['kind'] = 'normal'): SpreadPart => ({
  input: findInput(spec, id),
  by,
  kind,
});
