/** What of the athlete goes along by its tick, and what is another without it: for all that leaves this machine. */
import { For, Show } from 'solid-js';
import type { Along, Athlete, Handed } from '../../sim/index.ts';
import { inWords } from '../ui/names.ts';
import { say } from '../ui/units.ts';
import { travelTexts as t } from './travel-words.ts';

export const TICKS = ['name', 'age', 'mass', 'sheets', 'film'] as const;
/** Shown only where there is something. */
const IF_THERE: readonly (keyof Along)[] = ['sheets', 'film'];
/** Nothing is remembered: every opening begins so. */
export const NOTHING_ALONG: Along = { name: false, age: false, mass: false, sheets: false, film: false };

interface TickFact {
  readonly name: string;
  readonly hint: string;
  readonly isThere: boolean;
}
export type TickFacts = Readonly<Record<keyof Along, TickFact>>;

/** `hasBar`: a bar gives way by the mass on it. `hasSheets`, `hasFilm`: sheets, or what was measured in a clip, are kept with the skill and may go. */
export function readTicks(
  athlete: Athlete,
  kept: Handed['kept'],
  { hasBar, hasSheets, hasFilm }: { readonly hasBar: boolean; readonly hasSheets: boolean; readonly hasFilm: boolean },
): TickFacts {
  const human = athlete.kind === 'human' ? athlete : undefined;
  const age = human?.ageYears;
  return {
    name: { name: t.name(inWords(athlete.name)), hint: athlete.club ? t.clubHint : '', isThere: true },
    age: {
      name: age === undefined ? t.names.age : t.age(String(age)),
      hint: age === undefined ? t.notInFile : kept.includes('age') ? t.ageHintChild : t.ageHint,
      isThere: age !== undefined,
    },
    mass: {
      name: human ? t.mass(say('mass', human.massKg)) : t.names.mass,
      hint: human ? (hasBar ? t.massHintBar : t.massHint) : t.bodyHint,
      isThere: human !== undefined,
    },
    sheets: { name: t.names.sheets, hint: t.sheetsHint, isThere: hasSheets },
    film: { name: t.names.film, hint: t.filmHint, isThere: hasFilm },
  };
}

/** `brief`: the names alone. */
export function TravelTicks(props: {
  facts: TickFacts;
  along: Along;
  brief?: boolean | undefined;
  onTick: (what: keyof Along) => void;
}) {
  return (
    <For each={TICKS.filter((what) => !IF_THERE.includes(what) || props.facts[what].isThere)}>
      {(what) => (
        <label title={props.facts[what].hint} classList={{ missing: !props.facts[what].isThere }}>
          <input
            type="checkbox"
            checked={props.along[what]}
            disabled={!props.facts[what].isThere}
            onChange={() => props.onTick(what)}
          />
          <span>
            <b>{props.brief ? t.names[what] : props.facts[what].name}</b>
            <Show when={!props.brief && props.facts[what].hint}>
              <small>{props.facts[what].hint}</small>
            </Show>
          </span>
        </label>
      )}
    </For>
  );
}

/** What is another for the one who opens it, and what the title gives away. */
export function wordChanges(handed: Handed | undefined, along: Along, title: string, name: string): string[] {
  const changes = handed?.changes ?? [];
  const word = along.name ? undefined : nameInTitle(title, name);
  return [
    ...(changes.includes('body') ? [t.changes.body] : []),
    ...(['strength', 'swing', 'landing'] as const).filter((one) => changes.includes(one)).map((one) => t.changes[one]),
    ...(word === undefined ? [] : [t.titleNames(word)]),
  ];
}

/** A word of the athlete's name in the title. */
function nameInTitle(title: string, name: string): string | undefined {
  const words = new Set(title.toLowerCase().match(/\p{L}{3,}/gu) ?? []);
  return (name.match(/\p{L}{3,}/gu) ?? []).find((word) => words.has(word.toLowerCase()));
}
