/** The flight as a moving picture, made in this browser. */
import { createEffect, createSignal, onCleanup, Show, untrack } from 'solid-js';
import { fileName, saveBlob } from '../../app/file-door.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import { SpanFields } from '../../app/span-fields.tsx';
import type { PicturePen } from '../../moving-picture/moving-input.ts';
import { Choice } from '../../ui/choice.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { takePieces } from './later.ts';
import { callOf, requestOf, tagsOf } from './moving-request.ts';
import './moving.css';
import { type MadeMoving, type MovingState, makeMovingState, SIZES } from './moving-state.ts';
import { type SizeName, type Slower, movingTexts as t } from './moving-words.ts';
import type { HandState, HandWay, WayProps } from './way.ts';

const ID = 'moving';
const VIEWS = ['side', 'front', 'top', 'close'] as const;
const SLOWER: readonly Slower[] = ['1', '2', '4', '8', '16'];
const NAMES = Object.keys(SIZES) as SizeName[];
const FORMATS = ['mp4', 'webm'] as const;
const PX = Object.fromEntries(NAMES.map((name) => [name, t.px(SIZES[name].width, SIZES[name].height)])) as Record<
  SizeName,
  string
>;

const movingOf = ({ page }: HandState): MovingState => page.keepState(makeMovingState);

function Thumb() {
  return (
    <svg viewBox="0 0 60 40" width="60" height="40" aria-hidden="true">
      <rect class="thumb-paper" x="0.5" y="0.5" width="59" height="39" />
      <path class="thumb-ink" d="M20 8 L27 21 M24 15 L30 13 M27 21 L34 30 M27 21 L31 31 M0 33 H60" />
      <path d="M46 22 V31 L53 26.5 Z" fill="currentColor" />
    </svg>
  );
}

function wordWish(moving: MovingState): string {
  const { view, slower, size } = moving.wish();
  return t.hint(t.views[view], t.speedSaid(t.speeds[slower]), PX[size]);
}
function wordCount(moving: MovingState): string {
  const count = moving.count();
  return count ? t.count(t.seconds(formatNumber(count.lastsS, 1)), formatNumber(count.pictures, 0)) : '';
}

function save(hand: HandState, { name, blob }: MadeMoving): void {
  try {
    saveBlob(name, blob);
    hand.say(ID, t.saved);
  } catch {
    hand.fail(ID, t.notSaved);
  }
}

function canShare({ name, blob }: MadeMoving): boolean {
  return navigator.canShare?.({ files: [new File([blob], name, { type: blob.type })] }) === true;
}
async function share(hand: HandState, { name, blob }: MadeMoving): Promise<void> {
  try {
    await navigator.share({ files: [new File([blob], name, { type: blob.type })] });
  } catch (error) {
    // closed without a choice
    if (!(error instanceof DOMException && error.name === 'AbortError')) hand.fail(ID, t.notShared);
  }
}

/** Flight and ticks, as one name. */
const whatOf = (hand: HandState): string => JSON.stringify([hand.page.flight.result().key, hand.along()]);

async function make(hand: HandState): Promise<void> {
  const moving = movingOf(hand);
  const file = hand.handed()?.file;
  if (!file) return;
  const [request, tags] = [requestOf(hand, moving), tagsOf(hand)];
  const origin = { call: callOf(request), file };
  const of = whatOf(hand);
  const stem = fileName(request.result.file.title).replace(/\.json$/, '');
  const control = new AbortController();
  const show = (made: number, of: number): void =>
    hand.work(ID, {
      text: t.making(formatNumber(made, 0), formatNumber(of, 0)),
      share: made / of,
      cancel: () => control.abort(),
    });
  try {
    show(0, moving.count()?.pictures ?? 1);
    const room = await hand.page.services.load.moving();
    const formats = await room.formats(request.size);
    const format = formats.find((one) => one === moving.wish().format) ?? formats[0];
    if (!format) {
      hand.fail(ID, typeof VideoEncoder === 'undefined' ? t.none : t.noFormat);
      return;
    }
    const blob = await room.make(request, { format, tags, origin, made: show, signal: control.signal });
    const made = { name: `${stem}.${format}`, blob, of };
    moving.keep(made);
    save(hand, made);
  } catch (error) {
    if (control.signal.aborted) return;
    hand.fail(ID, error instanceof RangeError ? t.noRoom : t.failed(`${wordFault(error)}.`));
  } finally {
    hand.work(ID, undefined);
  }
}

