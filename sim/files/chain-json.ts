/** A flown chain as JSON, in the units people type; null is "not known". Fields: docs/command-line.md. Of one flight `fly SKILL#2 --summary` writes all. */

import { DEG } from '../math/angles.ts';
import { jsonText } from '../math/json-text.ts';
import type { Summary } from '../measure/summary.ts';
import type { ChainAccountRow } from '../skill/chain-account.ts';
import type { ChainSensitivity } from '../skill/chain-sensitivity.ts';
import type { CourseFacts } from '../skill/contact-course.ts';
import type { FlownChain, FlownLeg } from '../skill/fly-chain.ts';
import type { SkillVerdict } from '../skill/skill-verdict.ts';
import { catchOf } from './catch-json.ts';
import { CAUTION, COMPARED } from './caution.ts';
import { phasesOf } from './phases-json.ts';
import type { Provenance } from './provenance.ts';
import { verdictJson } from './verdict-json.ts';

interface SaidLeg {
  readonly flown: FlownLeg;
  readonly summary: Summary;
  readonly verdict: SkillVerdict;
  readonly sentence: string;
}

/** A flown chain as the text of its summary. `legs`: what is said of each; `stopped`: why the rest is not flown, in words. */
export function chainJson(
  { chain, stop }: FlownChain,
  legs: readonly SaidLeg[],
  account: readonly ChainAccountRow[],
  stopped: string,
  provenance: Provenance,
  sensitivity?: ChainSensitivity,
): string {
  const file = {
    format: 'shapeflight-chain-summary',
    version: 1,
    provenance,
    caution: CAUTION,
    compared: COMPARED,
    title: chain.title,
    flights: legs.map(({ flown, summary, verdict, sentence }) => ({
      title: flown.leg.title,
      fromS: flown.from,
      toS: flown.to,
      placeM: flown.offset_W,
      sentence,
      verdict: verdictJson(verdict),
      somersaults: summary.somersaults ?? null,
      twists: summary.twists ?? null,
      ...(flown.course ? { course: courseOf(flown.course.facts) } : {}),
      phases: phasesOf(flown.whole),
      ...(flown.whole.catch ? { catch: catchOf(flown.whole.catch) } : {}),
    })),
    stop: stop ? { kind: stop.kind, flight: stop.leg + 1, words: stopped } : null,
    sensitivity: sensitivity ?? null,
    account: account.map(({ phase, leg, from, to, energy, momentum_W, misses }) => ({
      phase,
      flight: leg + 1,
      fromS: from,
      toS: to,
      energyJ: energy,
      momentumKgM2PerS: momentum_W,
      misses,
    })),
  };
  return `${jsonText(file)}\n`;
}

function courseOf({ peak, slide, stays, stretch, turned, account, faults, unknowns }: CourseFacts): object {
  return {
    peakBodyWeights: peak,
    slidesM: Math.max(slide, stays.value),
    stretchM: stretch.value,
    turnsDeg: turned * DEG,
    workJPerKg: account.work,
    broughtJPerKg: account.brought,
    faults: faults.map(({ kind, value, limit, t }) => ({ kind, value, limit, atS: t })),
    notKnown: unknowns,
  };
}
