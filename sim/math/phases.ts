/** The phases of a skill by their place: what comes before a flight, the flight, what comes after it. Plain data, of whatever has a kind. */
interface Phase {
  readonly kind: string;
}
interface Phases<P extends Phase> {
  readonly phases: readonly P[];
}

type Kind<P extends Phase, K extends string> = Extract<P, { kind: K }>;

const isOf = <P extends Phase, K extends string>(phase: P | undefined, ...kinds: K[]): phase is Kind<P, K> =>
  phase !== undefined && (kinds as string[]).includes(phase.kind);

const find = <P extends Phase, K extends string>(phases: readonly P[], ...kinds: K[]): Kind<P, K> | undefined =>
  phases.find((phase): phase is Kind<P, K> => isOf(phase, ...kinds));

/** Every checked file has one; of several it is the first. */
export function flightOf<P extends Phase>({ phases }: Phases<P>): Kind<P, 'flight'> {
  const flight = find(phases, 'flight');
  if (!flight) throw new RangeError('a skill without a flight');
  return flight;
}

/** Before the first flight. */
export function beforeOf<P extends Phase>({ phases }: Phases<P>): Kind<P, 'swing' | 'contact'> | undefined {
  const [first] = phases;
  return isOf(first, 'swing', 'contact') ? first : undefined;
}

/** The landing of a file that has one. */
export const afterOf = <P extends Phase>({ phases }: Phases<P>): Kind<P, 'landing'> | undefined =>
  find(phases, 'landing');

/** One flight of a chain with what comes before and after it. Places in the list of phases; what comes after is what comes before the next. */
export interface LegPlace {
  readonly before: number | undefined;
  readonly flight: number;
  readonly after: number | undefined;
}

/** The flights of a file, each with the places of what comes before and after it. */
export function legsOf({ phases }: Phases<Phase>): LegPlace[] {
  return phases.flatMap(({ kind }, flight) =>
    kind === 'flight'
      ? [
          {
            before: flight > 0 ? flight - 1 : undefined,
            flight,
            after: flight + 1 < phases.length ? flight + 1 : undefined,
          },
        ]
      : [],
  );
}

interface PhaseOver extends Phase {
  readonly end?: { readonly surface?: { readonly kind: string } };
}
/** A flight alone does not say all of it: something comes before or after, or it may meet the board over the water. */
export const isMoreThanFlight = ({ phases }: Phases<PhaseOver>): boolean =>
  phases.some((phase) => phase.kind !== 'flight' || phase.end?.surface?.kind === 'water');
