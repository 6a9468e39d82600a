/** Over the floor of a student's sheet: what is given, the athlete, whose sheet it is and how far it has come. */
import { createEffect, createSignal, For, onCleanup, Show } from 'solid-js';
import { useSize } from '../../ui/size.ts';
import type { AnswerWork } from './answer-state.ts';
import { answerTexts as t } from './answer-words.ts';
import { listGiven } from './given.ts';
import type { SheetFlight, SheetFlightState } from './sheet-flight.ts';

export function AnswerHead(props: {
  work: AnswerWork;
  flight: SheetFlightState;
  nameField: (el: HTMLElement) => void;
  isNameAsked: boolean;
}) {
  return (
    <section class="pupil-air">
      <Given work={props.work} />
      <Picture work={props.work} flight={props.flight} />
      <Yours work={props.work} nameField={props.nameField} isNameAsked={props.isNameAsked} />
    </section>
  );
}

function Given(props: { work: AnswerWork }) {
  const given = () => {
    const numbers = props.work.numbers();
    return numbers && listGiven(numbers.sheet);
  };
  return (
    <div class="pupil-given">
      <h2>{t.given}</h2>
      <Show when={given()} fallback={<p class="quiet">{props.work.fault() ?? t.readingGiven}</p>}>
        {(list) => (
          <Show when={list().length > 0} fallback={<p class="quiet">{t.noSheet}</p>}>
            <dl>
              <For each={list()}>
                {(one) => (
                  <div>
                    <dt>{one.name}</dt>
                    <dd>
                      <b>{one.value}</b> <span class="unit">{one.unit}</span>
                    </dd>
                    <Show when={one.note}>
                      <dd class="pupil-note quiet">{one.note}</dd>
                    </Show>
                  </div>
                )}
              </For>
            </dl>
          </Show>
        )}
      </Show>
    </div>
  );
}

/** px for one pose, and how many there are at least and at most */
const SLOT = { px: 98, least: 4, most: 7 } as const;
/** px of the picture at most */
const HEIGHT = 208;

function Picture(props: { work: AnswerWork; flight: SheetFlightState }) {
  let place!: HTMLElement;
  const size = useSize(() => place);
  const count = (): number => Math.min(Math.max(Math.floor(size().width / SLOT.px), SLOT.least), SLOT.most);
  const [made, setMade] = createSignal<ReturnType<SheetFlight['paper']['sheetFigures']>>();
  createEffect(() => {
    const found = props.flight();
    const [width, isOpen] = [size().width, props.work.isComplete()];
    if (!found || 'reason' in found || width === 0) return;
    const input = { count: count(), width, height: HEIGHT, isOpen, ink: 'page', size: 13 } as const;
    const timer = setTimeout(() => setMade(found.paper.sheetFigures(found.flight, input)));
    onCleanup(() => clearTimeout(timer));
  });
  const reason = (): string | undefined => {
    const found = props.flight();
    return found && 'reason' in found ? t.noPicture(found.reason) : undefined;
  };
  const label = (): string => (props.work.isComplete() ? t.pictureOpen : t.picture)(count());
  return (
    <figure class="pupil-picture" ref={place}>
      <Show when={made()} fallback={<p class="quiet">{reason() ?? t.drawing}</p>}>
        {(drawn) => (
          <svg
            role="img"
            aria-label={label()}
            viewBox={`0 0 ${drawn().width} ${drawn().height}`}
            preserveAspectRatio="xMidYMax meet"
            // eslint-disable-next-line solid/no-innerhtml -- markup made by our own scene writer from numbers alone
            innerHTML={drawn().markup}
          />
        )}
      </Show>
    </figure>
  );
}

function Yours(props: { work: AnswerWork; nameField: (el: HTMLElement) => void; isNameAsked: boolean }) {
  const count = (): number => props.work.worksheet().questions.length;
  const said = (): readonly [string, string] => t.locked(props.work.lockedCount(), count());
  return (
    <div class="pupil-yours">
      <h2>{t.yours}</h2>
      <label>
        <span>{t.name}</span>
        <input
          ref={(el) => props.nameField(el)}
          type="text"
          maxLength={80}
          autocomplete="off"
          value={props.work.name()}
          onInput={(e) => props.work.setName(e.currentTarget.value)}
        />
      </label>
      <Show when={props.isNameAsked && props.work.name().trim() === ''}>
        <p>{t.needsName}</p>
      </Show>
      <label>
        <span>{t.group}</span>
        <input
          type="text"
          maxLength={40}
          autocomplete="off"
          value={props.work.group()}
          onInput={(e) => props.work.setGroup(e.currentTarget.value)}
        />
      </label>
      <p class="quiet">{t.privacy}</p>
      <p class="pupil-progress">
        <span class="pupil-boxes" aria-hidden="true">
          <For each={props.work.worksheet().questions}>
            {(_, i) => <span classList={{ full: props.work.isLocked(i()) }} />}
          </For>
        </span>
        <span>
          <b>{said()[0]}</b> {said()[1]}
        </span>
      </p>
      <p
        classList={{ quiet: props.work.isKept() !== false, 'pupil-unkept': props.work.isKept() === false }}
        role="status"
      >
        {props.work.isKept() === false ? t.notSaved : t.saved}
      </p>
    </div>
  );
}
