/** What gave a flight and what ends it, as tiles: the whole tile is the button. */
import { For, Match, Show, Switch } from 'solid-js';
import type { FileTakeoffContact } from '../../../sim/index.ts';
import { beforeOf, flightOf } from '../../../sim/math/phases.ts';
import { useDocument, useFlight, useServices } from '../../app/page.ts';
import { wordEnding } from '../../app/say/sentence-words.ts';
import { useWholeState } from '../../app/whole-state.ts';
import { texts } from '../../app/words.ts';
import { isSwing, landingForSurface } from '../../document/contact-edits.ts';
import { withAfter, withBefore } from '../../document/phases.ts';
import { choiceTexts as t } from './choice-texts.ts';
import { contactTexts } from './words.ts';

type Tile = keyof typeof t.tiles;

/** px, of figures about 30 px a metre: apparatus in ink, what is under it as a line */
const PICTURES: Readonly<Record<Tile, string>> = {
  swing: 'M40 66V14M36 14h8M40 14L58 48M8 66h72',
  floor: 'M8 66h72M44 60V30M44 30l6-16M24 56V38M20 42l4-6l4 6',
  springboard: 'M18 66L64 56M18 66h50M54 54V26M54 26l6-14',
  vaultTable: 'M28 36h40M32 36l6 6h20l6-6M48 42V66M8 66h72M44 34L26 8',
  trampoline: 'M8 36h22q12 26 24 0h22M42 48V18M12 36l4 30M72 36l-4 30',
  divingBoard: 'M8 40h52M14 40V66M54 38V12',
  competitionMat: 'M14 66h60v-9H14zM44 57l-6-12l8-10l-2-14',
  matFloor: 'M8 66h72M8 61h72M44 59l-6-12l8-10l-2-14',
  withSoftLayer: 'M14 66h60V50H14zM44 50l-6-12l8-10l-2-14',
  pit: 'M14 66V34M74 66V34M14 66h60M18 44h52M18 54h52M30 40l10-8l14 4',
};

const BEFORE: readonly Tile[] = ['swing', 'floor', 'springboard', 'vaultTable', 'trampoline', 'divingBoard'];
const AFTER: readonly Tile[] = ['competitionMat', 'matFloor', 'withSoftLayer', 'pit'];
/** m/s along the way of travel and up as one comes to each place: within what is usual there (sim/skill/contact-ranges.ts) */
const APPROACH: Readonly<Partial<Record<Tile, readonly [number, number]>>> = {
  floor: [4, -1],
  springboard: [7.5, -1],
  vaultTable: [4.3, 2.2],
  trampoline: [0, -7],
  divingBoard: [0.5, -4],
};

/** whole skills that are offered beside the tiles */
const MOST = 4;

function TileButton(props: { name: Tile; press: () => void }) {
  return (
    <button type="button" class="choice-tile" onClick={() => props.press()}>
      <svg width="84" height="72" aria-hidden="true">
        <path d={PICTURES[props.name]} />
      </svg>
      <span>
        <b>{t.tiles[props.name][0]}</b> {t.tiles[props.name][1]}
      </span>
    </button>
  );
}

export function ChoiceTiles() {
  const doc = useDocument();
  const whole = useWholeState();
  const flight = useFlight();
  const { flying, presets } = useServices();
  const putBefore = (name: Tile): void => {
    // another document's flight was not launched by this one
    if (!flight.edited()) return;
    const launched = flying.launchedTakeoff(flight.result());
    if (name === 'swing') {
      const swing = presets.skills.map(({ file }) => beforeOf(file)).find(isSwing);
      if (swing) doc.edit(withBefore(doc.file(), structuredClone(swing), launched), contactTexts.addedSwing);
      return;
    }
    const [along, up] = APPROACH[name] ?? [0, 0];
    const way = Math.sign(launched.velocityMPerS?.along ?? 1) || 1;
    const contact: FileTakeoffContact = {
      kind: 'contact',
      place: name as FileTakeoffContact['place'],
      velocityMPerS: { along: way * along, up },
    };
    doc.edit(withBefore(doc.file(), contact, launched), contactTexts.addedContact);
  };
  const putAfter = (name: Tile): void => {
    const mat = name === 'matFloor' ? 'floor' : (name as 'competitionMat');
    doc.edit(withAfter(doc.file(), { ...landingForSurface(doc.file()), mat }), contactTexts.addedLanding);
  };
  /** by a landing, a catch or an entry, or in water */
  const isEnded = (): boolean => {
    const { phases } = doc.file();
    const surface = flightOf(doc.file()).end.surface?.kind;
    return phases[phases.length - 1].kind !== 'flight' || surface === 'water';
  };
  const wholes = () => presets.skills.filter(({ file }) => file.phases.length > 3).slice(0, MOST);
  return (
    <section class="choices">
      <Show when={!beforeOf(doc.file())}>
        <h3>
          {t.before} <span>{t.beforeHint}</span>
        </h3>
        <div class="choice-row">
          <For each={BEFORE}>{(name) => <TileButton name={name} press={() => putBefore(name)} />}</For>
        </div>
      </Show>
      <Show when={!isEnded()}>
        <h3>
          {t.after} <span>{t.afterHint}</span>
        </h3>
        <div class="choice-row">
          <For each={AFTER}>{(name) => <TileButton name={name} press={() => putAfter(name)} />}</For>
        </div>
        <p class="quiet">
          <Switch fallback={t.nothing(wordEnding(whole.verdict()))}>
            <Match when={whole.verdict().ending.kind === 'inAir'}>{t.nothingInAir}</Match>
            <Match when={whole.verdict().ending.kind === 'notComputed'}>{t.notJudged}</Match>
          </Switch>
        </p>
      </Show>
      <Show when={!beforeOf(doc.file()) && !isEnded()}>
        <p class="choice-whole">
          {t.whole}{' '}
          <For each={wholes()}>
            {({ file }) => (
              <button
                type="button"
                class="plain"
                onClick={() => doc.openSoon(structuredClone(file), texts.files.opened(file.title))}
              >
                {file.title}
              </button>
            )}
          </For>
        </p>
      </Show>
    </section>
  );
}
