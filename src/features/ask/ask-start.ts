/** What the sentence and the list of what may change begin with: the skill's own target or what it does now. */
import type { Asking, AskSkill, Wanted } from '../../engine/ask.ts';
import type { FlightResult, Outline } from '../../engine/result.ts';

/** What may change, with its span; SI. */
export interface Chosen {
  readonly id: string;
  readonly from: number;
  readonly to: number;
}

/** Moves that may begin at another time, at first: the last ones, where the arms work. */
const MOVES = 2;
/** Under this many turns there is none. */
const NONE = 0.25;

export function wantedOf(engine: Asking, { spec }: AskSkill, { outline }: FlightResult): Wanted {
  const { airTimeWithin: _, heightWithin: __, ...usual } = engine.usual;
  const { target } = spec;
  if (target)
    return {
      ...usual,
      ending: 'held',
      somersaults: target.somersaults,
      direction: target.somersaultWord,
      twists: target.twists,
      twistTo: target.twistWord,
      landingAngle: target.landingAngle,
    };
  const half = (turns: number | null): number => (turns === null ? 0 : Math.round(turns * 2) / 2);
  const somersaults = half(outline.somersaults);
  const twists = half(outline.twists);
  return {
    ...usual,
    ending: 'held',
    somersaults,
    direction: somersaults < NONE ? '' : outline.somersaultWord,
    twists,
    twistTo: twists < NONE ? '' : outline.twistWord,
  };
}

/** How the flight ends, as a verdict judges it, the first that is judged. */
const ENDINGS = ['catch.gap', 'reach', 'short'] as const;

/** What the map is of at first: the twist, or where there is none the landing; `judged`: the results that a verdict judges. */
export const mapFirst = (
  { somersaults, twists }: Pick<Outline, 'somersaults' | 'twists'>,
  judged: readonly string[],
): string =>
  (twists ?? 0) >= NONE || ((somersaults ?? 0) < NONE && (twists ?? 0) > 0.05)
    ? 'twists'
    : (ENDINGS.find((id) => judged.includes(id)) ?? 'somersaults');

/** Where no somersault is turned the momentum is about the vertical. */
export const momentumFirst = ({ somersaults }: Pick<Outline, 'somersaults'>): string =>
  (somersaults ?? 0) < NONE ? 'takeoff.h.y' : 'takeoff.h.z';

export function chooseFirst(engine: Asking, open: AskSkill, outline: Pick<Outline, 'somersaults'>): Chosen[] {
  const momentum = momentumFirst(outline);
  const has = (id: string): boolean => open.inputs.some((i) => i.id === id);
  const moves = open.inputs.filter((i) => i.id.endsWith('.moveStart')).map((i) => i.id);
  const times =
    moves.length > 0 ? moves.slice(-MOVES) : open.inputs.filter((i) => i.eventS !== undefined).map((i) => i.id);
  return [
    ...['swing.releaseAngle', 'swing.releaseTime', 'contact.force', momentum].filter(has),
    ...times.slice(-MOVES),
    ...['contact.lean', 'takeoff.lean'].filter(has),
  ].map((id) => {
    const [from, to] = engine.spanOf(open, id);
    return { id, from, to };
  });
}
