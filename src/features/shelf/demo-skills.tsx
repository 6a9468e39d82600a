/** The ready skills: three to start with, then all by place and level, found by the words of the trade. */
import { createMemo, createSignal, For, Show } from 'solid-js';
import { keptState, useDocument, useServices } from '../../app/page.ts';
import type { PresetSkill } from '../../app/services.ts';
import { texts } from '../../app/words.ts';
import { Choice } from '../../ui/choice.tsx';
import { findDemos, type ShelfLevel, type ShelfPlace } from './find-demos.ts';
import { pickerTexts } from './words.ts';

const t = pickerTexts;

const LEVELS: readonly ShelfLevel[] = ['all', 'basic', 'intermediate', 'advanced'];

/** Kept while the shelf is closed: who looks for skills of one place looks again. */
const useFilter = keptState(() => {
  const [place, setPlace] = createSignal<ShelfPlace>('all');
  const [level, setLevel] = createSignal<ShelfLevel>('all');
  return { place, setPlace, level, setLevel };
});

export function DemoSkills(props: { wanted: string; close: () => void; setFound: (n: number) => void }) {
  const { presets } = useServices();
  const filter = useFilter();
  const places = createMemo((): readonly ShelfPlace[] => [
    'all',
    ...new Set(presets.skills.flatMap(({ about }) => (about ? [about.place] : []))),
  ]);
  const isAll = (): boolean => filter.place() === 'all' && filter.level() === 'all' && props.wanted.trim() === '';
  const found = createMemo(() => {
    const all = findDemos(presets.skills, props.wanted, filter.place(), filter.level());
    props.setFound(all.length);
    return all;
  });
  const first = createMemo(() =>
    isAll()
      ? found()
          .filter(({ about }) => about?.story !== undefined)
          .sort((a, b) => (a.about?.story ?? 0) - (b.about?.story ?? 0))
      : [],
  );
  const rest = createMemo(() => found().filter((one) => !first().includes(one)));
  return (
    <>
      <h3>{t.demos}</h3>
      <Choice
        legend={t.place}
        names={places()}
        words={{ all: t.allPlaces, ...t.places }}
        chosen={filter.place()}
        choose={filter.setPlace}
      />
      <Choice
        legend={t.level}
        names={LEVELS}
        words={{ all: t.allLevels, ...t.levels }}
        chosen={filter.level()}
        choose={filter.setLevel}
      />
      <Show when={first().length > 0}>
        <h4>{t.first}</h4>
        <ol class="list" aria-label={t.first}>
          <For each={first()}>{(one) => <DemoRow one={one} close={props.close} />}</For>
        </ol>
        <h4>{t.rest}</h4>
      </Show>
      <ul class="list" aria-label={t.demos}>
        <For each={rest()}>{(one) => <DemoRow one={one} close={props.close} />}</For>
      </ul>
      <Show when={found().length === 0}>
        <p class="quiet">
          {t.noneHere}{' '}
          <button
            type="button"
            class="link"
            onClick={() => {
              filter.setPlace('all');
              filter.setLevel('all');
            }}
          >
            {t.showAll}
          </button>
        </p>
      </Show>
    </>
  );
}

function DemoRow(props: { one: PresetSkill; close: () => void }) {
  const doc = useDocument();
  const file = () => props.one.file;
  const about = () => props.one.about;
  return (
    <li>
      <button
        type="button"
        class="row-button"
        aria-current={!doc.origin() && doc.file().title === file().title ? 'true' : undefined}
        onClick={() => {
          props.close();
          doc.openSoon(structuredClone(file()), texts.files.opened(file().title));
        }}
      >
        <span>
          <b>{file().title}</b>
          <span class="quiet note">{about()?.see ?? file().note}</span>
        </span>
        <Show when={about()}>
          {(one) => <span class="quiet note at">{t.placeAndLevel(t.places[one().place], t.levels[one().level])}</span>}
        </Show>
      </button>
    </li>
  );
}