function Preview(props: { hand: HandState; moving: MovingState }) {
  let canvas!: HTMLCanvasElement;
  const [pen, setPen] = createSignal<PicturePen>();
  createEffect(() => {
    const room = props.moving.room();
    if (!room) return;
    onCleanup(takePieces(room.pen(canvas, requestOf(props.hand, props.moving)), setPen));
    onCleanup(() => {
      untrack(pen)?.destroy();
      setPen(undefined);
    });
  });
  createEffect(() => {
    const now = pen();
    if (!now) return;
    const [from, to] = props.moving.span();
    const at = Math.min(Math.max(props.hand.page.cursor.at(), from), to);
    const frame = requestAnimationFrame(() => now.draw(at));
    onCleanup(() => cancelAnimationFrame(frame));
  });
  return <canvas ref={canvas} class="moving-preview" role="img" aria-label={t.preview} data-testid="moving-preview" />;
}

function View(props: WayProps) {
  // the hand is the same for as long as the tool is open
  // eslint-disable-next-line solid/reactivity
  const moving = movingOf(props.hand);
  const wish = moving.wish;
  const name = (): string => (props.hand.along().name ? props.hand.page.doc.athlete().name : '');
  return (
    <div class="moving-view">
      <Preview hand={props.hand} moving={moving} />
      <Show when={moving.formats()?.length === 0}>
        <p role="alert">{typeof VideoEncoder === 'undefined' ? t.none : t.noFormat}</p>
      </Show>
      <Show when={moving.format() !== undefined && moving.format() !== wish().format}>
        <p role="status">{t.webmInstead}</p>
      </Show>
      <Show when={moving.made()?.of === whatOf(props.hand) ? moving.made() : undefined}>
        {(made) => (
          <div class="moving-made">
            <p>{t.ready(made().name, `${formatNumber(made().blob.size / 1e6, 1)} MB`)}</p>
            <button type="button" onClick={() => save(props.hand, made())}>
              {t.again}
            </button>
            <Show when={canShare(made())}>
              <button type="button" onClick={() => void share(props.hand, made())}>
                {t.share}
              </button>
            </Show>
          </div>
        )}
      </Show>
      <Choice
        legend={t.view}
        names={VIEWS}
        words={t.views}
        chosen={wish().view}
        choose={(view) => moving.set({ view })}
      />
      <Choice
        legend={t.speed}
        names={SLOWER}
        words={t.speeds}
        chosen={wish().slower}
        choose={(slower) => moving.set({ slower })}
      />
      <Choice legend={t.size} names={NAMES} words={PX} chosen={wish().size} choose={(size) => moving.set({ size })} />
      <Choice
        legend={t.format}
        names={FORMATS.filter((one) => moving.formats()?.includes(one) !== false)}
        words={t.formats}
        chosen={moving.format() ?? wish().format}
        choose={(format) => moving.set({ format })}
      />
      <fieldset class="moving-span">
        <legend>{t.span}</legend>
        <SpanFields from={moving.span()[0]} to={moving.span()[1]} change={moving.setEdge} />
      </fieldset>
      <fieldset class="moving-shown">
        <legend>{t.shown}</legend>
        <label>
          <input
            type="checkbox"
            checked={wish().hasHeadline}
            onChange={(e) => moving.set({ hasHeadline: e.currentTarget.checked })}
          />
          {t.headline}
        </label>
        <label>
          <input
            type="checkbox"
            checked={wish().hasNumbers}
            onChange={(e) => moving.set({ hasNumbers: e.currentTarget.checked })}
          />
          {props.hand.along().mass ? t.numbersAll : t.numbers}
        </label>
        <p class="quiet">
          {t.always} <Show when={name()}>{(shown) => t.nameToo(shown())}</Show>
        </p>
      </fieldset>
    </div>
  );
}

export const movingWay: HandWay = {
  id: ID,
  name: t.name,
  verb: t.verb,
  short: t.short,
  Thumb,
  lines: (hand) => {
    const moving = movingOf(hand);
    return [[wordWish(moving), wordCount(moving)].filter(Boolean).join(', ')];
  },
  brief: (hand) => wordCount(movingOf(hand)),
  time: (hand) => {
    const [from, to] = movingOf(hand).span();
    return { kind: 'span', from, to };
  },
  refused: (hand) =>
    movingOf(hand).formats()?.length === 0 && typeof VideoEncoder === 'undefined' ? t.none : undefined,
  View,
  run: make,
};
