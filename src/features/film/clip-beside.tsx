/** A and the clip at the frame that is shown, in words; what is inferred is called so. */
import { createMemo, For, Show } from 'solid-js';
import { wordClipCaveats } from '../../../sim/words/clip-words.ts';
import { useFlight } from '../../app/page.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { apartRows } from './clip-apart.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

const HUES = { somersault: 'som', twist: 'twist', tilt: 'tilt', height: '' } as const;

export function ClipBeside(props: { desk: ClipDesk }) {
  const flight = useFlight();
  const rows = createMemo(() => apartRows(props.desk, flight.result()));
  const notes = (): string[] =>
    wordClipCaveats({
      how: props.desk.sight()?.view.how,
      lines: props.desk.measuring().lines,
    }).slice(1);
  const drop = (): string | undefined => {
    const [found, up] = [props.desk.drop(), props.desk.times()?.up];
    return (
      found && up && t.drop(say('length', Math.abs(found.value)), say('length', found.plusMinus), found.value >= 0)
    );
  };
  return (
    <section class="clip-beside" aria-label={t.besideStill}>
      <h3>{t.besideAt(formatNumber(props.desk.time.at(), 3))}</h3>
      <dl>
        <For each={rows()}>
          {(row) => (
            <div>
              <dt class={HUES[row.name]}>{t.besideRows[row.name]}</dt>
              <dd>
                <b>{row.said}</b> <i classList={{ inferred: row.isInferred }}>{row.how}</i>
              </dd>
            </div>
          )}
        </For>
      </dl>
      {/* while the figure is posed its frames have the room */}
      <Show when={props.desk.hand() !== 'pose'}>
        <Show when={drop()}>{(said) => <p class="quiet">{said()}</p>}</Show>
        <For each={notes()}>{(note) => <p class="quiet">{note}</p>}</For>
      </Show>
    </section>
  );
}

/** While anything that is shown was not seen as such. */
export function ClipCaution(props: { desk: ClipDesk }) {
  const flight = useFlight();
  const isBetween = createMemo(() =>
    apartRows(props.desk, flight.result()).some(({ name, isInferred }) => isInferred && name === 'somersault'),
  );
  const isPosed = (): boolean => props.desk.measuring().posed.length > 0;
  return (
    <Show when={isPosed() || isBetween()}>
      <p class="clip-caution">
        <Icon name="caution" size={24} />
        <span>
          <Show
            when={isPosed()}
            fallback={
              <>
                <b>{t.betweenLead}</b>
                {t.betweenRest}
              </>
            }
          >
            {wordClipCaveats({})[0]}
          </Show>
        </span>
      </p>
    </Show>
  );
}
