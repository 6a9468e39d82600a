/** Pictures of the flight: poses as they are asked for, kept as SVG or PNG. */

import { createMemo, createSignal, For, onCleanup, Show } from 'solid-js';
import { svgBlob } from '../../app/print-pages.ts';
import { PAGE_NUMBERS } from '../../app/say/sentence-words.ts';
import { makePlots } from '../../app/sheet-content.ts';
import { wholeStateOf } from '../../app/whole-state.ts';
import { texts } from '../../app/words.ts';
import type { PaperPage } from '../../paper/page-svg.ts';
import type { PictureLayout } from '../../paper/picture-places.ts';
import type { TimesBy } from '../../paper/picture-times.ts';
import { makeCardState } from './card-state.ts';
import { flyVersion } from './fly-version.ts';
import { useLater } from './later.ts';
import { savePng, saveSvg } from './paper-out.ts';
import { dateOf, nameOf, titleOf, useTypeface } from './paper-page.ts';
import { picturesTexts as t } from './pictures-words.ts';
import type { HandState, HandWay, WayProps } from './way.ts';

const ID = 'pictures';
const COUNT = { least: 2, most: 16, usual: 6 } as const;
const WIDTH = { least: 60, most: 1200, usual: 160 } as const;
const LAYOUTS = ['row', 'path', 'time'] as const;
const STEPS = ['time', 'somersault', 'twist', 'chosen'] as const;

interface PictureSettings {
  readonly layout: PictureLayout;
  readonly by: TimesBy | 'chosen';
  readonly count: number;
  readonly widthMm: number;
  readonly hasHead: boolean;
  readonly hasPlots: boolean;
  /** index of the version beside; -1: none */
  readonly beside: number;
  readonly chosen: readonly number[];
}

function makeSettings() {
  const [settings, put] = createSignal<PictureSettings>({
    layout: 'time',
    by: 'time',
    count: COUNT.usual,
    widthMm: WIDTH.usual,
    hasHead: true,
    hasPlots: false,
    beside: -1,
    chosen: [],
  });
  return [settings, put] as const;
}
const settingsOf = (hand: HandState) => hand.page.keepState(makeSettings);
/** Paper and flight are those of the card. */
const sourceOf = (hand: HandState) => hand.page.keepState(makeCardState);

function timesOf(hand: HandState): readonly number[] {
  const [settings] = settingsOf(hand);
  const { by, count, chosen } = settings();
  const [paper, flight] = [sourceOf(hand).paper(), sourceOf(hand).flight()];
  if (!paper || !flight) return [];
  if (by === 'chosen' && chosen.length > 0) return chosen.map((s) => Math.min(s, flight.duration));
  const turn = by === 'chosen' ? 'time' : by;
  return paper.equalTimes(flight, count, turn) ?? paper.equalTimes(flight, count, 'time') ?? [];
}

