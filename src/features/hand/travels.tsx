/** What travels: the skill and the height always, the rest by its tick; and the sentence that says what leaves. */
import { createMemo, createUniqueId, For, Show } from 'solid-js';
import { readTicks, TICKS, type TickFacts, TravelTicks, wordChanges } from '../../app/travel-ticks.tsx';
import { travelTexts } from '../../app/travel-words.ts';
import { Icon } from '../../ui/icon.tsx';
import { say } from '../../ui/units.ts';
import type { HandState } from './way.ts';
import { handTexts as t } from './words.ts';

interface Facts {
  readonly fixed: readonly { readonly name: string; readonly hint: string }[];
  readonly ticks: TickFacts;
}

/** What the file has of its athlete, in words. */
function readFacts(hand: HandState): Facts {
  const { doc } = hand.page;
  const athlete = doc.athlete();
  const human = athlete.kind === 'human' ? athlete : undefined;
  const kept = hand.handed()?.kept ?? [];
  const hasBar = doc.chain().phases.some(({ kind }) => kind === 'swing' || kind === 'catch');
  return {
    fixed: [
      { name: t.skill, hint: doc.versions().length > 0 ? t.skillHintA : t.skillHint },
      human
        ? { name: t.height(say('length', human.statureM), t.sexes[human.sex]), hint: t.heightHint }
        : { name: t.body, hint: travelTexts.bodyHint },
      ...(human?.segments && Object.keys(human.segments).length > 0
        ? [{ name: t.measured, hint: t.measuredHint }]
        : []),
    ],
    ticks: readTicks(athlete, kept, {
      hasBar,
      hasSheets: (doc.chain().worksheets ?? []).length > 0,
      hasFilm: hand.hasFilm(),
    }),
  };
}

export function HandSentence(props: { hand: HandState }) {
  const facts = createMemo(() => readFacts(props.hand));
  const leaves = (): string[] => {
    const { fixed, ticks } = facts();
    return [
      ...fixed.map((one) => one.name),
      ...TICKS.filter((what) => props.hand.along()[what] && ticks[what].isThere).map((what) => ticks[what].name),
      ...(props.hand.clip() && props.hand.picked() === 'file' ? [t.clip] : []),
    ];
  };
  const stays = (): string[] =>
    TICKS.filter((what) => !props.hand.along()[what] && facts().ticks[what].isThere).map(
      (what) => travelTexts.names[what],
    );
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
      <TravelTicks facts={facts().ticks} along={props.hand.along()} brief={props.brief} onTick={props.hand.tick} />
      <Show when={props.hand.offered()}>
        {(clip) => (
          <label>
            <input
              type="checkbox"
              checked={props.hand.page.shell.clipDoor.sends()}
              onChange={(e) => props.hand.page.shell.clipDoor.setSends(e.currentTarget.checked)}
            />
            <span>
              <b>{t.clip}</b>
              <Show when={!props.brief}>
                <small>{t.clipHint(clip().isBlurred)}</small>
              </Show>
            </span>
          </label>
        )}
      </Show>
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
    return wordChanges(handed(), along(), page.doc.chain().title, page.doc.athlete().name);
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
