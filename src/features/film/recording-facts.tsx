/** At the left of the air: what the file is, and how it was read. */
import { createMemo, For, Show } from 'solid-js';
import type { RecordingStudy } from '../../../sim/index.ts';
import { useDocument } from '../../app/page.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { fileInWords } from './file-in-words.ts';
import type { RecordingState } from './recording-state.ts';
import { recordingTexts as t } from './recording-words.ts';

/** px of a line, and of the heading with the button */
const LINE = { most: 25, least: 18 } as const;
const HEAD = 24;

export function RecordingFacts(props: { state: RecordingState; study: RecordingStudy; height?: number }) {
  const doc = useDocument();
  const rows = createMemo((): readonly (readonly [string, string])[] => {
    const s = props.study;
    const count: readonly [string, string] =
      s.joints > 0
        ? [t.fact.joints, String(s.joints)]
        : s.points > 0
          ? [t.fact.markers, String(s.points)]
          : [t.fact.columns, String(s.map.columns.length)];
    return [
      count,
      [t.fact.rate, formatNumber(s.rateHz, Number.isInteger(s.rateHz) ? 0 : 2)],
      [t.fact.long, say('time', s.seconds)],
      [t.fact.missing, t.missing(s.missingRows, s.frames)],
      [t.fact.up, t.upOf(s.map.up)],
      [t.fact.body, doc.athlete().name],
    ];
  });
  const line = (): number =>
    props.height === undefined
      ? LINE.most
      : Math.min(LINE.most, Math.max(LINE.least, Math.floor((props.height - HEAD - 8) / (rows().length + 1))));
  return (
    <section class="rec-facts" aria-label={t.facts}>
      <header>
        <h2>{t.facts}</h2>
        <button type="button" class="link" onClick={() => props.state.pick()}>
          {t.openOther}
        </button>
      </header>
      <dl style={{ '--line': `${line()}px` }}>
        <div title={fileInWords(props.study.name)}>
          <dt class="rec-file">{fileInWords(props.study.name.replace(/\.[^.]*$/, ''))}</dt>
          <dd>{t.kinds[props.study.kind]}</dd>
        </div>
        <For each={rows()}>
          {([name, value]) => (
            <div>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          )}
        </For>
      </dl>
      <Show when={props.height === undefined && props.study.notes.length > 0}>
        <Notes notes={props.study.notes} />
      </Show>
    </section>
  );
}

const Notes = (props: { notes: readonly string[] }) => (
  <details class="rec-notes">
    <summary>{t.notes}</summary>
    <ul>
      <For each={props.notes}>{(note) => <li>{note}</li>}</For>
    </ul>
  </details>
);
