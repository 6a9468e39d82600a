/** The phases of a skill by their place: what comes before the flight, the flight, what comes after it. Plain data, of whatever has a kind. */
interface Phase {
  readonly kind: string;
}
interface Phases<P extends Phase> {
  readonly phases: readonly P[];
}

const find = <P extends Phase, K extends string>(
  phases: readonly P[],
  ...kinds: K[]
): Extract<P, { kind: K }> | undefined =>
  phases.find((phase): phase is Extract<P, { kind: K }> => (kinds as string[]).includes(phase.kind));

/** Every checked file has one. */
export function flightOf<P extends Phase>({ phases }: Phases<P>): Extract<P, { kind: 'flight' }> {
  const flight = find(phases, 'flight');
  if (!flight) throw new RangeError('a skill without a flight');
  return flight;
}

export const beforeOf = <P extends Phase>({
  phases,
}: Phases<P>): Extract<P, { kind: 'swing' | 'contact' }> | undefined => find(phases, 'swing', 'contact');

export const afterOf = <P extends Phase>({ phases }: Phases<P>): Extract<P, { kind: 'landing' }> | undefined =>
  find(phases, 'landing');

interface PhaseOver extends Phase {
  readonly end?: { readonly surface?: { readonly kind: string } };
}
/** A flight alone does not say all of it: something comes before or after, or it may meet the board over the water. */
export const isMoreThanFlight = ({ phases }: Phases<PhaseOver>): boolean =>
  phases.some((phase) => phase.kind !== 'flight' || phase.end?.surface?.kind === 'water');
