/** What travels: the skill and the height always, the rest by its tick; and the sentence that says what leaves. */
import { createMemo, createUniqueId, For, Show } from 'solid-js';
import type { Along } from '../../../sim/index.ts';
import { Icon } from '../../ui/icon.tsx';
import { say } from '../../ui/units.ts';
import type { HandState } from './way.ts';
import { handTexts as t } from './words.ts';

const TICKS = ['name', 'age', 'mass'] as const;

interface Facts {
  readonly fixed: readonly { readonly name: string; readonly hint: string }[];
  readonly ticks: Readonly<
    Record<keyof Along, { readonly name: string; readonly hint: string; readonly isThere: boolean }>
  >;
}

/** What the file has of its athlete, in words. */
function readFacts(hand: HandState): Facts {
  const { doc } = hand.page;
  const athlete = doc.athlete();
  const human = athlete.kind === 'human' ? athlete : undefined;
  const age = human?.ageYears;
  const kept = hand.handed()?.kept ?? [];
  const hasBar = doc.chain().phases.some(({ kind }) => kind === 'swing' || kind === 'catch');
  return {
    fixed: [
      { name: t.skill, hint: doc.versions().length > 0 ? t.skillHintA : t.skillHint },
      human
        ? { name: t.height(say('length', human.statureM), t.sexes[human.sex]), hint: t.heightHint }
        : { name: t.body, hint: t.bodyHint },
      ...(human?.segments && Object.keys(human.segments).length > 0
        ? [{ name: t.measured, hint: t.measuredHint }]
        : []),
    ],
    ticks: {
      name: { name: t.name(athlete.name), hint: athlete.club ? t.clubHint : '', isThere: true },
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
    },
  };
}

export function HandSentence(props: { hand: HandState }) {
  const facts = createMemo(() => readFacts(props.hand));
  const leaves = (): string[] => {
    const { fixed, ticks } = facts();
    return [
      ...fixed.map((one) => one.name),
      ...TICKS.filter((what) => props.hand.along()[what] && ticks[what].isThere).map((what) => ticks[what].name),
    ];
  };
  const stays = (): string[] =>
    TICKS.filter((what) => !props.hand.along()[what] && facts().ticks[what].isThere).map((what) => t.names[what]);
  return (
    <p class="hand-sentence" role="status">
      {t.handed}{' '}
      <For each={leaves()}>
        {(word, i) => (
          <>
            <Show when={i() > 0}>{i() === leaves().length - 1 ? ` ${t.and} ` : ', '}</Show>
            <b>{word}</b>
          </>
        )}
      </For>
      . <span class="hand-stays">{t.stays(stays())}</span>
    </p>
  );
}

/** `brief`: on a phone, the boxes alone in one line. */
export function Travels(props: { hand: HandState; brief?: boolean; low?: boolean }) {
  const facts = createMemo(() => readFacts(props.hand));
  const id = createUniqueId();
  return (
    <section class="travels" classList={{ brief: props.brief, low: props.low }} aria-labelledby={id}>
      <h2 id={id}>{props.brief ? t.travelsToo : t.travels}</h2>
      <Show when={!props.brief && !props.low}>
        <For each={facts().fixed}>
          {(one) => (
            <p class="travels-fixed" title={one.hint}>
              <Tick /> <b>{one.name}</b>
            </p>
          )}
        </For>
      </Show>
      <For each={TICKS}>
        {(what) => (
          <label title={facts().ticks[what].hint} classList={{ missing: !facts().ticks[what].isThere }}>
            <input
              type="checkbox"
              checked={props.hand.along()[what]}
              disabled={!facts().ticks[what].isThere}
              onChange={() => props.hand.tick(what)}
            />
            <span>
              <b>{props.brief ? t.names[what] : facts().ticks[what].name}</b>
              <Show when={!props.brief && facts().ticks[what].hint}>
                <small>{facts().ticks[what].hint}</small>
              </Show>
            </span>
          </label>
        )}
      </For>
    </section>
  );
}

const Tick = () => (
  <svg class="travels-tick" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
    <path d="M4 10.5 L8.5 15 L16.5 5.5" />
  </svg>
);

/** What is another for the one who opens it, and what the title gives away. */
export function HandCautions(props: { hand: HandState }) {
  const said = createMemo((): string[] => {
    const { handed, page, along } = props.hand;
    const changes = handed()?.changes ?? [];
    const word = along().name ? undefined : nameInTitle(page.doc.chain().title, page.doc.athlete().name);
    return [
      ...(changes.includes('body') ? [t.changes.body] : []),
      ...(changes.includes('swing') ? [t.changes.swing] : []),
      ...(word === undefined ? [] : [t.titleNames(word)]),
    ];
  });
  return (
    <For each={said()}>
      {(text) => (
        <p class="hand-caution">
          <Icon name="caution" size={16} /> {text}
        </p>
      )}
    </For>
  );
}

/** A word of the athlete's name in the title. */
function nameInTitle(title: string, name: string): string | undefined {
  const words = new Set(title.toLowerCase().match(/\p{L}{3,}/gu) ?? []);
  return (name.match(/\p{L}{3,}/gu) ?? []).find((word) => words.has(word.toLowerCase()));
}
