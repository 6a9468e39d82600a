/** What each name of the recording is on the body, with a choice list; what is to be checked comes first. */
import { createMemo, createSignal, For, Show } from 'solid-js';
import type { RecordingStudy } from '../../../sim/index.ts';
import { wordJoint, wordPart } from '../../app/say/body-words.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { checkFirst, mapRows, type NameRow, withMapped } from './recording-options.ts';
import type { RecordingState } from './recording-state.ts';
import { recordingTexts as t } from './recording-words.ts';

const ROW = 26;
const HEAD = 30;

interface JointsProps {
  state: RecordingState;
  study: RecordingStudy;
}

export function RecordingJoints(props: JointsProps & { height?: number }) {
  const [isAll, setAll] = createSignal(false);
  const rows = createMemo(() => mapRows(props.study.map, props.study.unused));
  const used = (): NameRow[] => rows().filter(({ basis }) => basis !== 'none');
  const placed = (): number => rows().filter(({ basis }) => basis === 'place').length;
  const shown = (): NameRow[] =>
    checkFirst(rows()).slice(0, props.height === undefined ? 8 : Math.max(2, Math.floor((props.height - HEAD) / ROW)));
  const title = (): string => ({ joint: t.joints, point: t.markers, column: t.columns })[rows()[0]?.kind ?? 'joint'];
  return (
    <section class="rec-joints" aria-label={title()}>
      <header>
        <h2>{title()}</h2>
        <p>
          <Show when={used().length > 0} fallback={t.unmapped}>
            {t.byName(used().length - placed(), used().length)}
            <Show when={placed() > 0}>
              , <b>{t.byPlace(placed())}</b>
            </Show>
          </Show>
        </p>
        <button type="button" class="link" aria-haspopup="dialog" onClick={() => setAll(true)}>
          {t.all(rows().length)}
        </button>
      </header>
      <MapList {...props} rows={shown()} />
      <Show when={isAll()}>
        <Sheet title={t.allTitle} onClose={() => setAll(false)}>
          <MapList {...props} rows={checkFirst(rows())} />
        </Sheet>
      </Show>
    </section>
  );
}

function MapList(props: JointsProps & { rows: readonly NameRow[] }) {
  const parts = createMemo(() => props.study.body?.segments.map(({ name }) => name) ?? []);
  const choices = (row: NameRow): readonly string[] => {
    const list = row.kind === 'column' ? props.study.angleNames : parts();
    return row.to === '' || list.includes(row.to) ? list : [row.to, ...list];
  };
  const word = (row: NameRow, name: string): string => (row.kind === 'column' ? wordJoint(name) : wordPart(name));
  return (
    <ul class="rec-map">
      <For each={props.rows}>
        {(row) => (
          <li classList={{ check: row.basis === 'place', unused: row.basis === 'none' }}>
            <span class="rec-from" title={row.from}>
              {row.from}
            </span>
            <svg class="rec-arrow" width="18" height="10" viewBox="0 0 18 10" aria-hidden="true">
              <path d="M0 5H16M12 1l4 4-4 4" />
            </svg>
            <select
              aria-label={t.mapTo(row.from)}
              onChange={(e) =>
                props.state.change(withMapped(props.state.options(), props.study.map, row, e.currentTarget.value))
              }
            >
              <option value="" selected={row.to === ''}>
                {t.notUsed}
              </option>
              <For each={choices(row)}>
                {(name) => (
                  <option value={name} selected={name === row.to}>
                    {word(row, name)}
                  </option>
                )}
              </For>
            </select>
            <span class="rec-basis">{t.basis[row.basis]}</span>
          </li>
        )}
      </For>
    </ul>
  );
}
