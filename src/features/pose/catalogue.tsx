/**
 * The shapes: a small picture of each with its two moments as bars. Sorted by one of them it is a lesson in itself. Enter or
 * a press lays a shape at the cursor; dragged to the ruler it is laid there. The last tile keeps the pose at the cursor.
 */

import { createMemo, createSignal, For, Show, untrack } from 'solid-js';
import type { ShapeMoments } from '../../../sim/index.ts';
import { LEFT } from '../../app/bench-columns.ts';
import { keyTexts } from '../../app/key-words.ts';
import { ARM_PATHS, MOVE, type Sorting, useLaying } from '../../app/laying.ts';
import { useCursor, useFlight, useServices } from '../../app/page.ts';
import { texts } from '../../app/words.ts';
import { calcQuarterTimes, getEventTimes, snapTime } from '../../document/snap.ts';
import { Choice } from '../../ui/choice.tsx';
import { startDrag } from '../../ui/drag.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, tOf } from '../../ui/plot/axis.ts';
import { SecondsField } from '../../ui/seconds-field.tsx';
import { type TileEntry, useTilePictures } from './tile-pictures.ts';
import { poseTexts } from './words.ts';

const SORTINGS: readonly Sorting[] = ['long', 'lateral', 'name'];
/** Longest bar, px. */
const BAR = 52;

