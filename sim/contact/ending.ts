/** How a landing ends: one word, when, where to and why. Directions as the athlete faces. */
import type { Verdict, VerdictReason } from './verdict.ts';

export type EndingKind =
  | 'stands'
  | 'hop'
  | 'smallStep'
  | 'steps'
  | 'deepSquat'
  | 'hands'
  | 'knees'
  | 'seat'
  | 'back'
  | 'head'
  | 'unsettled';

export type EndingReason = VerdictReason;

export interface LandingEnding {
  readonly kind: EndingKind;
  /** where the step, hop or fall goes, as the athlete faces */
  readonly direction?: 'forward' | 'back';
  /** s after touchdown at which the ending is reached: drawing ends there */
  readonly t: number;
  /** why, in order of weight */
  readonly reasons: readonly EndingReason[];
}

const PARTS: readonly string[] = ['hands', 'knees', 'seat', 'back', 'head'] satisfies EndingKind[];

/** `t`: the end of braking. */
export function endingOf({ kind, reasons }: Verdict, t: number): LandingEnding {
  const part = reasons.find((r) => r.kind === 'part');
  if (part && PARTS.includes(part.part)) return { kind: part.part as EndingKind, t: part.t, reasons };
  if (kind === 'stuck') return { kind: 'stands', t, reasons };
  if (kind === 'stepForward') return { kind: 'smallStep', direction: 'forward', t, reasons };
  if (kind === 'stepBack') return { kind: 'smallStep', direction: 'back', t, reasons };
  if (reasons.some((r) => r.kind === 'low' || r.kind === 'notBraked')) return { kind: 'unsettled', t, reasons };
  const isForward = reasons.some((r) => r.kind === 'beyondToes');
  return { kind: 'steps', direction: isForward ? 'forward' : 'back', t, reasons };
}
