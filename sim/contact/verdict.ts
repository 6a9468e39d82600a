/**
 * Stuck, a step or a fall, from the extrapolated mass centre and the base of support:
 *     XcoM = x + v / w0,   w0 = sqrt(g / l),   l height of the mass centre over the soles
 * (Hof, Gazendam & Sinke 2005, J Biomech 38:1: the state of an inverted pendulum can be held without a step where XcoM lies
 * over the base). While a step is taken XcoM runs from the edge of the base as exp(w0 t) (Hof 2008, Hum Mov Sci 27:112), so one
 * step corrects an excess of at most its length / exp(w0 t). x forward as the athlete faces. Left out of the pendulum: turning of the
 * body about its own mass centre; it is reported beside.
 */
type VerdictKind = 'stuck' | 'stepForward' | 'stepBack' | 'fall';
export type VerdictReason =
  | { readonly kind: 'overBase'; readonly margin: number }
  | { readonly kind: 'beyondToes' | 'behindHeels'; readonly by: number; readonly mendable: number }
  | { readonly kind: 'part'; readonly part: string; readonly t: number }
  | { readonly kind: 'low'; readonly height: number; readonly least: number }
  | { readonly kind: 'notBraked' };

interface BalanceState {
  /** mass centre over the soles' height, m, and its horizontal place and velocity */
  readonly x: number;
  readonly height: number;
  readonly vx: number;
  readonly heel: number;
  readonly toe: number;
  readonly gravity: number;
  readonly stature: number;
}

export interface Verdict {
  readonly kind: VerdictKind;
  readonly reasons: readonly VerdictReason[];
  readonly xcom: number;
  readonly heel: number;
  readonly toe: number;
  /** distance of XcoM from the nearer edge, + inside, m */
  readonly margin: number;
}

/** A step after a landing: 0.25 s, at most 0.45 of the stature (judgement). */
export const STEP_TIME = 0.25;
export const STEP_SHARE = 0.45;
/** Mass centre lower than this over the soles: squatted too deep to stand up, share of the stature (judgement). */
const LOWEST_SHARE = 0.22;

export function calcXcom(x: number, vx: number, height: number, gravity: number): number {
  return x + vx / Math.sqrt(gravity / height);
}

/** Longest excess over the base that one step corrects, m. */
export function correctableExcess(height: number, gravity: number, stature: number): number {
  return (STEP_SHARE * stature) / Math.exp(Math.sqrt(gravity / height) * STEP_TIME);
}

/** `touched`: another part came down on the mat while braking; `isBraked`: the mass centre has stopped sinking. */
export function calcVerdict(
  s: BalanceState,
  touched?: { readonly part: string; readonly t: number },
  isBraked = true,
): Verdict {
  const height = Math.max(s.height, 0.05);
  const xcom = calcXcom(s.x, s.vx, height, s.gravity);
  const ahead = xcom - s.toe;
  const behind = s.heel - xcom;
  const margin = -Math.max(ahead, behind);
  const mendable = correctableExcess(height, s.gravity, s.stature);
  const reasons: VerdictReason[] = [];
  if (touched) reasons.push({ kind: 'part', part: touched.part, t: touched.t });
  else if (!isBraked) reasons.push({ kind: 'notBraked' });
  const least = LOWEST_SHARE * s.stature;
  if (s.height < least) reasons.push({ kind: 'low', height: s.height, least });
  if (margin >= 0) reasons.push({ kind: 'overBase', margin });
  else if (ahead > behind) reasons.push({ kind: 'beyondToes', by: ahead, mendable });
  else reasons.push({ kind: 'behindHeels', by: behind, mendable });
  const falls = touched !== undefined || !isBraked || s.height < least || -margin > mendable;
  const kind: VerdictKind = falls ? 'fall' : margin >= 0 ? 'stuck' : ahead > behind ? 'stepForward' : 'stepBack';
  return { kind, reasons, xcom, heel: s.heel, toe: s.toe, margin };
}