function View(props: WayProps) {
  // the state of the tool is the same for as long as it is open
  // eslint-disable-next-line solid/reactivity
  const { hand } = props;
  const { page } = hand;
  const [settings, setSettings] = settingsOf(hand);
  const put = (changed: Partial<PictureSettings>): void => {
    setSettings({ ...settings(), ...changed });
  };
  const source = sourceOf(hand);
  const title = (): string => titleOf(hand);
  const typeface = useTypeface(source.paper, () => [title(), nameOf(hand) ?? ''].join(' '));
  const picture = useLater<PaperPage>(() => {
    const [paper, flight, times, face] = [source.paper(), source.flight(), timesOf(hand), typeface()];
    const handed = hand.handed()?.file;
    if (!paper || !flight || times.length === 0 || !face || !handed) return undefined;
    const { layout, widthMm, hasHead, hasPlots, beside } = settings();
    const [result, own, who] = [page.flight.result(), title(), nameOf(hand)];
    const said = paper.resultLine(wholeStateOf(page).verdict(), PAGE_NUMBERS);
    const plots = hasPlots ? makePlots(flight.frames, hand.along().mass) : undefined;
    const version = page.doc.versions()[beside];
    page.flight.released();
    return function* () {
      const other = version && (yield* flyVersion(page, version));
      const origin = paper.originMark(result, handed);
      yield;
      return yield* paper.picture({
        versions: [
          { letter: 'A', flight },
          ...(other ? [{ letter: 'B' as const, flight: paper.makeFlight(other, 'B') }] : []),
        ],
        layout,
        times,
        widthMm,
        ...(hasHead ? { head: { name: [own, who].filter(Boolean).join(', '), result: said } } : {}),
        ...(plots ? { plots: { times: flight.frames.t, list: plots } } : {}),
        standing: texts.standingCaution,
        foot: `${paper.pictureFoot(other && { a: own, b: version.name })} ${t.foot(dateOf())}`,
        origin,
        ...face,
      });
    };
  });
  const src = createMemo(() => {
    const now = picture.shown();
    if (!now) return undefined;
    const address = URL.createObjectURL(svgBlob(now));
    onCleanup(() => URL.revokeObjectURL(address));
    return address;
  });
  const keep = async (kind: 'svg' | 'png'): Promise<void> => {
    const [now, paper] = [picture.made(), source.paper()];
    if (!now || !paper) return;
    hand.fail(ID, undefined);
    try {
      if (kind === 'svg') saveSvg(title(), 'picture', now);
      else await savePng(title(), 'picture', now, paper);
      hand.say(ID, t.saved);
    } catch {
      hand.fail(ID, t.notDrawn);
    }
  };
  const isWithoutTurn = (): boolean => {
    const { by, count } = settings();
    const [paper, flight] = [source.paper(), source.flight()];
    return by !== 'chosen' && !!paper && !!flight && paper.equalTimes(flight, count, by) === undefined;
  };
  const whole = (text: string, { least, most }: { least: number; most: number }): number =>
    Math.min(Math.max(Math.round(Number(text)) || least, least), most);
  return (
    <div class="paper-way">
      <Show when={src()}>{(address) => <img class="paper-preview" src={address()} alt={t.preview} />}</Show>
      <div class="paper-settings">
        <label>
          {t.layout}
          <select onChange={(e) => put({ layout: LAYOUTS[e.currentTarget.selectedIndex] })}>
            <For each={LAYOUTS}>{(one) => <option selected={settings().layout === one}>{t.layouts[one]}</option>}</For>
          </select>
        </label>
        <label>
          {t.by}
          <select
            onChange={(e) => {
              const by = STEPS[e.currentTarget.selectedIndex];
              put(by === 'chosen' ? { chosen: timesOf(hand), by } : { by });
            }}
          >
            <For each={STEPS}>{(one) => <option selected={settings().by === one}>{t.steps[one]}</option>}</For>
          </select>
        </label>
        <Show when={settings().by !== 'chosen'}>
          <label>
            {t.count}
            <input
              type="number"
              min={COUNT.least}
              max={COUNT.most}
              value={settings().count}
              onChange={(e) => put({ count: whole(e.currentTarget.value, COUNT) })}
            />
          </label>
        </Show>
        <Show when={page.doc.versions().length > 0}>
          <label>
            {t.beside}
            <select onChange={(e) => put({ beside: e.currentTarget.selectedIndex - 1 })}>
              <option selected={settings().beside < 0}>{t.alone}</option>
              <For each={page.doc.versions()}>
                {(version, i) => <option selected={settings().beside === i()}>{version.name}</option>}
              </For>
            </select>
          </label>
        </Show>
        <label>
          {t.plots}
          <select onChange={(e) => put({ hasPlots: e.currentTarget.selectedIndex === 1 })}>
            <option selected={!settings().hasPlots}>{t.noPlots}</option>
            <option selected={settings().hasPlots}>{t.withPlots}</option>
          </select>
        </label>
        <label>
          {t.width}
          <input
            type="number"
            min={WIDTH.least}
            max={WIDTH.most}
            value={settings().widthMm}
            onChange={(e) => put({ widthMm: whole(e.currentTarget.value, WIDTH) })}
          />
        </label>
        <label>
          {t.head}
          <input
            type="checkbox"
            checked={settings().hasHead}
            onChange={(e) => put({ hasHead: e.currentTarget.checked })}
          />
        </label>
      </div>
      <Show when={isWithoutTurn()}>
        <p role="status">{t.noTurn}</p>
      </Show>
      <div class="paper-buttons">
        <button type="button" class="primary" onClick={() => void keep('svg')}>
          {t.svg}
        </button>
        <button type="button" onClick={() => void keep('png')}>
          {t.png}
        </button>
      </div>
      <Show when={picture.shown()}>
        {(now) => <p class="quiet">{t.size(String(now().widthMm), now().heightMm.toFixed(0))}</p>}
      </Show>
    </div>
  );
}

function Thumb() {
  return (
    <svg viewBox="0 0 60 40" width="60" height="40" aria-hidden="true">
      <rect class="thumb-paper" x="0.5" y="0.5" width="59" height="39" />
      <path class="thumb-ink" d="M4 33.5 H56 M9 14 V33 M18 22 L27 17 M36 9 L31 20 M43 17 L51 26" />
    </svg>
  );
}

export const picturesWay: HandWay = {
  id: ID,
  name: t.name,
  verb: t.verb,
  short: t.short,
  Thumb,
  lines: (hand) => [t.hint(timesOf(hand).length), t.hint2],
  brief: () => t.brief,
  time: (hand) => {
    const times = timesOf(hand);
    if (times.length === 0) return undefined;
    const [settings, setSettings] = settingsOf(hand);
    return {
      kind: 'pegs',
      times,
      // a mark that is moved is a chosen one
      move: (index, at) => {
        const chosen = times.with(index, at).sort((a, b) => a - b);
        setSettings({ ...settings(), by: 'chosen', chosen });
      },
    };
  },
  View,
  // what is kept is chosen among its settings
  run: () => undefined,
};