export function Catalogue(props: { axis: TimeAxis; device: 'bench' | 'tablet' | 'phone' }) {
  const services = useServices();
  const flight = useFlight();
  const cursor = useCursor();
  const laying = useLaying();
  const [naming, setNaming] = createSignal(false);
  const tiles = useTilePictures();
  const entries = createMemo(() => {
    const [shapes] = [laying.shapes(), tiles.athlete()];
    return untrack(() => tiles.entries(shapes));
  });
  const sorted = createMemo(() => {
    const by = laying.sorting();
    return [...entries()].sort((a, b) =>
      by === 'name' ? a.shape.title.localeCompare(b.shape.title) : a.moments[by] - b.moments[by],
    );
  });
  const most = createMemo(() => ({
    long: Math.max(...entries().map((e) => e.moments.long)),
    lateral: Math.max(...entries().map((e) => e.moments.lateral)),
  }));
  // rests while a hand is at work
  const here = createMemo<ShapeMoments>((last) => {
    if (last && flight.before()) return last;
    const now = services.posing.anglesAt(flight.result(), cursor.at());
    return services.posing.moments(flight.result().flight.body, now);
  });
  const between = (): string => {
    const list = [...entries()].sort((a, b) => a.moments.long - b.moments.long);
    const at = here().long;
    const below = list.filter((e) => e.moments.long <= at).at(-1);
    const above = list.find((e) => e.moments.long > at);
    return poseTexts.between(formatNumber(at, 2), below?.shape.title, above?.shape.title);
  };

  const left = (): number => (props.device === 'bench' ? LEFT : 0);
  const timeAt = (clientX: number, clientY: number, free: boolean): number | undefined => {
    const over = document.elementFromPoint(clientX, clientY);
    if (over?.closest('.tool')) return undefined;
    const t = tOf(props.axis, clientX - left());
    const { duration } = props.axis;
    if (t < -0.02 || t > duration + 0.02) return undefined;
    const s = Math.min(Math.max(t, 0), duration);
    if (free) return s;
    const marks = [...getEventTimes(flight.anchors()), ...calcQuarterTimes(flight.result().frames)];
    return Math.min(Math.max(snapTime(s, marks, props.axis.pxPerS).s, 0), duration);
  };
  const press = (e: PointerEvent, entry: TileEntry): void => {
    let at: number | undefined;
    let moved = false;
    startDrag(e, {
      move: (_dx, _dy, m) => {
        moved = true;
        at = timeAt(m.clientX, m.clientY, m.altKey);
        laying.setCarried({ id: entry.id, title: entry.shape.title, at, clientX: m.clientX, clientY: m.clientY });
      },
      end: () => {
        laying.setCarried(undefined);
        if (moved && at !== undefined) laying.lay(entry.id, at);
        if (moved) swallowClick = true;
        setTimeout(() => {
          swallowClick = false;
        });
      },
      cancel: () => laying.setCarried(undefined),
    });
  };
  let swallowClick = false;

  return (
    <div class="catalogue" classList={{ 'as-strip': props.device !== 'bench' }}>
      <div class="laying">
        <Choice
          legend={poseTexts.sortedBy}
          names={SORTINGS}
          words={poseTexts.sortings}
          chosen={laying.sorting()}
          choose={laying.setSorting}
        />
        <Choice
          legend={texts.shapes.arms}
          names={ARM_PATHS}
          words={poseTexts.paths}
          chosen={laying.arms()}
          choose={laying.setArms}
        />
        <SecondsField
          label={keyTexts.moveTakes}
          value={laying.moveS()}
          min={MOVE.least}
          max={MOVE.most}
          onChange={laying.setMoveS}
        />
      </div>
      <p class="catalogue-key quiet">
        {poseTexts.moment} <b class="twist">{texts.plots.longAxis}</b> <b class="som">{texts.plots.lateral}</b>
        <span>{poseTexts.enterLays(formatNumber(cursor.at(), 2))}</span>
      </p>
      <ul class="shape-tiles">
        <For each={sorted().map((entry) => entry.id)}>
          {(id) => (
            <Show when={sorted().find((entry) => entry.id === id)}>
              {(entry) => (
                <li>
                  <button
                    type="button"
                    class="shape-tile"
                    data-shape={id}
                    classList={{ carried: laying.carried()?.id === id }}
                    aria-label={poseTexts.tile(
                      entry().shape.title,
                      formatNumber(entry().moments.long, 2),
                      formatNumber(entry().moments.lateral, 1),
                    )}
                    title={entry().shape.title}
                    onPointerDown={(e) => press(e, entry())}
                    onClick={() => {
                      if (!swallowClick) laying.lay(id, cursor.at());
                    }}
                  >
                    {tiles.pictureOf(entry())}
                    <span class="shape-title">{entry().shape.title}</span>
                    <span class="moment-bar">
                      <i class="long" style={{ width: `${(BAR * entry().moments.long) / most().long}px` }} />
                      <b class="twist">{formatNumber(entry().moments.long, 2)}</b>
                    </span>
                    <span class="moment-bar">
                      <i class="lateral" style={{ width: `${(BAR * entry().moments.lateral) / most().lateral}px` }} />
                      <b class="som">{formatNumber(entry().moments.lateral, 1)}</b>
                    </span>
                  </button>
                  <Show when={laying.isOwn(id)}>
                    <button
                      type="button"
                      class="forget"
                      aria-label={poseTexts.forget(entry().shape.title)}
                      title={poseTexts.forget(entry().shape.title)}
                      onClick={() => laying.forget(id)}
                    >
                      <Icon name="close" size={12} />
                    </button>
                  </Show>
                </li>
              )}
            </Show>
          )}
        </For>
        <li>
          <button type="button" class="shape-tile keep" aria-expanded={naming()} onClick={() => setNaming(!naming())}>
            <span class="shape-picture">
              <span class="plus" aria-hidden="true">
                +
              </span>
              <span>{poseTexts.keep}</span>
            </span>
            <span class="keep-words">{between()}</span>
          </button>
        </li>
      </ul>
      <Show when={naming()}>
        <form
          class="naming"
          onSubmit={(e) => {
            e.preventDefault();
            const title = String(new FormData(e.currentTarget).get('title') ?? '').trim();
            if (title === '') return;
            laying.keep(title.slice(0, 80));
            setNaming(false);
          }}
        >
          <label>
            {poseTexts.nameIt}{' '}
            <input
              name="title"
              maxLength={80}
              required
              autocomplete="off"
              value={poseTexts.newName(Object.keys(laying.own()).length + 1)}
              ref={(el) => setTimeout(() => el.select())}
            />
          </label>
          <button type="submit">{poseTexts.keepIt}</button>
          <button type="button" class="plain" onClick={() => setNaming(false)}>
            {poseTexts.notNow}
          </button>
        </form>
      </Show>
      <Show when={laying.refused()}>
        <p class="angle-beyond" role="alert">
          {poseTexts.notKept}
        </p>
      </Show>
      <p class="spoken" role="status" aria-live="polite">
        {laying.said()}
      </p>
      <Show when={laying.carried()}>
        {(c) => (
          <div class="carried-shape" aria-hidden="true" style={{ left: `${c().clientX}px`, top: `${c().clientY}px` }}>
            {c().at === undefined
              ? poseTexts.toRuler(c().title)
              : poseTexts.layHere(c().title, formatNumber(c().at ?? 0, 2))}
          </div>
        )}
      </Show>
    </div>
  );
}
